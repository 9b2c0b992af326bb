import {
  contourHeight,
  type FallInput,
  fallBetween,
  mapHead,
  satelliteHead,
  satelliteReceivers,
  waterToNozzleHead,
} from "@leat/flow-measurement";
import { type Assumption, NonPhysicalError, OutOfValidityError } from "@leat/formula";
import { foot, metre, millimetre, point, type Quantity, QuantityError } from "@leat/quantity";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";

const over = (height: number, datum = "ellipsoid") => point("site datum", metre.of(height), datum);
const heights = fc.tuple(
  fc.double({ min: 0, max: 2000, noNaN: true }),
  fc.double({ min: 1, max: 300, noNaN: true }),
);

describe("satelliteHead", () => {
  it("is the difference of two heights, each uncertain by itself", () => {
    fc.assert(
      fc.property(heights, ([low, fall]) => {
        const { head } = satelliteHead({
          upper: over(low + fall),
          lower: over(low),
          receiver: "corrected by satellite",
          name: "walk",
        });
        expect(head.kind).toBe("gross head");
        expect(head.in(metre)).toBeCloseTo(fall, 9);
        expect([...head.sources().keys()]).toEqual(["walk.upper", "walk.lower"]);
        expect(head.standardUncertainty().in(metre) * 1.959964).toBeCloseTo(3 * Math.SQRT2, 5);
      }),
    );
  });

  it("takes what the receiver states, and the slope of the geoid where the distance is known", () => {
    const assumed: Assumption[] = [];
    const { head } = satelliteHead(
      {
        upper: over(650),
        lower: over(600),
        receiver: "real-time kinematic",
        heightSpread: metre.of(0.04),
        apart: metre.of(800),
      },
      { onAssumed: (each) => assumed.push(each) },
    );
    const sources = head.sources();
    expect(Math.abs(sources.get("satellite.upper")!.in(metre))).toBeCloseTo(0.04 / 1.959964, 8);
    expect(Math.abs(sources.get("satellite.geoid")!.in(metre))).toBeCloseTo(0.08 / Math.sqrt(3), 8);
    expect(assumed.map(({ input }) => input)).toEqual(["apart"]);
    satelliteHead(
      { upper: over(650), lower: over(600), receiver: "telephone or handheld" },
      { onAssumed: (each) => assumed.push(each) },
    );
    expect(assumed.at(-1)?.value).toBe("± 10 m at 95 %");
  });

  it("is not good enough for a low head, and says so", () => {
    const vague = (fall: number, receiver: Parameters<typeof satelliteHead>[0]["receiver"]) =>
      satelliteHead({ upper: over(600 + fall), lower: over(600), receiver }).notices;
    expect(vague(44, "telephone or handheld").map(({ message }) => message)).toEqual([
      "satellite-head: ± 14.1 m is 32 % of a head of 44 m, too much to choose a pipe by. Level the fall, or read a gauge on a full hose.",
    ]);
    expect(vague(200, "telephone or handheld")).toEqual([]);
    expect(vague(2, "real-time kinematic")).toEqual([]);
  });

  it("refuses points that are exchanged, two datums, and a distance that is none", () => {
    const bad = (more: object) => () =>
      satelliteHead({
        upper: over(640),
        lower: over(600),
        receiver: "telephone or handheld",
        ...more,
      });
    expect(bad({ upper: over(590) })).toThrow(NonPhysicalError);
    expect(bad({ upper: over(590) })).toThrow(
      "satellite-head: upper = 590 m over ellipsoid is not above lower = 600 m over ellipsoid. See whether the points are exchanged.",
    );
    expect(bad({ upper: over(640, "sea level") })).toThrow(QuantityError);
    expect(bad({ apart: metre.of(0) })).toThrow(
      "satellite-head: apart = 0 m is not above zero. Leave it out where it is not known.",
    );
  });

  it("has receivers from the coarsest to the finest", () => {
    const rows = satelliteReceivers.keys().map((key) => satelliteReceivers.row(key));
    for (const { low, typical, high } of rows) {
      expect(low).toBeLessThan(typical);
      expect(typical).toBeLessThan(high);
    }
    const typical = rows.map((row) => row.typical);
    expect(typical).toEqual(typical.toSorted((a, b) => b - a));
    // GPS SPS Performance Standard, 2008: "vertical accuracy of 5 meters or better 95% of the time" for good receivers.
    expect(satelliteReceivers.row("telephone or handheld").low).toBe(5);
  });
});

