import { source, type Source } from "@leat/formula";

/** Interagency Advisory Committee on Water Data, Guidelines for Determining Flood Flow Frequency. */
export const bulletin17b: Source = /* @__PURE__ */ source({
  id: "bulletin-17b",
  by: "Bulletin 17B",
  title: "Guidelines for Determining Flood Flow Frequency",
  edition: "1982",
});

/** H. C. Riggs, Frequency curves: Techniques of Water-Resources Investigations of the U.S. Geological Survey. */
export const usgsFrequencyCurves: Source = /* @__PURE__ */ source({
  id: "usgs-frequency-curves",
  by: "USGS",
  title: "Frequency curves, TWRI book 4, ch. A2",
  edition: "1968",
});

/** H. C. Riggs, Low-flow investigations: Techniques of Water-Resources Investigations of the U.S. Geological Survey. */
export const usgsLowFlow: Source = /* @__PURE__ */ source({
  id: "usgs-low-flow",
  by: "USGS",
  title: "Low-flow investigations, TWRI book 4, ch. B1",
  edition: "1972",
});

/** A. Gustard, A. Bullock and J. M. Dixon, Low flow estimation in the United Kingdom. */
export const ihLowFlow: Source = /* @__PURE__ */ source({
  id: "ih-low-flow",
  by: "Institute of Hydrology",
  title: "Low flow estimation in the United Kingdom, report 108",
  edition: "1992",
});

/** A. R. Ladson and others, A standard approach to baseflow separation using the Lyne and Hollick filter. */
export const ladsonBaseFlow: Source = /* @__PURE__ */ source({
  id: "ladson-base-flow",
  by: "Ladson and others",
  title: "A standard approach to baseflow separation using the Lyne and Hollick filter, AJWR 17",
  edition: "2013",
});
