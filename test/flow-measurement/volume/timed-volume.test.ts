import { timedVolumeFlow } from "@leat/flow-measurement";
import { NonPhysicalError, OutOfValidityError } from "@leat/formula";
import { litre, litrePerSecond, metre, QuantityError, second } from "@leat/quantity";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";

const filling = (volume: number, time: number) => ({
  volume: litre.of(volume),
  time: second.of(time),
});
const fillings = fc.array(
  fc.tuple(
    fc.double({ min: 1, max: 100, noNaN: true }),
    fc.double({ min: 1, max: 100, noNaN: true }),
  ),
  { minLength: 3, maxLength: 8 },
);
const measured = (repeats: readonly [number, number][]) => {
  const { flow, standardDeviation } = timedVolumeFlow({
    repeats: repeats.map(([v, t]) => filling(v, t)),
  });
  return { flow: flow.in(litrePerSecond), spread: standardDeviation.in(litrePerSecond) };
};

describe("timedVolumeFlow", () => {
  it("lies among its repeats, whatever their order", () => {
    fc.assert(
      fc.property(fillings, (repeats) => {
        const flows = repeats.map(([v, t]) => v / t);
        const { flow, spread } = measured(repeats);
        expect(flow).toBeGreaterThanOrEqual(Math.min(...flows) * (1 - 1e-12));
        expect(flow).toBeLessThanOrEqual(Math.max(...flows) * (1 + 1e-12));
        expect(spread).toBeLessThanOrEqual(Math.max(...flows) - Math.min(...flows) + 1e-12);
        const back = measured(repeats.toReversed());
        expect(back.flow).toBeCloseTo(flow, 12);
        expect(back.spread).toBeCloseTo(spread, 12);
      }),
    );
  });

  it("doubles mean and scatter with the volumes", () => {
    fc.assert(
      fc.property(fillings, (repeats) => {
        const once = measured(repeats);
        const twice = measured(repeats.map(([v, t]) => [2 * v, t]));
        expect(twice.flow).toBeCloseTo(2 * once.flow, 10);
        expect(twice.spread).toBeCloseTo(2 * once.spread, 10);
      }),
    );
  });

  it("carries the uncertainty of a shared vessel into every repeat", () => {
    const volume = litre.of(10).plusMinus(litre.of(0.5), "mark on the bucket");
    const { flow } = timedVolumeFlow({
      repeats: [4, 4, 4].map((t) => ({ volume, time: second.of(t) })),
    });
    // Shared, it does not average away: 5 % of the volume is 5 % of the flow.
    expect(flow.standardUncertainty().in(litrePerSecond) * 1.959964).toBeCloseTo(0.125, 5);
  });

  it("asks for three repeats, and refuses one or none", () => {
    const two = { repeats: [filling(10, 4), filling(10, 5)] };
    expect(() => timedVolumeFlow(two)).toThrow(OutOfValidityError);
    expect(() => timedVolumeFlow(two)).toThrow(
      "timed-volume-flow: number of repeats = 2 is below 3, the range common practice gives",
    );
    const onNotice = (): void => undefined;
    expect(timedVolumeFlow(two, { onNotice }).flow.in(litrePerSecond)).toBeCloseTo(2.25, 12);
    expect(() => timedVolumeFlow({ repeats: [filling(10, 4)] }, { onNotice })).toThrow(
      NonPhysicalError,
    );
    expect(() => timedVolumeFlow({ repeats: [filling(10, 4)] }, { onNotice })).toThrow(
      "timed-volume-flow: repeats = 1 filling, which cannot scatter. Time two or more, or divide one volume by its time.",
    );
    expect(() => timedVolumeFlow({ repeats: [] }, { onNotice })).toThrow(
      "repeats = 0 fillings, which cannot scatter",
    );
  });

  it("refuses a filling without time, and one of another kind", () => {
    expect(() =>
      timedVolumeFlow({ repeats: [filling(1, 1), filling(1, 0), filling(1, 1)] }),
    ).toThrow("timed-volume-flow: repeats.1.time = 0 s is not above zero");
    const bad = { volume: metre.of(1), time: second.of(1) };
    expect(() => timedVolumeFlow({ repeats: [bad, bad, bad] as never })).toThrow(QuantityError);
  });
});
