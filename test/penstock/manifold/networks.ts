import type { Manifold, ManifoldBranch, ManifoldPipe } from "@leat/penstock";
import {
  celsius,
  coherentUnit,
  metre,
  millimetre,
  type Point,
  point,
  type Quantity,
} from "@leat/quantity";

/** A pipe on plain numbers, as a person writes them down. */
export interface Line {
  /** Bore, in mm. */
  readonly bore: number;
  /** Length, in m. */
  readonly length: number;
  /** Roughness, in mm. */
  readonly rough: number;
  /** Sum of fittings. */
  readonly k?: number;
  /** Valve. */
  readonly valve?: number;
  /** Height of its lower end, in m. */
  readonly z?: number;
}

/** A branch: it ends in a nozzle or in branches. */
export interface Twig extends Line {
  /** Nozzle, in mm. */
  readonly nozzle?: number;
  /** Its discharge coefficient. */
  readonly cd?: number;
  /** Branches. */
  readonly into?: readonly Twig[];
}

/** A penstock. */
export interface Network {
  /** What is special about it. */
  readonly name: string;
  /** Water level, in m. */
  readonly water: number;
  /** Temperature, in °C. */
  readonly celsius?: number;
  /** Reaches. */
  readonly reaches: readonly Line[];
  /** Branches. */
  readonly twigs: readonly Twig[];
  /** Jets that are open, from 0. */
  readonly open?: readonly number[];
}

/** A level over the tail water. */
export const level = (z: number): Point<"site datum"> =>
  point("site datum", metre.of(z), "tail water");

/** A coefficient. */
export const c = (value: number): Quantity<"coefficient"> => coherentUnit("coefficient").of(value);

/** Velocity over that without loss of every nozzle here. */
export const cv = 0.97;

function pipeOf({ bore, length, rough, k, valve }: Line): ManifoldPipe {
  return {
    pipe: { insideDiameter: millimetre.of(bore), roughness: millimetre.of(rough) },
    length: metre.of(length).as("pipe length"),
    ...(k !== undefined && { fittings: [{ coefficient: c(k) }] }),
    ...(valve !== undefined && { valve: { coefficient: c(valve) } }),
  };
}

function branchOf(twig: Twig): ManifoldBranch {
  const { nozzle, cd = 0.95, z = 0, into } = twig;
  return {
    ...pipeOf(twig),
    ...(into && { branches: into.map(branchOf) }),
    ...(nozzle !== undefined && {
      nozzle: {
        diameter: millimetre.of(nozzle),
        dischargeCoefficient: c(cd),
        velocityCoefficient: c(cv),
        elevation: level(z),
      },
    }),
  };
}

/** A penstock with its quantities. */
export function manifoldOf(network: Network): Manifold {
  return {
    water: level(network.water),
    tailWater: level(0),
    temperature: celsius.at(network.celsius ?? 10),
    reaches: network.reaches.map(pipeOf),
    branches: network.twigs.map(branchOf),
  };
}

/** Pipes of the tree in the order in which answers have them, each with the one above it. */
export function linesOf(network: Network): { readonly line: Twig; readonly above: number }[] {
  const lines: { line: Twig; above: number }[] = [];
  const add = (line: Twig, above: number): void => {
    const place = lines.push({ line, above }) - 1;
    for (const next of line.into ?? []) add(next, place);
  };
  for (const reach of network.reaches) lines.push({ line: reach, above: lines.length - 1 });
  const last = lines.length - 1;
  for (const twig of network.twigs) add(twig, last);
  return lines;
}

const hose = { bore: 50, length: 1.5, rough: 0.01, k: 1.8 };

