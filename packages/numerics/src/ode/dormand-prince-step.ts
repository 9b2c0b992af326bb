import { requireFiniteState } from "./ode-system.ts";
import type { OdeSystem } from "./ode-system.ts";

/*
 * The tableau is that of J. R. Dormand and P. J. Prince, J. Comput. Appl. Math. 6 (1980) 19-26, method RK5(4)7M.
 * It stands inside the methods as quotients, which the compiler folds: at the top of the module, bundlers would
 * keep them for callers that never integrate.
 */

/** One run of Dormand-Prince steps: its states and slopes, allocated once. */
export class DormandPrinceStep {
  readonly #f: OdeSystem;
  readonly #stage: Float64Array;
  readonly #k2: Float64Array;
  readonly #k3: Float64Array;
  readonly #k4: Float64Array;
  readonly #k5: Float64Array;
  readonly #k6: Float64Array;
  #k7: Float64Array;
  /** State at the start of the step. */
  y: Float64Array;
  /** State at its end. */
  next: Float64Array;
  /** Slope at its start. */
  slope: Float64Array;
  /** Calls of the right-hand side so far. */
  evaluations = 0;

  /**
   * @param f - The right-hand side.
   * @param y - State at the start; used and overwritten.
   */
  constructor(f: OdeSystem, y: Float64Array) {
    const n = y.length;
    this.#f = f;
    this.y = y;
    this.next = new Float64Array(n);
    this.slope = new Float64Array(n);
    this.#stage = new Float64Array(n);
    this.#k2 = new Float64Array(n);
    this.#k3 = new Float64Array(n);
    this.#k4 = new Float64Array(n);
    this.#k5 = new Float64Array(n);
    this.#k6 = new Float64Array(n);
    this.#k7 = new Float64Array(n);
  }

  /**
   * Finds the first slope.
   *
   * @param t - Start.
   */
  begin(t: number): void {
    this.#f(t, this.y, this.slope);
    this.evaluations++;
  }

  /**
   * A first step that changes no state by more than about a hundredth of itself, and no longer than a hundredth
   * of the span. A poor guess costs a few steps: the error estimate corrects it.
   *
   * @param span - Length of the run.
   * @param relTolerance - Relative tolerance.
   * @param absTolerances - Absolute tolerances.
   * @returns The length.
   */
  likelyStep(span: number, relTolerance: number, absTolerances: Float64Array): number {
    let state = 0;
    let change = 0;
    for (let i = 0; i < this.y.length; i++) {
      const size = Math.abs(this.y[i]!);
      const scale = absTolerances[i]! + relTolerance * size;
      state = Math.max(state, size / scale);
      change = Math.max(change, Math.abs(this.slope[i]!) / scale);
    }
    const longest = 0.01 * span;
    if (!(state > 0 && change > 0)) return longest;
    return Math.max(1e-6 * span, Math.min(longest, (0.01 * state) / change));
  }

  /**
   * Makes a step, into `next`, and estimates its error.
   *
   * @param t - Start.
   * @param h - Length, signed.
   * @param relTolerance - Relative tolerance.
   * @param absTolerances - Absolute tolerances.
   * @returns The largest error of a state in units of its tolerance: up to 1 is acceptable. Not finite if anything in the step is.
   */
  attempt(t: number, h: number, relTolerance: number, absTolerances: Float64Array): number {
    this.partial(t, h);
    const { y, next, slope: k1 } = this;
    const k3 = this.#k3;
    const k4 = this.#k4;
    const k5 = this.#k5;
    const k6 = this.#k6;
    const k7 = this.#k7;
    this.#f(t + h, next, k7);
    this.evaluations++;
    // Fifth-order weights less fourth-order weights.
    const e1 = 71 / 57600;
    const e3 = -71 / 16695;
    const e4 = 71 / 1920;
    const e5 = -17253 / 339200;
    const e6 = 22 / 525;
    const e7 = -1 / 40;
    let largest = 0;
    for (let i = 0; i < y.length; i++) {
      const error =
        h * (e1 * k1[i]! + e3 * k3[i]! + e4 * k4[i]! + e5 * k5[i]! + e6 * k6[i]! + e7 * k7[i]!);
      const size = Math.max(Math.abs(y[i]!), Math.abs(next[i]!));
      const ratio = Math.abs(error) / (absTolerances[i]! + relTolerance * size);
      // Not Math.max alone: one NaN must not be outlived by a later number.
      if (!(ratio < Infinity)) return Infinity;
      if (ratio > largest) largest = ratio;
    }
    return largest;
  }

