// Records of invented slugs whose flow is known: the rise is mass over factor and flow, times a curve of area one.
import type { SaltSlugInput } from "@leat/flow-measurement";
import {
  gram,
  litrePerSecond,
  microsiemensPerCentimetre,
  milligramPerLitrePerMicrosiemensPerCentimetre,
} from "@leat/quantity";
import { Column } from "@leat/quantity/column";

/** What a record is made of; µS/cm, s, L/s, g. */
export interface Made {
  readonly flow: number;
  readonly mass?: number;
  readonly shape?: "gamma" | "gauss";
  /** Shape of the gamma curve, or seconds of the Gaussian. */
  readonly order?: number;
  /** Scale of the gamma curve, or seconds from arrival to peak over `order`. */
  readonly scale?: number;
  readonly before?: number;
  readonly length?: number;
  readonly step?: number;
  readonly background?: number;
  /** µS/cm over the whole record. */
  readonly drift?: number;
  /** Step of the meter, 0 for none. */
  readonly resolution?: number;
  readonly noise?: (row: number) => number;
}

/** The factor that all of them are made with, mg·cm/(µS·L). */
export const madeFactor = 0.486;

const factorials = [1, 1, 2, 6, 24, 120];

/** The curve of area one, per second, so long after the rise begins. */
function curve({ shape = "gamma", order = 3, scale = 30 }: Made, t: number): number {
  if (shape === "gamma") {
    if (t <= 0) return 0;
    return (t / scale) ** (order - 1) * (Math.exp(-t / scale) / (factorials[order - 1]! * scale));
  }
  const off = (t - 5 * scale) / scale;
  return Math.exp((-off * off) / 2) / (scale * Math.sqrt(2 * Math.PI));
}

/** Seconds and µS/cm of a record. */
export function made(how: Made): { time: number[]; values: number[] } {
  const { mass = 200, before = 120, length = 720, step = 1, background = 85, drift = 0 } = how;
  const time = Array.from({ length: Math.floor(length / step) + 1 }, (_, i) => i * step);
  const height = (mass * 1000) / (madeFactor * how.flow);
  const values = time.map((t, row) => {
    const value =
      background + (drift * t) / length + height * curve(how, t - before) + (how.noise?.(row) ?? 0);
    return how.resolution ? Math.round(value / how.resolution) * how.resolution : value;
  });
  return { time, values };
}

/** The same as an input, calibrated with the factor that it was made with, which is known without error. */
export function madeInput(
  how: Made,
  change: (values: number[], time: number[]) => void = () => {},
): SaltSlugInput {
  const { time, values } = made(how);
  change(values, time);
  return {
    time,
    conductivity: Column.of(microsiemensPerCentimetre, values),
    basis: "at 25 °C",
    mass: gram.of(how.mass ?? 200),
    calibration: {
      name: "as made",
      factor: milligramPerLitrePerMicrosiemensPerCentimetre.of(madeFactor),
      basis: "at 25 °C",
      greatest: microsiemensPerCentimetre.of(10_000),
    },
  };
}

/** Litres per second of what `saltSlug` and the like give. */
export const flowOf = ({ flow }: { flow: { in(unit: typeof litrePerSecond): number } }): number =>
  flow.in(litrePerSecond);
