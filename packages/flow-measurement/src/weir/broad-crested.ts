import { bound, firstPrinciples, formula, input, output, range, ratio } from "@leat/formula";
import { metre, metrePerSecondSquared } from "@leat/quantity";

import { bos } from "../sources.ts";
import { between } from "./between.ts";
import { broadCrestedCoefficients } from "./broad-crested-coefficients.ts";
import { modularLimit } from "./modular-limit.ts";
import { iso3846 } from "./sources.ts";

/**
 * Discharge over a rectangular broad-crested weir with a sharp upstream corner, across the whole channel.
 *
 *     Q = (2/3)^(3/2) · C(h/P, h/L) · √g · b · h^(3/2)
 *
 * The head is the gauged one: the approach velocity is in C. Upright faces, a level crest, a corner that is
 * square and not worn: a rounding of a tenth of the head adds 6 %. C is drawn straight between the values of
 * the standard (`broadCrestedCoefficients`), and is best known for h/L from 0.1 to 0.4 over a crest that is high
 * against the head: there it is the handbook's 0.848 with its approach velocity factor within 1 % up to h/P = 0.3.
 * Where bed and crest are near (h/P above 0.5) the standard reads 2 to 8 % more than that.
 *
 * The tail water over the crest is an input: above the modular limit (see `broadCrestedModularLimit`) the weir is
 * drowned and the flow is less than this. Left out, it is taken to be at the crest or below, and reported as
 * assumed.
 *
 * @throws NonPhysicalError head negative or not finite: never softened.
 * @throws OutOfValidityError a limit is exceeded and `onNotice` is absent.
 * @example
 * ```ts
 * import { broadCrestedDischarge } from "@leat/flow-measurement";
 * import { litrePerSecond, metre } from "@leat/quantity";
 *
 * const sill = { notchWidth: metre.of(1), crestHeight: metre.of(0.3), crestLength: metre.of(0.5) };
 * const q = broadCrestedDischarge({ head: metre.of(0.12), ...sill });
 * q.in(litrePerSecond).toFixed(1); // => "61.9"
 * ```
 */
export const broadCrestedDischarge = /* @__PURE__ */ formula(() => {
  const { rows, units } = broadCrestedCoefficients.definition;
  const columns = Object.keys(units) as (keyof typeof units)[];
  const lengths = columns.map(Number);
  const heights = rows.map((row) => Number(row.relativeHead));
  const lines = rows.map((row) => columns.map((column) => row[column]));
  const coefficient = (headInHeights: number, headInLengths: number): number =>
    between(
      heights,
      lines.map((line) => between(lengths, line, headInLengths)),
      headInHeights,
    );
  return {
    id: "broad-crested-discharge",
    equation: "Q = (2/3)^(3/2) · Cq · √g · b · h^(3/2)",
    inputs: {
      /** Level above the crest, measured upstream of the drawdown: three to four heads from the crest. */
      head: input("length", "h"),
      /** Width of the crest, which is that of the channel. */
      notchWidth: input("length", "b", { domain: "positive" }),
      /** Crest above the bed of the approach channel. */
      crestHeight: input("length", "P", { domain: "positive" }),
      /** Length of the crest along the stream. */
      crestLength: input("length", "L", { domain: "positive" }),
      /** Tail water above the crest; nothing where it is at the crest or below. */
      tailwaterHead: input("length", "h2", {
        default: metre.of(0),
        because: firstPrinciples.at("tail water at the crest or below it is free flow"),
      }),
      /** Gravity at the site. */
      gravity: input("acceleration", "g", {
        domain: "positive",
        default: metrePerSecondSquared.of(9.80665),
        because: firstPrinciples.at("standard gravity, exact by convention"),
      }),
    },
    output: output("volume flow", "Q"),
    steps: {
      Cq: {
        kind: "coefficient",
        equation: "coefficient at h/P and h/L",
        of: ({ h, P, L }) => coefficient(h / P, h / L),
      },
    },
    limits: [
      range("head", { min: metre.of(0.06) }, iso3846.at("cl. 8.3", "secondary")),
      range("notchWidth", { min: metre.of(0.3) }, iso3846.at("cl. 8.3", "secondary")),
      range("crestHeight", { min: metre.of(0.15) }, iso3846.at("cl. 8.3", "secondary")),
      ratio("head", "crestLength", { min: 0.1, max: 1.4 }, iso3846.at("fig. 2", "secondary")),
      ratio("head", "crestHeight", { max: 1.6 }, iso3846.at("cl. 8.3", "secondary")),
      ratio("crestLength", "crestHeight", { min: 0.1, max: 4 }, iso3846.at("cl. 8.2", "secondary")),
      bound(
        "head",
        "head over crest height, where head over crest length is above 0.85,",
        ({ h, P, L }: { h: number; P: number; L: number }) => (h / L > 0.85 ? h / P : 0),
        { max: 0.85 },
        iso3846.at("cl. 8.3", "memory"),
      ),
      bound(
        "tailwaterHead",
        "tail water over the crest as a share of its modular limit",
        ({ h, h2, L }: { h: number; h2: number; L: number }) =>
          h2 === 0 ? 0 : h2 / (h * modularLimit(h / L)),
        { max: 1 },
        bos.at("ch. 4, rectangular broad-crested weir", "memory"),
      ),
    ],
    source: iso3846.at("eq. of the gauged head, fig. 2", "secondary"),
    body: ({ h, b, P, L, g }) =>
      (2 / 3) * Math.sqrt(2 / 3) * coefficient(h / P, h / L) * Math.sqrt(g) * b * h * Math.sqrt(h),
  };
});
