import { type CallOptions, type Notice } from "@leat/formula";
import type { Quantity } from "@leat/quantity";

import { refusal } from "../record/refusal.ts";
import { meanOfRatios } from "./mean-of-ratios.ts";
import { ratioOfSums } from "./ratio-of-sums.ts";
import { particleDataGroup } from "./sources.ts";
import type { FactorTransfer } from "./transfer.ts";
import {
  contributionsOf,
  excessOf,
  judge,
  ownSources,
  share,
  sizeOf,
  type VisitFit,
  withSpread,
} from "./visit-fit.ts";
import { type PairedVisit, pairVisits, seenFlows, type VisitsInput } from "./visits.ts";
import { weightedRatio } from "./weighted-ratio.ts";

/** A formula that makes one factor of visits. */
export type RatioFormula = typeof ratioOfSums | typeof meanOfRatios | typeof weightedRatio;

/** Visits, the gauge's record, and how a factor is made of them. */
export interface ScaleByVisitsInput extends VisitsInput {
  /** Begins the names of its sources of uncertainty: give each transfer of a survey its own. */
  readonly name: string;
  /**
   * Which mean: `ratioOfSums` (the default, right for volumes), `meanOfRatios` (every visit the same say, right for low
   * flows) or `weightedRatio` (by the uncertainties that the visits have).
   */
  readonly by?: RatioFormula | undefined;
}

/**
 * A transfer by a factor from flows that were measured at the site, each against the gauge on the same day.
 *
 * The factor has the uncertainty that the visits' and the record's sources give it: what the gauge's rating has wrong
 * at the visits cancels when the same record is carried over. Where the visits scatter more than they say, the scatter counts, with
 * Student's factor. Another visit that agrees narrows it: under `weightedRatio` always, under the others where the visits are
 * measured alike.
 *
 * @param input - Visits, the gauge's daily record, a name, and which mean.
 * @param options - Notices.
 * @returns The transfer, each visit's residual, the one that lies farthest off, and the visits that were not used.
 * @throws NonPhysicalError no visit on a recorded day, or one alone that says nothing of its uncertainty; a visit without an
 * uncertainty of its own under `weightedRatio`; a flow below zero, by its row.
 * @throws OutOfValidityError fewer than three visits, and `onNotice` is absent.
 * @example
 * ```ts
 * import { meanOfRatios, scaleByVisits } from "@leat/hydrology";
 * import { day, format, litrePerSecond, one } from "@leat/quantity";
 * import { Column, TimeAxis } from "@leat/quantity/column";
 *
 * const axis = TimeAxis.regular({ start: "2024-06-01", step: day.of(1), count: 4, utcOffset: "+10:00" });
 * const record = Column.of(litrePerSecond, [200, 240, 180, 160], { axis });
 * const visits = [21, 23.5, 18.4, 15.8].map((flow, i) => ({ at: `2024-06-0${i + 1}`, flow: litrePerSecond.of(flow) }));
 * const { transfer, farthest } = scaleByVisits({ name: "creek", visits, record, by: meanOfRatios });
 * format(transfer.factor, one, { plusMinus: true }); // => "0.1010 ± 0.0052 (k = 1.96)"
 * farthest; // => 0
 * ```
 */
