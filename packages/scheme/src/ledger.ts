import { type Citation, commonPractice, type Domain } from "@leat/formula";
import {
  type AnyPoint,
  type AnyQuantity,
  coherentUnit,
  isPoint,
  type Quantity,
  type Sources,
} from "@leat/quantity";
import { read } from "@leat/quantity/text";

import { type Assumed, type Default, defaults, readingSpread } from "./assume.ts";
import { sourceWords } from "./source-words.ts";
import { k95 } from "./uncertainty.ts";

/** How a number may lie about its value. */
export interface ParameterSpread {
  /** Standard uncertainty, in the coherent unit. */
  readonly standard: number;
  /** Shape of the distribution. */
  readonly shape: "normal" | "rectangle";
  /** What it rests on. */
  readonly basis: "written" | "instrument" | "assumed" | "measured";
}

/** A share of what a measured number owes its spread to. */
export interface Part {
  /** Path of the reading in the survey, as one word. */
  readonly key: string;
  /** What it is, in words. */
  readonly what: string;
  /** How to know it better. */
  readonly measure?: string | undefined;
  /** Its contribution over the standard uncertainty of the whole, with its sign. */
  readonly share: number;
}

/** A number that a scheme is worked out of. */
export interface Parameter {
  /** Its path, as one word: `fall.gross`. */
  readonly key: string;
  /** What it is, in words. */
  readonly what: string;
  /** Value in the coherent unit, or over the origin of a point. */
  readonly value: number;
  /** Its kind, or the kind of the difference of its points. */
  readonly kind: string;
  /** What physics allows. */
  readonly domain: Domain;
  /** How it may lie; absent where it is a choice and not a reading. */
  readonly spread?: ParameterSpread;
  /** As it was written or assumed. */
  readonly given: AnyQuantity | AnyPoint;
  /** How to know it better, for those that can be measured. */
  readonly measure?: string;
  /** What the spread is made of, where the number was measured. */
  readonly parts?: readonly Part[];
}

/** What a source of uncertainty is, and how to know it better. */
export interface Hint {
  /** What it is, in words. */
  readonly what: string;
  /** How to know it better. */
  readonly how?: string | undefined;
}

/** Collects numbers and what was assumed of them. */
export class Ledger {
  readonly parameters: Parameter[] = [];
  readonly assumed: Assumed[] = [];
  readonly #defaults = defaults();
  readonly #id: string;
  readonly #hints = new Map<string, Hint>();

  /** @param id - Names the survey in the ids of sources of uncertainty. */
  constructor(id: string) {
    this.#id = id;
  }

  /** Notes that something was taken for the user. */
  assume(
    path: readonly (string | number)[],
    what: string,
    value: string,
    because: Citation | undefined,
  ): void {
    this.assumed.push({ path, what, value, because });
  }

