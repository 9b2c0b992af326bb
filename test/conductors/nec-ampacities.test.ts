import { necAmpacities, necConductors } from "@leat/conductors";
import { describe, expect, it } from "vitest";

type Row = Readonly<Record<string, string | number | undefined>>;
const rows: readonly Row[] = necAmpacities.definition.rows;
const columns = [
  "copper60",
  "copper75",
  "copper90",
  "aluminium60",
  "aluminium75",
  "aluminium90",
] as const;

describe("necAmpacities", () => {
  it("has the sizes of the table of conductors, to 500 kcmil", () => {
    expect(necAmpacities.keys()).toEqual(necConductors.keys().filter((size) => size !== "600"));
  });

  it("rises with size, and with what the insulation stands; aluminium carries 75 to 85 % of copper", () => {
    for (const column of columns) {
      const printed = rows.flatMap((row) => row[column] ?? []) as number[];
      expect(printed.length).toBeGreaterThan(15);
      printed.slice(1).forEach((amps, i) => expect(amps).toBeGreaterThan(printed[i] as number));
    }
    for (const row of rows) {
      for (const metal of ["copper", "aluminium"]) {
        const [a, b, c] = [60, 75, 90].map((t) => row[`${metal}${t}`] as number | undefined);
        if (a === undefined || b === undefined || c === undefined) continue;
        expect(a).toBeLessThan(b);
        expect(b).toBeLessThan(c);
      }
      for (const t of [60, 75, 90]) {
        const [copper, al] = [row[`copper${t}`], row[`aluminium${t}`]] as (number | undefined)[];
        if (copper === undefined || al === undefined) continue;
        expect(al / copper).toBeGreaterThan(0.71);
        expect(al / copper).toBeLessThan(0.89);
      }
    }
  });

  it("has ampacities of 75 and 60 °C in the ratio of the heat that each may give off at 30 °C", () => {
    // I² goes with the rise over 30 °C and against the resistance at the conductor's temperature; to the 5 A of the print.
    const ratio = (alpha: number): number => Math.sqrt((45 / 30) * (1 - alpha * 15));
    for (const [metal, alpha] of [
      ["copper", 0.00323],
      ["aluminium", 0.0033],
    ] as const) {
      for (const row of rows) {
        const [low, high] = [row[`${metal}60`], row[`${metal}75`]] as (number | undefined)[];
        if (low === undefined || high === undefined || low < 40) continue;
        expect(Math.abs(high - low * ratio(alpha))).toBeLessThanOrEqual(5);
      }
    }
  });

  it("is printed in steps of 5 A, but for the thinnest two", () => {
    for (const row of rows.slice(2)) {
      for (const column of columns) expect(((row[column] as number | undefined) ?? 0) % 5).toBe(0);
    }
    expect(rows.slice(0, 2)).toEqual([
      { size: "18", copper90: 14 },
      { size: "16", copper90: 18 },
    ]);
  });

  it.each([
    ["copper60", "15 20 30 40 55 70 85 95 110 125 145 165 195 215 240 260 280 320"],
    ["copper75", "20 25 35 50 65 85 100 115 130 150 175 200 230 255 285 310 335 380"],
    ["aluminium75", "20 30 40 50 65 75 90 100 120 135 155 180 205 230 250 270 310"],
  ] as const)(
    "prints %s, thinnest to 500 kcmil, as another copy of the code does",
    (column, copy) => {
      expect(rows.flatMap((row) => row[column] ?? []).join(" ")).toBe(copy);
    },
  );

  it.each([
    ["14", 20, undefined],
    ["12", 25, 20],
    ["8", 50, 40],
    ["6", 65, 50],
    ["4", 85, 65],
    ["1/0", 150, 120],
    ["2/0", 175, 135],
    ["3/0", 200, 155],
  ] as const)(
    "prints %s at 75 °C as ten copies of the code's table do",
    (size, copper75, aluminium75) => {
      expect(necAmpacities.row(size)).toMatchObject({
        copper75,
        ...(aluminium75 && { aluminium75 }),
      });
    },
  );

  it("prints copper at 60 °C, 14 AWG to 4/0, as second copies do; some of them misprint 2 AWG as 90 A", () => {
    const printed = rows.flatMap((row) => row["copper60"] ?? []).slice(0, 13);
    expect(printed).toEqual([15, 20, 30, 40, 55, 70, 85, 95, 110, 125, 145, 165, 195]);
  });
});
