import { type Citation, commonPractice } from "@leat/formula";
import { percent, type Quantity } from "@leat/quantity";

import { bos, iso1438, usbrWaterMeasurementManual } from "../sources.ts";

/** How well a weir formula knows the flow of a weir that is built as it asks, with nothing wrong in head and width. */
export interface EquationUncertainty {
  /** Half the 95 % interval, over the flow. */
  readonly relative: Quantity<"ratio">;
  /** Whose figure it is. */
  readonly source: Citation;
}

/**
 * The equation's own uncertainty by the id of its formula, at 95 %.
 *
 * Where a source gives less for one part of the range than for another, the figure is that of the usual part:
 * Kindsvater–Carter and Rehbock with the head below the crest's height (beyond it 2 to 3 %). A plate that is
 * not as it should be is not in it: a rounded edge or a sheet that clings costs more than all of these.
 *
 * @example
 * ```ts
 * import { cipollettiDischarge, weirEquationUncertainty } from "@leat/flow-measurement";
 * import { percent } from "@leat/quantity";
 *
 * weirEquationUncertainty[cipollettiDischarge.id]?.relative.in(percent); // => 5
 * ```
 */
export const weirEquationUncertainty: Readonly<Record<string, EquationUncertainty>> =
  /* @__PURE__ */ (() => ({
    "v-notch-discharge": {
      relative: percent.of(1),
      source: iso1438.at("cl. 10.7", "memory"),
    },
    "partly-contracted-v-notch-discharge": {
      relative: percent.of(2),
      source: bos.at("ch. 5, partially contracted V-notch", "memory"),
    },
    "kindsvater-carter-discharge": {
      relative: percent.of(1.5),
      source: iso1438.at("cl. 11, head below the height of the crest", "memory"),
    },
    "rehbock-discharge": {
      relative: percent.of(1.5),
      source: iso1438.at("cl. 11, head below the height of the crest", "memory"),
    },
    "francis-suppressed-discharge": {
      relative: percent.of(3),
      source: commonPractice.at("spread between the printed laws of the same weir", "practice"),
    },
    "francis-contracted-discharge": {
      relative: percent.of(3),
      source: commonPractice.at("spread between the printed laws of the same weir", "practice"),
    },
    "francis-approach-discharge": {
      relative: percent.of(5),
      source: commonPractice.at("spread between the printed laws of the same weir", "practice"),
    },
    "cipolletti-discharge": {
      relative: percent.of(5),
      source: usbrWaterMeasurementManual.at("ch. 7, sec. 12(a)"),
    },
    "broad-crested-discharge": {
      relative: percent.of(5),
      source: bos.at("ch. 4, rectangular broad-crested weir", "memory"),
    },
  }))();
