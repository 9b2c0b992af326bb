import type { Notice } from "@leat/formula";
import type { Quantity } from "@leat/quantity";

import { type NoticeOptions, refusal, requireKind, tell } from "../refusal.ts";

/** A point of a pipe's run. */
export interface RunPoint {
  /** What it is called on site. */
  readonly name?: string | undefined;
  /** Along the pipe from the intake. */
  readonly distance: Quantity<"length">;
  /** Height of the pipe's bottom over any one level. */
  readonly height: Quantity<"length">;
}

/** A pipe from its intake to its end, which lets its water out. */
export interface DrainPointsInput {
  /** Its points in order, the first at the intake and the last at the open end. */
  readonly points: readonly RunPoint[];
}

/** A point at which the run turns. */
export interface TurningPoint {
  /** Which of the points, counted from 0; the first of a level stretch. */
  readonly index: number;
  /** Its name. */
  readonly name: string | undefined;
  /** Along the pipe from the intake. */
  readonly distance: Quantity<"length">;
  /** For a low point how deep water stands over it, for a high point how far it stands over the lower of its sides. */
  readonly depth: Quantity<"length">;
}

/** Where a pipe must be drained and vented before frost. */
export interface DrainPoints {
  /** Low points, which need a drain. */
  readonly lows: readonly TurningPoint[];
  /** High points between them, which need air to come in. */
  readonly highs: readonly TurningPoint[];
  /** What is to be said of them. */
  readonly notices: readonly Notice[];
}

const id = "drain-points";

/**
 * The low points at which a pipe holds water when it is shut at the intake and open at its end, and the high points
 * that must let air in.
 *
 * A pipe that falls all the way drains itself. A level stretch holds water wherever it sags: it is not listed, and must
 * be looked at on the hillside.
 *
 * @param input - The run.
 * @param options - Told of every notice.
 * @returns Low and high points, in the order of the run.
 * @throws NonPhysicalError fewer than two points; a point that is not farther along than the one before.
 * @throws QuantityError `kind` for anything of another kind.
 * @example
 * ```ts
 * import { drainPoints } from "@leat/intake";
 * import { metre } from "@leat/quantity";
 *
 * const { lows, highs } = drainPoints({
 *   points: [
 *     { name: "intake", distance: metre.of(0), height: metre.of(30) },
 *     { name: "gully", distance: metre.of(60), height: metre.of(12) },
 *     { name: "spur", distance: metre.of(90), height: metre.of(15) },
 *     { name: "wheel house", distance: metre.of(200), height: metre.of(0) },
 *   ],
 * });
 * lows.map(({ name, depth }) => `${name}: ${depth}`); // => ["gully: 3 m"]
 * highs.map(({ name }) => name); // => ["spur"]
 * ```
 */
export function drainPoints(input: DrainPointsInput, options: NoticeOptions = {}): DrainPoints {
  const { points } = input;
  requireRun(points);
  const turns = turnsOf(points);
  const heightOf = (index: number): Quantity<"length"> => points[index]!.height;
  const turning = (place: number): TurningPoint => {
    const index = turns[place]!;
    const { name, distance, height } = points[index]!;
    const [before, after] = [heightOf(turns[place - 1]!), heightOf(turns[place + 1]!)];
    const low = before.greaterThan(height);
    const lesser = before.lessThan(after) ? before : after;
    return { index, name, distance, depth: low ? lesser.minus(height) : height.minus(lesser) };
  };
  const inner = turns.map((_, place) => place).slice(1, -1);
  const isLow = (place: number): boolean =>
    heightOf(turns[place - 1]!).greaterThan(heightOf(turns[place]!));
  const lows = inner.filter(isLow).map(turning);
  const highs = inner.filter((place) => !isLow(place)).map(turning);
  const notices = lows.map(({ index, name, distance, depth }): Notice => ({
    code: "freezing/holds-water",
    severity: "caution",
    path: ["points", index],
    message: `${id}: ${name ?? `point ${index + 1}`}, ${String(distance)} along, holds ${String(depth)} of water when the pipe is shut down. Put a drain there, or it freezes and bursts.`,
    actual: String(depth),
  }));
  return { lows, highs, notices: tell(notices, options) };
}

/** First points of the stretches at which the run turns from falling to rising or back, and both ends. */
function turnsOf(points: readonly RunPoint[]): number[] {
  const turns = [0];
  let last = 0;
  for (let i = 1; i < points.length; i += 1) {
    const step = Math.sign(points[i]!.height["~si"] - points[i - 1]!.height["~si"]);
    if (step === 0) continue;
    if (last !== 0 && step !== last) {
      // The first point of the level stretch before this step.
      let at = i - 1;
      while (points[at]!.height.equals(points[at - 1]!.height)) at -= 1;
      turns.push(at);
    }
    last = step;
  }
  turns.push(points.length - 1);
  return turns;
}

function requireRun(points: readonly RunPoint[]): void {
  if (points.length < 2) {
    throw refusal(
      "freezing/no-run",
      ["points"],
      `${id}: points has ${points.length}, and a run needs two or more. Give the intake first and the open end last.`,
      { actual: String(points.length), limit: "at least 2" },
    );
  }
  points.forEach(({ distance, height }, index) => {
    requireKind(id, ["points", index, "distance"], distance, "length");
    requireKind(id, ["points", index, "height"], height, "length");
    const before = points[index - 1]?.distance;
    if (before && !distance.greaterThan(before)) {
      throw refusal(
        "freezing/not-along",
        ["points", index, "distance"],
        `${id}: points.${index}.distance = ${String(distance)} is no farther along than ${String(before)}, the one before. Give the points in order from the intake.`,
        { actual: String(distance), limit: `above ${String(before)}` },
      );
    }
  });
}
