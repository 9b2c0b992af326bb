import { bound, firstPrinciples, formula, input, output, range, ratio } from "@leat/formula";
import { foot, metre, metrePerSecondSquared } from "@leat/quantity";

import { bos, iso1438 } from "../sources.ts";
import { between } from "./between.ts";
import { partlyContractedCoefficients } from "./partly-contracted-coefficients.ts";
import { kulinAndCompton } from "./sources.ts";

/**
 * Discharge over a thin-plate V-notch of 90° that the bed and the sides of its channel are near to
 * (Kindsvater–Shen, partly contracted).
 *
 *     Q = 8/15 · Ce(h/P, P/B) · √(2·g) · (h + kh)^(5/2),   kh = 0.0029 ft
 *
 * Free flow: the tail water stays 0.2 ft (6 cm) or more below the vertex. No other angle has curves for a
 * channel that is near. Where the head is at most 0.4 of the vertex's height and 0.2 of the channel's width it
 * is the fully contracted notch, and agrees with `vNotchDischarge` within 0.3 %.
 *
 * Ce is drawn straight between read points of the curves (`partlyContractedCoefficients`), first along each
 * curve and then from curve to curve.
 *
 * @throws NonPhysicalError head negative or not finite: never softened.
 * @throws OutOfValidityError a limit is exceeded and `onNotice` is absent.
 * @example
 * ```ts
 * import { partlyContractedVNotchDischarge } from "@leat/flow-measurement";
 * import { litrePerSecond, metre } from "@leat/quantity";
 *
 * // A box 0.8 m wide: its bed is 0.2 m below the notch.
 * const box = { crestHeight: metre.of(0.2), approachWidth: metre.of(0.8) };
 * const q = partlyContractedVNotchDischarge({ head: metre.of(0.2), ...box });
 * q.in(litrePerSecond).toFixed(1); // => "24.9"
 * ```
 * @see U.S. Bureau of Reclamation, Water Measurement Manual, ch. 7, sec. 7, fig. 7-7, which is Kulin and Compton's
 */
export const partlyContractedVNotchDischarge = /* @__PURE__ */ formula(() => {
  const { rows, units } = partlyContractedCoefficients.definition;
  const columns = Object.keys(units) as (keyof typeof units)[];
  const heights = columns.map(Number);
  const curves = columns.map((column) => {
    const points = rows.filter((row) => row[column] !== undefined);
    return {
      heads: points.map((row) => Number(row.relativeHead)),
      coefficients: points.map((row) => row[column] as number),
    };
  });
  const effectiveCoefficient = (relativeHead: number, relativeHeight: number): number =>
    between(
      heights,
      curves.map(({ heads, coefficients }) => between(heads, coefficients, relativeHead)),
      relativeHeight,
    );
  return {
    id: "partly-contracted-v-notch-discharge",
    equation: "Q = 8/15 · Ce · √(2·g) · (h + kh)^(5/2)",
    inputs: {
      /** Level above the vertex, measured upstream of the drawdown: four heads or more from the plate. */
      head: input("length", "h"),
      /** Vertex above the bed of the approach channel. */
      crestHeight: input("length", "P", { domain: "positive" }),
      /** Width of the approach channel. */
      approachWidth: input("length", "B", { domain: "positive" }),
      /** Gravity at the site. */
      gravity: input("acceleration", "g", {
        domain: "positive",
        default: metrePerSecondSquared.of(9.80665),
        because: firstPrinciples.at("standard gravity, exact by convention"),
      }),
    },
    output: output("volume flow", "Q"),
    constants: { kh: foot.of(0.0029) },
    steps: {
      Ce: {
        kind: "coefficient",
        equation: "effective coefficient at h/P and P/B",
        of: ({ h, P, B }) => effectiveCoefficient(h / P, P / B),
      },
    },
    limits: [
      range("head", { min: metre.of(0.06) }, iso1438.at("cl. 10.6", "secondary")),
      range("head", { max: metre.of(0.6) }, bos.at("ch. 5, partially contracted", "memory")),
      ratio("head", "crestHeight", { max: 1.2 }, kulinAndCompton.at("fig. 4-5", "secondary")),
      ratio("head", "approachWidth", { max: 0.4 }, kulinAndCompton.at("fig. 4-5", "secondary")),
      range(
        "crestHeight",
        { min: metre.of(0.1) },
        bos.at("ch. 5, partially contracted", "secondary"),
      ),
      range(
        "approachWidth",
        { min: metre.of(0.6) },
        bos.at("ch. 5, partially contracted", "secondary"),
      ),
      bound(
        "crestHeight",
        "height of the vertex over width of the channel",
        ({ P, B }: { P: number; B: number }) => P / B,
        { min: 0.1, max: 1 },
        kulinAndCompton.at("fig. 4-5", "secondary"),
      ),
    ],
    source: kulinAndCompton.at("fig. 4-5", "secondary"),
    body: ({ h, P, B, g, kh }) => {
      const he = h + kh;
      return (
        (8 / 15) * effectiveCoefficient(h / P, P / B) * Math.sqrt(2 * g) * he * he * Math.sqrt(he)
      );
    },
  };
});
