import {
  pipe,
  pipesOf,
  pvcPipeSchedule,
  pvcPipeSDR,
  type PvcScheduleSize,
  pvcScheduleSizes,
  pvcSdrRatings,
  pvcSdrSizes,
} from "@leat/pipe-sizes";
import { inch, poundPerFoot, poundPerSquareInch } from "@leat/quantity";
import { describe, expect, it } from "vitest";

describe("pvcScheduleSizes", () => {
  const rows = pvcScheduleSizes.definition.rows;

  it("holds ratings that the hoop formula gives at 2000 psi, rounded to 10 psi", () => {
    for (const row of rows) {
      for (const schedule of [40, 80] as const) {
        const wall = row[`Sch ${schedule}`];
        const worked = (2 * 2000 * wall) / (row.outsideDiameter - wall);
        expect(
          Math.abs(row[`rating ${schedule}`] - worked),
          `${row.size} in Sch ${schedule}`,
        ).toBeLessThanOrEqual(6);
      }
    }
  });

  it("holds average bores that lie 6 % of a wall inside the least wall, to 0.002 in", () => {
    for (const row of rows) {
      for (const schedule of [40, 80] as const) {
        const worked = row.outsideDiameter - 2.12 * row[`Sch ${schedule}`];
        expect(
          Math.abs(row[`bore ${schedule}`] - worked),
          `${row.size} in Sch ${schedule}`,
        ).toBeLessThanOrEqual(0.002);
      }
    }
  });

  it("holds sizes that rise, the outside diameters of steel pipe, and a thicker wall in schedule 80", () => {
    // ASME B36.10, millimetres as printed there.
    const steel = [
      21.3, 26.7, 33.4, 42.2, 48.3, 60.3, 73, 88.9, 114.3, 141.3, 168.3, 219.1, 273, 323.8,
    ];
    rows.forEach((row, i) => {
      expect(Math.abs(row.outsideDiameter * 25.4 - steel[i]!), row.size).toBeLessThan(0.06);
      expect(row["Sch 80"]).toBeGreaterThan(row["Sch 40"]);
    });
  });

  it.each([
    ["1/2", 0.84, 0.109, 0.147],
    ["3/4", 1.05, 0.113, 0.154],
    ["1 1/2", 1.9, 0.145, 0.2],
    ["2", 2.375, 0.154, 0.218],
    ["4", 4.5, 0.237, 0.337],
    ["6", 6.625, 0.28, 0.432],
  ] as const)(
    "holds %s in: %d in outside, walls of %d and %d in (ASTM D1785)",
    (size, outside, forty, eighty) => {
      expect(pvcPipeSchedule(size, 40).outsideDiameter.in(inch)).toBe(outside);
      expect(pvcPipeSchedule(size, 40).minimumWall.in(inch)).toBe(forty);
      expect(pvcPipeSchedule(size, 80).minimumWall.in(inch)).toBe(eighty);
    },
  );

  it.each([
    ["1/2", 600, 850],
    ["1", 450, 630],
    ["2", 280, 400],
    ["3", 260, 370],
    ["6", 180, 280],
    ["8", 160, 250],
  ] as const)(
    "holds %s in at %d and %d psi (Machinery's Handbook, 31st ed., Table 13)",
    (size, forty, eighty) => {
      expect(pvcPipeSchedule(size, 40).pressureRating!.in(poundPerSquareInch)).toBe(forty);
      expect(pvcPipeSchedule(size, 80).pressureRating!.in(poundPerSquareInch)).toBe(eighty);
    },
  );
});

