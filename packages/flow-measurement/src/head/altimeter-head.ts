import type { CallOptions, Notice } from "@leat/formula";
import { hour, isQuantity, metre, type Point, type Quantity } from "@leat/quantity";

import { refuseIf, fault } from "../refusal.ts";
import { altimeterHeight } from "./altimeter-height.ts";
import {
  type AirBetween,
  type AirHead,
  divisionProblems,
  inOrder,
  readToHalf,
  told,
  withSpread,
} from "./barometer-head.ts";
import { driftBetween, type Timed, timeProblems } from "./drift.ts";
import { inUnitOf, standardSpread } from "./spread.ts";

/** An altimeter, read at a time. */
export interface AltimeterReading {
  /** Time of day, or since any beginning. */
  readonly time: Quantity<"time">;
  /** What it shows. */
  readonly altitude: Quantity<"length">;
}

/** One altimeter that was carried from station to station. */
export interface AltimeterInput extends AirBetween {
  /** Read at the lower station. */
  readonly lower: AltimeterReading;
  /** Read at the upper station. */
  readonly upper: AltimeterReading;
  /** Read once more at the station that was first, at the end. */
  readonly again?: AltimeterReading | undefined;
  /** A second altimeter that stayed in one place, read from beginning to end. */
  readonly base?: readonly AltimeterReading[] | undefined;
  /** Smallest step that it shows: it is read to half of it. */
  readonly division: Quantity<"length">;
  /** The air that its scale is made for; the standard atmosphere by default. */
  readonly scale?: "standard atmosphere" | "isothermal 50 °F" | undefined;
  /** Pressure of the air, which counts only where there is vapour in it. */
  readonly airPressure?: Point<"vacuum"> | undefined;
  /** Names the sources of uncertainty. `altimeter` by default. */
  readonly name?: string | undefined;
}

const what = "altimeter-head";

/**
 * Height between two stations from one altimeter that was carried, the weather and the warmth of the air taken off.
 *
 * As `barometerHead`, on the scale of the instrument: a hectopascal of weather shows as 8.5 m. The height itself is
 * `altimeterHeight`. Do not set the scale between the readings.
 *
 * @param input - The readings and the air.
 * @param options - Notices, which the result holds too, and what is assumed.
 * @returns Head and notices.
 * @throws NonPhysicalError readings without a time or out of order, a base that was not read throughout, a division
 * that is none, an upper station that does not show more.
 * @throws OutOfValidityError air outside that of `altimeterHeight`, and `onNotice` is absent.
 * @example
 * ```ts
 * const at = (time: number, altitude: number) => ({ time: hour.of(time), altitude: foot.of(altitude) });
 * const { head } = altimeterHead({
 *   lower: at(9, 1240),
 *   upper: at(9.5, 1410),
 *   base: [at(9, 1240), at(9.5, 1245)],
 *   airTemperature: fahrenheit.at(78),
 *   division: foot.of(5),
 * });
 * format(head, foot, { plusMinus: true }); // => "172.6 ± 6.2 ft (k = 1.96)"
 * ```
 */
export function altimeterHead(input: AltimeterInput, options: CallOptions = {}): AirHead {
  const { lower, upper, again, base, division, scale, vapourPressure, airPressure } = input;
  const { name = "altimeter" } = input;
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
    rate: 8.5 / hour.of(1)["~si"],
    rateText: "8.5 m an hour",
  });
  // The first station is brought to the time of the second one.
  const moved = metre
    .of(drift.change)
    .within(metre.of(drift.half), `${name}.weather`)
    .plusMinus(standardSpread(readToHalf(division["~si"], drift)), `${name}.readings`);
  const lowerFirst = lower.time["~si"] <= upper.time["~si"];
  const lowerReading = lowerFirst ? lower.altitude.plus(moved) : lower.altitude;
  const upperReading = lowerFirst ? upper.altitude : upper.altitude.plus(moved);
  if (!(upperReading["~si"] > lowerReading["~si"])) {
    const [high, low] = [upperReading, lowerReading].map((q) => inUnitOf(upper.altitude, q["~si"]));
    refuseIf([
      fault(
        what,
        ["upper", "altitude"],
        `the upper station shows ${high}, not more than the lower one's ${low} at the same moment. See whether the stations are exchanged.`,
      ),
    ]);
  }
  const head = altimeterHeight(
    {
      lowerReading,
      upperReading,
      airTemperature: withSpread(what, input.airTemperature, name, options),
      scale,
      vapourPressure,
      airPressure,
    },
    options,
  );
  return told(what, head, drift, upper.altitude, options);
}

const timed = ({ time, altitude }: AltimeterReading): Timed => ({
  time: time["~si"],
  value: altitude["~si"],
});

function stationProblems(path: readonly (string | number)[], reading: AltimeterReading): Notice[] {
  const problems = timeProblems(what, path, reading.time);
  if (!isQuantity(reading.altitude) || reading.altitude.kind !== "length") {
    problems.push(
      fault(
        what,
        [...path, "altitude"],
        `${path.join(".")}.altitude is missing. Give what the altimeter shows, a length.`,
      ),
    );
  }
  return problems;
}