/** Penstocks to compare with another solver: invented, one to six reaches and jets. */
export const networks: readonly Network[] = [
  {
    name: "one reach, one jet",
    water: 60,
    reaches: [{ bore: 80, length: 250, rough: 0.003, k: 0.5 }],
    twigs: [{ ...hose, nozzle: 20 }],
  },
  {
    name: "two unequal jets",
    water: 41,
    reaches: [{ bore: 96.8, length: 260, rough: 0.003, k: 0.9 }],
    twigs: [
      { bore: 38, length: 1, rough: 0.01, k: 1.8, nozzle: 16, z: 0.6 },
      { bore: 38, length: 1.5, rough: 0.01, k: 1.8, nozzle: 12, z: 0.6 },
    ],
  },
  {
    name: "three reaches, four jets on hoses",
    water: 60,
    reaches: [
      { bore: 150, length: 250, rough: 0.003, k: 0.9, z: 42 },
      { bore: 125, length: 150, rough: 0.003, k: 0.5, z: 9 },
      { bore: 100, length: 20, rough: 0.045, k: 1.2, z: 0.8 },
    ],
    twigs: [
      { bore: 50, length: 1.5, rough: 0.01, k: 2.2, nozzle: 22, z: 0.5 },
      { bore: 50, length: 2, rough: 0.01, k: 2.2, nozzle: 20, z: 0.6 },
      { bore: 40, length: 1, rough: 0.01, k: 2.5, nozzle: 16, z: 0.5 },
      { bore: 40, length: 2.5, rough: 0.01, k: 2.5, nozzle: 12, z: 0.6 },
    ],
  },
  {
    name: "a summit below the grade line",
    water: 35,
    reaches: [
      { bore: 100, length: 90, rough: 0.003, k: 0.5, z: 22 },
      { bore: 100, length: 60, rough: 0.003, k: 0.4, z: 29 },
      { bore: 80, length: 200, rough: 0.003, k: 0.4, z: 1 },
    ],
    twigs: [
      { ...hose, nozzle: 18, z: 0.5 },
      { ...hose, nozzle: 14, z: 0.5 },
    ],
  },
  {
    name: "a summit above the grade line",
    water: 35,
    reaches: [
      { bore: 80, length: 150, rough: 0.003, k: 0.5, z: 28 },
      { bore: 80, length: 40, rough: 0.003, k: 0.8, z: 33 },
      { bore: 80, length: 220, rough: 0.003, k: 0.4, z: 1 },
    ],
    twigs: [
      { ...hose, nozzle: 22, z: 0.5 },
      { ...hose, nozzle: 20, z: 0.5 },
    ],
  },
  {
    name: "six reaches, six unequal jets",
    water: 92,
    reaches: [
      { bore: 200, length: 120, rough: 0.003, k: 0.5, z: 80 },
      { bore: 190, length: 100, rough: 0.003, k: 0.2, z: 66 },
      { bore: 180, length: 90, rough: 0.01, k: 0.2, z: 50 },
      { bore: 160, length: 80, rough: 0.045, k: 0.2, z: 31 },
      { bore: 150, length: 70, rough: 0.045, k: 0.4, z: 12 },
      { bore: 150, length: 20, rough: 0.1, k: 1, z: 1 },
    ],
    twigs: [10, 14, 18, 22, 26, 30].map((nozzle, i) => ({
      bore: 50 + 4 * i,
      length: 1 + 0.4 * i,
      rough: 0.02,
      k: 1.5 + 0.2 * i,
      nozzle,
      z: 0.8,
    })),
  },
  {
    name: "a header with take-offs one after the other",
    water: 48,
    reaches: [{ bore: 125, length: 300, rough: 0.003, k: 0.9, z: 1 }],
    twigs: [
      { bore: 40, length: 0.6, rough: 0.01, k: 1.8, nozzle: 15, z: 0.5 },
      {
        bore: 100,
        length: 0.7,
        rough: 0.045,
        k: 0.6,
        z: 0.7,
        into: [
          { bore: 40, length: 0.6, rough: 0.01, k: 1.8, nozzle: 15, z: 0.5 },
          {
            bore: 80,
            length: 0.7,
            rough: 0.045,
            k: 0.6,
            z: 0.7,
            into: [
              { bore: 40, length: 0.6, rough: 0.01, k: 1.8, nozzle: 15, z: 0.5 },
              { bore: 40, length: 0.9, rough: 0.01, k: 0.9, nozzle: 18, z: 0.5 },
            ],
          },
        ],
      },
    ],
  },
  {
    name: "two wheels, each with a manifold",
    water: 55,
    reaches: [
      { bore: 180, length: 400, rough: 0.007, k: 0.9, z: 20 },
      { bore: 150, length: 180, rough: 0.007, k: 0.4, z: 1 },
    ],
    twigs: [
      {
        bore: 100,
        length: 6,
        rough: 0.045,
        k: 1.2,
        valve: 0.2,
        z: 1,
        into: [
          { ...hose, nozzle: 24, z: 0.6 },
          { ...hose, nozzle: 20, z: 0.6 },
        ],
      },
      {
        bore: 90,
        length: 14,
        rough: 0.045,
        k: 1.6,
        valve: 0.2,
        z: 1.4,
        into: [
          { ...hose, nozzle: 20, z: 1.1 },
          { ...hose, nozzle: 16, z: 1.1 },
        ],
      },
    ],
  },
  {
    name: "rough steel",
    water: 75,
    reaches: [
      { bore: 102.3, length: 180, rough: 0.4, k: 1.3, z: 20 },
      { bore: 77.9, length: 60, rough: 0.4, k: 0.6, z: 1 },
    ],
    twigs: [
      { ...hose, nozzle: 17, z: 0.5 },
      { ...hose, nozzle: 19, z: 0.5 },
      { ...hose, nozzle: 9, z: 0.5 },
    ],
  },
  {
    name: "a high fall and small jets",
    water: 310,
    celsius: 4,
    reaches: [
      { bore: 63, length: 700, rough: 0.003, k: 0.5, z: 160 },
      { bore: 51.4, length: 600, rough: 0.003, k: 0.4, z: 1 },
    ],
    twigs: [
      { bore: 25, length: 0.8, rough: 0.01, k: 2, nozzle: 7, z: 0.6 },
      { bore: 25, length: 0.8, rough: 0.01, k: 2, nozzle: 5, z: 0.6 },
    ],
  },
  {
    name: "a low fall and wide jets",
    water: 7,
    celsius: 18,
    reaches: [{ bore: 250, length: 60, rough: 0.007, k: 1.2, z: 1.2 }],
    twigs: [
      { bore: 100, length: 2, rough: 0.01, k: 1.5, nozzle: 45, z: 0.4 },
      { bore: 100, length: 2, rough: 0.01, k: 1.5, nozzle: 40, z: 0.4 },
      { bore: 100, length: 2.4, rough: 0.01, k: 1.5, nozzle: 35, z: 0.9 },
    ],
  },
  {
    name: "jets at heights of their own",
    water: 24,
    reaches: [{ bore: 110, length: 140, rough: 0.003, k: 0.9, z: 2 }],
    twigs: [
      { ...hose, nozzle: 18, z: 0.3 },
      { ...hose, nozzle: 18, z: 1.5 },
      { ...hose, length: 8, nozzle: 18, z: 5 },
    ],
  },
  {
    name: "some jets closed",
    water: 60,
    reaches: [
      { bore: 150, length: 250, rough: 0.003, k: 0.9, z: 42 },
      { bore: 125, length: 150, rough: 0.003, k: 0.5, z: 1 },
    ],
    twigs: [22, 20, 16, 12].map((nozzle) => ({ ...hose, nozzle, z: 0.5 })),
    open: [1, 3],
  },
  {
    name: "valves that throttle, and a narrow pipe that takes half of the fall",
    water: 50,
    reaches: [
      { bore: 60, length: 200, rough: 0.003, k: 0.8, z: 10 },
      { bore: 60, length: 80, rough: 0.003, k: 0.8, valve: 2.1, z: 1 },
    ],
    twigs: [
      { ...hose, valve: 10, nozzle: 16, z: 0.5 },
      { ...hose, valve: 17, nozzle: 16, z: 0.5 },
    ],
  },
  {
    name: "nozzles of unlike make, and cold water",
    water: 66,
    celsius: 1,
    reaches: [{ bore: 90, length: 420, rough: 0.0015, k: 1.1, z: 1 }],
    twigs: [
      { ...hose, nozzle: 14, cd: 0.62, z: 0.5 },
      { ...hose, nozzle: 14, cd: 0.85, z: 0.5 },
      { ...hose, nozzle: 14, cd: 0.98, z: 0.5 },
    ],
  },
];
