import {
  cubicMetrePerSecond,
  day,
  gallonPerMinute,
  kilowattHour,
  litrePerSecond,
  type Quantity,
  type Unit,
  watt,
} from "@leat/quantity";
import type { BuiltFor, StreamYear } from "@leat/scheme";

import { assumption, line, noticeLines, wrap } from "./print.ts";

const months = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];

/**
 * A stream through the year as a page for a terminal.
 *
 * @param year - The year.
 * @param file - Name of the survey file.
 * @param customary - Whether it is in feet, gallons and psi.
 * @returns The page.
 */
export function streamPage(year: StreamYear, file: string, customary: boolean): string {
  const unit = unitOf(year, customary);
  const cautions = year.notices.filter(({ severity }) => severity !== "note");
  const notes = year.notices.filter(({ severity }) => severity === "note");
  const blocks = [
    [year.site, `from ${file}; flows in ${unit.symbol}`],
    known(year),
    ...(year.duration.length > 0 ? [duration(year, unit)] : []),
    monthTable(year, unit),
    ...(year.low ? [low(year, unit)] : []),
    use(year),
    ...year.builtFor.map((each) => builtFor(each, unit)),
    [
      "TAKEN FOR YOU (nearly all of it can be given in the survey)",
      ...year.assumed.flatMap(assumption),
    ],
    ...(notes.length > 0 ? [["NOTES", ...notes.flatMap(noticeLines)]] : []),
    ...(cautions.length > 0
      ? [["CAUTIONS (the regulator decides what stays)", ...cautions.flatMap(noticeLines)]]
      : []),
  ];
  return `${blocks.map((block) => block.join("\n")).join("\n\n")}\n`;
}

type FlowUnit = Unit<"volume flow">;

/** A unit in which the flows of the stream have few digits. */
function unitOf({ months: all }: StreamYear, customary: boolean): FlowUnit {
  if (customary) return gallonPerMinute;
  const largest = Math.max(...all.map(({ mean }) => mean?.in(cubicMetrePerSecond) ?? 0));
  return largest >= 1 ? cubicMetrePerSecond : litrePerSecond;
}

/** A flow in four figures at most, right-aligned; a dash for none. */
function cell(flow: Quantity<"volume flow"> | undefined, unit: FlowUnit, width = 9): string {
  return (flow ? short(flow.in(unit)) : "–").padStart(width);
}

function short(n: number): string {
  return Math.abs(n) >= 1000 ? n.toFixed(0) : String(Number(n.toPrecision(3)));
}

function known({ by, record, carried }: StreamYear): string[] {
  return [
    "WHAT IS KNOWN",
    line("daily flows", by),
    ...(record
      ? [
          line(
            "days",
            `${record.from.slice(0, 10)} to ${record.to.slice(0, 10)}: ${record.used} of ${record.days} have a flow`,
          ),
          line("complete years", String(record.completeYears)),
          ...(record.longestGap
            ? [
                line(
                  "longest gap",
                  `${record.longestGap.days} days from ${record.longestGap.from.slice(0, 10)}`,
                ),
              ]
            : []),
        ]
      : []),
    ...(carried
      ? [
          line("visits on days of the record", String(carried.visits.length)),
          ...carried.visits.map(({ at, departure }) =>
            line(`  ${at}`, `${(100 * departure["~si"]).toFixed(0)} % off what was expected`),
          ),
        ]
      : []),
  ];
}

function duration({ duration: rows }: StreamYear, unit: FlowUnit): string[] {
  const confident = rows.some(({ low: l }) => l !== undefined);
  return [
    `FLOW DURATION${confident ? " (with the 95 % interval that whole years drawn anew give)" : ""}`,
    `  ${"of the time".padStart(12)} ${unit.symbol.padStart(9)}${confident ? `${"from".padStart(11)}${"to".padStart(10)}` : ""}`,
    ...rows.map(
      ({ share, flow, low: l, high }) =>
        `  ${`${Number((100 * share["~si"]).toPrecision(4))} %`.padStart(12)} ${cell(flow, unit)}${confident ? `  ${cell(l, unit)} ${cell(high, unit)}` : ""}`,
    ),
  ];
}

