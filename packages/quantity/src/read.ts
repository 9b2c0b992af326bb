import { QuantityError, type QuantityErrorCode } from "./error.ts";
import { fieldText } from "./field-text.ts";
import { originTable } from "./generated/kinds.ts";
import type { ExponentsOf } from "./generated/types.ts";
import { one } from "./generated/units.ts";
import { unitWords } from "./generated/words.ts";
import { type KindInfo, kindOf, rootKind } from "./kind.ts";
import { mixCurrency } from "./mix-currency.ts";
import { currency, isCurrency } from "./money.ts";
import { type AnyPoint, celsius, fahrenheit, type Origin, Point, type PointUnit } from "./point.ts";
import { type AnyQuantity, isQuantity, Quantity } from "./quantity.ts";
import type { Reading } from "./reading.ts";
import { isSizeText } from "./size.ts";
import { coverage95, rectangle } from "./sources.ts";
import { type AnyUnit, combine, Unit } from "./unit.ts";

/** What is known of a reading beside its text. */
export interface ReadOptions {
  /** The smallest step of the instrument; without it, it is taken from the digits written, and said to be assumed. */
  readonly resolution?: AnyQuantity | { readonly value: number; readonly unit: string } | undefined;
  /** Names the source of a ± in the text; without it, the text itself, so that two equal texts would share it. */
  readonly source?: string | undefined;
  /** Which station, datum or staff, for a gauge pressure, an elevation or a stage. */
  readonly instance?: string | undefined;
  /** The decimal mark of the survey, where it is known; the other one then groups thousands. */
  readonly decimalMark?: "." | "," | undefined;
}

/** A unit as it was found, with what else its text says. */
interface Found {
  readonly unit: AnyUnit;
  /** US customary: a comma groups thousands. */
  readonly us?: boolean;
  /** For `psig`, `psia`, `°C`. */
  readonly origin?: Origin;
  /** For `°C` and `°F`. */
  readonly scale?: PointUnit<"absolute zero">;
}

/**
 * Reads what a person typed: `110 ft`, `3-1/2 in`, `5'-7 1/4"`, `50 psig`, `110 ± 2 ft`, `3.20 USD/ft`.
 *
 * Nothing is evaluated and nothing is guessed. A comma groups thousands only with US customary units
 * or where `decimalMark` is given. A gallon is a US gallon. `± 2 ft` is a 95 % interval of a normal
 * distribution, `max 2 ft` a rectangle; after a percentage, `± 2 %` is percentage points. `C` is the
 * coulomb and `F` the farad: temperatures are `°C`, `degC`, `°F`; `K` is a difference unless an
 * absolute temperature is asked for. A pressure that does not say so carries the question whether it
 * is gauge or absolute. `2/0 AWG` is a size, for `readSize`; AWG is never read as the florin.
 *
 * @param text - As typed, at most 200 characters.
 * @param options - What is known beside the text.
 * @returns A quantity or a point, which keeps its reading.
 * @throws {@link QuantityError} the only error; its code says what is the matter.
 * @example
 * ```ts
 * import { read } from "@leat/quantity/text";
 *
 * read("110 ft", "gross head").in(metre); // => 33.528
 * ```
 */
export function read(text: string, options?: ReadOptions): AnyQuantity | AnyPoint;
/**
 * Reads what a person typed as a point: see the first form.
 *
 * @param text - As typed, at most 200 characters.
 * @param as - The origin that is asked for.
 * @param options - What is known beside the text.
 * @returns The point, which keeps its reading.
 * @throws {@link QuantityError} the only error; its code says what is the matter.
 */
export function read<O extends Origin>(text: string, as: O, options?: ReadOptions): Point<O>;
/**
 * Reads what a person typed as a quantity of one kind: see the first form.
 *
 * @param text - As typed, at most 200 characters.
 * @param as - The kind that is asked for.
 * @param options - What is known beside the text.
 * @returns The quantity, which keeps its reading.
 * @throws {@link QuantityError} the only error; its code says what is the matter.
 */
