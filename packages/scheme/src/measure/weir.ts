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
import { each, inch, millimetre, type Quantity } from "@leat/quantity";

import { bothFlows } from "../both.ts";
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
  readonly table: (ruler: Ruler) => RatingLine[];
  /** Level that a flow needs, with room for what is uncertain; nothing where the form has none for it. */
  readonly level: (flow: Quantity<"volume flow">) => Quantity<"length"> | undefined;
} {
  const at = (head: Quantity<"length">): Args<I> => ({ ...args, head }) as unknown as Args<I>;
  return {
    id: formula.id,
    source: formula.definition.source,
    keeps: (head) => limitNotices(formula, at(head) as never).length === 0,
    flow: (taking, head) => taking.call(formula as never, at(head) as never) as never,
    slip: (head) => likelySlip(formula, args as never, head),
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
): Weir[] {
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
  const form = forms.find(({ keeps }) => keeps(head)) ?? (forms[0] as Weir);
  const free = form.flow(taking, head);
  tellSlip(taking, form, head, ["notch", "head"]);
  if (notch.shape === "rectangular") otherForms(taking, notch, { ...at, head }, free);
  const value = drowned(taking, notch, at, head, free);
  return { by: called[notch.shape], value: withEquation(taking, form, value, "notch") };
}

const headHint = {
  what: "head over the notch",
  how: "read the head to a finer division, from a level peg four heads upstream",
};

/** Sill and channel, as they are given or as a fully contracted notch has them. */
function surroundings(
  taking: Taking,
  { shape, width, sill, channel }: OpeningSurvey,
  head: Quantity<"length">,
): { crestHeight: Quantity<"length">; approachWidth: Quantity<"length"> } {
  const open = shape === "V" ? head.times(5) : (width as Quantity<"length">).plus(head.times(4));
  if (!sill)
    taking.assume(
      ["notch", "sill"],
      "sill over the bed of the channel",
      `${head.times(2.5).toString()}: deep enough for the formula; look at it`,
      practice("deep enough for the formula"),
    );
  if (!channel)
    taking.assume(
      ["notch", "channel"],
      "width of the channel",
      `${open.toString()}: fully contracted; look at it`,
      practice("fully contracted"),
    );
  return { crestHeight: sill ?? head.times(2.5), approachWidth: channel ?? open };
}

/** A head that no such notch has, and that one in another unit would: a slip of the pencil. */
function tellSlip(
  taking: Taking,
  { slip, id }: Weir,
  head: Quantity<"length">,
  path: readonly string[],
): void {
  const likely = slip(head);
  if (likely === undefined) return;
  taking.tell({
    code: "head-unit",
    severity: "stop",
    path,
    message: `${likely} The flow it gives cannot be used: look at the ruler again and correct the survey (${id}).`,
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

/** The equation's own ±, by the source that states it. */
function withEquation(
  taking: Taking,
  { id }: Weir,
  value: Quantity<"volume flow">,
  at: string,
): Quantity<"volume flow"> {
  const known = weirEquationUncertainty[id];
  if (!known) throw new Error(`nothing is known of the uncertainty of ${id}`);
  const share = known.relative["~si"];
  taking.assume(
    [at],
    "spread of the weir's discharge equation",
    `± ${Number((100 * share).toPrecision(2))} %, for a plate that is sharp, plumb and level`,
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
  taking.tell({
    code: "notch-forms",
    severity: "note",
    path: ["notch"],
    message: `read as a suppressed weir (no side contractions, as shop tables are) the notch gives ${bothFlows(suppressed["~si"])}; with both ends contracted ${bothFlows(contracted["~si"])}, because the water narrows past the edges.${acrossAll ? ` Rehbock's form for a weir across the whole channel gives ${bothFlows(rehbockDischarge(across, quiet)["~si"])}.` : ""} The standard form for its own width ratio is used: ${bothFlows(standard["~si"])}.`,
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
  const form = weir(broadCrestedDischarge, {
    notchWidth: crest.width,
    crestHeight: crest.sill,
    crestLength: crest.length,
    ...(crest.tailWater && { tailwaterHead: crest.tailWater }),
    gravity,
  });
  const value = form.flow(taking, head);
  tellSlip(taking, form, head, ["crest", "head"]);
  return { by: "broad crest", value: withEquation(taking, form, value, "crest") };
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

/**
 * The flow board of an opening: a line for each division of its ruler. The form is the one that holds over the most of
 * the ruler: a board has one form.
 */
export function boardOf(
  board: BoardSurvey,
  { gravity }: Conditions,
  customary: boolean,
  stays?: Quantity<"volume flow">,
): Board {
  const { sill: crestHeight, channel: approachWidth, division, from, to } = board;
  const ruler = { unit: customary ? inch : millimetre, division, from, to };
  const tables = formsOf(board, { crestHeight, approachWidth, gravity }).map((form) => ({
    form,
    lines: form.table(ruler),
  }));
  const [first, ...others] = tables;
  if (!first) throw new Error("an opening without a form");
  const best = others.reduce((a, b) => (held(b.lines) > held(a.lines) ? b : a), first);
  const level = stays && best.form.level(stays);
  return {
    name: called[board.shape],
    source: best.form.source,
    lines: best.lines,
    ...(stays && { stays: { flow: stays, ...(level && { level }) } }),
  };
}

function held(lines: readonly RatingLine[]): number {
  return lines.filter(({ valid }) => valid).length;
}

/** The board of a notch that was measured: from a division to half as much again as was read. */
export function boardOfNotch(notch: NotchSurvey, customary: boolean): BoardSurvey | undefined {
  const { sill, channel, head, tailWater } = notch;
  if (!sill || !channel || tailWater) return undefined;
  const reading = head.reading();
  const unit = head["~unit"];
  const named = reading && !reading.assumed && unit ? unit.toSI(reading.resolution) : undefined;
  const usual = customary ? inch.of(1 / 8)["~si"] : millimetre.of(1)["~si"];
  // A table has some thirty lines: a finer ruler is tabulated at every second, fifth, tenth division and so on.
  const step = [1, 2, 5, 10, 20, 50]
    .map((n) => n * (named ?? usual))
    .find((d) => (1.5 * head["~si"]) / d <= 60);
  if (step === undefined) return undefined;
  const division = (customary ? inch : millimetre).of(
    step / (customary ? inch : millimetre).toSI(1),
  );
  return { ...notch, sill, channel, division, from: division, to: head.times(1.5) };
}
