import { OutOfValidityError } from "@leat/formula";
import {
  insertFittingBores,
  insertFittingCoefficient,
  peSidrSizes,
  readPipe,
} from "@leat/pipe-sizes";
import { inch, millimetre, one } from "@leat/quantity";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";

const k = (pipe: number, fitting: number): number =>
  insertFittingCoefficient({
    insideDiameter: millimetre.of(pipe),
    fittingBore: millimetre.of(fitting),
  }).in(one);

describe("insertFittingCoefficient", () => {
  it("is nothing for a fitting as wide as the pipe, and grows as the fitting narrows", () => {
    expect(k(50, 50)).toBe(0);
    fc.assert(
      fc.property(
        fc.double({ min: 0.34, max: 1, noNaN: true }),
        fc.double({ min: 0.34, max: 1, noNaN: true }),
        (a, b) => {
          if (Math.abs(a - b) < 1e-6) return;
          expect(k(50, 50 * Math.min(a, b))).toBeGreaterThan(k(50, 50 * Math.max(a, b)));
        },
      ),
    );
  });

  it("knows ratios only: inches are as good as millimetres", () => {
    const inches = insertFittingCoefficient({
      insideDiameter: inch.of(1.049),
      fittingBore: inch.of(0.85),
    }).in(one);
    expect(inches).toBeCloseTo(k(1.049 * 25.4, 0.85 * 25.4), 12);
  });

  it("is the loss by momentum behind the fitting, and less in front", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.34, max: 0.99, noNaN: true }), (share) => {
        // Borda and Carnot: half the square of the fall in velocity, on the velocity in the pipe.
        const behind = (1 / (share * share) - 1) ** 2;
        const all = k(100, 100 * share);
        expect(all).toBeGreaterThan(behind);
        expect(all - behind).toBeLessThan(0.5 / share ** 4);
      }),
    );
  });

  it("refuses a fitting that is wider than the pipe, or so narrow that it is an orifice", () => {
    expect(() => k(50, 51)).toThrow(OutOfValidityError);
    expect(() => k(50, 51)).toThrow(
      "insert-fitting-coefficient: fittingBore/insideDiameter = 1.02 is above 1",
    );
    expect(() => k(50, 10)).toThrow("is below 0.333");
  });
});

describe("insertFittingBores", () => {
  it("keeps its ranges in order, and within the pipe that the fittings go into", () => {
    for (const { size, low, typical, high } of insertFittingBores.definition.rows) {
      expect(low < typical && typical < high, size).toBe(true);
      expect(high, size).toBeLessThan(peSidrSizes.row(size).insideDiameter);
      expect(low, size).toBeGreaterThan(0.65 * peSidrSizes.row(size).insideDiameter);
    }
  });

  it("counts for several velocity heads in small pipe, and for one in 2 in", () => {
    const of = (size: "1/2" | "2", column: "low" | "typical"): number =>
      insertFittingCoefficient({
        insideDiameter: readPipe(`${size} in PE SIDR 15`).insideDiameter.average,
        fittingBore: insertFittingBores.get(size, column),
      }).in(one);
    expect(of("1/2", "low")).toBeGreaterThan(1.5);
    expect(of("2", "typical")).toBeLessThan(1);
  });
});
