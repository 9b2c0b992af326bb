import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";

import { saltCalibration, saltSlug, type SaltSlugInput } from "@leat/flow-measurement";
import {
  cubicMetrePerSecond,
  gramPerLitre,
  kilogram,
  litre,
  microsiemensPerCentimetre,
  microsiemensSecondPerCentimetre,
  milligramPerLitrePerMicrosiemensPerCentimetre,
} from "@leat/quantity";
import { Column } from "@leat/quantity/column";
import { describe, expect, it } from "vitest";

// A slug of 100 kg, University of British Columbia, CIVL 418, notebook 1 (CC-BY 4.0): its printed output is
// 11.9 m³/s, with the background as the mean of the first 150 readings and the sum over 190 s < t < 700 s. The meter
// compensated to 25 °C.
const folder = join(import.meta.dirname, "../../../../shared/reference/data");
const there = existsSync(join(folder, "salt_slug_2010-09-26_ec.csv"));
if (!there) console.warn(`recorded-slug.test.ts is skipped: there is no ${folder}`);

/** Numbers of a file, rows that do not begin with one left out. */
const numbersOf = (file: string): number[][] =>
  readFileSync(join(folder, file), "utf8")
    .split(/\r?\n/u)
    .map((line) => line.split(",").map((cell) => (cell.trim() === "" ? Number.NaN : Number(cell))))
    .filter((row) => Number.isFinite(row[0]));

const record = there ? numbersOf("salt_slug_2010-09-26_ec.csv") : [];
// The volume stands in the first row only: the columns are volume, added (mL), salt, concentration, conductivity, temperature.
const steps = there
  ? readFileSync(join(folder, "salt_slug_2010-09-26_cal.csv"), "utf8")
      .split(/\r?\n/u)
      .map((line) => line.split(","))
      .filter((cells) => /^\d+$/u.test(cells[1] ?? ""))
  : [];

const calibrated = () =>
  saltCalibration({
    water: litre.of(0.5),
    standard: gramPerLitre.of(10),
    madeWith: "stream water",
    basis: "at 25 °C",
    readings: steps.map((cells) => ({
      added: litre.of(Number(cells[1]) / 1000),
      conductivity: microsiemensPerCentimetre.of(Number(cells[4])),
    })),
  });
const slugOf = (
  change: (values: number[], time: number[]) => void = () => {},
  more: Partial<SaltSlugInput> = {},
) => {
  const time = record.map(([t]) => t!);
  const values = record.map(([, value]) => value!);
  change(values, time);
  return saltSlug({
    time,
    conductivity: Column.of(microsiemensPerCentimetre, values),
    basis: "at 25 °C",
    temperature: { celsius: record.map(([, , t]) => t!) },
    mass: kilogram.of(100),
    calibration: calibrated(),
    ...more,
  });
};
const asPrinted: Partial<SaltSlugInput> = {
  window: { from: 191, to: 699 },
  background: { before: { from: 1, to: 150 } },
};
const q = (slug: ReturnType<typeof slugOf>): number => slug.flow.in(cubicMetrePerSecond);