describe("pvcSdrSizes", () => {
  const rows = pvcSdrSizes.definition.rows as readonly Readonly<Record<string, string | number>>[];
  const walls = rows.flatMap((row) =>
    Object.entries(row).flatMap(([column, wall]) =>
      column.startsWith("SDR ")
        ? [
            {
              size: row["size"] as string,
              od: row["outsideDiameter"] as number,
              sdr: Number(column.slice(4)),
              wall: wall as number,
            },
          ]
        : [],
    ),
  );

  it("holds walls that are the outside diameter over the ratio, never under 0.060 in, within 0.0015 in", () => {
    expect(walls.length).toBe(67);
    for (const { size, od, sdr, wall } of walls) {
      expect(
        Math.abs(wall - Math.max(0.06, od / sdr)),
        `${size} in SDR ${sdr}`,
      ).toBeLessThanOrEqual(0.0015);
    }
  });

  it("has the outside diameters of the schedule pipe", () => {
    for (const row of rows) {
      expect(row["outsideDiameter"]).toBe(
        pvcScheduleSizes.row(row["size"] as PvcScheduleSize).outsideDiameter,
      );
    }
  });

  it("has ratings that the hoop formula gives at 2000 psi, within 2 %", () => {
    for (const { sdr, rating } of pvcSdrRatings.definition.rows)
      expect(Math.abs(rating / (4000 / (sdr - 1)) - 1)).toBeLessThan(0.02);
  });

  it("holds 4 in SDR 26 at 0.173 in (ASTM D2241)", () => {
    expect(pvcPipeSDR("4", 26).minimumWall.in(inch)).toBe(0.173);
  });

  it.each([
    ["2", 26, 0.101],
    ["2", 21, 0.123],
    ["2", 17, 0.15],
    ["4", 26, 0.183],
    ["4", 21, 0.227],
    ["6", 26, 0.271],
    ["6", 21, 0.335],
    ["12", 26, 0.52],
  ] as const)(
    "has for %s in SDR %d the average wall of %d in that a maker prints, to 0.001 in",
    (size, sdr, wall) => {
      expect(Math.abs(pvcPipeSDR(size, sdr).averageWall.in(inch) - wall)).toBeLessThan(0.00101);
    },
  );

  // A maker's table of average walls, in inches, for SDR 41, 32.5, 26, 21, 17; a blank is not made.
  it.each([
    ["1", [0, 0, 0.07, 0.073, 0.087]],
    ["1 1/4", [0, 0.07, 0.074, 0.089, 0.108]],
    ["1 1/2", [0, 0.07, 0.083, 0.1, 0.122]],
    ["2", [0, 0.083, 0.101, 0.123, 0.15]],
    ["2 1/2", [0, 0.098, 0.12, 0.147, 0.179]],
    ["3", [0.095, 0.118, 0.145, 0.177, 0.219]],
    ["4", [0.12, 0.148, 0.183, 0.227, 0.281]],
    ["5", [0.146, 0.182, 0.228, 0.281, 0.347]],
    ["6", [0.172, 0.216, 0.271, 0.335, 0.414]],
    ["8", [0.223, 0.281, 0.352, 0.435, 0.539]],
    ["10", [0.278, 0.351, 0.438, 0.542, 0.67]],
    ["12", [0.33, 0.416, 0.52, 0.643, 0.795]],
  ] as const)("has for %s in the average walls that a maker prints", (size, printed) => {
    ([41, 32.5, 26, 21, 17] as const).forEach((sdr, i) => {
      if (printed[i] === 0) return;
      const held = pvcPipeSDR(size, sdr).averageWall.in(inch);
      expect(Math.abs(held - printed[i]!), `SDR ${sdr}`).toBeLessThan(0.00201);
    });
  });

  // A maker's table of PVC pipe for joining by fusion: average bore in inches, weight in pounds per foot.
  it.each([
    ["6", 17, 5.8, 4.95],
    ["6", 21, 5.96, 4.06],
    ["6", 26, 6.08, 3.31],
    ["8", 17, 7.55, 8.39],
    ["8", 21, 7.76, 6.86],
    ["8", 26, 7.92, 5.61],
    ["10", 21, 9.67, 10.65],
    ["10", 26, 9.87, 8.71],
    ["12", 21, 11.47, 14.99],
    ["12", 26, 11.71, 12.25],
  ] as const)(
    "has for %s in SDR %d a bore of %d in and weighs %d lb/ft",
    (size, sdr, bore, weight) => {
      const { insideDiameter, massPerLength } = pvcPipeSDR(size, sdr);
      expect(Math.abs(insideDiameter.average.in(inch) - bore)).toBeLessThan(0.011);
      expect(Math.abs(massPerLength!.in(poundPerFoot) / weight - 1)).toBeLessThan(0.006);
    },
  );

  it.each([
    ["6", 40, 6.03, 3.62],
    ["6", 80, 5.71, 5.44],
    ["8", 40, 7.94, 5.45],
    ["8", 80, 7.57, 8.27],
    ["12", 80, 11.29, 16.87],
  ] as const)(
    "has for %s in Sch %d a bore of %d in and weighs %d lb/ft",
    (size, schedule, bore, weight) => {
      const { insideDiameter, massPerLength } = pvcPipeSchedule(size, schedule);
      expect(Math.abs(insideDiameter.average.in(inch) - bore)).toBeLessThan(0.011);
      expect(Math.abs(massPerLength!.in(poundPerFoot) / weight - 1)).toBeLessThan(0.006);
    },
  );

  it("weighs what a sheet of the US Natural Resources Conservation Service has: 3.60 lb/ft in 6 in Sch 40, 2.20 in SDR 41 with the bells", () => {
    expect(Math.abs(pvcPipeSDR("6", 41).massPerLength!.in(poundPerFoot) / 2.2 - 1)).toBeLessThan(
      0.04,
    );
    expect(
      Math.abs(pvcPipeSchedule("6", 40).massPerLength!.in(poundPerFoot) / 3.6 - 1),
    ).toBeLessThan(0.01);
  });

  it("refuses what is not made, and lists what is", () => {
    expect(() => pvcPipeSDR("1/2", 26)).toThrow(
      "PVC by SDR: 1/2 in is not made in SDR 26; it is made in SDR 13.5.",
    );
    expect(() => pvcPipeSchedule("4", 120 as never)).toThrow(
      "PVC by schedule: 4 in is not made in Sch 120; it is made in Sch 40, Sch 80.",
    );
    expect(pipesOf({ series: "PVC SDR", sdr: 41 }).map(({ name }) => name)).toEqual(
      ["3", "4", "5", "6", "8", "10", "12"].map((size) => `${size} in PVC SDR 41`),
    );
    expect(pipesOf({ series: "PVC schedule", schedule: 80 })).toHaveLength(14);
  });
});

describe("pipe", () => {
  it("is the pipe of its series", () => {
    expect(pipe({ series: "PVC schedule", size: "4", schedule: 40 })).toEqual(
      pvcPipeSchedule("4", 40),
    );
    expect(pipe({ series: "PVC SDR", size: "4", sdr: 26 })).toEqual(pvcPipeSDR("4", 26));
    expect(pipe({ series: "PE IPS", size: "4", dr: 11 }).name).toBe("4 in PE4710 DR 11");
    expect(pipe({ series: "PE ISO", size: 110, sdr: 11, material: "PE80" }).name).toBe(
      "110 mm PE80 SDR 11",
    );
  });
});
