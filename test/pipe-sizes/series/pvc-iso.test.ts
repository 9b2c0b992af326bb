import {
  greatestPvcWallMm,
  peIsoSizes,
  pipesOf,
  pvcIsoNominalPressure,
  pvcIsoPressureOf,
  type PvcIsoSize,
  pvcIsoSizes,
  pvcPipeISO,
} from "@leat/pipe-sizes";
import { bar, kilogramPerMetre, millimetre } from "@leat/quantity";
import { describe, expect, it } from "vitest";

const rows = pvcIsoSizes.definition.rows as readonly Readonly<Record<string, number>>[];
const walls = rows.flatMap((row) =>
  Object.entries(row).flatMap(([column, wall]) =>
    column.startsWith("SDR ") ? [{ dn: row["size"]!, sdr: Number(column.slice(4)), wall }] : [],
  ),
);

/** Exponent of ten of the exact series number S, by nominal ratio (ISO 3, ISO 4065). */
const exponents: Readonly<Record<number, number>> = {
  11: 0.7,
  13.6: 0.8,
  17: 0.9,
  21: 1,
  26: 1.1,
  33: 1.2,
  41: 1.3,
};

describe("pvcIsoSizes", () => {
  it("holds walls that ISO 4065 generates: dn/(2S + 1) with S exact, rounded up, never under 1.5 mm", () => {
    expect(walls.length).toBe(2 + 3 + 4 + 5 + 4 * 6 + 6 * 7 + 4 * 6);
    for (const { dn, sdr, wall } of walls) {
      const exact = dn / (2 * 10 ** exponents[sdr]! + 1);
      // Five thousandths of a millimetre of excess are dropped.
      const up = Math.ceil((exact - 0.005) * 10 - 1e-9) / 10;
      expect(wall, `${dn} mm SDR ${sdr}: ${exact}`).toBe(Math.max(1.5, up));
    }
  });

  it("holds the walls of PE pipe of the same ratio, which the same standard generates, from 63 mm", () => {
    for (const { dn, sdr, wall } of walls) {
      if (dn < 63 || sdr > 26) continue;
      const pe: Readonly<Record<string, string | number | undefined>> = peIsoSizes.row(
        dn as PvcIsoSize & 63,
      );
      expect(wall, `${dn} mm SDR ${sdr}`).toBe(pe[`SDR ${sdr}`]);
    }
  });

  // Two open tables that quote EN 1452, and a third of PVC pipe whose bores are printed: outside and wall in millimetres.
  it.each<[number, readonly (readonly [PvcIsoSize, number])[]]>([
    [
      21,
      [
        [40, 1.9],
        [50, 2.4],
        [63, 3],
        [75, 3.6],
        [90, 4.3],
        [110, 5.3],
        [125, 6],
        [140, 6.7],
      ],
    ],
    [
      21,
      [
        [160, 7.7],
        [180, 8.6],
        [200, 9.6],
        [225, 10.8],
        [250, 11.9],
        [315, 15],
      ],
    ],
    [
      13.6,
      [
        [32, 2.4],
        [63, 4.7],
        [75, 5.6],
        [90, 6.7],
        [110, 8.1],
      ],
    ],
  ])("holds in SDR %d the walls that are quoted of EN 1452", (sdr, quoted) => {
    for (const [dn, wall] of quoted) {
      const row: Readonly<Record<string, number | undefined>> = pvcIsoSizes.row(dn);
      expect(row[`SDR ${sdr}`], `${dn} mm`).toBe(wall);
    }
  });
});

describe("pvcPipeISO", () => {
  it("has nominal pressures that its strength of 25 MPa gives, within the steps of the standard", () => {
    for (const { sdr, upTo90, over90 } of pvcIsoNominalPressure.definition.rows) {
      for (const [nominal, coefficient] of [
        [upTo90, 2.5],
        [over90, 2],
      ] as const) {
        if (nominal === undefined) continue;
        const worked = (20 * 25) / coefficient / (sdr - 1);
        expect(nominal / worked, `SDR ${sdr}`).toBeLessThan(1.03);
        expect(nominal / worked, `SDR ${sdr}`).toBeGreaterThan(0.95);
      }
    }
  });

  it("is thinner above 90 mm for the same nominal pressure", () => {
    expect(pvcPipeISO(90, 10).minimumWall.in(millimetre)).toBe(4.3);
    expect(pvcPipeISO(110, 10).minimumWall.in(millimetre)).toBe(4.2);
    expect(pvcPipeISO(110, 10).pressureRating!.in(bar)).toBe(10);
    expect(pvcPipeISO(110, 10).name).toBe("110 mm PVC PN 10");
    expect(String(pvcPipeISO(110, 10).ratedAt)).toBe("20 °C");
  });

  it("has a bore that closes, over a wall of 110 mm PN 10 that goes from 4.2 to 4.9 mm", () => {
    expect(greatestPvcWallMm(4.2)).toBe(4.9);
    const { averageWall, insideDiameter, massPerLength } = pvcPipeISO(110, 10);
    expect(averageWall.in(millimetre)).toBe(4.55);
    expect(insideDiameter.average.in(millimetre)).toBe(100.9);
    expect(insideDiameter.minimumWall.in(millimetre)).toBe(101.6);
    // 1.41 kg/dm³ of a ring of 105.45 mm by 4.55 mm, by hand.
    expect(massPerLength!.in(kilogramPerMetre)).toBeCloseTo(2.125, 3);
  });

  it("is found by its dimension ratio", () => {
    expect(pvcIsoPressureOf(110, 26)).toBe(10);
    expect(pvcIsoPressureOf(90, 26)).toBe(8);
    expect(() => pvcIsoPressureOf(110, 12)).toThrow(
      "metric PVC: 110 mm is not made in SDR 12; it is made in SDR 11, SDR 13.6, SDR 17, SDR 21, SDR 26, SDR 33, SDR 41.",
    );
  });

  it("refuses what is not made, and lists what is", () => {
    expect(() => pvcPipeISO(100 as never, 10)).toThrow(
      "metric PVC: there is no size of 100 mm; sizes are 20, 25, 32,",
    );
    expect(() => pvcPipeISO(20, 10)).toThrow(
      "metric PVC: 20 mm is not made in PN 10; it is made in PN 16, PN 20.",
    );
    expect(pipesOf({ series: "PVC ISO", pressure: 10 }).map(({ name }) => name)).toEqual(
      [32, 40, 50, 63, 75, 90, 110, 125, 140, 160, 180, 200, 225, 250, 280, 315].map(
        (size) => `${size} mm PVC PN 10`,
      ),
    );
  });
});
