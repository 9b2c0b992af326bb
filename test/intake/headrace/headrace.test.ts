import {
  channelLinings,
  checkHeadrace,
  forebayReserve,
  forebayVolume,
  freeboard,
  manningFlow,
  normalDepth,
} from "@leat/intake";
import {
  coherentUnit,
  cubicFootPerSecond,
  foot,
  litrePerSecond,
  metre,
  metrePerSecond,
  millimetre,
  minute,
  one,
  squareMetre,
} from "@leat/quantity";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";

const coefficient = coherentUnit("coefficient");
const channel = {
  bedWidth: metre.of(0.4),
  bankSlope: one.of(0.5),
  manningNumber: coefficient.of(0.02),
  slope: one.of(0.004),
};

describe("manningFlow and normalDepth", () => {
  it("are inverses, over four orders of flow and for a ditch without a bed", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1, max: 3.5, noNaN: true }),
        fc.double({ min: 0, max: 2, noNaN: true }),
        fc.double({ min: 0.1, max: 2, noNaN: true }),
        fc.double({ min: 0.0005, max: 0.1, noNaN: true }),
        (power, bed, bank, slope) => {
          const here = {
            ...channel,
            bedWidth: metre.of(bed),
            bankSlope: one.of(bank),
            slope: one.of(slope),
          };
          const flow = litrePerSecond.of(10 ** power);
          const { depth, velocity, convergence } = normalDepth({ ...here, flow });
          const back = manningFlow({ ...here, depth });
          expect(back.flow["~si"] / flow["~si"]).toBeCloseTo(1, 9);
          expect(back.velocity["~si"]).toBeCloseTo(velocity["~si"], 9);
          expect(convergence.iterations).toBeLessThan(60);
        },
      ),
    );
  });

  it("carry more with depth and slope, and less with roughness", () => {
    const at = (more: object): number =>
      manningFlow({ ...channel, depth: metre.of(0.25), ...more }).flow["~si"];
    expect(at({ depth: metre.of(0.26) })).toBeGreaterThan(at({}));
    expect(at({ slope: one.of(0.016) }) / at({})).toBeCloseTo(2, 12);
    expect(at({ manningNumber: coefficient.of(0.04) }) / at({})).toBeCloseTo(0.5, 12);
  });

  it("scale by λ^(8/3), and are the same in feet", () => {
    const at = (scale: number): number =>
      manningFlow({
        ...channel,
        depth: metre.of(0.25 * scale),
        bedWidth: metre.of(0.4 * scale),
      }).flow["~si"];
    expect(at(3) / at(1)).toBeCloseTo(3 ** (8 / 3), 9);
    const feet = { ...channel, bedWidth: foot.of(0.4 / 0.3048), depth: foot.of(0.25 / 0.3048) };
    expect(manningFlow(feet).flow["~si"] / at(1)).toBeCloseTo(1, 12);
  });

  it("refuse no slope and no flow", () => {
    expect(() => normalDepth({ ...channel, flow: cubicFootPerSecond.of(0) })).toThrow(
      "normal-depth: flow = 0 ft³/s is not above zero",
    );
    expect(() => manningFlow({ ...channel, slope: one.of(0), depth: metre.of(0.2) })).toThrow(
      "manning-flow: slope = 0 is not above zero",
    );
  });
});

describe("channelLinings", () => {
  it("are as the guidelines print them", () => {
    const { rows } = channelLinings.definition;
    expect(rows.length).toBe(20);
    const sums = [0, 0];
    for (const { n, mostVelocity } of rows) {
      sums[0]! += n;
      sums[1]! += mostVelocity;
    }
    // Added up by hand from the page, so that a slip in one figure shows.
    expect(sums[0]).toBeCloseTo(0.707, 9);
    expect(sums[1]).toBeCloseTo(35.3, 9);
    for (const { n, nLow } of rows) if (nLow !== undefined) expect(nLow).toBeLessThan(n);
  });
});

describe("checkHeadrace", () => {
  const good = {
    velocity: metrePerSecond.of(0.7),
    depth: metre.of(0.25),
    froude: one.of(0.5),
    lining: "clay with stones and sand, aged",
    bankOverWater: metre.of(0.4),
  } as const;

  it("is silent where all is well", () => {
    expect(checkHeadrace(good)).toEqual([]);
  });

  it("says what is not, each once", () => {
    const of = (more: object): string[] =>
      checkHeadrace({ ...good, ...more }).map(({ message }) => message);
    expect(of({ velocity: metrePerSecond.of(0.9) })).toEqual([
      "check-headrace: 0.9 m/s is above the 0.8 m/s that clay with stones and sand, aged bears (Practical Action, table 4.1). Make the slope gentler, the section larger or the lining harder.",
    ]);
    expect(of({ velocity: metrePerSecond.of(0.2) })).toEqual([
      "check-headrace: 0.2 m/s is below 0.3 m/s, and sand settles in the headrace. Make the slope steeper or the section smaller, or settle the sand before it.",
    ]);
    expect(of({ froude: one.of(0.95) })).toEqual([
      "check-headrace: a Froude number of 0.95 is near critical, and the surface stands in waves. Make the slope gentler.",
    ]);
    expect(of({ bankOverWater: millimetre.of(200) })).toEqual([
      "check-headrace: the bank stands 200 mm over the water, and at least 338 mm is asked. Raise it, and give the headrace a spillway.",
    ]);
    expect(of({ leastVelocity: metrePerSecond.of(0.75) })).toHaveLength(1);
  });

  it("refuses a lining that is not in the table, and what is no velocity", () => {
    expect(() => checkHeadrace({ ...good, lining: "gold" as never })).toThrow(
      "channel-linings: gold is not in the table",
    );
    expect(() => checkHeadrace({ ...good, velocity: metre.of(1) as never })).toThrow(
      "check-headrace: velocity = 1 m (length) is refused",
    );
  });
});

describe("freeboard and forebay", () => {
  it("grow with the root of the depth", () => {
    const at = (m: number): number => freeboard({ depth: metre.of(m) })["~si"];
    expect(at(1) / at(0.25)).toBeCloseTo(2, 12);
  });

  it("lasts as long as its volume lasts", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 50, noNaN: true }),
        fc.double({ min: 0.5, max: 10, noNaN: true }),
        (litres, minutes) => {
          const flow = litrePerSecond.of(litres);
          const volume = forebayVolume({ flow, reserveTime: minute.of(minutes) });
          const time = forebayReserve({
            waterArea: squareMetre.of(volume["~si"] / 0.3),
            usableDepth: metre.of(0.3),
            flow,
            inflow: litrePerSecond.of(0),
          });
          expect(time.in(minute)).toBeCloseTo(minutes, 9);
        },
      ),
    );
  });

  it("never empties where as much comes in", () => {
    expect(() =>
      forebayReserve({
        waterArea: squareMetre.of(4),
        usableDepth: metre.of(0.3),
        flow: litrePerSecond.of(10),
        inflow: litrePerSecond.of(10),
      }),
    ).toThrow("forebay-reserve: inflow/flow = 1 is above 1");
  });
});
