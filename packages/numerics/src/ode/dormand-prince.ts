import { NumericsError } from "../numerics-error.ts";
import { requireCount, requirePositive, requireTolerance } from "../requirement.ts";
import { CrossingWatch } from "./crossing.ts";
import { DormandPrinceStep } from "./dormand-prince-step.ts";
import { checkedStart, requireFiniteState } from "./ode-system.ts";
import type { OdeOptions, OdeReport, OdeSystem } from "./ode-system.ts";

const where = "dormandPrince";

/** Options of {@link dormandPrince}. */
export interface DormandPrinceOptions extends OdeOptions {
  /**
   * Acceptable error of each state in a step, in that state's unit: one number for all, or one for each. Required:
   * a default would hide a unit. It carries where the state is near zero, `relTolerance` elsewhere.
   */
  readonly absTolerance: number | ArrayLike<number>;
  /** Acceptable error in a step as a fraction of the state. Default 1e-8. */
  readonly relTolerance?: number;
  /** Length of the first step tried, positive. Default: a hundredth of the span, or less where the state changes fast. */
  readonly firstStep?: number;
  /** No step is longer than this, positive. Default: the span. */
  readonly maxStep?: number;
  /** The cap on steps, rejected ones included. Default 10 000. */
  readonly maxSteps?: number;
  /** Return the report with `converged: false` where a run is given up, instead of throwing. Default false. */
  readonly returnUnconverged?: boolean;
}

/**
 * Integrates y' = f(t, y) with steps chosen by its error estimate: the Dormand-Prince pair of orders 5 and 4.
 *
 * The fifth-order result is carried on. For systems that are not stiff; a stiff one takes steps without end
 * and is stopped by `maxSteps`. Allocates nothing per step.
 *
 * @param f - The right-hand side.
 * @param t0 - Start.
 * @param t1 - End; below `t0` the run goes backwards.
 * @param y0 - State at the start; copied.
 * @param options - Tolerances, step lengths, caps, event, callback.
 * @returns The state at the end or at the event.
 * @throws {@link NumericsError} `non-finite`, `bad-argument`; `not-converged` and `step-underflow` unless `returnUnconverged`.
 * @example
 * ```ts
 * import { dormandPrince } from "@leat/numerics";
 *
 * // A stone dropped from 20 m: when does it land?
 * const fall = (_t: number, y: Float64Array, dydt: Float64Array): void => {
 *   dydt[0] = y[1]!;
 *   dydt[1] = -9.81;
 * };
 * const landed = dormandPrince(fall, 0, 10, [20, 0], {
 *   absTolerance: 1e-9,
 *   event: { crossing: (_t, y) => y[0]!, direction: "falling" },
 * });
 * landed.stoppedBy; // => "event"
 * landed.t.toFixed(6); // => "2.019275"
 * ```
 * @see J. R. Dormand and P. J. Prince, A family of embedded Runge-Kutta formulae, J. Comput. Appl. Math. 6 (1980) 19-26.
 */
export function dormandPrince(
  f: OdeSystem,
  t0: number,
  t1: number,
  y0: ArrayLike<number>,
  options: DormandPrinceOptions,
): OdeReport {
  const { event, onStep, relTolerance = 1e-8, maxSteps = 10_000 } = options;
  const { firstStep, maxStep, returnUnconverged = false } = options;
  const start = checkedStart(where, t0, t1, y0);
  requireTolerance(where, "relTolerance", relTolerance);
  requireCount(where, "maxSteps", maxSteps);
  if (firstStep !== undefined) requirePositive(where, "firstStep", firstStep);
  if (maxStep !== undefined) requirePositive(where, "maxStep", maxStep);
  const absTolerances = eachTolerance(options.absTolerance, start.length);

  const run = new DormandPrinceStep(f, start);
  const watch = event && new CrossingWatch(where, event, t0, start);
  onStep?.(t0, start);
  const report = (
    t: number,
    y: Float64Array,
    rejected: number,
    attempts: number,
    stoppedBy: OdeReport["stoppedBy"],
  ): OdeReport => ({
    t,
    y: y.slice(),
    steps: attempts - rejected,
    rejected,
    evaluations: run.evaluations,
    stoppedBy,
    converged: stoppedBy === "end" || stoppedBy === "event",
  });
  const span = Math.abs(t1 - t0);
  if (span === 0) return report(t0, start, 0, 0, "end");

  const forward = t1 > t0 ? 1 : -1;
  const longest = Math.min(span, maxStep ?? span);
  run.begin(t0);
  requireFiniteState(where, "f", t0, run.slope);
  let length = Math.min(longest, firstStep ?? run.likelyStep(span, relTolerance, absTolerances));
  let t = t0;
  let rejected = 0;
  let growth = 5;
  for (let attempts = 1; attempts <= maxSteps; attempts++) {
    // A sliver left for the last step would be lost to rounding: stretch this one by up to 1 %.
    const left = Math.abs(t1 - t);
    const last = 1.01 * length >= left;
    const h = forward * (last ? left : length);
    const end = last ? t1 : t + h;
    if (end === t || Math.abs(h) <= 4 * Number.EPSILON * Math.abs(t)) {
      const ended = report(t, run.y, rejected, attempts - 1, "step-underflow");
      if (returnUnconverged) return ended;
      throw new NumericsError(
        "step-underflow",
        `${where}: the step fell to ${h} at t = ${t}, too small to advance. ` +
          "The solution is singular there, or a tolerance is out of reach.",
        { where, ...ended },
      );
    }

    const error = run.attempt(t, h, relTolerance, absTolerances);
    if (!(error < Infinity)) run.requireFiniteStages(where, t, h);
    if (!(error <= 1)) {
      rejected++;
      growth = 1;
      length = Math.abs(h) * Math.max(0.2, 0.9 * Math.pow(error, -0.2));
      continue;
    }
    if (watch?.crossed(end, run.next)) {
      const whole = watch.locate(t, h, (part) => run.partial(t, part));
      const y = run.partial(t, whole);
      onStep?.(t + whole, y);
      return report(t + whole, y, rejected, attempts, "event");
    }
    run.accept();
    t = end;
    onStep?.(t, run.y);
    if (last) return report(t, run.y, rejected, attempts, "end");
    const factor = error > 0 ? Math.min(growth, 0.9 * Math.pow(error, -0.2)) : growth;
    length = Math.min(longest, Math.abs(h) * Math.max(0.2, factor));
    growth = 5;
  }
  const ended = report(t, run.y, rejected, maxSteps, "step-limit");
  if (returnUnconverged) return ended;
  throw new NumericsError(
    "not-converged",
    `${where}: ${maxSteps} steps (${rejected} rejected) ended at t = ${t}, short of ${t1}. ` +
      "Raise maxSteps, loosen a tolerance, or suspect a stiff system.",
    { where, ...ended },
  );
}

// One absolute tolerance for each state.
function eachTolerance(tolerance: number | ArrayLike<number>, states: number): Float64Array {
  const each =
    typeof tolerance === "number"
      ? new Float64Array(states).fill(tolerance)
      : Float64Array.from(tolerance);
  if (each.length !== states) {
    throw new NumericsError(
      "bad-argument",
      `${where}: ${each.length} absolute tolerances for ${states} states. Pass one number, or one for each state.`,
      { where, tolerances: each.length, states },
    );
  }
  for (let i = 0; i < states; i++) requirePositive(where, `absTolerance[${i}]`, each[i]!);
  return each;
}
