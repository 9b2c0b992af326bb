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
