import { existsSync, readFileSync } from "node:fs";

import { NonPhysicalError } from "@leat/formula";
import {
  annualMinima,
  areaTransfer,
  baseFlowIndex,
  durationConfidence,
  flowDuration,
  flowExceeded,
  lowFlowByPosition,
  lowFlowQuantile,
  monthlyFlows,
  monthlyPatternOfVisits,
  residualAndUsable,
  runoffTransfer,
  scaleByVisits,
  shareAboveHandsOff,
  transferRecord,
  weightedRatio,
} from "@leat/hydrology";
import {
  cubicMetrePerSecond,
  kilowattHour,
  litrePerSecond,
  millimetrePerYear,
  percent,
  type Quantity,
  squareKilometre,
  watt,
  year,
} from "@leat/quantity";
import type { Column } from "@leat/quantity/column";
import { designScheme, streamYear, type StreamYear, UnbuildableError } from "@leat/scheme";
import { readFieldSurvey, readSurvey } from "@leat/scheme/read";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

import { flowsOf, record } from "../hydrology/records.ts";

type Files = Readonly<Record<string, string>>;

const opened =
  (files: Files) =>
  (name: string): string => {
    const text = files[name];
    if (text === undefined) throw new Error(`no file ${name}`);
    return text;
  };

/** The year of a survey's text. */
function yearOf(text: string, files: Files = {}): StreamYear {
  const { survey, assumed } = readFieldSurvey(text, "creek.yaml", opened(files));
  return streamYear(survey, assumed);
}

/** Daily flows in L/s as a file; null is a gap. */
function csv(flows: readonly (number | null)[], start = "2021-01-01"): string {
  const first = Date.parse(`${start}T00:00Z`);
  return [
    "Date,Flow",
    ...flows.map(
      (flow, row) =>
        `${new Date(first + row * 86_400_000).toISOString().slice(0, 10)},${flow ?? ""}`,
    ),
  ].join("\n");
}

const ofFile = (file: string): string =>
  `{ file: ${file}, date: Date, date form: YYYY-MM-DD, flow: Flow, flow unit: L/s }`;

/** A stream with a record of its own, and whatever else is said of it. */
const own = (more = "leave: 0 L/s"): string =>
  `stream:\n  record: ${ofFile("own.csv")}\n${more.replaceAll(/^/gmu, "  ")}\n`;

const si = (q: { readonly "~si": number } | undefined): number | undefined => q?.["~si"];
const inLitres = (q: Quantity<"volume flow"> | undefined): number | undefined =>
  q?.in(litrePerSecond);

/** Why nothing can be said. */
function reason(run: () => unknown): UnbuildableError {
  try {
    run();
  } catch (error) {
    if (error instanceof UnbuildableError) return error;
    throw error;
  }
  throw new Error("nothing was refused");
}

/** Twelve invented years from January: seasons, and each year wetter or drier than another. */
const twelveYears = flowsOf(4383, (row) => {
  const wet = [1, 0.8, 1.2, 0.9, 1.3, 0.7, 1.1, 1, 0.6, 1.4, 0.95, 1.05][
    Math.min(11, Math.floor(row / 365.25))
  ]!;
  const season = 30 + 20 * Math.cos((2 * Math.PI * row) / 365.25);
  return Number((wet * season + (row % 17 === 0 ? 25 : 0)).toFixed(2));
});
const ofTwelve: Column<"volume flow"> = record(twelveYears, { start: "2009-01-01" });

