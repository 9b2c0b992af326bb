import { source, type Source } from "@leat/formula";

/** IAPWS-IF97. */
export const iapwsIf97: Source = /* @__PURE__ */ source({
  id: "iapws-if97",
  by: "IAPWS",
  title:
    "R7-97(2012), Industrial Formulation 1997 for the Thermodynamic Properties of Water and Steam",
  edition: "2012",
});

/** IAPWS viscosity. */
export const iapwsViscosity: Source = /* @__PURE__ */ source({
  id: "iapws-viscosity",
  by: "IAPWS",
  title: "R12-08, Formulation 2008 for the Viscosity of Ordinary Water Substance",
  edition: "2008",
});

/** ISO 2533, Standard atmosphere. */
export const iso2533: Source = /* @__PURE__ */ source({
  id: "iso-2533",
  by: "ISO 2533",
  title: "Standard Atmosphere",
  edition: "1975",
});

/** World Geodetic System 1984. */
export const wgs84: Source = /* @__PURE__ */ source({
  id: "wgs84",
  by: "NIMA",
  title: "Department of Defense World Geodetic System 1984, TR8350.2",
  edition: "3rd ed., 2000",
});
