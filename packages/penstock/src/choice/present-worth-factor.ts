import { commonPractice, firstPrinciples, formula, input, output, range } from "@leat/formula";
import { each } from "@leat/quantity";

/**
 * What a sum that falls due every year is worth today, over that sum.
 *
 *     a = (1 − (1 + i)^−n)/i      n where i = 0
 *
 * @throws NonPhysicalError a negative rate or number of years.
 * @throws OutOfValidityError more than a hundred years, and `onNotice` is absent.
 */
export const presentWorthFactor = /* @__PURE__ */ formula(() => ({
  id: "present-worth-factor",
  equation: "a = (1 - (1 + i)^(-n))/i",
  inputs: {
    /** Rate that money is worth in a year, over one: 0.05 for 5 %. */
    interest: input("ratio", "i"),
    /** Years that the sum falls due. */
    years: input("count", "n"),
  },
  output: output("ratio", "a"),
  limits: [
    range(
      "years",
      { max: each.of(100) },
      commonPractice.at("no pipe is reckoned on for longer", "practice"),
    ),
  ],
  source: firstPrinciples.at("a sum of a geometric series"),
  // The two functions keep their digits where the rate is small, where 1 − (1 + i)^−n has none left.
  body: ({ i, n }) => (i === 0 ? n : -Math.expm1(-n * Math.log1p(i)) / i),
}));
