import type { CallOptions, Notice } from "@leat/formula";
import { coverage95, metre, type Point, type Quantity } from "@leat/quantity";

import { refuseIf, fault } from "../refusal.ts";
import { mapAccuracyStandards } from "./sources.ts";
import { tooVague } from "./spread.ts";

/** Two places on a contour map. */
export interface MapInput {
  /** Height of the upper place: see `contourHeight` for one between two contours. */
  readonly upper: Point<"site datum">;
  /** Height of the lower place, over the same datum. */
  readonly lower: Point<"site datum">;
  /** Height from one contour to the next. */
  readonly interval: Quantity<"length">;
  /** Names the sources of uncertainty. `map` by default. */
  readonly name?: string | undefined;
}

/** What a contour map says of the head. */
export interface MapHead {
  /** Height between the places. */
  readonly head: Quantity<"gross head">;
  /** What is to be said of it. */
  readonly notices: readonly Notice[];
}

const what = "map-head";

/** Half of a 90 % interval of a normal distribution, over its standard uncertainty. */
const coverage90 = 1.6448536269514722;

/**
 * Height between two places on a contour map, each as uncertain as the map may be.
 *
 * The map accuracy standards let one height in ten be wrong by more than half a contour interval. Taken as normal
 * that is 0.596 of the interval at 95 % for one height and 0.843 for a difference. A map that does not say that it
 * keeps the standards may be worse, and a creek in its gorge lies between the contours: good for choosing which
 * valley to walk up, not for a pipe.
 *
 * @param input - The heights and the contour interval.
 * @param options - Notices, which the result holds too, and what is assumed.
 * @returns Head and notices.
 * @throws NonPhysicalError a contour interval that is not above zero, an upper place that is not above the lower one.
 * @throws QuantityError `origin` for heights over two datums.
 * @example
 * ```ts
 * const on = (height: number) => point("site datum", foot.of(height), "quadrangle");
 * const { head } = mapHead({ upper: on(1040), lower: on(850), interval: foot.of(40) });
 * format(head, foot, { plusMinus: true }); // => "190 ± 34 ft (k = 1.96)"
 * ```
 */
export function mapHead(
  { upper, lower, interval, name = "map" }: MapInput,
  options: CallOptions = {},
): MapHead {
  const difference = upper.minus(lower);
  const problems: Notice[] = [];
  if (!(interval["~si"] > 0)) {
    problems.push(
      fault(
        what,
        ["interval"],
        `interval = ${interval.toString()} is not above zero. Give the height from one contour to the next, as the map's margin states it.`,
      ),
    );
  }
  if (!(difference["~si"] > 0)) {
    problems.push(
      fault(
        what,
        ["upper"],
        `upper = ${upper.toString()} is not above lower = ${lower.toString()}. See whether the places are exchanged.`,
      ),
    );
  }
  refuseIf(problems);
  const because = mapAccuracyStandards.at("par. 2, vertical accuracy");
  options.onAssumed?.({
    formula: what,
    input: "interval",
    value: "nine heights in ten within half of it",
    because,
  });
  const half = metre.of((interval["~si"] / 2) * (coverage95 / coverage90));
  const head = difference
    .plusMinus(half, `${name}.upper`)
    .plusMinus(half, `${name}.lower`)
    .as("gross head");
  const notices = tooVague(what, head, interval, because);
  for (const notice of notices) options.onNotice?.(notice);
  return { head, notices };
}