describe.skipIf(!there)("a recorded slug of 100 kg", () => {
  it("has 868 readings and seven steps of calibration", () => {
    expect([record.length, steps.length]).toEqual([868, 7]);
    const { factor, rSquared, outliers } = calibrated();
    expect(factor.in(milligramPerLitrePerMicrosiemensPerCentimetre)).toBeCloseTo(0.4865, 4);
    expect(rSquared).toBeGreaterThan(0.999);
    expect(outliers).toEqual([]);
  });

  it("gives the printed 11.9 m³/s with the printed window and background", () => {
    const slug = slugOf(undefined, asPrinted);
    expect(Math.abs(q(slug) - 11.9)).toBeLessThan(0.1);
    // numpy: the plain sum of the rows is 17 238, that of trapezoids 17 237.5; 11.924 m³/s.
    expect(slug.conductivityTime.in(microsiemensSecondPerCentimetre)).toBeCloseTo(17_237.5, 3);
    expect(q(slug)).toBeCloseTo(11.924, 2);
    expect(slug.backgroundBefore?.in(microsiemensPerCentimetre)).toBeCloseTo(298, 9);
    expect(slug.notices).toEqual([]);
  });

  it("gives it by itself as well", () => {
    const slug = slugOf();
    expect(Math.abs(q(slug) - 11.9)).toBeLessThan(0.1);
    // numpy: the whole record over 298 µS/cm sums to 17 260, 11.909 m³/s.
    expect(Math.abs(q(slug) / 11.909 - 1)).toBeLessThan(0.002);
    expect(slug.peakRise.in(microsiemensPerCentimetre)).toBeCloseTo(145, 0);
    expect([slug.peak, slug.notices]).toEqual([265, []]);
    expect(slug.arrival).toBeGreaterThan(190);
    expect(slug.end).toBeLessThan(780);
  });

  it("gives it with the factor of any stream, and says so", () => {
    const slug = slugOf(undefined, { calibration: undefined });
    expect(Math.abs(q(slug) - 11.9)).toBeLessThan(0.1);
    expect(slug.notices.map(({ code }) => code)).toEqual(["standard-factor"]);
  });

  it("says how sure it is, the printed answer well within", () => {
    const slug = slugOf();
    const u = (id: string): number =>
      (100 * Math.abs(slug.flow.sources().get(id)!.in(cubicMetrePerSecond))) / q(slug);
    // A step of 1 µS/cm hides 0.29 µS/cm over some 600 s: two thirds of a per cent, between the two ends.
    expect(
      Math.hypot(u("salt slug: background before"), u("salt slug: background after")),
    ).toBeGreaterThan(0.5);
    expect(
      Math.hypot(u("salt slug: background before"), u("salt slug: background after")),
    ).toBeLessThan(1);
    expect(u("salt slug: sampling")).toBeLessThan(0.1);
    expect(u("salt calibration")).toBeCloseTo(1.18, 1);
    expect(u("salt slug: mixing")).toBeCloseTo(3.57, 2);
  });

  it.each([
    [
      "a fault code at the peak",
      "faultCode",
      [264, 265],
      (v: number[]) => v.splice(264, 2, -9999, 9999),
    ],
    ["a spike in the tail", "spike", [400], (v: number[]) => (v[400]! += 120)],
    [
      "a stuck stretch on the rise",
      "stuck",
      Array.from({ length: 19 }, (_, i) => 221 + i),
      (v: number[]) => v.fill(v[220]!, 220, 240),
    ],
    ["a time that goes back", "time", [300], (_: number[], t: number[]) => (t[300] = 120)],
    ["a reading that no stream has", "impossible", [350], (v: number[]) => (v[350] = -1)],
  ] as const)("still gives it with %s, and says so", (_, fault, rows, change) => {
    for (const more of [{}, asPrinted]) {
      const slug = slugOf((values, time) => void change(values, time), more);
      expect(Math.abs(q(slug) - 11.9)).toBeLessThan(0.1);
      expect(slug.faults[fault]).toEqual(rows);
      expect(slug.notices.map(({ code }) => code)).toContain(
        `readings-${fault === "faultCode" ? "fault-code" : fault}`,
      );
    }
  });

  it("suspects the record where it is called raw: it is not, and would be compensated twice", () => {
    const slug = slugOf(undefined, { basis: "raw" });
    expect(slug.notices.map(({ code }) => code)).toContain("looks-compensated");
    expect(q(slug)).toBeLessThan(9);
  });

  it("says what is missing where it is cut in the tail", () => {
    const rows = 420;
    const slug = saltSlug({
      time: record.slice(0, rows).map(([t]) => t!),
      conductivity: Column.of(
        microsiemensPerCentimetre,
        record.slice(0, rows).map(([, value]) => value!),
      ),
      basis: "at 25 °C",
      mass: kilogram.of(100),
      calibration: calibrated(),
      addMissingTail: true,
    });
    expect(slug.notices.map(({ code }) => code)).toEqual(["tail-missing"]);
    // numpy: 17 260 of the whole less what the first 420 rows hold is what is missing.
    const held = record.slice(0, rows).reduce((sum, [, value]) => sum + value! - 298, 0);
    const missing = slug.missingTail!.in(microsiemensSecondPerCentimetre);
    expect(Math.abs(missing / (17_260 - held) - 1)).toBeLessThan(0.25);
    expect(Math.abs(q(slug) / 11.9 - 1)).toBeLessThan(0.03);
  });
});
