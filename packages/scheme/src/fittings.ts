import { fittingCoefficients } from "@leat/penstock";
import type { Quantity } from "@leat/quantity";

/** Names of the fittings that a survey may use. */
export function fittingNames(): readonly string[] {
  return fittingCoefficients.keys();
}

/** Loss coefficient of a named fitting. */
export function fittingCoefficient(name: string): Quantity<"coefficient"> {
  return fittingCoefficients.get(name as never, "coefficient");
}
