import { table } from "@leat/formula";
import { percent } from "@leat/quantity";

import { tennant } from "./sources.ts";

/**
 * What Tennant recommends to leave in a stream, in percent of its mean annual flow, by the condition that it keeps it in: all eight
 * rows as printed.
 *
 * His months are those of streams that are low from October to March and high from April to September. `least` and `most` are the
 * ends of a range where he prints one for the whole year. The method was made on streams of Montana, Nebraska and Wyoming; the
 * percentages elsewhere are for the regulator to say.
 */
export const tennantShares = /* @__PURE__ */ table(() => ({
  id: "tennant-shares",
  key: "condition",
  units: { octoberToMarch: percent, aprilToSeptember: percent, least: percent, most: percent },
  source: tennant.at("table 1"),
  rows: [
    yearRound("flushing or maximum", 200, 200),
    yearRound("optimum range", 60, 100),
    bySeason("outstanding", 40, 60),
    bySeason("excellent", 30, 50),
    bySeason("good", 20, 40),
    bySeason("fair or degrading", 10, 30),
    bySeason("poor or minimum", 10, 10),
    yearRound("severe degradation", 0, 10),
  ],
}));

/** Conditions with a share for each of the two seasons. */
export type TennantCondition =
  | "outstanding"
  | "excellent"
  | "good"
  | "fair or degrading"
  | "poor or minimum";

interface Shares<C extends string> {
  readonly condition: C;
  readonly octoberToMarch: number | undefined;
  readonly aprilToSeptember: number | undefined;
  readonly least: number | undefined;
  readonly most: number | undefined;
  readonly [column: string]: string | number | undefined;
}

function bySeason<const C extends string>(
  condition: C,
  octoberToMarch: number,
  aprilToSeptember: number,
): Shares<C> {
  return { condition, octoberToMarch, aprilToSeptember, least: undefined, most: undefined };
}

function yearRound<const C extends string>(condition: C, least: number, most: number): Shares<C> {
  return { condition, octoberToMarch: undefined, aprilToSeptember: undefined, least, most };
}