export function read<K extends keyof ExponentsOf | (string & {})>(
  text: string,
  as: K,
  options?: ReadOptions,
): Quantity<K>;
export function read(
  text: string,
  as?: string | ReadOptions,
  options?: ReadOptions,
): AnyQuantity | AnyPoint {
  return typeof as === "object"
    ? readAs(text, undefined, as ?? {})
    : readAs(text, as, options ?? {});
}

/**
 * The unit that a text names: `gal/min`, `J/(kg·K)`, `USD/ft`.
 *
 * @param text - A symbol, a word, or products and quotients of them.
 * @returns The unit.
 * @throws {@link QuantityError} `unknown-unit`, `ambiguous`; also for `°C` and `psig`, which have a zero of their own.
 */
export function unitOf(text: string): Unit<string> {
  const { unit, origin } = findUnit(fieldText(text));
  if (origin) throw fail("unknown-unit", `${text} is not a unit of a quantity, but of a point`);
  return unit as Unit<string>;
}

function fail(code: QuantityErrorCode, message: string): QuantityError {
  return new QuantityError(code, message);
}

function readAs(
  text: string,
  as: string | undefined,
  options: ReadOptions,
): AnyQuantity | AnyPoint {
  const line = fieldText(text)
    .replace(/ ?\(k ?= ?1\.96\)$/, "")
    .replace(/^\((.+?) ?(±|\+\/?-) ?(.+?)\) ?(.+)$/, "$1 $4 $2 $3 $4");
  if (isSizeText(line)) throw fail("size", `${line} is a size: readSize reads it`);
  if (/[$€£¥]/.test(line))
    throw fail("ambiguous", `${line}: write the code of the currency, such as USD`);
  const [, main = line, sign, max, spread] =
    /^(.*?) ?(±|\+\/?-| max\b) ?(max\b)?\.? ?(.+)$/i.exec(line) ?? [];

  const asPoint = as !== undefined && Object.hasOwn(originTable, as);
  const wanted = as === undefined ? undefined : kindOf(asPoint ? (originTable[as]?.[0] ?? "") : as);
  const number = parse(main);
  const half = spread === undefined ? undefined : parse(spread);
  const halfUnit = half?.unit ? findUnit(half.unit) : undefined;
  const feet = /^(?:'|(?:ft\.?|foot|feet)(?=[ -]))[ -]*(\d.*)$/.exec(number.unit)?.[1];
  const inches = feet === undefined ? undefined : parse(feet);
  const unitText = (inches ?? number).unit;
  const found = unitText
    ? findUnit(unitText)
    : halfUnit?.unit.symbol === "%"
      ? undefined
      : halfUnit;
  const {
    unit,
    us,
    scale,
    origin = asPoint ? (as as Origin) : undefined,
  } = found ?? bare(main, wanted, halfUnit);

  checkKind(line, unit, wanted, as, asPoint, origin);
  const numberIn = (of: Parsed, by?: boolean): [number, number] =>
    valueOf(of, options.decimalMark, by);
  let [value, step] = numberIn(inches ?? number, us);
  if (inches) {
    if (unit.symbol !== "in" || !/^\d+$/.test(number.digits) || number.power || value >= 12) {
      throw fail("number", `${main} is not feet and inches`);
    }
    value += 12 * Number(number.digits);
  }
  if (number.minus) value = 0 - value;

  let within: number | undefined;
  if (half) {
    within = numberIn(half, (halfUnit ?? { us }).us)[0];
    if (half.minus) throw fail("number", `± ${spread} is negative`);
    if (halfUnit?.unit.symbol === "%" && unit.symbol !== "%") {
      if (scale)
        throw fail("ambiguous", `${line}: a percentage of a temperature depends on its zero`);
      within *= Math.abs(value) / 100;
    } else if (halfUnit) within = convert(within, halfUnit.unit, unit);
    else if (unit !== one) throw fail("no-unit", `± ${spread} has no unit`);
  }
  const shape = max || / max/i.test(sign ?? "") ? "rectangle" : "normal";

  const given = options.resolution;
  const resolution = !given
    ? step
    : isQuantity(given)
      ? given.in(scale?.unit ?? unit)
      : convert(given.value, findUnit(fieldText(given.unit)).unit, unit);
  if (!(Number.isFinite(resolution) && resolution > 0))
    throw fail("number", `a resolution of ${resolution} ${unit.symbol} is not a step`);
  const reading: Reading = {
    text: text.trim(),
    resolution,
    assumed: !given,
    ...(within !== undefined && { spread: { half: within, shape } }),
    ...(unit.kind === "pressure" && !origin && { question: "gauge or absolute?" }),
  };

  const si = unit.toSI(value + (scale?.offset ?? 0));
  if (!Number.isFinite(si)) throw fail("not-finite", `${line} is beyond what a number holds`);
  const deviation = within ? unit.toSI(within) / (shape === "normal" ? coverage95 : rectangle) : 0;
  const sources = deviation ? new Map([[options.source ?? text.trim(), deviation]]) : undefined;
  if (origin) {
    const instance = originTable[origin]?.[1] ? options.instance : undefined;
    return new Point(origin, si, instance, sources, value, scale ?? unit, reading);
  }
  return new Quantity(as ?? unit.kind, si, sources, unit.currency, value, unit, reading);
}

/** A unit for a number without one: only where a ratio is asked for. */
function bare(main: string, wanted: KindInfo | undefined, halfUnit: Found | undefined): Found {
  if (halfUnit) throw fail("ambiguous", `${main} ± %: write the unit of ${main}`);
  if (wanted?.packed === 0) return { unit: one };
  throw fail(
    "no-unit",
    `${main} has no unit${wanted ? `: ${wanted.name} takes ${unitsOf(wanted)}` : ""}`,
  );
}

/** Refuses what is not of the kind or the origin that is asked for. */
function checkKind(
  line: string,
  unit: AnyUnit,
  wanted: KindInfo | undefined,
  as: string | undefined,
  asPoint: boolean,
  origin: Origin | undefined,
): void {
  if (!wanted) return;
  if (origin && origin !== as) {
    throw fail("origin", `${line} is a point over ${origin}, and ${as} is asked for`);
  }
  const { packed, plain } = kindOf(unit.kind);
  if (packed !== wanted.packed || (unit.kind !== plain && unit.kind !== as)) {
    const degrees = as === "absolute zero" ? ", °C, °F" : "";
    throw fail(
      "kind",
      `${line} is a ${unit.kind}, and ${asPoint ? "a point over " : ""}${as} takes ${unitsOf(wanted)}${degrees}`,
    );
  }
}

/** Symbols of the units of a kind. */
function unitsOf({ packed, unit }: KindInfo): string {
  return (
    unitWords
      .filter(([of]) => kindOf(of.kind).packed === packed)
      .map(([of]) => of.symbol)
      .join(", ") || unit
  );
}

/** A number in another unit of the same kind, untouched where it is the same unit. */
function convert(value: number, from: AnyUnit, to: AnyUnit): number {
  if (kindOf(from.kind).packed !== kindOf(to.kind).packed) {
    throw fail(
      "kind",
      `${value} ${from.symbol} (${from.kind}) does not go with ${to.symbol} (${to.kind})`,
    );
  }
  mixCurrency(from.currency, to.currency);
  return from.numerator === to.numerator && from.denominator === to.denominator
    ? value
    : to.fromSI(from.toSI(value));
}

/** A number as it is written, and the text after it. */
interface Parsed {
  readonly text: string;
  readonly minus: boolean;
  /** Whole part, numerator and denominator of a fraction. */
  readonly whole: string;
  readonly top: string;
  readonly bottom: string | undefined;
  /** Digits and marks of a decimal number. */
  readonly digits: string;
  readonly power: number;
  readonly unit: string;
}

function parse(text: string): Parsed {
  const match =
    /^([-+]?) ?(?:(?:(\d+)[ -])?(\d+) ?\/ ?(\d+)(?![\d.,])|([.,]?\d(?:[\d.,]| (?=\d{3}(?![\d/])))*)(?:e([-+]?\d+))?) ?(.*)$/i.exec(
      text,
    );
  if (!match) throw fail("no-number", `${text || "nothing"} does not begin with a number`);
  const [, sign, whole = "0", top = "", bottom, digits = "", power = "0", unit = ""] = match;
  return { text, minus: sign === "-", whole, top, bottom, digits, power: Number(power), unit };
}

/** The number and the step of its last digit. */
function valueOf(
  { text, whole, top, bottom, digits, power }: Parsed,
  mark?: "." | ",",
  us?: boolean,
): [number, number] {
  if (bottom !== undefined) {
    // A third of a horsepower, or a part of an inch; 12/24 V is no fraction.
    if (!/^(2|3|4|8|16|32|64|128)$/.test(bottom) || Number(top) >= Number(bottom)) {
      throw fail("number", `${text}: ${top}/${bottom} is not a fraction such as 1/2 or 3/16`);
    }
    return [Number(whole) + Number(top) / Number(bottom), 1 / Number(bottom)];
  }
  const points = mark === "," ? digits.replace(/[.,]/g, (c) => (c === "," ? "." : ",")) : digits;
  const group = /^\d{1,3}([, ])\d{3}(?:\1\d{3})*(?:\.\d*)?$/.exec(points)?.[1];
  if (group ? group === "," && !mark && !us : !/^\d*\.?\d*$/.test(points)) {
    throw fail("ambiguous", `${digits} can be read in two ways: say which is the decimal mark`);
  }
  const clean = points.replace(/[, ]/g, "");
  const value = Number(`${clean}e${power}`);
  const step = Number(`1e${power - (clean.split(".")[1]?.length ?? 0)}`);
  if (!(value < Infinity && step > 0 && step < Infinity) || (value === 0 && /[1-9]/.test(clean))) {
    throw fail("not-finite", `${text} is beyond what a number holds`);
  }
  return [value, step];
}

const known = /* @__PURE__ */ new Map<string, Found>();

/** One spelling for the ways to write a unit: `m3`, `m^3`; `gal. per min`, `gal/min`; `meters`, `metre`. */
function spelling(text: string): string {
  return text
    .replaceAll(" per ", "/")
    .replace(/(.) (each|ea)$/, "$1/each")
    .replace(/ ?([·/()^]) ?/g, "$1")
    .replace(/([a-z])\.(?![^ ·/)^])/gi, "$1")
    .replace(/([a-z])([23])(?!\d)/gi, "$1^$2")
    .replace(/\b([a-z]{3,})s\b/g, "$1")
    .replace(/(met|lit)er\b/g, "$1re");
}

