import { type CallOptions, firstPrinciples } from "@leat/formula";
import { metrePerSecondSquared, type Quantity } from "@leat/quantity";

/** The gravity that was given, or the standard one, which is told as assumed. */
export function gravityOr(
  given: Quantity<"acceleration"> | undefined,
  id: string,
  options: CallOptions,
): Quantity<"acceleration"> {
  if (given) return given;
  const standard = metrePerSecondSquared.of(9.80665);
  options.onAssumed?.({
    formula: id,
    input: "gravity",
    value: standard.toString(),
    because: firstPrinciples.at("standard gravity, exact by convention"),
  });
  return standard;
}
