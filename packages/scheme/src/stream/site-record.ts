import type { Notice } from "@leat/formula";
import {
  areaTransfer,
  areaTransferSpread,
  runoffTransfer,
  scaleByVisits,
  type Transfer,
  transferRecord,
  type Visit,
  type VisitResidual,
  weightedRatio,
} from "@leat/hydrology";
import { type Column, Quality } from "@leat/quantity/column";

import type { Ledger } from "../ledger.ts";
import type { Measured } from "../measure/measured.ts";
import type { GaugedSurvey, StreamSurvey } from "../survey.ts";
import { UnbuildableError } from "../unbuildable.ts";

/** Daily flows of the site, and how they are known. */
export interface SiteRecord {
  /** The flows. */
  readonly record: Column<"volume flow">;
  /** How they are known, in words. */
  readonly by: string;
  /** How they were carried over from a gauged stream. */
  readonly carried?: Carried;
}

/** How flows were carried over from a gauged stream. */
export interface Carried {
  /** What people call the gauged stream. */
  readonly from: string;
  /** What the gauge's flows were multiplied by. */
  readonly transfer: Transfer;
  /** Each visit to the site on a day of the gauge's record. */
  readonly visits: readonly VisitResidual[];
}

/** Who is told of what. */
export interface Told {
  /** Told of what is out of the ordinary. */
  readonly onNotice: (notice: Notice) => void;
  /** Where assumptions are listed, if anywhere. */
  readonly ledger?: Ledger;
}

/**
 * Daily flows of the site: its own record, or that of a gauged stream carried over.
 *
 * @param id - Begins the names of sources of uncertainty.
 * @param stream - What the survey says of the stream.
 * @param flow - What was measured at the site.
 * @param told - Who is told of what.
 * @returns The flows, or nothing where there is no record.
 * @throws {@link UnbuildableError} where there is nothing to carry a gauge's flows over by.
 */
export function siteRecord(
  id: string,
  stream: StreamSurvey,
  flow: Measured<"volume flow"> | undefined,
  told: Told,
): SiteRecord | undefined {
  if (stream.record) return { record: stream.record.flow, by: "its own record" };
  const { gauged } = stream;
  if (!gauged) return undefined;
  const from = gauged.name ?? "the gauged stream";
  const { transfer, by, visits } = transferOf(id, stream, gauged, flow, told);
  const { onNotice } = told;
  const { record } = transferRecord({ record: gauged.record.flow, transfer }, { onNotice });
  return { record, by: `${from}, carried over by ${by}`, carried: { from, transfer, visits } };
}

/** Visits to the site, one a day. */
export function visitsOf(flow: Measured<"volume flow"> | undefined): Visit[] {
  return (flow?.combined ?? []).flatMap(({ on, value }) =>
    on === undefined ? [] : [{ at: on, flow: value }],
  );
}

/** Visits on days of the gauge's record that are enough to go by. */
const enough = 3;

/** By the site's own visits where there are enough on days of the record, else by runoff or area. */
function transferOf(
  id: string,
  { area, runoff }: StreamSurvey,
  { record, area: gaugedArea, runoff: gaugedRunoff }: GaugedSurvey,
  flow: Measured<"volume flow"> | undefined,
  { onNotice, ledger }: Told,
): { transfer: Transfer; by: string; visits: readonly VisitResidual[] } {
  const name = `${id}.stream.gauged`;
  const visits = visitsOf(flow);
  const { flow: gauge } = record;
  const paired = visits.filter(({ at }) => hasFlow(gauge, at));
  if (paired.length >= enough) {
    const fit = scaleByVisits({ name, visits, record: gauge, by: weightedRatio }, { onNotice });
    return {
      transfer: fit.transfer,
      by: `${paired.length} visits on the same days`,
      visits: fit.residuals,
    };
  }
  if (area && gaugedArea) {
    const byRunoff = runoff && gaugedRunoff;
    const spread = areaTransferSpread.get("neighbouring stream", "spread");
    ledger?.assume(
      ["stream", "gauged"],
      "how far a neighbour's flows may be off that are carried over by area alone",
      `a standard deviation of ${spread.toString()}; with ${enough} visits on days of the record it would be seen`,
      areaTransferSpread.definition.source,
    );
    const from = { name, area, gaugedArea, spread };
    return {
      transfer: byRunoff
        ? runoffTransfer({ ...from, runoff, gaugedRunoff }, { onNotice })
        : areaTransfer(from, { onNotice }),
      by: byRunoff ? "area and runoff" : "the ratio of the areas",
      visits: [],
    };
  }
  throw new UnbuildableError(
    "nothing-to-carry-by",
    ["stream", "gauged"],
    `the gauge's flows cannot be carried over: ${visits.length === 0 ? "no flow was measured at the site on a day that is told" : `${paired.length} of ${visits.length} visits fall on days of the record`}, and the areas are not both given. Measure on three days of the record, or give area here and under gauged.`,
  );
}

/** Whether the gauge has a flow on a day. */
function hasFlow({ axis, quality, values }: Column<"volume flow">, day: string): boolean {
  if (!axis) return false;
  const row = axis.indexAtOrAfter(day);
  return row < axis.length && axis.isoAt(row).startsWith(day) && quality[row] !== undefined
    ? (quality[row] & Quality.gap) === 0 && (values[row] as number) > 0
    : false;
}