describe("a stream with a record of its own", () => {
  const flows = twelveYears.map((flow, row) => (row >= 900 && row < 961 ? null : flow));
  const column = record(flows, { start: "2009-01-01" });
  const got = yearOf(own("leave: 30 %\nyear from: February"), {
    "own.csv": csv(flows, "2009-01-01"),
  });

  it("says what there is of it", () => {
    expect(got.by).toBe("its own record");
    expect(got.record).toMatchObject({
      from: "2009-01-01",
      to: "2020-12-31",
      days: 4383,
      used: 4322,
      gaps: 61,
      completeYears: 11,
      longestGap: { from: "2011-06-20", days: 61 },
    });
    expect(got.carried).toBeUndefined();
  });

  it("has the duration curve of the analysis, with its confidence beside the flow it belongs to", () => {
    const { table } = flowDuration({ record: column });
    expect(got.duration.map(({ share, flow }) => [si(share), si(flow)])).toEqual(
      table.map(({ share, flow }) => [si(share), si(flow)]),
    );
    const { quantiles } = durationConfidence({
      record: column,
      shares: table.map(({ share }) => share),
      missingShare: percent.of(5),
    });
    expect(
      got.duration.map(({ ofCompleteYears: of }) => [si(of?.flow), si(of?.low), si(of?.high)]),
    ).toEqual(quantiles.map(({ flow, low, high }) => [si(flow), si(low), si(high)]));
    for (const { ofCompleteYears: of } of got.duration) {
      expect(si(of?.low)).toBeLessThanOrEqual(si(of?.flow)!);
      expect(si(of?.high)).toBeGreaterThanOrEqual(si(of?.flow)!);
    }
  });

  it("has the months, the low flows and the base flow of the analyses", () => {
    const months = monthlyFlows({ record: column });
    const use = residualAndUsable({
      record: column,
      rule: shareAboveHandsOff({ handsOff: litrePerSecond.of(0), share: percent.of(70) }),
    });
    got.months.forEach((month, i) => {
      expect([month.month, month.count]).toEqual([i + 1, months[i]!.days]);
      expect([si(month.mean), si(month.median), si(month.q95)]).toEqual(
        [months[i]!.mean, months[i]!.median, months[i]!.q95].map(si),
      );
      expect(si(month.left)).toBeCloseTo(0.3 * si(month.mean)!, 12);
      expect(si(month.usable)).toBeCloseTo(si(use.months[i]!.usable)! / (month.count * 86_400), 12);
    });
    expect(si(got.use.volumes.usable)).toBeCloseTo(si(use.volumes.usable)!, 6);
    const of = { record: column, firstMonth: 2, missingShare: percent.of(5) };
    expect(got.low?.minima.map(({ days, mean, years }) => [days, years, si(mean)])).toEqual(
      [1, 7, 30].map((days) => {
        const { years, mean } = annualMinima({ ...of, days });
        return [days, years.length, si(mean)];
      }),
    );
    const ten = { minima: annualMinima(of), recurrence: year.of(10) };
    expect(si(got.low?.sevenDayTenYear)).toBe(si(lowFlowQuantile(ten).flow));
    expect(si(got.low?.sevenDayTenYearByPosition)).toBe(si(lowFlowByPosition(ten)));
    expect(si(got.baseFlowIndex)).toBe(si(baseFlowIndex({ record: column }).index));
  });

  it("gives by hand what two constant years have", () => {
    const flows = flowsOf(730, (row) => (row < 365 ? 10 : 30));
    const two = yearOf(own("leave: 4 L/s\nyear from: January"), { "own.csv": csv(flows) });
    const [first] = two.months;
    expect([first?.mean, first?.left, first?.usable].map(inLitres)).toEqual([
      expect.closeTo(20, 9),
      expect.closeTo(4, 9),
      expect.closeTo(16, 9),
    ]);
    const at = (share: number): StreamYear["duration"][number] =>
      two.duration.find((row) => Math.round(row.share.in(percent)) === share)!;
    expect([at(10).flow, at(90).flow].map(inLitres)).toEqual([30, 10]);
    const { low, high } = at(50).ofCompleteYears!;
    expect([low, high].map(inLitres)).toEqual([10, 30]);
    expect(two.low?.minima.map(({ mean }) => inLitres(mean))).toEqual(
      [20, 20, 20].map((q) => expect.closeTo(q, 9)),
    );
    // Two years tell nothing of ten.
    expect(two.low?.sevenDayTenYear).toBeUndefined();
    expect(two.use.days).toMatchObject({ recorded: 730, taking: 730, nothing: 0 });
    // 4 L/s of 20 stay.
    expect(si(two.use.volumes.left)! / si(two.use.volumes.flow)!).toBeCloseTo(0.2, 12);
  });

  it("keeps the pages clear of what cannot be told", () => {
    const week = yearOf(own(), { "own.csv": csv([5, 6, 7, 8, 7, 6, 5]) });
    expect(week.low).toBeUndefined();
    expect(week.baseFlowIndex).toBeUndefined();
    expect(week.duration.every(({ ofCompleteYears }) => ofCompleteYears === undefined)).toBe(true);
    expect(week.months.map(({ mean }) => mean === undefined)).toEqual([
      false,
      ...Array.from({ length: 11 }, () => true),
    ]);
    expect(week.notices.map(({ code }) => code)).toContain("residual/no-days");
    // Years that are all alike have no distribution.
    const alike = yearOf(own(), { "own.csv": csv(flowsOf(4018, () => 12)) });
    expect(alike.low?.sevenDayTenYear).toBeUndefined();
    expect(inLitres(alike.low?.sevenDayTenYearByPosition)).toBeCloseTo(12, 9);
    // A year whose days are never thirty together.
    const broken = flowsOf(365, (row) => (row % 25 === 24 ? null : 10 + (row % 7)));
    expect(
      yearOf(own("year from: January\nleave: 1 L/s"), { "own.csv": csv(broken) }).low?.minima.map(
        ({ days }) => days,
      ),
    ).toEqual([1, 7]);
  });

  it("has no number for a month without data, and says so", () => {
    const eleven = yearOf(own("leave: 2 L/s"), { "own.csv": csv(flowsOf(334, () => 10)) });
    const december = eleven.months[11]!;
    expect(december).toEqual({ month: 12, count: 0 });
    const notice = eleven.notices.find(({ code }) => code === "residual/no-days");
    expect(notice?.message).toBe(
      "no day of December is recorded: what can be taken then is unknown, and the totals are of the other months. Take another record, or fill those months.",
    );
  });

  it("tells where a record file speaks of itself by its line, not by a row", () => {
    const { notices } = got;
    const told = notices.find(({ code }) => code === "record/gaps");
    expect(told?.message).toBe(
      "61 of 4383 days are gaps, in 1 runs, the longest of 61 days from 2011-06-20. They are counted, not filled.",
    );
    for (const { message, path } of notices) {
      expect(message).not.toMatch(/\brow \d|candidate \d|visit \d|onNotice|[a-z][A-Z]/u);
      expect(path[0]).toBe("stream");
    }
  });
});