describe("mapHead", () => {
  const on = (feet: number, datum = "quadrangle") => point("site datum", foot.of(feet), datum);
  const interval = foot.of(40);

  it("is uncertain by 0.5958 of the contour interval at each end (FGDC accuracy standard, part 3, appendix D)", () => {
    const { head } = mapHead({ upper: on(1250), lower: on(850), interval, name: "sheet" });
    expect(head.in(foot)).toBeCloseTo(400, 9);
    const sources = head.sources();
    expect([...sources.keys()]).toEqual(["sheet.upper", "sheet.lower"]);
    const at95 = Math.abs(sources.get("sheet.upper")!.in(foot)) * 1.959964;
    expect(at95 / 40).toBeCloseTo(0.5958, 4);
    // National Map Accuracy Standards: nine heights in ten within half an interval.
    expect(Math.abs(sources.get("sheet.upper")!.in(foot)) * 1.644854).toBeCloseTo(20, 4);
    expect(head.standardUncertainty().in(foot) * 1.959964).toBeCloseTo(0.8426 * 40, 2);
  });

  it("is good for a high fall and not for a low one", () => {
    const low = mapHead({ upper: on(1040), lower: on(850), interval }).notices;
    expect(low.map(({ message }) => message)).toEqual([
      "map-head: ± 33.7 ft is 18 % of a head of 190 ft, too much to choose a pipe by. Level the fall, or read a gauge on a full hose.",
    ]);
    expect(mapHead({ upper: on(1250), lower: on(850), interval }).notices).toEqual([]);
    const told: string[] = [];
    mapHead(
      { upper: on(1040), lower: on(850), interval },
      {
        onNotice: ({ code }) => told.push(code),
        onAssumed: ({ input, value }) => told.push(`${input}: ${value}`),
      },
    );
    expect(told).toEqual(["interval: nine heights in ten within half of it", "map-head/vague"]);
  });

  it("refuses an interval of nothing, places that are exchanged, and two maps", () => {
    expect(() => mapHead({ upper: on(840), lower: on(850), interval: foot.of(0) })).toThrow(
      "map-head: interval = 0 ft is not above zero. Give the height from one contour to the next, as the map's margin states it.\nmap-head: upper = 840 ft over quadrangle is not above lower = 850 ft over quadrangle. See whether the places are exchanged.",
    );
    expect(() => mapHead({ upper: on(900, "another"), lower: on(850), interval })).toThrow(
      QuantityError,
    );
  });
});

describe("contourHeight", () => {
  const between = (a: number, b: number) => ({
    contour: point("site datum", metre.of(300), "map"),
    interval: metre.of(20),
    fromContour: millimetre.of(a),
    betweenContours: millimetre.of(b),
  });

  it("lies between its contours, on them at their ends, on any scale of map", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0.5, max: 50, noNaN: true }),
        (share, b) => {
          const z = contourHeight(between(share * b, b)).in(metre);
          expect(z).toBeGreaterThanOrEqual(300 - 1e-9);
          expect(z).toBeLessThanOrEqual(320 + 1e-9);
          expect(contourHeight(between(2 * share * b, 2 * b)).in(metre)).toBeCloseTo(z, 9);
        },
      ),
    );
    expect(contourHeight(between(0, 5)).in(metre)).toBe(300);
    expect(contourHeight(between(5, 5)).in(metre)).toBe(320);
  });

  it("refuses an interval of nothing, and a place beyond the next contour", () => {
    expect(() => contourHeight({ ...between(1, 5), interval: metre.of(0) })).toThrow(
      "contour-height: interval = 0 m is not above zero",
    );
    expect(() => contourHeight(between(6, 5))).toThrow(OutOfValidityError);
    expect(() => contourHeight(between(6, 5))).toThrow(
      "contour-height: fromContour/betweenContours = 1.2 is above 1, the range physics gives",
    );
  });
});

const marks = (more: Partial<FallInput> = {}): FallInput => ({
  fall: metre.of(34).as("gross head"),
  waterAboveUpperMark: metre.of(0.4),
  nozzleAboveLowerMark: metre.of(0.9),
  ...more,
});