  /**
   * Makes a step without an error estimate.
   *
   * @param t - Start.
   * @param h - Length, signed.
   * @returns The state at its end: `next`, reused.
   */
  partial(t: number, h: number): Float64Array {
    const { y, next, slope: k1 } = this;
    const f = this.#f;
    const stage = this.#stage;
    const k2 = this.#k2;
    const k3 = this.#k3;
    const k4 = this.#k4;
    const k5 = this.#k5;
    const k6 = this.#k6;
    // a: shares of the earlier slopes in each stage; b: in the fifth-order result.
    const a21 = 1 / 5;
    const a31 = 3 / 40;
    const a32 = 9 / 40;
    const a41 = 44 / 45;
    const a42 = -56 / 15;
    const a43 = 32 / 9;
    const a51 = 19372 / 6561;
    const a52 = -25360 / 2187;
    const a53 = 64448 / 6561;
    const a54 = -212 / 729;
    const a61 = 9017 / 3168;
    const a62 = -355 / 33;
    const a63 = 46732 / 5247;
    const a64 = 49 / 176;
    const a65 = -5103 / 18656;
    const b1 = 35 / 384;
    const b3 = 500 / 1113;
    const b4 = 125 / 192;
    const b5 = -2187 / 6784;
    const b6 = 11 / 84;
    const n = y.length;
    for (let i = 0; i < n; i++) stage[i] = y[i]! + h * a21 * k1[i]!;
    f(t + (1 / 5) * h, stage, k2);
    for (let i = 0; i < n; i++) stage[i] = y[i]! + h * (a31 * k1[i]! + a32 * k2[i]!);
    f(t + (3 / 10) * h, stage, k3);
    for (let i = 0; i < n; i++) {
      stage[i] = y[i]! + h * (a41 * k1[i]! + a42 * k2[i]! + a43 * k3[i]!);
    }
    f(t + (4 / 5) * h, stage, k4);
    for (let i = 0; i < n; i++) {
      stage[i] = y[i]! + h * (a51 * k1[i]! + a52 * k2[i]! + a53 * k3[i]! + a54 * k4[i]!);
    }
    f(t + (8 / 9) * h, stage, k5);
    for (let i = 0; i < n; i++) {
      stage[i] =
        y[i]! + h * (a61 * k1[i]! + a62 * k2[i]! + a63 * k3[i]! + a64 * k4[i]! + a65 * k5[i]!);
    }
    f(t + h, stage, k6);
    for (let i = 0; i < n; i++) {
      next[i] = y[i]! + h * (b1 * k1[i]! + b3 * k3[i]! + b4 * k4[i]! + b5 * k5[i]! + b6 * k6[i]!);
    }
    this.evaluations += 5;
    return next;
  }

  /** Moves on: the end of the step is the start of the next, and so is its slope. */
  accept(): void {
    const y = this.y;
    this.y = this.next;
    this.next = y;
    const slope = this.slope;
    this.slope = this.#k7;
    this.#k7 = slope;
  }

  /**
   * Names what is not finite in the step tried last; returns if all is, and only the error is out of proportion.
   *
   * @param where - The public function that asks.
   * @param t - Start of the step.
   * @param h - Its length.
   */
  requireFiniteStages(where: string, t: number, h: number): void {
    requireFiniteState(where, "f", t + (1 / 5) * h, this.#k2);
    requireFiniteState(where, "f", t + (3 / 10) * h, this.#k3);
    requireFiniteState(where, "f", t + (4 / 5) * h, this.#k4);
    requireFiniteState(where, "f", t + (8 / 9) * h, this.#k5);
    requireFiniteState(where, "f", t + h, this.#k6);
    requireFiniteState(where, "y", t + h, this.next);
    requireFiniteState(where, "f", t + h, this.#k7);
  }
}
