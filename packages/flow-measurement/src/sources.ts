import { source, type Source } from "@leat/formula";

/** U.S. Bureau of Reclamation, Water Measurement Manual. */
export const usbrWaterMeasurementManual: Source = /* @__PURE__ */ source({
  id: "usbr-wmm",
  by: "USBR",
  title: "Water Measurement Manual",
  edition: "3rd ed., 1997, revised 2001",
});

/** ISO 1438, Hydrometry: open channel flow measurement using thin-plate weirs. */
export const iso1438: Source = /* @__PURE__ */ source({
  id: "iso-1438",
  by: "ISO 1438",
  title: "Open channel flow measurement using thin-plate weirs",
  edition: "2008 and 2017",
});

/** M. G. Bos, ed., Discharge Measurement Structures. */
export const bos: Source = /* @__PURE__ */ source({
  id: "bos",
  by: "Bos",
  title: "Discharge Measurement Structures",
  edition: "3rd ed., ILRI publication 20, 1989",
});

/** R. D. Blevins, Applied Fluid Dynamics Handbook. */
export const blevins: Source = /* @__PURE__ */ source({
  id: "blevins-afdh",
  by: "Blevins",
  title: "Applied Fluid Dynamics Handbook",
  edition: "1984",
});

/** IAPWS-IF97: the density of water that stands in as a default. */
export const iapwsIf97: Source = /* @__PURE__ */ source({
  id: "iapws-if97",
  by: "IAPWS",
  title:
    "R7-97(2012), Industrial Formulation 1997 for the Thermodynamic Properties of Water and Steam",
  edition: "2012",
});
