import { formula, input, output, ratio } from "@leat/formula";

import { bos } from "../sources.ts";

/** Share of the head that the tail water may reach, over the head in lengths of the crest. */
export function modularLimit(headInLengths: number): number {
  return 0.66 - (0.28 / 1.17) * Math.max(headInLengths - 0.33, 0);
}

/**
 * How high the tail water may stand over a rectangular broad crest, as a share of the head, before it holds the flow
 * back: the modular limit of a crest with an upright back.
 *
 *     S = 0.66 up to h/L = 0.33, then a straight line to 0.38 at h/L = 1.5
 *
 * 0.66 was read in a text that quotes the handbook; 0.38 and the line between are from memory, to be confirmed.
 * The source compares energy heads; levels over the crest are taken for them here, on both sides.
 *
 * @throws OutOfValidityError a limit is exceeded and `onNotice` is absent.
 * @example
 * ```ts
 * import { broadCrestedModularLimit } from "@leat/flow-measurement";
 * import { metre, one } from "@leat/quantity";
 *
 * const limit = broadCrestedModularLimit({ head: metre.of(0.2), crestLength: metre.of(0.5) });
 * limit.in(one).toFixed(2); // => "0.64"
 * ```
 */
export const broadCrestedModularLimit = /* @__PURE__ */ formula(() => ({
  id: "broad-crested-modular-limit",
  equation: "S = 0.66 − 0.28/1.17 · max(h/L − 0.33, 0)",
  inputs: {
    /** Level above the crest, measured upstream of the drawdown. */
    head: input("length", "h"),
    /** Length of the crest along the stream. */
    crestLength: input("length", "L", { domain: "positive" }),
  },
  output: output("ratio", "S"),
  limits: [ratio("head", "crestLength", { min: 0.08, max: 1.5 }, bos.at("ch. 4", "secondary"))],
  source: bos.at("ch. 4, rectangular broad-crested weir", "memory"),
  body: ({ h, L }) => modularLimit(h / L),
}));