function monthTable({ months: rows, record }: StreamYear, unit: FlowUnit): string[] {
  const full = record !== undefined;
  return [
    `MONTHS (${unit.symbol})`,
    `  ${"".padEnd(4)}${["mean", ...(full ? ["median", "19 of 20"] : []), "stays", "may take"].map((h) => h.padStart(10)).join("")}${"days taking".padStart(13)}${(full ? "days" : "visits").padStart(8)}`,
    ...rows.map(
      ({ month, mean, median, q95, left, usable, taking, count }) =>
        `  ${(months[month - 1] as string).padEnd(4)}${[mean, ...(full ? [median, q95] : []), left, usable].map((q) => cell(q, unit, 10)).join("")}${(taking ? `${(100 * taking["~si"]).toFixed(0)} %` : "–").padStart(13)}${String(count).padStart(8)}`,
    ),
  ];
}

function low({ low: l, baseFlowIndex }: StreamYear, unit: FlowUnit): string[] {
  if (!l) return [];
  return [
    "LOW FLOWS",
    ...l.minima.map(({ days, mean }) =>
      line(
        `least ${days === 1 ? "day" : `${days} days`} of a year`,
        `${cell(mean, unit, 0)} ${unit.symbol}, the mean of ${l.years} years from ${months[l.yearFrom - 1] as string}`,
      ),
    ),
    ...(l.sevenDayTenYear
      ? [
          line(
            "7 days, once in 10 years",
            `${cell(l.sevenDayTenYear, unit, 0)} ${unit.symbol} by log-Pearson III${l.sevenDayTenYearByPosition ? `; ${cell(l.sevenDayTenYearByPosition, unit, 0)} by position` : ""}`,
          ),
        ]
      : []),
    ...(baseFlowIndex ? [line("base-flow index", baseFlowIndex["~si"].toFixed(2))] : []),
  ];
}

function use({ use: { days, volumes } }: StreamYear): string[] {
  const share = (n: number): string => `${((100 * n) / days.recorded).toFixed(0)} % of the days`;
  const of = (q: Quantity<"volume">): string =>
    `${((100 * q["~si"]) / volumes.flow["~si"]).toFixed(0)} % of the water`;
  return [
    "WHAT MAY BE TAKEN",
    line("something may be taken", share(days.taking)),
    line("nothing may", share(days.nothing + days.tooLittle)),
    line("stays in the stream", of(volumes.left)),
    line("may be taken", of(volumes.usable)),
  ];
}

function builtFor({ pipe, flows }: BuiltFor, unit: FlowUnit): string[] {
  const energy = flows.candidates.some((each) => each.energy !== undefined);
  return [
    `BUILT FOR (${pipe}): days a year at full flow, on less, standing`,
    `  ${unit.symbol.padStart(9)}${["full", "less", "stands", "mean flow", ...(energy ? ["mean W", "kWh a year", "more than above"] : [])].map((h) => h.padStart(h.length > 9 ? h.length + 2 : 11)).join("")}`,
    ...flows.candidates.map(
      ({ flow, full, part, idle, meanUsed, meanPower, energy: e, gain }, i) =>
        `  ${cell(flow, unit)}${[full, part, idle].map((t) => t.in(day).toFixed(0).padStart(11)).join("")}${cell(meanUsed, unit, 11)}${
          energy && meanPower && e
            ? `${meanPower.in(watt).toFixed(0).padStart(11)}${short(e.in(kilowattHour)).padStart(12)}${(gain ? short(gain.in(kilowattHour)) : "").padStart(17)}`
            : ""
        }${i === flows.greatest ? (energy ? "  most energy" : "  most water") : ""}`,
    ),
    ...(energy
      ? wrap(
          "Power is that of the survey's own pipe, wheel, machine and cable, with nozzles opened and shut to suit the flow; the most energy is not the best buy.",
        )
      : []),
  ];
}