describe("a stream beside one that has a gauge", () => {
  const gauge = csv(twelveYears, "2009-01-01");
  const text = (visits: string, more = ""): string =>
    `stream:\n${visits}  gauged: { name: the other creek, record: ${ofFile("gauge.csv")}${more} }\n`;
  const measured = (rows: readonly (readonly [on: string, flow: string])[]): string =>
    `  measured:\n${rows.map(([on, flow]) => `    - { on: ${on}, flow: ${flow} }\n`).join("")}`;
  const on = (row: number): string =>
    new Date(Date.UTC(2009, 0, 1 + row)).toISOString().slice(0, 10);
  const rows = [1000, 1100, 1200, 1300];
  const factors = [0.5, 0.52, 0.49, 0.5];
  const visits = rows.map(
    (row, i) => [on(row), `${(factors[i]! * twelveYears[row]!).toFixed(3)} ± 0.5 L/s`] as const,
  );

  it("is that stream carried over by visits", () => {
    const got = yearOf(text(measured(visits)), { "gauge.csv": gauge });
    const { survey } = readFieldSurvey(text(measured(visits)), "creek.yaml", () => gauge);
    const fit = scaleByVisits({
      name: "creek.stream.gauged",
      visits: survey.stream.measured.map(({ on: at, flow }) => ({ at: at!, flow: flow! })),
      record: ofTwelve,
      by: weightedRatio,
    });
    const { record: carried } = transferRecord({ record: ofTwelve, transfer: fit.transfer });
    expect(got.by).toBe("the other creek, carried over by 4 visits on the same days");
    const { transfer } = got.carried!;
    expect(transfer.form === "factor" && si(transfer.factor)).toBeCloseTo(
      fit.transfer.factor["~si"],
      12,
    );
    // By hand: factors of about a half, the larger flows with more weight.
    expect(transfer.form === "factor" && si(transfer.factor)).toBeCloseTo(0.5, 1);
    expect(got.carried!.visits.map(({ at, departure }) => [at, si(departure)])).toEqual(
      fit.residuals.map(({ at, departure }) => [at, expect.closeTo(si(departure)!, 12)]),
    );
    const { table } = flowDuration({ record: carried });
    got.duration.forEach(({ flow }, i) => {
      expect(si(flow)).toBeCloseTo(si(table[i]!.flow)!, 12);
      expect(flow.standardUncertainty()["~si"]).toBeCloseTo(
        table[i]!.flow.standardUncertainty()["~si"],
        12,
      );
    });
    expect(got.use.volumes.usable.sources().size).toBeGreaterThan(0);
  });

  it("is carried over by area and runoff where it was not visited, and by area alone", () => {
    const both = yearOf(
      text("  area: 1.2 km²\n  runoff: 900 mm/yr\n", ", area: 2 km², runoff: 600 mm/yr"),
      {
        "gauge.csv": gauge,
      },
    );
    expect(both.by).toBe("the other creek, carried over by area and runoff");
    const ofMean = (got: StreamYear): number =>
      si(got.record?.mean)! / (twelveYears.reduce((a, b) => a + b) / 4383 / 1000);
    // 1.2/2 · 900/600 by hand.
    expect(ofMean(both)).toBeCloseTo(0.9, 9);
    const areas = { name: "x", area: squareKilometre.of(1.2), gaugedArea: squareKilometre.of(2) };
    const spread = percent.of(35);
    const direct = runoffTransfer({
      ...areas,
      runoff: millimetrePerYear.of(900),
      gaugedRunoff: millimetrePerYear.of(600),
      spread,
    });
    expect(
      both.carried?.transfer.form === "factor" && si(both.carried.transfer.factor),
    ).toBeCloseTo(direct.factor["~si"], 12);
    const alone = yearOf(text("  area: 1.2 km²\n", ", area: 2 km²"), { "gauge.csv": gauge });
    expect(alone.by).toBe("the other creek, carried over by the ratio of the areas");
    expect(ofMean(alone)).toBeCloseTo(0.6, 9);
    const mean = alone.record!.mean;
    expect(mean.standardUncertainty()["~si"] / mean["~si"]).toBeCloseTo(
      areaTransfer({ ...areas, spread }).factor.standardUncertainty()["~si"] / 0.6,
      9,
    );
    expect(alone.assumed.map(({ what, value }) => `${what}: ${value}`)).toContain(
      "how far a neighbour's flows may be off that are carried over by area alone: a standard deviation of 35 %; with 3 visits on days of the record it would be seen",
    );
  });

  it("is not carried over by fewer than three visits: then by area, or not at all", () => {
    const two = measured(visits.slice(0, 2));
    expect(
      yearOf(text(`${two}  area: 1.2 km²\n`, ", area: 2 km²"), { "gauge.csv": gauge }).by,
    ).toBe("the other creek, carried over by the ratio of the areas");
    const late = measured([...visits.slice(0, 2), ["2030-01-01", "12 L/s"]]);
    expect(reason(() => yearOf(text(late, ", area: 2 km²"), { "gauge.csv": gauge }))).toMatchObject(
      {
        code: "nothing-to-carry-by",
        path: ["stream", "gauged"],
        message:
          "the gauge's flows cannot be carried over: 2 of 3 visits fall on days of the record, and the areas are not both given. Measure on three days of the record, or give area here and under gauged.",
      },
    );
    expect(reason(() => yearOf(text(""), { "gauge.csv": gauge })).message).toContain(
      "no flow was measured at the site on a day that is told, and the areas are not both given.",
    );
  });

  it("tells a visit that the gauge does not know by its day", () => {
    const { notices } = yearOf(text(measured([...visits, ["2030-01-01", "12 L/s"]])), {
      "gauge.csv": gauge,
    });
    expect(notices.find(({ code }) => code === "visits/not-on-record")?.message).toBe(
      "1 of 5 visits have no flow of the gauge to stand beside and are left out: the visit of 2030-01-01 (after the record). Ask the gauge's owner for those days, or choose another gauge.",
    );
  });
});