  /** A number from a given quantity or point, or from the default of its path. */
  take(
    key: string,
    about: {
      kind: string;
      domain?: Domain;
      what?: string;
      measure?: string;
      nominal?: boolean;
      spreadKey?: string;
    },
    given: AnyQuantity | AnyPoint | undefined,
  ): Parameter {
    const path = pathOf(key);
    const standard = this.#defaults[key];
    const value = given ?? this.#fromDefault(key, about.kind, standard);
    const spread = given
      ? about.nominal
        ? written(given)
        : (written(given) ??
          this.#fromReading(path, about.spreadKey ?? key, about.what ?? key, given))
      : standard?.within === undefined
        ? undefined
        : rectangle(halfWidth(standard.within, value));
    const parameter: Parameter = {
      key,
      what: about.what ?? standard?.what ?? key,
      value: value["~si"],
      kind: about.kind,
      domain: about.domain ?? "positive",
      given: value,
      ...(spread && { spread }),
      ...(about.measure !== undefined && { measure: about.measure }),
    };
    this.parameters.push(parameter);
    return parameter;
  }

  /** A number that is worked out, not written. */
  add(parameter: Parameter): void {
    this.parameters.push(parameter);
  }

  /** The source id of a key. */
  sourceOf(key: string): string {
    return `${this.#id}.${key}`;
  }

  /** Names a source of uncertainty, for the list of what to measure better. */
  hint(source: string, hint: Hint): void {
    this.#hints.set(source, hint);
  }

  /**
   * A reading with its spread as a source that is named by its key: what was written, else the division of its
   * instrument, else what is assumed.
   */
  reading<K extends string>(
    key: string,
    about: Hint & { readonly spreadKey?: string; readonly nominal?: boolean },
    given: Quantity<K>,
  ): Quantity<K> {
    const source = this.sourceOf(key);
    this.hint(source, about);
    if (given["~sources"] || about.nominal) return given;
    const spread = this.#fromReading(pathOf(key), about.spreadKey ?? key, about.what, given);
    if (!spread) return given;
    const half = coherentUnit(given.kind, given["~currency"]).of(
      spread.standard * (spread.shape === "rectangle" ? Math.sqrt(3) : k95),
    );
    return spread.shape === "rectangle"
      ? given.within(half, source)
      : given.plusMinus(half, source);
  }

  /** The default of a key, listed where it would be given, which also names the source of its spread. */
  standard<K extends string>(key: string, kind: K, at: string): Quantity<K> {
    const standard = this.#defaults[key];
    const value = this.#fromDefault(at, kind, standard) as unknown as Quantity<K>;
    if (standard?.within === undefined) return value;
    const source = this.sourceOf(at);
    this.hint(source, { what: standard.what });
    const half = halfWidth(standard.within, value);
    return value.within(coherentUnit(kind).of(half), source);
  }

  /** What the spread of a number is made of, the largest part first. */
  partsOf(value: { readonly "~sources": Sources | undefined }): Part[] {
    const sources = value["~sources"] ?? new Map<string, number>();
    const standard = Math.hypot(...sources.values());
    return Array.from(sources, ([id, c]) => {
      const hint = this.#hints.get(id);
      const key = id.startsWith(`${this.#id}.`) ? id.slice(this.#id.length + 1) : id;
      const [what, how] = hint ? [hint.what, hint.how] : sourceWords(id);
      return { key, what, measure: how, share: c / standard };
    }).toSorted((a, b) => Math.abs(b.share) - Math.abs(a.share));
  }

  /** A number that was measured. */
  measured(
    key: string,
    about: { readonly what: string; readonly measure: string; readonly kind: string },
    value: Quantity<string>,
  ): void {
    const sources = value["~sources"] ?? new Map<string, number>();
    const standard = Math.hypot(...sources.values());
    const rectangular = sources.size === 1 && value["~reading"]?.spread?.shape === "rectangle";
    this.add({
      key,
      what: about.what,
      value: value["~si"],
      kind: about.kind,
      domain: "positive",
      given: value,
      measure: about.measure,
      ...(standard > 0 && {
        spread: { standard, shape: rectangular ? "rectangle" : "normal", basis: "measured" },
        parts: this.partsOf(value),
      }),
    });
  }

  #fromDefault(key: string, kind: string, standard: Default | undefined): AnyQuantity | AnyPoint {
    if (!standard) throw new Error(`no default for ${key}`);
    this.assume(
      pathOf(key),
      standard.what,
      standard.within ? `${standard.value}, anywhere within ${standard.within}` : standard.value,
      standard.because,
    );
    return kind === "absolute zero"
      ? read(standard.value, "absolute zero")
      : read(standard.value, kind);
  }

  /**
   * A reading without ±: the division of its instrument, from the digits written where none is named, or a
   * spread that is assumed. What is assumed is listed. A gauge has both, its class and its division.
   */
  #fromReading(
    path: readonly (string | number)[],
    spreadKey: string,
    what: string,
    given: AnyQuantity | AnyPoint,
  ): ParameterSpread | undefined {
    const reading = given["~reading"];
    const unit = "kind" in given ? given["~unit"] : undefined;
    const named = reading !== undefined && !reading.assumed;
    const share = readingSpread[spreadKey];
    const taken = share && (share.class || !named) ? share : undefined;
    const division =
      reading && unit && (named || !share) ? unit.toSI(reading.resolution) / 2 / Math.sqrt(3) : 0;
    if (division > 0 && !named)
      this.assume(
        path,
        `division of the instrument: ${what}`,
        `${reading?.resolution} ${unit?.symbol}, from the digits written`,
        commonPractice.at("nobody writes finer than can be read", "practice"),
      );
    if (taken)
      this.assume(
        path,
        `spread of the ${what}`,
        `± ${taken.share * 100} %`,
        commonPractice.at(taken.why, "practice"),
      );
    const standard = Math.hypot(division, (Math.abs(given["~si"]) * (taken?.share ?? 0)) / k95);
    if (standard === 0) return undefined;
    return {
      standard,
      shape: taken ? "normal" : "rectangle",
      basis: taken || !named ? "assumed" : "instrument",
    };
  }
}

/** `reaches.1.length` → reaches, 0, length: rows are counted from 1 in a key and from 0 in a path. */
function pathOf(key: string): (string | number)[] {
  return key.split(".").map((part) => (/^\d+$/u.test(part) ? Number(part) - 1 : part));
}

export function rectangle(half: number): ParameterSpread {
  return { standard: half / Math.sqrt(3), shape: "rectangle", basis: "assumed" };
}

/** Half width of a default's spread: text in a unit; a percentage of something that is no ratio is a share of it. */
function halfWidth(text: string, value: AnyQuantity | AnyPoint): number {
  if (isPoint(value)) return (read(text, "temperature difference") as AnyQuantity)["~si"];
  return (read(text, value.kind) as AnyQuantity)["~si"];
}

/** A spread that was written with the value. */
export function written(given: AnyQuantity | AnyPoint): ParameterSpread | undefined {
  const sources = given["~sources"];
  if (!sources) return undefined;
  let variance = 0;
  for (const c of sources.values()) variance += c * c;
  return {
    standard: Math.sqrt(variance),
    shape: given["~reading"]?.spread?.shape === "rectangle" ? "rectangle" : "normal",
    basis: "written",
  };
}
