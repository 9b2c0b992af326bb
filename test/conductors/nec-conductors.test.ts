import { awgDiameter, gaugeNumber, necConductors } from "@leat/conductors";
import { inch, one, squareMillimetre } from "@leat/quantity";
import { describe, expect, it } from "vitest";

const { rows } = necConductors.definition;
const gauges = rows.filter(({ size }) => !(Number(size) >= 250));
const solids = rows.flatMap(({ size, solidDiameter, solidCopper, solidAluminium }) =>
  solidDiameter === undefined || solidCopper === undefined || solidAluminium === undefined
    ? []
    : [{ size, solidDiameter, solidCopper, solidAluminium }],
);

/** Area of the solid wire of a gauge, in mm². */
function lawArea(size: string): number {
  const mm = awgDiameter({ gauge: one.of(gaugeNumber(size)) }).in(inch) * 25.4;
  return (Math.PI / 4) * mm * mm;
}

/** Ω/kft at 75 °C of a solid wire: resistivity in Ω·mm²/m at 20 °C, and its coefficient there (IEC 60028, IEC 60889). */
function at75(mm2: number, resistivity: number, alpha: number): number {
  return ((resistivity * (1 + alpha * 55)) / mm2) * 304.8;
}

/** Half of the last digit of a number as printed to three figures. */
function halfDigit(n: number): number {
  return 0.5 * 10 ** (Math.floor(Math.log10(n)) - 2);
}

describe("necConductors", () => {
  it("accounts for every size from 18 AWG to 600 kcmil", () => {
    expect(necConductors.keys()).toEqual(
      "18 16 14 12 10 8 6 4 3 2 1 1/0 2/0 3/0 4/0 250 300 350 400 500 600".split(" "),
    );
  });

  it("has solid diameters that are those of the gauge, to half of the last digit", () => {
    expect(solids.map(({ size }) => size)).toEqual(["18", "16", "14", "12", "10", "8"]);
    for (const row of solids) {
      const law = awgDiameter({ gauge: one.of(gaugeNumber(row.size)) }).in(inch);
      expect(Math.abs(row.solidDiameter - law)).toBeLessThanOrEqual(0.0005);
    }
  });

  it("has areas that are those of the gauge", () => {
    for (const { size } of gauges) {
      expect(necConductors.get(size, "area").in(squareMillimetre) / lawArea(size)).toBeCloseTo(
        1,
        2,
      );
      expect(
        Math.abs(necConductors.get(size, "area").in(squareMillimetre) / lawArea(size) - 1),
      ).toBeLessThan(0.003);
    }
    // 1 kcmil is 0.5067 mm².
    for (const { size, area } of rows.slice(gauges.length)) {
      expect(area).toBe(Number(size) * 1000);
      expect(necConductors.get(size, "area").in(squareMillimetre)).toBeCloseTo(
        Number(size) * 0.506707,
        3,
      );
    }
  });

  it("has solid copper and aluminium of 100 and 61 % conductivity at 75 °C", () => {
    for (const row of solids) {
      const copper = at75(lawArea(row.size), 0.017241, 0.00393);
      const aluminium = at75(lawArea(row.size), 0.028264, 0.00403);
      expect(Math.abs(row.solidCopper / copper - 1)).toBeLessThan(0.004);
      expect(Math.abs(row.solidAluminium / aluminium - 1)).toBeLessThan(0.004);
    }
  });

  it("has stranded copper and aluminium 2 % above solid of the same area", () => {
    for (const row of rows) {
      const mm2 = necConductors.get(row.size, "area").in(squareMillimetre);
      const copper = 1.02 * at75(mm2, 0.017241, 0.00393);
      const aluminium = 1.02 * at75(mm2, 0.028264, 0.00403);
      // 1/3 % for the layers that are stranded more, and the rounding of the print.
      expect(Math.abs(row.copper - copper)).toBeLessThan(copper * 0.0035 + halfDigit(row.copper));
      expect(Math.abs(row.aluminium - aluminium)).toBeLessThan(
        aluminium * 0.0035 + halfDigit(row.aluminium),
      );
    }
  });

  it("rises in area and diameter and falls in resistance, and strands are wider than a solid wire", () => {
    rows.slice(1).forEach((row, i) => {
      const before = rows[i] as (typeof rows)[number];
      expect(row.area).toBeGreaterThan(before.area);
      expect(row.diameter).toBeGreaterThan(before.diameter);
      expect(row.copper).toBeLessThan(before.copper);
      expect(row.aluminium).toBeLessThan(before.aluminium);
    });
  });

  it("has strands that lie in rings round one: 7, 19, 37 and 61 wires are 3, 5, 7 and 9 wires across", () => {
    const across = new Map([
      [7, 3],
      [19, 5],
      [37, 7],
      [61, 9],
    ]);
    for (const { area, strands, diameter } of rows) {
      const wire = Math.sqrt(area / strands) / 1000;
      expect(Math.abs(diameter - (across.get(strands) as number) * wire)).toBeLessThanOrEqual(
        0.0008,
      );
    }
  });

  it.each([
    ["14", 3.14, 5.17, 3.07],
    ["12", 1.98, 3.25, 1.93],
    ["8", 0.778, 1.28, 0.764],
    ["6", 0.491, 0.808, undefined],
    ["4", 0.308, 0.508, undefined],
    ["1", 0.154, 0.253, undefined],
    ["1/0", 0.122, 0.201, undefined],
    ["3/0", 0.0766, 0.126, undefined],
    ["4/0", 0.0608, 0.1, undefined],
  ] as const)(
    "prints %s as a second copy of the code's table does",
    (size, copper, aluminium, solidCopper) => {
      expect(necConductors.row(size)).toMatchObject({
        copper,
        aluminium,
        ...(solidCopper && { solidCopper }),
      });
    },
  );

  it("refuses a size that it does not have, and a column that it leaves out", () => {
    expect(() => necConductors.row("5" as never)).toThrow(
      "nec-conductors: 5 is not in the table; it has 18, 16, 14",
    );
    expect(() => necConductors.get("6", "solidCopper")).toThrow(
      "nec-conductors: the source gives no solidCopper for 6.",
    );
  });
});
