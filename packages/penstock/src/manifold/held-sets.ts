import { type CallOptions, NonPhysicalError, type Notice } from "@leat/formula";
import type { Quantity } from "@leat/quantity";

import { fault } from "../refusal.ts";
import { byPower, type JetSet, jetSetOf, setsOf, shortOfWater } from "./jet-sets.ts";
import { numbersOf, requireQuantity, structureOf, what } from "./manifold-structure.ts";
import type { Manifold } from "./manifold.ts";

/** A penstock and the flow that may be taken. */
export interface HeldSetsInput extends Manifold {
  /** Flow that may be taken from the stream. */
  readonly usable: Quantity<"volume flow">;
}

/** The sets of jets that the water holds up. */
export interface HeldSets {
  /** Sets that pass no more than may be taken, the greatest power first. */
  readonly sets: readonly JetSet[];
  /** How many sets there are in all. */
  readonly tried: number;
  /** How many would pass more. */
  readonly short: number;
  /** How many hold a jet that would draw air. */
  readonly dry: number;
  /** A stop where no set is held up. */
  readonly notices: readonly Notice[];
}

/**
 * The sets of jets that a flow holds up, with what each gives: what to open when there is less water than all jets pass.
 *
 * A pipe whose jets pass more than comes in does not stay full: the level falls in it, air is drawn, and the jets give far less than
 * fewer of them would. Jets behind a shut valve are in no set.
 *
 * @param input - The penstock, and what may be taken.
 * @param options - Told of a stop where no set is held up, and of what is assumed.
 * @returns Sets by falling power, and how many others there are.
 * @throws NonPhysicalError what `solveManifold` refuses of the penstock, a flow below 0, more than 16 jets.
 */
export function heldSets(input: HeldSetsInput, options: CallOptions = {}): HeldSets {
  const { usable } = input;
  const structure = structureOf(input, options);
  const there = requireQuantity(usable, ["usable"], ["volume flow"]);
  if (!(there >= 0)) {
    throw new NonPhysicalError([
      fault(what, ["usable"], `usable = ${usable.toString()} is below 0. Check its sign.`),
    ]);
  }
  const list = structure.scalars.map((each) => each["~si"]);
  const { sets, dry } = setsOf(structure, numbersOf(structure, list));
  const held = sets.filter(({ flow }) => flow <= there).toSorted(byPower);
  const least = Math.min(...sets.map(({ flow }) => flow));
  const notices =
    held.length === 0 && sets.length > 0 ? [shortOfWater(structure, least, usable, undefined)] : [];
  for (const notice of notices) options.onNotice?.(notice);
  return {
    sets: held.map(({ open }) => jetSetOf(structure, list, open)),
    tried: sets.length + dry,
    short: sets.length - held.length,
    dry,
    notices,
  };
}
