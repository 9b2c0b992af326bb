import { type CallOptions, commonPractice, type Notice } from "@leat/formula";
import {
  hectopascal,
  hour,
  isPoint,
  kelvin,
  metre,
  pascal,
  type Point,
  type Quantity,
} from "@leat/quantity";

import { refuseIf, fault } from "../refusal.ts";
import { barometricHeight } from "./barometric-height.ts";
import { type Drift, driftBetween, type Timed, timeProblems } from "./drift.ts";
import { standardPressure, tooVague } from "./spread.ts";

/** A barometer, read at a time. */
export interface BarometerReading {
  /** Time of day, or since any beginning. */
  readonly time: Quantity<"time">;
  /** Pressure of the air, over vacuum: not reduced to sea level. */
  readonly pressure: Point<"vacuum">;
}

/** The air between two stations. */
export interface AirBetween {
  /** Mean temperature of the air; without a ± of its own it is taken within 3 K. */
  readonly airTemperature: Point<"absolute zero">;
  /** Pressure of the water vapour in it; dry air by default. */
  readonly vapourPressure?: Quantity<"pressure"> | undefined;
}

/** One barometer that was carried from station to station. */
export interface BarometerInput extends AirBetween {
  /** Read at the lower station. */
  readonly lower: BarometerReading;
  /** Read at the upper station. */
  readonly upper: BarometerReading;
  /** Read once more at the station that was first, at the end. */
  readonly again?: BarometerReading | undefined;
  /** A second barometer that stayed in one place, read from beginning to end. */
  readonly base?: readonly BarometerReading[] | undefined;
  /** Smallest step that it shows: it is read to half of it. */
  readonly division: Quantity<"pressure">;
  /** Gravity at the site; standard by default. */
  readonly gravity?: Quantity<"acceleration"> | undefined;
  /** Names the sources of uncertainty. `barometer` by default. */
  readonly name?: string | undefined;
}

/** What a barometer or an altimeter says of the head. */
export interface AirHead {
  /** Height between the stations. */
  readonly head: Quantity<"gross head">;
  /** What is to be said of it. */
  readonly notices: readonly Notice[];
}

const what = "barometer-head";

/**
 * Height between two stations from one barometer that was carried, the weather taken off.
 *
 * What the weather did meanwhile is seen by a second barometer that stayed in one place (`base`), or by going back to
 * the first station (`again`): then it is taken as even in time, and half of it stays uncertain. Where neither was
 * done one hectopascal an hour is counted, 8.5 m. The height itself is `barometricHeight`.
 *
 * Two barometers that were read at one moment are compared side by side first, and one of them corrected.
 *
 * @param input - The readings and the air.
 * @param options - Notices, which the result holds too, and what is assumed.
 * @returns Head and notices.
 * @throws NonPhysicalError readings without a time or out of order, a base that was not read throughout, a division
 * that is none, an upper station whose pressure is not less.
 * @throws OutOfValidityError air or pressures outside those of `barometricHeight`, and `onNotice` is absent.
 * @example
 * ```ts
 * const at = (time: number, pressure: number) => ({
 *   time: hour.of(time),
 *   pressure: point("vacuum", hectopascal.of(pressure)),
 * });
 * const { head } = barometerHead({
 *   lower: at(10, 921.4),
 *   upper: at(10.5, 913.3),
 *   again: at(11, 921.6),
 *   airTemperature: celsius.at(14),
 *   division: hectopascal.of(0.1),
 * });
 * format(head, metre, { plusMinus: true }); // => "75.1 ± 1.5 m (k = 1.96)"
 * ```
 */
