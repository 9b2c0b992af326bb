import {
  commonPractice,
  firstPrinciples,
  formula,
  input,
  output,
  pointInput,
  range,
} from "@leat/formula";
import {
  hectopascal,
  joulePerKilogramKelvin,
  kelvin,
  metrePerSecondSquared,
  pascal,
} from "@leat/quantity";

import { iso2533 } from "./sources.ts";

/** Temperature at which dry air would be as light as moist air is. */
export function virtualTemperature(T: number, e: number, p: number): number {
  return T / (1 - (0.378 * e) / p);
}

function meanPressure(p1: number, p2: number): number {
  return (p1 + p2) / 2;
}

/**
 * Height of a column of air between two pressures: the hypsometric equation.
 *
 *     H = R·Tv/g · ln(p1/p2),   Tv = T/(1 − 0.378·e/p),   p = (p1 + p2)/2
 *
 * Where the sources print 0.379 and 0.377 for the vapour, 0.378 of the molar masses is taken: 0.001 % of a height.
 * Both pressures belong to one moment: weather moves them by a hectopascal, 8.5 m of air, within hours (see
 * `barometerHead`). The temperature is the mean of the column: 3 °C too much are 1 % of the height. Moisture adds up
 * to 1 % on a hot wet day, and is left out where no vapour pressure is given. Against published tables the height
 * between levels of the standard atmosphere is right to 0.01 %.
 *
 * @throws NonPhysicalError vapour pressure negative, gravity not above zero.
 * @throws OutOfValidityError air colder than −40 °C or warmer than 50 °C, a pressure outside 300 hPa to 1100 hPa, and
 * `onNotice` is absent.
 * @example
 * ```ts
 * const head = barometricHeight({
 *   lowerPressure: point("vacuum", hectopascal.of(921.4)),
 *   upperPressure: point("vacuum", hectopascal.of(913.2)),
 *   airTemperature: celsius.at(14),
 * });
 * format(head, metre, 3); // => "75.1 m"
 * ```
 */
export const barometricHeight = /* @__PURE__ */ formula(() => ({
  id: "barometric-height",
  equation: "H = R·Tv/g·ln(p1/p2)",
  inputs: {
    /** Pressure of the air at the lower station, over vacuum. */
    lowerPressure: pointInput("vacuum", "p1"),
    /** Pressure of the air at the upper station, at the same moment. */
    upperPressure: pointInput("vacuum", "p2"),
    /** Mean temperature of the air between the stations. */
    airTemperature: pointInput("absolute zero", "T"),
    /** Pressure of the water vapour in it: see `airVapourPressure`. */
    vapourPressure: input("pressure", "e", {
      default: pascal.of(0),
      because: commonPractice.at("dry air", "practice"),
    }),
    /** Gravity at the site. */
    gravity: input("acceleration", "g", {
      domain: "positive",
      default: metrePerSecondSquared.of(9.80665),
      because: firstPrinciples.at("standard gravity, exact by convention"),
    }),
  },
  output: output("gross head", "H"),
  constants: { R: joulePerKilogramKelvin.of(287.05287) },
  steps: {
    p: { kind: "pressure", equation: "(p1 + p2)/2", of: ({ p1, p2 }) => meanPressure(p1, p2) },
    Tv: {
      kind: "temperature difference",
      equation: "T/(1 − 0.378·e/p)",
      of: ({ T, e, p1, p2 }) => virtualTemperature(T, e, meanPressure(p1, p2)),
    },
  },
  limits: [
    ...(["lowerPressure", "upperPressure"] as const).map((name) =>
      range(
        name,
        { min: hectopascal.of(300), max: hectopascal.of(1100) },
        commonPractice.at("range of a barometer for the air", "practice"),
      ),
    ),
    range(
      "airTemperature",
      { min: kelvin.of(233.15), max: kelvin.of(323.15) },
      commonPractice.at("air that people measure in", "practice"),
    ),
  ],
  source: iso2533.at("hydrostatics of air as a perfect gas, R = 287.05287 J/(kg·K)", "secondary"),
  body: ({ p1, p2, T, e, g, R }) =>
    ((R * virtualTemperature(T, e, meanPressure(p1, p2))) / g) * Math.log(p1 / p2),
}));
