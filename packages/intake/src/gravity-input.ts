import { firstPrinciples, input, type ScalarInput } from "@leat/formula";
import { metrePerSecondSquared } from "@leat/quantity";

/** Gravity at the site, standard where it is left out. */
export function gravityInput(): ScalarInput<"acceleration", "g", true> {
  return input("acceleration", "g", {
    domain: "positive",
    default: metrePerSecondSquared.of(9.80665),
    because: firstPrinciples.at("standard gravity, exact by convention"),
  });
}
