import { commonPractice, table } from "@leat/formula";
import { percent } from "@leat/quantity";

/**
 * How far off a flow may be that was carried over by area or by runoff alone: a standard uncertainty, shared by all days.
 *
 * Not from a book. Reports say how well the method did where it was tried and differ widely; a stream that is measured
 * a few times ({@link scaleByVisits}) is known better than either row.
 */
export const areaTransferSpread = /* @__PURE__ */ table(() => ({
  id: "area-transfer-spread",
  key: "gauge",
  units: { spread: percent },
  source: commonPractice.at("flows carried over by area alone", "practice"),
  rows: [
    { gauge: "same stream", spread: 15 },
    { gauge: "neighbouring stream", spread: 35 },
  ],
}));
