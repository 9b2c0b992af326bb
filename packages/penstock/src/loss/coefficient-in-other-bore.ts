import { firstPrinciples, formula, input, output } from "@leat/formula";

/**
 * A loss coefficient on the velocity head in another bore, on plain numbers.
 *
 * @param coefficient - Coefficient on the velocity head in its own bore.
 * @param own - Its own bore.
 * @param other - The bore that it is wanted for.
 * @returns The coefficient on the velocity head in the other bore.
 */
export function coefficientInOtherBoreOf(coefficient: number, own: number, other: number): number {
  const ratio = (other * other) / (own * own);
  return coefficient * ratio * ratio;
}

/**
 * A loss coefficient moved to the velocity head in another bore: the same head is lost.
 *
 *     K2 = K1 · (D2/D1)⁴
 *
 * A reducer's coefficient is on the smaller bore; a valve narrower than its pipe has one on its own.
 *
 * @throws NonPhysicalError a bore of zero or less.
 * @example
 * ```ts
 * import { coefficientInOtherBore } from "@leat/penstock";
 * import { coherentUnit, inch } from "@leat/quantity";
 *
 * const k = coefficientInOtherBore({
 *   coefficient: coherentUnit("coefficient").of(1),
 *   ownBore: inch.of(2),
 *   insideDiameter: inch.of(3),
 * });
 * k["~si"].toFixed(4); // => "5.0625"
 * ```
 */
export const coefficientInOtherBore = /* @__PURE__ */ formula(() => ({
  id: "coefficient-in-other-bore",
  equation: "K2 = K1 · (D2/D1)^4",
  inputs: {
    /** Coefficient on the velocity head in its own bore; negative where a tee gives head back. */
    coefficient: input("coefficient", "K1", { domain: "any" }),
    /** The bore that the coefficient is for. */
    ownBore: input("length", "D1", { domain: "positive" }),
    /** The bore that it is wanted for. */
    insideDiameter: input("length", "D2", { domain: "positive" }),
  },
  output: output("coefficient", "K2"),
  source: firstPrinciples.at("continuity: V1/V2 = (D2/D1)²"),
  body: ({ K1, D1, D2 }) => coefficientInOtherBoreOf(K1, D1, D2),
}));
