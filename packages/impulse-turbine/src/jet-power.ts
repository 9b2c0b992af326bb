import { firstPrinciples, formula, input, output } from "@leat/formula";

/**
 * Power of a jet, on plain numbers in coherent units.
 *
 * @param density - Density of the water.
 * @param flow - Volume flow of the jet.
 * @param velocity - Velocity of the jet where it is narrowest.
 * @returns The power.
 */
export function jetPowerOf(density: number, flow: number, velocity: number): number {
  return 0.5 * density * flow * velocity * velocity;
}

/**
 * Power that a free jet carries: its kinetic energy per time.
 *
 *     P = 1/2 · ρ·Q·V²
 *
 * The velocity is that of the jet where it is narrowest, its velocity coefficient included.
 *
 * @throws NonPhysicalError a negative flow or velocity, a density of zero or less.
 */
export const jetPower = /* @__PURE__ */ formula(() => ({
  id: "jet-power",
  equation: "P = 1/2 · ρ·Q·V²",
  inputs: {
    /** Density at the temperature of the water. */
    density: input("density", "ρ", { domain: "positive" }),
    /** Volume flow of the jet, or of all jets of one velocity. */
    flow: input("volume flow", "Q"),
    /** Velocity of the jet where it is narrowest. */
    velocity: input("velocity", "V"),
  },
  output: output("hydraulic power", "P"),
  source: firstPrinciples.at("kinetic energy per time"),
  body: ({ ρ, Q, V }) => jetPowerOf(ρ, Q, V),
}));
