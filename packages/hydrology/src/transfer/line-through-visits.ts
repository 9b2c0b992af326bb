import { type CallOptions, type Notice } from "@leat/formula";

import { refusal } from "../record/refusal.ts";
import { organicLine } from "./organic-line.ts";
import type { regressionLine } from "./regression-line.ts";
import { zhangKroll } from "./sources.ts";
import type { LineTransfer } from "./transfer.ts";
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
import {
  type PairedVisit,
  pairVisits,
  seenFlows,
  type UnpairedVisit,
  type VisitsInput,
} from "./visits.ts";

/** A formula that draws a line in logarithms through visits. */
export type LineFormula = typeof organicLine | typeof regressionLine;

/** Visits, the gauge's record, and how a line is drawn through them. */
export interface LineThroughVisitsInput extends VisitsInput {
  /** Begins the names of its sources of uncertainty: give each transfer of a survey its own. */
  readonly name: string;
  /** Which line: `organicLine` (the default: it keeps the variance, for duration curves and low flows) or `regressionLine`. */
  readonly by?: LineFormula | undefined;
}

/** A line through visits, and how closely site and gauge go together. */
export interface LineFit extends VisitFit<LineTransfer> {
  /** Correlation of the logarithms, −1 to 1. */
  readonly correlation: number;
}

/** The line wants this many: with two it goes through both, and nothing is left to see its scatter by. */
const fewest = 3;

/**
 * A transfer by a power of the gauge's flow from flows that were measured at the site, each against the gauge on the same day.
 *
 * Take it where the visits span low and high water and a factor leaves residuals that go with the flow. Level and slope have the
 * uncertainty that the visits' sources give them; where the visits scatter more, the scatter counts, with Student's factor. The
 * slope of either line is taken to be as sure as that of least squares through the same visits.
 *
 * @param input - Visits, the gauge's daily record, a name, and which line.
 * @param options - Notices.
 * @returns The transfer, each visit's residual, the one that lies farthest off, and the visits that were not used.
 * @throws NonPhysicalError fewer than three visits on recorded days with flow at both; visits at one flow of the gauge; a site
 * that falls as the gauge rises; a flow below zero, by its row.
 * @throws OutOfValidityError fewer than ten visits, and `onNotice` is absent.
 * @example
 * ```ts
 * import { lineThroughVisits } from "@leat/hydrology";
 * import { day, litrePerSecond, one } from "@leat/quantity";
 * import { Column, TimeAxis } from "@leat/quantity/column";
 *
 * const axis = TimeAxis.regular({ start: "2024-06-01", step: day.of(1), count: 4, utcOffset: "+10:00" });
 * const record = Column.of(litrePerSecond, [100, 200, 400, 800], { axis });
 * const visits = [10, 22, 44, 95].map((flow, i) => ({ at: `2024-06-0${i + 1}`, flow: litrePerSecond.of(flow) }));
 * const { transfer } = lineThroughVisits({ name: "creek", visits, record }, { onNotice: () => undefined });
 * transfer.slope.in(one).toFixed(3); // => "1.075"
 * ```
 */
