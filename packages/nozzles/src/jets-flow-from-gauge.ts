import {
  bound,
  firstPrinciples,
  formula,
  input,
  list,
  NonPhysicalError,
  output,
  pointInput,
} from "@leat/formula";
import { kilogramPerCubicMetre, metrePerSecondSquared } from "@leat/quantity";

import { iapwsIf97, iso5167 } from "./sources.ts";

interface Jet {
  readonly d: number;
}

/** Area of a circle. */
function circle(d: number): number {
  return (Math.PI / 4) * d * d;
}

/** Area of all openings together. */
function openings(jets: readonly Jet[]): number {
  let area = 0;
  for (const { d } of jets) area += circle(d);
  return area;
}

/** Pressure at the gauge as a height of water above the jets. */
function pressureHead(p: number, ρ: number, g: number, z: number): number {
  return p / (ρ * g) + z;
}

/** Velocity in the pipe over that of jets as wide as their openings. */
function velocityRatio(Cd: number, area: number, pipe: number): number {
  return (Cd * area) / pipe;
}

/**
 * Flow of all open nozzles together from the gauge on the pipe that feeds them, while they run: the nozzles as a meter.
 *
 *     Q = Cd·ΣA·√(2·g·(p/(ρ·g) + z))/√(1 − (Cd·ΣA/Ap)²)
 *
 * The gauge does not see the velocity head in the pipe; the root below the line puts it back, exactly, for the bore
 * where the gauge taps the pipe. Between the gauge and the nozzles nothing may be lost: no valve that is part closed, no
 * bend of a small manifold. With one nozzle it is `jetFlowWithApproach`. The coefficient decides: give it its ±.
 *
 * @throws NonPhysicalError a diameter or a density not above zero, a coefficient outside 0 to 1, a gauge below the jets'
 * own level of pressure, jets as wide together as the pipe.
 * @throws OutOfValidityError openings above 0.8 of the pipe's diameter together, and `onNotice` is absent: the approach
 * is then too much of the answer.
 * @example
 * ```ts
 * import { jetsFlowFromGauge } from "@leat/nozzles";
 * import { gallonPerMinute, inch, metre, one, point, poundPerSquareInch } from "@leat/quantity";
 *
 * const q = jetsFlowFromGauge({
 *   gauge: point("local atmosphere", poundPerSquareInch.of(38), "manifold"),
 *   gaugeAboveJet: metre.of(0.2),
 *   jets: [{ nozzleDiameter: inch.of(0.5) }, { nozzleDiameter: inch.of(0.375) }],
 *   pipeDiameter: inch.of(3),
 *   dischargeCoefficient: one.of(0.95).as("coefficient"),
 * });
 * q.in(gallonPerMinute).toFixed(1); // => "68.5"
 * ```
 */
export const jetsFlowFromGauge = /* @__PURE__ */ formula(() => ({
  id: "jets-flow-from-gauge",
  equation: "Q = Cd · S · √(2·g·h) / √(1 − r²)",
  inputs: {
    /** What the gauge reads while the jets run: pressure over the air at the gauge. */
    gauge: pointInput("local atmosphere", "p"),
    /** Height of the gauge above the jets; negative where it is below. */
    gaugeAboveJet: input("length", "z", { domain: "any" }),
    /** The nozzles that are open. */
    jets: list(
      {
        /** Diameter of the opening. */
        nozzleDiameter: input("length", "d", { domain: "positive" }),
      },
      "jets",
    ),
    /** Bore of the pipe where the pressure is taken. */
    pipeDiameter: input("length", "D", { domain: "positive" }),
    /** Flow over that of the openings without loss or contraction. */
    dischargeCoefficient: input("coefficient", "Cd", { domain: "fraction" }),
    /** Density of the water. */
    density: input("density", "ρ", {
      domain: "positive",
      default: kilogramPerCubicMetre.of(999.7),
      because: iapwsIf97.at("region 1: water at 10 °C and 101 325 Pa"),
    }),
    /** Gravity at the site. */
    gravity: input("acceleration", "g", {
      domain: "positive",
      default: metrePerSecondSquared.of(9.80665),
      because: firstPrinciples.at("standard gravity, exact by convention"),
    }),
  },
  output: output("volume flow", "Q"),
  steps: {
    S: {
      kind: "area",
      equation: "π/4 · Σ(d²), openings together",
      of: ({ jets }) => openings(jets),
    },
    h: {
      kind: "length",
      equation: "p/(ρ·g) + z, pressure as a height above the jets",
      of: ({ p, ρ, g, z }) => pressureHead(p, ρ, g, z),
    },
    r: {
      kind: "ratio",
      equation: "Cd·S/(π/4·D²), velocity in the pipe over that of the jets",
      of: ({ Cd, jets, D }) => velocityRatio(Cd, openings(jets), circle(D)),
    },
  },
  limits: [
    bound(
      "jets",
      "diameter of one opening as large as all, over the pipe's",
      ({ jets, D }: { jets: readonly Jet[]; D: number }) => Math.sqrt(openings(jets) / circle(D)),
      { max: 0.8 },
      iso5167.at("part 3, ISA 1932 nozzle", "memory"),
    ),
  ],
  source: firstPrinciples.at("energy from the pipe to the jets, with continuity"),
  body: ({ p, z, jets, D, Cd, ρ, g }) => {
    const S = openings(jets);
    const h = pressureHead(p, ρ, g, z);
    const r = velocityRatio(Cd, S, circle(D));
    if (h < 0) {
      throw refused(
        "gauge",
        "gauge, brought down to the jets, is below the pressure of the air: nothing runs out. Check its reading and its height.",
      );
    }
    // guard: where it refuses; beyond it the root below has no answer
    if (r >= 1) {
      throw refused(
        "jets",
        "jets are together as wide as the pipe: no pressure would be left to drive them. Check bores and pipe.",
      );
    }
    return (Cd * S * Math.sqrt(2 * g * h)) / Math.sqrt(1 - r * r);
  },
}));

function refused(at: string, message: string): NonPhysicalError {
  return new NonPhysicalError([
    {
      code: "non-physical",
      severity: "stop",
      path: [at],
      message: `jets-flow-from-gauge: ${message}`,
      source: firstPrinciples.at("energy from the pipe to the jets, with continuity"),
    },
  ]);
}
