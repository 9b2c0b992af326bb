import { type Citation, commonPractice, source, type Source } from "@leat/formula";
import { tennant } from "@leat/hydrology";

/** Something that was taken for the user, who did not give it. */
export interface Assumed {
  /** Where it would stand in the survey. */
  readonly path: readonly (string | number)[];
  /** What it is. */
  readonly what: string;
  /** What was taken. */
  readonly value: string;
  /** Why. */
  readonly because: Citation | undefined;
}

const practice = (place: string): Citation => commonPractice.at(place, "practice");

/** Cobb and Sharp's tests of small impulse wheels. */
export const cobbSharp: Source = /* @__PURE__ */ source({
  id: "cobb-sharp",
  by: "Cobb and Sharp",
  title:
    "Impulse (Turgo and Pelton) turbine performance characteristics and their impact on pico-hydro installations",
  edition: "Renewable Energy 50, 2013",
});

/** A default: text in the units of its source, the spread taken for it, and why. */
export interface Default {
  /** What it is, for the list of assumptions. */
  readonly what: string;
  /** The value, as field text. */
  readonly value: string;
  /** Half width of its spread: text in the same unit, or a share of the value. */
  readonly within?: string;
  /** Why. */
  readonly because: Citation;
}

/**
 * Everything that is taken for a user who does not give it.
 *
 * @returns Defaults by path.
 */
export function defaults(): Readonly<Record<string, Default>> {
  return {
    "site.waterTemperature": {
      what: "temperature of the water",
      value: "10 °C",
      within: "8 K",
      because: practice("hill streams"),
    },
    "stream.leave": {
      what: "share of the measured flow that stays in the stream (a placeholder: the regulator decides)",
      value: "40 %",
      because: tennant.at(
        "table, good, April to September, 40 % of the mean annual flow; here of the measured flow",
        "memory",
      ),
    },
    "jets.velocityCoefficient": {
      what: "velocity coefficient of the nozzles",
      value: "0.97",
      within: "0.02",
      because: practice("0.95 to 0.99"),
    },
    "jets.coefficient": {
      what: "discharge coefficient of the nozzles (cut plastic nozzles have been measured at 0.85)",
      value: "0.95",
      within: "0.05",
      because: practice("0.90 to 1.00; printed nozzle charts often assume 1"),
    },
    "wheel.efficiency": {
      what: "shaft power over the power of the jets",
      value: "70 %",
      within: "10 %",
      because: cobbSharp.at("peak efficiency about 70 to 80 %", "memory"),
    },
    "wheel.speedRatio": {
      what: "speed of the pitch circle over the speed of the jet",
      value: "0.46",
      because: cobbSharp.at("peak near 0.43 to 0.48", "memory"),
    },
    "machine.efficiency": {
      what: "direct-current power over shaft power",
      value: "75 %",
      within: "10 %",
      because: practice("small permanent-magnet machines with a rectifier"),
    },
    "cable.temperature": {
      what: "temperature of the conductor",
      value: "30 °C",
      within: "20 K",
      because: practice("buried or shaded cable under load"),
    },
    "cable.metal": {
      what: "metal of the cable",
      value: "copper",
      because: practice("what is at hand"),
    },
  };
}

/**
 * Spread taken for a reading that carries none and names no instrument, as a share of it. That of a gauge is
 * of its class, which the division on its face does not tell.
 */
export const readingSpread: Readonly<
  Record<string, { readonly share: number; readonly why: string; readonly class?: true }>
> = {
  "stream.flow": { share: 0.15, why: "a flow that is stated without saying how it was measured" },
  "fall.gross": { share: 0.03, why: "a fall that is stated without saying how it was levelled" },
  "fall.gauge": { share: 0.02, why: "a gauge whose class is not named", class: true },
  "reaches.length": { share: 0.03, why: "a length paced or taken from a map" },
  "cable.length": { share: 0.03, why: "a length paced or taken from a map" },
};

/** Nominal 48 V bank under charge, over its nominal volts: about 54.5 V. */
export const chargingOverNominal: {
  readonly ratio: number;
  readonly within: number;
  readonly because: Citation;
} = {
  ratio: 54.5 / 48,
  within: 0.02,
  because: /* @__PURE__ */ commonPractice.at(
    "about 54.5 V is a 48 V bank under charge",
    "practice",
  ),
};

/** Heating element that is taken where none is given. */
export const commonElement: {
  readonly watts: number;
  readonly volts: number;
  readonly because: Citation;
} = {
  watts: 2000,
  volts: 120,
  because: /* @__PURE__ */ commonPractice.at("a common immersion element", "practice"),
};
