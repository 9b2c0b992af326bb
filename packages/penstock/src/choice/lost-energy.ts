import { firstPrinciples, formula, input, output } from "@leat/formula";
import { metrePerSecondSquared } from "@leat/quantity";

/**
 * Energy that the head lost in a pipe would have brought in a year.
 *
 *     E = ρ·g·Q·h·η·t
 *
 * @throws NonPhysicalError a negative flow, head or time, an efficiency beyond 0 to 1.
 */
export const lostEnergy = /* @__PURE__ */ formula(() => ({
  id: "lost-energy",
  equation: "E = ρ·g·Q·h·η·t",
  inputs: {
    /** Flow while it runs. */
    flow: input("volume flow", "Q"),
    /** Head lost in the pipe at that flow. */
    headLoss: input("head loss", "h"),
    /** From the water before the nozzle to what is paid for. */
    efficiency: input("efficiency", "η", { domain: "fraction" }),
    /** How long it runs in a year. */
    runningTime: input("time", "t"),
    /** Density of the water. */
    density: input("density", "ρ", { domain: "positive" }),
    /** Gravity at the site. */
    gravity: input("acceleration", "g", {
      domain: "positive",
      default: metrePerSecondSquared.of(9.80665),
      because: firstPrinciples.at("standard gravity, exact by convention"),
    }),
  },
  output: output("energy", "E"),
  source: firstPrinciples.at("power of falling water, times time"),
  body: ({ Q, h, η, t, ρ, g }) => ρ * g * Q * h * η * t,
}));
