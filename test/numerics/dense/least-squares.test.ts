import { leastSquares } from "@leat/numerics";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

import { refusalOf } from "../refusal-of.ts";
import { mathjsInverse, mathjsProjection, mathjsSolution, mathjsSquare } from "./mathjs-oracle.ts";

const element = fc.double({ min: -5, max: 5, noNaN: true });

describe("leastSquares", () => {
  it("agrees with scipy on a parabola", () => {
    const rows = [0.05, 0.1, 0.2, 0.35, 0.6, 1.1, 1.7].map((x) => [1, x, x * x]);
    const b = [0.011, 0.052, 0.31, 1.1, 3.9, 17, 49];
    const fit = leastSquares(rows, b);
    // scipy 1.17.1, linalg.lstsq, and numpy 2.4.6, linalg.inv(A.T @ A)
    [0.8294456028404539, -8.240165855147023, 21.435072445786343].forEach((value, i) =>
      expect(fit.x[i]).toBeCloseTo(value, 11),
    );
    expect(fit.residualNorm).toBeCloseTo(1.1080373736266824, 12);
    expect(fit.degreesOfFreedom).toBe(4);
    [
      0.5505637435764684, -1.557189132642377, 0.7617107311323552, -1.557189132642377,
      7.046787175973949, -3.881662026536473, 0.7617107311323552, -3.881662026536473,
      2.283244701374984,
    ].forEach((value, i) => expect(fit.unscaledCovariance[i]).toBeCloseTo(value, 11));
    const flat = leastSquares(Float64Array.from(rows.flat()), b);
    expect(flat).toEqual(fit);
  });

  const problem = fc.integer({ min: 1, max: 4 }).chain((n) =>
    fc.record({
      rows: fc.array(fc.array(element, { minLength: n, maxLength: n }), {
        minLength: n + 1,
        maxLength: 12,
      }),
      extra: fc.array(element, { minLength: 12 + n, maxLength: 12 + n }),
    }),
  );

  it("leaves residuals at right angles to every column, and agrees with mathjs's normal equations", () => {
    fc.assert(
      fc.property(problem, ({ rows, extra }) => {
        const n = rows[0]!.length;
        // A multiple of the identity below keeps the columns apart.
        const a = [
          ...rows,
          ...Array.from({ length: n }, (_, i) => rows[0]!.map((_value, j) => (i === j ? 7 : 0))),
        ];
        const b = extra.slice(0, a.length);
        const fit = leastSquares(a, b);
        for (let j = 0; j < n; j++) {
          expect(a.reduce((sum, row, i) => sum + row[j]! * fit.residuals[i]!, 0)).toBeCloseTo(
            0,
            10,
          );
        }
        const normal = mathjsSquare(a);
        const oracle = mathjsSolution(normal, mathjsProjection(a, b));
        oracle.forEach((value, i) => expect(fit.x[i]).toBeCloseTo(value, 10));
        const inverse = mathjsInverse(normal).flat();
        inverse.forEach((value, i) => expect(fit.unscaledCovariance[i]).toBeCloseTo(value, 11));
        expect(fit.independence).toBeGreaterThan(0.1);
        expect(fit.independence).toBeLessThanOrEqual(1 + 1e-15);
      }),
    );
  });

  it("passes through as many points as there are coefficients", () => {
    const fit = leastSquares(
      [
        [1, 0],
        [1, 2],
      ],
      [3, 7],
    );
    expect(fit.x[0]).toBeCloseTo(3, 14);
    expect(fit.x[1]).toBeCloseTo(2, 14);
    expect(fit.degreesOfFreedom).toBe(0);
    expect(fit.residualNorm).toBeLessThan(1e-14);
  });

  it("measures independence by the angle between columns", () => {
    // (3, 4) has a sine of 0.8 from (1, 0), in any unit.
    expect(
      leastSquares(
        [
          [1, 3],
          [0, 4],
        ],
        [1, 1],
      ).independence,
    ).toBeCloseTo(0.8, 14);
    expect(
      leastSquares(
        [
          [1e9, 3e-9],
          [0, 4e-9],
        ],
        [1, 1],
      ).independence,
    ).toBeCloseTo(0.8, 14);
  });

  it("refuses dependent columns", () => {
    const error = refusalOf(() =>
      leastSquares(
        [
          [1, 2],
          [2, 4],
          [3, 6],
        ],
        [1, 2, 3],
      ),
    );
    expect(error.code).toBe("singular");
    expect(error.message).toMatch(
      /^leastSquares: the equations do not determine unknown 1 \(ratio \S+\)\. Remove what is dependent, or add an equation\.$/,
    );
    expect(refusalOf(() => leastSquares([[0], [0]], [1, 2])).details).toMatchObject({ column: 0 });
  });

  it("refuses what it cannot fit", () => {
    expect(refusalOf(() => leastSquares([[1, 2]], [1])).message).toBe(
      "leastSquares: 1 observations cannot fix 2 coefficients. Observe more, or fit fewer.",
    );
    expect(refusalOf(() => leastSquares([[1], [2]], [1])).message).toBe(
      "leastSquares: the matrix is not 1 equal rows. Pass its rows, or a Float64Array with row after row.",
    );
    expect(refusalOf(() => leastSquares([[1], []], [1, 2])).code).toBe("bad-argument");
    expect(refusalOf(() => leastSquares(new Float64Array(5), [1, 2])).code).toBe("bad-argument");
    expect(refusalOf(() => leastSquares([], [])).code).toBe("bad-argument");
    expect(refusalOf(() => leastSquares([[NaN]], [1])).code).toBe("non-finite");
    expect(refusalOf(() => leastSquares([[1]], [NaN])).code).toBe("non-finite");
    expect(refusalOf(() => leastSquares([[1e-200]], [1e200])).code).toBe("non-finite");
  });
});
