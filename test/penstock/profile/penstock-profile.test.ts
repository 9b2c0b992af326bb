import type { NonPhysicalError, Notice } from "@leat/formula";
import { fittingCoefficients, penstockProfile, type ProfileInput } from "@leat/penstock";
import { ownPipe, readPipe } from "@leat/pipe-sizes";
import {
  celsius,
  coherentUnit,
  foot,
  metre,
  millimetre,
  point,
  type Quantity,
} from "@leat/quantity";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";

const at = (chainage: number, height: number) => ({
  chainage: metre.of(chainage),
  elevation: point("site datum", metre.of(height), "nozzle"),
});
const pipe = readPipe("110 mm PE100 SDR 17");
const plain: ProfileInput = {
  stations: [at(0, 60), at(40, 30), at(120, 36), at(160, 6)],
  measured: "across the map",
  reaches: [{ pipe }],
};
const metres = (quantity: Quantity<"pipe length"> | undefined): number | undefined =>
  quantity?.in(metre);
const k = coherentUnit("coefficient");

/** What is refused, by path, and the words of the first. */
function refused(changed: Partial<ProfileInput>): { paths: string[]; message: string } {
  try {
    penstockProfile({ ...plain, ...changed });
  } catch (error) {
    const { notices } = error as NonPhysicalError;
    return {
      paths: notices.map(({ path }) => path.join(".")),
      message: notices[0]?.message ?? "",
    };
  }
  return { paths: [], message: "" };
}