describe("a stream that was only visited", () => {
  const flows = [12, 14, 20, 35, 60, 80, 70, 40, 25, 18, 15, 13];
  const text = (count: number, more = ""): string =>
    `stream:\n  measured:\n${flows
      .slice(0, count)
      .map(
        (flow, i) =>
          `    - { on: 2024-${String(i + 1).padStart(2, "0")}-15, flow: ${flow} ± 1 L/s }\n`,
      )
      .join("")}${more}`;

  it("has the months of the visits", () => {
    const got = yearOf(text(12, "  leave: 10 L/s\n"));
    const { survey } = readFieldSurvey(text(12), "creek.yaml");
    const { months, meanFlow } = monthlyPatternOfVisits({
      name: "creek.stream.measured",
      visits: survey.stream.measured.map(({ on, flow }) => ({ at: on!, flow: flow! })),
      like: "rain and storms, flat country",
    });
    expect(got.by).toBe("12 visits");
    expect(got.record).toBeUndefined();
    expect(got.duration).toEqual([]);
    got.months.forEach(({ mean, count, left, usable }, i) => {
      expect(si(mean)).toBeCloseTo(si(months[i]!.flow)!, 12);
      expect(mean!.standardUncertainty()["~si"]).toBeCloseTo(
        months[i]!.flow!.standardUncertainty()["~si"],
        12,
      );
      expect(count).toBe(1);
      expect(inLitres(left)).toBeCloseTo(10, 9);
      expect(si(left)! + si(usable)!).toBeCloseTo(si(mean)!, 12);
    });
    // As unsure as the mean of the year.
    const { flow } = got.use.volumes;
    expect(flow.standardUncertainty()["~si"] / flow["~si"]).toBeCloseTo(
      meanFlow!.standardUncertainty()["~si"] / meanFlow!["~si"],
      6,
    );
    expect(got.assumed.map(({ what }) => what)).toContain(
      "how far off a month is that was visited once",
    );
  });

  it("is not known by fewer than three visits, or by none", () => {
    expect(reason(() => yearOf(text(2)))).toMatchObject({
      code: "year-unknown",
      message:
        "nothing is known of the stream through the year: there is no record, no gauged stream, and 2 measurements on days that are told. Give a record, or measure once a month and write the day (on).",
    });
    expect(reason(() => yearOf("stream: 12 L/s")).message).toContain(
      "and 0 measurements on days that are told",
    );
    expect(yearOf(text(3)).months.every(({ mean }) => mean !== undefined)).toBe(true);
  });

  it("is told that months do not show low days", () => {
    const codes = (rules: string): string[] =>
      yearOf(text(12, `  leave by rules: { ${rules} }\n`)).notices.map(({ code }) => code);
    expect(codes("exceeded: 90 %")).toContain("months-for-days");
    expect(codes("share of mean: 20 %")).not.toContain("months-for-days");
  });
});

