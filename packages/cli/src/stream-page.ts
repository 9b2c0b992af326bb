import {
  cubicFootPerSecond,
  cubicMetrePerSecond,
  day,
  format,
  gallonPerMinute,
  kilowattHour,
  litrePerSecond,
  percent,
  type Quantity,
  second,
  type Unit,
  watt,
} from "@leat/quantity";
import { type Assumed, type BuiltFor, k95, type PipeTried, type StreamYear } from "@leat/scheme";

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
    known(year, unit),
    ...(year.duration.length > 0 ? [duration(year, unit)] : []),
    monthTable(year, unit),
    ...(year.low ? [low(year, unit)] : []),
    use(year, unit),
    ...(year.builtFor ? builtFor(year.builtFor, unit) : []),
    [
      "TAKEN FOR YOU (nearly all of it can be given in the survey)",
      ...eachOnce(year.assumed).flatMap(assumption),
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
  const large = Math.max(...all.map(({ mean }) => mean?.in(cubicMetrePerSecond) ?? 0)) >= 1;
  if (customary) return large ? cubicFootPerSecond : gallonPerMinute;
  return large ? cubicMetrePerSecond : litrePerSecond;
}

/** A flow in three figures, right-aligned; a dash for none. */
function cell(flow: Quantity<"volume flow"> | undefined, unit: FlowUnit, width = 10): string {
  return (flow ? short(flow.in(unit)) : "–").padStart(width);
}

/** Three figures, without an exponent. */
function short(n: number): string {
  const size = Math.abs(n);
  if (size >= 1000) return String(Number(n.toPrecision(3)));
  return size < 0.001 ? n.toFixed(size === 0 ? 0 : 6) : n.toPrecision(3);
}

/** A flow with its ±, where it has one; a factor either way where that is large. */
function sure(flow: Quantity<"volume flow">, unit: FlowUnit): string {
  const plain = `${short(flow.in(unit))} ${unit.symbol}`;
  if (flow.sources().size === 0) return plain;
  return spreadOf(flow) > 0.25
    ? `${plain}, × or ÷ ${factorOf(flow)}`
    : format(flow, unit, { plusMinus: true }).replace(/ \(k = [\d.]+\)$/u, "");
}

/** Standard uncertainty as a share. */
function spreadOf(flow: Quantity<"volume flow">): number {
  return flow.standardUncertainty()["~si"] / flow["~si"];
}

/** The factor that 95 of 100 lie within, either way. */
function factorOf(flow: Quantity<"volume flow">): string {
  return Math.exp(k95 * spreadOf(flow)).toPrecision(2);
}

function share(of: Quantity<"ratio">): string {
  return `${of.in(percent).toFixed(0)} %`;
}

/** What was taken in several places alike, once. */
function eachOnce(assumed: readonly Assumed[]): Assumed[] {
  const first = new Map<string, Assumed & { more: number }>();
  for (const each of assumed) {
    const words = `${each.what}: ${each.value}`;
    const alike = first.get(words);
    if (alike) alike.more += 1;
    else first.set(words, { ...each, more: 0 });
  }
  return Array.from(first.values(), ({ more, what, ...each }) => ({
    ...each,
    what: more > 0 ? `(and ${more} more alike) ${what}` : what,
  }));
}

/** A name and a value that may take more lines than one. */
function told(name: string, value: string): string[] {
  const lines: string[] = [];
  let current = "";
  for (const word of value.split(" ")) {
    if (current !== "" && current.length + 1 + word.length > 92 - 33) {
      lines.push(current);
      current = word;
    } else current += `${current === "" ? "" : " "}${word}`;
  }
  return [...lines, current].map((text, i) => line(i === 0 ? name : "", text));
}

function known({ by, record, carried }: StreamYear, unit: FlowUnit): string[] {
  const { completeYears, longestGap } = record ?? {};
  return [
    "WHAT IS KNOWN",
    line("daily flows", record ? (carried?.from ?? by) : "none"),
    ...(carried
      ? [line("carried over by", by.replace(`${carried.from}, carried over by `, ""))]
      : []),
    ...(record
      ? [
          line(
            "days",
            `${record.from} to ${record.to}: ${record.used} of ${record.days} have a flow`,
          ),
          line("complete years", `${completeYears} of ${record.years.length}`),
          ...(longestGap
            ? [line("longest gap", `${daysText(longestGap.days)} from ${longestGap.from}`)]
            : []),
        ]
      : [line("months known by", by)]),
    ...(carried?.visits ?? []).map(({ at, flow, expected, departure }) =>
      line(
        `  visit of ${at}`,
        `${short(flow.in(unit))} ${unit.symbol}, and the gauge carried over ${short(expected.in(unit))}: ${signed(departure)}`,
      ),
    ),
  ];
}

