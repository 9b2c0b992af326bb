import { iecConductors } from "@leat/conductors";
import { describe, expect, it } from "vitest";

const { rows } = iecConductors.definition;
const aluminium = rows.flatMap(({ area, copper, aluminium: al, solidAluminium: solid }) =>
  al === undefined ? [] : [{ area, copper, al, solid }],
);

describe("iecConductors", () => {
  it("accounts for every size from 0.5 to 300 mm², named by its area", () => {
    expect(iecConductors.keys()).toEqual(
      "0.5 0.75 1 1.5 2.5 4 6 10 16 25 35 50 70 95 120 150 185 240 300".split(" "),
    );
    for (const { size, area } of rows) expect(String(area)).toBe(size);
  });

  it("lies a little above the resistance of pure metal of its nominal area", () => {
    // Ω·mm²/km at 20 °C: copper 17.241, aluminium 28.264 (IEC 60028, IEC 60889).
    for (const { area, copper, solidCopper } of rows) {
      for (const r of [copper, solidCopper]) {
        expect((r * area) / 17.241).toBeGreaterThan(1.04);
        expect((r * area) / 17.241).toBeLessThan(1.13);
      }
    }
    for (const { area, al } of aluminium) {
      expect((al * area) / 28.264).toBeGreaterThan(1.05);
      expect((al * area) / 28.264).toBeLessThan(1.14);
    }
  });

  it("falls with area; aluminium is 1.6 to 1.7 times copper; solid is never below stranded", () => {
    rows.slice(1).forEach(({ copper, solidCopper }, i) => {
      expect(copper).toBeLessThan((rows[i] as (typeof rows)[number]).copper);
      expect(solidCopper).toBeGreaterThanOrEqual(copper);
    });
    for (const { copper, al, solid } of aluminium) {
      expect(al / copper).toBeGreaterThan(1.64);
      expect(al / copper).toBeLessThan(1.69);
      expect(solid).toBe(al);
    }
  });

  it("prints every row as a second copy of the standard does", () => {
    expect(rows.map(({ copper }) => copper)).toEqual([
      36.0, 24.5, 18.1, 12.1, 7.41, 4.61, 3.08, 1.83, 1.15, 0.727, 0.524, 0.387, 0.268, 0.193,
      0.153, 0.124, 0.0991, 0.0754, 0.0601,
    ]);
    expect(aluminium.map(({ al }) => al)).toEqual([
      3.08, 1.91, 1.2, 0.868, 0.641, 0.443, 0.32, 0.253, 0.206, 0.164, 0.125, 0.1,
    ]);
    expect(rows.slice(-3).map(({ solidCopper }) => solidCopper)).toEqual([0.101, 0.0775, 0.062]);
    for (const { copper, solidCopper } of rows.slice(0, -3)) expect(solidCopper).toBe(copper);
  });

  it.each([
    ["1.5", 12.1, undefined],
    ["2.5", 7.41, undefined],
    ["6", 3.08, undefined],
    ["10", 1.83, 3.08],
    ["16", 1.15, 1.91],
    ["35", 0.524, 0.868],
    ["50", 0.387, 0.641],
    ["95", 0.193, 0.32],
    ["120", 0.153, 0.253],
  ] as const)("prints %s mm² as a second copy of the standard does", (size, copper, al) => {
    expect(iecConductors.row(size)).toMatchObject({ copper, ...(al && { aluminium: al }) });
  });
});
