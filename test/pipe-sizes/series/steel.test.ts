import { pipesOf, pvcScheduleSizes, steelPipe, steelSizes } from "@leat/pipe-sizes";
import { inch, millimetre, poundPerFoot, poundPerSquareInch } from "@leat/quantity";
import { describe, expect, it } from "vitest";

const rows = steelSizes.definition.rows;

describe("steelSizes", () => {
  it("holds weights that are 10.69·(D − t)·t lb/ft, as ASME B36.10M works them out, to 0.3 %", () => {
    let weighed = 0;
    for (const row of rows) {
      for (const [wall, weight] of [
        [row["Sch 40"], row["weight 40"]],
        [row["Sch 80"], row["weight 80"]],
        [row.STD, row["weight STD"]],
      ] as const) {
        if (weight === undefined) continue;
        weighed += 1;
        const worked = 10.69 * (row.outsideDiameter - wall) * wall;
        // Small pipe is printed to two decimals.
        expect(Math.abs(weight - worked), `${row.size} in, ${wall} in`).toBeLessThan(
          Math.max(0.006, 0.003 * worked),
        );
      }
    }
    expect(weighed).toBe(54);
  });

  it("holds the millimetres of ASME B36.10M: outside diameters to 0.1 %, walls to 0.01 mm", () => {
    // Outside, Sch 40, Sch 80, STD, as an open library carries them.
    const metric: Readonly<Record<string, readonly number[]>> = {
      "1/2": [21.3, 2.77, 3.73, 2.77],
      "3/4": [26.7, 2.87, 3.91, 2.87],
      "1": [33.4, 3.38, 4.55, 3.38],
      "1 1/4": [42.2, 3.56, 4.85, 3.56],
      "1 1/2": [48.3, 3.68, 5.08, 3.68],
      "2": [60.3, 3.91, 5.54, 3.91],
      "2 1/2": [73, 5.16, 7.01, 5.16],
      "3": [88.9, 5.49, 7.62, 5.49],
      "4": [114.3, 6.02, 8.56, 6.02],
      "5": [141.3, 6.55, 9.53, 6.55],
      "6": [168.3, 7.11, 10.97, 7.11],
      "8": [219.1, 8.18, 12.7, 8.18],
      "10": [273, 9.27, 15.09, 9.27],
      "12": [323.8, 10.31, 17.48, 9.53],
      "14": [355.6, 11.13, 19.05, 9.53],
      "16": [406.4, 12.7, 21.44, 9.53],
      "18": [457, 14.27, 23.83, 9.53],
      "20": [508, 15.09, 26.19, 9.53],
      "24": [610, 17.48, 30.96, 9.53],
    };
    for (const row of rows) {
      const [outside, ...walls] = metric[row.size]!;
      expect(Math.abs((row.outsideDiameter * 25.4) / outside! - 1), row.size).toBeLessThan(0.002);
      [row["Sch 40"], row["Sch 80"], row.STD].forEach((wall, i) =>
        expect(Math.abs(wall * 25.4 - walls[i]!), row.size).toBeLessThan(0.016),
      );
    }
  });

  it("holds the bores that the Hydraulic Institute's data book prints for Sch 40 and 80", () => {
    const bores: Readonly<Record<string, readonly [number, number]>> = {
      "3/4": [0.824, 0.742],
      "1": [1.049, 0.957],
      "2": [2.067, 1.939],
      "3": [3.068, 2.9],
      "4": [4.026, 3.826],
      "6": [6.065, 5.761],
      "8": [7.981, 7.625],
      "10": [10.02, 9.562],
      "12": [11.938, 11.374],
    };
    for (const [size, [forty, eighty]] of Object.entries(bores)) {
      expect(steelPipe(size as "4", 40).insideDiameter.average.in(inch), size).toBe(forty);
      expect(steelPipe(size as "4", 80).insideDiameter.average.in(inch), size).toBe(eighty);
    }
  });

  it("rises in size, and has the outside diameters of PVC schedule pipe", () => {
    rows.slice(1).forEach((row, i) => {
      expect(row.outsideDiameter).toBeGreaterThan(rows[i]!.outsideDiameter);
      expect(row["Sch 80"]).toBeGreaterThan(row["Sch 40"]);
    });
    for (const { size, outsideDiameter } of pvcScheduleSizes.definition.rows)
      expect(steelSizes.row(size).outsideDiameter).toBe(outsideDiameter);
  });
});

describe("steelPipe", () => {
  it("is on average as thick as it is called, and at least seven eighths of it", () => {
    const pipe = steelPipe("3", 40);
    expect(pipe.name).toBe("3 in steel Sch 40");
    expect(pipe.averageWall.in(inch)).toBe(0.216);
    expect(pipe.minimumWall.in(inch)).toBe(0.189);
    expect(pipe.insideDiameter.minimumWall.in(inch)).toBe(3.122);
    expect(pipe.massPerLength!.in(poundPerFoot)).toBeCloseTo(7.58, 2);
  });

  it("carries half the yield strength of the weakest steel over the least wall", () => {
    // 2·15 000·0.189/3.5 by hand.
    expect(steelPipe("3", 40).pressureRating!.in(poundPerSquareInch)).toBe(1620);
    expect(String(steelPipe("3", 40).ratedAt)).toBe("20 °C");
  });

  it("is rougher where it is galvanised", () => {
    const galvanised = steelPipe("2", "STD", "galvanised");
    expect(galvanised.name).toBe("2 in galvanised steel STD");
    expect(galvanised.material).toBe("galvanised steel");
    expect(galvanised.roughness.typical.in(millimetre)).toBe(0.15);
    expect(steelPipe("2", "STD").roughness.typical.in(millimetre)).toBe(0.045);
  });

  it("refuses what is not made, and lists what is", () => {
    expect(() => steelPipe("7" as never, 40)).toThrow(
      "steel: there is no size of 7 in; sizes are 1/2, 3/4, 1,",
    );
    expect(() => steelPipe("4", 160 as never)).toThrow(
      "steel: 4 in is not made in Sch 160; it is made in Sch 40, Sch 80, STD.",
    );
    expect(pipesOf({ series: "steel", schedule: "STD" })).toHaveLength(19);
  });
});
