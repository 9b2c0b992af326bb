import type { Notice } from "@leat/formula";
import { isPoint, isQuantity, type Point, type Quantity, QuantityError } from "@leat/quantity";

import { refused } from "../refusal.ts";

/** A flow that was measured, and the stage that stood at the staff meanwhile. */
export interface Gauging {
  /** Level of the water, over the zero of the staff. */
  readonly stage: Point<"staff zero">;
  /** Flow, by whatever method. */
  readonly flow: Quantity<"volume flow">;
  /** Date or time, to be named by; it is not interpreted. */
  readonly on?: string | undefined;
}

/** Gaugings as numbers in metres and seconds. */
export interface GaugingNumbers {
  /** Stages. */
  readonly h: Float64Array;
  /** Flows, above zero. */
  readonly q: Float64Array;
  /** The staff that all stages stand on. */
  readonly staff: string;
}

/**
 * A gauging as a message names it; rows are counted from 1 there.
 *
 * @param gaugings - All of them.
 * @param row - Which, from 0.
 * @returns Its number and its date.
 */
export function gaugingName(gaugings: readonly Gauging[], row: number): string {
  const on = gaugings[row]?.on;
  return `gauging ${row + 1}${on ? ` (${on})` : ""}`;
}

/**
 * Takes gaugings for numbers, or refuses them with their row.
 *
 * @param where - Name of the rating.
 * @param gaugings - The gaugings.
 * @returns The numbers.
 * @throws NonPhysicalError fewer than three, a flow that is not above zero, no two stages that differ; QuantityError
 * another kind, another staff.
 */
export function gaugingNumbers(where: string, gaugings: readonly Gauging[]): GaugingNumbers {
  if (gaugings.length < 3) {
    throw refused(
      ["gaugings"],
      `${where}: ${gaugings.length} gaugings give a line through them and say nothing of how far it is off. Measure three or more.`,
      { actual: String(gaugings.length), limit: "at least 3" },
    );
  }
  const staff = gaugings[0]?.stage?.instance;
  if (staff === undefined) {
    throw new QuantityError(
      "origin",
      `${where}: ${gaugingName(gaugings, 0)}: stage = ${String(gaugings[0]?.stage)} names no staff. Give point("staff zero", …, "name of the staff"), so that no other staff is read for it.`,
    );
  }
  const h = new Float64Array(gaugings.length);
  const q = new Float64Array(gaugings.length);
  gaugings.forEach(({ stage, flow }, row) => {
    const name = gaugingName(gaugings, row);
    h[row] = stageNumber(`${where}: ${name}`, stage, staff);
    if (!isQuantity(flow) || flow.kind !== "volume flow") {
      throw new QuantityError(
        "kind",
        `${where}: ${name}: flow = ${String(flow)} is refused: give a volume flow.`,
      );
    }
    q[row] = flow["~si"];
    if (!(flow["~si"] > 0)) {
      throw refused(
        ["gaugings", row, "flow"],
        `${where}: ${name}: flow = ${flow.toString()} is not above zero. ${flow["~si"] === 0 ? "Leave it out and give its stage as zero: the stage of zero flow." : "Correct the row."}`,
        { actual: flow.toString(), limit: "above zero" },
      );
    }
  });
  if (h.every((stage) => stage === h[0])) {
    throw refused(
      ["gaugings"],
      `${where}: all gaugings are at one stage, ${String(gaugings[0]?.stage)}. Measure at low and at high water.`,
      { actual: String(gaugings[0]?.stage), limit: "two stages or more" },
    );
  }
  return { h, q, staff };
}

/**
 * A stage on the staff of a rating, in metres.
 *
 * @param where - Where it stands, for the message.
 * @param stage - The stage.
 * @param staff - The staff of the gaugings.
 * @returns Metres over the zero of the staff.
 * @throws QuantityError `kind` for anything but a stage, `origin` for one on another staff.
 */
export function stageNumber(where: string, stage: unknown, staff: string): number {
  if (!isPoint(stage) || stage.origin !== "staff zero") {
    throw new QuantityError(
      "kind",
      `${where}: stage = ${String(stage)} is refused: give a point over staff zero.`,
    );
  }
  if (stage.instance !== staff) {
    throw new QuantityError(
      "origin",
      `${where}: stage = ${stage.toString()} is not on ${staff}, where the gaugings were made.`,
    );
  }
  return stage["~si"];
}

/**
 * A notice for each gauging that repeats another in stage, flow and date.
 *
 * @param where - Name of the rating.
 * @param gaugings - The gaugings.
 * @returns The notices.
 */
export function repeatedGaugings(where: string, gaugings: readonly Gauging[]): Notice[] {
  const first = new Map<string, number>();
  return gaugings.flatMap(({ stage, flow, on }, row): Notice[] => {
    const key = `${stage["~si"]} ${flow["~si"]} ${on ?? ""}`;
    const before = first.get(key);
    if (before === undefined) {
      first.set(key, row);
      return [];
    }
    return [
      {
        code: "rating-curve/repeated",
        severity: "caution",
        path: ["gaugings", row],
        message: `${where}: ${gaugingName(gaugings, row)} is ${gaugingName(gaugings, before)} over again, ${flow.toString()} at ${stage.toString()}. Both are counted; leave one out if it was measured once.`,
        actual: `${flow.toString()} at ${stage.toString()}`,
      },
    ];
  });
}
