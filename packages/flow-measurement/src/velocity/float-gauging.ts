import { type CallOptions, commonPractice, type Notice } from "@leat/formula";
import {
  coverage95,
  metrePerSecond,
  one,
  percent,
  type Quantity,
  second,
  squareMetre,
} from "@leat/quantity";

import { disagreement, scatterOf } from "../combine/scatter.ts";
import { fault, refusal } from "../refusal.ts";
import { floatCoefficient as byDepth } from "./float-coefficient.ts";
import { floatCoefficientsByBed } from "./float-coefficients.ts";
import { floatDischarge } from "./float-discharge.ts";
import { soundedArea } from "./sounded-area.ts";
import { usgsStreamflow } from "./sources.ts";

const id = "float-gauging";

/** A cross-section: its area, or its width and depths sounded at equal steps between the edges. */
export type FloatSection =
  | { readonly area: Quantity<"area"> }
  | { readonly width: Quantity<"length">; readonly depths: readonly Quantity<"length">[] };

/** A bed of `floatCoefficientsByBed`. */
export type FloatBed = ReturnType<(typeof floatCoefficientsByBed)["keys"]>[number];

/** A gauging by floats. */
export interface FloatGaugingInput {
  /** Names this gauging: its sources of uncertainty are called after it. */
  readonly name: string;
  /** Length that the floats were timed over. */
  readonly reachLength: Quantity<"length">;
  /** Time of each float. */
  readonly times: readonly Quantity<"time">[];
  /** Cross-sections, two or more. */
  readonly sections: readonly FloatSection[];
  /**
   * Mean velocity over that of the floats: a number, best with its own ±; or the bed, of which a common range is taken;
   * or the average depth, of which a manual's table is taken, ± 0.1.
   */
  readonly coefficient:
    | Quantity<"coefficient">
    | { readonly bed: FloatBed }
    | { readonly averageDepth: Quantity<"length"> };
  /** Half the 95 % interval of one time: the hand on the stop-watch. */
  readonly timingError?: Quantity<"time"> | undefined;
}

/** What floats say. */
export interface FloatGaugingResult {
  /** Discharge, with its sources: coefficient, cross-sections, scatter of the runs, timing. */
  readonly flow: Quantity<"volume flow">;
  /** Mean velocity of the floats. */
  readonly surfaceVelocity: Quantity<"velocity">;
  /** Mean of the cross-sections. */
  readonly area: Quantity<"area">;
  /** The coefficient that was taken, with its spread. */
  readonly coefficient: Quantity<"coefficient">;
}

/**
 * Discharge of a reach from floats, with its large uncertainty.
 *
 * `floatDischarge` gives the flow. Its sources are the float coefficient (anywhere in its range), the cross-sections
 * (the mean of the reach lies anywhere between the smallest and the largest), the scatter of the runs (95 % by Student's
 * distribution, t·s/√n) and the timing of each float. The Geological Survey found ± 10 % for floats at their best and
 * 25 % in an uneven reach with few of them: a result that claims less is told of.
 *
 * @param input - The gauging.
 * @param options - Who is told.
 * @returns Flow, surface velocity, area and coefficient.
 * @throws NonPhysicalError a time, a length or an area not above zero, with its row; no float, no section.
 * @throws QuantityError a bed that is not in the table.
 * @example
 * ```ts
 * import { floatGauging } from "@leat/flow-measurement";
 * import { format, litrePerSecond, metre, second } from "@leat/quantity";
 *
 * const { flow } = floatGauging({
 *   name: "floats, 3 May",
 *   reachLength: metre.of(10),
 *   times: [21, 23, 22, 24, 22].map((t) => second.of(t)),
 *   sections: [
 *     { width: metre.of(1.5), depths: [0.15, 0.3, 0.2].map((d) => metre.of(d)) },
 *     { width: metre.of(1.7), depths: [0.1, 0.25, 0.25].map((d) => metre.of(d)) },
 *   ],
 *   coefficient: { bed: "cobbles" },
 * });
 * format(flow, litrePerSecond, { plusMinus: true }); // => "78 ± 14 L/s (k = 1.96)"
 * ```
 * @see U.S. Bureau of Reclamation, Water Measurement Manual, ch. 13; USGS Water-Supply Paper 2175
 */
export function floatGauging(
  input: FloatGaugingInput,
  options: Pick<CallOptions, "onNotice"> = {},
): FloatGaugingResult {
  const tell = options.onNotice ?? (() => undefined);
  const { name, reachLength, times, timingError } = input;
  const coefficient = coefficientOf(input, tell);
  const areas = input.sections.map((section, i) => areaOf(section, i));
  const runs = times.map((time, i) => ({
    time: timingError ? time.plusMinus(timingError, `${name}: timing of float ${i + 1}`) : time,
  }));
  const { flow, surfaceVelocity, meanArea } = floatDischarge(
    {
      reachLength,
      runs,
      sections: areas.map((area) => ({ area })),
      floatCoefficient: coefficient,
    },
    { onNotice: tell },
  );

  const length = reachLength["~si"];
  const velocities = times.map((time) => length / time["~si"]);
  const scatter = scatterOf(velocities);
  const half95 = times.length === 1 ? alone * scatter.mean : scatter.half95;
  const sizes = areas.map((area) => area["~si"]);
  const halfRange =
    sizes.length === 1 ? alone * meanArea["~si"] : (Math.max(...sizes) - Math.min(...sizes)) / 2;
  if (times.length === 1) tellAlone(["times"], "one float", tell);
  if (sizes.length === 1) tellAlone(["sections"], "one cross-section", tell);
  tellOfRuns(velocities, times, tell);
  if (sizes.length > 1) tellOfSections(halfRange / meanArea["~si"], tell);

  const area =
    halfRange > 0
      ? meanArea.within(squareMetre.of(halfRange), `${name}: cross-sections`)
      : meanArea;
  const velocity =
    half95 > 0
      ? surfaceVelocity.plusMinus(metrePerSecond.of(half95), `${name}: scatter of the runs`)
      : surfaceVelocity;
  let result = flow;
  if (halfRange > 0) {
    const part = flow.abs().times(halfRange / meanArea["~si"]);
    result = result.within(part, `${name}: cross-sections`);
  }
  if (half95 > 0) {
    const part = flow.abs().times(half95 / scatter.mean);
    result = result.plusMinus(part, `${name}: scatter of the runs`);
  }
  tellOfTotal(result, tell);
  return { flow: result, surfaceVelocity: velocity, area, coefficient };
}

