import { formula, input, output, range } from "@leat/formula";
import { foot } from "@leat/quantity";

import { usbrWaterMeasurementManual } from "../sources.ts";
import { floatCoefficientsByDepth } from "./float-coefficients.ts";

/**
 * Mean velocity of a reach over that of floats on its surface, from its average depth.
 *
 *     C = C(d), straight lines between the rows of the manual's table
 *
 * The table begins at 1 ft, where most small streams end; below it the first line is drawn on, to 0.64 at no depth.
 * Others print much more for the same water (0.8 over rocks, 0.9 over mud): up to 36 % on the flow. The manual is
 * followed because it knows the depth; `floatCoefficientsByBed` holds all of them.
 *
 * @throws OutOfValidityError shallower than 1 ft, and `onNotice` is absent.
 * @example
 * ```ts
 * import { floatCoefficient } from "@leat/flow-measurement";
 * import { foot, one } from "@leat/quantity";
 *
 * floatCoefficient({ averageDepth: foot.of(1.5) }).in(one).toFixed(2); // => "0.67"
 * ```
 * @see U.S. Bureau of Reclamation, Water Measurement Manual, ch. 13, table 13-1
 */
export const floatCoefficient = /* @__PURE__ */ formula(() => {
  const { rows } = floatCoefficientsByDepth.definition;
  return {
    id: "float-coefficient",
    equation: "C = Cd",
    inputs: {
      /** Mean of the depths of the reach. */
      averageDepth: input("length", "d", { domain: "positive" }),
    },
    output: output("coefficient", "C"),
    constants: { ft: foot.of(1) },
    steps: {
      Cd: {
        kind: "coefficient",
        equation: "straight lines between the rows of the table",
        of: ({ d, ft }: { d: number; ft: number }) => onLines(d / ft),
      },
    },
    limits: [
      range(
        "averageDepth",
        { min: foot.of(1) },
        usbrWaterMeasurementManual.at("ch. 13, table 13-1", "memory"),
      ),
    ],
    source: usbrWaterMeasurementManual.at("ch. 13, table 13-1", "memory"),
    body: ({ d, ft }: { d: number; ft: number }) => onLines(d / ft),
  };

  /** At a depth in feet; the last row holds for all that is deeper. */
  function onLines(feet: number): number {
    const deepest = rows[rows.length - 1] as { depth: number; coefficient: number };
    if (feet >= deepest.depth) return deepest.coefficient;
    let i = 1;
    while (feet > (rows[i] as { depth: number }).depth) i += 1;
    const [a, b] = [rows[i - 1], rows[i]] as { depth: number; coefficient: number }[];
    if (!a || !b) return Number.NaN;
    return (
      a.coefficient + ((b.coefficient - a.coefficient) * (feet - a.depth)) / (b.depth - a.depth)
    );
  }
});