function daysText(count: number): string {
  return count === 1 ? "1 day" : `${count} days`;
}

function signed(departure: Quantity<"ratio">): string {
  const text = departure.in(percent).toFixed(0);
  return `${Number(text) > 0 ? "+" : ""}${Number(text)} %`.replace("-", "−");
}

function duration({ duration: rows, record }: StreamYear, unit: FlowUnit): string[] {
  const confident = rows.some(({ ofCompleteYears }) => ofCompleteYears !== undefined);
  const head = ["of the time", "all days", ...(confident ? ["whole years", "from", "to"] : [])];
  return [
    `FLOW DURATION (${unit.symbol}): the flow that is there, or more, for a share of the time`,
    `  ${head.map((h) => h.padStart(12)).join("")}`,
    ...rows.map(({ share: time, flow, ofCompleteYears: whole }) => {
      const flows = [flow, ...(confident ? [whole?.flow, whole?.low, whole?.high] : [])];
      const name = `${Number(time.in(percent).toPrecision(4))} %`;
      return `  ${name.padStart(12)}${flows.map((q) => cell(q, unit, 12)).join("")}`;
    }),
    ...(confident
      ? wrap(
          `From and to: 95 of 100 other runs of ${record?.completeYears} years, drawn from the whole years, lie between. They go with the column of whole years.`,
        )
      : []),
  ];
}

function monthTable({ months: rows, record }: StreamYear, unit: FlowUnit): string[] {
  const full = record !== undefined;
  const head = ["mean", ...(full ? ["median", "Q95"] : ["× or ÷"]), "stays", "may take", "on"];
  return [
    `MONTHS (${unit.symbol})`,
    `  ${"".padEnd(4)}${head.map((h) => h.padStart(11)).join("")}${(full ? "of days" : "visits").padStart(9)}`,
    ...rows.map(({ month, mean, median, q95, left, usable, taking, count }) => {
      const cells = [
        cell(mean, unit, 11),
        ...(full
          ? [median, q95].map((q) => cell(q, unit, 11))
          : [(mean ? factorOf(mean) : "–").padStart(11)]),
        ...[left, usable].map((q) => cell(q, unit, 11)),
      ];
      return `  ${(months[month - 1] as string).padEnd(4)}${cells.join("")}${(taking ? share(taking) : "–").padStart(11)}${String(count).padStart(9)}`;
    }),
    ...wrap(
      `Means over all days of the month. ${full ? "Q95: what is there, or more, on 19 days of 20." : "× or ÷: 95 of 100 such months lie within that factor of it."} On: days on which something may be taken.`,
    ),
  ];
}

function low({ low: l, baseFlowIndex }: StreamYear, unit: FlowUnit): string[] {
  if (!l) return [];
  const from = months[l.yearFrom - 1] as string;
  const q = (flow: Quantity<"volume flow">): string => `${cell(flow, unit, 0)} ${unit.symbol}`;
  const { sevenDayTenYear: fitted, sevenDayTenYearByPosition: placed } = l;
  const ways = [
    ...(fitted ? [`${q(fitted)} by log-Pearson III`] : []),
    ...(placed ? [`${q(placed)} by their order`] : []),
  ];
  return [
    "LOW FLOWS",
    ...l.minima.map(({ days, mean, years }) =>
      line(
        `lowest ${days === 1 ? "day" : `${days} days`} of a year`,
        `${q(mean)}, the mean of ${years === 1 ? "one year" : `${years} years`} from ${from}`,
      ),
    ),
    ...told(
      "7 days, once in 10 years",
      ways.length > 0 ? ways.join("; ") : "cannot be told from fewer than ten years",
    ),
    ...(baseFlowIndex
      ? [line("base-flow index", `${baseFlowIndex["~si"].toFixed(2)} of the flow comes steadily`)]
      : []),
  ];
}

