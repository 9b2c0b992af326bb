import { type Filling, timedVolume, type TimedVolumeInput } from "@leat/flow-measurement";
import { type Notice, NonPhysicalError } from "@leat/formula";
import {
  gallon,
  gallonPerMinute,
  litre,
  litrePerSecond,
  type Quantity,
  second,
} from "@leat/quantity";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";

const fillings = (volume: number, ...times: number[]): Filling[] =>
  times.map((t) => ({ volume: litre.of(volume), time: second.of(t) }));
const spring = (change: Partial<TimedVolumeInput> = {}): TimedVolumeInput => ({
  name: "spring",
  repeats: fillings(20, 10.2, 10.6, 10.3, 10.5),
  volumeError: litre.of(0.4),
  ...change,
});
const heard = (input: TimedVolumeInput) => {
  const notices: Notice[] = [];
  const result = timedVolume(input, { onNotice: (notice) => notices.push(notice) });
  return { result, notices, codes: notices.map(({ code }) => code.replace("timed-volume/", "")) };
};
const half95 = (q: Quantity<"volume flow">): number =>
  q.standardUncertainty().in(litrePerSecond) * 1.959963984540054;
const parts = (flow: Quantity<"volume flow">): Record<string, number> =>
  Object.fromEntries(
    Array.from(flow.sources(), ([id, c]) => [
      id,
      Math.abs(c.in(litrePerSecond)) * 1.959963984540054,
    ]),
  );

