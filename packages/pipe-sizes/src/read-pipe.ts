import { QuantityError } from "@leat/quantity";

import { pipe, pipesOf, type PipeChoice } from "./any-pipe.ts";
import type { Pipe } from "./pipe.ts";

/** Longer than any name of a pipe. */
const longest = 60;

const size = String.raw`(?<size>\d+(?:[ -]\d+\/\d+)?|\d+\/\d+|\d*[½¼¾]|\d*\.\d+)`;
const unit = String.raw`\s*-?\s*(?<unit>inches|inch|in\.?|"|″|millimetres?|mm)`;
const material = String.raw`\s*(?<material>HDPE|PE|u?PVC)\s*-?\s*(?<grade>100|80|4710|3608|1120)?(?:\s+pipe)?`;
const wall = String.raw`[\s,]+(?<how>SDR|DR|Schedule|Sch\.?)\s*-?\s*(?<ratio>\d+(?:\.\d+)?)`;
const form = new RegExp(`^${size}${unit}${material}${wall}$`, "i");

const forms = "4 in PE DR 11, 110 mm PE100 SDR 17, 4 in PVC Sch 40 or 4 in PVC SDR 26";

/** Halves and quarters, as a keyboard and as a table write them. */
const fractions: Readonly<Record<string, string>> = {
  "½": "1/2",
  "¼": "1/4",
  "¾": "3/4",
  ".5": "1/2",
  ".25": "1/4",
  ".75": "3/4",
};

/**
 * A pipe by its name, as people write it: `4 in PE DR 11`, `110 mm PE100 SDR 17`, `1 1/2" PVC Sch 40`, `4 in PVC SDR 26`.
 *
 * PE in inches is PE4710 and in millimetres PE100 unless a grade is written; the name of the pipe that comes back says so.
 * The average wall is taken for the bore, see {@link boreOf}.
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
 * ```
 */
export function readPipe(text: string): Pipe {
  return pipe(choiceOf(text));
}

/**
 * Every pipe of the class of a pipe, by its name: the same series, material and dimension ratio or schedule, from the
 * narrowest bore to the widest.
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
  const part = found.groups as {
    size: string;
    unit: string;
    material: string;
    grade?: string;
    how: string;
    ratio: string;
  };
  const metric = part.unit.toLowerCase().startsWith("m");
  const plastic = part.material.toUpperCase().endsWith("PVC") ? "PVC" : "PE";
  const schedule = part.how.toLowerCase().startsWith("sch");
  const ratio = Number(part.ratio);
  if (metric && plastic === "PVC")
    refuse(text, "PVC is known here in inches only, such as 4 in PVC Sch 40");
  if (plastic === "PE" && schedule)
    refuse(text, "PE is made by dimension ratio, such as DR 11, and not by schedule");
  if (plastic === "PVC" && part.how.toUpperCase() === "DR") {
    refuse(
      text,
      "PVC in iron pipe sizes is named by SDR or Sch; DR is the name of municipal PVC with another outside diameter",
    );
  }
  if (metric && !/^\d+$/.test(part.size))
    refuse(text, "sizes in millimetres are whole numbers, such as 110 mm");
  const grade = part.grade && `${plastic}${part.grade}`;
  const allowed =
    plastic === "PVC" ? ["PVC1120"] : metric ? ["PE100", "PE80"] : ["PE4710", "PE3608"];
  if (grade && !allowed.includes(grade))
    refuse(text, `in ${metric ? "millimetres" : "inches"} the grade is ${allowed.join(" or ")}`);
  // The table of the series refuses a size or a ratio that it does not hold: the types are checked there, at run time.
  const choice = metric
    ? { series: "PE ISO", size: Number(part.size), sdr: ratio, material: grade }
    : plastic === "PE"
      ? { series: "PE IPS", size: inches(part.size), dr: ratio, material: grade }
      : schedule
        ? { series: "PVC schedule", size: inches(part.size), schedule: ratio }
        : { series: "PVC SDR", size: inches(part.size), sdr: ratio };
  return choice as unknown as PipeChoice;
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
