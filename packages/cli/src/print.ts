import { cite, type Notice } from "@leat/formula";
import {
  bar,
  foot,
  footPerSecond,
  format,
  gallonPerMinute,
  inch,
  litrePerSecond,
  metre,
  metrePerSecond,
  millimetre,
  poundPerSquareInch,
  type Quantity,
  type Unit,
} from "@leat/quantity";
import type { Assumed } from "@leat/scheme";

const width = 92;

/** Prints quantities in the units of a survey. */
export type Show = ReturnType<typeof shower>;

/**
 * Prints a quantity in the survey's own units, with the other system behind it.
 *
 * @param customary - Whether feet, gallons and psi come first.
 * @param sure - Whether the ± is printed with it; the page says that it is 95 %.
 * @returns A printer for each kind.
 */
export function shower(
  customary: boolean,
  sure = false,
): {
  flow(q: Quantity<"volume flow">): string;
  head(q: Quantity<"length">): string;
  bore(q: Quantity<"length">): string;
  pressure(q: Quantity<"pressure">): string;
  velocity(q: Quantity<"velocity">): string;
} {
  const pair =
    <K extends string>(us: Unit<K>, si: Unit<K>, digits = 3) =>
    (q: Quantity<K>): string => {
      const [first, second] = customary ? [us, si] : [si, us];
      const text = (unit: Unit<K>): string =>
        sure && q.sources().size > 0
          ? format(q, unit, { plusMinus: true }).replace(/ \(k = [\d.]+\)$/u, "")
          : format(q, unit, digits);
      return `${text(first)} (${text(second)})`;
    };
  return {
    flow: pair(gallonPerMinute, litrePerSecond),
    head: pair(foot, metre, 4),
    bore: pair(inch, millimetre, 4),
    pressure: pair(poundPerSquareInch, bar),
    velocity: pair(footPerSecond, metrePerSecond),
  };
}

/** Something that was taken for the user. */
export function assumption({ path, what, value, because }: Assumed): string[] {
  const where = path
    .map((part) =>
      typeof part === "number" ? part + 1 : part.replaceAll(/[A-Z]/g, (c) => ` ${c.toLowerCase()}`),
    )
    .join(".");
  return wrap(`${where}: ${what}: ${value}${because ? ` [${cite(because)}]` : ""}`);
}

/** A notice, its code in front. */
export function noticeLines({ code, message, source, severity }: Notice): string[] {
  // What a formula says begins with its own name, which is a word of programs.
  const plain = message.replace(/^[a-z]+(-[a-z]+)+: /u, "");
  return wrap(`${code}: ${plain}${source && severity !== "caution" ? ` [${cite(source)}]` : ""}`);
}

/** A name and a value. */
export function line(name: string, value: string): string {
  return `  ${name.padEnd(30)} ${value}`;
}

/** Wraps a paragraph, its later lines set in. */
export function wrap(text: string): string[] {
  const lines: string[] = [];
  let current = " ";
  for (const word of text.split(" ")) {
    if (current.length + 1 + word.length > width && current.trim() !== "") {
      lines.push(current);
      current = "     ";
    }
    current += ` ${word}`;
  }
  return [...lines, current];
}
