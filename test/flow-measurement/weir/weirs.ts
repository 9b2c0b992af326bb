// Every weir of the package with a place that it stands well in, for properties that all of them share.
import {
  broadCrestedDischarge,
  cipollettiDischarge,
  francisApproachDischarge,
  francisContractedDischarge,
  francisSuppressedDischarge,
  kindsvaterCarterDischarge,
  partlyContractedVNotchDischarge,
  rehbockDischarge,
  vNotchDischarge,
} from "@leat/flow-measurement";
import type { AnyFormula } from "@leat/formula";
import { cubicMetrePerSecond, degree, each, metre, type Quantity } from "@leat/quantity";

/** A weir for a loop over all of them; the types of its arguments are forgotten. */
export interface AnyWeir {
  readonly formula: AnyFormula;
  readonly args: Readonly<
    Record<string, Quantity<"length"> | Quantity<"angle"> | Quantity<"count">>
  >;
  /** Heads in metres that are within every limit. */
  readonly heads: readonly [number, number];
  /** Whether the form has a head correction, and so a flow at no head. */
  readonly corrected: boolean;
}

const [notchWidth, crestHeight, approachWidth] = [metre.of(1), metre.of(0.6), metre.of(3)];

export const weirs: readonly AnyWeir[] = [
  {
    formula: vNotchDischarge,
    args: { angle: degree.of(90), crestHeight: metre.of(1), approachWidth },
    heads: [0.06, 0.38],
    corrected: true,
  },
  {
    formula: partlyContractedVNotchDischarge,
    args: { crestHeight: metre.of(0.3), approachWidth: metre.of(0.9) },
    heads: [0.06, 0.36],
    corrected: true,
  },
  {
    formula: kindsvaterCarterDischarge,
    args: { notchWidth, crestHeight, approachWidth },
    heads: [0.03, 0.8],
    corrected: true,
  },
  {
    formula: rehbockDischarge,
    args: { notchWidth, crestHeight },
    heads: [0.03, 0.6],
    corrected: true,
  },
  {
    formula: francisSuppressedDischarge,
    args: { notchWidth, crestHeight },
    heads: [0.061, 0.3],
    corrected: false,
  },
  {
    formula: francisContractedDischarge,
    args: { notchWidth, crestHeight, approachWidth, contractions: each.of(2) },
    heads: [0.061, 0.3],
    corrected: false,
  },
  {
    formula: francisApproachDischarge,
    args: { notchWidth, crestHeight, approachWidth, contractions: each.of(1) },
    heads: [0.061, 0.33],
    corrected: false,
  },
  {
    formula: cipollettiDischarge,
    args: { notchWidth, crestHeight, approachWidth },
    heads: [0.061, 0.3],
    corrected: false,
  },
  {
    formula: broadCrestedDischarge,
    args: { notchWidth, crestHeight, crestLength: metre.of(0.6) },
    heads: [0.061, 0.5],
    corrected: false,
  },
];

/** The flow in m³/s; limits are told to nobody where `onNotice` is given. */
export function flowOver({ formula, args }: AnyWeir, head: number, onNotice?: () => void): number {
  const flow = formula({ ...args, head: metre.of(head) } as never, onNotice && { onNotice });
  return (flow as Quantity<"volume flow">).in(cubicMetrePerSecond);
}
