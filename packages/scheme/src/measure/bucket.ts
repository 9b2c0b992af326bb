import { timedVolume, timedVolumeFlow } from "@leat/flow-measurement";
import { commonPractice } from "@leat/formula";
import { cubicMetre } from "@leat/quantity";

import type { FlowSurvey } from "../survey.ts";
import { k95 } from "../uncertainty.ts";
import type { Taken, Taking } from "./measurement.ts";

/** Spread of a marked vessel whose volume carries no ±, as a share at 95 %. */
const markedVessel = 0.03;

/** Fillings of a vessel: a ± that is written beside the volume is of its mark, the same at each filling. */
export function bucketFlow(
  taking: Taking,
  bucket: NonNullable<FlowSurvey["bucket"]>,
): Taken<"volume flow"> {
  const { ledger } = taking;
  const name = ledger.sourceOf(`${taking.key}.bucket`);
  const shares = bucket.map(
    ({ volume }) => (k95 * volume.standardUncertainty()["~si"]) / volume["~si"],
  );
  const known = shares.every((share) => share > 0);
  if (!known)
    taking.assume(
      ["bucket"],
      "spread of the vessel's volume",
      `± ${100 * markedVessel} %`,
      commonPractice.at("a marked bucket", "practice"),
    );
  const share = known ? Math.max(...shares) : markedVessel;
  // What a volume carries is of its mark, and is added below.
  const repeats = bucket.map(({ volume, time }) => ({
    volume: cubicMetre.of(volume["~si"]),
    time,
  }));
  if (repeats.length > 1)
    taking.sheet(timedVolumeFlow, {
      repeats: bucket.map(({ volume, time }) => ({ volume, time })),
    });
  const { flow, flows } = timedVolume(
    { name, repeats },
    // The vessel's own error is added below, as a share: vessels of several sizes have one mark-maker.
    { onNotice: (notice) => notice.code.endsWith("/vessel") || taking.tell(notice) },
  );
  ledger.hint(`${name}: scatter of the fillings`, {
    what: "scatter of the fillings",
    how: "time more fillings",
  });
  ledger.hint(`${name}: scatter of a single filling`, {
    what: "scatter of the fillings",
    how: "time more fillings",
  });
  bucket.forEach((_, i) =>
    ledger.hint(`${name}.${i + 1}.time`, { what: "timing", how: "time longer fillings" }),
  );
  taking.facts.push({ what: "fillings", value: String(flows.length) });
  return {
    by: "timed volume",
    value: taking.spread(
      flow,
      share,
      "bucket.vessel",
      "the vessel's volume",
      "weigh the vessel full and empty",
    ),
  };
}
