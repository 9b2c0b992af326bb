import { QuantityError } from "./error.ts";
import { fieldText } from "./field-text.ts";

/** A nominal size of a conductor: a name in a system, not a measured quantity. */
export interface Size {
  /** American wire gauge, thousands of circular mils, or nominal cross-section. */
  readonly system: "AWG" | "kcmil" | "mm²";
  /** Name in the system: `2/0`, `250`, `35`. */
  readonly name: string;
}

/** Whether a text names a wire size rather than a quantity. */
export function isSizeText(line: string): boolean {
  return /^(#|no\b)|\b(awg|kcmil|mcm)\b/i.test(line);
}

/**
 * Reads the size of a conductor: `2/0 AWG`, `#2`, `No. 2`, `250 kcmil`, `35 mm²`.
 *
 * `0 AWG` is another name of `1/0` and is called so. `MCM` is the older name of kcmil.
 *
 * @param text - As typed, at most 200 characters.
 * @returns System and name.
 * @throws {@link QuantityError} `size` for what is no size, `ambiguous` where it could be two: a bare
 * number, `00`, `2,5 mm²`.
 */
export function readSize(text: string): Size {
  const line = fieldText(text);
  const [, before, number = "", system = ""] =
    /^(#|no\.?|awg)? ?([1-4]\/0|\d[\d.,]*) ?(awg|kcmil|mcm|(?:sq ?)?mm(?:\^?2)?)?$/i.exec(line) ??
    [];
  const unclear = (question: string): QuantityError =>
    new QuantityError("ambiguous", `${line}: ${question}`);
  const zeros = /^0+(?=\d)/.exec(number)?.[0].length;
  if (zeros) throw unclear(`is it ${zeros + (Number(number) ? 0 : 1)}/0 or ${Number(number)}?`);
  const whole = /^\d+$/.test(number);
  const positive = /^\d+(\.\d+)?$/.test(number) && Number(number) > 0;
  if (/^(kc|mc)/i.test(system) && !before) {
    if (positive) return { system: "kcmil", name: number };
  } else if (/^(sq|mm\^?2)/i.test(system) && !before) {
    if (number.includes(",")) throw unclear("write a decimal point");
    if (positive) return { system: "mm²", name: number };
  } else if (/^(awg)?$/i.test(system)) {
    if (number.includes("/")) return { system: "AWG", name: number };
    if (whole && !before && !system) throw unclear("is it AWG or mm²?");
    if (whole && Number(number) <= 40)
      return { system: "AWG", name: number === "0" ? "1/0" : number };
  }
  throw new QuantityError("size", `${line} is not a size such as 2/0 AWG, 250 kcmil or 35 mm²`);
}
