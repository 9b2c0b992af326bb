import { type CallOptions, commonPractice, type Notice } from "@leat/formula";
import { metre, type Point, point, type Quantity } from "@leat/quantity";

import { refuseIf, fault } from "../refusal.ts";
import { waterToNozzleHead } from "./water-to-nozzle.ts";

/** A fall between two marks, and what stands where beside them. */
export interface FallInput {
  /** Height between the marks, by whatever way it was measured. */
  readonly fall: Quantity<"gross head"> | Quantity<"length">;
  /** Water level of the intake above the upper mark; negative below. */
  readonly waterAboveUpperMark: Quantity<"length">;
  /** Centre line of the nozzle above the lower mark; negative below. */
  readonly nozzleAboveLowerMark: Quantity<"length">;
  /** Level of the tail water above the lower mark; negative below. */
  readonly tailWaterAboveLowerMark?: Quantity<"length"> | undefined;
  /** Highest flood mark above the lower mark; negative below. */
  readonly floodAboveLowerMark?: Quantity<"length"> | undefined;
  /** Level of the lower mark; zero of a datum called `lower mark` by default. */
  readonly lowerMark?: Point<"site datum"> | undefined;
}

/** Levels of a fall, over one datum, and the heights between them. */
export interface Fall {
  /** Water level of the intake above the nozzle. */
  readonly head: Quantity<"gross head">;
  /** Water level of the intake. */
  readonly water: Point<"site datum">;
  /** Centre line of the nozzle. */
  readonly nozzle: Point<"site datum">;
  /** Level of the tail water, where it is known. */
  readonly tailWater: Point<"site datum"> | undefined;
  /** Highest flood mark, where it is known. */
  readonly flood: Point<"site datum"> | undefined;
  /** Nozzle above the tail water: what is left of the fall below it. */
  readonly nozzleAboveTailWater: Quantity<"length"> | undefined;
  /** Nozzle above the flood mark; negative below. */
  readonly nozzleAboveFlood: Quantity<"length"> | undefined;
  /** What is to be said of it. */
  readonly notices: readonly Notice[];
}

const what = "fall-between";

/**
 * Levels of a fall: the water of the intake, the nozzle, the tail water and the flood mark over one datum.
 *
 * The head counts from the water level of the intake to the centre line of the nozzle. Marks are seldom there: a
 * peg stands beside the pipe's mouth, and the water above it; the nozzle stands on a floor above the lower peg. What
 * lies below the nozzle is lost to a wheel that throws its water off: the tail water must stay clear of it, in a flood
 * too, or the building must be one that can stand in water.
 *
 * @param input - The fall between the marks, and heights from the marks.
 * @param options - Notices, which the result holds too.
 * @returns Levels, heights and notices.
 * @throws NonPhysicalError a nozzle that is not below the water of the intake.
 * @example
 * ```ts
 * const { head, nozzleAboveFlood } = fallBetween({
 *   fall: foot.of(112.4),
 *   waterAboveUpperMark: inch.of(14),
 *   nozzleAboveLowerMark: inch.of(30),
 *   floodAboveLowerMark: foot.of(1),
 * });
 * format(head, foot, 5); // => "111.07 ft"
 * nozzleAboveFlood?.in(foot).toFixed(1); // => "1.5"
 * ```
 */
export function fallBetween(input: FallInput, options: CallOptions = {}): Fall {
  const { fall, waterAboveUpperMark, nozzleAboveLowerMark } = input;
  const { tailWaterAboveLowerMark, floodAboveLowerMark } = input;
  const { lowerMark = point("site datum", metre.of(0), "lower mark") } = input;
  const head = waterToNozzleHead({ fall, waterAboveUpperMark, nozzleAboveLowerMark }, options);
  if (!(head["~si"] > 0)) {
    refuseIf([
      fault(
        what,
        ["fall"],
        `the nozzle is not below the water of the intake: ${fall.toString()} between the marks, less ${nozzleAboveLowerMark.toString()} to the nozzle, and ${waterAboveUpperMark.toString()} to the water. Check the signs.`,
      ),
    ]);
  }
  const nozzle = lowerMark.plus(nozzleAboveLowerMark);
  const tailWater = tailWaterAboveLowerMark && lowerMark.plus(tailWaterAboveLowerMark);
  const flood = floodAboveLowerMark && lowerMark.plus(floodAboveLowerMark);
  const notices = [
    ...drowned(
      "tailWaterAboveLowerMark",
      "tail water",
      nozzleAboveLowerMark,
      tailWaterAboveLowerMark,
    ),
    ...drowned("floodAboveLowerMark", "flood mark", nozzleAboveLowerMark, floodAboveLowerMark),
  ];
  for (const notice of notices) options.onNotice?.(notice);
  return {
    head,
    water: nozzle.plus(head.as("length")),
    nozzle,
    tailWater,
    flood,
    // Between heights from the mark, so that the mark's own uncertainty is not in them.
    nozzleAboveTailWater:
      tailWaterAboveLowerMark && nozzleAboveLowerMark.minus(tailWaterAboveLowerMark),
    nozzleAboveFlood: floodAboveLowerMark && nozzleAboveLowerMark.minus(floodAboveLowerMark),
    notices,
  };
}

/** A nozzle that water reaches. */
function drowned(
  key: string,
  mark: "tail water" | "flood mark",
  nozzle: Quantity<"length">,
  level: Quantity<"length"> | undefined,
): Notice[] {
  if (!level || nozzle["~si"] > level["~si"]) return [];
  const advice =
    mark === "flood mark"
      ? "Set the machine higher, or count on stopping it and on wet windings."
      : "Set the machine higher: the wheel would run in water.";
  return [
    {
      code: `${what}/below-${mark.replace(" ", "-")}`,
      severity: "caution",
      path: [key],
      message: `${what}: the nozzle, ${nozzle.toString()} above the lower mark, is not above the ${mark}, ${level.toString()} above it. ${advice}`,
      actual: nozzle.toString(),
      limit: `above ${level.toString()}`,
      source: commonPractice.at("a wheel that throws its water off stands clear of it", "practice"),
    },
  ];
}
