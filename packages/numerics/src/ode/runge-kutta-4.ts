import { requireCount } from "../requirement.ts";
import { CrossingWatch } from "./crossing.ts";
import { checkedStart, requireFiniteState } from "./ode-system.ts";
import type { OdeOptions, OdeReport, OdeSystem } from "./ode-system.ts";

const where = "rungeKutta4";

/** Options of {@link rungeKutta4}. */
export interface RungeKutta4Options extends OdeOptions {
  /** Into how many equal steps the span is cut. Required: only the caller knows what is fine enough. */
  readonly steps: number;
}

/**
 * Integrates y' = f(t, y) in equal steps by the classical Runge-Kutta method of fourth order.
 *
 * There is no error estimate: run again with twice the steps, and a fifteenth of the change is the error
 * left. `converged` says only that the end or the event was reached with finite states.
 *
 * @param f - The right-hand side.
 * @param t0 - Start.
 * @param t1 - End; below `t0` the run goes backwards.
 * @param y0 - State at the start; copied.
 * @param options - Number of steps, event, callback.
 * @returns The state at the end.
 * @throws {@link NumericsError} `non-finite`, `bad-argument`.
 * @example
 * ```ts
 * import { rungeKutta4 } from "@leat/numerics";
 *
 * const decay = (_t: number, y: Float64Array, dydt: Float64Array): void => {
 *   dydt[0] = -y[0]!;
 * };
 * const { y } = rungeKutta4(decay, 0, 1, [1], { steps: 100 });
 * y[0]!.toFixed(8); // => "0.36787944"
 * ```
 * @see W. Kutta, Beitrag zur näherungsweisen Integration totaler Differentialgleichungen, Z. Math. Phys. 46 (1901) 435-453.
 */
export function rungeKutta4(
  f: OdeSystem,
  t0: number,
  t1: number,
  y0: ArrayLike<number>,
  options: RungeKutta4Options,
): OdeReport {
  const { steps, event, onStep } = options;
  requireCount(where, "steps", steps);
  let y = checkedStart(where, t0, t1, y0);
  let next: Float64Array = new Float64Array(y.length);
  const stage = new Float64Array(y.length);
  const k1 = new Float64Array(y.length);
  const k2 = new Float64Array(y.length);
  const k3 = new Float64Array(y.length);
  const k4 = new Float64Array(y.length);
  let evaluations = 0;
  let t = t0;

  const advance = (h: number): Float64Array => {
    const n = y.length;
    f(t, y, k1);
    for (let i = 0; i < n; i++) stage[i] = y[i]! + 0.5 * h * k1[i]!;
    f(t + 0.5 * h, stage, k2);
    for (let i = 0; i < n; i++) stage[i] = y[i]! + 0.5 * h * k2[i]!;
    f(t + 0.5 * h, stage, k3);
    for (let i = 0; i < n; i++) stage[i] = y[i]! + h * k3[i]!;
    f(t + h, stage, k4);
    for (let i = 0; i < n; i++) {
      next[i] = y[i]! + (h / 6) * (k1[i]! + 2 * (k2[i]! + k3[i]!) + k4[i]!);
    }
    evaluations += 4;
    return next;
  };

  const h = (t1 - t0) / steps;
  const watch = event && new CrossingWatch(where, event, t, y);
  onStep?.(t, y);
  for (let step = 1; step <= steps; step++) {
    advance(h);
    // Counted from the start, so that a million steps end where one would.
    const end = step === steps ? t1 : t0 + step * h;
    requireFiniteState(where, "y", end, next);
    if (watch?.crossed(end, next)) {
      const length = watch.locate(t, h, advance);
      advance(length);
      onStep?.(t + length, next);
      return {
        t: t + length,
        y: next,
        steps: step,
        rejected: 0,
        evaluations,
        stoppedBy: "event",
        converged: true,
      };
    }
    const last = y;
    y = next;
    next = last;
    t = end;
    onStep?.(t, y);
  }
  return { t, y, steps, rejected: 0, evaluations, stoppedBy: "end", converged: true };
}
