import { type CallOptions, cite, type Notice } from "@leat/formula";
import { coverage95, cubicMetrePerSecond, type Quantity } from "@leat/quantity";

import { areaRatioTransfer } from "./area-ratio.ts";
import { runoffRatioTransfer } from "./runoff-ratio.ts";
import { areaTransferSpread } from "./spread.ts";

/** Flows of the gauge that a transfer was made from. */
export interface SeenFlows {
  /** The least. */
  readonly lowest: Quantity<"volume flow">;
  /** The greatest. */
  readonly highest: Quantity<"volume flow">;
}

/** A flow of the site as a share of the gauge's. */
export interface FactorTransfer {
  /** Tells the sorts of transfer apart. */
  readonly form: "factor";
  /** Begins the names of its sources of uncertainty. */
  readonly name: string;
  /** Site over gauge, with its uncertainty by source. */
  readonly factor: Quantity<"ratio">;
  /** Flows of the gauge at the visits, where it was made from visits. */
  readonly seen?: SeenFlows | undefined;
}

/** A flow of the site as a power of the gauge's: Qu = Qu0·(Qg/Qg0)^b, a straight line in logarithms. */
export interface LineTransfer {
  /** Tells the sorts of transfer apart. */
  readonly form: "line";
  /** Begins the names of its sources of uncertainty. */
  readonly name: string;
  /** Exponent b, with its uncertainty by source. */
  readonly slope: Quantity<"ratio">;
  /** Qu0, the geometric mean of the visits at the site, with its uncertainty by source. */
  readonly flow: Quantity<"volume flow">;
  /** Qg0, the geometric mean of the gauge on those days. */
  readonly gaugedFlow: Quantity<"volume flow">;
  /** Flows of the gauge at the visits. */
  readonly seen: SeenFlows;
}

/** How the record of a gauge is carried to a site. */
export type Transfer = FactorTransfer | LineTransfer;

/** The areas of a site and a gauge. */
export interface AreaTransferInput {
  /** Begins the names of its sources of uncertainty: give each transfer of a survey its own. */
  readonly name: string;
  /** Area that drains to the site. */
  readonly area: Quantity<"area">;
  /** Area that drains to the gauge. */
  readonly gaugedArea: Quantity<"area">;
  /** Exponent of the ratio of the areas, 1 by default. */
  readonly exponent?: Quantity<"ratio"> | undefined;
  /**
   * Standard uncertainty of the method, as a share of the flow; without it that of a neighbouring stream in
   * {@link areaTransferSpread}, which is told as a notice.
   */
  readonly spread?: Quantity<"ratio"> | undefined;
}

/** The areas and runoffs of a site and a gauge. */
export interface RunoffTransferInput extends Omit<AreaTransferInput, "exponent"> {
  /** Mean runoff of the site's area. */
  readonly runoff: Quantity<"runoff">;
  /** Mean runoff of the gauge's area, from the same map or method. */
  readonly gaugedRunoff: Quantity<"runoff">;
}

/** Any flow: what it becomes says what all become. */
const oneFlow = /* @__PURE__ */ cubicMetrePerSecond.of(1);

/**
 * A transfer by the ratio of two areas, {@link areaRatioTransfer}, with the uncertainty of the method.
 *
 * @param input - Areas, exponent, uncertainty of the method, name.
 * @param options - Notices and assumptions, as for a formula.
 * @returns The transfer.
 * @throws NonPhysicalError, OutOfValidityError as the formula does.
 * @example
 * ```ts
 * const { factor } = areaTransfer({
 *   name: "from the gauge at the bridge",
 *   area: squareKilometre.of(29),
 *   gaugedArea: squareKilometre.of(42),
 *   spread: percent.of(10),
 * });
 * format(factor, one, { plusMinus: true }); // => "0.69 ± 0.14 (k = 1.96)"
 * ```
 */
export function areaTransfer(input: AreaTransferInput, options: CallOptions = {}): FactorTransfer {
  const { name, area, gaugedArea, exponent, spread } = input;
  const flow = areaRatioTransfer({ gaugedFlow: oneFlow, area, gaugedArea, exponent }, options);
  return ofMethod(name, flow.dividedBy(oneFlow), spread, "area-transfer", options);
}

/**
 * A transfer by areas and runoffs, {@link runoffRatioTransfer}, with the uncertainty of the method.
 *
 * @param input - Areas, runoffs, uncertainty of the method, name.
 * @param options - Notices and assumptions, as for a formula.
 * @returns The transfer.
 * @throws NonPhysicalError, OutOfValidityError as the formula does.
 */
export function runoffTransfer(
  input: RunoffTransferInput,
  options: CallOptions = {},
): FactorTransfer {
  const { name, area, gaugedArea, runoff, gaugedRunoff, spread } = input;
  const flow = runoffRatioTransfer(
    { gaugedFlow: oneFlow, area, gaugedArea, runoff, gaugedRunoff },
    options,
  );
  return ofMethod(name, flow.dividedBy(oneFlow), spread, "runoff-transfer", options);
}

function ofMethod(
  name: string,
  factor: Quantity<"ratio">,
  spread: Quantity<"ratio"> | undefined,
  code: string,
  options: CallOptions,
): FactorTransfer {
  const taken = spread ?? areaTransferSpread.get("neighbouring stream", "spread");
  if (!spread) {
    const { source } = areaTransferSpread.definition;
    const notice: Notice = {
      code: `${code}/spread-assumed`,
      severity: "note",
      path: ["spread"],
      message: `${code}: spread was not given, and ${taken.toString()} is taken (${cite(source)}). Measure the site a few times, or give what the method is trusted to.`,
      actual: taken.toString(),
      source,
    };
    options.onNotice?.(notice);
  }
  const half = factor.times(taken).times(coverage95);
  return { form: "factor", name, factor: factor.plusMinus(half, `${name}: method`) };
}