export function barometerHead(input: BarometerInput, options: CallOptions = {}): AirHead {
  const {
    lower,
    upper,
    again,
    base,
    division,
    vapourPressure,
    gravity,
    name = "barometer",
  } = input;
  refuseIf([
    ...stationProblems(["lower"], lower),
    ...stationProblems(["upper"], upper),
    ...(again ? stationProblems(["again"], again) : []),
    ...(base ?? []).flatMap((each, i) => stationProblems(["base", i], each)),
    ...divisionProblems(what, division),
  ]);
  const drift = driftBetween({
    what,
    ...inOrder(timed(lower), timed(upper)),
    again: again && timed(again),
    base: base?.map(timed),
    rate: hectopascal.of(1)["~si"] / hour.of(1)["~si"],
    rateText: "1 hPa an hour",
  });
  // The first station is brought to the time of the second one.
  const moved = pascal
    .of(drift.change)
    .within(pascal.of(drift.half), `${name}.weather`)
    .plusMinus(standardPressure(readToHalf(division["~si"], drift)), `${name}.readings`);
  const lowerFirst = lower.time["~si"] <= upper.time["~si"];
  const lowerPressure = lowerFirst ? lower.pressure.plus(moved) : lower.pressure;
  const upperPressure = lowerFirst ? upper.pressure : upper.pressure.plus(moved);
  if (!(lowerPressure["~si"] > upperPressure["~si"])) {
    refuseIf([
      fault(
        what,
        ["upper", "pressure"],
        `the upper station's pressure, ${said(upperPressure)}, is not below the lower one's, ${said(lowerPressure)}, at the same moment. See whether the stations are exchanged.`,
      ),
    ]);
  }
  const head = barometricHeight(
    {
      lowerPressure,
      upperPressure,
      airTemperature: withSpread(what, input.airTemperature, name, options),
      vapourPressure,
      gravity,
    },
    options,
  );
  return told(what, head, drift, metre.of(1), options);
}

const said = (pressure: Point<"vacuum">): string =>
  `${Number(pressure.in(hectopascal).toPrecision(6))} hPa`;

const timed = ({ time, pressure }: BarometerReading): Timed => ({
  time: time["~si"],
  value: pressure["~si"],
});

/** The stations in the order in which they were read. */
export function inOrder(lower: Timed, upper: Timed): { first: Timed; second: Timed } {
  return lower.time <= upper.time
    ? { first: lower, second: upper }
    : { first: upper, second: lower };
}

/** Standard uncertainty of readings to half of a division, all that the height rests on. */
export function readToHalf(division: number, { readings }: Drift): number {
  return (division / 2 / Math.sqrt(3)) * Math.sqrt(readings);
}

/** The temperature of the air, within 3 K where nothing better is known. */
export function withSpread(
  formula: string,
  temperature: Point<"absolute zero">,
  name: string,
  options: CallOptions,
): Point<"absolute zero"> {
  if (!isPoint(temperature) || temperature["~sources"]) return temperature;
  options.onAssumed?.({
    formula,
    input: "airTemperature",
    value: "within 3 K",
    because: commonPractice.at("a thermometer in the shade at both stations", "practice"),
  });
  return temperature.within(kelvin.of(3), `${name}.temperature`);
}

/** A division that is none. */
export function divisionProblems(
  formula: string,
  division: Quantity<"pressure"> | Quantity<"length">,
): Notice[] {
  return division["~si"] > 0
    ? []
    : [
        fault(
          formula,
          ["division"],
          `division = ${String(division)} is not above zero. Give the smallest step that it shows.`,
        ),
      ];
}

/** The result, once every notice is told. */
export function told(
  formula: string,
  head: Quantity<"gross head">,
  drift: Drift,
  like: Quantity<"length">,
  options: CallOptions,
): AirHead {
  const notices = [...drift.notices, ...tooVague(formula, head, like)];
  for (const notice of notices) options.onNotice?.(notice);
  return { head, notices };
}

function stationProblems(path: readonly (string | number)[], reading: BarometerReading): Notice[] {
  const problems = timeProblems(what, path, reading.time);
  if (!isPoint(reading.pressure) || reading.pressure.origin !== "vacuum") {
    problems.push(
      fault(
        what,
        [...path, "pressure"],
        `${path.join(".")}.pressure is missing. Give the pressure of the air over vacuum, not a gauge reading.`,
      ),
    );
  }
  return problems;
}
