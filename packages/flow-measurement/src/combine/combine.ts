import { type CallOptions, firstPrinciples, NonPhysicalError, type Notice } from "@leat/formula";
import { chiSquareQuantile } from "@leat/numerics";
import { type AnyQuantity, coherentUnit, coverage95, type Quantity } from "@leat/quantity";

import { fault } from "../refusal.ts";
import { particleDataGroup } from "./sources.ts";
import { chiSquare, covariances, leastVarianceWeights } from "./weights.ts";

const id = "combine";

/** One measurement of the quantity that all are of. */
export interface Measurement<K extends string> {
  /** What it is called in a notice: weir, bucket, salt. */
  readonly name: string;
  /** What it says, with its uncertainty. */
  readonly value: Quantity<K>;
}

/** Two measurements beside each other. */
export interface MeasurementPair {
  /** Name of one. */
  readonly first: string;
  /** Name of the other. */
  readonly second: string;
  /** How far they are apart, over the standard uncertainty of their difference; infinite where it has none. */
  readonly normalised: number;
}

/** What several measurements say together. */
export type Combination<K extends string> = {
  /** Weight of each, in their order; one together. */
  readonly weights: readonly number[];
  /** Sum of squared differences over their covariances. */
  readonly chiSquare: number;
  /** √(χ²/(n − 1)); absent for one alone. */
  readonly birgeRatio: number | undefined;
  /** Every two, those furthest apart first. */
  readonly pairs: readonly MeasurementPair[];
  /** The weighted mean with its uncertainty times the Birge ratio, where that is above one: to be used knowingly. */
  readonly widened: Quantity<K>;
} & (
  | {
      /** Whether they agree within what they claim. */
      readonly consistent: true;
      /** The weighted mean. */
      readonly value: Quantity<K>;
    }
  | {
      /** They do not. */
      readonly consistent: false;
      /** There is no value for measurements that disagree. */
      readonly value: undefined;
    }
);

/**
 * One value of several measurements of the same thing, if they agree.
 *
 *     x = Σ(w·x),   w for the least variance, none below zero
 *     χ² = rᵀV⁻¹r against χ²(0.95, n − 1),   Birge ratio = √(χ²/(n − 1))
 *
 * Measurements that share nothing are weighted by 1/u². What they share, a meter's calibration, a vessel, a staff, is
 * known by the names of their sources: it does not average out, and where all share it alike the weights are 1/u² of
 * the rest. No weight is below zero, so that the value lies among the measurements, which least squares with
 * covariances does not promise: of 1.5 and 1.0, 10 % each and 20 % in common, it makes 0.88, and this makes 1.0. Adding
 * a measurement never makes the uncertainty larger.
 *
 * Where they disagree, at 5 %, there is no value: a caution says which two, by how much, and `widened` is the mean with
 * its uncertainty times the Birge ratio, as a source of its own. That ratio is a rule of thumb of the trade: it widens
 * all alike, though one of them is most likely wrong. The way of Mandel and Paule, which adds the same variance to each
 * and weights anew, comes nearer to the plain mean; it is not followed, since it hides which measurement weighs.
 *
 * @param measurements - One or more, of one kind.
 * @param options - Who is told.
 * @returns Value, weights and how well they agree.
 * @throws NonPhysicalError none at all, one without an uncertainty, two of one name, with their rows.
 * @throws QuantityError measurements of different kinds.
 * @example
 * ```ts
 * import { combine } from "@leat/flow-measurement";
 * import { format, litrePerSecond } from "@leat/quantity";
 *
 * const weir = litrePerSecond.of(12.1).plusMinus(litrePerSecond.of(0.6), "weir");
 * const bucket = litrePerSecond.of(11.5).plusMinus(litrePerSecond.of(0.8), "bucket");
 * const both = combine([
 *   { name: "weir", value: weir },
 *   { name: "bucket", value: bucket },
 * ]);
 * both.consistent && format(both.value, litrePerSecond, { plusMinus: true }); // => "11.88 ± 0.48 L/s (k = 1.96)"
 * ```
 * @see JCGM 100 (GUM), annex F and H.5; Review of Particle Physics, 5.2.2
 */
export function combine<K extends string>(
  measurements: readonly Measurement<K>[],
  options: Pick<CallOptions, "onNotice"> = {},
): Combination<K> {
  const tell = options.onNotice ?? (() => undefined);
  requireMeasurements(measurements);
  const values = measurements.map(({ value }) => value["~si"]);
  const sources = measurements.map(({ value }) => value["~sources"] as ReadonlyMap<string, number>);
  const n = values.length;
  const v = covariances(sources);
  const weights = leastVarianceWeights(v);
  const mean = measurements
    .map(({ value }, i) => value.times(weights[i] as number) as AnyQuantity)
    .reduce((sum, part) =>
      (sum as Quantity<"ratio">).plus(part as Quantity<"ratio">),
    ) as Quantity<K>;
  const chi = n > 1 ? chiSquare(values, v) : 0;
  const birgeRatio = n > 1 ? Math.sqrt(chi / (n - 1)) : undefined;
  const pairs = pairsOf(measurements);
  const widened = widenedBy(mean, birgeRatio ?? 1, measurements);
  const limit = n > 1 ? chiSquareQuantile(0.95, n - 1) : 0;
  const together = { weights, chiSquare: chi, birgeRatio, pairs, widened };
  if (n > 1 && chi > limit) {
    tell(disagreed(measurements, pairs, chi, limit, birgeRatio as number));
    return { ...together, consistent: false, value: undefined };
  }
  for (const pair of pairs.filter(({ normalised }) => normalised > coverage95))
    tell(apart(measurements, pair));
  weights.forEach((weight, i) => {
    if (weight === 0) tell(weightless(measurements[i] as Measurement<K>, i));
  });
  return { ...together, consistent: true, value: mean };
}