function use(
  { leave, use: { days, volumes }, carried, record }: StreamYear,
  unit: FlowUnit,
): string[] {
  const time = second.of(days.recorded * 86_400);
  const mean = (volume: Quantity<"volume">): string => {
    const of = volume["~si"] / volumes.flow["~si"];
    return `${sure(volume.dividedBy(time), unit)}, ${(100 * of).toFixed(0)} % of it`;
  };
  const onDays = (count: number): string =>
    `${((100 * count) / days.recorded).toFixed(0)} % of the days`;
  return [
    "WHAT MUST STAY, WHAT MAY BE TAKEN",
    ...leave.flatMap(({ what, value }) => told(what, value)),
    line("mean flow", sure(volumes.flow.dividedBy(time), unit)),
    line("  stays in the stream", mean(volumes.left)),
    line("  may be taken", mean(volumes.usable)),
    line("something may be taken on", onDays(days.taking)),
    ...(days.capped > 0 ? [line("  the most that may be on", onDays(days.capped))] : []),
    line("nothing may on", onDays(days.nothing + days.tooLittle)),
    ...(volumes.flow.sources().size > 0
      ? wrap(
          `How sure, at 95 %: that is of ${carried ? "carrying the gauge's flows over" : record ? "the record" : "so few visits"}; one year differs from another besides.`,
        )
      : []),
  ];
}

/** Days and water of each flow; then the energy with each set of pipes. */
function builtFor({ flows, pipes }: BuiltFor, unit: FlowUnit): string[][] {
  const most = pipes.length === 0 ? flows.greatest : -1;
  const table = [
    "BUILT FOR (days of a year; the flow that runs through in the mean, standing days counted)",
    `  ${unit.symbol.padStart(10)}${["at full flow", "on less", "standing", `mean ${unit.symbol}`].map((h) => h.padStart(14)).join("")}`,
    ...flows.candidates.map(
      ({ flow, full, part, idle, meanUsed }, i) =>
        `  ${cell(flow, unit)}${[full, part, idle].map((t) => t.in(day).toFixed(0).padStart(14)).join("")}${cell(meanUsed, unit, 14)}${i === most ? "  most water" : ""}`,
    ),
  ];
  return pipes.length === 0
    ? [[...table, ...wrap("No energy: the survey has no pipe, cable and bank yet.")]]
    : [table, energy(flows, pipes, unit)];
}

function energy(flows: BuiltFor["flows"], pipes: readonly PipeTried[], unit: FlowUnit): string[] {
  const letters = ["A", "B", "C"];
  const width = 22;
  return [
    "ENERGY OF A YEAR by the flow it is built for: kWh, and W in the mean of all days",
    `  ${unit.symbol.padStart(10)}${pipes.map((_, p) => `pipe ${letters[p]}`.padStart(width)).join("")}`,
    ...flows.candidates.map(({ flow }, i) => {
      const cells = pipes.map(({ flows: tried }) => {
        const at = tried?.candidates[i];
        if (!at?.energy || !at.meanPower) return "–".padStart(width);
        const text = `${short(at.energy.in(kilowattHour))}  ${short(at.meanPower.in(watt)).padStart(5)} W`;
        return `${text}${tried?.greatest === i && pipes.length > 0 ? " *" : "  "}`.padStart(width);
      });
      return `  ${cell(flow, unit)}${cells.join("")}`.trimEnd();
    }),
    ...pipes.flatMap(({ pipe, reaches }, p) =>
      wrap(`${letters[p]}  ${pipe}: ${[...new Set(reaches)].join(", ")}`),
    ),
    ...yearsDiffer(pipes[0]),
    ...wrap(
      "* the most of these: not the best buy. A dash: more than the pipe carries. Wheel, machine and cable are those of the survey, nozzles opened and shut to suit the flow.",
    ),
  ];
}

/** How far years differ, with the first pipe at the flow that gives the most. */
function yearsDiffer(pipe: PipeTried | undefined): string[] {
  const { flows } = pipe ?? {};
  const best = flows?.candidates[flows.greatest];
  if (!flows || !best?.energyByYear || flows.completeYears < 2) return [];
  const { least, most } = best.energyByYear;
  return wrap(
    `Of ${flows.completeYears} years without a gap the poorest would have given ${short(least.in(kilowattHour))} kWh with A at its most, the richest ${short(most.in(kilowattHour))} kWh.`,
  );
}
