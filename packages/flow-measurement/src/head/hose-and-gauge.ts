import { firstPrinciples, formula, input, output, pointInput } from "@leat/formula";
import { kilogramPerCubicMetre, metrePerSecondSquared } from "@leat/quantity";

import { iapwsIf97 } from "../sources.ts";

/**
 * Gross head from a gauge at the foot of a hose that is full of still water up to the level of the intake.
 *
 *     H = p/(ρ·g) + z
 *
 * Nothing may flow, and no air may be left in the hose: a bubble in a fall takes its own height off the
 * reading. The gauge reads over the air beside it, which is denser than the air at the intake: the head that it
 * gives is 0.1 % short of the levelled fall, and so is the head that drives a jet into that air.
 *
 * @throws NonPhysicalError density or gravity not above zero.
 * @example
 * ```ts
 * import { hoseAndGaugeHead } from "@leat/flow-measurement";
 * import { foot, metre, point, poundPerSquareInch } from "@leat/quantity";
 *
 * const head = hoseAndGaugeHead({
 *   gauge: point("local atmosphere", poundPerSquareInch.of(50), "hose foot"),
 *   gaugeAboveJet: metre.of(0),
 * });
 * head.in(foot).toFixed(1); // => "115.4"
 * ```
 */
export const hoseAndGaugeHead = /* @__PURE__ */ formula(() => ({
  id: "hose-and-gauge-head",
  equation: "H = p/(ρ·g) + z",
  inputs: {
    /** What the gauge reads: pressure over the air at the gauge. */
    gauge: pointInput("local atmosphere", "p"),
    /** Height of the gauge above the jet; negative where it is below. */
    gaugeAboveJet: input("length", "z", { domain: "any" }),
    /** Density of the water in the hose. */
    density: input("density", "ρ", {
      domain: "positive",
      default: kilogramPerCubicMetre.of(999.7),
      because: iapwsIf97.at("region 1: water at 10 °C and 101 325 Pa"),
    }),
    /** Gravity at the site. */
    gravity: input("acceleration", "g", {
      domain: "positive",
      default: metrePerSecondSquared.of(9.80665),
      because: firstPrinciples.at("standard gravity, exact by convention"),
    }),
  },
  output: output("gross head", "H"),
  source: firstPrinciples.at("hydrostatics"),
  body: ({ p, z, ρ, g }) => p / (ρ * g) + z,
}));
