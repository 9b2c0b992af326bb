import { choice, commonPractice, formula, input, output, pointInput, range } from "@leat/formula";
import { kelvin, pascal, point, unit } from "@leat/quantity";

import { virtualTemperature } from "./barometric-height.ts";
import { altimeterManual, iso2533 } from "./sources.ts";

interface Scale {
  readonly scale: "standard atmosphere" | "isothermal 50 °F";
  readonly A1: number;
  readonly A2: number;
  readonly T0: number;
  readonly L: number;
  readonly Tm: number;
}

/** Temperature of the air that a scale is made for, between two readings. */
function scaleTemperature({ scale, A1, A2, T0, L, Tm }: Scale): number {
  return scale === "standard atmosphere" ? T0 - (L * (A1 + A2)) / 2 : Tm;
}

/**
 * Height between two readings of an altimeter, for air that is not as its scale takes it.
 *
 *     H = (A2 − A1)·Tv/Ts
 *
 * An altimeter is a barometer with a scale in feet or metres, made for air of one temperature: most for the standard
 * atmosphere, 15 °C at sea level and 6.5 °C less for each kilometre; old surveying altimeters for 50 °F all the way
 * up. Warm air is light, and the scale shows too little of it: 1 % for 3 °C. Set the scale how you like; only the
 * difference counts, but not by more than the weather would.
 *
 * @throws NonPhysicalError vapour pressure negative.
 * @throws OutOfValidityError air colder than −40 °C or warmer than 50 °C, and `onNotice` is absent.
 * @example
 * ```ts
 * const head = altimeterHeight({
 *   lowerReading: foot.of(1240),
 *   upperReading: foot.of(1405),
 *   airTemperature: fahrenheit.at(78),
 *   scale: "standard atmosphere",
 * });
 * format(head, foot, 4); // => "172.6 ft"
 * ```
 */
export const altimeterHeight = /* @__PURE__ */ formula(() => ({
  id: "altimeter-height",
  equation: "H = (A2 − A1)·Tv/Ts",
  inputs: {
    /** What it shows at the lower station. */
    lowerReading: input("length", "A1", { domain: "any" }),
    /** What it shows at the upper station, at the same moment. */
    upperReading: input("length", "A2", { domain: "any" }),
    /** Mean temperature of the air between the stations. */
    airTemperature: pointInput("absolute zero", "T"),
    /** The air that its scale is made for. */
    scale: choice(["standard atmosphere", "isothermal 50 °F"], "scale", {
      default: "standard atmosphere",
      because: commonPractice.at("altimeters of aircraft and of walkers", "practice"),
    }),
    /** Pressure of the water vapour in the air: see `airVapourPressure`. */
    vapourPressure: input("pressure", "e", {
      default: pascal.of(0),
      because: commonPractice.at("dry air", "practice"),
    }),
    /** Pressure of the air, which counts only where there is vapour in it. */
    airPressure: pointInput("vacuum", "p", {
      default: point("vacuum", pascal.of(95461)),
      because: iso2533.at("at 500 m", "memory"),
    }),
  },
  output: output("gross head", "H"),
  constants: {
    T0: kelvin.of(288.15),
    L: unit("m^-1·K", "K/km", 1, 1000).of(6.5),
    Tm: kelvin.of(283.15),
  },
  steps: {
    Tv: {
      kind: "temperature difference",
      equation: "T/(1 − 0.378·e/p)",
      of: ({ T, e, p }) => virtualTemperature(T, e, p),
    },
    Ts: {
      kind: "temperature difference",
      equation: "T0 − L·(A1 + A2)/2, or Tm for an isothermal scale",
      of: scaleTemperature,
    },
  },
  limits: [
    range(
      "airTemperature",
      { min: kelvin.of(233.15), max: kelvin.of(323.15) },
      commonPractice.at("air that people measure in", "practice"),
    ),
  ],
  source: altimeterManual.at("par. 30, table I: correction for temperature and humidity"),
  body: (letters) => {
    const { A1, A2, T, e, p } = letters;
    return ((A2 - A1) * virtualTemperature(T, e, p)) / scaleTemperature(letters);
  },
}));