function findUnit(text: string): Found {
  if (known.size === 0) {
    for (const [unit, words, us = false] of unitWords) {
      for (const word of [unit.symbol, ...words.split("|")])
        if (word) known.set(spelling(fieldText(word)), { unit, us });
    }
  }
  const key = spelling(text);
  const whole = known.get(key);
  if (whole) return whole;
  const degree = /^(?:°|deg ?)([CF])$/.exec(key)?.[1];
  if (degree) {
    const scale = degree === "C" ? celsius : fahrenheit;
    return { unit: scale.unit, scale, origin: scale.origin };
  }
  const [, base = "", over] = /^(.+?) ?\(?([ga])(?:auge|bs|bsolute)?\)?$/.exec(key) ?? [];
  const pressure = known.get(base);
  if (pressure?.unit.kind === "pressure") {
    return { ...pressure, origin: over === "g" ? "local atmosphere" : "vacuum" };
  }
  if (/miner/i.test(key))
    throw fail(
      "ambiguous",
      `${text}: a miner's inch differs from state to state; write gal/min or ft³/s`,
    );
  return compound(key.replace(/^\//, "1/"));
}

/** Products and quotients of words with exponents: `J/(kg·K)`, `ft^0.5/s`. */
function compound(key: string): Found {
  const tokens = key.match(/[·/()]|\^-?[\d.]+|[^·/()^]+|\^/g) ?? [];
  let us = false;
  let at = 0;
  const product = (): AnyUnit => {
    let unit = factor();
    let divided = false;
    while (tokens[at] === "·" || tokens[at] === "/") {
      const over = tokens[at++] === "/";
      if (divided && !over)
        throw fail("ambiguous", `${key}: put what is below the line in parentheses`);
      divided = over;
      unit = combine(unit, factor(), over ? -1 : 1);
    }
    return unit;
  };
  const factor = (): AnyUnit => {
    const token = tokens[at++] ?? "";
    let unit: AnyUnit;
    if (token === "(") {
      unit = product();
      if (tokens[at++] !== ")") throw unknown(key);
    } else {
      const found = wordUnit(token);
      us ||= found.us ?? false;
      unit = found.unit;
    }
    if (tokens[at]?.startsWith("^")) unit = powerOf(unit, Number((tokens[at++] ?? "").slice(1)));
    return unit;
  };
  const unit = product();
  if (at < tokens.length) throw unknown(key);
  return known.get(spelling(fieldText(unit.symbol))) ?? { unit, us };
}

/** A unit, a currency, or so many of one: `1000 ft`. */
function wordUnit(word: string): Found {
  const found = known.get(word);
  if (found) return found;
  if (isCurrency(word)) return { unit: currency(word) };
  const [, times, rest = ""] = /^([1-9]\d*) (.+)$/.exec(word) ?? [];
  if (!times) throw unknown(word);
  const { unit, us = false } = wordUnit(rest);
  return {
    unit: new Unit(
      unit.kind,
      `${times} ${unit.symbol}`,
      Number(times) * unit.numerator,
      unit.denominator,
      unit.currency,
    ),
    us,
  };
}

/** A unit to a power, in halves. */
function powerOf(unit: AnyUnit, exponent: number): AnyUnit {
  const size = Math.abs(exponent);
  if (!(size <= 5) || size === 0 || (2 * size) % 1 !== 0) {
    throw fail("exponent", `${unit.symbol}^${exponent}: exponents go from -5 to 5 in halves`);
  }
  let power: AnyUnit = one;
  if (size % 1 !== 0) {
    const root = Math.sqrt(unit.numerator / unit.denominator);
    power = new Unit(rootKind(unit.kind).name, "", root, 1, unit.currency);
  }
  for (let i = 1; i <= size; i++) power = combine(power, unit, 1);
  if (exponent < 0) power = combine(one, power, -1);
  const symbol = /[·/]/.test(unit.symbol) ? `(${unit.symbol})` : unit.symbol;
  return new Unit(
    power.kind,
    symbol + (exponent === 2 ? "²" : exponent === 3 ? "³" : `^${exponent}`),
    power.numerator,
    power.denominator,
    power.currency,
  );
}

/** The error for a word that is no unit, with the nearest that is one. */
function unknown(word: string): QuantityError {
  let nearest = "";
  let least = Infinity;
  for (const [key, { unit }] of known) {
    if (Math.abs(key.length - word.length) >= least) continue;
    // Letters that follow in the same order, whatever their case.
    const letters = key.toLowerCase();
    let from = 0;
    let apart = key.length + (key[0] === word[0] ? 0 : 0.5);
    for (const letter of word.toLowerCase()) {
      const place = letters.indexOf(letter, from) + 1;
      apart += place ? -1 : 1;
      from = place || from;
    }
    if (apart < least) [least, nearest] = [apart, unit.symbol];
  }
  return fail("unknown-unit", `${word || "nothing"} is not a unit; the nearest is ${nearest}`);
}
