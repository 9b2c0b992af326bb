/** What a source of uncertainty is, and how to know it better. */
export type SourceWords = readonly [what: string, how?: string];

/** What the analyses of measurements name, by the last word of the name. */
const ofAnalyses: Readonly<Record<string, SourceWords>> = {
  accuracy: ["the gauge's class", "read a gauge of a finer class"],
  bubble: ["the bubble", "turn the plank end for end"],
  calibration: ["the calibration", "calibrate with more steps"],
  collimation: ["the level's line of sight", "set the level midway, or test it on two pegs"],
  geoid: ["slope of the geoid"],
  leaks: ["what leaks past", "catch the leak in a bucket and time it"],
  lower: ["height at the nozzles"],
  misclosure: ["what the way out and back leave over", "run it again"],
  mixing: ["mixing of the salt", "measure again from the other bank, or farther down"],
  reading: ["reading of the dial", "read a larger dial"],
  readings: ["the readings", "read each of them twice"],
  rod: ["the rod", "check the rod against a tape"],
  temperature: ["temperature of the air", "read a thermometer in the shade at both ends"],
  upper: ["height at the intake"],
  weather: [
    "change of the weather",
    "go back to the first place, or leave a second instrument there",
  ],
};

/** Keys of a survey whose values were written with their ±. */
const ofKeys: Readonly<Record<string, SourceWords>> = {
  added: ["solution added"],
  again: ["a step"],
  angle: ["angle of the notch", "measure width and depth of the notch"],
  area: ["a cross-section"],
  at: ["reading of the tape"],
  back: ["reading of the rod"],
  bore: ["bore of the pipe"],
  channel: ["width of the channel"],
  coefficient: ["the coefficient"],
  conductivity: ["reading of the conductivity"],
  depth: ["a depth"],
  depths: ["a depth"],
  eightTenths: ["reading of the meter"],
  flow: ["flow of a gauging"],
  fore: ["reading of the rod"],
  gaugeAboveNozzles: ["height of the gauge over the nozzles", "measure it with a rule"],
  gaugeZero: ["zero of the gauge"],
  length: ["length of the crest"],
  nozzlesAboveLowerMark: ["height of the nozzles over the lower mark", "measure it with a rule"],
  open: ["bore of a nozzle", "gauge the nozzles' bores"],
  rate: ["rate of the feed"],
  reads: ["reading of the instrument"],
  share: ["velocity at the bank"],
  sill: ["height of the sill"],
  sixTenths: ["reading of the meter"],
  solution: ["the solution", "weigh its salt on a finer scale"],
  stage: ["stage of a gauging"],
  steps: ["a step"],
  stretch: ["length of the stretch", "tape the stretch again"],
  surface: ["reading of the meter"],
  tailWater: ["tail water"],
  times: ["time of a float", "float a longer stretch"],
  twoTenths: ["reading of the meter"],
  water: ["water at the calibration"],
  waterAboveUpperMark: ["height of the water over the upper mark", "measure it with a rule"],
  width: ["a width", "tape the width again"],
  zero: ["stage of zero flow", "level it at the control"],
};

/**
 * Words for a source of uncertainty that nobody named: those of the last word of its name. Rows of a list share them.
 *
 * @param id - Name of the source: `creek.stream.measured.1.floats.times.3`.
 * @returns What it is, and how to know it better.
 */
export function sourceWords(id: string): SourceWords {
  const tail = id.split(": ").at(-1) ?? id;
  const last =
    tail
      .replace(/(\.\d+)+$/u, "")
      .split(".")
      .at(-1) ?? tail;
  const key = tail === id ? ofKeys[last] : undefined;
  return ofAnalyses[last] ?? key ?? [tail.includes(" ") ? tail : last];
}
