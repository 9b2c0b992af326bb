import {
  greatestWallMm,
  peIsoNominalPressure,
  peIsoRatioOf,
  peIsoSizes,
  peIsoThinSizes,
  type PeIsoRatio,
  type PeIsoSize,
  pePipeISO,
  pipesOf,
} from "@leat/pipe-sizes";
import { bar, kilogramPerMetre, millimetre } from "@leat/quantity";
import { describe, expect, it } from "vitest";

type Row = Readonly<Record<string, number>>;
const rows = peIsoSizes.definition.rows as readonly Row[];
const thin = peIsoThinSizes.definition.rows as readonly Row[];
const walls = [...rows, ...thin].flatMap((row) =>
  Object.entries(row).flatMap(([column, wall]) =>
    column.startsWith("SDR ") ? [{ dn: row["size"]!, sdr: Number(column.slice(4)), wall }] : [],
  ),
);

/** Exponent of ten of the exact series number S, by nominal ratio: steps of the R10 series (ISO 3, ISO 4065). */
const exponents: Readonly<Record<number, number>> = {
  6: 0.4,
  7.4: 0.5,
  9: 0.6,
  11: 0.7,
  13.6: 0.8,
  17: 0.9,
  21: 1,
  26: 1.1,
  33: 1.2,
  41: 1.3,
};

describe("peIsoSizes", () => {
  it("holds walls that ISO 4065 generates: dn/(2S + 1) with S exact, rounded up, thin ones raised", () => {
    // 137 to 315 mm, 41 above; two thin ratios of 20 and 19 sizes.
    expect(walls.length).toBe(137 + 41 + 39);
    for (const { dn, sdr, wall } of walls) {
      const exact = dn / (2 * 10 ** exponents[sdr]! + 1);
      const up = Math.ceil((exact - 0.005) * 10 - 1e-9) / 10;
      if (sdr > 26) {
        // DIN 8074: never under 1.8 mm.
        expect(wall, `${dn} mm SDR ${sdr}`).toBe(Math.max(1.8, up));
        continue;
      }
      // Small pipe: calculated walls are raised to 2.0, 2.3 or 3.0 mm.
      const allowed = up < 2 ? [2] : up < 2.3 ? [up, 2.3] : up < 3 ? [up, 3] : [up];
      expect(allowed, `${dn} mm SDR ${sdr}: ${exact}`).toContain(wall);
      if (dn > 32) expect(wall, `${dn} mm SDR ${sdr}`).toBe(Math.max(2, up));
    }
  });

  it("holds sizes and walls that rise", () => {
    for (const table of [rows, thin]) {
      table.slice(1).forEach((row, i) => {
        for (const column of Object.keys(row))
          expect(row[column]).toBeGreaterThanOrEqual(table[i]![column] ?? 0);
        expect(row["size"]).toBeGreaterThan(table[i]!["size"]!);
        expect(row["outsideDiameter"]).toBe(row["size"]);
      });
    }
  });

  it.each([
    [32, 11, 3],
    [50, 11, 4.6],
    [63, 17, 3.8],
    [75, 11, 6.8],
    [90, 11, 8.2],
    [110, 11, 10],
    [110, 17, 6.6],
    [125, 17, 7.4],
    [160, 17, 9.5],
    [200, 17, 11.9],
  ] as const)(
    "holds for %d mm SDR %d a wall of %d mm (ISO 4427-2:2007, Table 2)",
    (dn, sdr, wall) => {
      expect(pePipeISO(dn, sdr).minimumWall.in(millimetre)).toBe(wall);
    },
  );
});

describe("walls of wide and of thin pipe", () => {
  // AS/NZS 4130 series 1 as an open package prints it: minimum walls by SDR, from 225 mm to 630 mm.
  it.each([
    [41, [5.5, 6.2, 6.9, 7.7, 8.7, 9.8, 11, 12.3, 13.7, 15.4]],
    [33, [6.9, 7.7, 8.6, 9.7, 10.9, 12.3, 13.8, 15.3, 17.2, 19.3]],
    [26, [8.6, 9.6, 10.7, 12.1, 13.6, 15.3, 17.2, 19.1, 21.4, 24.1]],
  ] as const)("are in SDR %d those that AS/NZS 4130 prints too", (sdr, printed) => {
    const sizes = [225, 250, 280, 315, 355, 400, 450, 500, 560, 630] as const;
    expect(sizes.map((dn) => pePipeISO(dn, sdr).minimumWall.in(millimetre))).toEqual(printed);
  });
});

