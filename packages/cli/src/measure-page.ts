import { cite } from "@leat/formula";
import {
  format,
  gallonPerMinute,
  inch,
  litrePerSecond,
  millimetre,
  type Quantity,
} from "@leat/quantity";
import { k95, type Board, type Measured, type Measurement, type Measurements } from "@leat/scheme";

import { assumption, line, noticeLines, shower, wrap } from "./print.ts";

/**
 * Measurements as a page for a terminal: each with its ± and its source, then those of a day together.
 *
 * @param measurements - The measurements.
 * @param file - Name of the survey file.
 * @param customary - Whether it is in feet, gallons and psi.
 * @returns The page.
 */
export function measurePage(
  { site, flow, fall, boards, assumed, notices }: Measurements,
  file: string,
  customary: boolean,
): string {
  const show = shower(customary, true);
  const stops = notices.filter(({ severity }) => severity !== "note");
  const notes = notices.filter(({ severity }) => severity === "note");
  const blocks = [
    [site, `from ${file}; every ± is 95 % (k = 1.96)`],
    ...(flow ? [["FLOW", ...section(flow, show.flow)]] : []),
    ...(fall ? [["FALL", ...section(fall, (q) => show.head(q.as("length")))]] : []),
    ...boards.map((board) => boardLines(board, customary)),
    ...(assumed.length > 0
      ? [
          [
            "TAKEN FOR YOU (nearly all of it can be given in the survey)",
            ...assumed.flatMap(assumption),
          ],
        ]
      : []),
    ...(stops.length > 0 ? [["LOOK AT THIS", ...stops.flatMap(noticeLines)]] : []),
    ...(notes.length > 0 ? [["NOTES", ...notes.flatMap(noticeLines)]] : []),
  ];
  return `${blocks.map((block) => block.join("\n")).join("\n\n")}\n`;
}

/** Every measurement, and those of a day together. */
function section<K extends string>(
  { measurements, combined }: Measured<K>,
  show: (q: Quantity<K>) => string,
): string[] {
  return [
    ...measurements.flatMap((each, i) => one(each, i, show)),
    ...combined.flatMap(({ on, of, value, weights, agree }) =>
      of.length === 1
        ? []
        : [
            line(
              `together${on === undefined ? "" : `, ${on}`}`,
              `${show(value)}${agree ? "" : ", widened: they disagree"}`,
            ),
            line("  weights", weights.map((w) => `${(100 * w).toFixed(0)} %`).join(", ")),
          ],
    ),
  ];
}

function one<K extends string>(
  { name, by, on, value, parts, facts, sources }: Measurement<K>,
  i: number,
  show: (q: Quantity<K>) => string,
): string[] {
  const title = [name, ...(name === by ? [] : [by]), ...(on === undefined ? [] : [on])].join(", ");
  const most = parts
    .slice(0, 3)
    .map(({ what, share }) => `${what} ${(100 * share * share).toFixed(0)} %`);
  return [
    `  ${i + 1}. ${title}`,
    line("  it comes to", show(value)),
    ...(parts.length > 1 ? [line("  the ± is of", most.join(", "))] : []),
    ...facts.map((fact) => line(`  ${fact.what}`, fact.value)),
    ...sources.flatMap((source) => wrap(`  [${cite(source)}]`)),
  ];
}

/** The table for the board beside the weir, in two columns; what lies outside the form's range is marked. */
function boardLines({ name, source, lines, stays }: Board, customary: boolean): string[] {
  const unit = customary ? gallonPerMinute : litrePerSecond;
  const row = ({ mark, flow, valid }: Board["lines"][number]): string => {
    const half = flow?.standardUncertainty().in(unit) ?? 0;
    const [q, u] = flow ? figures(flow.in(unit), k95 * half) : ["–", ""];
    return `${mark.padStart(9)} ${q.padStart(8)} ${u === "" ? "".padEnd(8) : `± ${u}`.padEnd(8)}${valid ? " " : "*"}`;
  };
  const half = Math.ceil(lines.length / 2);
  const head = `${"ruler".padStart(9)} ${unit.symbol.padStart(8)} ${"".padEnd(9)}`;
  return [
    `FLOW BOARD (${name})`,
    `  ${head}  ${lines.length > 1 ? head : ""}`.trimEnd(),
    ...lines.slice(0, half).map((left, i) => {
      const right = lines[half + i];
      return `  ${row(left)}  ${right ? row(right) : ""}`.trimEnd();
    }),
    ...(lines.some(({ valid }) => !valid)
      ? wrap("* outside the range of the form: not to be relied on.")
      : []),
    ...(stays
      ? wrap(
          `${format(stays.flow, unit, 3)} must stay: ${
            stays.level
              ? `the water must stand ${format(stays.level, customary ? inch : millimetre, 3)} over the sill or higher for this notch to leave it`
              : "this notch cannot be relied on to show so little, or so much"
          }.`,
        )
      : []),
    ...wrap(`[${cite(source)}]`),
  ];
}

/** A number and its half width, both to the second figure of the half width. */
function figures(value: number, half: number): [string, string] {
  const places = half > 0 ? Math.max(0, 1 - Math.floor(Math.log10(half))) : 2;
  return [value.toFixed(places), half > 0 ? half.toFixed(places) : ""];
}
