import type { Notice } from "@leat/formula";
import {
  coherentUnit,
  format,
  microsiemensSecondPerCentimetre,
  one,
  type Quantity,
  siemensPerMetre,
} from "@leat/quantity";
import { Column } from "@leat/quantity/column";

import { refused } from "../refusal.ts";
import { type NoticeOptions, type SaltCalibration, sameBasis } from "./calibration.ts";
import { chlorideAtPeak, chlorideNotices } from "./chloride.ts";
import {
  cleanReadings,
  faultNotices,
  type LoggedConductivity,
  type ReadingFaults,
} from "./readings.ts";
import { saltSlugDischarge } from "./slug-discharge.ts";
import { calibrationNotices, shown, signalNotices, tailNotice } from "./slug-notices.ts";
import { planSlug, type SlugGiven, type TimeSpan } from "./slug-plan.ts";
import { backgroundRows, sumSlug } from "./slug-sum.ts";
import { findSlug } from "./slug-window.ts";
import { streamTemperatureCoefficient } from "./specific-conductivity.ts";
import { contributionsOf, spreadBy } from "./spread.ts";
import { standardSaltFactor } from "./standard-factor.ts";
import {
  type ConductivityBasis,
  temperatureNotices,
  temperaturesOf,
  warmed,
  type WaterTemperature,
} from "./temperature.ts";

/** A slug of salt as a logger saw it. */
export interface SaltSlugInput extends LoggedConductivity, SlugGiven {
  /** Names the probe in notices and sources of uncertainty; two probes need two names. */
  readonly name?: string | undefined;
  /** Salt that was thrown in. */
  readonly mass: Quantity<"mass">;
  /** What the readings are: raw, or brought to 25 °C by the meter. It must be stated. */
  readonly basis: ConductivityBasis;
  /** Temperature of the water; raw readings are brought to 25 °C by it. */
  readonly temperature?: WaterTemperature | undefined;
  /** Relative change a kelvin of raw readings; 2.0 ± 0.1 % by default. */
  readonly temperatureCoefficient?: Quantity<"temperature coefficient"> | undefined;
  /** The calibration of this probe in this stream; without one the factor of any stream stands in. */
  readonly calibration?:
    | Pick<SaltCalibration, "name" | "factor" | "basis" | "greatest">
    | undefined;
  /** Whether to add the sum that the record ends too early for, as an exponential gives it. */
  readonly addMissingTail?: boolean | undefined;
  /** Half of a 95 % interval for imperfect mixing at a single probe; 7 % by default. */
  readonly mixing?: Quantity<"ratio"> | undefined;
}

/** What a slug of salt says of the flow. */
export interface SaltSlug {
  /** Name of the probe. */
  readonly name: string;
  /** Discharge of the stream, with an allowance for mixing: a single probe cannot see it. */
  readonly flow: Quantity<"volume flow">;
  /** The same without that allowance, for two probes to be compared. */
  readonly flowAtProbe: Quantity<"volume flow">;
  /** Rise of conductivity, summed over time. */
  readonly conductivityTime: Quantity<"conductivity time">;
  /** The factor that was used. */
  readonly calibrationFactor: Quantity<"concentration per conductivity">;
  /** Background before the cloud; absent where the record has none. */
  readonly backgroundBefore: Quantity<"conductivity"> | undefined;
  /** Background after it; absent where it is not used. */
  readonly backgroundAfter: Quantity<"conductivity"> | undefined;
  /** Greatest rise over the background. */
  readonly peakRise: Quantity<"conductivity">;
  /** Salt per volume at the peak, above what the stream has anyway. */
  readonly peakConcentration: Quantity<"density">;
  /** Chloride at the peak, above what the stream has anyway. */
  readonly peakChloride: Quantity<"density">;
  /** When the cloud arrives, in the seconds of the record. */
  readonly arrival: number;
  /** When it is strongest. */
  readonly peak: number;
  /** When the background is back; the end of what is summed where it never is. */
  readonly end: number;
  /** What is summed. */
  readonly window: TimeSpan;
  /** Sum that the record or the window ends too early for, by an exponential: an estimate, in the flow only where it was asked for. */
  readonly missingTail: Quantity<"conductivity time"> | undefined;
  /** Share of the sum that lies under bridged rows. */
  readonly estimatedShare: number;
  /** Rows at fault. */
  readonly faults: ReadingFaults;
  /** The record as it was used, compensated, with flags: for a chart. */
  readonly readings: Column<"conductivity">;
  /** The background under it. */
  readonly baseline: Column<"conductivity">;
  /** Seconds of the rows, those out of order estimated. */
  readonly time: Float64Array;
  /** What is to be told, stops and cautions among it. */
  readonly notices: readonly Notice[];
}

