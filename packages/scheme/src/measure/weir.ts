import {
  broadCrestedDischarge,
  cipollettiDischarge,
  type FlowFormula,
  francisContractedDischarge,
  francisSuppressedDischarge,
  fullWidthDrownedFactor,
  kindsvaterCarterDischarge,
  levelThatLeaves,
  likelySlip,
  partlyContractedVNotchDischarge,
  type RatingLine,
  ratingTable,
  rehbockDischarge,
  type Ruler,
  villemonteFactor,
  vNotchDischarge,
  weirEquationUncertainty,
} from "@leat/flow-measurement";
import {
  type Args,
  type Citation,
  commonPractice,
  type Inputs,
  limitNotices,
  NonPhysicalError,
  OutOfValidityError,
} from "@leat/formula";
import { each, foot, inch, metre, millimetre, type Quantity, type Unit } from "@leat/quantity";

import { bothFlows, bothHeights } from "../both.ts";
import type { BoardSurvey, CrestSurvey, NotchSurvey, OpeningSurvey } from "../survey.ts";
import type { Conditions } from "./conditions.ts";
import type { Taken, Taking } from "./measurement.ts";

const quiet = { onNotice: (): void => undefined };

/** A formula with everything that it needs but the head. */
type Weir = ReturnType<typeof weir<Inputs>>;

function weir<const I extends Inputs>(
  formula: FlowFormula<I>,
  args: Omit<Args<I>, "head">,
): {
  readonly id: string;
  readonly source: Citation;
  /** Whether every limit is kept at a head. */
  readonly keeps: (head: Quantity<"length">) => boolean;
  readonly flow: (taking: Taking, head: Quantity<"length">) => Quantity<"volume flow">;
  readonly slip: (head: Quantity<"length">) => string | undefined;
  /** Whether a head is below the least that the form holds for. */
  readonly isLow: (head: Quantity<"length">) => boolean;
  readonly table: (ruler: Ruler) => RatingLine[];
  /** Level that a flow needs, with room for what is uncertain; nothing where the form has none for it. */
  readonly level: (flow: Quantity<"volume flow">) => Quantity<"length"> | undefined;
} {
  const at = (head: Quantity<"length">): Args<I> => ({ ...args, head }) as unknown as Args<I>;
  return {
    id: formula.id,
    source: formula.definition.source,
    keeps: (head) => limitNotices(formula, at(head)).length === 0,
    flow: (taking, head) => taking.call(formula as never, at(head)) as never,
    slip: (head) => likelySlip(formula, args as never, head),
    isLow: (head) =>
      limitNotices(formula, at(head)).some(
        ({ path, limit }) => path[0] === "head" && limit?.startsWith("at least"),
      ),
    table: (ruler) => ratingTable(formula, args as never, ruler, quiet),
    level: (flow) => {
      try {
        return levelThatLeaves(formula, args as never, flow).sure;
      } catch (error) {
        // A level outside the form's range is not to be relied on, and the table says as much.
        if (error instanceof OutOfValidityError || error instanceof NonPhysicalError)
          return undefined;
        throw error;
      }
    },
  };
}

/** The forms that fit an opening, the one for a well-made weir first. */
function formsOf(
  { shape, angle, width }: OpeningSurvey,
  {
    crestHeight,
    approachWidth,
    gravity,
  }: {
    readonly crestHeight: Quantity<"length">;
    readonly approachWidth: Quantity<"length">;
    readonly gravity: Quantity<"acceleration">;
  },
): readonly [Weir, ...Weir[]] {
  const at = { crestHeight, approachWidth };
  if (shape === "V") {
    const full = weir(vNotchDischarge, { ...at, angle: angle as Quantity<"angle">, gravity });
    const right = Math.abs((angle as Quantity<"angle">)["~si"] - Math.PI / 2) < 1e-9;
    return right ? [full, weir(partlyContractedVNotchDischarge, { ...at, gravity })] : [full];
  }
  const notchWidth = width as Quantity<"length">;
  return shape === "trapezoidal"
    ? [weir(cipollettiDischarge, { ...at, notchWidth })]
    : [weir(kindsvaterCarterDischarge, { ...at, notchWidth })];
}

/** How each shape is called. */
const called = {
  V: "V notch",
  rectangular: "rectangular notch",
  trapezoidal: "trapezoidal notch",
} as const;

const practice = (place: string): Citation => commonPractice.at(place, "practice");

/** A reading over a thin-plate notch. */
export function notchFlow(
  taking: Taking,
  notch: NotchSurvey,
  { gravity }: Conditions,
): Taken<"volume flow"> {
  const head = taking.reading("notch.head", headHint, notch.head);
  const at = { ...surroundings(taking, notch, head), gravity };
  const forms = formsOf(notch, at);
  const form = forms.find(({ keeps }) => keeps(head)) ?? forms[0];
  const free = form.flow(taking, head);
  tellSlip(taking, form, head);
  if (notch.shape === "rectangular") otherForms(taking, notch, { ...at, head }, free);
  const value = drowned(taking, notch, at, head, free);
  return {
    by: called[notch.shape],
    value: withEquation(taking, form, value, ["notch"], "a plate that is sharp, plumb and level"),
  };
}

