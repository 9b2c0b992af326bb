import { commonPractice, firstPrinciples, formula, input, output, range } from "@leat/formula";
import { milligramPerLitrePerMicrosiemensPerCentimetre } from "@leat/quantity";

import { crcHandbook, saltFactorPaper } from "./sources.ts";
import { standardSaltFactor } from "./standard-factor.ts";

/**
 * Discharge of a stream from a slug of salt: what was thrown in, over what went by.
 *
 *     Q = M / (CF · A)
 *
 * A is the rise of conductivity over the background, summed over the time that the cloud took to pass the probe. The
 * stream is steady meanwhile, all of the salt comes by, and it is mixed across the stream: the same slug seen
 * from two banks has differed by 14 %. `saltSlug` works A out of a logger's readings and counts the mixing in.
 *
 * Factor and readings are of one sort: both compensated to 25 °C, or both raw at one temperature.
 *
 * @throws NonPhysicalError mass below zero, or a factor or a sum not above zero.
 * @throws OutOfValidityError a factor that common salt cannot have, and `onNotice` is absent.
 * @example
 * ```ts
 * import { saltSlugDischarge } from "@leat/flow-measurement";
 * import { kilogram, litrePerSecond, microsiemensSecondPerCentimetre } from "@leat/quantity";
 *
 * const q = saltSlugDischarge({
 *   mass: kilogram.of(0.5),
 *   conductivityTime: microsiemensSecondPerCentimetre.of(12_000),
 * });
 * q.in(litrePerSecond).toFixed(1); // => "85.7"
 * ```
 */
export const saltSlugDischarge = /* @__PURE__ */ formula(() => ({
  id: "salt-slug-discharge",
  equation: "Q = M / (CF · A)",
  inputs: {
    /** Salt that was thrown in, dry or dissolved. */
    mass: input("mass", "M", { domain: "positive" }),
    /** Salt per volume of water, over the rise of conductivity that it makes. */
    calibrationFactor: input("concentration per conductivity", "CF", {
      domain: "positive",
      default: standardSaltFactor(),
      because: saltFactorPaper.at("abstract and Table 8: no calibration was made"),
    }),
    /** Rise of conductivity over the background, summed over time. */
    conductivityTime: input("conductivity time", "A", { domain: "positive" }),
  },
  output: output("volume flow", "Q"),
  limits: [
    range(
      "calibrationFactor",
      { min: milligramPerLitrePerMicrosiemensPerCentimetre.of(0.46) },
      crcHandbook.at(
        "58.44 g/mol over 126.4 S·cm²/mol at 25 °C: no salt water conducts more",
        "memory",
      ),
    ),
    range(
      "calibrationFactor",
      { max: milligramPerLitrePerMicrosiemensPerCentimetre.of(1) },
      commonPractice.at("raw readings in water near freezing", "practice"),
    ),
  ],
  source: firstPrinciples.at("balance of the mass of salt"),
  body: ({ M, CF, A }) => M / (CF * A),
}));
