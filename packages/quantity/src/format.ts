import { digitsOf, plain, withUnit } from "./digits.ts";
import { QuantityError } from "./error.ts";
import { inch } from "./generated/units.ts";
import {
  type AnyPoint,
  type AnyPointUnit,
  type Difference,
  isPoint,
  type Origin,
  type Point,
  type PointUnit,
} from "./point.ts";
import type { AnyQuantity, Quantity } from "./quantity.ts";
import { coverage95, spreadOf } from "./sources.ts";
import type { Plain } from "./types.ts";
import type { AnyUnit, Unit } from "./unit.ts";

/** How a number is printed. */
export interface FormatOptions {
  /** Significant digits, 1 to 17: of the number, or of the ± where that is printed (2 by default). */
  readonly digits?: number | undefined;
  /** Adds the half width of the 95 % interval, with its k. */
  readonly plusMinus?: boolean | undefined;
  /** The decimal mark, a point by default. */
  readonly decimalMark?: "." | "," | undefined;
  /** Goes between thousands; nothing by default. Only a space is read back everywhere. */
  readonly grouping?: "." | "," | " " | undefined;
}

/**
 * A number and its unit: `24.7 L/s`, `110 ± 2 ft (k = 1.96)`.
 *
 * Without `digits` a number that was written in this unit is printed as written; one with an
 * uncertainty is rounded to the second digit of its ±; any other is printed with up to 15 digits. A
 * half is rounded as the nearest double lies. A gauge or absolute pressure says so: `50 psig`.
 *
 * @param value - A quantity or a point.
 * @param unit - A unit of its kind, or `celsius`, `fahrenheit`.
 * @param options - Significant digits, or more.
 * @returns The text.
 * @throws {@link QuantityError} `kind` for a unit of another kind, `number` for digits out of range.
 * @example
 * ```ts
 * format(litrePerSecond.of(24.6532), litrePerSecond, 3); // => "24.7 L/s"
 * ```
 */
export function format<K extends string>(
  value: Quantity<K>,
  unit: Unit<NoInfer<K>> | Unit<NoInfer<Plain<K>>>,
  options?: number | FormatOptions,
): string;
export function format<O extends Origin>(
  value: Point<O>,
  unit: Unit<NoInfer<Difference<O>>> | PointUnit<NoInfer<O>>,
  options?: number | FormatOptions,
): string;
export function format(
  value: AnyQuantity | AnyPoint,
  unit: AnyUnit | AnyPointUnit,
  options: number | FormatOptions = {},
): string {
  const {
    digits,
    plusMinus = false,
    decimalMark = ".",
    grouping = "",
  } = typeof options === "number" ? { digits: options } : options;
  if (digits !== undefined && !(Number.isInteger(digits) && digits >= 1 && digits <= 17)) {
    throw new QuantityError("number", `${digits} significant digits are not from 1 to 17`);
  }
  if (grouping === decimalMark)
    throw new QuantityError("number", `${grouping} cannot group and be the decimal mark`);
  const number = value.in(unit as AnyUnit);
  const scale = "unit" in unit ? unit.unit : unit;
  const half = coverage95 * scale.fromSI(spreadOf(value["~sources"]));
  const marked = (text: string): string => {
    const [whole = "", part] = text.split(".");
    // An exponent keeps its digits together.
    const grouped = whole.replace(/\B(?=(\d{3})+$)/g, grouping);
    return part === undefined ? grouped : grouped + decimalMark + part;
  };

  const symbol = isPoint(value) ? pointSymbol(value.origin, unit.symbol) : unit.symbol;
  if (plusMinus && half > 0) {
    const [rounded, spread] = roundBy(number, half, digits ?? 2);
    const both = `${marked(rounded)} ± ${marked(spread)}`;
    // 85 ± 2 % could be 2 % of 85.
    return `${withUnit(symbol === "%" ? `(${both})` : both, symbol)} (k = ${marked("1.96")})`;
  }
  const written = value["~unit"];
  const asWritten = written?.symbol === unit.symbol ? value["~reading"] : undefined;
  const text =
    digits !== undefined && !plusMinus
      ? plain(number.toPrecision(digits))
      : asWritten
        ? toStep(number, asWritten)
        : half > 0 && written?.symbol !== unit.symbol
          ? roundBy(number, half, 2)[0]
          : digitsOf(number);
  return withUnit(marked(text), symbol);
}

/** A gauge or an absolute pressure does not lose what it is counted from. */
function pointSymbol(origin: string, symbol: string): string {
  const mark = origin === "local atmosphere" ? "g" : origin === "vacuum" ? "a" : "";
  return /^(psi|bar)$/.test(symbol) || !mark ? symbol + mark : `${symbol}(${mark})`;
}

/** As many decimals as were written, where that is the number. */
function toStep(number: number, { resolution }: { readonly resolution: number }): string {
  const places = Math.max(0, -Math.floor(Math.log10(resolution)));
  const text = places < 16 ? plain(number.toFixed(places)) : "";
  return text !== "" && Number(text) === number ? text : digitsOf(number);
}

/** A number and its half width, both to the last digit of the half width. */
function roundBy(number: number, half: number, digits: number): [string, string] {
  const [mantissa = "", power = ""] = half.toExponential(digits - 1).split("e");
  const places = (String(Number(mantissa)).split(".")[1]?.length ?? 0) - Number(power);
  const spread = Number(half.toPrecision(digits));
  if (places > 20) return [digitsOf(number), digitsOf(spread)];
  if (places > 0) return [tidy(number.toFixed(places)), spread.toFixed(places)];
  const step = 10 ** Math.max(0, Number(power) + 1 - digits);
  return [digitsOf(Math.round(number / step) * step), digitsOf(spread)];
}

/** Minus zero is zero. */
function tidy(text: string): string {
  return plain(/^-[0.]+$/.test(text) ? text.slice(1) : text);
}

/**
 * A length on a tape: `5'-7 1/4"`.
 *
 * @param length - A length, or a kind of it.
 * @param denominator - Parts of an inch: 1, 2, 4, … 128; 16 by default.
 * @returns Feet and inches to the nearest part, a half away from zero; below a foot, inches alone.
 * @throws {@link QuantityError} `kind`, `number` for another denominator.
 */
export function formatFeetAndInches(
  length:
    | Quantity<"length">
    | Quantity<"gross head">
    | Quantity<"net head">
    | Quantity<"head loss">
    | Quantity<"pipe length">,
  denominator = 16,
): string {
  if (![1, 2, 4, 8, 16, 32, 64, 128].includes(denominator)) {
    throw new QuantityError("number", `a tape has no 1/${String(denominator)} in`);
  }
  const inches = (length as AnyQuantity).in(inch);
  const parts = Math.round(Number((Math.abs(inches) * denominator).toPrecision(15)));
  const feet = Math.floor(parts / denominator / 12);
  const whole = Math.floor(parts / denominator) - 12 * feet;
  let top = parts % denominator;
  let bottom = denominator;
  while (top > 0 && top % 2 === 0) [top, bottom] = [top / 2, bottom / 2];
  const fraction = top > 0 ? `${top}/${bottom}` : "";
  const tape =
    whole === 0 && fraction && feet === 0 ? fraction : `${whole}${fraction && ` ${fraction}`}`;
  return `${inches < 0 && parts > 0 ? "-" : ""}${feet > 0 ? `${feet}'-` : ""}${tape}"`;
}
