import { cite, type Notice } from "@leat/formula";
import {
  bar,
  coverage95,
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
          ? `${figures(q.in(unit), coverage95 * q.standardUncertainty().in(unit)).join(" ± ")} ${unit.symbol}`
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

/**
 * A number and its half width, both to the second figure of the half width.
 *
 * @param value - The number.
 * @param half - Its half width, above zero.
 * @returns Both as text.
 */
export function figures(value: number, half: number): [string, string] {
  const places = 1 - Number(half.toExponential(1).split("e")[1]);
  if (places >= 0) return [value.toFixed(places), half.toFixed(places)];
  const step = 10 ** -places;
  return [String(Math.round(value / step) * step), String(Math.round(half / step) * step)];
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

/** Where the values of names begin. */
const valuesAt = 33;

/** A name and a value, which goes on under itself where it is long. */
export function line(name: string, value: string): string {
  return wrap(value, `  ${name.padEnd(valuesAt - 3)}`, " ".repeat(valuesAt - 1)).join("\n");
}

/** Wraps a paragraph, its later lines set in. */
export function wrap(text: string, first = " ", later = "     "): string[] {
  const lines: string[] = [];
  let current = first;
  let empty = true;
  // A number stays with its ± and its %.
  for (const word of text.split(/(?<!±) (?!%)/u)) {
    if (current.length + 1 + word.length > width && !empty) {
      lines.push(current);
      current = later;
    }
    current += ` ${word}`;
    empty = false;
  }
  return [...lines, current];
}
