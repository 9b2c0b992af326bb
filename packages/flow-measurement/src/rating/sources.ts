import { source, type Source } from "@leat/formula";

/** E. J. Kennedy, Discharge Ratings at Gaging Stations. */
export const usgsDischargeRatings: Source = /* @__PURE__ */ source({
  id: "usgs-twri-3-a10",
  by: "USGS",
  title: "Discharge Ratings at Gaging Stations, TWRI book 3, ch. A10",
  edition: "1984",
});

/** ISO 18320, Hydrometry: determination of the stage-discharge relationship; before it, ISO 1100-2. */
export const iso18320: Source = /* @__PURE__ */ source({
  id: "iso-18320",
  by: "ISO 18320",
  title: "Determination of the stage-discharge relationship",
  edition: "2020; before it ISO 1100-2:2010",
});

/** T. Reitan and A. Petersen-Øverleir, Estimating the discharge rating curve by nonlinear regression. */
export const nveRatingRegression: Source = /* @__PURE__ */ source({
  id: "nve-6-2004",
  by: "Reitan and Petersen-Øverleir",
  title: "Estimating the discharge rating curve by nonlinear regression, NVE report 6-04",
  edition: "2004",
});

/** Environment Canada, hydrometric manual on the stage-discharge relation. */
export const environmentCanadaRatings: Source = /* @__PURE__ */ source({
  id: "environment-canada-ratings",
  by: "Environment Canada",
  title: "Hydrometric Manual, Data Computations: the stage-discharge relation",
  edition: "2012",
});
