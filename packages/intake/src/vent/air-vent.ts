import {
  bound,
  commonPractice,
  firstPrinciples,
  formula,
  input,
  output,
  pointInput,
} from "@leat/formula";
import {
  celsius,
  coherentUnit,
  joulePerKilogramKelvin,
  pascal,
  point,
  poundPerSquareInch,
} from "@leat/quantity";

import { awwaM51 } from "../sources.ts";
import { airFluxOf } from "./air-flux-of.ts";

/** Largest drop that is reckoned with, whatever the pipe bears. */
function dropOf(collapse: number, factor: number, most: number): number {
  const borne = collapse / factor;
  return borne < most ? borne : most;
}

/**
 * Opening that lets air into a pipe as fast as water runs out of it, so that it is not sucked flat.
 *
 *     Δp = the lesser of pc/F and 5 psi      r = 1 − Δp/p      ρ = p/(Rair·T)
 *     A = Q/(Cd·√(2·γ/(γ − 1)·(p/ρ)·(r^(2/γ) − r^((γ + 1)/γ))))      d = √(4·A/π)      γ = 1.4
 *
 * Q is the water that leaves the pipe with the intake shut, drained or blocked: the working flow with the nozzles
 * open, and more where the pipe breaks low down. The air that comes in is counted as it is outside; inside it is
 * thinner and fills more, by up to half, which errs to the safe side. Air has no friction up to the opening: a long
 * or crooked vent pipe must be wider. What an ice plug, a frog or a leaf can shut is no vent.
 *
 * The collapsing pressure is the caller's, of this pipe with its age, heat and ovality in it; so is the factor of
 * safety: guides ask from 2 for a round steel pipe to 10 where people pass below (common practice, no source).
 *
 * @throws NonPhysicalError no collapsing pressure, a factor of zero or less, a negative flow.
 * @throws OutOfValidityError a factor of less than 1, and `onNotice` is absent.
 * @example
 * ```ts
 * import { airVent } from "@leat/intake";
 * import { format, kilopascal, litrePerSecond, metrePerSecond, millimetre, one } from "@leat/quantity";
 *
 * const { diameter, pressureDrop, airVelocity } = airVent({
 *   flow: litrePerSecond.of(15),
 *   collapsePressure: kilopascal.of(30),
 *   safetyFactor: one.of(4),
 * });
 * format(diameter, millimetre, 2); // => "17 mm"
 * format(pressureDrop, kilopascal, 2); // => "7.5 kPa"
 * format(airVelocity, metrePerSecond, 2); // => "64 m/s"
 * ```
 */
export const airVent = /* @__PURE__ */ formula(() => ({
  id: "air-vent",
  equation:
    "A = Q/(Cd·√(2·1.4/(1.4 - 1)·Ra·T·((1 - Δp/p)^(2/1.4) - (1 - Δp/p)^((1.4 + 1)/1.4)))); d = √(4·A/π); va = Q/A; Δp = pc/F < pm ? pc/F : pm",
  inputs: {
    /** Water that leaves the pipe, and air that must take its place. */
    flow: input("volume flow", "Q"),
    /** Pressure from outside at which this pipe is pressed flat. */
    collapsePressure: input("pressure", "pc", { domain: "positive" }),
    /** The collapsing pressure over the drop of pressure that is allowed. */
    safetyFactor: input("ratio", "F", { domain: "positive" }),
    /** Discharge coefficient of the opening. */
    ventCoefficient: input("coefficient", "Cd", {
      domain: "positive",
      default: coherentUnit("coefficient").of(0.6),
      because: commonPractice.at("sharp-edged opening", "practice"),
    }),
    /** Pressure of the air at the site. */
    airPressure: pointInput("vacuum", "p", {
      default: point("vacuum", pascal.of(101_325)),
      because: firstPrinciples.at("standard atmosphere at sea level, by convention"),
    }),
    /** Temperature of the air. */
    airTemperature: pointInput("absolute zero", "T", {
      default: celsius.at(15),
      because: firstPrinciples.at("standard atmosphere at sea level, by convention"),
    }),
  },
  output: {
    /** Least clear area. */
    area: output("area", "A"),
    /** Diameter of a round opening of that area. */
    diameter: output("length", "d"),
    /** Mean velocity of the air through it. */
    airVelocity: output("velocity", "va"),
    /** Drop of pressure that is reckoned with. */
    pressureDrop: output("pressure", "Δp"),
  },
  constants: { Ra: joulePerKilogramKelvin.of(287.053), pm: poundPerSquareInch.of(5) },
  steps: {
    Δp: {
      kind: "pressure",
      equation: "the lesser of pc/F and 5 psi",
      of: ({ pc, F, pm }) => dropOf(pc, F, pm),
    },
  },
  limits: [
    bound(
      "safetyFactor",
      "safetyFactor",
      ({ F }: { F: number }) => F,
      { min: 1 },
      firstPrinciples.at("a pipe that just holds"),
    ),
    bound(
      "airPressure",
      "pressure inside over that outside",
      ({ pc, F, pm, p }: { pc: number; F: number; pm: number; p: number }) =>
        1 - dropOf(pc, F, pm) / p,
      { min: 0.53 },
      awwaM51.at("sizing for gravity flow: sonic flow below 0.53", "secondary"),
    ),
  ],
  source: awwaM51.at("sizing for gravity flow", "secondary"),
  body: ({ Q, pc, F, Cd, p, T, Ra, pm }) => {
    const drop = dropOf(pc, F, pm);
    const flux = airFluxOf({
      outside: p,
      density: p / (Ra * T),
      pressureRatio: 1 - drop / p,
    });
    const A = Q / (Cd * flux);
    return { A, d: Math.sqrt((4 * A) / Math.PI), va: Cd * flux, Δp: drop };
  },
}));