const headHint = {
  what: "head over the notch",
  how: "read the head to a finer division, from a level peg four heads upstream",
};

/** Sill and channel, as they are given or as a fully contracted notch has them. */
function surroundings(
  taking: Taking,
  { width, sill, channel }: OpeningSurvey,
  head: Quantity<"length">,
): { crestHeight: Quantity<"length">; approachWidth: Quantity<"length"> } {
  // What is assumed does not share the error of the reading.
  const h = head["~si"];
  const deep = metre.of(2.5 * h);
  const open = metre.of((width?.["~si"] ?? 0) + 4 * h);
  const { customary } = taking;
  if (!sill)
    taking.assume(
      ["notch", "sill"],
      "sill over the bed of the channel",
      `${bothHeights(deep["~si"], customary)}: deep enough for the formula; look at it`,
      practice("deep enough for the formula"),
    );
  if (!channel)
    taking.assume(
      ["notch", "channel"],
      "width of the channel",
      `${bothHeights(open["~si"], customary)}: fully contracted; look at it`,
      practice("fully contracted"),
    );
  return { crestHeight: sill ?? deep, approachWidth: channel ?? open };
}

/**
 * A head that no such notch has, and that one in another unit would: a slip of the pencil. A head that is too low may be
 * true all the same, in a dry month.
 */
function tellSlip(taking: Taking, { slip, isLow }: Weir, head: Quantity<"length">): void {
  const likely = slip(head);
  if (likely === undefined) return;
  taking.tell({
    code: "head-unit",
    severity: isLow(head) ? "caution" : "stop",
    path: ["head"],
    message: isLow(head)
      ? `${likely} Look at the ruler again: if it was read right, the water is too low for this notch.`
      : `${likely} The flow it gives cannot be used: look at the ruler again and correct the survey.`,
    actual: head.toString(),
  });
}

/** Water that stands above the sill downstream holds the flow back. */
function drowned(
  taking: Taking,
  { shape, width, tailWater }: NotchSurvey,
  { approachWidth }: { readonly approachWidth: Quantity<"length"> },
  head: Quantity<"length">,
  free: Quantity<"volume flow">,
): Quantity<"volume flow"> {
  if (!tailWater) return free;
  refuseLevel(taking, tailWater, head);
  const tailwaterHead = taking.reading(
    "notch.tailWater",
    { what: "tail water over the sill", how: "read the tail water from a peg of its own" },
    tailWater,
  );
  const factor: Quantity<"ratio"> =
    width && approachWidth["~si"] === width["~si"]
      ? taking.call(fullWidthDrownedFactor, { head, tailwaterHead })
      : taking.call(villemonteFactor, {
          head,
          tailwaterHead,
          shape: shape === "V" ? "V-notch" : shape === "trapezoidal" ? "Cipolletti" : "rectangular",
        });
  taking.facts.push({
    what: "drowned to",
    value: `${(100 * factor["~si"]).toFixed(1)} % of the free flow`,
  });
  return free.times(factor).as("volume flow");
}

/** Water that stands as high below a weir as above it does not flow over it. */
function refuseLevel(
  taking: Taking,
  tailWater: Quantity<"length">,
  head: Quantity<"length">,
): void {
  if (tailWater["~si"] < head["~si"]) return;
  throw taking.refusal(
    ["tail water"],
    `tail water = ${tailWater.toString()} is not below the head, ${head.toString()}: nothing flows. Read both again, over the same sill.`,
  );
}

/** The equation's own ±, by the source that states it. */
function withEquation(
  taking: Taking,
  { id }: Weir,
  value: Quantity<"volume flow">,
  at: readonly string[],
  built: string,
): Quantity<"volume flow"> {
  const known = weirEquationUncertainty[id];
  if (!known) throw new Error(`nothing is known of the uncertainty of ${id}`);
  const share = known.relative["~si"];
  taking.assume(
    at,
    "spread of the weir's discharge equation",
    `± ${Number((100 * share).toPrecision(2))} %, for ${built}`,
    known.source,
  );
  const source = `equation ${id}`;
  taking.ledger.hint(source, { what: "the weir's discharge equation" });
  return value.plusMinus(value.abs().times(share), source);
}

/** What the other forms of the books give beside the standard one. */
function otherForms(
  taking: Taking,
  { width }: NotchSurvey,
  at: {
    readonly head: Quantity<"length">;
    readonly crestHeight: Quantity<"length">;
    readonly approachWidth: Quantity<"length">;
  },
  standard: Quantity<"volume flow">,
): void {
  const notchWidth = width as Quantity<"length">;
  const { head, crestHeight, approachWidth } = at;
  const across = { head, notchWidth, crestHeight };
  const suppressed = francisSuppressedDischarge(across, quiet);
  const contracted = francisContractedDischarge(
    { ...across, approachWidth, contractions: each.of(2) },
    quiet,
  );
  const acrossAll = approachWidth["~si"] === notchWidth["~si"];
  const both = (flow: Quantity<"volume flow">): string => bothFlows(flow["~si"], taking.customary);
  taking.tell({
    code: "notch-forms",
    severity: "note",
    path: [],
    message: `read as a suppressed weir (no side contractions, as shop tables are) the notch gives ${both(suppressed)}; with both ends contracted ${both(contracted)}, because the water narrows past the edges.${acrossAll ? ` Rehbock's form for a weir across the whole channel gives ${both(rehbockDischarge(across, quiet))}.` : ""} The standard form for its own width ratio is used: ${both(standard)}.`,
  });
}

