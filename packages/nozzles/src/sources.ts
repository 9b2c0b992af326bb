import { source, type Source } from "@leat/formula";

/** W. C. Unwin, Hydraulics, in a general encyclopaedia; out of copyright. */
export const unwinHydraulics: Source = /* @__PURE__ */ source({
  id: "unwin-hydraulics",
  by: "Unwin",
  title: "Hydraulics, in Encyclopaedia Britannica, vol. 14",
  edition: "11th ed., 1910",
});

/** IAPWS-IF97: the density of water that stands in as a default. */
export const iapwsIf97: Source = /* @__PURE__ */ source({
  id: "iapws-if97",
  by: "IAPWS",
  title:
    "R7-97(2012), Industrial Formulation 1997 for the Thermodynamic Properties of Water and Steam",
  edition: "2012",
});

/** ISO 5167, differential-pressure devices in circular conduits running full. */
export const iso5167: Source = /* @__PURE__ */ source({
  id: "iso-5167",
  by: "ISO 5167",
  title: "Measurement of fluid flow by means of pressure differential devices",
  edition: "2003",
});
