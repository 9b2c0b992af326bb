import type { Notice } from "@leat/formula";
import {
  areaTransfer,
  lineThroughVisits,
  type LineTransfer,
  meanOfRatios,
  organicLine,
  regressionLine,
  scaleByVisits,
  type Transfer,
  transferRecord,
} from "@leat/hydrology";
import {
  cubicMetrePerSecond,
  day,
  litrePerSecond,
  metre,
  one,
  percent,
  squareKilometre,
} from "@leat/quantity";
import { Column, type ColumnOptions, Quality, TimeAxis } from "@leat/quantity/column";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

import { creekRecord, longRecord, noRealRecords } from "../records.ts";

if (noRealRecords) console.log("skipped: the real records are not in ../shared/reference/data");

const z = 1.959963984540054;
const seen = { lowest: litrePerSecond.of(100), highest: litrePerSecond.of(300) };
const factor: Transfer = { form: "factor", name: "creek", factor: one.of(0.2), seen };
const line: LineTransfer = {
  form: "line",
  name: "creek",
  slope: one.of(1.5),
  flow: litrePerSecond.of(20),
  gaugedFlow: litrePerSecond.of(200),
  seen,
};

function recordOf(
  flows: readonly (number | null)[],
  options: ColumnOptions = {},
): Column<"volume flow"> {
  const axis = TimeAxis.regular({
    start: "2024-02-27",
    step: day.of(1),
    count: flows.length,
    utcOffset: "+10:00",
  });
  return Column.of(litrePerSecond, flows, { axis, ...options });
}

