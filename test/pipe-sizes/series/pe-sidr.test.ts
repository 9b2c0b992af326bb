import {
  boreOf,
  pePipeSIDR,
  type PeSidrSize,
  peSidrSizes,
  pipesOf,
  steelSizes,
} from "@leat/pipe-sizes";
import { inch, poundPerFoot, poundPerSquareInch } from "@leat/quantity";
import { describe, expect, it } from "vitest";

const rows = peSidrSizes.definition.rows as readonly Readonly<Record<string, string | number>>[];
const walls = rows.flatMap((row) =>
  Object.entries(row).flatMap(([column, wall]) =>
    column.startsWith("SIDR ")
      ? [
          {
            size: row["size"] as PeSidrSize,
            inside: row["insideDiameter"] as number,
            sidr: Number(column.slice(5)),
            wall: wall as number,
          },
        ]
      : [],
  ),
);

describe("peSidrSizes", () => {
  it("holds walls that are the inside diameter over the ratio, never under 0.060 in", () => {
    expect(walls.length).toBe(60);
    for (const { size, inside, sidr, wall } of walls) {
      expect(
        Math.abs(wall - Math.max(0.06, inside / sidr)),
        `${size} in SIDR ${sidr}`,
      ).toBeLessThanOrEqual(0.00051);
    }
  });

  it("holds ratios that are the preferred numbers less 1 (ANSI Z17.1, series 10)", () => {
    const preferred = [6.3, 8, 10, 12.5, 16, 20];
    const ratios = [...new Set(walls.map(({ sidr }) => sidr))].toSorted((a, b) => a - b);
    expect(ratios).toEqual(preferred.map((number) => Number((number - 1).toFixed(1))));
  });

  it("holds the bores of steel pipe of schedule 40 (ASME B36.10M), which its fittings were made for", () => {
    for (const { size, insideDiameter } of peSidrSizes.definition.rows) {
      const { outsideDiameter, "Sch 40": wall } = steelSizes.row(size);
      expect(insideDiameter, size).toBeCloseTo(outsideDiameter - 2 * wall, 9);
    }
  });
});

describe("tolerances of the inside", () => {
  it("rise with the size, and are wider inwards (ASTM D2239, Table 1, from memory)", () => {
    const { rows: sizes } = peSidrSizes.definition;
    for (const { size, over, under } of sizes) expect(under, size).toBeGreaterThanOrEqual(over);
    sizes.slice(1).forEach((row, i) => {
      expect(row.over).toBeGreaterThanOrEqual(sizes[i]!.over);
      expect(row.under).toBeGreaterThanOrEqual(sizes[i]!.under);
    });
    // Fittings that are pushed in must fit all of it: less than 4 % of the inside in all.
    for (const { size, insideDiameter, over, under } of sizes)
      expect((over + under) / insideDiameter, size).toBeLessThan(0.04);
  });
});

describe("pePipeSIDR", () => {
  it("has the bore that its size says, whichever the wall", () => {
    const pipe = pePipeSIDR("2", 15);
    expect(pipe.name).toBe("2 in PE4710 SIDR 15");
    expect(boreOf(pipe).in(inch)).toBe(2.067);
    // With its tolerance of 0.015 in (ASTM D2239, Table 1, from memory).
    expect(boreOf(pipe, "minimum").in(inch)).toBe(2.082);
    expect(pipe.minimumWall.in(inch)).toBe(0.138);
    expect(boreOf(pePipeSIDR("2", 7)).in(inch)).toBe(2.067);
    expect(pePipeSIDR("2", 7).outsideDiameter.in(inch)).toBe(2.693);
    expect(pipe.outsideDiameter.in(inch)).toBe(2.363);
  });

  it("closes: the inside and two average walls are the outside", () => {
    for (const { size, sidr, inside } of walls) {
      const { outsideDiameter, averageWall, minimumWall } = pePipeSIDR(size, sidr as 15);
      expect(outsideDiameter.in(inch) - 2 * averageWall.in(inch)).toBeCloseTo(inside, 9);
      expect(averageWall.in(inch)).toBeGreaterThan(minimumWall.in(inch));
    }
  });

  it.each([
    ["PE4710", 7, 250],
    ["PE4710", 9, 200],
    ["PE4710", 11.5, 160],
    ["PE3608", 15, 100],
    ["PE3608", 19, 80],
    ["PE4710", 15, 125],
    ["PE4710", 19, 100],
  ] as const)("carries of %s in SIDR %d the %d psi that suppliers print", (material, sidr, psi) => {
    expect(pePipeSIDR("1", sidr, material).pressureRating!.in(poundPerSquareInch)).toBe(psi);
    expect(String(pePipeSIDR("1", sidr).ratedAt)).toBe("73 °F");
  });

  it("weighs more the thicker it is", () => {
    const weights = ([19, 15, 11.5, 9, 7, 5.3] as const).map((sidr) =>
      pePipeSIDR("2", sidr).massPerLength!.in(poundPerFoot),
    );
    expect(weights).toEqual(weights.toSorted((a, b) => a - b));
  });

  it("refuses what is not made, and lists what is", () => {
    expect(() => pePipeSIDR("5" as never, 15)).toThrow(
      "PE sized by its inside: there is no size of 5 in; sizes are 1/2, 3/4, 1, 1 1/4, 1 1/2, 2, 2 1/2, 3, 4, 6 in.",
    );
    expect(() => pePipeSIDR("2", 11 as never)).toThrow(
      "PE sized by its inside: 2 in is not made in SIDR 11; it is made in SIDR 5.3, SIDR 7, SIDR 9, SIDR 11.5, SIDR 15, SIDR 19.",
    );
    expect(pipesOf({ series: "PE SIDR", sidr: 15 })).toHaveLength(10);
  });
});