/** A measurement, its kind forgotten. */
interface AnyMeasurement {
  readonly name: string;
  readonly value: AnyQuantity;
}

/** Standard uncertainty, all sources together. */
function spread(value: AnyQuantity): number {
  return Math.hypot(...(value["~sources"]?.values() ?? []));
}

function requireMeasurements(measurements: readonly AnyMeasurement[]): void {
  const faults: Notice[] = [];
  if (measurements.length === 0)
    faults.push(fault(id, [], "measurements = none. Give one or more."));
  measurements.forEach(({ name, value }, i) => {
    if (!(spread(value) > 0)) {
      faults.push(
        fault(
          id,
          [i, "value"],
          `${i} (${name}) = ${value.toString()} has no uncertainty, and would outweigh all others. Give it one: plusMinus(half of its 95 % interval, what is uncertain).`,
          { actual: value.toString() },
        ),
      );
    }
    if (measurements.findIndex((other) => other.name === name) < i) {
      faults.push(
        fault(id, [i, "name"], `${i} (${name}) has the name of another. Give each its own.`, {
          actual: name,
        }),
      );
    }
  });
  if (faults.length > 0) throw new NonPhysicalError(faults);
}

function pairsOf(measurements: readonly AnyMeasurement[]): MeasurementPair[] {
  return measurements
    .flatMap((a, i) =>
      measurements.slice(i + 1).map((b) => {
        const far = Math.abs(a.value["~si"] - b.value["~si"]);
        return {
          first: a.name,
          second: b.name,
          normalised: far === 0 ? 0 : far / spreadOfDifference(a.value, b.value),
        };
      }),
    )
    .toSorted((a, b) => b.normalised - a.normalised);
}

/** Standard uncertainty of a difference: what the two share in the same way is not in it. */
function spreadOfDifference(a: AnyQuantity, b: AnyQuantity): number {
  const [ofA, ofB] = [a["~sources"] ?? new Map(), b["~sources"] ?? new Map()];
  const ids = new Set<string>([...ofA.keys(), ...ofB.keys()]);
  return Math.hypot(...Array.from(ids, (of) => (ofA.get(of) ?? 0) - (ofB.get(of) ?? 0)));
}

/** The mean with what is missing to the Birge ratio as a source of its own. */
function widenedBy<K extends string>(
  mean: Quantity<K>,
  ratio: number,
  measurements: readonly Measurement<K>[],
): Quantity<K> {
  if (ratio <= 1) return mean;
  const half = mean.standardUncertainty().times(coverage95 * Math.sqrt(ratio * ratio - 1));
  return mean.plusMinus(half, `disagreement of ${measurements.map(({ name }) => name).join(", ")}`);
}

function disagreed(
  measurements: readonly AnyMeasurement[],
  pairs: readonly MeasurementPair[],
  chi: number,
  limit: number,
  ratio: number,
): Notice {
  const [worst] = pairs as [MeasurementPair];
  return {
    code: `${id}/disagree`,
    severity: "caution",
    path: [],
    message: `${id}: ${measurements.length} measurements disagree: ${between(measurements, worst)}. χ² is ${short(chi)} and ${short(limit)} would be let pass. There is no value: look for what is wrong with one of them, or take \`widened\`, ${short(ratio)} times as uncertain, knowingly.`,
    actual: short(chi),
    limit: `at most ${short(limit)}`,
    source: particleDataGroup.at("5.2.2, averages that disagree", "memory"),
  };
}

function apart(measurements: readonly AnyMeasurement[], pair: MeasurementPair): Notice {
  return {
    code: `${id}/pair-apart`,
    severity: "note",
    path: [measurements.findIndex(({ name }) => name === pair.first)],
    message: `${id}: ${between(measurements, pair)}. All together still agree.`,
    actual: short(pair.normalised),
    limit: `at most ${short(coverage95)}`,
    source: firstPrinciples.at("a normal distribution, 95 %"),
  };
}

function weightless({ name }: AnyMeasurement, i: number): Notice {
  return {
    code: `${id}/no-weight`,
    severity: "note",
    path: [i],
    message: `${id}: ${name} is given no weight: what it shares with the others leaves nothing that it could better.`,
    source: firstPrinciples.at("least variance, no weight below zero"),
  };
}

/** Two measurements, their values, and how far they are apart. */
function between(
  measurements: readonly AnyMeasurement[],
  { first, second, normalised }: MeasurementPair,
): string {
  const [a, b] = [first, second].map(
    (word) => measurements.find(({ name }) => name === word)?.value,
  ) as [AnyQuantity, AnyQuantity];
  const share =
    (100 * Math.abs(a["~si"] - b["~si"])) / Math.max(Math.abs(a["~si"]), Math.abs(b["~si"]));
  return `${first}, ${say(a)}, and ${second}, ${say(b)}, are ${short(share, 2)} % apart, ${short(normalised)} times the standard uncertainty of their difference`;
}

function say(value: AnyQuantity): string {
  if (value["~unit"]) return value.toString();
  const unit = coherentUnit(value.kind, value["~currency"]);
  return `${short(value["~si"], 4)} ${unit.symbol}`;
}

function short(n: number, digits = 3): string {
  return Number.isFinite(n) ? String(Number(n.toPrecision(digits))) : "infinitely many";
}
