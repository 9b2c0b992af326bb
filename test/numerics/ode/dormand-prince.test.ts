import { dormandPrince } from "@leat/numerics";
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
const driven: OdeSystem = (t, y, dydt) => {
  dydt[0] = y[0]! * Math.cos(t);
};
const curved: OdeSystem = (t, y, dydt) => {
  dydt[0] = -t * y[0]! * y[0]!;
};
const vanDerPol: OdeSystem = (_t, y, dydt) => {
  dydt[0] = y[1]!;
  dydt[1] = (1 - y[0]! * y[0]!) * y[1]! - y[0]!;
};
const pendulum: OdeSystem = (_t, y, dydt) => {
  dydt[0] = y[1]!;
  dydt[1] = -9.81 * Math.sin(y[0]!);
};

/** Tolerances so loose that every step is accepted, and a cap on its length: equal steps. */
const equalSteps = (step: number): Parameters<typeof dormandPrince>[4] => ({
  absTolerance: 1e9,
  firstStep: step,
  maxStep: step,
});

const quartic: OdeSystem = (t, _y, dydt) => {
  dydt[0] = 5 * t ** 4;
};
const oscillatorTo = (tolerance: number) =>
  dormandPrince(oscillator, 0, 20, [0, 1], {
    absTolerance: tolerance,
    relTolerance: tolerance,
  });
const crossing = (_t: number, y: Float64Array): number => y[0]!;
const still: OdeSystem = (_t, _y, dydt) => {
  dydt[0] = 0;
};
const grow: OdeSystem = (_t, y, dydt) => {
  dydt[0] = 1 - y[0]!;
};
// y' = y^2 from y(0) = 1 is infinite at t = 1.
const blowUp: OdeSystem = (_t, y, dydt) => {
  dydt[0] = y[0]! * y[0]!;
};
// 1e200 in units of a tolerance of 1e-300 is more than a number holds; the slopes are finite.
const steep: OdeSystem = (t, _y, dydt) => {
  dydt[0] = t < 1e-3 ? 0 : 1e200;
};
const bad: OdeSystem = (t, _y, dydt) => {
  dydt[0] = 1;
  dydt[1] = t > 0.5 ? NaN : 1;
};
const withOptions = (options: Partial<Parameters<typeof dormandPrince>[4]>) => () =>
  dormandPrince(oscillator, 0, 1, [0, 1], { absTolerance: 1e-6, ...options });
/** Rejected steps of y' = 5 t^4 tried in one. */
const rejectedAt = (absTolerance: number): number =>
  dormandPrince(quartic, 0, 1, [0], { absTolerance, relTolerance: 0, firstStep: 1 }).rejected;
const timeOfCrossing = (direction: "rising" | "falling" | "either", y0: number[]): number =>
  dormandPrince(oscillator, 0, 10, y0, {
    absTolerance: 1e-11,
    relTolerance: 1e-11,
    event: { crossing, direction },
  }).t;

