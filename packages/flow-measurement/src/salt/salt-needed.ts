import { commonPractice, firstPrinciples, formula, input, output, ratio } from "@leat/formula";
import { gramPerLitre, microsiemensPerCentimetre } from "@leat/quantity";

import { saltFactorPaper, saltHandbook } from "./sources.ts";
import { standardSaltFactor } from "./standard-factor.ts";

/**
 * Salt to throw in so that the conductivity rises by so much at the probe, and the least water that dissolves it.
 *
 *     M = CF · Δκ · Q · D / 2;   V = M / s
 *
 * The rise is taken as a triangle over the time until nine tenths of the peak are gone: in a recorded slug of 100 kg it gives 106 kg. With
 * the time until the background is back it gives twice the salt. Where neither is known, the time that the water takes from the throw to
 * the probe is a first guess (common practice, no source).
 *
 * The least dose that the meter resolves is the right one: salt harms water life. A published trial came within 7 % with
 * 0.1 kg for each m³/s; field practice is 1 to 10 kg for each m³/s. Compare with `chlorideAtPeak`.
 *
 * @throws NonPhysicalError a flow, a rise or a time not above zero.
 * @throws OutOfValidityError a rise of less than 20 steps of the meter, and `onNotice` is absent.
 * @example
 * ```ts
 * import { saltNeeded } from "@leat/flow-measurement";
 * import { format, gram, litre, litrePerSecond, microsiemensPerCentimetre, minute } from "@leat/quantity";
 *
 * const { mass, water } = saltNeeded({
 *   flow: litrePerSecond.of(60),
 *   conductivityRise: microsiemensPerCentimetre.of(50),
 *   passageTime: minute.of(10),
 * });
 * format(mass, gram, 3); // => "437 g"
 * format(water, litre, 2); // => "1.2 L"
 * ```
 */
export const saltNeeded = /* @__PURE__ */ formula(() => ({
  id: "salt-needed",
  equation: "M = CF · Δκ · Q · D / 2; V = M / s",
  inputs: {
    /** Flow of the stream, as it is guessed. */
    flow: input("volume flow", "Q", { domain: "positive" }),
    /** Rise of conductivity that is wanted at the peak. */
    conductivityRise: input("conductivity", "Δκ", { domain: "positive" }),
    /** From the first rise at the probe until nine tenths of the peak are gone. */
    passageTime: input("time", "D", { domain: "positive" }),
    /** Salt per volume of water, over the rise of conductivity that it makes. */
    calibrationFactor: input("concentration per conductivity", "CF", {
      domain: "positive",
      default: standardSaltFactor(),
      because: saltFactorPaper.at("abstract and Table 8: no calibration was made"),
    }),
    /** Salt that a volume of water dissolves; stirring takes long near it, and practice stays at 200 g/L. */
    solubility: input("density", "s", {
      domain: "positive",
      default: gramPerLitre.of(357),
      because: saltHandbook.at("26.3 % by mass at 0 °C to 10 °C"),
    }),
    /** Smallest step of the meter. */
    resolution: input("conductivity", "Δκ1", {
      domain: "positive",
      default: microsiemensPerCentimetre.of(1), // guard: it is in a limit, not in the answer
      because: commonPractice.at("a hand-held meter", "practice"),
    }),
  },
  output: { mass: output("mass", "M"), water: output("volume", "V") },
  limits: [
    ratio(
      "conductivityRise",
      "resolution",
      { min: 20 },
      commonPractice.at(
        "below it the step of the meter alone makes the sum uncertain by as much as an unmade calibration",
        "practice",
      ),
    ),
  ],
  source: firstPrinciples.at("balance of the mass of salt, the cloud as a triangle"),
  body: ({ Q, Δκ, D, CF, s }) => {
    const M = (CF * Δκ * Q * D) / 2;
    return { M, V: M / s };
  },
}));
