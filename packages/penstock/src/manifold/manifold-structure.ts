import { type CallOptions, firstPrinciples, type Notice } from "@leat/formula";
import {
  type AnyQuantity,
  coherentUnit,
  isPoint,
  isQuantity,
  metre,
  metrePerSecondSquared,
  type Point,
  type Quantity,
  QuantityError,
} from "@leat/quantity";
import { kinematicViscosity, waterDensity } from "@leat/water";

import { spreadOfFittings, spreadOfPipe } from "../loss/spread-of-pipe.ts";
import { fault, refuseIf } from "../refusal.ts";
import type { PlainManifold } from "./manifold-plan.ts";
import type { Hose, Manifold, ManifoldBranch, ManifoldNozzle, ManifoldPipe } from "./manifold.ts";

/** Who says so, in messages. */
export const what = "manifold";

/** A pipe of the tree without its numbers. */
export interface PipePlace {
  /** Where it stands in the input. */
  readonly path: Notice["path"];
  /** The pipe above it, −1 for the intake. */
  readonly above: number;
  /** Whether its valve is shut, or one above it. */
  readonly shut: boolean;
}

/** A jet of the tree without its numbers. */
export interface JetPlace {
  /** Where its nozzle stands in the input. */
  readonly path: Notice["path"];
  /** Its pipe. */
  readonly pipe: number;
  /** What it is called. */
  readonly name: string;
}

/** A penstock as a list of numbers, and what each of them is. */
export interface Structure {
  /** Pipes, each after the one above it. */
  readonly pipes: readonly PipePlace[];
  /** Jets. */
  readonly jets: readonly JetPlace[];
  /** Reaches in series before the branches. */
  readonly reaches: number;
  /** Every number with its spread: those of the site, of each pipe, of each jet. */
  readonly scalars: readonly AnyQuantity[];
}

/** Numbers of the site: fall, height of the gauge above the tail water, density, viscosity, gravity. */
const ofSite = 5;
/** Numbers of a pipe: bore, roughness, length, coefficient of its fittings, of its valve. */
const ofPipe = 5;
/** Numbers of a jet: diameter, discharge and velocity coefficients, height above the tail water. */
const ofJet = 4;

/** The numbers by what they are, in coherent units. */
export interface Numbers extends PlainManifold {
  /** Height of the gauge above the tail water. */
  readonly gaugeHeight: number;
  /** Density of the water. */
  readonly density: number;
  /** Of each pipe: coefficient of its fittings. */
  readonly fittings: readonly number[];
  /** Of each pipe: coefficient of its valve. */
  readonly valves: readonly number[];
  /** Of each jet: velocity coefficient. */
  readonly velocityCoefficients: readonly number[];
}

/** Finds in a list of numbers what the solver needs. */
export function numbersOf({ pipes, jets }: Structure, list: ArrayLike<number>): Numbers {
  const at = (i: number): number => list[i] as number;
  const pipeAt = (i: number): number => ofSite + ofPipe * i;
  const jetAt = (j: number): number => ofSite + ofPipe * pipes.length + ofJet * j;
  return {
    fall: at(0),
    gaugeHeight: at(1),
    density: at(2),
    viscosity: at(3),
    gravity: at(4),
    pipes: pipes.map(({ above }, i) => ({
      above,
      bore: at(pipeAt(i)),
      roughness: at(pipeAt(i) + 1),
      length: at(pipeAt(i) + 2),
      coefficient: at(pipeAt(i) + 3) + at(pipeAt(i) + 4),
    })),
    fittings: pipes.map((_, i) => at(pipeAt(i) + 3)),
    valves: pipes.map((_, i) => at(pipeAt(i) + 4)),
    jets: jets.map(({ pipe }, j) => ({
      pipe,
      diameter: at(jetAt(j)),
      dischargeCoefficient: at(jetAt(j) + 1),
      height: at(jetAt(j) + 3),
    })),
    velocityCoefficients: jets.map((_, j) => at(jetAt(j) + 2)),
  };
}

/** What is gathered while the tree is walked. */
interface Walk {
  readonly pipes: PipePlace[];
  readonly jets: JetPlace[];
  readonly ofPipes: AnyQuantity[];
  readonly nozzles: { readonly nozzle: ManifoldNozzle; readonly path: Notice["path"] }[];
  readonly problems: Notice[];
  readonly options: CallOptions;
}

/**
 * Takes a penstock for a list of numbers, or refuses it: everything that is wrong at once.
 *
 * @param manifold - The penstock.
 * @param options - Told of what is assumed.
 * @returns Pipes and jets in order, and their numbers.
 * @throws NonPhysicalError what no water can run through, each with its path; QuantityError another kind, another datum.
 */