/**
 * A single probe's allowance for mixing, half of a 95 % interval: two banks of a well mixed reach differ by 5 % (the precision that
 * Moore gives the method), so that one of them is off by 5 %/√2 (one standard deviation). Common practice, no source.
 */
const singleProbeMixing = 0.07;

/**
 * Discharge from a slug of salt, from readings as a logger wrote them.
 *
 *     Q = M / (CF · A);   A = ∫ (κ − κ0) dt, by trapezoids
 *
 * Faults are looked for first: gaps, fault codes of the logger, readings that no stream has, spikes (Hampel's rule: five robust standard
 * deviations from the median of seven readings, one to three rows wide, between readings that agree), a stuck sensor (eight or more equal
 * readings that begin in movement and end in a jump), and times that do not rise. Each is told with its rows, flagged in `readings` and bridged by
 * a straight line; none is dropped in silence.
 *
 * The cloud is found by itself, or given as `window`: back from the peak to the first row within 0.5 % of the peak's rise (or three standard
 * deviations of the scatter) of the background, forward to the first such row, a tenth of the rise time added in front and a quarter of the fall
 * time behind. The background is a line between what lies before and what lies after. Where the end of the record still falls like a tail, it
 * is the constant of before, and `missingTail` says what an exponential through the end would add.
 *
 * Sources of uncertainty, each by its name: those of `mass`; the calibration; `<name>: background before` and `after`; `<name>: sampling` (scatter,
 * spacing of the readings, bridges); `temperature coefficient` where raw readings are compensated; `<name>: missing tail`; and `<name>: mixing`, 7 % at a
 * single probe. That one is an allowance: the same slug seen from two banks has differed by 14 %. Two probes see it: `compareProbes`.
 *
 * @param input - Record, mass, basis, and what else is known.
 * @param options - Told of notices as they are found; they are in the result too.
 * @returns The flow and all that it rests on.
 * @throws NonPhysicalError mass not above zero; rows that differ; no cloud; a factor of another basis than the readings.
 * @example
 * ```ts
 * import { saltSlug } from "@leat/flow-measurement";
 * import { gram, litrePerSecond, microsiemensPerCentimetre } from "@leat/quantity";
 * import { Column } from "@leat/quantity/column";
 *
 * // An invented record, a reading every 5 s, with a fault code in it.
 * const rise = (t: number): number => (t < 100 ? 0 : 1.2 * (t - 100) * Math.exp(-(t - 100) / 40));
 * const time = Float64Array.from({ length: 120 }, (_, i) => 5 * i);
 * const readings = Array.from(time, (t) => (t === 150 ? -9999 : Math.round(10 * (62 + rise(t))) / 10));
 * const slug = saltSlug({
 *   time,
 *   conductivity: Column.of(microsiemensPerCentimetre, readings),
 *   basis: "at 25 °C",
 *   mass: gram.of(100),
 * });
 * slug.flow.in(litrePerSecond).toFixed(0); // => "107"
 * slug.faults.faultCode.join(); // => "30"
 * slug.notices.map(({ code }) => code).join(); // => "readings-fault-code,much-estimated,standard-factor"
 * ```
 */