describe("what must stay", () => {
  // Half a year of 100 L/s and half a year of 40 L/s: 181 and 184 days.
  const halves = { "own.csv": csv(flowsOf(365, (row) => (row < 181 ? 100 : 40))) };
  const mean = (181 * 100 + 184 * 40) / 365;
  const monthly = Array.from({ length: 12 }, (_, i) =>
    new Date(Date.UTC(2021, i, 1)).toLocaleString("en", { month: "long" }),
  );

  it.each([
    ["flow: 30 L/s", 30, 30],
    ["share of mean: 20 %", 0.2 * mean, 0.2 * mean],
    ["exceeded: 95 %", 40, 40],
    ["exceeded by month: 90 %", 100, 40],
    [`tennant: good, low months: [${monthly.slice(6).join(", ")}]`, 0.4 * mean, 0.2 * mean],
    ["hands off: 30 L/s, take above: 50 %", 65, 35],
    [`months: { ${monthly.map((name, i) => `${name}: ${i + 1} L/s`).join(", ")} }`, 1, 7],
    ["flow: 10 L/s, most: 25 L/s", 75, 15],
    ["flow: 60 L/s", 60, 40],
    // The greatest decides: 20 % of the mean in July, half of what is above 30 L/s in January.
    ["share of mean: 51 %, hands off: 20 L/s, take above: 80 %", 36, 0.51 * mean],
  ])("is %s in January and in July", (rules, january, july) => {
    const got = yearOf(own(`leave by rules: { ${rules} }`), halves);
    expect([got.months[0]!.left, got.months[6]!.left].map(inLitres)).toEqual([
      expect.closeTo(january, 9),
      expect.closeTo(july, 9),
    ]);
    expect(inLitres(got.months[0]!.usable)).toBeCloseTo(100 - january, 9);
    expect(inLitres(got.months[6]!.usable)).toBeCloseTo(40 - july, 9);
    expect(got.months[6]!.taking?.in(percent)).toBeCloseTo(july < 40 ? 100 : 0, 9);
  });

  it("is more in the season of fish, on top of the rest", () => {
    const got = yearOf(
      own("leave by rules: { flow: 20 L/s, fish: [{ from: 06-15, to: 07-10, flow: 10 L/s }] }"),
      halves,
    );
    expect([5, 6, 7].map((i) => inLitres(got.months[i]!.left))).toEqual([
      expect.closeTo((14 * 20 + 16 * 30) / 30, 9),
      expect.closeTo((21 * 20 + 10 * 30) / 31, 9),
      expect.closeTo(20, 9),
    ]);
  });

  it("is by all rules together the greatest of the day, with fish on top and no more taken than the most", () => {
    const got = yearOf(
      own(
        "leave by rules: { flow: 12 L/s, share of mean: 20 %, exceeded: 50 %, hands off: 10 L/s, take above: 60 %, fish: [{ from: 12-01, to: 01-31, flow: 5 L/s }], most: 40 L/s }",
      ),
      halves,
    );
    // January: half of the time 40 or more is exceeded (40 L/s), 10 + 0.4·90 = 46 by hands off, and 5 for fish; 49 would be left
    // over and 40 may be taken. July: 40 L/s stay.
    expect([0, 1, 6].map((i) => inLitres(got.months[i]!.usable))).toEqual([
      expect.closeTo(40, 9),
      expect.closeTo(40, 9),
      expect.closeTo(0, 9),
    ]);
    expect(got.leave.map(({ what, value }) => `${what}: ${value}`)).toEqual([
      "all year: 12.0 L/s (190 gal/min)",
      "20 % of the mean flow: 14.0 L/s (221 gal/min)",
      "exceeded for 50 % of the time: 40.0 L/s (634 gal/min)",
      "hands off: all below 10.0 L/s (159 gal/min); 60 % of what is above it may be taken",
      "for fish, 12-01 to 01-31: 5.00 L/s (79.3 gal/min) on top",
      "most that may be taken: 40.0 L/s (634 gal/min)",
    ]);
    expect(got.use.days.capped).toBe(181);
  });

  it("is a flow, a share of each day's flow, or a placeholder that is listed", () => {
    const left = (leave: string): (number | undefined)[] => {
      const { months } = yearOf(own(leave), halves);
      return [months[0]!.left, months[6]!.left].map(inLitres);
    };
    expect(left("leave: 50 L/s")).toEqual([expect.closeTo(50, 9), expect.closeTo(40, 9)]);
    expect(left("leave: 25 %")).toEqual([expect.closeTo(25, 9), expect.closeTo(10, 9)]);
    expect(left("year from: April")).toEqual([expect.closeTo(40, 9), expect.closeTo(16, 9)]);
    const { assumed, notices, leave } = yearOf(own("year from: April"), halves);
    expect(assumed).toContainEqual(
      expect.objectContaining({
        path: ["stream", "leave"],
        what: "share of each day's flow that stays in the stream (a placeholder: the regulator decides)",
        value: "40 %",
      }),
    );
    expect(notices.map(({ code }) => code)).toContain("residual-flow-unset");
    expect(leave).toEqual([{ what: "no rule is given", value: "40 % of each day's flow" }]);
    const given = yearOf(own("leave: 25 %"), halves);
    expect(given.assumed.some(({ path }) => path.join(".") === "stream.leave")).toBe(false);
    expect(given.notices.map(({ code }) => code)).not.toContain("residual-flow-unset");
    expect(given.leave).toEqual([{ what: "a share", value: "25 % of each day's flow" }]);
    expect(yearOf(own("leave: 25 L/s"), halves).leave).toEqual([
      { what: "all year", value: "25.0 L/s (396 gal/min)" },
    ]);
  });

  it("and what may be taken make up the flow, whatever the rules", () => {
    const flow = fc.integer({ min: 0, max: 120 }).map((q) => `${q} L/s`);
    const share = fc.integer({ min: 0, max: 100 }).map((n) => `${n} %`);
    const rules = fc
      .record(
        {
          flow,
          "share of mean": share,
          exceeded: fc.integer({ min: 2, max: 98 }).map((n) => `${n} %`),
          most: flow,
        },
        { requiredKeys: ["flow"] },
      )
      .map((each) => JSON.stringify(each));
    fc.assert(
      fc.property(rules, (text) => {
        const { use, months } = yearOf(own(`leave by rules: ${text}`), halves);
        const { flow: all, left, usable } = use.volumes;
        expect(si(left)! + si(usable)!).toBeCloseTo(si(all)!, 6);
        for (const { mean: q, left: l, usable: u } of months)
          expect(si(l)! + si(u)!).toBeCloseTo(si(q)!, 12);
      }),
      { numRuns: 25, seed: 3 },
    );
  });

  it("cannot be read off a record that does not reach so far, and says at which line", () => {
    const { survey, place } = readFieldSurvey(
      own("leave by rules: { exceeded: 99.99 % }"),
      "creek.yaml",
      opened(halves),
    );
    try {
      streamYear(survey);
      expect.unreachable();
    } catch (error) {
      if (!(error instanceof NonPhysicalError)) throw error;
      expect(error.notices).toHaveLength(1);
      const [{ path, message }] = error.notices as [(typeof error.notices)[0]];
      expect(place(path)).toEqual({ line: 3, column: 19 });
      expect(message).toMatch(/^share = 99\.99 % is outside .*, the positions of 365 days\./u);
    }
  });
});

