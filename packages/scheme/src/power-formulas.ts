import { firstPrinciples, formula, input, output } from "@leat/formula";

/**
 * Head lost in a nozzle: what the jet's velocity head falls short of the head before it.
 *
 *     hn = (1 − Cv²) · H
 */
export const nozzleHeadLoss = /* @__PURE__ */ formula(() => ({
  id: "nozzle-head-loss",
  equation: "hn = (1 − Cv²) · H",
  inputs: {
    /** Head before the nozzle, above the jet. */
    head: input("net head", "H"),
    /** Velocity of the jet over that without loss. */
    velocityCoefficient: input("coefficient", "Cv", { domain: "fraction" }),
  },
  output: output("head loss", "hn"),
  source: firstPrinciples.at("energy of a jet, with a coefficient for the loss"),
  body: ({ H, Cv }) => (1 - Cv * Cv) * H,
}));

/**
 * Power lost in a wheel of a stated efficiency.
 *
 *     Pl = (1 − η) · P
 */
export const wheelLoss = /* @__PURE__ */ formula(() => ({
  id: "wheel-loss",
  equation: "Pl = (1 − η) · P",
  inputs: {
    /** Power of the jets. */
    jetPower: input("hydraulic power", "P"),
    /** Shaft power over the power of the jets. */
    efficiency: input("efficiency", "η", { domain: "fraction" }),
  },
  output: output("power", "Pl"),
  source: firstPrinciples.at("definition of efficiency"),
  body: ({ P, η }) => (1 - η) * P,
}));

/**
 * Direct-current power of a machine of a stated efficiency, its rectifier included.
 *
 *     Pe = η · Ps
 */
export const machinePower = /* @__PURE__ */ formula(() => ({
  id: "machine-power",
  equation: "Pe = η · Ps",
  inputs: {
    /** Power at the shaft. */
    shaftPower: input("shaft power", "Ps"),
    /** Direct-current power out over shaft power in. */
    efficiency: input("efficiency", "η", { domain: "fraction" }),
  },
  output: output("electric power", "Pe"),
  source: firstPrinciples.at("definition of efficiency"),
  body: ({ Ps, η }) => η * Ps,
}));

/**
 * Power lost in a machine of a stated efficiency, its rectifier included.
 *
 *     Pl = (1 − η) · Ps
 */
export const machineLoss = /* @__PURE__ */ formula(() => ({
  id: "machine-loss",
  equation: "Pl = (1 − η) · Ps",
  inputs: {
    /** Power at the shaft. */
    shaftPower: input("shaft power", "Ps"),
    /** Direct-current power out over shaft power in. */
    efficiency: input("efficiency", "η", { domain: "fraction" }),
  },
  output: output("power", "Pl"),
  source: firstPrinciples.at("definition of efficiency"),
  body: ({ Ps, η }) => (1 - η) * Ps,
}));

/**
 * Direct-current power.
 *
 *     P = V · I
 */
export const directCurrentPower = /* @__PURE__ */ formula(() => ({
  id: "direct-current-power",
  equation: "P = V · I",
  inputs: {
    /** Volts. */
    voltage: input("voltage", "V"),
    /** Amps. */
    current: input("current", "I"),
  },
  output: output("electric power", "P"),
  source: firstPrinciples.at("definition of voltage"),
  body: ({ V, I }) => V * I,
}));
