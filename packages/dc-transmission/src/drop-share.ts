import { nfpa70 } from "@leat/conductors";
import { type Citation, firstPrinciples, formula, input, output } from "@leat/formula";
import { percent, type Quantity } from "@leat/quantity";

/**
 * Voltage drop as a share of the voltage where the loop begins: at the machine.
 *
 *     s = U/Vs
 *
 * With a constant current it is also the share of the power that is lost on the way.
 *
 * @throws NonPhysicalError a negative drop, or no voltage.
 */
export const dropShare = /* @__PURE__ */ formula(() => ({
  id: "drop-share",
  equation: "s = U/Vs",
  inputs: {
    /** Voltage lost along the loop. */
    drop: input("voltage", "U"),
    /** Voltage where the loop begins. */
    sourceVoltage: input("voltage", "Vs", { domain: "positive" }),
  },
  output: output("ratio", "s"),
  source: firstPrinciples.at("definition of the share"),
  body: ({ U, Vs }) => U / Vs,
}));

/** A share that somebody advises not to exceed. */
export interface RecommendedDrop {
  /** The greatest share advised. */
  readonly share: Quantity<"ratio">;
  /** Who advises it. */
  readonly source: Citation;
}

/**
 * Drops that the American code's notes advise not to exceed. They are advice for wiring in buildings, not a limit:
 * the cable of a water-power scheme is chosen by what its loss costs.
 *
 * @returns The share for a branch circuit, and for feeder and branch together.
 */
export function recommendedDrops(): {
  readonly branch: RecommendedDrop;
  readonly feederAndBranch: RecommendedDrop;
} {
  const source = nfpa70.at("informational notes to 210.19(A) and 215.2(A)", "secondary");
  return {
    branch: { share: percent.of(3), source },
    feederAndBranch: { share: percent.of(5), source },
  };
}
