import { QuantityError } from "@leat/quantity";

import { pipe, pipesOf, type PipeChoice } from "./any-pipe.ts";
import type { Pipe } from "./pipe.ts";
import { type PeIsoMaterial, peIsoRatioOf } from "./series/pe-iso-pipe.ts";
import { pvcIsoPressureOf, type PvcIsoSize } from "./series/pvc-iso-pipe.ts";

/** Longer than any name of a pipe. */
const longest = 60;

const sizeForm = String.raw`(?<size>\d+(?:[ -]\d+\/\d+)?|\d+\/\d+|\d*[½¼¾]|\d*\.\d+)`;
const unitForm = String.raw`\s*-?\s*(?<unit>inches|inch|in\.?|"|″|millimetres?|mm)`;
const finishForm = String.raw`(?:(?<finish>black|carbon|galvani[sz]ed|galv\.?)\s+)?`;
const materialForm = String.raw`\s*${finishForm}(?<material>steel|HDPE|PE|u?PVC(?:-?U)?)\s*-?\s*(?<grade>100|80|4710|3608|1120)?(?:\s+pipe)?`;
const ratioForm = String.raw`(?<how>SIDR|SDR|DR|PN|Schedule|Sch\.?)\s*-?\s*(?<ratio>\d+(?:\.\d+)?)`;
const wallForm = String.raw`[\s,]+(?:${ratioForm}|(?<standard>STD\.?|standard))(?:[\s,]+(?:coil|pipe))?`;
const form = new RegExp(`^${sizeForm}${unitForm}${materialForm}${wallForm}$`, "i");

const forms =
  "4 in PE DR 11, 2 in PE SIDR 15, 110 mm PE100 SDR 17, 4 in PVC Sch 40, 4 in PVC SDR 26, 110 mm PVC PN 10 or 3 in steel Sch 40";

/** Halves and quarters, as a keyboard and as a table write them. */
const fractions: Readonly<Record<string, string>> = {
  "½": "1/2",
  "¼": "1/4",
  "¾": "3/4",
  ".5": "1/2",
  ".25": "1/4",
  ".75": "3/4",
};

/** What a name says. */
interface Parts {
  readonly size: string;
  readonly unit: string;
  readonly finish?: string;
  readonly material: string;
  readonly grade?: string;
  readonly how?: string;
  readonly ratio?: string;
  readonly standard?: string;
}

/**
 * A pipe by its name, as people write it: `4 in PE DR 11`, `2 in PE SIDR 15 coil`, `110 mm PE100 SDR 17`, `63 mm PE PN 16`,
 * `1 1/2" PVC Sch 40`, `4 in PVC SDR 26`, `110 mm PVC PN 10`, `3 in steel Sch 40`, `2 in galvanised steel STD`.
 *
 * PE in inches is PE4710 and in millimetres PE100 unless a grade is written, and steel is black unless it is galvanised;
 * the name of the pipe that comes back says so. Pipe by nominal pressure comes back by that, or by its dimension ratio if
 * it is PE. The average wall is taken for the bore, see {@link boreOf}.
 *
 * @param text - The name.
 * @returns The pipe.
 * @throws QuantityError `size` where the text is no name of a pipe or no such pipe is made; the message lists those that are.
 * @example
 * ```ts
 * import { readPipe } from "@leat/pipe-sizes";
 * import { inch } from "@leat/quantity";
 *
 * const p = readPipe("4 in PE DR 11");
 * p.name; // => "4 in PE4710 DR 11"
 * p.insideDiameter.average.in(inch); // => 3.633
 * readPipe("2 in PE SIDR 15 coil").name; // => "2 in PE4710 SIDR 15"
 * readPipe("110 mm PE PN 10").name; // => "110 mm PE100 SDR 17"
 * ```
 */
export function readPipe(text: string): Pipe {
  return pipe(choiceOf(text));
}

/**
 * Every pipe of the class of a pipe, by its name: the same series, material and dimension ratio, schedule or nominal
 * pressure, from the narrowest bore to the widest.
 *
 * @param text - The name of one of them.
 * @returns The pipes.
 * @throws QuantityError `size` as `readPipe` does.
 * @example
 * ```ts
 * import { pipesLike } from "@leat/pipe-sizes";
 *
 * const names = pipesLike("4 in PE DR 11").map(({ name }) => name);
 * names[names.indexOf("4 in PE4710 DR 11") + 1]; // => "5 in PE4710 DR 11"
 * ```
 */
export function pipesLike(text: string): Pipe[] {
  const choice = choiceOf(text);
  pipe(choice);
  return pipesOf(choice);
}

