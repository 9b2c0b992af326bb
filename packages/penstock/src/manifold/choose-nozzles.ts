import { type CallOptions, firstPrinciples, type Notice } from "@leat/formula";
import { type NozzleRig, type NozzleSearch, searchNozzles, type SetFigures } from "@leat/nozzles";
import { one, type Quantity } from "@leat/quantity";

import { fault, refuseIf } from "../refusal.ts";
import { jetsPowerOf, shownLike } from "./jet-sets.ts";
import { ManifoldPlan } from "./manifold-plan.ts";
import {
  type Numbers,
  numbersOf,
  requireQuantity,
  type Structure,
  structureOf,
  what,
} from "./manifold-structure.ts";
import type { Manifold } from "./manifold.ts";
import { solveManifoldPlan } from "./solve-manifold-plan.ts";
import { type FlowRange, rangeOf } from "./valve-card.ts";

/** What nozzles are chosen for. */
export interface NozzleChoiceInput extends Manifold, FlowRange {
  /** Diameters that can be drilled or bought. The nozzles of the penstock itself give way to them. */
  readonly sizes: readonly Quantity<"length">[];
  /** Least share of any flow of the range that is to be used. */
  readonly share: Quantity<"ratio">;
  /** Least flow of an open jet over the greatest that is open with it, for a wheel that must not be pushed to one side. */
  readonly balance?: Quantity<"ratio"> | undefined;
  /** Pitch diameter of the wheel, and its limits over the diameter of a jet. */
  readonly wheel?:
    | {
        readonly pitchDiameter: Quantity<"length">;
        readonly least?: Quantity<"ratio"> | undefined;
        readonly most?: Quantity<"ratio"> | undefined;
      }
    | undefined;
  /** How many choices are wanted; 3 by default. */
  readonly most?: number | undefined;
  /** Sets of jets after which the search stops where it is; two million by default, some ten seconds. */
  readonly mostRuns?: number | undefined;
}

/** Nozzles, and how well they meet a range of flows. */
export interface NozzleChoice {
  /** Diameter of each jet in the order of the tree, as it stands among the sizes. Jets behind a shut valve keep theirs. */
  readonly diameters: readonly Quantity<"length">[];
  /** Least share of any flow of the range that they use. */
  readonly share: Quantity<"ratio">;
}

/** What was chosen. */
export interface NozzleChoices {
  /** Nozzles that meet the share, those that use the most first. */
  readonly choices: readonly NozzleChoice[];
  /** What comes nearest, where none meets it. */
  readonly nearest: NozzleChoice | undefined;
  /** Sets of jets that were solved. */
  readonly runs: number;
  /** A stop where none meets the share, a caution where the search was cut short. */
  readonly notices: readonly Notice[];
}

/**
 * Nozzles from a list of sizes, one for each jet, so that any flow of a range is met: a set of them passes at most that flow, and at
 * least the stated share of it.
 *
 * Every set is solved with the pipe and the hoses that it hangs on; a set that passes more than another and gives less power is not
 * counted. The search leaves nothing out that could be better. `valveCard` then tells which jets to open when.
 *
 * @param input - The penstock, sizes, range, share and limits.
 * @param options - Told of a share that is not met, of a search that was cut short, and of what is assumed.
 * @returns The choices, the best first.
 * @throws NonPhysicalError what `solveManifold` refuses of the penstock; a range, a share or a limit that is none; no size that fits.
 * @example
 * ```ts
 * import { chooseNozzles, valveCard } from "@leat/penstock";
 * import { readPipe } from "@leat/pipe-sizes";
 * import { celsius, inch, litrePerSecond, metre, millimetre, one, percent, point } from "@leat/quantity";
 *
 * const level = (height: number) => point("site datum", metre.of(height), "jets");
 * const jet = (diameter = inch.of(0.5)) => ({
 *   pipe: { insideDiameter: millimetre.of(50), roughness: millimetre.of(0.01) },
 *   length: metre.of(1).as("pipe length"),
 *   nozzle: {
 *     diameter,
 *     dischargeCoefficient: one.of(0.95).as("coefficient"),
 *     velocityCoefficient: one.of(0.97).as("coefficient"),
 *     elevation: level(0),
 *   },
 * });
 * const penstock = {
 *   water: level(30),
 *   reaches: [{ pipe: readPipe("110 mm PE100 SDR 17"), length: metre.of(180).as("pipe length") }],
 *   temperature: celsius.at(8),
 *   from: litrePerSecond.of(3),
 *   to: litrePerSecond.of(10),
 * };
 * const eighths = [3, 4, 5, 6, 7].map((n) => inch.of(n / 8));
 * const { choices } = chooseNozzles({ ...penstock, branches: [jet(), jet(), jet()], sizes: eighths, share: percent.of(70) });
 * const [best] = choices;
 * best?.diameters.map(String); // => ["0.5 in", "0.625 in", "0.75 in"]
 * best?.share.in(percent).toFixed(0); // => "73"
 *
 * const { rows } = valveCard({ ...penstock, branches: best!.diameters.map((d) => jet(d)) });
 * rows.map(({ from, set }) => [from.in(litrePerSecond).toFixed(1), set?.open.map((j) => j + 1)]);
 * // => [["3.0", [1]]]
 * ```
 */
