import { firstPrinciples, type Inputs, NonPhysicalError, type Notice } from "@leat/formula";
import {
  type AnyQuantity,
  format,
  formatFeetAndInches,
  inch,
  litrePerSecond,
  metre,
  type Quantity,
  QuantityError,
  type Unit,
} from "@leat/quantity";

import {
  type ArgsWithout,
  type FlowFormula,
  flowOf,
  type NameOf,
  type WeirOptions,
  withEquationUncertainty,
} from "./weir-formula.ts";

/** The ruler on a weir, and how far it is read. */
export interface Ruler {
  /** Unit that the ruler is divided in: `inch`, `foot`, `millimetre`. */
  readonly unit: Unit<"length">;
  /** Its smallest division: 1/16 in, 1 mm. */
  readonly division: Quantity<"length">;
  /** Lowest mark of the table, over the crest; the first mark at or above it is the first line. */
  readonly from: Quantity<"length">;
  /** Highest mark of the table, over the crest. */
  readonly to: Quantity<"length">;
  /** A reading is within this of the water, either way; half a division where it is left out. */
  readonly reading?: Quantity<"length"> | undefined;
  /** Half the 95 % interval of the ruler's zero against the crest; none where it is left out. */
  readonly zero?: Quantity<"length"> | undefined;
}

/** A line of a rating table. */
export interface RatingLine {
  /** The mark on the ruler, as it is printed: `3 1/2"`, `85 mm`. */
  readonly mark: string;
  /** The head at the mark, in the ruler's unit. */
  readonly head: Quantity<"length">;
  /** The flow with its uncertainty; nothing where the form has none at this head. */
  readonly flow: Quantity<"volume flow"> | undefined;
  /** True where the head lies within every limit of the formula. */
  readonly valid: boolean;
  /** Each limit that is exceeded, and why there is no flow where there is none. */
  readonly notices: readonly Notice[];
}

/** More lines than anybody pins to a board. */
const mostLines = 10_000;

/**
 * The rating table of a weir, a line for each division of the ruler on it.
 *
 * Each flow carries the reading of the ruler (source `ruler reading`), its zero (`ruler zero`, the same in all lines),
 * whatever is uncertain about the notch (as sources of the arguments), and the equation's own uncertainty
 * (`equation <id>`). A head outside the formula's range is a line like any other, with `valid: false` and the notices
 * that say why: nothing is dropped.
 *
 * @param formula - A weir formula.
 * @param args - Its inputs without the head.
 * @param ruler - Its divisions, from where to where.
 * @param options - Assumptions, the equation's own uncertainty. Notices stand in the lines and are not called.
 * @returns The lines, from low to high.
 * @throws NonPhysicalError for a division not above zero, an end below the crest or below the beginning; QuantityError
 * for a wrong kind or a missing input, and `size` for more than 10 000 lines.
 * @example
 * ```ts
 * import { francisContractedDischarge, ratingTable } from "@leat/flow-measurement";
 * import { each, foot, format, gallonPerMinute, inch } from "@leat/quantity";
 *
 * const notch = {
 *   notchWidth: inch.of(16),
 *   contractions: each.of(2),
 *   crestHeight: foot.of(1),
 *   approachWidth: foot.of(4),
 * };
 * const lines = ratingTable(francisContractedDischarge, notch, {
 *   unit: inch,
 *   division: inch.of(1 / 8),
 *   from: inch.of(2),
 *   to: inch.of(5),
 * });
 * const line = lines[12];
 * line?.mark; // => '3 1/2"'
 * line?.flow && format(line.flow, gallonPerMinute, { plusMinus: true }); // => "300 ± 13 gal/min (k = 1.96)"
 * lines.filter(({ valid }) => !valid).map(({ mark }) => mark).join(", "); // => '2", 2 1/8", 2 1/4", 2 3/8"'
 * ```
 */
