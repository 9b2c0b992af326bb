import { bound, firstPrinciples, formula, input, list, output } from "@leat/formula";
import { each, metrePerSecondSquared } from "@leat/quantity";

import { frictionFactorOf } from "../friction/friction-factor-of.ts";
import { fromTransition, transitionHalf, transitionSays } from "../friction/friction-factor.ts";
import { epanetManual, moodyPaper } from "../sources.ts";
import { pipeVelocityOf } from "./pipe-velocity.ts";
import { reynoldsNumberOf } from "./reynolds-number.ts";

/**
 * Head lost to a fitting or to friction, on plain numbers in coherent units: so many velocity heads.
 *
 * @param coefficient - How many velocity heads: f·L/D for friction, the sum of n·K for fittings.
 * @param velocity - Mean velocity in the pipe.
 * @param gravity - Gravity at the site.
 * @returns The head lost.
 */
export function velocityHeadsOf(coefficient: number, velocity: number, gravity: number): number {
  return (coefficient * velocity * velocity) / (2 * gravity);
}

/**
 * Head lost to friction in a reach of one bore, on plain numbers in coherent units; zero at no flow.
 *
 * For loops: nothing is checked, and nothing tells that flow is in transition.
 *
 * @param flow - Volume flow, 0 or more.
 * @param diameter - Inside diameter.
 * @param roughness - Absolute roughness of the wall.
 * @param length - Length along the pipe.
 * @param viscosity - Kinematic viscosity of the water.
 * @param gravity - Gravity at the site.
 * @returns The head lost.
 */
export function frictionHeadOf(
  flow: number,
  diameter: number,
  roughness: number,
  length: number,
  viscosity: number,
  gravity: number,
): number {
  if (flow === 0) return 0;
  const velocity = pipeVelocityOf(flow, diameter);
  const factor = frictionFactorOf(
    reynoldsNumberOf(velocity, diameter, viscosity),
    roughness / diameter,
  );
  return velocityHeadsOf((factor * length) / diameter, velocity, gravity);
}

/** Sum of the coefficients of a list of fittings, as many times as each is there. */
function coefficientSumOf(fittings: readonly { readonly K: number; readonly n: number }[]): number {
  let sum = 0;
  for (const { K, n } of fittings) sum += n * K;
  return sum;
}

interface Letters {
  readonly Q: number;
  readonly D: number;
  readonly ε: number;
  readonly ν: number;
}

function reynoldsOf({ Q, D, ν }: Letters): number {
  return reynoldsNumberOf(pipeVelocityOf(Q, D), D, ν);
}

/**
 * Head lost in a reach of pipe of one bore: wall friction (Darcy–Weisbach) and fittings.
 *
 *     hf = f(Re, ε/D) · L/D · V²/(2·g)      V = 4·Q/(π·D²)      Re = V·D/ν
 *     hk = K · V²/(2·g)                     K = Σ count × coefficient
 *
 * The friction factor is that of {@link frictionFactor}. Every fitting takes the velocity in this bore. A
 * nozzle is not a fitting: its head becomes the jet.
 *
 * @throws NonPhysicalError no flow, no diameter, a negative length or coefficient.
 * @throws OutOfValidityError flow is in transition, or the wall is rougher than Moody's chart, and `onNotice` is absent.
 * @example
 * ```ts
 * import { reachHeadLoss } from "@leat/penstock";
 * import { litrePerSecond, metre, millimetre, squareMillimetrePerSecond, unit } from "@leat/quantity";
 *
 * const { friction, fittings, velocity } = reachHeadLoss({
 *   flow: litrePerSecond.of(15),
 *   insideDiameter: millimetre.of(100),
 *   roughness: millimetre.of(0.003),
 *   length: metre.of(200).as("pipe length"),
 *   kinematicViscosity: squareMillimetrePerSecond.of(1.31),
 *   fittings: [{ coefficient: unit("coefficient", "1", 1).of(0.5) }],
 * });
 * velocity["~si"].toFixed(2); // => "1.91"
 * friction["~si"].toFixed(2); // => "6.27"
 * fittings["~si"].toFixed(2); // => "0.09"
 * ```
 */
export const reachHeadLoss = /* @__PURE__ */ formula(() => ({
  id: "reach-head-loss",
  equation:
    "V = 4·Q/(π·D²); Re = V·D/ν; f = frictionFactor(Re, ε/D); hf = f · L/D · V²/(2·g); hk = K · V²/(2·g)",
  inputs: {
    /** Flow in this reach: of all jets that it feeds. */
    flow: input("volume flow", "Q", { domain: "positive" }),
    /** Bore of the pipe, not its nominal size. */
    insideDiameter: input("length", "D", { domain: "positive" }),
    /** Absolute roughness of the wall. */
    roughness: input("length", "ε"),
    /** Length along the pipe, not across the map. */
    length: input("pipe length", "L"),
    /** Kinematic viscosity at the temperature of the water. */
    kinematicViscosity: input("kinematic viscosity", "ν", { domain: "positive" }),
    /** Fittings in this bore. */
    fittings: list(
      {
        /** Loss coefficient on the velocity head in this bore. */
        coefficient: input("coefficient", "K"),
        /** How many of them. */
        count: input("count", "n", {
          default: each.of(1),
          because: firstPrinciples.at("one fitting a row"),
        }),
      },
      "fittings",
      { default: [] },
    ),
    /** Gravity at the site. */
    gravity: input("acceleration", "g", {
      domain: "positive",
      default: metrePerSecondSquared.of(9.80665),
      because: firstPrinciples.at("standard gravity, exact by convention"),
    }),
  },
  output: {
    /** Head lost to the wall. */
    friction: output("head loss", "hf"),
    /** Head lost to the fittings. */
    fittings: output("head loss", "hk"),
    /** Mean velocity. */
    velocity: output("velocity", "V"),
    /** Reynolds number. */
    reynolds: output("ratio", "Re"),
    /** Darcy friction factor. */
    frictionFactor: output("coefficient", "f"),
  },
  steps: {
    frictionFactor: {
      kind: "coefficient",
      equation: "friction-factor at Re and ε/D",
      of: ({ Q, D, ε, ν }) => frictionFactorOf(reynoldsOf({ Q, D, ε, ν }), ε / D),
    },
    K: {
      kind: "coefficient",
      equation: "sum of count × coefficient over the fittings",
      of: ({ fittings }) => coefficientSumOf(fittings),
    },
  },
  limits: [
    bound(
      "flow",
      transitionSays,
      (letters: Letters) => fromTransition(reynoldsOf(letters)),
      { min: transitionHalf },
      epanetManual.at("ch. 12, laminar below 2000, turbulent above 4000"),
    ),
    bound("flow", "Reynolds number", reynoldsOf, { max: 1e8 }, moodyPaper.at("fig. 1", "memory")),
    bound(
      "roughness",
      "roughness/insideDiameter",
      ({ ε, D }: Letters) => ε / D,
      { max: 0.05 },
      moodyPaper.at("fig. 1", "memory"),
    ),
  ],
  source: epanetManual.at("ch. 3, Darcy–Weisbach and minor losses; ch. 12"),
  body: ({ Q, D, ε, L, ν, g, fittings }) => {
    const V = pipeVelocityOf(Q, D);
    const Re = reynoldsNumberOf(V, D, ν);
    const f = frictionFactorOf(Re, ε / D);
    return {
      hf: velocityHeadsOf((f * L) / D, V, g),
      hk: velocityHeadsOf(coefficientSumOf(fittings), V, g),
      V,
      Re,
      f,
    };
  },
}));