describe("penstockProfile", () => {
  it("makes lengths of the map into lengths of pipe: triangles of 3, 4 and 5", () => {
    const profile = penstockProfile(plain);
    expect(profile.stations.map(({ distance }) => Number(metres(distance)?.toFixed(9)))).toEqual([
      0,
      50,
      Number((50 + Math.hypot(80, 6)).toFixed(9)),
      Number((100 + Math.hypot(80, 6)).toFixed(9)),
    ]);
    expect(metres(profile.length)).toBeCloseTo(100 + Math.hypot(80, 6), 12);
    expect(profile.stations.map(({ downSlope }) => downSlope?.["~si"])).toEqual([
      expect.closeTo(Math.asin(0.6), 12),
      expect.closeTo(-Math.atan(6 / 80), 12),
      expect.closeTo(Math.asin(0.6), 12),
      undefined,
    ]);
  });

  it("takes lengths along the slope as they are", () => {
    const profile = penstockProfile({ ...plain, measured: "along the slope" });
    expect(metres(profile.length)).toBe(160);
  });

  it("finds high and low points by the narrowest bore, which it tells, or by a depth that is given", () => {
    const assumed: string[] = [];
    const profile = penstockProfile(plain, {
      onAssumed: ({ input, value }) => assumed.push(`${input} ${value}`),
    });
    expect([profile.highPoints, profile.lowPoints]).toEqual([[2], [1]]);
    expect(profile.turnDepth.in(millimetre)).toBe(96);
    expect(assumed).toEqual(["turnDepth 96 mm"]);
    const deep = penstockProfile({ ...plain, turnDepth: metre.of(7) });
    expect([deep.highPoints, deep.lowPoints]).toEqual([[], []]);
  });

  it("puts ends of reaches and fittings between stations, at the height of the straight line", () => {
    const square = fittingCoefficients.get("square entrance", "coefficient");
    const profile = penstockProfile({
      ...plain,
      reaches: [
        {
          name: "top",
          pipe,
          to: metre.of(60),
          fittings: [
            { name: "bends", coefficient: k.of(0.2), count: 3, at: metre.of(20) },
            { name: "entrance", coefficient: square, at: metre.of(0) },
            { name: "joints", coefficient: k.of(0.05), count: 8 },
          ],
        },
        { pipe: readPipe("110 mm PE100 SDR 11") },
      ],
    });
    expect(profile.stations.map(({ chainage }) => chainage.in(metre))).toEqual([
      0, 20, 40, 60, 120, 160,
    ]);
    expect(profile.stations.map(({ row }) => row)).toEqual([0, undefined, 1, undefined, 2, 3]);
    expect(profile.stations.map(({ elevation }) => elevation["~si"])).toEqual([
      60, 45, 30, 31.5, 36, 6,
    ]);
    expect(profile.reaches.map(({ name, first, last }) => [name, first, last])).toEqual([
      ["top", 0, 3],
      ["110 mm PE100 SDR 11", 3, 5],
    ]);
    expect(
      profile.reaches[0]?.fittings.map(({ name, coefficient, station }) => [
        name,
        Number(coefficient["~si"].toFixed(12)),
        station,
      ]),
    ).toEqual([
      ["joints", 0.4, undefined],
      ["entrance", 0.5, 0],
      ["bends", 0.6, 1],
    ]);
  });

  it("spreads more pipe than ground evenly", () => {
    const profile = penstockProfile({
      ...plain,
      measured: "along the slope",
      reaches: [{ pipe, length: metre.of(176).as("pipe length") }],
    });
    expect(profile.stations.map(({ distance }) => Number(metres(distance)?.toFixed(9)))).toEqual([
      0, 44, 132, 176,
    ]);
  });

  it("keeps how the pipe lies, by length of pipe", () => {
    const profile = penstockProfile({
      ...plain,
      stretches: [
        {
          from: metre.of(0),
          to: metre.of(40),
          laid: "exposed",
          warmest: celsius.at(45),
          coldest: celsius.at(-5),
        },
        { from: metre.of(40), to: metre.of(160), laid: "buried" },
      ],
    });
    expect(
      profile.stretches.map(({ laid, from, to, warmest }) => [
        laid,
        metres(from),
        Number(metres(to)?.toFixed(6)),
        warmest?.in(celsius),
      ]),
    ).toEqual([
      ["exposed", 0, 50, 45],
      ["buried", 50, 180.224684, undefined],
    ]);
  });

  it("is the same in feet", () => {
    const us = penstockProfile({
      ...plain,
      stations: [
        [0, 60],
        [40, 30],
        [120, 36],
        [160, 6],
      ].map(([c, z]) => ({
        chainage: foot.of(c! / 0.3048),
        elevation: point("site datum", foot.of(z! / 0.3048), "nozzle"),
      })),
      reaches: [{ pipe, to: foot.of(120 / 0.3048) }, { pipe }],
    });
    expect(us.stations.length).toBe(4);
    expect(metres(us.length)! / metres(penstockProfile(plain).length)!).toBeCloseTo(1, 12);
  });

  it("passes on what levels and tape may be off by", () => {
    const spread = {
      ...plain,
      stations: plain.stations.map((station, i) =>
        i === 3
          ? { ...station, chainage: station.chainage.plusMinus(metre.of(2), "tape") }
          : station,
      ),
    };
    // The last step is 40 m of 50: four fifths of what the tape may be off by.
    expect(
      penstockProfile(spread).length.standardUncertainty()["~si"] * 1.959963984540054,
    ).toBeCloseTo(1.6, 6);
  });

  it("is never shorter than the map, nor than the fall", () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.tuple(
            fc.double({ min: 1, max: 200, noNaN: true }),
            fc.double({ min: -50, max: 80, noNaN: true }),
          ),
          { minLength: 1, maxLength: 20 },
        ),
        (steps) => {
          let [c, z] = [0, 500];
          const stations = [at(0, 500), ...steps.map(([dx, dz]) => at((c += dx), (z -= dz)))];
          const length = metres(penstockProfile({ ...plain, stations }).length)!;
          expect(length).toBeGreaterThanOrEqual(c * (1 - 1e-12));
          expect(length).toBeGreaterThanOrEqual((500 - z) * (1 - 1e-12));
        },
      ),
    );
  });

  it("refuses stations out of order, and those that are none, each with its row", () => {
    expect(refused({ stations: [at(0, 60), at(50, 40), at(45, 30), at(160, 6)] })).toEqual({
      paths: ["stations.2.chainage"],
      message:
        "profile: stations.2.chainage = 45 m does not lie beyond that of the station before, 50 m. List stations from the intake down, each place once.",
    });
    expect(refused({ stations: [at(5, 60), at(50, 40)] }).message).toBe(
      "profile: stations.0.chainage = 5 m is not 0. Count from the mouth of the pipe.",
    );
    expect(refused({ stations: [at(0, 60)] }).message).toBe(
      "profile: stations = 1: a pipe has two ends. Give the intake and the nozzle, and what turns between them.",
    );
    expect(refused({ stations: [at(0, 60), { ...at(9, 1), chainage: 9 as never }] }).message).toBe(
      "profile: stations.1.chainage = 9 is not a length. Give the distance from the first station.",
    );
    expect(
      refused({ stations: [at(0, 60), { ...at(90, 1), elevation: metre.of(1) as never }] }).message,
    ).toBe(
      "profile: stations.1.elevation = 1 m is not a height over a site datum. Give a point over it.",
    );
    const other = { ...at(90, 1), elevation: point("site datum", metre.of(1), "sea level") };
    expect(refused({ stations: [at(0, 60), other] }).message).toBe(
      "profile: stations.1.elevation is over sea level, and the first station over nozzle. Level them from one mark.",
    );
    expect(refused({ measured: "by eye" as never }).message).toBe(
      'profile: measured = "by eye" is not known. Say whether chainages go "along the slope" or "across the map": on a slope of 45° the two differ by 41 %.',
    );
  });

  it("names the unit of a height that no slope can reach: feet among metres", () => {
    const stations = [at(0, 60), at(40, 40), at(80, 120), at(120, 30)];
    const { message, paths } = refused({ stations, measured: "along the slope" });
    expect(paths).toEqual(["stations.2.elevation", "stations.3.elevation"]);
    expect(message).toBe(
      "profile: stations.2.elevation = 120 m over nozzle is 80 m above the station before, but the slope between them is 40 m long. Taken as feet it would be 36.58 m, between the two: was it written in feet?",
    );
    expect(
      refused({ stations: [at(0, 60), at(40, 10)], measured: "along the slope" }).message,
    ).toBe(
      "profile: stations.1.elevation = 10 m over nozzle is 50 m below the station before, but the slope between them is 40 m long. Check both, and whether chainages go across the map.",
    );
  });

  it("cautions of a jump that the map allows, and of metres among feet", () => {
    const told: Notice[] = [];
    const { notices } = penstockProfile(
      { ...plain, stations: [at(0, 60), at(40, 40), at(80, 120), at(120, 30)] },
      { onNotice: (notice) => told.push(notice) },
    );
    expect(told).toEqual(notices);
    expect(notices.map(({ code, severity, path }) => [code, severity, path.join(".")])).toEqual([
      ["profile/elevation-jumps", "caution", "stations.2.elevation"],
    ]);
    expect(notices[0]?.message).toBe(
      "profile: stations.2.elevation = 120 m over nozzle jumps away from both neighbours. Taken as feet it would be 36.58 m, between the two: was it written in feet?",
    );
    const feet = (c: number, z: number) => ({
      chainage: foot.of(c),
      elevation: point("site datum", foot.of(z), "nozzle"),
    });
    const mixed = penstockProfile({
      ...plain,
      stations: [feet(0, 200), feet(100, 150), feet(200, 40), feet(290, 110)],
    });
    expect(mixed.notices[0]?.message).toBe(
      "profile: stations.2.elevation = 40 ft over nozzle jumps away from both neighbours. Written in metres among feet it would be 40 m, between the two: was it?",
    );
  });

  it("refuses a reach without a material, a pipe that is too short, and fittings elsewhere", () => {
    const bare = ownPipe({
      outsideDiameter: millimetre.of(110),
      wall: millimetre.of(7),
      roughness: millimetre.of(0.01),
    });
    const { paths, message } = refused({ reaches: [{ pipe: bare, to: metre.of(80) }, { pipe }] });
    expect([paths, message]).toEqual([
      ["reaches.0.pipe"],
      "profile: reaches.0.pipe has no material. Name a pipe that is sold, or give a pipe of one's own with what it is made of: its strength, roughness and stretch go by it.",
    ]);
    expect(refused({ reaches: [{ pipe: undefined as never }] }).paths).toEqual(["reaches.0.pipe"]);
    expect(refused({ reaches: [] }).message).toBe(
      "profile: reaches is empty. Give one pipe or more.",
    );
    expect(refused({ reaches: [{ pipe }, { pipe }] }).message).toBe(
      "profile: reaches.0.to is missing. Give the chainage where this pipe ends.",
    );
    expect(
      refused({
        reaches: [
          { pipe, to: metre.of(90) },
          { pipe, to: metre.of(80) },
        ],
      }).message,
    ).toBe(
      "profile: reaches.1.to = 80 m does not lie beyond where the reach begins. List reaches from the intake down.",
    );
    expect(refused({ reaches: [{ pipe, to: metre.of(170) }] }).message).toBe(
      "profile: reaches.0.to = 170 m lies beyond the last station, 160 m. Survey the ground as far as the pipe goes.",
    );
    expect(refused({ reaches: [{ pipe, to: metre.of(150) }] })).toEqual({
      paths: ["reaches.0.to"],
      message:
        "profile: reaches.0.to = 150 m ends short of the last station, 160 m. The pipe is shorter than the profile: add a reach, or take the station out.",
    });
    expect(refused({ reaches: [{ pipe, length: metre.of(160).as("pipe length") }] })).toEqual({
      paths: ["reaches.0.length"],
      message:
        "profile: reaches.0.length = 160 m is shorter than the ground it lies on, 180.22 m. Check whether its length was scaled off a map, and the unit.",
    });
    const fitting = { coefficient: k.of(1), at: metre.of(90) };
    expect(
      refused({ reaches: [{ pipe, to: metre.of(80), fittings: [fitting] }, { pipe }] }),
    ).toEqual({
      paths: ["reaches.0.fittings.0.at"],
      message:
        "profile: reaches.0.fittings.0.at = 90 m does not lie in this reach. Put the fitting into the reach whose bore its coefficient is for.",
    });
    expect(
      refused({ reaches: [{ pipe, fittings: [{ coefficient: k.of(1), count: -1 }] }] }).message,
    ).toBe(
      "profile: reaches.0.fittings.0 has no coefficient, or a number of them below 0. Give a coefficient on the velocity head in this bore.",
    );
  });

  it("refuses stretches that overlap, and warm that is colder than cold", () => {
    const stretch = (from: number, to: number) =>
      ({ from: metre.of(from), to: metre.of(to), laid: "buried" }) as const;
    expect(refused({ stretches: [stretch(0, 50), stretch(40, 160)] }).message).toBe(
      "profile: stretches.1 from 40 m to 160 m overlaps the one before, runs upwards or ends beyond 160 m. List stretches from the intake down.",
    );
    expect(
      refused({
        stretches: [{ ...stretch(0, 50), warmest: celsius.at(5), coldest: celsius.at(10) }],
      }).message,
    ).toBe("profile: stretches.0.warmest = 5 °C is below coldest = 10 °C. Check the two.");
  });
});
