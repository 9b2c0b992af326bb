import { firstPrinciples, formula, input, output } from "@leat/formula";

/**
 * Mean velocity in a round pipe, on plain numbers in coherent units.
 *
 * @param flow - Volume flow.
 * @param diameter - Inside diameter.
 * @returns The velocity.
 */
export function pipeVelocityOf(flow: number, diameter: number): number {
  return (4 * flow) / (Math.PI * diameter * diameter);
}

/**
 * Mean velocity of the flow in a round pipe that runs full.
 *
 *     V = 4·Q/(π·D²)
 *
 * @throws NonPhysicalError a negative flow, a diameter of zero or less.
 * @example
 * ```ts
 * import { pipeVelocity } from "@leat/penstock";
 * import { cubicFootPerSecond, footPerSecond, inch } from "@leat/quantity";
 *
 * const v = pipeVelocity({ flow: cubicFootPerSecond.of(0.5), insideDiameter: inch.of(4) });
 * v.in(footPerSecond).toFixed(2); // => "5.73"
 * ```
 */
export const pipeVelocity = /* @__PURE__ */ formula(() => ({
  id: "pipe-velocity",
  equation: "V = 4·Q/(π·D²)",
  inputs: {
    /** Flow in this pipe: of all jets that it feeds. */
    flow: input("volume flow", "Q"),
    /** Bore of the pipe, not its nominal size. */
    insideDiameter: input("length", "D", { domain: "positive" }),
  },
  output: output("velocity", "V"),
  source: firstPrinciples.at("continuity in a round pipe"),
  body: ({ Q, D }) => pipeVelocityOf(Q, D),
}));
