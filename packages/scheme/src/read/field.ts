import { type AnyPoint, type AnyQuantity, isPoint, QuantityError } from "@leat/quantity";
import { read, readSize } from "@leat/quantity/text";
import * as z from "zod";

// Fields of a file are text. A field checks its text where it stands, and hands over a function that
// reads it again once its path is known, because the path names the source of its uncertainty.

/** A value that waits for its path. */
export class Bound {
  /** Makes the value of its path. */
  readonly make: (path: string) => unknown;

  /** @param make - Makes the value of its path. */
  constructor(make: (path: string) => unknown) {
    this.make = make;
  }
}

/** What a field takes. */
export interface FieldOptions {
  /** Kinds of quantity, the first being the one that is asked for. */
  readonly kinds: readonly string[];
  /** What it is, for the schema. */
  readonly says: string;
  /** An example, for the schema and for messages. */
  readonly example: string;
  /** What sign it may have; above zero by default. */
  readonly sign?: "positive" | "non-negative" | "any";
  /** What it lies between, as text, where it is of this kind. */
  readonly between?: { readonly kind: string; readonly least: string; readonly most: string };
}

/** A field that every schema of a file is made of: text in, a value that waits for its path out. */
export type Field = z.ZodType<Bound, string>;

/**
 * Text that is read as a quantity.
 *
 * @param options - What it takes.
 * @returns The field.
 */
export function field({ kinds, says, example, sign = "positive", between }: FieldOptions): Field {
  const wanted = kinds.map(withArticle).join(" or ");
  return text(says, [example], (written) => {
    const value = readAs(written, kinds, { wanted, example });
    const si = value["~si"];
    if (sign === "positive" ? !(si > 0) : sign === "non-negative" && !(si >= 0)) {
      throw new FieldError(
        "sign",
        `${written} is ${si < 0 ? "negative" : "zero"}; ${wanted} above zero is needed. Check its sign.`,
      );
    }
    if (between && "kind" in value && value.kind === between.kind) {
      const [least, most] = [between.least, between.most].map(
        (bound) => (read(bound, between.kind) as AnyQuantity)["~si"],
      ) as [number, number];
      refuseBeyond(written, si, { least, most }, between, example);
    }
    return (path) => readAs(written, kinds, { wanted, example, source: path });
  });
}

/** Refuses what lies outside its bounds. */
function refuseBeyond(
  written: string,
  si: number,
  { least, most }: { least: number; most: number },
  said: { readonly least: string; readonly most: string },
  example: string,
): void {
  if (si >= least && si <= most) return;
  throw new FieldError(
    "range",
    `${written} is ${si < least ? `below ${said.least}` : `above ${said.most}`}; from ${said.least} to ${said.most} is possible, such as ${example}.`,
  );
}

/** Text that is read as a temperature between two others. */
export function temperature(
  says: string,
  example: string,
  between: { readonly least: string; readonly most: string },
): Field {
  const parse = (written: string, source?: string): AnyPoint =>
    attempt(
      () => read(written, "absolute zero", source === undefined ? {} : { source }),
      "a temperature",
      example,
    );
  return text(says, [example], (written) => {
    const [least, most] = [between.least, between.most].map((bound) => parse(bound)["~si"]) as [
      number,
      number,
    ];
    refuseBeyond(written, parse(written)["~si"], { least, most }, between, example);
    return (path) => parse(written, path);
  });
}

/** Text that is read as a wire size. */
export function size(says: string): Field {
  return text(says, ["2 AWG", "2/0 AWG", "35 mm²"], (written) => {
    const parse = (): unknown => attempt(() => readSize(written), "a wire size", "2 AWG");
    parse();
    return () => written;
  });
}

/** Text as it is. */
export function words(says: string, examples: readonly string[]): Field {
  return text(says, examples, (written) => () => written);
}

/** Text that names something: `check` refuses it, in words, where there is no such thing. */
export function named(
  says: string,
  examples: readonly string[],
  check: (written: string) => void,
): Field {
  return text(says, examples, (written) => {
    try {
      check(written);
    } catch (error) {
      if (!(error instanceof QuantityError)) throw error;
      throw new FieldError(error.code, error.message);
    }
    return () => written;
  });
}

/** One of a list of words. */
export function oneOf(says: string, allowed: readonly string[]): Field {
  // Words with a comma in them are quoted, so that it is seen where one ends.
  const listed = allowed.some((word) => word.includes(","))
    ? allowed.map((word) => JSON.stringify(word)).join(", ")
    : allowed.join(", ");
  return text(`${says}: ${listed}`, allowed, (written) => {
    if (!allowed.includes(written)) {
      throw new FieldError(
        "word",
        `${JSON.stringify(written)} is not known here; write one of ${listed}.`,
      );
    }
    return () => written;
  });
}