export function saltSlug(input: SaltSlugInput, options: NoticeOptions = {}): SaltSlug {
  const name = input.name ?? "salt slug";
  const notices: Notice[] = [];
  const tell = (notice: Notice): void => {
    notices.push(notice);
    options.onNotice?.(notice);
  };
  if (!(input.mass["~si"] > 0)) {
    throw refused(
      ["mass"],
      `${name}: mass = ${String(input.mass)} is not above zero. Weigh the salt.`,
      { code: "non-physical" },
    );
  }
  const logged = cleanReadings(name, input, { forStuck: true });
  faultNotices(name, logged).forEach(tell);

  const water = input.temperature && temperaturesOf(name, input.temperature, logged.time);
  const calibration = input.calibration ?? {
    name: "without calibration",
    factor: standardSaltFactor(),
    basis: "at 25 °C" as const,
    greatest: undefined,
  };
  const coefficient = input.temperatureCoefficient ?? streamTemperatureCoefficient();
  // A factor of raw readings without a temperature leaves nothing to bring them to.
  const compensated = input.basis === "raw" && water !== undefined && calibration.basis !== "raw";
  const basis = compensated ? "at 25 °C" : input.basis;
  sameBasis(name, basis, calibration);
  const clean = compensated ? warmed(logged, water.degrees, coefficient["~si"]) : logged;

  const found = findSlug(clean);
  if (!found && !(input.window && input.background)) {
    throw refused(
      ["conductivity"],
      `${name}: no cloud of salt stands out of the scatter of ${shown(8 * clean.noise)}. Give window and background if you see one, or throw in more salt.`,
      { code: "no-slug" },
    );
  }
  const plan = planSlug(name, clean, found, input);
  const sum = sumSlug(clean, plan);
  if (!(sum.area > 0)) {
    throw refused(
      ["window"],
      `${name}: the rise over the background sums to ${format(areaOf(sum.area), microsiemensSecondPerCentimetre, 3)}, not above zero. Check window and background.`,
      { code: "no-slug" },
    );
  }
  plan.notices.forEach(tell);

  const missing = plan.missing;
  const added = input.addMissingTail === true && missing > 0;
  if (missing > 0) tell(tailNotice(name, missing, sum.area, added));
  const slope = (by: number): number =>
    sumSlug(warmed(logged, water?.degrees as Float64Array, coefficient["~si"] + by), plan).area;
  const step = 1e-4 * coefficient["~si"];
  const conductivityTime = spreadBy(areaOf(sum.area + (added ? missing : 0)), [
    ...(plan.before ? [[`${name}: background before`, sum.fromBefore] as const] : []),
    ...(plan.after ? [[`${name}: background after`, sum.fromAfter] as const] : []),
    [`${name}: sampling`, sum.fromSampling],
    ...(compensated ? contributionsOf(coefficient, (slope(step) - slope(-step)) / (2 * step)) : []),
    ...(missing > 0
      ? [[`${name}: missing tail`, missing / (added ? 2 : Math.sqrt(3))] as const]
      : []),
  ]);

  const flowAtProbe = saltSlugDischarge(
    { mass: input.mass, calibrationFactor: calibration.factor, conductivityTime },
    { onNotice: tell },
  );
  const mixing = input.mixing ?? one.of(singleProbeMixing);
  const flow = flowAtProbe.plusMinus(flowAtProbe.times(mixing["~si"]), `${name}: mixing`);

  const peakRise = siemensPerMetre.of(sum.peakRise);
  const peakConcentration = peakRise.times(calibration.factor);
  const peakChloride = chlorideAtPeak({
    conductivityRise: peakRise,
    calibrationFactor: calibration.factor,
  });
  signalNotices(name, clean, plan, sum).forEach(tell);
  calibrationNotices(name, calibration, plan, sum, input.calibration === undefined).forEach(tell);
  if (water) {
    temperatureNotices(name, {
      clean: logged,
      basis: input.basis,
      degrees: water.degrees,
      bridged: water.bridged,
      coefficient: coefficient["~si"],
      background: backgroundRows(plan),
      slug: plan.summed,
      compensated,
    }).forEach(tell);
  } else if (input.basis === "raw") {
    tell({
      code: "raw-without-temperature",
      severity: "caution",
      path: ["temperature"],
      message: `${name}: raw readings without a temperature. The flow is right only if the water was as warm as in the calibration, 2 % wrong for each kelvin. Write the temperature down.`,
    });
  }
  chlorideNotices(peakChloride).forEach(tell);

  const { time } = clean;
  const axis = logged.faults.time.length === 0 ? input.conductivity.axis : undefined;
  return {
    name,
    flow,
    flowAtProbe,
    conductivityTime,
    calibrationFactor: calibration.factor,
    backgroundBefore: plan.before && siemensPerMetre.of(sum.before),
    backgroundAfter: plan.after && siemensPerMetre.of(sum.after),
    peakRise,
    peakConcentration,
    peakChloride,
    arrival: time[plan.arrival] as number,
    peak: time[sum.peakRow] as number,
    end: time[plan.end] as number,
    window: {
      from: time[plan.summed[0]] as number,
      to: time[plan.summed[1]] as number,
    },
    missingTail: missing > 0 ? areaOf(missing) : undefined,
    estimatedShare: sum.estimatedShare,
    faults: clean.faults,
    readings: Column.wrap("conductivity", clean.values, clean.quality, { axis }),
    baseline: Column.wrap("conductivity", sum.baseline, new Uint8Array(time.length), { axis }),
    time,
    notices,
  };
}

const areaOf = (si: number): Quantity<"conductivity time"> =>
  coherentUnit("conductivity time").of(si);