describe("what stays in a design", () => {
  const flows = flowsOf(730, (row) => (row % 365 < 181 ? 100 : 40));
  const files = { "own.csv": csv(flows) };
  const scheme = (stream: string): string =>
    `fall: 30 m\nreaches: 300 m\ncable: 80 m\nbank: 48 V\nstream:\n${stream.replaceAll(/^/gmu, "  ")}\n`;
  const left = (stream: string): { left: number; assumed: string[] } => {
    const { survey, assumed } = readSurvey(scheme(stream), "creek.yaml", opened(files));
    const { design } = designScheme(survey, assumed);
    return {
      left: design.stream.left.in(litrePerSecond),
      assumed: design.assumed.map(({ what, value }) => `${what}: ${value}`),
    };
  };
  const known = `record: ${ofFile("own.csv")}\n`;

  it("goes by the day of the measured flow", () => {
    const fish = "leave by rules: { flow: 8 L/s, fish: [{ from: 10-15, to: 12-15, flow: 3 L/s }] }";
    expect(left(`on: 2024-10-14\nflow: 25 L/s\n${fish}`).left).toBeCloseTo(8, 9);
    expect(left(`on: 2024-10-15\nflow: 25 L/s\n${fish}`)).toEqual({
      left: expect.closeTo(11, 9),
      assumed: expect.arrayContaining([
        "what stays of the flow by the rules, on 2024-10-15: 11.0 L/s (174 gal/min)",
      ]),
    });
  });

  it.each([
    ["share of mean: 20 %", "2024-01-20", 0.2 * ((181 * 100 + 184 * 40) / 365)],
    ["exceeded: 90 %", "2024-01-20", 40],
    ["exceeded by month: 90 %", "2023-08-01", 40],
    // A day that no year of the record has.
    ["share of mean: 20 %", "2024-02-29", 0.2 * ((181 * 100 + 184 * 40) / 365)],
    ["hands off: 10 L/s, take above: 50 %", "2024-01-20", 30],
    ["flow: 10 L/s, most: 12 L/s", "2024-01-20", 38],
    // The stream has less than must stay.
    ["flow: 10 L/s, share of mean: 10 %, hands off: 20 L/s, take above: 80 %", "2024-07-01", 26],
  ])("by %s on %s", (rules, on, expected) => {
    expect(left(`on: ${on}\nflow: 50 L/s\n${known}leave by rules: { ${rules} }`).left).toBeCloseTo(
      expected,
      9,
    );
  });

  it("takes the month of the day, and no other", () => {
    const stay = (on: string): number =>
      left(`on: ${on}\nflow: 120 L/s\n${known}leave by rules: { exceeded by month: 90 % }`).left;
    expect([stay("2023-06-30"), stay("2023-07-01")]).toEqual([
      expect.closeTo(100, 9),
      expect.closeTo(40, 9),
    ]);
  });

  it("goes by a gauged stream that is carried over too", () => {
    const gauged = `gauged: { record: ${ofFile("own.csv")}, area: 2 km² }\narea: 1 km²\n`;
    expect(
      left(`on: 2024-01-20\nflow: 50 L/s\n${gauged}leave by rules: { share of mean: 20 % }`).left,
    ).toBeCloseTo(0.1 * ((181 * 100 + 184 * 40) / 365), 9);
  });

  it("needs a day, and a record where a rule goes by one", () => {
    expect(reason(() => left("flow: 50 L/s\nleave by rules: { flow: 8 L/s }"))).toMatchObject({
      code: "day-unknown",
      message:
        "rules for what must stay go by the day, and the day of the measured flow is not told. Write it, such as on: 2026-08-14.",
    });
    expect(
      reason(() => left("on: 2024-01-20\nflow: 50 L/s\nleave by rules: { exceeded: 90 % }")),
    ).toMatchObject({
      code: "record-unknown",
      message:
        "a rule goes by what the stream has in the mean or for most of the time, and there is no record. Give a record or a gauged stream, or write what stays as a flow.",
    });
  });
});