export function chooseNozzles(input: NozzleChoiceInput, options: CallOptions = {}): NozzleChoices {
  const [low, high] = rangeOf(input);
  const structure = structureOf(input, options);
  const numbers = numbersOf(
    structure,
    structure.scalars.map((each) => each["~si"]),
  );
  const asked = limitsOf(input);
  const sizes = [...input.sizes].toSorted((a, b) => a["~si"] - b["~si"]);
  const rig = new ManifoldRig(structure, numbers, sizes, asked);
  refuseIf(rig.problems());
  const search: NozzleSearch = {
    low,
    high,
    share: asked.share,
    most: input.most ?? 3,
    mostRuns: input.mostRuns ?? 2e6,
  };
  const report = searchNozzles(rig, search);
  const second =
    report.found.length === 0 ? searchNozzles(rig, { ...search, share: 0, most: 1 }) : undefined;
  const choiceOf = ({
    sizes: places,
    share,
  }: {
    readonly sizes: readonly number[];
    readonly share: number;
  }): NozzleChoice => ({
    diameters: structure.jets.map((_, j) => {
      const size = places[rig.jets.indexOf(j)];
      return size === undefined ? rig.standing(j) : (sizes[size] as Quantity<"length">);
    }),
    share: one.of(share),
  });
  const [near] = second?.found ?? [];
  const nearest = near && choiceOf(near);
  const notices = noticesOf(input, {
    met: report.found.length > 0,
    complete: report.complete && second?.complete !== false,
    nearest,
  });
  for (const notice of notices) options.onNotice?.(notice);
  return {
    choices: report.found.map(choiceOf),
    nearest,
    runs: report.runs + (second?.runs ?? 0),
    notices,
  };
}

/** Limits on plain numbers. */
interface Limits {
  readonly share: number;
  readonly balance: number;
  readonly pitchDiameter: number | undefined;
  readonly least: number;
  readonly most: number;
}

function limitsOf({ share, balance, wheel, sizes }: NozzleChoiceInput): Limits {
  const problems: Notice[] = [];
  const part = (value: Quantity<"ratio"> | undefined, path: string): number => {
    if (!value) return 0;
    const n = requireQuantity(value, [path], ["ratio"]);
    if (!(n > 0 && n <= 1)) {
      problems.push(
        fault(what, [path], `${path} = ${value.toString()} is not above 0 and at most 100 %.`),
      );
    }
    return n;
  };
  sizes.forEach((size, i) => {
    if (!(requireQuantity(size, ["sizes", i], ["length"]) > 0))
      problems.push(fault(what, ["sizes", i], `sizes.${i} = ${size.toString()} is no opening.`));
  });
  const limits = {
    share: part(share, "share"),
    balance: part(balance, "balance"),
    pitchDiameter:
      wheel && requireQuantity(wheel.pitchDiameter, ["wheel", "pitchDiameter"], ["length"]),
    least: wheel?.least ? requireQuantity(wheel.least, ["wheel", "least"], ["ratio"]) : 0,
    most: wheel?.most
      ? requireQuantity(wheel.most, ["wheel", "most"], ["ratio"])
      : Number.POSITIVE_INFINITY,
  };
  refuseIf(problems);
  return limits;
}

/** The penstock as the search sees it. */
class ManifoldRig implements NozzleRig {
  /** Jets that a nozzle is chosen for: all that no shut valve closes. */
  readonly jets: readonly number[];
  readonly positions: number;
  readonly sizes: number;
  readonly #plan: ManifoldPlan;
  readonly #structure: Structure;
  readonly #numbers: Numbers;
  readonly #given: readonly Quantity<"length">[];
  readonly #limits: Limits;
  readonly #alike: readonly number[];

