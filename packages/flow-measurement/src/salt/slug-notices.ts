import type { Notice } from "@leat/formula";
import {
  coherentUnit,
  format,
  microsiemensPerCentimetre,
  microsiemensSecondPerCentimetre,
  percent,
  type Quantity,
} from "@leat/quantity";

import { type CleanReadings, counted } from "./readings.ts";
import type { SlugPlan } from "./slug-plan.ts";
import type { SlugSum } from "./slug-sum.ts";
import { saltFactorPaper } from "./sources.ts";
import { saltFactors } from "./standard-factor.ts";

/** A missing tail from this share of the sum on is a stop. */
const tailStops = 0.05;

/** Fewer readings in the cloud than this are few. */
const fewReadings = 20;

/** Bridged readings under this share of the sum are told apart from the list of faults. */
const muchEstimated = 0.02;

/** Steps of the meter, or scatters, that a peak should rise by. */
const clearSteps = 20;

/**
 * Says that the record ends before the background is back.
 *
 * @param name - The name that the message begins with.
 * @param missing - Sum that is missing, S·s/m.
 * @param area - Sum without it.
 * @param added - Whether it is in the answer.
 * @returns A stop where much is missing and nothing was added, else a caution.
 */
export function tailNotice(name: string, missing: number, area: number, added: boolean): Notice {
  const share = missing / area;
  const size = `${format(areaOf(missing), microsiemensSecondPerCentimetre, 3)}, ${(100 * share).toFixed(1)} % of the sum`;
  return {
    code: "tail-missing",
    severity: share >= tailStops && !added ? "stop" : "caution",
    path: ["conductivity"],
    message: `${name}: the record ends before the background is back. An exponential through its end would add ${size}, by which the flow is ${added ? "lowered; half of that is taken as its uncertainty" : "too great; it is not added unless addMissingTail asks for it"}. Log until the background is back.`,
    actual: size,
    limit: `under ${100 * tailStops} % of the sum`,
  };
}

/**
 * Says where the record is thin: a weak peak, few readings, many of them bridged.
 *
 * @param name - The name that the message begins with.
 * @param clean - Readings.
 * @param plan - Where they are summed.
 * @param sum - What they sum to.
 * @returns The notices.
 */
export function signalNotices(
  name: string,
  clean: CleanReadings,
  plan: SlugPlan,
  sum: SlugSum,
): Notice[] {
  const notices: Notice[] = [];
  const unit = Math.max(clean.noise, clean.resolution);
  if (sum.peakRise < clearSteps * unit) {
    notices.push({
      code: "weak-slug",
      severity: "caution",
      path: ["mass"],
      message: `${name}: the peak rises by ${shown(sum.peakRise)}, less than ${clearSteps} steps or scatters of the meter (${shown(unit)}). Throw in more salt, if the stream may have it.`,
      actual: shown(sum.peakRise),
      limit: `at least ${shown(clearSteps * unit)}`,
    });
  }
  const rows = plan.end - plan.arrival + 1;
  if (rows < fewReadings) {
    notices.push({
      code: "few-readings",
      severity: "caution",
      path: ["time"],
      message: `${name}: ${rows} readings while the cloud passed. Log more often: ${fewReadings} or more.`,
      actual: String(rows),
      limit: `at least ${fewReadings}`,
    });
  }
  const inside = clean.bridges.flatMap(([a, b]) =>
    Array.from({ length: b - a + 1 }, (_, i) => a + i).filter(
      (row) => row >= plan.arrival && row <= plan.end,
    ),
  );
  if (inside.length > 0 && Math.abs(sum.estimatedShare) > muchEstimated) {
    notices.push({
      code: "much-estimated",
      severity: "caution",
      path: ["conductivity", inside[0] as number],
      message: `${name}: ${(100 * sum.estimatedShare).toFixed(1)} % of the sum lies under bridged readings (${counted(inside)}).`,
      actual: `${(100 * sum.estimatedShare).toFixed(1)} %`,
      limit: `at most ${100 * muchEstimated} %`,
    });
  }
  return notices;
}

/**
 * Says where the factor is not of this water, or not for so much salt.
 *
 * @param name - The name that the message begins with.
 * @param calibration - Its name and reach.
 * @param plan - Where the readings are summed.
 * @param sum - What they sum to.
 * @param standard - Whether the factor of any stream stands in.
 * @returns The notices.
 */
export function calibrationNotices(
  name: string,
  calibration: { readonly name: string; readonly greatest: Quantity<"conductivity"> | undefined },
  plan: SlugPlan,
  sum: SlugSum,
  standard: boolean,
): Notice[] {
  const notices: Notice[] = [];
  const source = saltFactorPaper.at("abstract, Table 8 and discussion");
  const level = plan.before ? sum.before : sum.after;
  if (standard) {
    const spread = format(saltFactors.get("none", "twoDeviations"), percent, 2);
    notices.push({
      code: "standard-factor",
      severity: "note",
      path: ["calibration"],
      message: `${name}: no calibration; the factor of any stream stands in, ± ${spread}. Calibrate with this probe in this water for ± 0.7 %.`,
      source,
    });
    const limit = saltFactors.get("none", "backgroundUpTo");
    if (level > limit["~si"]) {
      notices.push({
        code: "standard-factor-background",
        severity: "caution",
        path: ["calibration"],
        message: `${name}: background = ${shown(level)} is above ${String(limit)}, up to which the factor of any stream was tried. Calibrate in this water.`,
        actual: shown(level),
        limit: `at most ${String(limit)}`,
        source,
      });
    }
  }
  const { greatest } = calibration;
  if (greatest && sum.peakReading > greatest["~si"] * (1 + 1e-9)) {
    notices.push({
      code: "beyond-calibration",
      severity: "caution",
      path: ["calibration"],
      message: `${name}: the peak, ${shown(sum.peakReading)}, is above the ${shown(greatest["~si"])} that the calibration (${calibration.name}) reaches. Add more standard next time.`,
      actual: shown(sum.peakReading),
      limit: `at most ${shown(greatest["~si"])}`,
    });
  }
  return notices;
}

const areaOf = (si: number): Quantity<"conductivity time"> =>
  coherentUnit("conductivity time").of(si);

/**
 * A conductivity in three figures.
 *
 * @param si - In S/m.
 * @returns Number and unit.
 */
export const shown = (si: number): string =>
  `${Number(microsiemensPerCentimetre.fromSI(si).toPrecision(3))} µS/cm`;