export function ratingTable<const I extends Inputs>(
  formula: FlowFormula<I>,
  args: ArgsWithout<I, "head" & NameOf<I>>,
  ruler: Ruler,
  options: WeirOptions = {},
): RatingLine[] {
  const { unit, from, to } = ruler;
  const division = ruler.division.in(unit);
  refuseRuler(ruler, division);
  const half = ruler.reading ?? ruler.division.times(0.5);
  // A hair for the rounding of a division such as 0.1 in a from such as 0.3.
  const first = Math.ceil(from.in(unit) / division - 1e-9);
  const last = Math.floor(to.in(unit) / division + 1e-9);
  if (last - first >= mostLines) {
    throw new QuantityError(
      "size",
      `rating table: ${last - first + 1} lines are more than ${mostLines}; take a coarser division or less of the ruler`,
    );
  }
  const lines: RatingLine[] = [];
  for (let k = first; k <= last; k++) {
    const head = unit.of(tidy(k, division));
    lines.push(line(formula, args, head, half, ruler, options, lines.length === 0));
  }
  return lines;
}

/** k divisions without the rounding of a fraction: 3 tenths are 0.3. */
function tidy(k: number, division: number): number {
  return Number((k * division).toPrecision(14));
}

function line<const I extends Inputs>(
  formula: FlowFormula<I>,
  args: object,
  head: Quantity<"length">,
  half: Quantity<"length">,
  ruler: Ruler,
  { onAssumed, equationUncertainty }: WeirOptions,
  isFirst: boolean,
): RatingLine {
  const notices: Notice[] = [];
  let read = head.within(half, "ruler reading");
  if (ruler.zero) read = read.plusMinus(ruler.zero, "ruler zero");
  const onNotice = (notice: Notice): void => void notices.push(notice);
  let flow: Quantity<"volume flow"> | undefined;
  try {
    flow = flowOf(
      formula,
      { ...args, head: read },
      // What is assumed of the notch is the same in every line and is told once.
      { onNotice, ...(isFirst && { onAssumed }) },
    );
  } catch (error) {
    // A head that the form has no value at is a line without a flow; anything else is the caller's to know.
    if (!(error instanceof NonPhysicalError) || error.notices.some(({ path }) => path.length > 0))
      throw error;
    notices.push(...error.notices);
  }
  const zero = ruler.unit.of(0);
  if (flow && (head.equals(zero) ? !isNone(flow) : isNone(flow) || isBelow(flow))) {
    notices.push(noFlow(formula.id, head, flow));
    flow = undefined;
  }
  return {
    mark: markOf(head, ruler),
    head,
    flow: flow && withEquationUncertainty(formula.id, flow, equationUncertainty),
    valid: notices.length === 0,
    notices,
  };
}

function isNone(flow: AnyQuantity): boolean {
  return flow["~si"] === 0;
}

function isBelow(flow: AnyQuantity): boolean {
  return flow["~si"] < 0;
}

/** At no head a head correction leaves a flow, and far up a contraction takes all of the width: neither is a flow. */
function noFlow(id: string, head: AnyQuantity, flow: Quantity<"volume flow">): Notice {
  return {
    code: `${id}/no-flow`,
    severity: "caution",
    path: ["head"],
    message: `${id}: at head = ${String(head)} the form gives ${format(flow, litrePerSecond, 2)}, which is no flow over a weir. Read the table where it is valid.`,
    actual: String(head),
    source: firstPrinciples.at("water runs over a crest where it stands above it"),
  };
}

/** The mark as the ruler has it: fractions of an inch where it is divided by halves, else a number and its unit. */
function markOf(head: Quantity<"length">, { unit, division }: Ruler): string {
  const parts = Math.round(1 / division.in(inch));
  const halves =
    parts <= 128 && Number.isInteger(Math.log2(parts)) && division.equals(inch.of(1 / parts));
  return unit.symbol === inch.symbol && halves
    ? formatFeetAndInches(head, parts)
    : format(head, unit);
}

function refuseRuler({ from, to, division }: Ruler, divisionNumber: number): void {
  const problems: Notice[] = [];
  const say = (path: string, message: string, actual: AnyQuantity): void =>
    void problems.push({
      code: "non-physical",
      severity: "stop",
      path: [path],
      message: `rating table: ${path} = ${String(actual)} ${message}`,
      actual: String(actual),
    });
  if (!(divisionNumber > 0))
    say("division", "is not above zero. Give the ruler's smallest division.", division);
  if (from.lessThan(metre.of(0)))
    say("from", "is below the crest. Begin at the crest, or above it.", from);
  if (to.lessThan(from))
    say("to", `is below from = ${String(from)}. Give the ends the other way round.`, to);
  if (problems.length > 0) throw new NonPhysicalError(problems);
}
