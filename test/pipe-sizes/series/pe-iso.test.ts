import {
  greatestWallMm,
  peIsoNominalPressure,
  peIsoSizes,
  type PeIsoRatio,
  type PeIsoSize,
  pePipeISO,
  pipesOf,
} from "@leat/pipe-sizes";
import { bar, millimetre } from "@leat/quantity";
import { describe, expect, it } from "vitest";

const rows = peIsoSizes.definition.rows as readonly Readonly<Record<string, number>>[];
const walls = rows.flatMap((row) =>
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
};

describe("peIsoSizes", () => {
  it("holds walls that ISO 4065 generates: dn/(2S + 1) with S exact, rounded up, thin ones raised", () => {
    expect(walls.length).toBe(137);
    for (const { dn, sdr, wall } of walls) {
      const exact = dn / (2 * 10 ** exponents[sdr]! + 1);
      const up = Math.ceil((exact - 0.005) * 10 - 1e-9) / 10;
      // Small pipe: calculated walls are raised to 2.0, 2.3 or 3.0 mm.
      const allowed = up < 2 ? [2] : up < 2.3 ? [up, 2.3] : up < 3 ? [up, 3] : [up];
      expect(allowed, `${dn} mm SDR ${sdr}: ${exact}`).toContain(wall);
      if (dn > 32) expect(wall, `${dn} mm SDR ${sdr}`).toBe(Math.max(2, up));
    }
  });

  it("holds sizes and walls that rise", () => {
    rows.slice(1).forEach((row, i) => {
      for (const column of Object.keys(rows[i]!))
        expect(row[column]).toBeGreaterThanOrEqual(rows[i]![column]!);
      expect(row["size"]).toBeGreaterThan(rows[i]!["size"]!);
      expect(row["outsideDiameter"]).toBe(row["size"]);
    });
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

describe("pePipeISO", () => {
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
      expect(averageWall.in(millimetre) / wall).toBeLessThan(1.09);
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
    expect(pipesOf({ series: "PE ISO", sdr: 6 })).toHaveLength(19);
  });
});