export function lineThroughVisits(
  input: LineThroughVisitsInput,
  options: CallOptions = {},
): LineFit {
  const { name, by = organicLine } = input;
  const paired = pairVisits(input);
  const pairs = paired.pairs.filter(({ flow }) => flow["~si"] > 0);
  const dry = paired.pairs.filter(({ flow }) => flow["~si"] === 0);
  const notices: Notice[] = [...paired.notices];
  if (dry.length > 0) notices.push(dryNotice(dry));
  requireThree(pairs, input.visits.length);
  const line = by(
    { visits: pairs.map(({ flow, gaugedFlow }) => ({ flow, gaugedFlow })) },
    { ...options, onNotice: options.onNotice && ((notice) => notices.push(notice)) },
  );
  const { slope, flow, gaugedFlow, correlation } = line;
  const [b, level, centre, r] = [slope["~si"], flow["~si"], gaugedFlow["~si"], correlation["~si"]];
  if (!(b > 0)) throw falling(pairs.length, b);

  const n = pairs.length;
  let xx = 0;
  for (const pair of pairs) xx += square(Math.log(pair.gaugedFlow["~si"] / centre));
  let squares = 0;
  // Squares about the line of least squares, whose slope is r times that of the organic line.
  let aboutLeast = 0;
  const leastSlope = by === organicLine ? r * b : b;
  const residuals = pairs.map((pair) => {
    const x = Math.log(pair.gaugedFlow["~si"] / centre);
    const expected = level * Math.exp(b * x);
    const size = Math.log(pair.flow["~si"] / expected);
    squares += size * size;
    aboutLeast += square(Math.log(pair.flow["~si"] / level) - leastSlope * x);
    const departure = pair.flow["~si"] / expected - 1;
    return {
      visit: pair.visit,
      at: pair.at,
      size,
      leverage: 1 / n + (x * x) / xx,
      departure,
      expected,
    };
  });
  const freedom = n - 2;
  const scatter = Math.sqrt(squares / freedom);

  const own = ownSources(pairs);
  const levels = new Map(contributionsOf(flow, level));
  for (const [id, c] of contributionsOf(gaugedFlow, centre)) {
    levels.set(id, (levels.get(id) ?? 0) - b * c);
  }
  const ofLevel = sizeOf(levels, own);
  const ofSlope = sizeOf(contributionsOf(slope, b), own);
  const slopeScatter = Math.sqrt(aboutLeast / freedom / xx) / b;
  const levelScatter = scatter / Math.sqrt(n);

  notices.push(...closeness(n, r));
  const judged = judge(residuals, 2);
  notices.push(...judged.notices);
  for (const notice of notices) options.onNotice?.(notice);
  return {
    transfer: {
      form: "line",
      name,
      slope: withSpread(
        slope,
        excessOf({ own: ofSlope, model: ofSlope, scatter: slopeScatter, freedom }),
        `${name}: scatter of the visits, slope`,
      ),
      flow: withSpread(
        flow,
        excessOf({ own: ofLevel, model: ofLevel, scatter: levelScatter, freedom }),
        `${name}: scatter of the visits, level`,
      ),
      gaugedFlow,
      seen: seenFlows(pairs),
    },
    by: by.id,
    residuals: pairs.map((pair, i) => ({
      ...pair,
      expected: flow.times((residuals[i] as { expected: number }).expected / level),
      departure: share((residuals[i] as { departure: number }).departure),
    })),
    farthest: judged.farthest,
    unpaired: [
      ...paired.unpaired,
      ...dry.map(({ visit, at, flow: none }): UnpairedVisit => ({
        visit,
        at,
        flow: none,
        why: "no flow at the site",
      })),
    ],
    scatter: share(scatter),
    correlation: r,
    notices,
  };
}

function square(x: number): number {
  return x * x;
}

function requireThree(pairs: readonly PairedVisit[], given: number): void {
  if (pairs.length >= fewest) return;
  throw refusal(
    "visits/too-few",
    ["visits"],
    `line-through-visits: ${pairs.length} of ${given} visits can be used, with flow at the site and at the gauge on a recorded day, and a line with its scatter wants ${fewest}. Measure more, or scale by a ratio.`,
    { actual: String(pairs.length), limit: `at least ${fewest}` },
  );
}

function dryNotice(dry: readonly PairedVisit[]): Notice {
  return {
    code: "visits/dry",
    severity: "caution",
    path: ["visits"],
    message: `line-through-visits: ${dry.map(({ visit, at }) => `visit ${visit}, ${at}`).join("; ")} found no flow at the site, which has no logarithm, and is left out. The line promises flow where there was none: scale by a ratio instead.`,
    actual: String(dry.length),
    limit: "0",
  };
}

function falling(n: number, b: number): Error {
  return refusal(
    "visits/falling",
    ["visits"],
    `line-through-visits: by the ${n} visits the site falls as the gauge rises (slope ${b.toPrecision(3)}). Check dates and units of the visits, or choose another gauge.`,
    { actual: b.toPrecision(3), limit: "above 0" },
  );
}

/** How close a correlation so many visits want. */
function closeness(n: number, r: number): Notice[] {
  const least = n < 10 ? 0.9 : 0.6;
  if (r >= least) return [];
  return [
    {
      code: "visits/loose",
      severity: "caution",
      path: ["visits"],
      message: `line-through-visits: the correlation of ${n} visits is ${r.toPrecision(3)}, below ${least}, from which on so few are found good enough (Zhang and Kroll). Measure more, or choose another gauge.`,
      actual: r.toPrecision(3),
      limit: `at least ${least}`,
      source: zhangKroll.at("abstract: 0.9 for five measurements, 0.6 for ten or more"),
    },
  ];
}
