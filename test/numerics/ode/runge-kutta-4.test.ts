import { rungeKutta4 } from "@leat/numerics";
import type { OdeSystem } from "@leat/numerics";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

import { refusalOf } from "../refusal-of.ts";

const decay: OdeSystem = (_t, y, dydt) => {
  dydt[0] = -y[0]!;
};
const oscillator: OdeSystem = (_t, y, dydt) => {
  dydt[0] = y[1]!;
  dydt[1] = -y[0]!;
};
/** y' = y cos t, y = exp(sin t): depends on t and on y. */
const driven: OdeSystem = (t, y, dydt) => {
  dydt[0] = y[0]! * Math.cos(t);
};
/** y' = -t y^2, y = 1 / (1 + t^2 / 2): not linear. */
const curved: OdeSystem = (t, y, dydt) => {
  dydt[0] = -t * y[0]! * y[0]!;
};

const cubic: OdeSystem = (t, _y, dydt) => {
  dydt[0] = t * t * t;
};
const crossing = (_t: number, y: Float64Array): number => y[0]!;
const ramp: OdeSystem = (_t, _y, dydt) => {
  dydt[0] = 1;
};
const blow: OdeSystem = (t, _y, dydt) => {
  dydt[0] = t > 0.6 ? NaN : 1;
};

describe("rungeKutta4", () => {
  it.each<[string, OdeSystem, number[], (t: number) => number]>([
    ["decay", decay, [1], (t) => Math.exp(-t)],
    ["oscillator", oscillator, [0, 1], Math.sin],
    ["driven", driven, [1], (t) => Math.exp(Math.sin(t))],
    ["curved", curved, [1], (t) => 1 / (1 + (t * t) / 2)],
  ])("errs by a sixteenth when the steps of %s are halved", (_name, f, y0, solution) => {
    const error = (steps: number): number =>
      rungeKutta4(f, 0, 2, y0, { steps }).y[0]! - solution(2);
    expect(Math.abs(error(40))).toBeLessThan(1e-5);
    const ratio = error(80) / error(160);
    expect(ratio).toBeGreaterThan(15);
    expect(ratio).toBeLessThan(17.1);
  });

  it("is exact for y' = t^3, where it is Simpson's rule", () => {
    expect(rungeKutta4(cubic, 0, 2, [0], { steps: 1 }).y[0]).toBeCloseTo(4, 14);
  });

  it("ends where it was told to, whatever the step, and counts", () => {
    const seen: number[] = [];
    const report = rungeKutta4(decay, 0.1, 0.7, [1], { steps: 7, onStep: (t) => seen.push(t) });
    expect(report).toMatchObject({
      t: 0.7,
      steps: 7,
      rejected: 0,
      evaluations: 28,
      stoppedBy: "end",
      converged: true,
    });
    expect(seen).toHaveLength(8);
    expect(seen[0]).toBe(0.1);
    expect(seen[7]).toBe(0.7);
  });

  it("goes back the way it came", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 3, noNaN: true }), (end) => {
        const there = rungeKutta4(oscillator, 0, end, [0.3, -0.8], { steps: 200 }).y;
        const back = rungeKutta4(oscillator, end, 0, there, { steps: 200 }).y;
        expect(back[0]).toBeCloseTo(0.3, 7);
        expect(back[1]).toBeCloseTo(-0.8, 7);
      }),
    );
  });

  it("stops at an event, as accurately as it steps", () => {
    const calls: [number, number][] = [];
    const report = rungeKutta4(oscillator, 0, 10, [0, 1], {
      steps: 1000,
      event: { crossing },
      onStep: (t, y) => calls.push([t, y[0]!]),
    });
    expect(report.stoppedBy).toBe("event");
    expect(report.converged).toBe(true);
    // Starting on the crossing does not count: the first is half a turn later.
    expect(report.t).toBeCloseTo(Math.PI, 9);
    expect(report.y[0]).toBeCloseTo(0, 14);
    expect(report.y[1]).toBeCloseTo(-1, 9);
    expect(report.steps).toBe(315);
    expect(calls.at(-1)).toEqual([report.t, report.y[0]]);
    const rising = rungeKutta4(oscillator, 0, 10, [0, 1], {
      steps: 1000,
      event: { crossing, direction: "rising" },
    });
    expect(rising.t).toBeCloseTo(2 * Math.PI, 8);
  });

  it("stops at an event that falls on the end of a step", () => {
    const event = { crossing: (_t: number, y: Float64Array): number => y[0]! - 1 };
    const report = rungeKutta4(ramp, 0, 2, [0], { steps: 4, event });
    expect(report).toMatchObject({ t: 1, steps: 2, stoppedBy: "event" });
  });

  it("leaves the state it was given alone", () => {
    const y0 = Float64Array.of(1);
    rungeKutta4(decay, 0, 1, y0, { steps: 3 });
    expect(y0[0]).toBe(1);
  });

  it("refuses what is not finite, by name, and options that make no sense", () => {
    expect(refusalOf(() => rungeKutta4(blow, 0, 1, [0], { steps: 2 })).message).toBe(
      "rungeKutta4: y[0] = NaN at t = 1 is not finite. Keep the run where the system is defined, or shorten the steps.",
    );
    expect(refusalOf(() => rungeKutta4(decay, 0, 1, [NaN], { steps: 2 })).message).toBe(
      "rungeKutta4: y0[0] = NaN is not finite. Pass a finite number.",
    );
    expect(refusalOf(() => rungeKutta4(decay, 0, 1, [], { steps: 2 })).message).toBe(
      "rungeKutta4: y0 is empty. Pass at least one state.",
    );
    expect(refusalOf(() => rungeKutta4(decay, 0, Infinity, [1], { steps: 2 })).code).toBe(
      "non-finite",
    );
    expect(refusalOf(() => rungeKutta4(decay, NaN, 1, [1], { steps: 2 })).code).toBe("non-finite");
    expect(refusalOf(() => rungeKutta4(decay, -1.7e308, 1.7e308, [1], { steps: 2 })).code).toBe(
      "non-finite",
    );
    expect(refusalOf(() => rungeKutta4(decay, 0, 1, [1], { steps: 0 })).code).toBe("bad-argument");
    const event = { crossing: (t: number): number => (t > 0.5 ? NaN : 1) };
    expect(refusalOf(() => rungeKutta4(decay, 0, 1, [1], { steps: 1, event })).message).toBe(
      "rungeKutta4: the event's crossing = NaN at t = 1 is not finite. Define it everywhere along the solution.",
    );
  });
});