describe("dormandPrince", () => {
  it.each<[string, OdeSystem, number[], (t: number) => number]>([
    ["decay", decay, [1], (t) => Math.exp(-t)],
    ["oscillator", oscillator, [0, 1], Math.sin],
    ["driven", driven, [1], (t) => Math.exp(Math.sin(t))],
    ["curved", curved, [1], (t) => 1 / (1 + (t * t) / 2)],
  ])("errs by a thirty-second when the steps of %s are halved", (_name, f, y0, solution) => {
    const error = (steps: number): number => {
      const report = dormandPrince(f, 0, 2, y0, equalSteps(2 / steps));
      expect(report.steps).toBe(steps);
      return report.y[0]! - solution(2);
    };
    expect(Math.abs(error(16))).toBeLessThan(3e-6);
    const ratio = error(32) / error(64);
    expect(ratio).toBeGreaterThan(27);
    expect(ratio).toBeLessThan(40);
  });

  // y' = (k + 1) t^k: the fifth-order weights integrate to k = 4, the fourth-order ones to k = 3, without error.
  it.each([[0], [1], [2], [3]])("needs one step for t^%i, whose error estimate is zero", (k) => {
    const power: OdeSystem = (t, _y, dydt) => {
      dydt[0] = (k + 1) * t ** k;
    };
    const options = { absTolerance: 1e-12, relTolerance: 0, firstStep: 1 };
    const { y, steps, rejected } = dormandPrince(power, 0, 1, [0], options);
    expect({ steps, rejected }).toEqual({ steps: 1, rejected: 0 });
    expect(y[0]).toBeCloseTo(1, 14);
  });

  it("integrates t^4 without error, though its estimate cannot know", () => {
    const tight = { absTolerance: 1e-12, relTolerance: 0, firstStep: 1 };
    const report = dormandPrince(quartic, 0, 1, [0], tight);
    expect(report.y[0]).toBeCloseTo(1, 14);
    expect(report.rejected).toBeGreaterThan(0);
  });

  it("estimates the difference of the published fifth- and fourth-order weights", () => {
    // In exact fractions, from the two rows of weights printed by Dormand and Prince (1980), not from their
    // difference: over one step of y' = 5 t^4 from 0 to 1 the two results differ by 71/54000.
    const estimate = 71 / 54000;
    expect(rejectedAt(estimate * 1.001)).toBe(0);
    expect(rejectedAt(estimate * 0.999)).toBeGreaterThan(0);
  });

  it.each([[1e-5], [1e-8], [1e-11]])("follows van der Pol's oscillator to %f", (tolerance) => {
    const options = { absTolerance: tolerance, relTolerance: tolerance };
    const { y, converged } = dormandPrince(vanDerPol, 0, 10, [2, 0], options);
    expect(converged).toBe(true);
    // scipy 1.17.1, solve_ivp DOP853 at 1e-13
    expect(Math.abs(y[0]! - -2.008340782579702)).toBeLessThan(50 * tolerance);
    expect(Math.abs(y[1]! - 0.032907065863273945)).toBeLessThan(50 * tolerance);
  });

  it("works harder for less error", () => {
    const loose = oscillatorTo(1e-4);
    const tight = oscillatorTo(1e-10);
    expect(tight.steps).toBeGreaterThan(4 * loose.steps);
    expect(Math.abs(tight.y[0]! - Math.sin(20))).toBeLessThan(1e-8);
    expect(Math.abs(loose.y[0]! - Math.sin(20))).toBeLessThan(1e-2);
    // A method of fifth order takes 10^(6/5) = 16 times the steps for a millionth of the error.
    expect(tight.steps / loose.steps).toBeLessThan(32);
  });

  it("counts what it did", () => {
    const seen: number[] = [];
    let calls = 0;
    const counted: OdeSystem = (t, y, dydt) => {
      calls++;
      vanDerPol(t, y, dydt);
    };
    const report = dormandPrince(counted, 0, 10, [2, 0], {
      absTolerance: 1e-7,
      onStep: (t) => seen.push(t),
    });
    expect(report.evaluations).toBe(calls);
    expect(calls).toBe(1 + 6 * (report.steps + report.rejected));
    expect(seen).toHaveLength(report.steps + 1);
    expect(seen.at(-1)).toBe(10);
    for (let i = 1; i < seen.length; i++) expect(seen[i]).toBeGreaterThan(seen[i - 1]!);
  });

  it("finds the quarter period of a pendulum", () => {
    // K(sin^2(1/2)) / sqrt(9.81): scipy 1.17.1, special.ellipk
    const report = dormandPrince(pendulum, 0, 10, [1, 0], {
      absTolerance: 1e-12,
      relTolerance: 1e-12,
      event: { crossing: (_t, y) => y[0]! },
    });
    expect(report.stoppedBy).toBe("event");
    expect(report.t).toBeCloseTo(0.5347844001396721, 10);
    expect(report.y[0]).toBeCloseTo(0, 12);
  });

  it("stops only at crossings in the direction asked for", () => {
    expect(timeOfCrossing("falling", [0, 1])).toBeCloseTo(Math.PI, 9);
    expect(timeOfCrossing("rising", [0, 1])).toBeCloseTo(2 * Math.PI, 9);
    expect(timeOfCrossing("either", [0, -1])).toBeCloseTo(Math.PI, 9);
    expect(timeOfCrossing("falling", [0, -1])).toBeCloseTo(2 * Math.PI, 9);
  });

  it("goes backwards", () => {
    const report = dormandPrince(decay, 1, 0, [Math.exp(-1)], { absTolerance: 1e-12 });
    expect(report.t).toBe(0);
    expect(report.y[0]).toBeCloseTo(1, 8);
    const event = { crossing: (_t: number, y: Float64Array): number => y[0]! - 0.5 };
    const half = dormandPrince(decay, 1, 0, [Math.exp(-1)], { absTolerance: 1e-12, event });
    expect(half.t).toBeCloseTo(Math.LN2, 8);
  });

  it("takes no step over nothing, and begins from zero", () => {
    const none = dormandPrince(decay, 3, 3, [2], { absTolerance: 1e-6 });
    expect(none).toMatchObject({ t: 3, steps: 0, stoppedBy: "end", converged: true });
    expect(none.y[0]).toBe(2);
    expect(dormandPrince(still, 0, 1, [0], { absTolerance: 1e-6 }).y[0]).toBe(0);
    const { y } = dormandPrince(grow, 0, 1, [0], { absTolerance: 1e-10 });
    expect(y[0]).toBeCloseTo(1 - Math.exp(-1), 8);
  });

  it("takes one tolerance for each state", () => {
    const { y } = dormandPrince(oscillator, 0, 1, [0, 1], { absTolerance: [1e-10, 1e-12] });
    expect(y[0]).toBeCloseTo(Math.sin(1), 8);
  });

  it("gives the same digits in units that are 4^k times as large", () => {
    fc.assert(
      fc.property(fc.integer({ min: -8, max: 8 }), fc.integer({ min: -8, max: 8 }), (k, m) => {
        const second = 4 ** k;
        const metre = 4 ** m;
        const scaled: OdeSystem = (t, y, dydt) => {
          dydt[0] = ((y[0]! / metre) * Math.cos(t / second) * metre) / second;
        };
        const one = dormandPrince(driven, 0, 2, [1], { absTolerance: 1e-8 });
        const other = dormandPrince(scaled, 0, 2 * second, [metre], { absTolerance: 1e-8 * metre });
        expect(other.y[0]).toBe(one.y[0]! * metre);
        expect(other.steps).toBe(one.steps);
      }),
    );
  });

  it("says so when the steps run out", () => {
    const options = { absTolerance: 1e-9, maxSteps: 10 };
    const error = refusalOf(() => dormandPrince(vanDerPol, 0, 10, [2, 0], options));
    expect(error.code).toBe("not-converged");
    expect(error.message).toMatch(
      /^dormandPrince: 10 steps \(\d+ rejected\) ended at t = 0\.\d+, short of 10\. Raise maxSteps, loosen a tolerance, or suspect a stiff system\.$/,
    );
    const report = dormandPrince(vanDerPol, 0, 10, [2, 0], { ...options, returnUnconverged: true });
    expect(report).toMatchObject({ stoppedBy: "step-limit", converged: false });
    expect(report.steps + report.rejected).toBe(10);
    expect(report.t).toBeLessThan(10);
  });

  it("gives a stiff system up after ten thousand steps", () => {
    const stiff: OdeSystem = (t, y, dydt) => {
      dydt[0] = -1e7 * (y[0]! - Math.cos(t));
    };
    const options = { absTolerance: 1e-6, returnUnconverged: true };
    const { steps, rejected, converged } = dormandPrince(stiff, 0, 1, [0], options);
    expect(converged).toBe(false);
    expect(steps + rejected).toBe(10_000);
  });

  it("says so when the step becomes too small", () => {
    const error = refusalOf(() => dormandPrince(blowUp, 0, 2, [1], { absTolerance: 1e-9 }));
    expect(error.code).toBe("step-underflow");
    expect(error.message).toMatch(
      /^dormandPrince: the step fell to \S+ at t = (1|0\.9999\d+|1\.0000\d+), too small to advance\. The solution is singular there, or a tolerance is out of reach\.$/,
    );
    const report = dormandPrince(blowUp, 0, 2, [1], {
      absTolerance: 1e-9,
      returnUnconverged: true,
    });
    expect(report).toMatchObject({ stoppedBy: "step-underflow", converged: false });
    expect(report.t).toBeCloseTo(1, 6);
  });

  it("shortens a step whose error is out of all proportion", () => {
    const options = {
      absTolerance: 1e-300,
      relTolerance: 0,
      maxSteps: 50,
      returnUnconverged: true,
    };
    const report = dormandPrince(steep, 0, 1, [0], { ...options, firstStep: 1 });
    expect(report.converged).toBe(false);
    expect(report.rejected).toBeGreaterThan(0);
  });

  it("begins with a step that suits the state", () => {
    const first = (f: OdeSystem, end: number, y0: number): number => {
      const times: number[] = [];
      dormandPrince(f, 0, end, [y0], { absTolerance: 1e-3, onStep: (t) => times.push(t) });
      return times[1]!;
    };
    // A hundredth of the span from zero; the time in which a hundredth of the state decays; a millionth of the span.
    expect(first(still, 10, 0)).toBeCloseTo(0.1, 15);
    expect(first(decay, 10, 1)).toBeCloseTo(0.01, 15);
    expect(first(grow, 10, 1e-12)).toBeCloseTo(1e-5, 18);
  });

  it.each([
    [0.1, 1 / 5],
    [0.25, 3 / 10],
    [0.5, 4 / 5],
    [0.85, 8 / 9],
    [0.95, 1],
  ])("names the stage that is not finite: after %f", (after, t) => {
    const ends: OdeSystem = (at, _y, dydt) => {
      dydt[0] = at > after ? NaN : 1;
    };
    const options = { absTolerance: 1e-6, firstStep: 1 };
    const error = refusalOf(() => dormandPrince(ends, 0, 1, [0], options));
    expect(error.details["t"]).toBeCloseTo(t, 15);
  });

  it("refuses what is not finite, by name", () => {
    const options = { absTolerance: 1e-6, firstStep: 1 };
    expect(refusalOf(() => dormandPrince(bad, 0, 1, [0, 0], options)).message).toBe(
      "dormandPrince: f[1] = NaN at t = 0.8 is not finite. Keep the run where the system is defined, or shorten the steps.",
    );
    expect(refusalOf(() => dormandPrince(bad, 1, 2, [0, 0], options)).details).toMatchObject({
      name: "f",
      index: 1,
      t: 1,
    });
    expect(refusalOf(() => dormandPrince(decay, 0, 1, [Infinity], options)).code).toBe(
      "non-finite",
    );
    const event = { crossing: (): number => NaN };
    expect(refusalOf(() => dormandPrince(decay, 0, 1, [1], { ...options, event })).code).toBe(
      "non-finite",
    );
  });

  it("refuses options that make no sense", () => {
    expect(refusalOf(withOptions({ absTolerance: [1] })).message).toBe(
      "dormandPrince: 1 absolute tolerances for 2 states. Pass one number, or one for each state.",
    );
    expect(refusalOf(withOptions({ absTolerance: 0 })).message).toBe(
      "dormandPrince: absTolerance[0] = 0 is not above zero. Pass a positive, finite number.",
    );
    expect(refusalOf(withOptions({ relTolerance: -1 })).code).toBe("bad-argument");
    expect(refusalOf(withOptions({ firstStep: 0 })).code).toBe("bad-argument");
    expect(refusalOf(withOptions({ maxStep: Infinity })).code).toBe("bad-argument");
    expect(refusalOf(withOptions({ maxSteps: 0 })).code).toBe("bad-argument");
  });
});