export function scaleByVisits(
  input: ScaleByVisitsInput,
  options: CallOptions = {},
): VisitFit<FactorTransfer> {
  const { name, by = ratioOfSums } = input;
  const { pairs, unpaired, notices: found } = pairVisits(input);
  const notices: Notice[] = [...found];
  requirePairs(pairs, input.visits.length);
  const own = ownSources(pairs);
  const weights = pairs.map((pair) => weightOf(by, pair, own));
  const factor = call(by, pairs, weights, {
    ...options,
    onNotice: options.onNotice && ((notice) => notices.push(notice)),
  });

  // Each of the three is the mean of the ratios of least squares under its own weights.
  const k = factor["~si"];
  let total = 0;
  let squares = 0;
  let departures = 0;
  const ratios = pairs.map(({ flow, gaugedFlow }) => flow["~si"] / gaugedFlow["~si"]);
  for (const [i, r] of ratios.entries()) {
    const weight = weights[i] as number;
    total += weight;
    squares += weight * (r - k) * (r - k);
    departures += (r / k - 1) * (r / k - 1);
  }
  const freedom = pairs.length - 1;
  const scatter = freedom > 0 ? Math.sqrt(squares / total / freedom) / k : 0;
  const said = sizeOf(contributionsOf(factor, k), own);
  const model = by === weightedRatio ? 1 / Math.sqrt(total) : said;
  if (freedom === 0 && said === 0) {
    throw refusal(
      "visits/one-alone",
      ["visits"],
      "scale-by-visits: one visit without an uncertainty says nothing of how far off it is. Give its flow an uncertainty, or measure again.",
    );
  }
  if (model > 0 && scatter > model) notices.push(scatterNotice(scatter / model));
  const judged = judge(
    pairs.map(({ visit, at }, i) => ({
      visit,
      at,
      size: Math.sqrt(weights[i] as number) * ((ratios[i] as number) - k),
      leverage: (weights[i] as number) / total,
      departure: (ratios[i] as number) / k - 1,
    })),
    1,
  );
  notices.push(...judged.notices);
  for (const notice of notices) options.onNotice?.(notice);
  return {
    transfer: {
      form: "factor",
      name,
      factor: withSpread(
        factor,
        excessOf({ own: said, model, scatter, freedom }),
        `${name}: scatter of the visits`,
      ),
      seen: seenFlows(pairs),
    },
    by: by.id,
    residuals: pairs.map((pair, i) => ({
      ...pair,
      expected: pair.gaugedFlow.times(factor).as("volume flow"),
      departure: share((ratios[i] as number) / k - 1),
    })),
    farthest: judged.farthest,
    unpaired,
    scatter: freedom > 0 ? share(Math.sqrt(departures / freedom)) : undefined,
    notices,
  };
}

/** Under its own weights each of the formulas is a mean of least squares. */
function weightOf(by: RatioFormula, pair: PairedVisit, own: ReadonlySet<string>): number {
  if (by === meanOfRatios) return 1;
  if (by === ratioOfSums) return pair.gaugedFlow["~si"];
  const spread = spreadOf(pair, own);
  return 1 / (spread * spread);
}

/** The uncertainty of a visit's ratio that no other visit shares, as a share of it. */
function spreadOf({ visit, at, flow, gaugedFlow }: PairedVisit, own: ReadonlySet<string>): number {
  const size = Math.hypot(
    sizeOf(contributionsOf(flow, flow["~si"]), own),
    sizeOf(contributionsOf(gaugedFlow, gaugedFlow["~si"]), own),
  );
  if (!(size > 0 && Number.isFinite(size))) {
    throw refusal(
      "visits/no-weight",
      ["visits", visit, "flow"],
      `scale-by-visits: visit ${visit}, ${at}, has ${flow["~si"] > 0 ? "no uncertainty of its own" : "no flow, of which an uncertainty is no share"}, and cannot be weighed. Give its flow one (\`12 ± 1 L/s\`), or take meanOfRatios.`,
    );
  }
  return size;
}

function call(
  by: RatioFormula,
  pairs: readonly PairedVisit[],
  weights: readonly number[],
  options: CallOptions,
): Quantity<"ratio"> {
  if (by !== weightedRatio) {
    const plain = by as typeof ratioOfSums;
    return plain({ visits: pairs.map(({ flow, gaugedFlow }) => ({ flow, gaugedFlow })) }, options);
  }
  return weightedRatio(
    {
      visits: pairs.map(({ flow, gaugedFlow }, i) => ({
        flow,
        gaugedFlow,
        spread: share(1 / Math.sqrt(weights[i] as number)),
      })),
    },
    options,
  );
}

/**
 * Refuses visits of which none can be used.
 *
 * @param pairs - Those that can.
 * @param given - How many there were.
 */
function requirePairs(pairs: readonly PairedVisit[], given: number): void {
  if (pairs.length > 0) return;
  throw refusal(
    "visits/none",
    ["visits"],
    given === 0
      ? "scale-by-visits: there are no visits. Measure the site on days that the gauge records."
      : `scale-by-visits: none of the ${given} visits falls on a day that the gauge recorded. Measure on days that it does, or choose another gauge.`,
    { actual: "0", limit: "at least 1" },
  );
}

function scatterNotice(times: number): Notice {
  return {
    code: "visits/beyond-uncertainty",
    severity: "note",
    path: ["visits"],
    message: `scale-by-visits: the visits scatter ${times.toPrecision(3)} times as much as their uncertainties explain, and the scatter is taken. The streams differ from day to day, or a measurement is worse than it says.`,
    actual: times.toPrecision(3),
    limit: "at most 1",
    source: particleDataGroup.at("scale factor", "secondary"),
  };
}
