import { commonPractice, table } from "@leat/formula";
import { millimetre, unit } from "@leat/quantity";

/** Millimetres per metre of sight: how far a line of sight that is not level goes wrong. */
const millimetrePerMetre = /* @__PURE__ */ unit("ratio", "mm/m", 1, 1000);

/**
 * How far one set-up of a level goes astray: the standard uncertainty of its back sight less its fore sight, and
 * how far off level its line of sight may be when it was not tested lately.
 *
 * Sights of up to 50 m for instruments on a stand, up to 15 m for a hand level, which has no telescope; a rod that
 * is held plumb, on ground that does not give. From what makers state for 1 km run twice (2 mm for a plain automatic
 * level) to bad light and a rod in the brush.
 */
export const levelSpreads = /* @__PURE__ */ table(() => ({
  id: "level-spreads",
  key: "instrument",
  units: {
    low: millimetre,
    typical: millimetre,
    high: millimetre,
    collimation: millimetrePerMetre,
  },
  source: commonPractice.at("one set-up of a level, by instrument", "practice"),
  rows: [
    { instrument: "automatic level", low: 1, typical: 2, high: 4, collimation: 0.1 },
    { instrument: "builder's level", low: 2, typical: 3, high: 6, collimation: 0.3 },
    { instrument: "hand level", low: 10, typical: 20, high: 40, collimation: 2 },
  ],
}));

/** A level that set-ups are read with. */
export type LevelInstrument = ReturnType<typeof levelSpreads.keys>[number];

/**
 * How far one step without a sighting instrument goes astray: the standard uncertainty of its height, and what may
 * be wrong the same way in every step: a bubble that is off its mark.
 *
 * A plank of 2 m to 4 m with a carpenter's level on it, turned end for end from step to step; a hose with still
 * water in both ends, read at the bottom of the curved surface.
 */
export const stepSpreads = /* @__PURE__ */ table(() => ({
  id: "step-spreads",
  key: "means",
  units: { low: millimetre, typical: millimetre, high: millimetre, shared: millimetre },
  source: commonPractice.at("one step of a plank or a hose", "practice"),
  rows: [
    { means: "plank and spirit level", low: 2, typical: 5, high: 10, shared: 1 },
    { means: "water-filled hose", low: 2, typical: 4, high: 8, shared: 0 },
  ],
}));
