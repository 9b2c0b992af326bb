import { firstPrinciples, input, type ScalarInput } from "@leat/formula";
import { coherentUnit, one } from "@leat/quantity";

import { gravityInput } from "../gravity-input.ts";
import { fergusonAndChurch } from "../sources.ts";

/** What a grain is, for the two formulas that ask it alike. */
export interface GrainInputs {
  /** Density of the grain over that of water, less 1. */
  readonly excessDensity: ScalarInput<"ratio", "R", true>;
  /** Kinematic viscosity at the temperature of the water. */
  readonly kinematicViscosity: ScalarInput<"kinematic viscosity", "ν", false>;
  /** Factor of creeping flow: 18 for spheres. */
  readonly creepingFactor: ScalarInput<"coefficient", "C1", true>;
  /** Drag coefficient of large grains: 0.4 for spheres, 1 for sand. */
  readonly dragCoefficient: ScalarInput<"coefficient", "C2", true>;
  /** Gravity at the site. */
  readonly gravity: ScalarInput<"acceleration", "g", true>;
}

/** Those inputs. */
export function grainInputs(): GrainInputs {
  return {
    excessDensity: input("ratio", "R", {
      domain: "positive",
      default: one.of(1.65),
      because: firstPrinciples.at("quartz in water, 2650 over 1000 kg/m³"),
    }),
    kinematicViscosity: input("kinematic viscosity", "ν", { domain: "positive" }),
    creepingFactor: input("coefficient", "C1", {
      domain: "positive",
      default: coherentUnit("coefficient").of(18),
      because: fergusonAndChurch.at("spheres and natural sand", "secondary"),
    }),
    dragCoefficient: input("coefficient", "C2", {
      domain: "positive",
      default: coherentUnit("coefficient").of(1),
      because: fergusonAndChurch.at("natural sand by sieve size", "secondary"),
    }),
    gravity: gravityInput(),
  };
}
