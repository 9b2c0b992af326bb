import { saltPlateau, type SaltPlateauInput } from "@leat/flow-measurement";
import type { Notice } from "@leat/formula";
import { seededRandom } from "@leat/numerics";
import {
  celsius,
  gramPerLitre,
  litrePerSecond,
  microsiemensPerCentimetre,
  milligramPerLitrePerMicrosiemensPerCentimetre,
} from "@leat/quantity";
import { Column } from "@leat/quantity/column";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";

interface Fed {
  readonly flow?: number;
  readonly feed?: number;
  readonly solution?: number;
  readonly background?: number;
  readonly constant?: number;
  readonly until?: number;
  readonly length?: number;
  readonly step?: number;
  readonly resolution?: number;
  readonly noise?: () => number;
  readonly wander?: (t: number) => number;
}

/** µS/cm of a feed from 120 s on, by the balance of mass, approached exponentially. */
const conductivities = (fed: Fed, time: readonly number[]): number[] => {
  const { flow = 40, feed = 0.02, solution = 150, background = 80, constant = 60 } = fed;
  const rise = (1000 * solution * feed) / (flow + feed) / 0.486;
  const up = (t: number): number => (t < 120 ? 0 : -Math.expm1(-(t - 120) / constant));
  const { until = Infinity, resolution = 0.1 } = fed;
  return time.map((t) => {
    const shape = up(t) - (t > until ? up(t - until + 120) : 0);
    const value = background + rise * shape + (fed.noise?.() ?? 0) + (fed.wander?.(t) ?? 0);
    return Math.round(value / resolution) * resolution;
  });
};
const input = (fed: Fed = {}): SaltPlateauInput => {
  const { feed = 0.02, solution = 150, length = 1200, step = 5 } = fed;
  const time = Array.from({ length: Math.floor(length / step) + 1 }, (_, i) => i * step);
  return {
    time,
    conductivity: Column.of(microsiemensPerCentimetre, conductivities(fed, time)),
    basis: "at 25 °C",
    injectionRate: litrePerSecond.of(feed),
    injectedConcentration: gramPerLitre.of(solution),
    calibration: {
      name: "as made",
      factor: milligramPerLitrePerMicrosiemensPerCentimetre.of(0.486),
      basis: "at 25 °C",
    },
  };
};
const q = (slug: { flow: { in(unit: typeof litrePerSecond): number } }): number =>
  slug.flow.in(litrePerSecond);

