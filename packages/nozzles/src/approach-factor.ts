import { firstPrinciples, formula, input, output, ratio } from "@leat/formula";

/** 1/√(1 − C²·(d/D)⁴): C·(d/D)² is the velocity in the pipe over that of a jet as wide as the opening. */
export function approach(coefficient: number, diameterRatio: number): number {
  const velocities = coefficient * diameterRatio * diameterRatio;
  return 1 / Math.sqrt(1 - velocities * velocities);
}

/**
 * How much more a nozzle passes than the pressure in the pipe alone would drive, because the water arrives
 * with a velocity.
 *
 *     E = 1/√(1 − Cd²·(d/D)⁴)
 *
 * The energy equation gives this form: √(h + V²/(2·g)) over √h, V the velocity in the pipe. Texts that leave the
 * loss in the nozzle out of it write Cc, a ratio of areas, for Cd; at Cv = 0.97 and d/D = 0.6 that is 0.4 %
 * more. Where Cc is given as a ratio of diameters its fourth power stands under the root.
 *
 * @throws NonPhysicalError a diameter not above zero, a coefficient outside 0 to 1, a jet as wide as the pipe.
 * @throws OutOfValidityError an opening wider than the pipe, and `onNotice` is absent.
 * @example
 * ```ts
 * import { approachFactor } from "@leat/nozzles";
 * import { millimetre, one } from "@leat/quantity";
 *
 * const factor = approachFactor({
 *   nozzleDiameter: millimetre.of(25),
 *   pipeDiameter: millimetre.of(50),
 *   dischargeCoefficient: one.of(1).as("coefficient"),
 * });
 * factor.in(one).toFixed(4); // => "1.0328"
 * ```
 */
export const approachFactor = /* @__PURE__ */ formula(() => ({
  id: "approach-factor",
  equation: "E = 1/√(1 − Cd²·(d/D)^4)",
  inputs: {
    /** Diameter of the opening. */
    nozzleDiameter: input("length", "d", { domain: "positive" }),
    /** Bore of the pipe where the pressure is taken. */
    pipeDiameter: input("length", "D", { domain: "positive" }),
    /** Flow over that of the opening without loss or contraction. */
    dischargeCoefficient: input("coefficient", "Cd", { domain: "fraction" }),
  },
  output: output("coefficient", "E"),
  limits: [
    ratio(
      "nozzleDiameter",
      "pipeDiameter",
      { max: 1 },
      firstPrinciples.at("a nozzle narrows the pipe"),
    ),
  ],
  source: firstPrinciples.at("energy from the pipe to the jet, with continuity"),
  body: ({ d, D, Cd }) => approach(Cd, d / D),
}));
