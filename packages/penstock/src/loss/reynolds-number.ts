import { firstPrinciples, formula, input, output } from "@leat/formula";

/**
 * Reynolds number, on plain numbers in coherent units.
 *
 * @param velocity - Mean velocity in the pipe.
 * @param diameter - Inside diameter.
 * @param viscosity - Kinematic viscosity of the water.
 * @returns The Reynolds number.
 */
export function reynoldsNumberOf(velocity: number, diameter: number, viscosity: number): number {
  return (velocity * diameter) / viscosity;
}

/**
 * Reynolds number of the flow in a round pipe.
 *
 *     Re = V·D/ν
 *
 * @throws NonPhysicalError a negative velocity, a diameter or viscosity of zero or less.
 */
export const reynoldsNumber = /* @__PURE__ */ formula(() => ({
  id: "reynolds-number",
  equation: "Re = V·D/ν",
  inputs: {
    /** Mean velocity in the pipe. */
    velocity: input("velocity", "V"),
    /** Bore of the pipe, not its nominal size. */
    insideDiameter: input("length", "D", { domain: "positive" }),
    /** Kinematic viscosity at the temperature of the water. */
    kinematicViscosity: input("kinematic viscosity", "ν", { domain: "positive" }),
  },
  output: output("ratio", "Re"),
  source: firstPrinciples.at("definition of the Reynolds number of a pipe"),
  body: ({ V, D, ν }) => reynoldsNumberOf(V, D, ν),
}));