function choiceOf(text: string): PipeChoice {
  const found = typeof text === "string" && text.length <= longest ? form.exec(text.trim()) : null;
  if (!found?.groups) refuse(text, `write it as ${forms}`);
  const part = found.groups as unknown as Parts;
  const metric = part.unit.toLowerCase().startsWith("m");
  if (metric && !/^\d+$/.test(part.size))
    refuse(text, "sizes in millimetres are whole numbers, such as 110 mm");
  const named = /steel|PE|PVC/i.exec(part.material)?.[0].toLowerCase();
  if (named !== "steel" && part.finish)
    refuse(text, `${part.finish} is said of steel, and not of ${part.material}`);
  // The table of the series refuses a size or a ratio that it does not hold: the types are checked there, at run time.
  const choice =
    named === "steel"
      ? steelChoice(text, part, metric)
      : named === "pe"
        ? peChoice(text, part, metric)
        : pvcChoice(text, part, metric);
  return choice as unknown as PipeChoice;
}

/** How a wall is named, in one word. */
function howOf({ how, standard }: Parts): "SDR" | "DR" | "SIDR" | "PN" | "Sch" | "STD" {
  if (standard) return "STD";
  const word = (how as string).toUpperCase();
  return word.startsWith("SCH") ? "Sch" : (word as "SDR");
}

function peChoice(text: string, part: Parts, metric: boolean): object {
  const how = howOf(part);
  const ratio = Number(part.ratio);
  if (how === "Sch")
    refuse(text, "PE is made by dimension ratio, such as DR 11, and not by schedule");
  if (how === "STD") refuse(text, "STD is a wall of steel pipe");
  const material = gradeOf(text, part, metric ? ["PE100", "PE80"] : ["PE4710", "PE3608"], metric);
  if (metric) {
    if (how === "SIDR") refuse(text, "SIDR is a ratio of pipe in inches, such as 2 in PE SIDR 15");
    const sdr = how === "PN" ? peIsoRatioOf(ratio, material as PeIsoMaterial) : ratio;
    return { series: "PE ISO", size: Number(part.size), sdr, material };
  }
  if (how === "PN")
    refuse(text, "PN is said of pipe in millimetres; in inches PE is named by DR or SIDR");
  return how === "SIDR"
    ? { series: "PE SIDR", size: inches(part.size), sidr: ratio, material }
    : { series: "PE IPS", size: inches(part.size), dr: ratio, material };
}

function pvcChoice(text: string, part: Parts, metric: boolean): object {
  const how = howOf(part);
  const ratio = Number(part.ratio);
  if (how === "STD") refuse(text, "STD is a wall of steel pipe");
  if (how === "SIDR") refuse(text, "SIDR is a ratio of PE pipe, such as 2 in PE SIDR 15");
  gradeOf(text, part, ["PVC1120"], metric);
  if (metric) {
    if (how !== "PN" && how !== "SDR")
      refuse(text, "in millimetres PVC is named by PN or SDR, such as 110 mm PVC PN 10");
    const size = Number(part.size) as PvcIsoSize;
    return {
      series: "PVC ISO",
      size,
      pressure: how === "PN" ? ratio : pvcIsoPressureOf(size, ratio),
    };
  }
  if (how === "PN")
    refuse(text, "PN is said of pipe in millimetres; in inches PVC is named by Sch or SDR");
  if (how === "DR") {
    refuse(
      text,
      "PVC in iron pipe sizes is named by SDR or Sch; DR is the name of municipal PVC with another outside diameter",
    );
  }
  return how === "Sch"
    ? { series: "PVC schedule", size: inches(part.size), schedule: ratio }
    : { series: "PVC SDR", size: inches(part.size), sdr: ratio };
}

function steelChoice(text: string, part: Parts, metric: boolean): object {
  const how = howOf(part);
  if (metric) refuse(text, "steel is known here by nominal inches only, such as 3 in steel Sch 40");
  if (part.grade) refuse(text, `${part.grade} is no grade of steel pipe here`);
  if (how !== "Sch" && how !== "STD")
    refuse(text, "steel is made by schedule, such as Sch 40 or STD");
  return {
    series: "steel",
    size: inches(part.size),
    schedule: how === "STD" ? "STD" : Number(part.ratio),
    finish: /^galv/i.test(part.finish ?? "") ? "galvanised" : "black",
  };
}

/** The grade that is written, if it is one of those that are sold so. */
function gradeOf(
  text: string,
  { material, grade }: Parts,
  allowed: readonly string[],
  metric: boolean,
): string | undefined {
  if (!grade) return undefined;
  const full = `${/PVC|PE/i.exec(material)?.[0].toUpperCase()}${grade}`;
  if (!allowed.includes(full))
    refuse(text, `in ${metric ? "millimetres" : "inches"} the grade is ${allowed.join(" or ")}`);
  return full;
}

/** `1-1/2`, `1½`, `1.5` → `1 1/2`, the key of the tables. */
function inches(written: string): string {
  const [, whole = "", part = ""] = /^(\d*)(?:[ -](?=\d))?(.*)$/.exec(written) ?? [];
  if (/^\d+\/\d+$/.test(written) || part === "") return written;
  const fraction = fractions[part] ?? part;
  return whole === "" || whole === "0" ? fraction : `${whole} ${fraction}`;
}

function refuse(text: unknown, why: string): never {
  throw new QuantityError(
    "size",
    `${JSON.stringify(String(text).slice(0, longest))} is not read as a pipe: ${why}.`,
  );
}
