import { commonPractice, table } from "@leat/formula";
import { metre } from "@leat/quantity";

/**
 * Half of the 95 % interval of one height, by the kind of satellite receiver, under an open sky.
 *
 * In the open a good handheld receiver is within 5 m (so the performance standard of the system says of 2007), which
 * promises 13 m to 15 m as a mean over the globe; a narrow valley under trees hides half of the sky, and the heights
 * suffer most: take the high figure there, or another way to measure.
 */
export const satelliteReceivers = /* @__PURE__ */ table(() => ({
  id: "satellite-receivers",
  key: "receiver",
  units: { low: metre, typical: metre, high: metre },
  source: commonPractice.at("height of one point by satellite, half of 95 %", "practice"),
  rows: [
    { receiver: "telephone or handheld", low: 5, typical: 10, high: 15 },
    { receiver: "corrected by satellite", low: 1.5, typical: 3, high: 5 },
    { receiver: "corrected by a base station", low: 0.5, typical: 1, high: 2 },
    { receiver: "real-time kinematic", low: 0.03, typical: 0.05, high: 0.15 },
  ],
}));

/** A kind of satellite receiver. */
export type SatelliteReceiver = ReturnType<typeof satelliteReceivers.keys>[number];