describe("what a scheme could be built for", () => {
  const files = { "own.csv": csv(flowsOf(365, () => 30)) };
  const parts = (pipe: string): string =>
    `fall: 30 m\nreaches: [{ pipe: ${pipe}, length: 300 m }]\ncable: { length: 80 m, size: 70 mm² }\nbank: 48 V\n`;
  const scheme = (builtFor: string, pipe = "140 mm PE100 SDR 17"): string =>
    `${own(`leave: 0 L/s\nflow: 30 L/s\n${builtFor}`)}${parts(pipe)}`;
  const wanted = [2, 3.7, 7.1, 11.9, 16.3, 20];
  const list = `built for: [${wanted.map((q) => `${q} L/s`).join(", ")}]`;

  it("is what the user asks for, in order", () => {
    const got = yearOf(scheme("built for: [20 L/s, 4 L/s, 31 L/s]"), files).builtFor!;
    expect(got.flows.candidates.map(({ flow }) => inLitres(flow))).toEqual(
      [4, 20, 31].map((q) => expect.closeTo(q, 9)),
    );
    // 30 L/s is less than 31: every day at part flow.
    const { full, part } = got.flows.candidates[2]!;
    expect([full, part].map((t) => t.in(year))).toEqual([0, 1]);
  });

  it("is the flows that may be taken for usual shares of the time, where the user asks for none", () => {
    const flows = flowsOf(999, (row) => 1 + row / 10);
    const got = yearOf(own("leave: 0 L/s"), { "own.csv": csv(flows) }).builtFor!;
    const duration = flowDuration({ record: record(flows) });
    expect(got.flows.candidates.map(({ flow }) => inLitres(flow))).toEqual(
      [95, 90, 80, 70, 60, 50, 40, 30, 20, 10].map((share) =>
        expect.closeTo(
          Number(
            flowExceeded({ duration, share: percent.of(share) })
              .in(litrePerSecond)
              .toPrecision(2),
          ),
          9,
        ),
      ),
    );
    expect(got.pipes).toEqual([]);
  });

  it("has nothing where nothing may ever be taken", () => {
    const got = yearOf(own("leave: 40 L/s"), files);
    expect(got.builtFor).toBeUndefined();
    expect(got.notices.map(({ code }) => code)).toContain("residual/never-usable");
  });

  it("gives the watts that a design gives at that flow, within 1 %", () => {
    const got = yearOf(scheme(list), files).builtFor!;
    const [surveyed] = got.pipes;
    expect(surveyed).toMatchObject({ pipe: "as surveyed", reaches: ["140 mm PE100 SDR 17"] });
    wanted.forEach((q, i) => {
      const { survey } = readSurvey(
        `stream: { flow: ${q} L/s, leave: 0 L/s }\n${parts("140 mm PE100 SDR 17")}`,
      );
      const { delivered } = designScheme(survey).design.account;
      const { meanPower, energy } = surveyed!.flows!.candidates[i]!;
      expect(meanPower!.in(watt) / delivered.in(watt)).toBeCloseTo(1, 2);
      expect(Math.abs(meanPower!.in(watt) / delivered.in(watt) - 1)).toBeLessThan(0.01);
      expect(energy!.in(kilowattHour)).toBeCloseTo(meanPower!.in(watt) * 8.766, 6);
    });
  });

  it("gives more energy with a wider pipe, at every flow", () => {
    const { pipes } = yearOf(scheme(list), files).builtFor!;
    expect(pipes.map(({ pipe, reaches }) => `${pipe}: ${reaches.join()}`)).toEqual([
      "as surveyed: 140 mm PE100 SDR 17",
      "one size wider: 160 mm PE100 SDR 17",
      "two sizes wider: 180 mm PE100 SDR 17",
    ]);
    const energies = pipes.map(({ flows }) => flows!.candidates.map(({ energy }) => si(energy)!));
    for (const p of [1, 2]) {
      energies[p]!.forEach((energy, i) => {
        expect(energy).toBeGreaterThan(energies[p - 1]![i]!);
      });
    }
  });

  it("works nothing out beyond what a pipe carries", () => {
    const narrow = "75 mm PE100 SDR 17";
    const got = yearOf(scheme("built for: [2 L/s, 5 L/s, 9 L/s, 14 L/s, 28 L/s]", narrow), files);
    const carried = got.builtFor!.pipes.map(
      ({ flows }) => flows?.candidates.map(({ flow }) => Math.round(inLitres(flow)!)) ?? [],
    );
    const carries = (pipe: string, q: number): boolean => {
      const { survey } = readSurvey(`stream: { flow: ${q} L/s, leave: 0 L/s }\n${parts(pipe)}`);
      try {
        designScheme(survey);
        return true;
      } catch (error) {
        if (error instanceof UnbuildableError && error.code === "pipe-cannot-carry") return false;
        throw error;
      }
    };
    const names = got.builtFor!.pipes.map(({ reaches }) => reaches[0]!);
    expect(carried).toEqual(names.map((name) => [2, 5, 9, 14, 28].filter((q) => carries(name, q))));
    expect(carried[0]!.length).toBeLessThan(5);
    // Days and water are known all the same.
    expect(got.builtFor!.flows.candidates).toHaveLength(5);
    // A pipe that carries none of them.
    const none = yearOf(scheme("built for: [25 L/s, 28 L/s]", "63 mm PE100 SDR 17"), files);
    expect(none.builtFor!.pipes[0]!.flows).toBeUndefined();
  });

  it("takes the pipe and the cable that a design would choose, and lists what it took", () => {
    const open = `${own("leave: 10 L/s\nflow: 30 L/s")}fall: 30 m\nreaches: 300 m\ncable: 80 m\nbank: 48 V\n`;
    const got = yearOf(open, files);
    const { survey } = readSurvey(open, "creek.yaml", opened(files));
    const { design } = designScheme(survey);
    expect(got.builtFor!.pipes[0]!.reaches).toEqual(design.reaches.map(({ name }) => name));
    const taken = ({ assumed }: Pick<StreamYear, "assumed">, path: string): string | undefined =>
      assumed.find((each) => each.path.join(".") === path)?.value;
    for (const path of ["cable.size", "wheel.efficiency", "machine.efficiency"])
      expect(taken(got, path)).toBe(taken(design, path));
  });

  it("keeps the cable that was chosen with every pipe", () => {
    const scheme = (reaches: string, cable: string): StreamYear =>
      yearOf(
        `${own("leave: 28 L/s\nflow: 30 L/s\nbuilt for: [2 L/s]")}fall: 30 m\nreaches: [{ length: 300 m${reaches} }]\ncable: { length: 80 m${cable} }\nbank: 48 V\n`,
        files,
      );
    const chosen = scheme("", "");
    const { value } = chosen.assumed.find(({ path }) => path.join(".") === "cable.size")!;
    const [size] = /^\d+ mm²/u.exec(value)!;
    const [pipe] = chosen.builtFor!.pipes[0]!.reaches;
    const named = scheme(`, pipe: ${pipe}`, `, size: ${size}, metal: copper`);
    expect(named.builtFor!.pipes).toEqual(chosen.builtFor!.pipes);
    expect(named.builtFor!.pipes).toHaveLength(3);
  });

  it("does without energy where no scheme can be made, and says why", () => {
    const strong = `${own("leave: 0 L/s\nflow: 30 L/s")}fall: 900 m\nreaches: 300 m\ncable: 80 m\nbank: 48 V\n`;
    const got = yearOf(strong, files);
    expect(got.builtFor?.pipes).toEqual([]);
    const notice = got.notices.find(({ code }) => code === "pipe-none-strong-enough");
    expect(notice?.severity).toBe("caution");
    expect(notice?.message).toMatch(
      /^No energy is worked out: no polyethylene pipe of the tables/u,
    );
  });

  it("refuses the same flow twice, at its line", () => {
    const { survey, place } = readFieldSurvey(
      scheme("built for: [4 L/s, 4 L/s]"),
      "creek.yaml",
      opened(files),
    );
    try {
      streamYear(survey);
      expect.unreachable();
    } catch (error) {
      if (!(error instanceof NonPhysicalError)) throw error;
      const [{ path, message }] = error.notices as [(typeof error.notices)[0]];
      expect(place(path)).toEqual({ line: 5, column: 14 });
      expect(message).toBe(
        "4 L/s is not above 4 L/s. Give them from the smallest to the largest, each once.",
      );
    }
  });
});