/** A day of the calendar, as ISO 8601 writes it. */
export function date(says: string): Field {
  return text(says, ["2026-08-14"], (written) => {
    const day = /^\d{4}-\d\d-\d\d$/.test(written) ? new Date(`${written}T00:00:00Z`) : undefined;
    // 2026-02-30 comes back as the second of March.
    if (!day || Number.isNaN(day.getTime()) || day.toISOString().slice(0, 10) !== written) {
      throw new FieldError(
        "date",
        `${JSON.stringify(written.slice(0, 60))} is not a day; write year, month and day, such as 2026-08-14.`,
      );
    }
    return () => written;
  });
}

/** A day of any year. */
export function monthDay(says: string): Field {
  return text(says, ["10-15"], (written) => {
    // Of a leap year, so that 02-29 is a day.
    const day = /^\d\d-\d\d$/.test(written) ? new Date(`2024-${written}T00:00:00Z`) : undefined;
    if (!day || Number.isNaN(day.getTime()) || day.toISOString().slice(5, 10) !== written)
      throw new FieldError(
        "date",
        `${JSON.stringify(written.slice(0, 60))} is not a day of the year; write month and day, such as 10-15.`,
      );
    return () => written;
  });
}

/** A time of day, or a time since any beginning. */
export function clock(says: string): Field {
  return text(says, ["09:40", "25 min"], (written) => {
    const parts = /^(\d{1,2}):([0-5]\d)(?::([0-5]\d))?$/.exec(written)?.slice(1).map(Number);
    const [hours = 24, minutes = 0, seconds = 0] = parts ?? [];
    const since = parts && `${hours * 3600 + minutes * 60 + (seconds || 0)} s`;
    const example = "09:40 or 25 min";
    if (parts && hours > 23)
      throw new FieldError("time", `${written} is not a time of day, such as ${example}.`);
    readAs(since ?? written, ["time"], { wanted: "a time", example });
    return (path) =>
      readAs(since ?? written, ["time"], { wanted: "a time", example, source: path });
  });
}

/** A whole number from 1 to 999. */
export function count(says: string): Field {
  return text(says, ["2"], (written) => {
    if (!/^[1-9]\d{0,2}$/.test(written)) {
      throw new FieldError(
        "count",
        `${JSON.stringify(written.slice(0, 60))} is not a count; write a whole number from 1 to 999.`,
      );
    }
    return () => Number(written);
  });
}

/** What is wrong with a field, with a code for it. */
export class FieldError extends Error {
  readonly code: string;

  constructor(code: string, message: string) {
    super(message);
    this.code = code;
  }
}

function text(
  says: string,
  examples: readonly string[],
  check: (written: string) => (path: string) => unknown,
): Field {
  return z
    .string()
    .meta({ description: says, examples: [...examples] })
    .transform((written, context) => {
      try {
        if (written.trim() === "")
          throw new FieldError(
            "empty",
            `nothing is written; write a value such as ${examples[0]}.`,
          );
        return new Bound(check(written.trim()));
      } catch (error) {
        if (!(error instanceof FieldError)) throw error;
        context.addIssue({ code: "custom", message: error.message, params: { code: error.code } });
        return z.NEVER;
      }
    });
}

/** Reads text as the first of these kinds that fits, or says what was got and what is needed. */
function readAs(
  written: string,
  kinds: readonly string[],
  { wanted, example, source }: { wanted: string; example: string; source?: string },
): AnyQuantity | AnyPoint {
  const options = source === undefined ? {} : { source };
  // A plain number is enough where a ratio, a count or a coefficient is asked for.
  const bare =
    /^[-+−]?[\d.]+(\s*(±|\+\/-)\s*[\d.]+)?$/.test(written) &&
    kinds.find((kind) => ["ratio", "efficiency", "coefficient"].includes(kind));
  if (bare) return attempt(() => read(written, bare, options), wanted, example);
  const value = attempt<AnyQuantity | AnyPoint>(() => read(written, options), wanted, example);
  for (const kind of kinds) {
    try {
      return read(written, kind, options);
    } catch (error) {
      if (!(error instanceof QuantityError)) throw error;
    }
  }
  // A gauge pressure is a reading over the air of the site: where a pressure is taken, so is this.
  if (isPoint(value) && value.origin === "local atmosphere" && kinds.includes("pressure"))
    return value;
  throw new FieldError(
    "dimension",
    `${written} is ${isPoint(value) ? `a point over ${value.origin}` : withArticle(value.kind)}; ${wanted} is needed, such as ${example}.`,
  );
}

function attempt<T>(run: () => T, wanted: string, example: string): T {
  try {
    return run();
  } catch (error) {
    if (!(error instanceof QuantityError)) throw error;
    const said = error.message.replace(/\.$/, "");
    const needed = `${wanted} is needed, such as ${example}.`;
    throw new FieldError(
      error.code,
      said.endsWith("?")
        ? `${said} ${needed[0]?.toUpperCase()}${needed.slice(1)}`
        : `${said}; ${needed}`,
    );
  }
}

function withArticle(kind: string): string {
  return `${/^[aeiou]/.test(kind) ? "an" : "a"} ${kind}`;
}
