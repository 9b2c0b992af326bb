import {
  peIpsBetweenSizes,
  peIpsSizes,
  type PeIpsSize,
  pePipeIPS,
  pipesOf,
  steelSizes,
} from "@leat/pipe-sizes";
import { inch, poundPerSquareInch } from "@leat/quantity";
import { describe, expect, it } from "vitest";

type Row = Readonly<Record<string, string | number>>;
const rows = peIpsSizes.definition.rows as readonly Row[];
const between = peIpsBetweenSizes.definition.rows as readonly Row[];
const walls = [...rows, ...between].flatMap((row) =>
  Object.entries(row).flatMap(([column, wall]) =>
    column.startsWith("DR ")
      ? [
          {
            size: row["size"] as string,
            od: row["outsideDiameter"] as number,
            dr: Number(column.slice(3)),
            wall: wall as number,
          },
        ]
      : [],
  ),
);

describe("peIpsSizes", () => {
  it("holds walls that are the outside diameter over the dimension ratio, to the last printed digit", () => {
    // 14 sizes to 12 in and 6 above; the two ratios between, DR 15.5 from 2 in.
    expect(walls.length).toBe(99 + 6 * 9 + 20 + 15);
    for (const { size, od, dr, wall } of walls)
      expect(Math.abs(wall - od / dr), `${size} in DR ${dr}`).toBeLessThanOrEqual(0.00051);
  });

  it("holds sizes that rise, and no wall under 0.062 in", () => {
    rows
      .slice(1)
      .forEach((row, i) =>
        expect(row["outsideDiameter"]).toBeGreaterThan(rows[i]!["outsideDiameter"] as number),
      );
    expect(Math.min(...walls.map(({ wall }) => wall))).toBe(0.062);
  });

  it("holds the outside diameters of steel pipe (ASME B36.10M), in both tables", () => {
    expect(between.map((row) => [row["size"], row["outsideDiameter"]])).toEqual(
      rows.map((row) => [row["size"], row["outsideDiameter"]]),
    );
    for (const { size, outsideDiameter } of steelSizes.definition.rows)
      expect(peIpsSizes.row(size).outsideDiameter).toBe(outsideDiameter);
  });

  it("holds the walls of a second maker, ASTM D3035, for DR 13.5, 11, 9 and 7", () => {
    const second: Readonly<Record<string, readonly number[]>> = {
      "3/4": [0.078, 0.095, 0.117, 0.15],
      "1": [0.097, 0.12, 0.146, 0.188],
      "1 1/4": [0.123, 0.151, 0.184, 0.237],
      "1 1/2": [0.141, 0.173, 0.211, 0.271],
      "2": [0.176, 0.216, 0.264, 0.339],
      "3": [0.259, 0.318, 0.389],
    };
    for (const [size, printed] of Object.entries(second)) {
      const held = ([13.5, 11, 9, 7] as const)
        .slice(0, printed.length)
        .map((dr) => pePipeIPS(size as PeIpsSize, dr).minimumWall.in(inch));
      expect(held, size).toEqual(printed);
    }
  });
});

describe("pePipeIPS", () => {
  it.each([
    ["1", 11, 0.12],
    ["2", 11, 0.216],
    ["2", 9, 0.264],
    ["3", 11, 0.318],
    ["2", 7, 0.339],
  ] as const)("%s in DR %d has a wall of %d in (ASTM D3035, maker's sheet)", (size, dr, wall) => {
    expect(pePipeIPS(size, dr).minimumWall.in(inch)).toBe(wall);
  });

  it.each([
    ["4", 11, 0.409, 3.682, 3.633],
    ["6", 17, 0.39, 5.845, 5.799],
    ["2", 11, 0.216, 1.943, 1.917],
  ] as const)(
    "%s in DR %d: wall %d, bore over the least wall %d, average bore %d in (ASTM F714; PPI rule)",
    (size, dr, wall, widest, average) => {
      const pipe = pePipeIPS(size, dr);
      expect(Math.abs(pipe.minimumWall.in(inch) - wall)).toBeLessThan(0.0015);
      expect(Math.abs(pipe.insideDiameter.minimumWall.in(inch) - widest)).toBeLessThan(0.003);
      expect(Math.abs(pipe.insideDiameter.average.in(inch) - average)).toBeLessThan(0.003);
    },
  );

  it.each([
    ["2", 11, 1.943],
    ["2", 9, 1.847],
    ["2", 7, 1.697],
    ["3", 11, 2.864],
    ["1", 11, 1.075],
  ] as const)(
    "%s in DR %d has the printed bore of %d in over the least wall (maker's sheet)",
    (size, dr, bore) => {
      expect(pePipeIPS(size, dr).insideDiameter.minimumWall.in(inch)).toBe(bore);
    },
  );

  it("closes: outside diameter less two average walls is the average bore, to the last printed digits", () => {
    for (const { size, dr } of walls) {
      const { outsideDiameter, averageWall, insideDiameter, minimumWall } = pePipeIPS(
        size as PeIpsSize,
        dr as 11,
      );
      const closed = outsideDiameter.in(inch) - 2 * averageWall.in(inch);
      expect(Math.abs(closed - insideDiameter.average.in(inch))).toBeLessThan(0.0016);
      expect(averageWall.in(inch) / minimumWall.in(inch)).toBeCloseTo(1.06, 1.5);
    }
  });

  it("carries what its maker prints, by grade", () => {
    for (const [dr, psi] of [
      [7, 333],
      [7.3, 318],
      [9, 250],
      [11, 200],
      [13.5, 160],
      [17, 125],
      [21, 100],
      [26, 80],
      [32.5, 63],
    ] as const) {
      expect(
        Math.abs(pePipeIPS("6", dr).pressureRating!.in(poundPerSquareInch) - psi),
      ).toBeLessThanOrEqual(1);
    }
    expect(pePipeIPS("6", 11, "PE3608").pressureRating!.in(poundPerSquareInch)).toBe(160);
    expect(String(pePipeIPS("6", 11).ratedAt)).toBe("73 °F");
  });

  it("refuses what is not made, and lists what is", () => {
    expect(() => pePipeIPS("7" as never, 11)).toThrow(
      "PE in iron pipe sizes: there is no size of 7 in; sizes are 1/2, 3/4, 1, 1 1/4, 1 1/2, 2, 2 1/2, 3, 4, 5, 6, 8, 10, 12, 14, 16, 18, 20, 22, 24 in.",
    );
    expect(() => pePipeIPS("1/2", 26)).toThrow(
      "PE in iron pipe sizes: 1/2 in is not made in DR 26; it is made in DR 7, DR 7.3, DR 9, DR 9.3, DR 11, DR 13.5.",
    );
  });

  it("is listed from the narrowest bore to the widest, with only what is made", () => {
    const listed = pipesOf({ series: "PE IPS", dr: 26 });
    expect(listed.map(({ name }) => name)).toEqual(
      ["4", "5", "6", "8", "10", "12", "14", "16", "18", "20", "22", "24"].map(
        (size) => `${size} in PE4710 DR 26`,
      ),
    );
    const bores = pipesOf({ series: "PE IPS", dr: 11 }).map(({ insideDiameter }) =>
      insideDiameter.average.in(inch),
    );
    expect(bores).toEqual(bores.toSorted((a, b) => a - b));
    expect(bores.length).toBe(20);
    expect(pipesOf({ series: "PE IPS", dr: 15.5 })).toHaveLength(15);
    expect(pePipeIPS("2", 15.5).source!.standing).toBe("memory");
  });
});
