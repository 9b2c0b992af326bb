import { source, type Source } from "@leat/formula";

/** Colebrook's paper on the friction of commercial pipes. */
export const colebrookPaper: Source = /* @__PURE__ */ source({
  id: "colebrook",
  by: "Colebrook",
  title:
    "Turbulent flow in pipes, with particular reference to the transition region between the smooth and rough pipe laws",
  edition: "Journal of the Institution of Civil Engineers 11, 1939",
});

/** Moody's paper, with the chart of friction factors. */
export const moodyPaper: Source = /* @__PURE__ */ source({
  id: "moody",
  by: "Moody",
  title: "Friction factors for pipe flow",
  edition: "Transactions of the ASME 66, 1944",
});

/** Swamee and Jain's paper with the explicit friction factor. */
export const swameeJainPaper: Source = /* @__PURE__ */ source({
  id: "swamee-jain",
  by: "Swamee and Jain",
  title: "Explicit equations for pipe-flow problems",
  edition: "Journal of the Hydraulics Division ASCE 102, 1976",
});

/** The user manual of the public-domain network solver of the US EPA. */
export const epanetManual: Source = /* @__PURE__ */ source({
  id: "epanet-manual",
  by: "US EPA",
  title: "EPANET 2.2 User Manual",
  edition: "EPA/600/R-20/133, 2020",
});

/** Tables of absolute roughness, as printed in general references on pipe flow. */
export const roughnessTables: Source = /* @__PURE__ */ source({
  id: "roughness-tables",
  by: "published roughness tables",
  title: "absolute roughness of pipe walls",
  edition: "Binder, Fluid Mechanics, 1973, and three later tables",
});
