import { NonPhysicalError, type Notice } from "@leat/formula";
import type { Quantity } from "@leat/quantity";

import type { NoticeOptions } from "./calibration.ts";
import type { SaltSlug } from "./slug.ts";
import { streamlineSalt } from "./sources.ts";
import { spreadBy } from "./spread.ts";

/** Two probes and what they say together. */
export interface ProbeComparison {
  /** Mean of the two flows, with the mixing that their difference shows. */
  readonly flow: Quantity<"volume flow">;
  /** Second less first, over their mean; what they share in mass and calibration is not in its uncertainty. */
  readonly difference: Quantity<"ratio">;
  /** `mixed` up to 5 %, `doubtful` up to 10 %, else `not mixed`. */
  readonly judged: "mixed" | "doubtful" | "not mixed";
  /** What is to be told. */
  readonly notices: readonly Notice[];
}

/** Up to here two banks are taken as mixed, and from here on as not. */
const mixedUpTo = 0.05;
const doubtfulUpTo = 0.1;

/**
 * Compares two probes that saw one slug: at either bank, or one below the other.
 *
 * The flow is the mean of the two. Its standard uncertainty from mixing is half of their difference, but not less than that of two banks
 * that differ by 5 %, since two probes can agree by chance: two probes on one side see little of it. What the two share, mass and
 * calibration, is counted once. One below the other they show lost salt and gained water too.
 *
 * @param probes - The two, by different names.
 * @param options - Told of notices.
 * @returns The mean, the difference, and what it means.
 * @throws NonPhysicalError two probes by one name: their own uncertainties would be taken for one.
 * @example
 * ```ts
 * import { compareProbes, saltSlug } from "@leat/flow-measurement";
 * import { gram, microsiemensPerCentimetre, percent } from "@leat/quantity";
 * import { Column } from "@leat/quantity/column";
 *
 * // Invented records: the right bank sees 14 % less of the cloud.
 * const time = Float64Array.from({ length: 120 }, (_, i) => 5 * i);
 * const probe = (name: string, height: number) =>
 *   saltSlug({
 *     name,
 *     time,
 *     conductivity: Column.of(
 *       microsiemensPerCentimetre,
 *       Array.from(time, (t) => 62 + (t < 100 ? 0 : height * (t - 100) * Math.exp(-(t - 100) / 40))),
 *     ),
 *     basis: "at 25 °C",
 *     mass: gram.of(100),
 *   });
 * const { difference, judged } = compareProbes([probe("left", 1.2), probe("right", 1.04)]);
 * difference.in(percent).toFixed(0); // => "14"
 * judged; // => "not mixed"
 * ```
 */
export function compareProbes(
  probes: readonly [Pick<SaltSlug, "name" | "flowAtProbe">, Pick<SaltSlug, "name" | "flowAtProbe">],
  options: NoticeOptions = {},
): ProbeComparison {
  const [a, b] = probes;
  const who = `${a.name} and ${b.name}`;
  if (a.name === b.name) {
    throw new NonPhysicalError([
      {
        code: "same-name",
        severity: "stop",
        path: [1, "name"],
        message: `compare-probes: both probes are called ${a.name}, and their own uncertainties would be taken for one. Give each its name.`,
      },
    ]);
  }
  const mean = a.flowAtProbe.plus(b.flowAtProbe).dividedBy(2);
  const apart = b.flowAtProbe.minus(a.flowAtProbe);
  const difference = apart.dividedBy(mean);
  const share = Math.abs(difference["~si"]);
  const judged = share <= mixedUpTo ? "mixed" : share <= doubtfulUpTo ? "doubtful" : "not mixed";
  const least = (mixedUpTo / 2) * mean["~si"];
  const flow = spreadBy(mean, [[`${who}: mixing`, Math.max(Math.abs(apart["~si"]) / 2, least)]]);
  const notices: Notice[] = [];
  if (judged !== "mixed") {
    notices.push({
      code: judged === "doubtful" ? "mixing-doubtful" : "not-mixed",
      severity: "caution",
      path: ["probes"],
      message: `compare-probes: ${who} differ by ${(100 * share).toFixed(1)} %: the salt is ${judged === "doubtful" ? "hardly" : "not"} mixed. Throw it in further up, or in a narrower, rougher place.`,
      actual: `${(100 * share).toFixed(1)} %`,
      limit: `at most ${100 * mixedUpTo} %`,
      source: streamlineSalt.at("part 1: dilution gauging can be precise to within 5 %"),
    });
  }
  notices.forEach((notice) => options.onNotice?.(notice));
  return { flow, difference, judged, notices };
}