describe("transferRecord", () => {
  it("carries every day, keeps gaps and flags, and flags all that it made as estimated", () => {
    const record = recordOf([100, null, 250, 0]).withQuality(Quality.ice, [1, 2]);
    for (const [transfer, flows] of [
      [factor, [20, 0, 50, 0]],
      [line, [20 * 0.5 ** 1.5, 0, 20 * 1.25 ** 1.5, 0]],
    ] as const) {
      const { record: site, gaps } = transferRecord({ record, transfer });
      for (const [row, flow] of flows.entries()) {
        expect(site.in(litrePerSecond)[row]).toBeCloseTo(flow, 10);
      }
      expect([...site.quality]).toEqual([
        Quality.estimated,
        Quality.gap | Quality.ice,
        Quality.estimated | Quality.ice,
        Quality.estimated | Quality.outOfRange,
      ]);
      expect(gaps).toBe(1);
      expect(site.axis).toBe(record.axis);
    }
  });

  it("counts days outside the visits and tells of them once", () => {
    const told: Notice[] = [];
    const record = recordOf([100, null, 301, 99, 300, 80]);
    const { below, above, notices } = transferRecord(
      { record, transfer: factor },
      { onNotice: (notice) => told.push(notice) },
    );
    expect([below, above]).toEqual([2, 1]);
    expect(notices).toEqual(told);
    expect(
      told.map(({ code, severity, path, message }) => [code, severity, path, message]),
    ).toEqual([
      [
        "transfer/beyond-visits",
        "caution",
        ["record", 2],
        "transfer-record: on 3 of 5 days the gauge lies outside the flows at the visits, 100 L/s to 300 L/s: 2 below, 1 above, first on 2024-02-29. Those days are guessed; visit the site at such flows.",
      ],
    ]);
    const everywhere = areaTransfer({
      name: "creek",
      area: squareKilometre.of(1),
      gaugedArea: squareKilometre.of(1),
      spread: percent.of(10),
    });
    expect(transferRecord({ record, transfer: everywhere }).notices).toEqual([]);
  });

  it("scales with the gauge's flows: by the factor, or to the power of the line", () => {
    fc.assert(
      fc.property(
        fc.array(fc.oneof(fc.constant(0), fc.double({ min: 1e-6, max: 1e5, noNaN: true })), {
          minLength: 1,
          maxLength: 20,
        }),
        fc.double({ min: 0.01, max: 100, noNaN: true }),
        (flows, times) => {
          const carry = (transfer: Transfer, by: number): Float64Array =>
            transferRecord({ record: recordOf(flows.map((flow) => flow * by)), transfer }).record
              .values;
          for (const [row, flow] of flows.entries()) {
            expect(carry(factor, times)[row]).toBeCloseTo(times * carry(factor, 1)[row]!, 6);
            if (flow === 0) expect(carry(line, times)[row]).toBe(0);
            else
              expect(carry(line, times)[row]! / carry(line, 1)[row]!).toBeCloseTo(times ** 1.5, 6);
          }
        },
      ),
    );
  });

  it("gives the record the uncertainty of the transfer as a scale, and carries the gauge's own", () => {
    const record = recordOf([100, 200], {
      uncertainty: {
        scale: [["rating", 0.05]],
        offset: [["zero", 0.001]],
        noise: [["reading", 0.002]],
      },
    });
    const unsure = one.of(0.2).plusMinus(one.of(0.2 * 0.3 * z), "creek: method");
    const site = transferRecord({ record, transfer: { ...factor, factor: unsure } }).record;
    expect(site.uncertainty?.offset).toEqual([["zero", 0.0002]]);
    expect(site.uncertainty?.noise).toEqual([["reading", 0.0004]]);
    const scale = new Map(site.uncertainty?.scale);
    expect(scale.get("creek: method")).toBeCloseTo(0.3, 12);
    expect(scale.get("rating")).toBe(0.05);
    const flow = site.at(1)!;
    expect(flow.standardUncertainty().in(litrePerSecond)).toBeCloseTo(
      Math.hypot(0.3 * 40, 0.05 * 40, 0.2, 0.4),
      9,
    );
  });

  it("gives a line's record the root mean square of its days", () => {
    const record = recordOf([100, 200, 400], {
      uncertainty: { scale: [["rating", 0.05]], offset: [["zero", 0.001]] },
    });
    const transfer = {
      ...line,
      slope: line.slope.plusMinus(one.of(0.1 * z), "slope"),
      flow: line.flow.plusMinus(litrePerSecond.of(20 * 0.04 * z), "level"),
    };
    const told: Notice[] = [];
    const site = transferRecord(
      { record, transfer },
      { onNotice: (notice) => told.push(notice) },
    ).record;
    const scale = new Map(site.uncertainty?.scale);
    // ln of 1/2, 1 and 2 have the root mean square ln 2 · √(2/3).
    expect(scale.get("slope")).toBeCloseTo(0.1 * Math.LN2 * Math.sqrt(2 / 3), 12);
    expect(scale.get("level")).toBeCloseTo(0.04, 12);
    expect(scale.get("rating")).toBeCloseTo(0.075, 12);
    // dQu/dQg at the mean of the visits: 1.5 · 20/200.
    expect(site.uncertainty?.offset?.[0]?.[1]).toBeCloseTo(0.00015, 12);
    expect(told.map(({ code }) => code)).toEqual([
      "transfer/beyond-visits",
      "transfer/offset-at-mean",
    ]);
    expect(told[1]?.message).toBe(
      "transfer-record: the offset of the gauge's record is carried over as it is at the mean of the visits; by a curved relation it is smaller in low water and greater in high water.",
    );
  });

  it("adds what a source does to level and slope of a line before it takes the mean square", () => {
    const transfer = {
      ...line,
      slope: line.slope.plusMinus(one.of(0.1 * z), "meter"),
      flow: line.flow.plusMinus(litrePerSecond.of(20 * 0.04 * z), "meter"),
    };
    const site = transferRecord({ record: recordOf([400, 800]), transfer }).record;
    const [byDay1, byDay2] = [0.04 + 0.1 * Math.LN2, 0.04 + 0.2 * Math.LN2];
    expect(site.uncertainty?.scale?.[0]?.[1]).toBeCloseTo(
      Math.hypot(byDay1, byDay2) / Math.SQRT2,
      12,
    );
  });

  it("refuses a flow below zero and a column of another kind", () => {
    expect(() => transferRecord({ record: recordOf([1, -1]), transfer: factor })).toThrow(
      "daily-record: row 1, 2024-02-28, has a flow of -0.001 m³/s.",
    );
    expect(() =>
      transferRecord({ record: Column.of(metre, [1]) as never, transfer: factor }),
    ).toThrow("a column of length is no record of flows");
  });

  it.skipIf(noRealRecords)(
    "leaves a duration curve as wide as the site's only by the organic line",
    () => {
      // A stream that is known is taken for a site: its flows, disturbed, on twenty days of ten years.
      const record = longRecord();
      const axis = record.axis!;
      const visits = Array.from({ length: 24 }, (_, i) => {
        const row = 20 + i * 151;
        const disturbed = record.values[row]! ** 0.8 * Math.exp(0.5 * Math.sin(7.3 * i));
        return { at: axis.isoAt(row), flow: cubicMetrePerSecond.of(disturbed * 0.1) };
      });
      const spread = (by: typeof organicLine | typeof regressionLine): number => {
        const { transfer } = lineThroughVisits({ name: "creek", visits, record, by });
        const sorted = transferRecord({ record, transfer }).record.values.toSorted();
        return Math.log(
          sorted[Math.floor(0.9 * sorted.length)]! / sorted[Math.floor(0.1 * sorted.length)]!,
        );
      };
      expect(spread(organicLine)).toBeGreaterThan(1.02 * spread(regressionLine));
    },
  );

  it.skipIf(noRealRecords)("agrees with numpy on twelve days of two real records", () => {
    const record = longRecord();
    const site = creekRecord();
    const days = [7, 4, 11, 2, 19, 14, 8, 26, 3, 17, 21, 9];
    const visits = days.map((date, i) => {
      const at = `2003-${String(i + 1).padStart(2, "0")}-${String(date).padStart(2, "0")}`;
      return { at, flow: site.at(site.axis!.indexAtOrAfter(at))! };
    });
    const options = { onNotice: () => undefined };
    const sums = scaleByVisits({ name: "creek", visits, record }, options);
    const means = scaleByVisits({ name: "creek", visits, record, by: meanOfRatios }, options);
    // numpy 2.4: sums, mean of the ratios, mean of the record times each.
    expect(sums.transfer.factor.in(one)).toBeCloseTo(0.52296824, 6);
    expect(means.transfer.factor.in(one)).toBeCloseTo(1.07637007, 6);
    const carried = transferRecord({ record, transfer: means.transfer }, options);
    const mean = carried.record.values.reduce((sum, flow) => sum + flow) / record.length;
    expect(mean).toBeCloseTo(4.3986687, 5);
    expect([carried.below, carried.above]).toEqual([4958, 198]);
    // Two streams that have nothing to do with each other: their rows are told, and no line goes up.
    expect(means.notices.map(({ code }) => code)).toContain("visits/disagree");
    expect(() => lineThroughVisits({ name: "creek", visits, record })).toThrow(
      "by the 12 visits the site falls as the gauge rises (slope -1.21)",
    );
  });
});
