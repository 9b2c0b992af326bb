import type { Notice } from "@leat/formula";

// Formulas and analyses speak of their inputs by the names that programs give them, and count rows from 0. Who wrote a
// survey knows the keys of the survey, and the lines of its files.

/** Inputs by the keys that they have in a survey; by the way of measuring where one name is several keys. */
const keys: Readonly<Record<string, string>> = {
  accuracy: "class",
  airTemperature: "air",
  altitude: "reads",
  approachWidth: "channel",
  atEightTenths: "eight tenths",
  atSixTenths: "six tenths",
  atSurface: "surface",
  atTwoTenths: "two tenths",
  averageDepth: "depth",
  basis: "reads",
  crestHeight: "sill",
  crestLength: "length",
  dischargeCoefficient: "coefficient",
  floatCoefficient: "coefficient",
  floodAboveLowerMark: "flood above lower mark",
  fullScale: "full scale",
  gaugeAboveJet: "gauge above nozzles",
  injectedConcentration: "solution",
  injectionRate: "rate",
  jets: "open",
  lowerPressure: "lower",
  lowerReading: "lower",
  nozzleAboveLowerMark: "nozzles above lower mark",
  nozzleDiameter: "bore",
  notchWidth: "width",
  pipeDiameter: "bore",
  pressure: "reads",
  reachLength: "stretch",
  rodLength: "rod",
  runs: "times",
  setups: "out",
  standard: "solution",
  tailWaterAboveLowerMark: "tail water above lower mark",
  tailwaterHead: "tail water",
  upperPressure: "upper",
  upperReading: "upper",
  waterAboveUpperMark: "water above upper mark",
  zeroFlowStage: "zero",
  "gauge.zero": "gauge zero",
  "meter.distance": "at",
};

/** Lists whose rows a message names: `verticals.0`. A survey counts them from 1. */
const rowed =
  /\b(verticals|edges|readings|repeats|times|runs|sections|setups|returning|steps|again|gaugings|jets)\.(\d+)(?:\.(\w+))?/gu;

/** What a message is about. */
export interface About {
  /** Begins the names of its sources of uncertainty, which a message may name: `creek.stream.measured.2`. */
  readonly source: string;
  /** The way of measuring: `notch`. */
  readonly way: string;
  /** Lines of the file that rows stand on, from 1. */
  readonly lines?: ArrayLike<number> | undefined;
}

/**
 * Where a notice stands in the survey, under its way of measuring.
 *
 * @param path - Where it stands in the input of a formula.
 * @param about - What it is about.
 * @returns Keys of the survey and rows from 0.
 */
export function inSurveyKeys(
  path: Notice["path"],
  { way }: Pick<About, "way">,
): (string | number)[] {
  // Fillings are the list itself.
  return path.flatMap((part) =>
    part === "repeats" ? [] : [typeof part === "number" ? part : keyOf(part, way)],
  );
}

function keyOf(name: string, way: string): string {
  return keys[`${way}.${name}`] ?? keys[name] ?? name;
}

/**
 * A message in the words of a survey: its keys, rows from 1 or the lines of a file, no ids.
 *
 * @param notice - The notice.
 * @param about - What it is about.
 * @returns The message.
 */
export function inSurveyWords({ message, code }: Notice, { source, way, lines }: About): string {
  return withoutIds(message, code, source)
    .replaceAll(rowed, (_, list: string, row: string, input: string | undefined) =>
      [
        list === "repeats" ? "bucket" : keyOf(list, way),
        Number(row) + 1,
        ...(input ? [keyOf(input, way)] : []),
      ].join("."),
    )
    .replaceAll(/\b[a-z]+(?:[A-Z][a-z]+)+\b/gu, (name) => keyOf(name, way))
    .replaceAll("background.before", "background")
    .replace(/; it is not added unless \w+ asks for it/u, "")
    .replaceAll(/\brow (\d+)/gu, (_, row: string) => placeOf(Number(row), lines))
    .replaceAll(
      /(\d+) rows: (\d+(?: to \d+)?(?:, \d+(?: to \d+)?)*)/gu,
      (_, count: string, rows: string) =>
        `${count} rows${lines ? ", on lines" : ":"} ${rows.replaceAll(/\d+/gu, (row) => String(numberOf(Number(row), lines)))}`,
    );
}

function numberOf(row: number, lines: ArrayLike<number> | undefined): number {
  return lines?.[row] ?? row + 1;
}

function placeOf(row: number, lines: ArrayLike<number> | undefined): string {
  return `${lines ? "line" : "row"} ${numberOf(row, lines)}`;
}

/** Takes the name of the formula from the front, and the names of sources out of the middle. */
function withoutIds(message: string, code: string, source: string): string {
  const [id = ""] = code.split("/");
  const [first = "", ...more] = (
    message.startsWith(`${id}: `) ? message.slice(id.length + 2) : message
  )
    .replaceAll(/(^|: )(?:[a-z]+(?:-[a-z]+)+: )+/gu, "$1")
    .split(source);
  return more.reduce(
    (before, after) =>
      before +
      after.replace(/^((?:\.[A-Za-z]+)*)(: )?/u, (_, tail: string, colon: string | undefined) => {
        const last = tail.split(".").at(-1) ?? "";
        // A probe is named by its file.
        if (colon && (last === "salt" || last === "saltFeed")) return "";
        return before === "" && colon ? `${last}: ` : `the ${last}${colon ?? ""}`;
      }),
    first,
  );
}