describe("pePipeISO", () => {
  it.each([
    [75, 41, 0.457],
    [110, 41, 0.943],
    [200, 41, 3.05],
    [63, 33, 0.399],
    [110, 33, 1.17],
    [160, 33, 2.42],
    [63, 26, 0.494],
    [110, 26, 1.43],
    [63, 21, 0.58],
    [110, 21, 1.77],
    [200, 21, 5.78],
    [50, 17, 0.453],
    [90, 17, 1.46],
    [110, 17, 2.17],
    [160, 17, 4.52],
    [200, 17, 7.05],
    [63, 13.6, 0.873],
    [110, 13.6, 2.62],
    [160, 13.6, 5.5],
  ] as const)(
    "weighs for %d mm SDR %d the %d kg/m that DIN 8074 prints, at 950 kg/m³",
    (dn, sdr, mass) => {
      const held = pePipeISO(dn, sdr, "PE80").massPerLength!.in(kilogramPerMetre);
      expect(Math.abs(held / mass - 1)).toBeLessThan(0.04);
      // Over the least wall it would be too light.
      const { minimumWall } = pePipeISO(dn, sdr);
      const least = minimumWall.in(millimetre);
      expect((Math.PI * 950e-6 * least * (dn - least)) / mass).toBeLessThan(0.97);
    },
  );

  it("is found by its nominal pressure", () => {
    expect(peIsoRatioOf(10)).toBe(17);
    expect(peIsoRatioOf(10, "PE80")).toBe(13.6);
    expect(() => peIsoRatioOf(7)).toThrow(
      "metric PE: PN 7 is not made of PE100; it is made in PN 25, PN 20, PN 16, PN 12.5, PN 10, PN 8, PN 6, PN 5, PN 4.",
    );
    expect(pePipeISO(110, 33).pressureRating!.in(bar)).toBe(5);
  });

  it("has the greatest wall that two makers print (ISO 11922-1, grade V)", () => {
    const printed = {
      2: 2.3,
      2.3: 2.7,
      3: 3.4,
      5.8: 6.5,
      10: 11.1,
      14.6: 16.2,
      9.5: 10.6,
      14.8: 16.4,
    };
    for (const [least, greatest] of Object.entries(printed))
      expect(greatestWallMm(Number(least)), least).toBe(greatest);
  });

  it("has an average wall within the tolerance, and a bore that closes", () => {
    for (const { dn, sdr, wall } of walls) {
      const { averageWall, insideDiameter } = pePipeISO(dn as PeIsoSize, sdr as PeIsoRatio);
      expect(averageWall.in(millimetre) / wall).toBeGreaterThan(1.05);
      expect(averageWall.in(millimetre) / wall).toBeLessThan(1.1);
      expect(dn - 2 * averageWall.in(millimetre)).toBeCloseTo(
        insideDiameter.average.in(millimetre),
        6,
      );
      expect(dn - 2 * wall).toBeCloseTo(insideDiameter.minimumWall.in(millimetre), 6);
    }
  });

  it("has a nominal pressure that its strength gives, within the steps of the standard", () => {
    for (const { sdr, PE80, PE100 } of peIsoNominalPressure.definition.rows) {
      for (const [nominal, strength] of [
        [PE80, 8],
        [PE100, 10],
      ] as const) {
        if (nominal === undefined) continue;
        const worked = (20 * strength) / 1.25 / (sdr - 1);
        expect(nominal / worked, `SDR ${sdr}`).toBeLessThan(1.025);
        expect(nominal / worked, `SDR ${sdr}`).toBeGreaterThan(0.93);
      }
    }
    expect(pePipeISO(110, 17).pressureRating!.in(bar)).toBe(10);
    expect(pePipeISO(110, 17, "PE80").pressureRating!.in(bar)).toBe(8);
    expect(pePipeISO(110, 6).pressureRating).toBeUndefined();
    expect(String(pePipeISO(110, 17).ratedAt)).toBe("20 °C");
  });

  it("refuses what is not made, and lists what is", () => {
    expect(() => pePipeISO(100 as never, 11)).toThrow(
      "metric PE: there is no size of 100 mm; sizes are 16, 20, 25, 32, 40, 50, 63, 75, 90, 110,",
    );
    expect(() => pePipeISO(20, 17)).toThrow(
      "metric PE: 20 mm is not made in SDR 17; it is made in SDR 6, SDR 7.4, SDR 9, SDR 11.",
    );
    expect(
      pipesOf({ series: "PE ISO", sdr: 26, material: "PE80" }).map(({ name }) => name)[0],
    ).toBe("50 mm PE80 SDR 26");
    expect(pipesOf({ series: "PE ISO", sdr: 6 })).toHaveLength(20);
  });
});
