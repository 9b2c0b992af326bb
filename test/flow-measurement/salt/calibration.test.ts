import { saltCalibration, type SaltCalibrationInput } from "@leat/flow-measurement";
import { NonPhysicalError, type Notice } from "@leat/formula";
import {
  celsius,
  gramPerLitre,
  litre,
  microsiemensPerCentimetre,
  milligramPerLitre,
  milligramPerLitrePerMicrosiemensPerCentimetre,
} from "@leat/quantity";
import * as fc from "fast-check";
import { linearRegression, linearRegressionLine, rSquared } from "simple-statistics";
import { describe, expect, it } from "vitest";

const factor = milligramPerLitrePerMicrosiemensPerCentimetre;

/** 1 mL at a time of 10 g/L in 500 mL, as in a course of the University of British Columbia. */
const ubc = [303, 343, 380, 426, 464, 505, 546];
const input = (
  conductivities: readonly number[],
  change: Partial<SaltCalibrationInput> = {},
): SaltCalibrationInput => ({
  water: litre.of(0.5),
  standard: gramPerLitre.of(10),
  madeWith: "stream water",
  basis: "at 25 °C",
  readings: conductivities.map((conductivity, i) => ({
    added: litre.of(i / 1000),
    conductivity: microsiemensPerCentimetre.of(conductivity),
  })),
  ...change,
});
const concentrations = ubc.map((_, i) => (10_000 * i) / (500 + i));

/** Conductivities of an exact line through these additions, µS/cm. */
const exact = (n: number, cf: number, background: number): number[] =>
  Array.from({ length: n }, (_, i) => background + (10_000 * i) / (500 + i) / cf);