export function structureOf(manifold: Manifold, options: CallOptions = {}): Structure {
  const walk: Walk = { pipes: [], jets: [], ofPipes: [], nozzles: [], problems: [], options };
  const { problems } = walk;
  const { reaches, branches, water } = manifold;
  if (reaches.length === 0)
    problems.push(told(["reaches"], "there is no reach. Give the pipe from the intake."));
  let above = -1;
  let shut = false;
  reaches.forEach((reach, i) => {
    shut ||= reach.valve?.shut === true;
    above = addPipe(walk, reach, ["reaches", i], above, shut);
  });
  if (branches.length === 0) problems.push(told(["branches"], nothingHangs));
  branches.forEach((branch, i) => addBranch(walk, branch, ["branches", i], above, shut));

  const elevations = walk.nozzles.map(({ nozzle }) => nozzle.elevation);
  for (const point of [water, ...elevations]) requireElevation(point);
  const tailWater = manifold.tailWater ?? lowest(elevations);
  // Without a jet there is nothing more to look at.
  if (!tailWater) refuseIf(problems);
  const tail = requireElevation(tailWater as Point<"site datum">);
  const fall = water.minus(tail).as("gross head");
  const gaugeHeight = (manifold.gauge ?? (elevations[0] as Point<"site datum">)).minus(tail);
  if (!(fall["~si"] > 0)) {
    problems.push(
      told(
        ["water"],
        `there is no fall: the water at the intake stands at ${water.toString()}, the tail water at ${tail.toString()}. Check the two levels.`,
        { actual: fall.toString(), limit: "above 0 m" },
      ),
    );
  }
  const { temperature } = manifold;
  const gravity = manifold.gravity ?? standardGravity(options);
  const site: AnyQuantity[] = [
    fall,
    gaugeHeight,
    waterDensity({ temperature }),
    kinematicViscosity({ temperature }),
    gravity,
  ];
  if (requireQuantity(gravity, ["gravity"], ["acceleration"]) <= 0)
    problems.push(told(["gravity"], `gravity = ${gravity.toString()} is not above 0.`));
  const ofJets = walk.nozzles.flatMap(({ nozzle, path }) =>
    jetScalars(walk, nozzle, path, water, tail),
  );
  refuseIf(problems);
  return {
    pipes: walk.pipes,
    jets: walk.jets,
    reaches: reaches.length,
    scalars: [...site, ...walk.ofPipes, ...ofJets],
  };
}

const nothingHangs =
  "nothing hangs here: water that goes in does not come out. Give a nozzle, or branches.";

/** A problem, in the words of this package. */
function told(path: Notice["path"], says: string, facts: Parameters<typeof fault>[3] = {}): Notice {
  const where = path.join(".");
  return fault(what, path, where ? `${where}: ${says}` : says, facts);
}

function addBranch(
  walk: Walk,
  branch: ManifoldBranch,
  path: Notice["path"],
  above: number,
  shutAbove: boolean,
): void {
  const shut = shutAbove || branch.valve?.shut === true;
  const place = addPipe(walk, branch, path, above, shut);
  const { nozzle, branches = [] } = branch;
  if (nozzle && branches.length > 0) {
    walk.problems.push(
      told(path, "it ends in a nozzle and in branches. Put the nozzle on a branch of its own."),
    );
  }
  if (!nozzle && branches.length === 0) walk.problems.push(told(path, nothingHangs));
  if (nozzle) {
    walk.jets.push({
      path: [...path, "nozzle"],
      pipe: place,
      name: nozzle.name ?? `jet ${walk.jets.length + 1}`,
    });
    walk.nozzles.push({ nozzle, path: [...path, "nozzle"] });
    return;
  }
  branches.forEach((next, i) => addBranch(walk, next, [...path, "branches", i], place, shut));
}

/** Adds a pipe and its numbers, and tells its place. */
function addPipe(
  walk: Walk,
  given: ManifoldPipe,
  path: Notice["path"],
  above: number,
  shut: boolean,
): number {
  const { problems, options } = walk;
  const id = path.join(".");
  const { insideDiameter, roughness } = wallOf(given.pipe, id);
  const bore = requireQuantity(insideDiameter, [...path, "pipe"], ["length"]);
  const rough = requireQuantity(roughness, [...path, "pipe"], ["length"]);
  const long = requireQuantity(given.length, [...path, "length"], ["pipe length", "length"]);
  if (!(bore > 0)) {
    problems.push(
      told([...path, "pipe"], `its bore, ${insideDiameter.toString()}, is not above 0.`),
    );
  } else if (!(rough >= 0 && rough < bore)) {
    problems.push(
      told(
        [...path, "pipe"],
        `its wall is rough by ${roughness.toString()} in a bore of ${insideDiameter.toString()}: no water passes. Check the units of both.`,
      ),
    );
  }
  if (!(long >= 0)) {
    problems.push(
      told([...path, "length"], `${given.length.toString()} is below 0. Check its sign.`),
    );
  }
  let sum: Quantity<"coefficient"> = coherentUnit("coefficient").of(0);
  (given.fittings ?? []).forEach(({ coefficient, count = 1 }, i) => {
    requireQuantity(coefficient, [...path, "fittings", i, "coefficient"], ["coefficient", "ratio"]);
    if (!(count >= 0)) {
      problems.push(
        told([...path, "fittings", i, "count"], `${count} of a fitting cannot be there.`),
      );
    }
    sum = sum.plus(spreadOfFittings(coefficient.times(count), id, options));
  });
  const valve = given.valve?.coefficient ?? coherentUnit("coefficient").of(0);
  const shutOff = requireQuantity(valve, [...path, "valve"], ["coefficient", "ratio"]);
  if (!(shutOff >= 0)) {
    problems.push(
      told([...path, "valve"], `its valve would give head back, K = ${valve.toString()}.`),
    );
  }
  if (!(sum["~si"] + shutOff >= 0)) {
    problems.push(
      told(
        [...path, "fittings"],
        `its fittings give head back, K = ${sum.toString()} together. Count the gain of a tee with what the pipe beside it loses.`,
        { actual: sum.toString(), limit: "at least 0 with the valve" },
      ),
    );
  }
  walk.ofPipes.push(insideDiameter, roughness, given.length, sum, valve);
  return walk.pipes.push({ path, above, shut }) - 1;
}

