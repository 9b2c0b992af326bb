import { QuantityError } from "./error.ts";

/** Longest text that is read, in UTF-16 units. */
const longest = 200;

// Characters that look alike, and what each is read as. Not NFKC for all: it would make m² of m2.
const lookalikes =
  "\u2212\u2010\u2011\u2013\u2032\u2019\u2033\u201d\u2126\u03bc\u22c5\u2219*\u2044\u2215";
const readAs = "----''\"\"Ω\u00b5···//";

/**
 * What a person typed, with one spelling for what looks the same: minus signs, primes, fractions,
 * superscripts, spaces.
 *
 * @param text - As typed.
 * @returns The text, on one line, for the readers of this package.
 * @throws {@link QuantityError} `no-number`, `too-long`, `empty`.
 */
export function fieldText(text: string): string {
  if (typeof text !== "string")
    throw new QuantityError("no-number", `field text is a string, not ${typeof text}`);
  if (text.length > longest)
    throw new QuantityError("too-long", `field text is longer than ${longest} characters`);
  const line = text
    .replace(/[⁻⁰¹²³⁴-⁹]+/g, (digits) => `^${digits.normalize("NFKC")}`)
    .replace(/[¼-¾⅐-⅞℃℉]/g, (sign) => ` ${sign.normalize("NFKC")}`)
    .replace(/\W/g, (sign) => readAs[lookalikes.indexOf(sign)] ?? sign)
    .replaceAll("''", '"')
    .replace(/\s+/g, " ")
    .trim();
  if (!line) throw new QuantityError("empty", "field text is empty");
  return line;
}
