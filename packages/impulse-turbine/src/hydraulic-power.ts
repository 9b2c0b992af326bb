import { firstPrinciples, formula, input, output } from "@leat/formula";
import { metrePerSecondSquared } from "@leat/quantity";

/**
 * Power of water, on plain numbers in coherent units.
 *
 * @param density - Density of the water.
 * @param gravity - Gravity at the site.
 * @param flow - Volume flow.
 * @param head - Head that the flow has, or loses.
 * @returns The power.
 */
export function hydraulicPowerOf(
  density: number,
  gravity: number,
  flow: number,
  head: number,
): number {
  return density * gravity * flow * head;
}

/**
 * Power of a flow of water that falls through a head, or loses it.
 *
 *     P = ρ·g·Q·h
 *
 * The head may be gross, net or lost: the power is then what the fall offers, what the nozzle gets, or what a loss costs.
 *
 * @throws NonPhysicalError a negative flow or head, a density or gravity of zero or less.
 * @example
 * ```ts
 * import { hydraulicPower } from "@leat/impulse-turbine";
 * import { kilogramPerCubicMetre, litrePerSecond, metre } from "@leat/quantity";
 *
 * const p = hydraulicPower({
 *   density: kilogramPerCubicMetre.of(999.7),
 *   flow: litrePerSecond.of(10),
 *   head: metre.of(30).as("net head"),
 * });
 * p["~si"].toFixed(0); // => "2941"
 * ```
 */
export const hydraulicPower = /* @__PURE__ */ formula(() => ({
  id: "hydraulic-power",
  equation: "P = ρ·g·Q·h",
  inputs: {
    /** Density at the temperature of the water. */
    density: input("density", "ρ", { domain: "positive" }),
    /** Volume flow. */
    flow: input("volume flow", "Q"),
    /** Head that the flow has, or loses. */
    head: input(["gross head", "net head", "head loss", "length"], "h"),
    /** Gravity at the site. */
    gravity: input("acceleration", "g", {
      domain: "positive",
      default: metrePerSecondSquared.of(9.80665),
      because: firstPrinciples.at("standard gravity, exact by convention"),
    }),
  },
  output: output("hydraulic power", "P"),
  source: firstPrinciples.at("weight per time through a height"),
  body: ({ ρ, g, Q, h }) => hydraulicPowerOf(ρ, g, Q, h),
}));