function wallOf(pipe: ManifoldPipe["pipe"], id: string): Hose {
  return isQuantity(pipe.insideDiameter)
    ? (pipe as Hose)
    : spreadOfPipe(pipe as Parameters<typeof spreadOfPipe>[0], id);
}

function jetScalars(
  walk: Walk,
  nozzle: ManifoldNozzle,
  path: Notice["path"],
  water: Point<"site datum">,
  tail: Point<"site datum">,
): AnyQuantity[] {
  const { problems } = walk;
  const { diameter, dischargeCoefficient, velocityCoefficient, elevation } = nozzle;
  const place = walk.jets.find((jet) => jet.path.join(".") === path.join(".")) as JetPlace;
  const bore = walk.ofPipes[ofPipe * place.pipe] as AnyQuantity;
  const d = requireQuantity(diameter, [...path, "diameter"], ["length"]);
  if (!(d > 0)) {
    problems.push(told([...path, "diameter"], `${diameter.toString()} is no opening.`));
  } else if (d > bore["~si"]) {
    problems.push(
      told(
        [...path, "diameter"],
        `the nozzle, ${diameter.toString()}, is wider than the bore that feeds it, ${bore.toString()}. Check both.`,
        {
          actual: diameter.toString(),
          limit: `at most ${bore.toString()}`,
          source: firstPrinciples.at("a nozzle narrows the pipe"),
        },
      ),
    );
  }
  for (const [word, coefficient] of [
    ["dischargeCoefficient", dischargeCoefficient],
    ["velocityCoefficient", velocityCoefficient],
  ] as const) {
    const c = requireQuantity(coefficient, [...path, word], ["coefficient", "ratio"]);
    if (!(c > 0 && c <= 1)) {
      problems.push(
        told([...path, word], `${coefficient.toString()} is not above 0 and at most 1.`),
      );
    }
  }
  const height = elevation.minus(tail);
  if (height["~si"] < 0) {
    problems.push(
      told(
        [...path, "elevation"],
        `the jet would be under the tail water, which stands at ${tail.toString()}. Check the two levels.`,
      ),
    );
  }
  if (!(water.minus(elevation)["~si"] > 0)) {
    problems.push(
      told(
        [...path, "elevation"],
        `the jet stands at ${elevation.toString()} and the water at the intake at ${water.toString()}: there is no fall to it. Check the two levels.`,
      ),
    );
  }
  return [diameter, dischargeCoefficient, velocityCoefficient, height];
}

function lowest(points: readonly Point<"site datum">[]): Point<"site datum"> | undefined {
  return points.reduce<Point<"site datum"> | undefined>(
    (low, point) => (low && low["~si"] <= point["~si"] ? low : point),
    undefined,
  );
}

function standardGravity(options: CallOptions): Quantity<"acceleration"> {
  const standard = metrePerSecondSquared.of(9.80665);
  options.onAssumed?.({
    formula: what,
    input: "gravity",
    value: standard.toString(),
    because: firstPrinciples.at("standard gravity, exact by convention"),
  });
  return standard;
}

function requireElevation(point: Point<"site datum">): Point<"site datum"> {
  if (isPoint(point) && point.origin === "site datum") return point;
  throw new QuantityError(
    "kind",
    `${what}: ${String(point)} is refused: levels are points over site datum.`,
  );
}

/** The number of a quantity of one of some kinds; callers without types pass what they like. */
export function requireQuantity(
  value: AnyQuantity,
  path: Notice["path"],
  kinds: readonly string[],
): number {
  if (isQuantity(value) && kinds.includes(value.kind)) return value["~si"];
  throw new QuantityError(
    "kind",
    `${what}: ${path.join(".")} = ${String(value)} is refused: give a ${kinds.join(" or a ")}.`,
  );
}

/** Metres as a message shows them. */
export function metres(n: number): string {
  return metre.of(Number(n.toPrecision(3))).toString();
}