  constructor(
    structure: Structure,
    numbers: Numbers,
    sizes: readonly Quantity<"length">[],
    limits: Limits,
  ) {
    this.#structure = structure;
    this.#numbers = numbers;
    this.#given = sizes;
    this.#limits = limits;
    this.#plan = new ManifoldPlan(numbers);
    this.jets = structure.jets
      .map((_, j) => j)
      .filter((j) => !structure.pipes[structure.jets[j]!.pipe]!.shut);
    this.positions = this.jets.length;
    this.sizes = sizes.length;
    const marks = this.jets.map((j) => {
      const { diameter: _, pipe, ...nozzle } = numbers.jets[j]!;
      return JSON.stringify([numbers.pipes[pipe], nozzle, numbers.velocityCoefficients[j]]);
    });
    this.#alike = marks.map((mark) => marks.indexOf(mark));
  }

  alike(position: number): number {
    return this.#alike[position]!;
  }

  /** Whether an opening is no wider than its hose, and its jet as narrow and as wide as the wheel asks. */
  fits(position: number, size: number): boolean {
    const j = this.jets[position]!;
    const { pipe, dischargeCoefficient } = this.#numbers.jets[j]!;
    const diameter = this.#given[size]!["~si"];
    const { pitchDiameter, least, most } = this.#limits;
    const jet = diameter * Math.sqrt(dischargeCoefficient / this.#numbers.velocityCoefficients[j]!);
    const ratio = pitchDiameter === undefined ? undefined : pitchDiameter / jet;
    return (
      diameter <= this.#numbers.pipes[pipe]!.bore &&
      (ratio === undefined || (ratio >= least && ratio <= most))
    );
  }

  put(position: number, size: number): void {
    this.#plan.setNozzle(this.jets[position]!, this.#given[size]!["~si"]);
  }

  run(open: number): SetFigures | undefined {
    const plan = this.#plan;
    plan.open.fill(0);
    for (let k = 0; k < this.positions; k++) plan.open[this.jets[k]!] = (open >> k) & 1;
    solveManifoldPlan(plan);
    if (plan.dry >= 0 || !this.#isEven()) return undefined;
    const { density, velocityCoefficients } = this.#numbers;
    return { flow: plan.total, power: jetsPowerOf(plan, density, velocityCoefficients) };
  }

  /** What a jet that nothing is chosen for has. */
  standing(jet: number): Quantity<"length"> {
    const { scalars, pipes } = this.#structure;
    return scalars[5 + 5 * pipes.length + 4 * jet] as unknown as Quantity<"length">;
  }

  /** Refuses what nothing can be chosen for. */
  problems(): Notice[] {
    const problems: Notice[] = [];
    if (this.positions === 0)
      problems.push(fault(what, ["branches"], "every jet is behind a shut valve: open one."));
    this.jets.forEach((j, position) => {
      if (this.#given.some((_, size) => this.fits(position, size))) return;
      const { path, name } = this.#structure.jets[j]!;
      problems.push(
        fault(
          what,
          [...path, "diameter"],
          `none of the ${this.sizes} sizes fits ${name}: an opening must be no wider than its hose, and within the limits of the wheel. Give other sizes.`,
        ),
      );
    });
    return problems;
  }

  #isEven(): boolean {
    const { jetFlow, open } = this.#plan;
    let [least, greatest] = [Number.POSITIVE_INFINITY, 0];
    for (let j = 0; j < open.length; j++) {
      if (open[j] === 0) continue;
      least = Math.min(least, jetFlow[j]!);
      greatest = Math.max(greatest, jetFlow[j]!);
    }
    return least >= this.#limits.balance * greatest;
  }
}

function noticesOf(
  { share, from, to, mostRuns = 2e6 }: NozzleChoiceInput,
  search: {
    readonly met: boolean;
    readonly complete: boolean;
    readonly nearest: NozzleChoice | undefined;
  },
): Notice[] {
  const notices: Notice[] = [];
  if (!search.met) {
    const { nearest } = search;
    notices.push({
      code: `${what}/share-not-met`,
      severity: "stop",
      path: ["share"],
      message: nearest
        ? `${what}: no nozzles of these sizes use ${share.toString()} of every flow from ${from.toString()} to ${to.toString()}; the nearest, ${nearest.diameters.map(String).join(", ")}, use ${shownLike(share, nearest.share["~si"])}. Give more sizes, more jets, or ask for less.`
        : `${what}: no nozzles of these sizes run on ${from.toString()}. Give smaller ones.`,
      ...(nearest && { actual: shownLike(share, nearest.share["~si"]) }),
      limit: `at least ${share.toString()}`,
      source: firstPrinciples.at("every set of jets, solved"),
    });
  }
  if (!search.complete) {
    notices.push({
      code: `${what}/search-cut-short`,
      severity: "caution",
      path: ["mostRuns"],
      message: `${what}: the search stopped after ${mostRuns} sets of jets; other nozzles may do better. Give fewer sizes, a limit of balance, or a greater mostRuns.`,
    });
  }
  return notices;
}