describe("saltCalibration", () => {
  it("agrees with two general libraries on the course's readings", () => {
    const fit = saltCalibration(input(ubc));
    // scipy.stats.linregress(conductivity, concentration), version 1.17.1.
    expect(fit.factor.in(factor)).toBeCloseTo(0.4864982047873149, 10);
    expect(fit.intercept.in(milligramPerLitre)).toBeCloseTo(-146.7207505345937, 7);
    expect(fit.standardError.in(factor)).toBeCloseTo(0.004360171879968119, 10);
    expect(fit.rSquared).toBeCloseTo(0.9995985417810268, 12);
    // linregress(concentration, conductivity), turned over.
    expect(fit.inverseFactor.in(factor)).toBeCloseTo(0.4866935919299168, 10);
    const points = ubc.map((value, i) => [value, concentrations[i]!]);
    const { m, b } = linearRegression(points);
    expect(fit.factor.in(factor)).toBeCloseTo(m, 10);
    expect(fit.background.in(microsiemensPerCentimetre)).toBeCloseTo(-b / m, 6);
    expect(fit.rSquared).toBeCloseTo(rSquared(points, linearRegressionLine({ m, b })), 10);
    fit.residuals.forEach((residual, i) => {
      expect(residual.in(milligramPerLitre)).toBeCloseTo(concentrations[i]! - m * ubc[i]! - b, 7);
    });
    expect(fit.degreesOfFreedom).toBe(5);
    expect(fit.greatest.in(microsiemensPerCentimetre)).toBe(546);
    expect([fit.basis, fit.outliers, fit.notices]).toEqual(["at 25 °C", [], []]);
  });

  it("widens the error by Student's t for five degrees of freedom", () => {
    const { factor: cf, standardError } = saltCalibration(input(ubc));
    // t = 2.571 at 97.5 % and five degrees of freedom, of any table.
    const ratio = cf.standardUncertainty().in(factor) / standardError.in(factor);
    expect(ratio * 1.96).toBeCloseTo(2.571, 3);
    expect([...cf.sources().keys()]).toEqual(["salt calibration"]);
  });

  it("finds the line that readings were made of, whatever the numbers", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 3, max: 12 }),
        fc.double({ min: 0.47, max: 0.9, noNaN: true }),
        fc.double({ min: 5, max: 800, noNaN: true }),
        fc.double({ min: 0.1, max: 10, noNaN: true }),
        (n, cf, background, by) => {
          const readings = exact(n, cf, background);
          const fit = saltCalibration(input(readings));
          expect(fit.factor.in(factor) / cf).toBeCloseTo(1, 8);
          expect(fit.background.in(microsiemensPerCentimetre) / background).toBeCloseTo(1, 6);
          expect(fit.rSquared).toBeCloseTo(1, 9);
          expect(fit.outliers).toEqual([]);
          // Twice the volumes are the same concentrations.
          const more = saltCalibration({
            ...input(readings),
            water: litre.of(0.5 * by),
            readings: input(readings).readings.map((reading) => ({
              ...reading,
              added: reading.added.times(by),
            })),
          });
          expect(more.factor.in(factor) / cf).toBeCloseTo(1, 8);
        },
      ),
    );
  });

  it("is never surer than careful calibrations are among themselves", () => {
    const { factor: cf } = saltCalibration(input(exact(6, 0.486, 80)));
    // 0.7 % is twice the standard deviation (Richardson and others, 2017).
    const relative = cf.standardUncertainty().in(factor) / 0.486;
    expect(200 * relative).toBeCloseTo(0.7, 6);
  });

  it("takes out what distilled water thins", () => {
    // scipy.stats.linregress on readings with 303·(1 − 500/(500 + v)) added.
    const fit = saltCalibration(input(ubc, { madeWith: "distilled water" }));
    expect(fit.factor.in(factor)).toBeCloseTo(0.47943371948842295, 9);
    // Thinned readings of an exact line come back to it.
    const thinned = exact(7, 0.486, 300).map((value, i) => value - 300 * (1 - 500 / (500 + i)));
    const back = saltCalibration(input(thinned, { madeWith: "distilled water" }));
    expect(back.factor.in(factor)).toBeCloseTo(0.486, 9);
  });

  it("brings raw readings with temperatures to 25 °C, and shares the doubt about the coefficient", () => {
    const at25 = exact(6, 0.486, 100);
    const temperatures = [9, 9.1, 9.2, 9.2, 9.3, 9.4];
    const raw = at25.map((value, i) => value * (1 + 0.02 * (temperatures[i]! - 25)));
    const readings = input(raw).readings.map((reading, i) => ({
      ...reading,
      temperature: celsius.at(temperatures[i]!),
    }));
    const fit = saltCalibration(input(raw, { basis: "raw", readings }));
    expect(fit.factor.in(factor)).toBeCloseTo(0.486, 9);
    expect(fit.basis).toBe("at 25 °C");
    // CF goes with 1 + α (T − 25): (−15.8 K · 0.00051) / 0.684 of it.
    const contribution = fit.factor.sources().get("temperature coefficient")!.in(factor);
    expect(contribution / 0.486).toBeCloseTo((-15.8 * (0.001 / 1.959964)) / 0.684, 3);
  });

  it("carries what is uncertain of standard, water and each addition, once for each source", () => {
    const standard = gramPerLitre.of(10).plusMinus(gramPerLitre.of(0.1), "balance");
    const water = litre.of(0.5).plusMinus(litre.of(0.005), "flask");
    const readings = input(ubc).readings.map(({ added, conductivity }) => ({
      conductivity,
      added: added.plusMinus(added.times(0.02), "pipette"),
    }));
    const { factor: cf } = saltCalibration(input(ubc, { standard, water, readings }));
    const shares = Object.fromEntries(
      Array.from(cf.sources(), ([id, c]) => [id, (1.959964 * c.in(factor)) / 0.4864982]),
    );
    expect(shares["balance"]).toBeCloseTo(0.01, 5);
    // Nearly, for the volume grows with what is added.
    expect(shares["flask"]).toBeCloseTo(-0.01, 3);
    expect(shares["pipette"]).toBeCloseTo(0.02, 3);
  });

  it("tells an outlier and leaves it in", () => {
    const readings = exact(8, 0.486, 80).map(
      (value, i) => value + [0.2, -0.3, 0.1, 0, 9, -0.2, 0.3, -0.1][i]!,
    );
    const told: Notice[] = [];
    const fit = saltCalibration(input(readings), { onNotice: (notice) => told.push(notice) });
    expect(fit.outliers).toEqual([4]);
    expect(told).toEqual(fit.notices);
    expect(told.map(({ code, path }) => [code, path])).toEqual([
      ["calibration-outlier", ["readings", 4]],
    ]);
    expect(told[0]?.message).toBe(
      "salt calibration: row 4 does not lie on the line of the others. Repeat the calibration, or leave the reading out and say so.",
    );
    const points = readings.map((value, i) => [value, (10_000 * i) / (500 + i)]);
    expect(fit.factor.in(factor)).toBeCloseTo(linearRegression(points).m, 9);
  });

  it("tells scatter, raw readings without temperatures, and water that warms", () => {
    const codes = (
      change: Partial<SaltCalibrationInput>,
      readings: readonly number[] = ubc,
    ): string[] => saltCalibration(input(readings, change)).notices.map(({ message }) => message);
    expect(codes({}, [300, 350, 352, 440, 441, 520, 525])[0]).toMatch(
      /^salt calibration: R² = 0\.9\d+, a good calibration has 0\.999 and more\./,
    );
    expect(codes({ basis: "raw", name: "left probe" })).toEqual([
      "left probe: raw readings without temperatures. The factor holds only for raw readings of water as warm as this.",
    ]);
    const readings = input(ubc).readings.map((reading, i) => ({
      ...reading,
      temperature: celsius.at(9 + i),
    }));
    expect(codes({ readings })).toEqual([
      "salt calibration: the water warmed by 6.0 K between readings. Stand the vessel in the stream.",
    ]);
  });

  it("refuses what makes no line, all of it at once, with its rows", () => {
    expect(() => saltCalibration(input([300, 320]))).toThrow(NonPhysicalError);
    expect(() => saltCalibration(input([300, 320]))).toThrow(
      "salt calibration: 2 readings make no line with an error. Take five or more, the first without salt.",
    );
    const bad = input([300, 340, 330, 420], { water: litre.of(0), standard: gramPerLitre.of(-1) });
    const readings = bad.readings.map((reading, i) =>
      i === 3 ? { ...reading, added: litre.of(0.001) } : reading,
    );
    expect(() => saltCalibration({ ...bad, readings })).toThrow(
      [
        "salt calibration: water = 0 L is not above zero.",
        "salt calibration: standard = -1 g/L is not above zero.",
        "salt calibration: readings, row 2: conductivity = 330 µS/cm does not rise with the salt. Check the row.",
        "salt calibration: readings, row 3: added = 0.001 L is not more than in the row before. Give all that is in by now, not the last addition.",
      ].join("\n"),
    );
  });
});
