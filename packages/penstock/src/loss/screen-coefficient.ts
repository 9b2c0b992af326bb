import { commonPractice, formula, input, output } from "@leat/formula";
import { coherentUnit, one } from "@leat/quantity";

import { idelchikHandbook } from "../sources.ts";
import { ringLossOf } from "./ring-loss.ts";

/**
 * Loss coefficient of a perforated plate around or before the mouth of a pipe, on the velocity head in the pipe.
 *
 *     K = ((1 − m) + √c·(1 − m)^0.375)²/m² · (π·D²/(4·A))²      m = open share × (1 − blocked share)
 *
 * What it loses is the narrowing into the holes and the widening behind them. c is what the edge of a hole loses, 0.5 where it
 * is sharp. The older edition of the handbook has the root of 1 − m in place of the power 0.375 and gives 8 % less at half open.
 * The screen of an intake is wide, so that little is lost until leaves lie on it.
 *
 * @throws NonPhysicalError a share below 0 or above 1, an area or a bore of zero or less.
 * @example
 * ```ts
 * import { screenCoefficient } from "@leat/penstock";
 * import { millimetre, one, squareMetre } from "@leat/quantity";
 *
 * const screen = { openShare: one.of(0.4), screenArea: squareMetre.of(0.05), insideDiameter: millimetre.of(100) };
 * screenCoefficient(screen)["~si"].toFixed(3); // => "0.216"
 * screenCoefficient({ ...screen, blockedShare: one.of(0.75) })["~si"].toFixed(2); // => "6.16"
 * ```
 */
export const screenCoefficient = /* @__PURE__ */ formula(() => ({
  id: "screen-coefficient",
  equation: "K = ((1 - m) + √(c)·(1 - m)^0.375)^2/m^2 · (π·D^2/(4·A))^2",
  inputs: {
    /** Area of the holes over the area of the screen. */
    openShare: input("ratio", "p", { domain: "fraction" }),
    /** Share of the holes that leaves cover. */
    blockedShare: input("ratio", "b", {
      domain: "fraction",
      default: one.of(0),
      because: commonPractice.at("a clean screen", "practice"),
    }),
    /** Area of the screen that stands across the flow, holes and plate together. */
    screenArea: input("area", "A", { domain: "positive" }),
    /** Bore of the pipe behind it. */
    insideDiameter: input("length", "D", { domain: "positive" }),
    /** What the edge of a hole loses, as an entrance with such an edge would. */
    edgeCoefficient: input("coefficient", "c", {
      default: coherentUnit("coefficient").of(0.5),
      because: idelchikHandbook.at("diagram 3-1, a sharp edge", "secondary"),
    }),
  },
  output: output("coefficient", "K"),
  steps: { m: { kind: "ratio", equation: "p·(1 - b)", of: ({ p, b }) => p * (1 - b) } },
  source: idelchikHandbook.at("diagram 4-14, sharp-edged ring; 8-1, perforated plate", "secondary"),
  body: ({ p, b, A, D, c }) => {
    const throat = (Math.PI * D * D) / (4 * A);
    return ringLossOf(p * (1 - b), c) * throat * throat;
  },
}));
