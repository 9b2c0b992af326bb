import { formula, input, output, table } from "@leat/formula";
import { unit } from "@leat/quantity";

import { levellingTexts } from "./sources.ts";

/** Millimetres per root of a kilometre: how the closing error of levels grows. */
const millimetrePerRootKilometre = /* @__PURE__ */ unit(
  "m^0.5",
  "mm/√km",
  0.001,
  /* @__PURE__ */ Math.sqrt(1000),
);

/**
 * What a line of levels may close within, by the square root of its length.
 *
 * `accurate` is third-order work. Books in feet print 0.4, 0.1, 0.05 and 0.02 ft per root of a mile, which are 4 %
 * less: the metric figures are followed.
 */
export const closingErrors = /* @__PURE__ */ table(() => ({
  id: "closing-errors",
  key: "grade",
  units: { rate: millimetrePerRootKilometre },
  source: levellingTexts.at("rough, ordinary, accurate and precise levelling", "secondary"),
  rows: [
    { grade: "rough", rate: 100 },
    { grade: "ordinary", rate: 25 },
    { grade: "accurate", rate: 12 },
    { grade: "precise", rate: 6 },
  ],
}));

/**
 * The closing error that a line of levels may have: chance errors grow with the square root of its length.
 *
 *     E = C·√K
 *
 * K is the way that was levelled, out and back. On a steep creek the sights are short and the set-ups many for each
 * kilometre: there the length asks more of a level than of one on a plain, and the number of set-ups is the fairer
 * measure (see `levelling`).
 *
 * @throws NonPhysicalError length not above zero.
 * @example
 * ```ts
 * const rate = closingErrors.get("ordinary", "rate");
 * const allowed = allowedClosingError({ rate, levelled: metre.of(640) });
 * format(allowed, millimetre, 2); // => "20 mm"
 * ```
 */
export const allowedClosingError = /* @__PURE__ */ formula(() => ({
  id: "allowed-closing-error",
  equation: "E = C·√K",
  inputs: {
    /** What is allowed over the root of the length: see `closingErrors`. */
    rate: input("m^0.5", "C", { domain: "positive" }),
    /** Length of the line that was levelled, all the way round. */
    levelled: input("length", "K", { domain: "positive" }),
  },
  output: output("length", "E"),
  source: levellingTexts.at("E = C·√D", "secondary"),
  body: ({ C, K }) => C * Math.sqrt(K),
}));
