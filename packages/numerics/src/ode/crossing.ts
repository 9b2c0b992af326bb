import { NumericsError } from "../numerics-error.ts";
import { bracketedRoot } from "../root/bracketed-root.ts";
import type { OdeEvent } from "./ode-system.ts";

/** Watches an event from step to step. */
export class CrossingWatch {
  readonly #where: string;
  readonly #event: OdeEvent;
  #last: number;

  /**
   * @param where - The public function that watches.
   * @param event - The event.
   * @param t - Start.
   * @param y - State at the start.
   */
  constructor(where: string, event: OdeEvent, t: number, y: Float64Array) {
    this.#where = where;
    this.#event = event;
    this.#last = this.#measure(t, y);
  }

  /**
   * Whether the event was crossed by the step that ended here. A run that starts on the crossing must first leave it.
   *
   * @param t - End of the step.
   * @param y - State there.
   * @returns Whether to stop.
   */
  crossed(t: number, y: Float64Array): boolean {
    const now = this.#measure(t, y);
    const { direction = "either" } = this.#event;
    const rose = this.#last < 0 && now >= 0;
    const fell = this.#last > 0 && now <= 0;
    if ((rose && direction !== "falling") || (fell && direction !== "rising")) return true;
    this.#last = now;
    return false;
  }

  /**
   * Locates the crossing inside a step by repeating the step over a part of its length: as accurate as the method.
   *
   * @param t - Start of the step.
   * @param h - Its length.
   * @param partial - Makes a step of the given length from its start, and returns the state, reused.
   * @returns The length of the step that ends on the crossing.
   */
  locate(t: number, h: number, partial: (length: number) => Float64Array): number {
    return (
      bracketedRoot((fraction) => this.#measure(t + fraction * h, partial(fraction * h)), 0, 1)
        .root * h
    );
  }

  #measure(t: number, y: Float64Array): number {
    const value = this.#event.crossing(t, y);
    if (!Number.isFinite(value)) {
      throw new NumericsError(
        "non-finite",
        `${this.#where}: the event's crossing = ${value} at t = ${t} is not finite. ` +
          "Define it everywhere along the solution.",
        { where: this.#where, t, value },
      );
    }
    return value;
  }
}
