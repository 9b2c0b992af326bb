import { NumericsError } from "../numerics-error.ts";
import { requireFinite } from "../requirement.ts";

/**
 * The right-hand side of y' = f(t, y).
 *
 * It writes the derivative into `dydt` and keeps neither array: both are reused.
 */
export type OdeSystem = (t: number, y: Float64Array, dydt: Float64Array) => void;

/** A function of the state that stops the run where it crosses zero. */
export interface OdeEvent {
  /**
   * Continuous along the solution; crossings are looked for between one step and the next, so two crossings
   * inside one step go unseen: keep the steps shorter than that.
   */
  readonly crossing: (t: number, y: Float64Array) => number;
  /** Which crossings stop the run. Default `"either"`. */
  readonly direction?: "rising" | "falling" | "either";
}

/** Options of every integration of an ODE. */
export interface OdeOptions {
  /** Where to stop before the end. Default: nowhere. */
  readonly event?: OdeEvent;
  /** Called at the start and after every step with the state. The array is reused: copy what must be kept. */
  readonly onStep?: (t: number, y: Float64Array) => void;
}

/** Where an integration ended and what it took. */
export interface OdeReport {
  /** Where it ended: the end asked for, or the crossing. */
  readonly t: number;
  /** The state there. */
  readonly y: Float64Array;
  /** Steps taken. */
  readonly steps: number;
  /** Steps tried again with a smaller step; 0 for fixed steps. */
  readonly rejected: number;
  /** Calls of the right-hand side. */
  readonly evaluations: number;
  /** What ended it. */
  readonly stoppedBy: "end" | "event" | "step-limit" | "step-underflow";
  /** Whether it reached the end or the event; false only if asked for by `returnUnconverged`. */
  readonly converged: boolean;
}

/**
 * Checks the span and the start of an integration.
 *
 * @param where - The public function that asks.
 * @param t0 - Start.
 * @param t1 - End.
 * @param y0 - State at the start.
 * @returns A copy of the state.
 */
export function checkedStart(
  where: string,
  t0: number,
  t1: number,
  y0: ArrayLike<number>,
): Float64Array {
  requireFinite(where, "t0", t0);
  requireFinite(where, "t1", t1);
  requireFinite(where, "t1 - t0", t1 - t0);
  if (y0.length === 0) {
    throw new NumericsError("bad-argument", `${where}: y0 is empty. Pass at least one state.`, {
      where,
    });
  }
  const y = Float64Array.from(y0);
  for (let i = 0; i < y.length; i++) requireFinite(where, `y0[${i}]`, y[i]!);
  return y;
}

/**
 * Refuses a state that is not finite.
 *
 * @param where - The public function that asks.
 * @param name - `"y"`, or `"f"` for a derivative.
 * @param t - Where.
 * @param values - The state or the derivative.
 */
export function requireFiniteState(
  where: string,
  name: "y" | "f",
  t: number,
  values: Float64Array,
): void {
  for (let i = 0; i < values.length; i++) {
    if (!Number.isFinite(values[i])) {
      throw new NumericsError(
        "non-finite",
        `${where}: ${name}[${i}] = ${values[i]} at t = ${t} is not finite. ` +
          "Keep the run where the system is defined, or shorten the steps.",
        { where, name, index: i, value: values[i], t },
      );
    }
  }
}
