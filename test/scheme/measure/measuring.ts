import { NonPhysicalError } from "@leat/formula";
import { type Measurement, type Measurements, measureSurvey } from "@leat/scheme";
import { FileError, OpenError, type Problem, readFieldSurvey } from "@leat/scheme/read";

/** Invented files beside an invented survey, by name. */
export type Files = Readonly<Record<string, string>>;

/** Opens invented files. */
export function opening(files: Files): (name: string) => string {
  return (name) => {
    const text = files[name];
    if (text === undefined)
      throw new OpenError("file/missing", "there is no such file. Check its name and folder.");
    return text;
  };
}

/** Everything that was measured, of a survey's text. */
export function measure(text: string, files: Files = {}): Measurements {
  const { survey, assumed } = readFieldSurvey(text, "creek.yaml", opening(files));
  return measureSurvey(survey, assumed);
}

/** The one measurement of the flow, of what stands under `stream`. */
export function flowBy(way: string, files: Files = {}): Measurement<"volume flow"> {
  const [only] = measure(`stream: ${way}`, files).flow?.measurements ?? [];
  if (!only) throw new Error("no flow");
  return only;
}

/** The one measurement of the fall, of what stands under `fall`. */
export function fallBy(way: string): Measurement<"gross head"> {
  const [only] = measure(`stream: 1 L/s\nfall: ${way}`).fall?.measurements ?? [];
  if (!only) throw new Error("no fall");
  return only;
}

/** What is wrong with a survey or with a file beside it: each as a line of its own. */
export function problemsOf(text: string, files: Files = {}): Problem[] {
  try {
    readFieldSurvey(text, "creek.yaml", opening(files));
  } catch (error) {
    if (error instanceof FileError) return [...error.problems];
    throw error;
  }
  throw new Error("nothing is wrong with it");
}

/** What no stream can have: its place in the survey, its line and its message. */
export function refusalOf(
  text: string,
  files: Files = {},
): { line: number; path: string; message: string } {
  const { survey, place } = readFieldSurvey(text, "creek.yaml", opening(files));
  try {
    measureSurvey(survey);
  } catch (error) {
    if (!(error instanceof NonPhysicalError)) throw error;
    const [notice, ...more] = error.notices;
    if (!notice || more.length > 0) throw error;
    const { path, message } = notice;
    return { line: place(path).line, path: path.join("."), message };
  }
  throw new Error("it was measured");
}

/** Notices of a measurement by code. */
export function said(
  { notices }: Pick<Measurement<string>, "notices">,
  code: string,
): { severity: string; path: string; message: string } | undefined {
  const found = notices.find((notice) => notice.code === code);
  return found && { severity: found.severity, path: found.path.join("."), message: found.message };
}

/** What the ± is made of, in words, the largest first. */
export function partsOf({ parts }: Pick<Measurement<string>, "parts">): string[] {
  return parts.map(({ what }) => what);
}

/** A table of a logger: an invented cloud of salt, `height`·(t − 100 s)·e^(−(t − 100 s)/40 s) over 62 µS/cm. */
export function cloud(
  height: number,
  change: (row: number, reading: number) => number | string = (_, reading) => reading,
  rows = 240,
): string {
  const lines = Array.from({ length: rows }, (_, row) => {
    const t = 5 * row - 100;
    const reading = 62 + (t < 0 ? 0 : height * t * Math.exp(-t / 40));
    return `${5 * row},${change(row, Math.round(100 * reading) / 100)}`;
  });
  return `Time,EC\n${lines.join("\n")}\n`;
}

/** How the invented loggers write their files. */
export const logged =
  "time: Time, time unit: s, conductivity: EC, conductivity unit: µS/cm, reads: compensated";
