import { bound, firstPrinciples, formula, input, output } from "@leat/formula";

import { gravityInput } from "../gravity-input.ts";

interface Letters {
  readonly ρp: number;
  readonly ρ: number;
  readonly d: number;
  readonly μ: number;
  readonly g: number;
}

function stokesOf({ ρp, ρ, d, μ, g }: Letters): number {
  return ((ρp - ρ) * g * d * d) / (18 * μ);
}

/**
 * How fast a small round grain sinks in still water, by Stokes.
 *
 *     w = (ρp − ρ)·g·d²/(18·μ)
 *
 * For silt: water must creep around the grain. At a Reynolds number of 1 a sphere already sinks an eighth slower than
 * this; {@link grainVelocity} goes on from there.
 *
 * @throws NonPhysicalError a grain of no size, water without viscosity.
 * @throws OutOfValidityError a grain so large that its wake is felt, or lighter than water, and `onNotice` is absent.
 * @example
 * ```ts
 * import { stokesVelocity } from "@leat/intake";
 * import { kilogramPerCubicMetre, millimetre, millipascalSecond } from "@leat/quantity";
 *
 * const velocity = stokesVelocity({
 *   grainSize: millimetre.of(0.07),
 *   grainDensity: kilogramPerCubicMetre.of(2600),
 *   density: kilogramPerCubicMetre.of(1000),
 *   viscosity: millipascalSecond.of(1),
 * });
 * (velocity["~si"] * 1000).toFixed(2); // => "4.27"
 * ```
 */
export const stokesVelocity = /* @__PURE__ */ formula(() => ({
  id: "stokes-velocity",
  equation: "w = (ρp - ρ)·g·d^2/(18·μ)",
  inputs: {
    /** Diameter of the grain. */
    grainSize: input("length", "d", { domain: "positive" }),
    /** Density of the grain itself. */
    grainDensity: input("density", "ρp", { domain: "positive" }),
    /** Density of the water. */
    density: input("density", "ρ", { domain: "positive" }),
    /** Dynamic viscosity of the water. */
    viscosity: input("dynamic viscosity", "μ", { domain: "positive" }),
    /** Gravity at the site. */
    gravity: gravityInput(),
  },
  output: output("velocity", "w"),
  limits: [
    bound(
      "grainSize",
      "Reynolds number of the grain",
      (letters: Letters) => (stokesOf(letters) * letters.d * letters.ρ) / letters.μ,
      { max: 1 },
      firstPrinciples.at("creeping flow around a sphere"),
    ),
    bound(
      "grainDensity",
      "grainDensity/density",
      ({ ρp, ρ }: Letters) => ρp / ρ,
      { min: 1 },
      firstPrinciples.at("a grain that sinks"),
    ),
  ],
  source: firstPrinciples.at("Stokes' drag of a sphere"),
  body: ({ ρp, ρ, d, μ, g }) => stokesOf({ ρp, ρ, d, μ, g }),
}));