describe("timedVolume", () => {
  it("has the mean, and Student's interval for its scatter, that scipy makes of the same", () => {
    const { result, codes } = heard(spring());
    expect(codes).toEqual([]);
    expect(result.flow.in(litrePerSecond)).toBeCloseTo(1.923521561, 9);
    expect(result.standardDeviation?.in(litrePerSecond)).toBeCloseTo(0.033772041378, 11);
    expect(result.scatter95?.in(litrePerSecond)).toBeCloseTo(0.053738854153, 11);
    expect(parts(result.flow)["spring: scatter of the fillings"]).toBeCloseTo(0.053738854153, 11);
    const whole = timedVolume(spring({ timingError: second.of(0.3) })).flow;
    expect(half95(whole)).toBeCloseTo(0.0716864176, 8);
    // Three fillings of five gallons, as in the formula's rows: 26.33 ± 7.99 gal/min.
    const volume = gallon.of(5);
    const three = timedVolume({
      name: "bucket",
      repeats: [10, 12, 12.5].map((t) => ({ volume, time: second.of(t) })),
    });
    expect(three.flow.in(gallonPerMinute)).toBeCloseTo(26.33333, 5);
    expect(three.scatter95?.in(gallonPerMinute)).toBeCloseTo(
      (4.302653 * 3.21455) / Math.sqrt(3),
      4,
    );
  });

  it("averages the timing out and not the vessel", () => {
    const at = (n: number) => {
      const repeats = fillings(10, ...Array<number>(n).fill(5));
      return parts(timedVolume(spring({ repeats, timingError: second.of(0.25) })).flow);
    };
    const timing = (of: Record<string, number>) =>
      Math.hypot(
        ...Object.entries(of).flatMap(([id, c]) => (id.includes("timing of filling") ? [c] : [])),
      );
    const [few, many] = [at(4), at(16)];
    expect(timing(few)).toBeCloseTo(2 * timing(many), 8);
    expect(few["spring: volume of the vessel"]).toBeCloseTo(0.08, 8);
    expect(many["spring: volume of the vessel"]).toBeCloseTo(0.08, 8);
    // Equal fillings have no scatter to speak of.
    expect(few["spring: scatter of the fillings"]).toBeUndefined();
  });

  it("shares the vessel between gaugings that name it, and nothing else", () => {
    const [a, b] = ["May", "June"].map(
      (name) => timedVolume(spring({ name, vessel: "drum", timingError: second.of(0.2) })).flow,
    ) as [Quantity<"volume flow">, Quantity<"volume flow">];
    expect([...a.sources().keys()].filter((id) => b.sources().has(id))).toEqual([
      "drum: volume of the vessel",
    ]);
  });

  it("takes ± 20 % for a single filling, and says so", () => {
    const { result, notices } = heard(spring({ repeats: fillings(20, 10) }));
    expect(result.flow.in(litrePerSecond)).toBeCloseTo(2, 12);
    expect(half95(result.flow)).toBeCloseTo(Math.hypot(0.4, 0.04), 8);
    expect(result.standardDeviation).toBeUndefined();
    expect(result.scatter95).toBeUndefined();
    expect(notices.map(({ message }) => message)).toEqual([
      "timed-volume: one filling shows no scatter: ± 20 % is taken for it. Time two more.",
    ]);
  });

  it("says that nothing is known of the vessel", () => {
    const { volumeError: _, ...bare } = spring();
    expect(heard(bare).notices.map(({ message }) => message)).toEqual([
      "timed-volume: nothing is said of the vessel's own error, which no repeating averages out: the ± is that of the fillings alone. Weigh the water, or fill the vessel from a measure.",
    ]);
    const marked = spring().repeats.map(({ volume, time }) => ({
      volume: volume.plusMinus(litre.of(0.2), "mark"),
      time,
    }));
    expect(heard({ name: "spring", repeats: marked }).codes).toEqual([]);
  });

  it("tells which filling stands out, how far the fillings are apart, and counts all", () => {
    const { result, notices, codes } = heard(
      spring({ repeats: fillings(20, 10, 10.1, 10.05, 14) }),
    );
    expect(codes).toEqual(["stands-out", "apart"]);
    expect(notices[0]?.path).toEqual(["repeats", 3]);
    expect(notices[0]?.message).toBe(
      "timed-volume: repeats.3, 1.429 L/s, stands out of 4 fillings: it lies 1.50 standard deviations from their mean of 1.850 L/s, and 1.48 is as far as one in twenty good sets would. It is counted all the same. Was all of the flow in the vessel? Time it again.",
    );
    expect(notices[1]?.message).toBe(
      "timed-volume: repeats.3, 1.429 L/s, lies 23 % from the mean of 4 fillings, 1.850 L/s. It is counted all the same. Was all of the flow in the vessel? Time it again.",
    );
    expect(result.flows.length).toBe(4);
    expect(result.flow.in(litrePerSecond)).toBeCloseTo(
      (2 + 20 / 10.1 + 20 / 10.05 + 20 / 14) / 4,
      12,
    );
    // Two that differ cannot say which is wrong, but that they differ.
    const two = heard(spring({ repeats: fillings(20, 10, 14) }));
    expect(two.codes).toEqual(["timed-volume-flow/out-of-range", "apart"]);
  });

  it("refuses bad rows with the row, all of them at once, and no filling", () => {
    const repeats = [
      ...fillings(20, 10, 0),
      { volume: litre.of(-20), time: second.of(10) },
      { volume: litre.of(20) } as Filling,
    ];
    expect(() => timedVolume(spring({ repeats }))).toThrow(NonPhysicalError);
    expect(() => timedVolume(spring({ repeats }))).toThrow(
      [
        "timed-volume: repeats.1.time = 0 s is not above zero, which no filling has. Check the row.",
        "timed-volume: repeats.2.volume = -20 L is not above zero, which no filling has. Check the row.",
        "timed-volume: repeats.3.time is missing. Leave the row out.",
      ].join("\n"),
    );
    expect(() => timedVolume(spring({ repeats: [] }))).toThrow(
      "timed-volume: repeats = none. Fill the vessel once or more.",
    );
  });

  it("does not change with the order, and scales with the volume", () => {
    const times = fc.array(fc.double({ min: 5, max: 40, noNaN: true }), {
      minLength: 2,
      maxLength: 8,
    });
    fc.assert(
      fc.property(times, fc.double({ min: 0.2, max: 5, noNaN: true }), (all, k) => {
        const of = (volume: number, ts: readonly number[]) =>
          timedVolume({
            name: "spring",
            repeats: fillings(volume, ...ts),
            timingError: second.of(0.3),
          }).flow;
        const q = of(20, all);
        const back = of(20, all.toReversed());
        expect(back.in(litrePerSecond)).toBeCloseTo(q.in(litrePerSecond), 10);
        expect(half95(back)).toBeCloseTo(half95(q), 8);
        expect(of(20 * k, all).in(litrePerSecond)).toBeCloseTo(k * q.in(litrePerSecond), 9);
        expect(half95(of(20 * k, all)) / half95(q)).toBeCloseTo(k, 6);
      }),
    );
  });
});
