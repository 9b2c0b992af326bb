import { bound, commonPractice, formula, input, list, output } from "@leat/formula";

import { fault, refusal } from "../refusal.ts";
import { usbrWaterMeasurementManual } from "../sources.ts";

/**
 * Discharge of a reach from floats on its surface.
 *
 *     Q = C·A·L/t
 *
 * A is the mean of the cross-sections and L/t that of the runs: each run has a velocity of its own. Dividing the length
 * by the mean of the times gives less, 1 % less where the times scatter by 10 %.
 *
 * The floats run all across the stream and not in its fastest thread alone; floats that are caught are not counted.
 *
 * @throws NonPhysicalError a length, a time or an area not above zero, a coefficient outside 0 to 1, no run, no section.
 * @throws OutOfValidityError fewer than three runs or two sections, and `onNotice` is absent.
 * @example
 * ```ts
 * import { floatDischarge } from "@leat/flow-measurement";
 * import { cubicFootPerSecond, foot, one, second, squareFoot } from "@leat/quantity";
 *
 * const { flow } = floatDischarge({
 *   reachLength: foot.of(20),
 *   runs: [{ time: second.of(14) }, { time: second.of(15) }, { time: second.of(16) }],
 *   sections: [{ area: squareFoot.of(7) }, { area: squareFoot.of(9) }],
 *   floatCoefficient: one.of(0.8).as("coefficient"),
 * });
 * flow.in(cubicFootPerSecond).toFixed(2); // => "8.56"
 * ```
 * @see U.S. Bureau of Reclamation, Water Measurement Manual, ch. 13
 */
export const floatDischarge = /* @__PURE__ */ formula(() => ({
  id: "float-discharge",
  equation: "Q = C·Am·Vs; Vs = Σ(L/t)/n; Am = Σ(A)/m",
  inputs: {
    /** Length that the floats were timed over. */
    reachLength: input("length", "L", { domain: "positive" }),
    /** One float after another. */
    runs: list(
      {
        /** Time over the reach. */
        time: input("time", "t", { domain: "positive" }),
      },
      "runs",
    ),
    /** Cross-sections of the reach, at its ends and between. */
    sections: list(
      {
        /** Area of the water. */
        area: input("area", "A", { domain: "positive" }),
      },
      "sections",
    ),
    /** Mean velocity of the reach over that of the floats. */
    floatCoefficient: input("coefficient", "C", { domain: "fraction" }),
  },
  output: {
    flow: output("volume flow", "Q"),
    surfaceVelocity: output("velocity", "Vs"),
    meanArea: output("area", "Am"),
  },
  limits: [
    bound(
      "runs",
      "number of runs",
      ({ runs }: { runs: readonly unknown[] }) => runs.length,
      { min: 3 },
      commonPractice.at("three floats or more", "practice"),
    ),
    bound(
      "sections",
      "number of sections",
      ({ sections }: { sections: readonly unknown[] }) => sections.length,
      { min: 2 },
      commonPractice.at("a section at each end of the reach", "practice"),
    ),
  ],
  source: usbrWaterMeasurementManual.at("ch. 13, float method", "memory"),
  body: ({ L, C, runs, sections }) => {
    for (const [word, rows] of [
      ["runs", runs],
      ["sections", sections],
    ] as const) {
      if (rows.length === 0) {
        throw refusal([
          fault("float-discharge", [word], `${word} = none. Give one or more.`, { actual: "0" }),
        ]);
      }
    }
    let Vs = 0;
    for (const { t } of runs) Vs += L / t / runs.length;
    let Am = 0;
    for (const { A } of sections) Am += A / sections.length;
    return { Q: C * Am * Vs, Vs, Am };
  },
}));