const folder = new URL("../../../shared/reference/data/", import.meta.url);
const creek = new URL("wsc_08MG026_daily.csv", folder);
const absent = !existsSync(creek);
if (absent) console.warn(`skipped: ${creek.pathname} is not at hand`);

describe.skipIf(absent)("a real record", () => {
  it("has the Q50 and Q95 that were published for it", () => {
    // A course on engineering hydrology: Water Survey of Canada 08MG026, Weibull positions on daily values.
    const text = [
      "stream:",
      "  record:",
      "    file: creek.csv",
      "    date: Date",
      "    date form: YYYY/MM/DD",
      "    flow: Value",
      "    flow unit: m3/s",
      "    where: { PARAM: 1 }",
      "    flag: SYM",
      "    flags: { A: partial, B: ice, D: gap, E: estimated }",
      "    water year: 10",
      "  leave by rules: { exceeded: 95 % }",
    ].join("\n");
    const got = yearOf(text, { "creek.csv": readFileSync(creek, "utf8") });
    const at = (share: number): number =>
      got.duration
        .find((row) => Math.round(row.share.in(percent)) === share)!
        .flow.in(cubicMetrePerSecond);
    expect(at(50)).toBeCloseTo(2.54, 2);
    expect(Math.abs(at(95) / 0.914 - 1)).toBeLessThan(5e-3);
    expect(got.leave).toEqual([
      { what: "exceeded for 95 % of the time", value: "914 L/s (14500 gal/min)" },
    ]);
    expect(got.record?.used).toBe(8585);
  });
});
