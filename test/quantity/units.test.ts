import { readFileSync } from "node:fs";

import * as quantity from "@leat/quantity";
import { describe, expect, it } from "vitest";

import { table } from "./table.ts";
import rows from "./units.rows.json" with { type: "json" };

const path = "../tools/generate.mjs";
const { generate } = (await import(/* @vite-ignore */ path)) as {
  generate: (table: object) => Record<string, string>;
};

const units = quantity as unknown as Record<string, quantity.AnyUnit>;

/** Half of the last digit that a factor is printed with. */
function halfDigit(printed: string): number {
  const [digits = "", power = "0"] = printed.split("E");
  return 0.5 * 10 ** (Number(power) - (digits.split(".")[1]?.length ?? 0));
}

describe("the factor of a unit", () => {
  it("has a row each", () => {
    expect(rows.map((row) => row.unit).toSorted()).toEqual(
      table.units.map(([name]) => name).toSorted(),
    );
  });

  it.each(rows)("$unit is $printed of the coherent unit", ({ unit: name, printed, exact }) => {
    const factor = units[name]?.toSI(1) ?? NaN;
    if (exact) expect(factor).toBe(Number(printed));
    else expect(Math.abs(factor - Number(printed))).toBeLessThanOrEqual(halfDigit(printed));
  });

  it("goes back to the last digit", () => {
    for (const { unit: name } of rows)
      expect(units[name]?.fromSI(units[name].toSI(7))).toBeCloseTo(7, 14);
  });
});

describe("the zero of a scale", () => {
  // NIST SP 811 (2008), App. B.8 and B.9: T/K = t/°C + 273.15, t/°C = (t/°F − 32)/1.8.
  it.each([
    [0, 273.15, 32],
    [100, 373.15, 212],
    [-40, 233.15, -40],
    [-273.15, 0, -459.67],
  ])("%d °C is %d K and %d °F", (c, k, f) => {
    const { celsius, fahrenheit, kelvin } = quantity;
    expect(celsius.at(c).in(kelvin)).toBeCloseTo(k, 10);
    expect(celsius.at(c).in(fahrenheit)).toBeCloseTo(f, 10);
    expect(fahrenheit.at(f).in(celsius)).toBeCloseTo(c, 10);
  });
});

describe("the generated files", () => {
  const text = (path: string): string =>
    readFileSync(new URL(`../../${path}`, import.meta.url), "utf8");

  it("are those of the table", () => {
    for (const [path, expected] of Object.entries(generate(table)))
      expect([path, text(path) === expected]).toEqual([path, true]);
  });

  it("are seen to be out of date", () => {
    const changed = {
      ...table,
      units: table.units.map((row) =>
        row[0] === "foot" ? [row[0], row[1], row[2], "0.3047", row[4], row[5]] : row,
      ),
    };
    const stale = Object.entries(generate(changed)).filter(
      ([path, expected]) => text(path) !== expected,
    );
    expect(stale.map(([path]) => path)).toEqual([
      "packages/quantity/src/generated/units.ts",
      "docs/quantities.md",
    ]);
  });
});
