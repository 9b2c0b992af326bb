import {
  ownPipe,
  type Pipe,
  pressureRatingAt,
  readPipe,
  temperatureFactorOf,
} from "@leat/pipe-sizes";
import {
  bar,
  celsius,
  fahrenheit,
  inch,
  millimetre,
  one,
  type Point,
  poundPerSquareInch,
} from "@leat/quantity";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";

const factor = (pipe: string | Pipe, at: Point<"absolute zero">): number =>
  temperatureFactorOf(typeof pipe === "string" ? readPipe(pipe) : pipe, at).factor.in(one);

describe("temperatureFactorOf", () => {
  it.each([
    [60, 1],
    [73, 1],
    [80, 1],
    [80.1, 0.9],
    [90, 0.9],
    [91, 0.8],
    [100, 0.8],
  ])("is for PE in inches at %d °F the step %d of AWWA M55, Table 4-6", (at, share) => {
    expect(factor("4 in PE DR 11", fahrenheit.at(at))).toBe(share);
    expect(factor("2 in PE SIDR 15", fahrenheit.at(at))).toBe(share);
  });

  it("is for PVC in inches that of the handbook, and on straight lines between", () => {
    // A maker's table of PVC Sch 80 by temperature prints these.
    for (const [at, share] of [
      [50, 1],
      [73, 1],
      [90, 0.75],
      [100, 0.62],
      [110, 0.5],
      [120, 0.4],
      [130, 0.3],
      [140, 0.22],
    ] as const)
      expect(factor("4 in PVC Sch 80", fahrenheit.at(at)), `${at} °F`).toBeCloseTo(share, 9);
    expect(factor("4 in PVC SDR 26", fahrenheit.at(95))).toBeCloseTo((0.75 + 0.62) / 2, 9);
    // Another maker prints 0.45 at 115 °F and 0.35 at 125 °F.
    expect(factor("4 in PVC SDR 26", fahrenheit.at(115))).toBeCloseTo(0.45, 9);
    expect(factor("4 in PVC SDR 26", fahrenheit.at(125))).toBeCloseTo(0.35, 9);
  });

  it("is for metric PE that of ISO 4427-1, for metric PVC a step, for steel none", () => {
    expect(factor("110 mm PE100 SDR 17", celsius.at(10))).toBe(1);
    expect(factor("110 mm PE100 SDR 17", celsius.at(30))).toBeCloseTo(0.87, 9);
    expect(factor("110 mm PE100 SDR 17", celsius.at(35))).toBeCloseTo((0.87 + 0.74) / 2, 9);
    expect(factor("110 mm PVC PN 10", celsius.at(25))).toBe(1);
    expect(factor("110 mm PVC PN 10", celsius.at(30))).toBe(0.8);
    expect(factor("110 mm PVC PN 10", celsius.at(45))).toBe(0.63);
    expect(factor("3 in steel Sch 40", celsius.at(60))).toBe(1);
  });

  it("never rises with the temperature", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(
          "4 in PE DR 11",
          "110 mm PE100 SDR 17",
          "4 in PVC Sch 40",
          "110 mm PVC PN 10",
          "3 in steel Sch 40",
        ),
        fc.double({ min: 0, max: 37, noNaN: true }),
        fc.double({ min: 0, max: 37, noNaN: true }),
        (name, a, b) => {
          const [cool, warm] = [Math.min(a, b), Math.max(a, b)];
          expect(factor(name, celsius.at(warm))).toBeLessThanOrEqual(
            factor(name, celsius.at(cool)) + 1e-12,
          );
        },
      ),
    );
  });

  it("refuses water that is warmer than its tables go", () => {
    expect(() => factor("4 in PE DR 11", fahrenheit.at(101))).toThrow(
      "nothing is known of 4 in PE4710 DR 11 in water of 101 °F; its factors go up to 100 °F: ask the maker.",
    );
    expect(() => factor("110 mm PE100 SDR 17", celsius.at(41))).toThrow(
      "nothing is known of 110 mm PE100 SDR 17 in water of 41 °C; its factors go up to 40 °C: ask the maker.",
    );
    expect(() => factor("110 mm PVC PN 10", celsius.at(46))).toThrow("go up to 45 °C");
  });

  it("is 1 for a pipe of one's own up to its own temperature, and unknown above", () => {
    const own = {
      outsideDiameter: inch.of(4.5),
      wall: inch.of(0.237),
      roughness: millimetre.of(0.05),
      name: "old pipe",
      pressureRating: bar.of(10),
    };
    const rated = ownPipe({ ...own, ratedAt: celsius.at(20) });
    expect(factor(rated, celsius.at(20))).toBe(1);
    expect(() => factor(rated, celsius.at(25))).toThrow(
      "nothing is known of old pipe in water of 25 °C; it is rated at 20 °C: ask the maker.",
    );
    expect(() => factor(ownPipe(own), celsius.at(5))).toThrow(
      "it is rated at no temperature that was stated: ask the maker.",
    );
  });
});

describe("pressureRatingAt", () => {
  it("is the rating in cold water, and its share in warm", () => {
    const pipe = readPipe("10 in PVC Sch 80");
    // A maker's worked example: 230 psi × 0.40 = 92 psi at 120 °F.
    expect(pressureRatingAt(pipe, fahrenheit.at(120)).in(poundPerSquareInch)).toBeCloseTo(92, 9);
    expect(pressureRatingAt(pipe, fahrenheit.at(50)).in(poundPerSquareInch)).toBeCloseTo(230, 9);
  });

  it("says where there is no rating", () => {
    expect(() => pressureRatingAt(readPipe("110 mm PE100 SDR 6"), celsius.at(10))).toThrow(
      "nothing is known of the pressure that 110 mm PE100 SDR 6 carries: its maker states none.",
    );
  });
});
