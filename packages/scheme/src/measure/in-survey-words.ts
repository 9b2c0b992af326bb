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
  /** Where it stands under the measurement. */
  readonly at: Notice["path"];
  /** Lines of the file that rows stand on, from 1. */
  readonly lines?: ArrayLike<number> | undefined;
  /** The file that they stand in. */
  readonly file?: string | undefined;
}

/** Keys that probes have in common: they stand beside the probes. */
const ofAllProbes = /* @__PURE__ */ new Set([
  "background",
  "calibration",
  "injectedConcentration",
  "injectionRate",
  "mass",
  "plateau",
  "window",
]);

/**
 * Where a notice stands under its measurement.
 *
 * @param path - Where it stands in the input of a formula.
 * @param about - What it is about.
 * @returns Keys of the survey and rows from 0.
 */
export function inSurveyKeys(
  path: Notice["path"],
  { way, at }: Pick<About, "way" | "at">,
): (string | number)[] {
  const beside = at[1] === "probes" && ofAllProbes.has(String(path[0]));
  return [
    ...(beside ? at.slice(0, 1) : at),
    // Fillings are the list itself, and the fall is what the measurement is of.
    ...path.flatMap((part) =>
      part === "repeats" || part === "fall"
        ? []
        : [typeof part === "number" ? part : keyOf(part, way)],
    ),
  ];
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
export function inSurveyWords({ message, code }: Notice, about: About): string {
  const { way, lines } = about;
  return withoutIds(message, code, about)
    .replaceAll(rowed, (_, list: string, row: string, input: string | undefined) =>
      [
        list === "repeats" ? "bucket" : keyOf(list, way),
        Number(row) + 1,
        ...(input ? [keyOf(input, way)] : []),
      ].join("."),
    )
    .replaceAll(/\b[a-z]+(?:[A-Z][a-z]+)+\b/gu, (name) => keyOf(name, way))
    .replaceAll("background.before", "background")
    .replaceAll(" over heights", "")
    .replace(/; it is not added unless \w+ asks for it/u, "")
    .replaceAll(/\b(\d+(?:\.\d+)?) h\b/gu, (_, hours: string) => clockOf(Number(hours)))
    .replaceAll(/\brow (\d+)/gu, (_, row: string) => placeOf(Number(row), lines))
    .replaceAll(
      /(\d+) rows: (\d+(?: to \d+)?(?:, \d+(?: to \d+)?)*)/gu,
      (_, count: string, rows: string) =>
        `${count} rows${lines ? ", on lines" : ":"} ${rows.replaceAll(/\d+/gu, (row) => String(numberOf(Number(row), lines)))}`,
    );
}

/** A time of day as it is written in a survey. */
function clockOf(hours: number): string {
  const minutes = Math.round(60 * hours);
  return [Math.floor(minutes / 60), minutes % 60].map((n) => String(n).padStart(2, "0")).join(":");
}

function numberOf(row: number, lines: ArrayLike<number> | undefined): number {
  return lines?.[row] ?? row + 1;
}

function placeOf(row: number, lines: ArrayLike<number> | undefined): string {
  return `${lines ? "line" : "row"} ${numberOf(row, lines)}`;
}

/** Takes the name of the formula from the front, and the names of sources out of the middle. */
function withoutIds(message: string, code: string, { source, file }: About): string {
  const [id = ""] = code.split("/");
  const [first = "", ...more] = [id, "levelling"]
    .reduce(
      (text, name) => (text.startsWith(`${name}: `) ? text.slice(name.length + 2) : text),
      message,
    )
    .replaceAll(/(^|: )(?:[a-z]+(?:-[a-z]+)+: )+/gu, "$1")
    .split(source);
  return more.reduce(
    (before, after) =>
      before +
      after.replace(/^((?:\.[A-Za-z]+)*)(: )?/u, (_, tail: string, colon: string | undefined) => {
        const last = tail.split(".").at(-1) ?? "";
        // A probe is named by its file; the way is told where the notice is shown.
        if (colon && last !== "calibration" && (before === "" || last.startsWith("salt")))
          return "";
        return before === "" && colon ? `${file ?? last}: ` : `the ${last}${colon ?? ""}`;
      }),
    first,
  );
}