/** A reading over a broad crest. */
export function crestFlow(
  taking: Taking,
  crest: CrestSurvey,
  { gravity }: Conditions,
): Taken<"volume flow"> {
  const head = taking.reading(
    "crest.head",
    { ...headHint, what: "head over the crest" },
    crest.head,
  );
  if (crest.tailWater) refuseLevel(taking, crest.tailWater, head);
  const form = weir(broadCrestedDischarge, {
    notchWidth: crest.width,
    crestHeight: crest.sill,
    crestLength: crest.length,
    ...(crest.tailWater && { tailwaterHead: crest.tailWater }),
    gravity,
  });
  const value = form.flow(taking, head);
  tellSlip(taking, form, head);
  return {
    by: "broad crest",
    value: withEquation(taking, form, value, ["crest"], "a crest that is level and square"),
  };
}

/** A table of flows by the divisions of the ruler on a weir. */
export interface Board {
  /** What the table is for, in words. */
  readonly name: string;
  /** Whose equation it is. */
  readonly source: Citation;
  /** One line for each division, from low to high. */
  readonly lines: readonly RatingLine[];
  /** What must stay in the stream, where that is a flow. */
  readonly stays?: {
    readonly flow: Quantity<"volume flow">;
    /** The level over the sill that leaves it for sure; absent where the form does not reach so low or so high. */
    readonly level?: Quantity<"length">;
  };
}

/** What a board is made with. */
export interface BoardOptions {
  /** What must stay in the stream, where that is a flow. */
  readonly stays?: Quantity<"volume flow"> | undefined;
  /** A reading is within this of the water; half a division of the board where it is left out. */
  readonly reading?: Quantity<"length"> | undefined;
}

/**
 * The flow board of an opening: a line for each division of its ruler. The form is the one that holds over the most of
 * the ruler: a board has one form.
 */
export function boardOf(
  board: BoardSurvey,
  name: string,
  { gravity }: Conditions,
  { stays, reading }: BoardOptions = {},
): Board {
  const { sill: crestHeight, channel: approachWidth, division, from, to } = board;
  const ruler = { unit: rulerOf(division), division, from, to, reading };
  const tables = formsOf(board, { crestHeight, approachWidth, gravity }).map((form) => ({
    form,
    lines: form.table(ruler),
  }));
  const [first, ...others] = tables;
  if (!first) throw new Error("an opening without a form");
  const best = others.reduce((a, b) => (held(b.lines) > held(a.lines) ? b : a), first);
  const level = stays && best.form.level(stays);
  return {
    name,
    source: best.form.source,
    lines: best.lines,
    ...(stays && { stays: { flow: stays, ...(level && { level }) } }),
  };
}

function held(lines: readonly RatingLine[]): number {
  return lines.filter(({ valid }) => valid).length;
}

/** What a board is for, in words. */
export function boardName(shape: OpeningSurvey["shape"], name: string | undefined): string {
  return name === undefined ? called[shape] : `${name}, ${called[shape]}`;
}

/** The unit that a ruler is divided in, by the length that was written: a foot in tenths stays one. */
function rulerOf(length: Quantity<"length">): Unit<"length"> {
  const symbol = length["~unit"]?.symbol;
  return symbol === "in" ? inch : symbol === "ft" ? foot : millimetre;
}

/** How many divisions go to a mark of a board: an inch is halved, all else is counted in tens. */
const steps = { halves: [1, 2, 4, 8, 16], tens: [1, 2, 5, 10, 20, 50, 100] };

/** A board is no longer than this. */
const mostLines = 60;

/**
 * The board of a notch that was measured: from a division to half as much again as was read. Its ruler may be finer than
 * the board.
 */
export function boardOfNotch(
  notch: NotchSurvey,
): { board: BoardSurvey; reading: Quantity<"length"> } | undefined {
  const { sill, channel, head, tailWater } = notch;
  if (!sill || !channel || tailWater) return undefined;
  const unit = rulerOf(head);
  const reading = head.reading();
  const named = reading && !reading.assumed && head["~unit"]?.toSI(reading.resolution);
  const finest = named ? unit.fromSI(named) : ({ in: 1 / 8, ft: 0.01 }[unit.symbol] ?? 1);
  const to = head.times(1.5);
  const step = (unit === inch ? steps.halves : steps.tens)
    .map((n) => n * finest)
    .find((d) => to.in(unit) / d <= mostLines);
  if (step === undefined) return undefined;
  const division = unit.of(step);
  return {
    board: { ...notch, sill, channel, division, from: division, to },
    reading: unit.of(finest / 2),
  };
}
