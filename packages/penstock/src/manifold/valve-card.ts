import { type CallOptions, type Notice } from "@leat/formula";
import { risingSets } from "@leat/nozzles";
import { cubicMetrePerSecond, type Quantity } from "@leat/quantity";

import { fault, refuseIf } from "../refusal.ts";
import { type JetSet, jetSetOf, type PlainSet, setsOf, shownLike } from "./jet-sets.ts";
import { numbersOf, requireQuantity, structureOf, what } from "./manifold-structure.ts";
import type { Manifold } from "./manifold.ts";

/** A range of flows that may be taken. */
export interface FlowRange {
  /** Least flow that may be taken over the year. */
  readonly from: Quantity<"volume flow">;
  /** Greatest. */
  readonly to: Quantity<"volume flow">;
}

/** What a valve card is made for. */
export interface ValveCardInput extends Manifold, FlowRange {}

/** A row of a valve card: while so much may be taken, open these. */
export interface ValveCardRow extends FlowRange {
  /** What runs then; nothing does where the water holds up no set. */
  readonly set: JetSet | undefined;
}

/** Which jets to open, by what may be taken. */
export interface ValveCard {
  /** Rows by rising flow: each begins where the one before ends. */
  readonly rows: readonly ValveCardRow[];
  /** Sets that pass more than one that gives as much, and so are in no row. */
  readonly worthless: number;
  /** A stop where nothing runs on any flow of the range, a caution where nothing runs on the least. */
  readonly notices: readonly Notice[];
}

/**
 * Which jets to open for what may be taken: rows of flow, each with the set that gives the most power of those that it holds up.
 *
 * A row begins at the flow of its set, to the last digit: who reads a staff or a weir adds what that reading may be off by, or the pipe
 * empties.
 *
 * @param input - The penstock, and between which flows the stream is.
 * @param options - Told of flows that hold up nothing, and of what is assumed.
 * @returns The rows.
 * @throws NonPhysicalError what `solveManifold` refuses of the penstock, a range that is none, more than 16 jets.
 */
export function valveCard(input: ValveCardInput, options: CallOptions = {}): ValveCard {
  const [low, high] = rangeOf(input);
  const structure = structureOf(input, options);
  const list = structure.scalars.map((each) => each["~si"]);
  const { sets } = setsOf(structure, numbersOf(structure, list));
  const rising = risingSets(sets);
  const rows = cardRows(rising, low, high).map(({ from, to, set }) => ({
    from: from === low ? input.from : cubicMetrePerSecond.of(from),
    to: to === high ? input.to : cubicMetrePerSecond.of(to),
    set: set && jetSetOf(structure, list, set.open),
  }));
  const notices = idleNotices(rows, sets);
  for (const notice of notices) options.onNotice?.(notice);
  return { rows, worthless: sets.length - rising.length, notices };
}

/** Rows on plain numbers. */
function cardRows(
  rising: readonly PlainSet[],
  low: number,
  high: number,
): { from: number; to: number; set: PlainSet | undefined }[] {
  const inside = rising.filter(({ flow }) => flow > low && flow <= high);
  const first = rising.findLast(({ flow }) => flow <= low);
  const starts = [{ from: low, set: first }, ...inside.map((set) => ({ from: set.flow, set }))];
  return starts.map(({ from, set }, i) => ({ from, to: starts[i + 1]?.from ?? high, set }));
}

/** The ends of a range, or a refusal. */
export function rangeOf({ from, to }: FlowRange): [number, number] {
  const low = requireQuantity(from, ["from"], ["volume flow"]);
  const high = requireQuantity(to, ["to"], ["volume flow"]);
  if (!(low > 0 && high >= low)) {
    refuseIf([
      fault(
        what,
        ["from"],
        `from ${from.toString()} to ${to.toString()} is no range of flows above 0. Check the two.`,
      ),
    ]);
  }
  return [low, high];
}

function idleNotices(rows: readonly ValveCardRow[], sets: readonly PlainSet[]): Notice[] {
  const [first] = rows as readonly [ValveCardRow];
  if (first.set) return [];
  const never = rows.length === 1;
  const least = Math.min(...sets.map(({ flow }) => flow));
  const needs = Number.isFinite(least)
    ? `the smallest set needs ${shownLike(first.from, least)}`
    : "every set holds a jet that would draw air";
  return [
    {
      code: `${what}/nothing-runs`,
      severity: never ? "stop" : "caution",
      path: ["from"],
      message: `${what}: nothing runs from ${first.from.toString()} to ${first.to.toString()}: ${needs}. Fit a smaller nozzle, or let it stand.`,
      actual: first.from.toString(),
    },
  ];
}
