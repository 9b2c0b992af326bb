import { cite, type Notice } from "@leat/formula";
import {
  format,
  gallonPerMinute,
  inch,
  litrePerSecond,
  millimetre,
  type Quantity,
} from "@leat/quantity";
import {
  type Board,
  fieldCautions,
  k95,
  type Measured,
  type Measurement,
  type Measurements,
} from "@leat/scheme";

import { assumption, figures, line, shower, wrap } from "./print.ts";

/** A measurement of either. */
type AnyMeasurement = Measurement<"volume flow"> | Measurement<"gross head">;

/**
 * Measurements as a page for a terminal: stops first, then each with its ± and its source, then those of a day
 * together, then what is to be said of them.
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
  const places = new Map([
    ...placesOf("flow", flow?.measurements ?? []),
    ...placesOf("fall", fall?.measurements ?? []),
  ]);
  // Cautions that are given for what is done, and not for what was found.
  const dangers = new Set(fieldCautions().map(({ code }) => code));
  const told = (wanted: (notice: Notice) => boolean): string[] =>
    notices.filter(wanted).flatMap((notice) => noticeText(notice, places));
  const blocks = [
    [site, `from ${file}; every ± is 95 % (k = 1.96)`],
    ["STOP: correct this first", ...told(({ severity }) => severity === "stop")],
    ["FLOW", ...(flow ? section(flow, show.flow) : [])],
    ["FALL", ...(fall ? section(fall, (q) => show.head(q.as("length"))) : [])],
    ...boards.map((board) => boardLines(board, customary)),
    [
      "LOOK AT THIS",
      ...told((notice) => notice.severity === "caution" && !dangers.has(notice.code)),
    ],
    ["NOTES", ...told(({ severity }) => severity === "note")],
    ["TAKEN FOR YOU (nearly all of it can be given in the survey)", ...assumed.flatMap(assumption)],
    [
      "CAUTIONS (the regulator and local codes come first)",
      ...told(({ code }) => dangers.has(code)),
    ],
  ].filter(([, ...lines]) => lines.length > 0);
  return `${blocks.map((block) => block.join("\n")).join("\n\n")}\n`;
}

/** Where the page has each message: `flow 2, V notch`. */
function placesOf(
  what: string,
  measurements: readonly AnyMeasurement[],
): (readonly [message: string, place: string])[] {
  const places = new Map<string, string[]>();
  measurements.forEach(({ name, notices }, i) => {
    const place = measurements.length > 1 ? `${i + 1}, ${name}` : name;
    for (const { message } of notices) {
      const said = places.get(message);
      if (!said) places.set(message, [place]);
      else if (said.at(-1) !== place) said.push(place);
    }
  });
  return Array.from(places, ([message, said]) => [message, `${what} ${said.join("; ")}`]);
}

/** A notice, the measurement that it is of in front. */
function noticeText(
  { message, source, severity }: Notice,
  places: ReadonlyMap<string, string>,
): string[] {
  const place = places.get(message);
  return wrap(
    `${place === undefined ? "" : `${place}: `}${message}${source && severity === "note" ? ` [${cite(source)}]` : ""}`,
  );
}

/** Every measurement, and those of a day together. */
function section<K extends string>(
  { measurements, combined }: Measured<K>,
  show: (q: Quantity<K>) => string,
): string[] {
  return [
    ...measurements.flatMap((each, i) => one(each, measurements.length > 1 ? i : undefined, show)),
    ...combined.flatMap(({ on, of, value, weights, agree }) =>
      of.length === 1
        ? []
        : [
            `  together${on === undefined ? (combined.length > 1 ? ", no day told" : "") : `, ${on}`}`,
            line(
              "  they come to",
              `${show(value)}${of.some((i) => isStopped(measurements[i])) ? stopped : ""}`,
            ),
            ...(agree ? [] : [line("  they disagree", "the ± is widened, as is told below")]),
            line("  weights", weights.map((w) => percent(w)).join(", ")),
          ],
    ),
  ];
}

function one<K extends string>(
  { name, by, on, value, parts, facts, sources, notices }: Measurement<K>,
  i: number | undefined,
  show: (q: Quantity<K>) => string,
): string[] {
  const title = [name, ...(name === by ? [] : [by]), ...(on === undefined ? [] : [on])].join(", ");
  return [
    `  ${i === undefined ? "" : `${i + 1}. `}${title}`,
    line("  it comes to", `${show(value)}${isStopped({ notices }) ? stopped : ""}`),
    ...(parts.length > 1 ? [line("  the ± is of", mostOf(parts))] : []),
    ...facts.map((fact) => line(`  ${fact.what}`, fact.value)),
    ...sources.flatMap((source) => wrap(`[${cite(source)}]`, "   ", "      ")),
  ];
}

/** Said of a figure that a stop forbids. */
const stopped = ": not to be used";

function isStopped(measurement: { readonly notices: readonly Notice[] } | undefined): boolean {
  return measurement?.notices.some(({ severity }) => severity === "stop") ?? false;
}

/** What the ± is made of: the largest parts, those of one name together. */
function mostOf(parts: Measurement<string>["parts"]): string {
  const shares = new Map<string, number>();
  for (const { what, share } of parts) shares.set(what, (shares.get(what) ?? 0) + share * share);
  return Array.from(shares)
    .toSorted(([, a], [, b]) => b - a)
    .filter(([, share]) => share >= 0.005)
    .slice(0, 3)
    .map(([what, share]) => `${what} ${percent(share)}`)
    .join(", ");
}

function percent(share: number): string {
  return `${(100 * share).toFixed(0)} %`;
}

/** The table for the board beside the weir, in two columns; what lies outside the form's range is marked. */
function boardLines({ name, source, lines, stays }: Board, customary: boolean): string[] {
  const unit = customary ? gallonPerMinute : litrePerSecond;
  const row = ({ mark, flow, valid }: Board["lines"][number]): string => {
    const half = flow?.standardUncertainty().in(unit) ?? 0;
    const [q, u] =
      flow && half > 0
        ? figures(flow.in(unit), k95 * half)
        : [flow ? flow.in(unit).toFixed(2) : "–", ""];
    return `${mark.padStart(9)} ${q.padStart(8)} ${(u && `± ${u}`).padEnd(8)}${valid ? " " : "*"}`;
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
              ? `the water must stand ${format(stays.level, customary ? inch : millimetre, 3)} over the notch or higher for it to leave that`
              : "this notch cannot be relied on to show so little, or so much"
          }.`,
        )
      : []),
    ...wrap(`[${cite(source)}]`),
  ];
}
