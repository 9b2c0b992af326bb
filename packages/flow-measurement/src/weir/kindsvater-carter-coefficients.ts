import { table } from "@leat/formula";
import { millimetre, unit } from "@leat/quantity";

import { bos, usbrWaterMeasurementManual } from "../sources.ts";

/** √ft per second: the unit of a weir coefficient that has gravity in it. */
export const rootFootPerSecond = /* @__PURE__ */ unit(
  "m^0.5·s^-1",
  "ft^0.5/s",
  /* @__PURE__ */ Math.sqrt(0.3048),
);

/**
 * Coefficients of Ce = C1·h/P + C2 over the width of the notch on that of the channel (L/B).
 *
 * The source begins at 0.2.
 */
export const kindsvaterCarterCoefficients = /* @__PURE__ */ table(() => ({
  id: "kindsvater-carter-coefficients",
  key: "widthRatio",
  units: { slope: rootFootPerSecond, intercept: rootFootPerSecond },
  source: usbrWaterMeasurementManual.at("ch. 7, coefficients of eq. 7-2", "secondary"),
  rows: [
    { widthRatio: "0.2", slope: -0.0087, intercept: 3.152 },
    { widthRatio: "0.4", slope: 0.0317, intercept: 3.164 },
    { widthRatio: "0.5", slope: 0.0612, intercept: 3.173 },
    { widthRatio: "0.6", slope: 0.0995, intercept: 3.178 },
    { widthRatio: "0.7", slope: 0.1602, intercept: 3.182 },
    { widthRatio: "0.8", slope: 0.2376, intercept: 3.189 },
    { widthRatio: "0.9", slope: 0.3447, intercept: 3.205 },
    { widthRatio: "1.0", slope: 0.4, intercept: 3.22 },
  ],
}));

/** What is added to the width of the notch, over the width of the notch on that of the channel. */
export const kindsvaterCarterWidthCorrection = /* @__PURE__ */ table(() => ({
  id: "kindsvater-carter-width-correction",
  key: "widthRatio",
  units: { correction: millimetre },
  source: bos.at("ch. 5, values of the width correction", "memory"),
  rows: [
    { widthRatio: "0", correction: 2.4 },
    { widthRatio: "0.2", correction: 2.4 },
    { widthRatio: "0.4", correction: 2.7 },
    { widthRatio: "0.6", correction: 3.6 },
    { widthRatio: "0.8", correction: 4.2 },
    { widthRatio: "1.0", correction: -0.9 },
  ],
}));
