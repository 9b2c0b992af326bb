import { commonPractice, type Notice } from "@leat/formula";
import { linearCurve } from "@leat/numerics";
import { hour, isQuantity, type Quantity } from "@leat/quantity";

import { refuseIf, fault } from "../refusal.ts";

/** A reading of an instrument that the weather moves, in coherent units. */
export interface Timed {
  /** Seconds, from any beginning. */
  readonly time: number;
  /** What it shows. */
  readonly value: number;
}

/** What the weather did between the two stations. */
export interface Drift {
  /** Change of the reading at one place from the first station's time to the second's. */
  readonly change: number;
  /** What may be wrong with that change: half of a rectangle. */
  readonly half: number;
  /** How many readings, by the squares of their shares, the height rests on. */
  readonly readings: number;
  /** What is to be said of it. */
  readonly notices: readonly Notice[];
}

/** What is known of the weather while one instrument was carried. */
export interface Weather {
  /** Name of the function, for messages. */
  readonly what: string;
  /** The station that was read first. */
  readonly first: Timed;
  /** The other station. */
  readonly second: Timed;
  /** The first station once more, at the end. */
  readonly again?: Timed | undefined;
  /** An instrument that stayed where it was. */
  readonly base?: readonly Timed[] | undefined;
  /** How much the weather may move a reading in a second, where nothing was done about it. */
  readonly rate: number;
  /** That, in words. */
  readonly rateText: string;
}

/**
 * What the weather did from one station to the other: seen by an instrument that stood still, or taken as even
 * between two readings at the first station.
 */
export function driftBetween(weather: Weather): Drift {
  const { what, first, second, again, base, rate, rateText } = weather;
  if (base) return againstBase(what, first, second, base);
  if (again) return closedDrift(what, first, second, again);
  const elapsed = Math.abs(second.time - first.time);
  if (elapsed === 0) return { change: 0, half: 0, readings: 2, notices: [] };
  const source = commonPractice.at("a change of the weather", "practice");
  return {
    change: 0,
    half: rate * elapsed,
    readings: 2,
    notices: [
      {
        code: `${what}/drift-unknown`,
        severity: "caution",
        path: [],
        message: `${what}: nothing shows what the weather did between the two readings; ${rateText} is counted either way. Leave a second instrument at one station, or go back to the first one.`,
        source,
      },
    ],
  };
}

function closedDrift(what: string, first: Timed, second: Timed, again: Timed): Drift {
  const share = (second.time - first.time) / (again.time - first.time);
  if (!(share >= 0 && share <= 1)) {
    refuseIf([
      fault(
        what,
        ["again", "time"],
        `again.time = ${hours(again.time)} does not follow the other two readings, the last of them at ${hours(second.time)}. Give times of one day in their order.`,
      ),
    ]);
  }
  const total = again.value - first.value;
  return {
    change: share * total,
    // The weather need not have moved evenly.
    half: Math.abs(total) / 2,
    readings: 1 + (1 - share) * (1 - share) + share * share,
    notices: [],
  };
}

function againstBase(what: string, first: Timed, second: Timed, base: readonly Timed[]): Drift {
  const problems: Notice[] = [];
  if (base.length < 2)
    problems.push(
      fault(what, ["base"], "base has fewer than two readings. Read it before and after."),
    );
  base.forEach(({ time }, i) => {
    const before = base[i - 1];
    if (before && !(time > before.time))
      problems.push(
        fault(
          what,
          ["base", i, "time"],
          `base.${i}.time = ${hours(time)} does not follow ${hours(before.time)}. Give its readings in their order.`,
        ),
      );
  });
  const [from, to] = [base[0], base.at(-1)];
  for (const { time } of [first, second]) {
    if (problems.length > 0 || !from || !to || (time >= from.time && time <= to.time)) continue;
    problems.push(
      fault(
        what,
        ["base"],
        `base was read from ${hours(from.time)} to ${hours(to.time)}, and not at ${hours(time)}, when the other was. Read it for as long as the other is carried.`,
      ),
    );
  }
  refuseIf(problems);
  const stood = linearCurve(
    base.map(({ time }) => time),
    base.map(({ value }) => value),
  );
  return {
    change: stood.at(second.time) - stood.at(first.time),
    half: 0,
    readings: 4,
    notices: [],
  };
}

/** A time of day as it is written. */
function hours(seconds: number): string {
  return hour.of(hour.fromSI(seconds)).toString();
}

/** What is wrong with the time of a reading. */
export function timeProblems(
  what: string,
  path: readonly (string | number)[],
  time: Quantity<"time"> | undefined,
): Notice[] {
  return isQuantity(time) && time.kind === "time"
    ? []
    : [
        fault(
          what,
          [...path, "time"],
          `${path.join(".")}.time is missing. Give the time of day, as hours.`,
        ),
      ];
}