describe("fallBetween", () => {
  it("counts from the water of the intake to the nozzle", () => {
    const some = fc.double({ min: -3, max: 3, noNaN: true });
    fc.assert(
      fc.property(some, some, (a, b) => {
        const { head, water, nozzle } = fallBetween(
          marks({ waterAboveUpperMark: metre.of(a), nozzleAboveLowerMark: metre.of(b) }),
        );
        expect(head.kind).toBe("gross head");
        expect(head.in(metre)).toBeCloseTo(34 + a - b, 10);
        expect(nozzle.in(metre)).toBeCloseTo(b, 10);
        expect(water.in(metre)).toBeCloseTo(34 + a, 10);
        expect(water.minus(nozzle).in(metre)).toBeCloseTo(head.in(metre), 10);
      }),
    );
  });

  it("takes a fall as a gross head or as a length, with what is uncertain in it", () => {
    const fall = metre.of(34).plusMinus(metre.of(0.2), "levels");
    const { head, water } = fallBetween(marks({ fall }));
    expect(head.sources().get("levels")!.in(metre)).toBeCloseTo(0.2 / 1.959964, 6);
    expect(water.standardUncertainty().in(metre)).toBeCloseTo(0.2 / 1.959964, 6);
    expect(waterToNozzleHead(marks({ fall })).in(metre)).toBe(head.in(metre));
  });

  it("gives levels over the datum of the lower mark, and what lies below the nozzle", () => {
    const lowerMark = point("site datum", metre.of(612), "sea level").plusMinus(
      metre.of(5),
      "handheld",
    );
    const levels = fallBetween(
      marks({
        lowerMark,
        tailWaterAboveLowerMark: metre.of(-0.6),
        floodAboveLowerMark: metre.of(0.3),
      }),
    );
    expect(levels.water.toString()).toBe("646.4 m over sea level");
    expect(levels.nozzle.in(metre)).toBeCloseTo(612.9, 9);
    expect(levels.tailWater?.in(metre)).toBeCloseTo(611.4, 9);
    expect(levels.flood?.in(metre)).toBeCloseTo(612.3, 9);
    expect(levels.nozzleAboveTailWater?.in(metre)).toBeCloseTo(1.5, 9);
    expect(levels.nozzleAboveFlood?.in(metre)).toBeCloseTo(0.6, 9);
    // How high the site lies says nothing of the heights in it.
    expect(levels.nozzleAboveFlood?.sources().size).toBe(0);
    expect(levels.head.sources().size).toBe(0);
    expect(levels.notices).toEqual([]);
    const bare = fallBetween(marks());
    expect(bare.flood).toBeUndefined();
    expect(bare.nozzleAboveTailWater).toBeUndefined();
    expect(bare.nozzle.toString()).toBe("0.9 m over lower mark");
  });

  it("warns of a nozzle that a flood or the tail water reaches", () => {
    const told: string[] = [];
    const { nozzleAboveFlood } = fallBetween(
      marks({ floodAboveLowerMark: metre.of(1.4), tailWaterAboveLowerMark: metre.of(0.9) }),
      { onNotice: ({ code, message }) => told.push(`${code}: ${message}`) },
    );
    expect(nozzleAboveFlood?.in(metre)).toBeCloseTo(-0.5, 12);
    expect(told).toEqual([
      "fall-between/below-tail-water: fall-between: the nozzle, 0.9 m above the lower mark, is not above the tail water, 0.9 m above it. Set the machine higher: the wheel would run in water.",
      "fall-between/below-flood-mark: fall-between: the nozzle, 0.9 m above the lower mark, is not above the flood mark, 1.4 m above it. Set the machine higher, or count on stopping it and on wet windings.",
    ]);
  });

  it("refuses a nozzle that is not below the water, and a fall that is none", () => {
    const high: Quantity<"length"> = metre.of(40);
    expect(() => fallBetween(marks({ nozzleAboveLowerMark: high }))).toThrow(NonPhysicalError);
    expect(() => fallBetween(marks({ nozzleAboveLowerMark: high }))).toThrow(
      "fall-between: the nozzle is not below the water of the intake: 34 m between the marks, less 40 m to the nozzle, and 0.4 m to the water. Check the signs.",
    );
    expect(() => fallBetween(marks({ fall: metre.of(-34) }))).toThrow(
      "water-to-nozzle-head: fall = -34 m is below zero",
    );
  });
});