describe("saltPlateau", () => {
  it("recovers the flow within 0.5 %, feed and all", () => {
    fc.assert(
      fc.property(
        fc.record({
          flow: fc.double({ min: 5, max: 60, noNaN: true }),
          feed: fc.double({ min: 0.01, max: 0.2, noNaN: true }),
          background: fc.double({ min: 20, max: 300, noNaN: true }),
          constant: fc.double({ min: 10, max: 90, noNaN: true }),
        }),
        (fed) => {
          const plateau = saltPlateau(input({ ...fed, resolution: 0.01 }));
          expect(Math.abs(q(plateau) / fed.flow - 1)).toBeLessThan(0.005);
          expect(plateau.steady).toBe(true);
        },
      ),
      { numRuns: 100 },
    );
  });

  it("does so through scatter, and through the end of the feed", () => {
    const random = seededRandom("a plateau");
    const noisy = saltPlateau(input({ noise: () => random.normal(0, 1) }));
    expect(Math.abs(q(noisy) / 40 - 1)).toBeLessThan(0.01);
    const ended = saltPlateau(input({ until: 900, length: 1500 }));
    expect(Math.abs(q(ended) / 40 - 1)).toBeLessThan(0.005);
    expect(ended.plateau.from).toBeGreaterThan(250);
    expect(ended.plateau.to).toBeLessThan(925);
    expect(ended.background.in(microsiemensPerCentimetre)).toBeCloseTo(80, 1);
    expect(ended.readingsOnPlateau).toBe((ended.plateau.to - ended.plateau.from) / 5 + 1);
  });

  it("asks only for parts of the fed solution", () => {
    const half = input();
    const relative = saltPlateau(
      {
        ...half,
        injectedConcentration: half.injectedConcentration.times(0.01),
        calibration: { ...half.calibration!, factor: half.calibration!.factor.times(0.01) },
      },
      { onNotice: () => {} },
    );
    expect(q(relative)).toBeCloseTo(q(saltPlateau(half)), 6);
  });

  it("bridges faults, and takes no plateau for a stuck sensor", () => {
    const time = input().time as number[];
    const values = conductivities({ resolution: 1 }, time);
    values[150] = -9999;
    values[180]! += 50;
    const plateau = saltPlateau({
      ...input(),
      conductivity: Column.of(microsiemensPerCentimetre, values),
    });
    expect(Math.abs(q(plateau) / 40 - 1)).toBeLessThan(0.005);
    expect([plateau.faults.faultCode, plateau.faults.spike, plateau.faults.stuck]).toEqual([
      [150],
      [180],
      [],
    ]);
  });

  it("tells a plateau that is not steady", () => {
    const told: Notice[] = [];
    const plateau = saltPlateau(input({ wander: (t) => (t > 120 ? 0.012 * (t - 120) : 0) }), {
      onNotice: (notice) => told.push(notice),
    });
    expect(plateau.steady).toBe(false);
    expect(told.map(({ message }) => message)).toEqual([
      expect.stringMatching(
        /^salt plateau: the plateau changes by \d\.\d % of the rise along its length\. Feed the salt for longer, and see that its flow is constant\.$/,
      ),
    ]);
    expect(plateau.notices).toEqual(told);
  });

  it("names each source of uncertainty, what is left of a drift among it", () => {
    const factor = milligramPerLitrePerMicrosiemensPerCentimetre;
    const plain = input();
    const plateau = saltPlateau({
      ...plain,
      name: "pool",
      injectionRate: litrePerSecond.of(0.02).plusMinus(litrePerSecond.of(0.0004), "dosing bottle"),
      calibration: {
        ...plain.calibration!,
        factor: factor.of(0.486).plusMinus(factor.of(0.01), "salt calibration"),
      },
    });
    const shares = Object.fromEntries(
      Array.from(plateau.flow.sources(), ([id, c]) => [
        id,
        Math.abs((196 * c.in(litrePerSecond)) / q(plateau)),
      ]),
    );
    expect(Object.keys(shares)).toEqual([
      "dosing bottle",
      "pool: background",
      "pool: plateau",
      "salt calibration",
      "pool: mixing",
    ]);
    expect(shares["dosing bottle"]).toBeCloseTo(2, 2);
    expect(shares["salt calibration"]).toBeCloseTo(100 / 48.6, 1);
    expect(shares["pool: mixing"]).toBeCloseTo(7, 2);
  });

  it("brings raw readings to 25 °C", () => {
    const plain = input();
    const raw = plain.conductivity.in(microsiemensPerCentimetre).map((value) => value * 0.7);
    const plateau = saltPlateau({
      ...plain,
      basis: "raw",
      temperature: celsius.at(10),
      conductivity: Column.of(microsiemensPerCentimetre, raw),
    });
    expect(q(plateau)).toBeCloseTo(q(saltPlateau(plain)), 6);
    const share = plateau.flow.sources().get("temperature coefficient")!.in(litrePerSecond) / 40;
    expect(share).toBeCloseTo((-15 * (0.001 / 1.959964)) / 0.7, 3);
    expect(() => saltPlateau({ ...plain, basis: "raw" })).toThrow(
      "salt plateau: the readings are raw and have no temperature, the factor (as made) is of conductivity at 25 °C.",
    );
  });

  it("takes the parts that are given, and refuses what is no plateau", () => {
    const plain = input();
    const given = saltPlateau({
      ...plain,
      background: { from: 0, to: 100 },
      plateau: { from: 800, to: 1200 },
    });
    expect(given.plateau).toEqual({ from: 800, to: 1200 });
    expect(Math.abs(q(given) / 40 - 1)).toBeLessThan(0.002);
    expect(() => saltPlateau({ ...plain, plateau: { from: 5000, to: 6000 } })).toThrow(
      "salt plateau: plateau, 5000 s to 6000 s, holds fewer than three good readings.",
    );
    expect(() => saltPlateau(input({ flow: 1e6 }))).toThrow(
      "salt plateau: no plateau of 10 readings over a background was found. Feed the salt for longer, log from before it begins, or give background and plateau.",
    );
    expect(() =>
      saltPlateau({
        ...plain,
        background: { from: 800, to: 1200 },
        plateau: { from: 0, to: 100 },
      }),
    ).toThrow(
      /^salt plateau: the plateau is \d+(\.\d+)? µS\/cm below the background\. Check the two\.$/,
    );
  });
});
