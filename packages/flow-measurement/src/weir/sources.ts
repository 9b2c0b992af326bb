import { source, type Source } from "@leat/formula";

/** ISO 3846, Hydrometry: open channel flow measurement using rectangular broad-crested weirs. */
export const iso3846: Source = /* @__PURE__ */ source({
  id: "iso-3846",
  by: "ISO 3846",
  title: "Open channel flow measurement using rectangular broad-crested weirs",
  edition: "1989, as adopted by AS 3778.4.2",
});

/** G. Kulin and P. R. Compton: where the manual's curves of the V-notch come from. */
export const kulinAndCompton: Source = /* @__PURE__ */ source({
  id: "nbs-sp-421",
  by: "Kulin and Compton",
  title: "A Guide to Methods and Standards for the Measurement of Water Flow",
  edition: "NBS Special Publication 421, 1975",
});

/** J. R. Villemonte, on drowned weirs. */
export const villemonte: Source = /* @__PURE__ */ source({
  id: "villemonte",
  by: "Villemonte",
  title: "Submerged-weir discharge studies",
  edition: "Engineering News-Record, 25 December 1947",
});

/** J. B. Francis, whose weirs at Lowell the formulas of that name come from. */
export const francisLowell: Source = /* @__PURE__ */ source({
  id: "francis-lowell",
  by: "Francis",
  title: "Lowell Hydraulic Experiments",
  edition: "4th ed., 1883",
});