/** Half of the spread that is taken where one alone shows none. */
const alone = 0.2;

function tellAlone(path: readonly string[], what: string, tell: (notice: Notice) => void): void {
  tell({
    code: `${id}/alone`,
    severity: "caution",
    path,
    message: `${id}: ${what} shows no scatter: ± ${100 * alone} % is taken for it.`,
    actual: "1",
    source: commonPractice.at("one alone shows no scatter", "practice"),
  });
}

function areaOf(section: FloatSection, i: number): Quantity<"area"> {
  if ("area" in section) return section.area;
  if (section.depths.length === 0) {
    throw refusal([
      fault(
        id,
        ["sections", i, "depths"],
        `sections.${i}.depths = none. Sound the section at one or more places between its edges.`,
        { actual: "0" },
      ),
    ]);
  }
  const wrong = section.depths.findIndex((depth) => !(depth["~si"] >= 0));
  if (wrong >= 0) {
    const depth = section.depths[wrong] as Quantity<"length">;
    throw refusal([
      fault(
        id,
        ["sections", i, "depths", wrong],
        `sections.${i}.depths.${wrong} = ${depth.toString()} is below zero, which no depth can be. Check the row.`,
        { actual: depth.toString() },
      ),
    ]);
  }
  return soundedArea({
    width: section.width,
    depths: section.depths.map((depth) => ({ depth })),
  });
}

/** The coefficient with a spread, which is assumed where none is given. */
function coefficientOf(
  { coefficient, name }: FloatGaugingInput,
  tell: (notice: Notice) => void,
): Quantity<"coefficient"> {
  const source = `${name}: float coefficient`;
  if ("bed" in coefficient) {
    const { low, typical, high } = floatCoefficientsByBed.row(coefficient.bed);
    const half = Math.max(typical - low, high - typical);
    return one.of(typical).as("coefficient").within(one.of(half), source);
  }
  const given =
    "averageDepth" in coefficient
      ? byDepth({ averageDepth: coefficient.averageDepth }, { onNotice: tell })
      : coefficient;
  if (!("averageDepth" in coefficient) && given["~sources"]) return given;
  tell({
    code: `${id}/coefficient-spread`,
    severity: "note",
    path: ["coefficient"],
    message: `${id}: coefficient = ${given.in(one).toFixed(2)} has no ± of its own: anywhere within 0.1 of it is taken.`,
    actual: given.in(one).toFixed(2),
    source: commonPractice.at("tables of float coefficients differ by more", "practice"),
  });
  return given.within(one.of(0.1), source);
}

function tellOfRuns(
  velocities: readonly number[],
  times: readonly Quantity<"time">[],
  tell: (notice: Notice) => void,
): void {
  const notices = disagreement(velocities, {
    id,
    path: ["times"],
    plural: "floats",
    say: (v) => `${v.toPrecision(3)} m/s`,
    apart: 0.2,
    advice: "Was it caught, or in another thread of the stream? Run it again.",
  });
  for (const notice of notices) tell(notice);
  const least = second.of(20);
  const quick = times.filter((time) => time.lessThan(least)).length;
  if (quick > 0) {
    tell({
      code: `${id}/short-run`,
      severity: "note",
      path: ["times"],
      message: `${id}: ${quick} of ${times.length} floats took less than 20 s. Take a longer reach where there is one.`,
      limit: "at least 20 s",
      source: usgsStreamflow.at("float measurements: time over the reach", "memory"),
    });
  }
}

function tellOfSections(half: number, tell: (notice: Notice) => void): void {
  const most = 0.2;
  if (half <= most) return;
  const share = `${(100 * half).toFixed(0)} %`;
  tell({
    code: `${id}/uneven-reach`,
    severity: "caution",
    path: ["sections"],
    message: `${id}: sections reach ${share} to either side of the middle of their range. Find a reach that is more even, or sound more of it.`,
    actual: share,
    limit: "at most 20 %",
    source: commonPractice.at("an even reach", "practice"),
  });
}

function tellOfTotal(flow: Quantity<"volume flow">, tell: (notice: Notice) => void): void {
  const best = 0.1;
  if (!(flow["~si"] > 0)) return;
  const half = (coverage95 * flow.standardUncertainty()["~si"]) / flow["~si"];
  if (half >= best) return;
  tell({
    code: `${id}/better-than-floats`,
    severity: "note",
    path: ["coefficient"],
    message: `${id}: the flow comes out within ${one.of(half).in(percent).toFixed(0)} %, less than the 10 % that the Geological Survey gives floats at their best. Is the ± of the coefficient real?`,
    actual: `${(100 * half).toFixed(0)} %`,
    limit: "at least 10 %",
    source: usgsStreamflow.at("accuracy of float measurements", "memory"),
  });
}
