import {
  type AnyFormula,
  type Args,
  cite,
  type Citation,
  type Constants,
  type Formula,
  type Inputs,
  NonPhysicalError,
  type Notice,
  type Outputs,
  type Result,
  working,
  type Working,
} from "@leat/formula";
import type { Quantity } from "@leat/quantity";

import type { Ledger, Part } from "../ledger.ts";
import { k95 } from "../uncertainty.ts";
import { type About, inSurveyKeys, inSurveyWords } from "./in-survey-words.ts";

/** Something worth printing beside a measurement. */
export interface Fact {
  /** What it is, in words. */
  readonly what: string;
  /** Its value, as printed. */
  readonly value: string;
}

/** One measurement: what it came to, how it was made, and what is to be said of it. */
export interface Measurement<K extends string> {
  /** Where it stands in the survey. */
  readonly path: readonly (string | number)[];
  /** What the survey calls it, or how it was made. */
  readonly name: string;
  /** How it was made, in words. */
  readonly by: string;
  /** The day it was made, where that is told. */
  readonly on?: string;
  /** What it came to, with every source of uncertainty. */
  readonly value: Quantity<K>;
  /** Half width at 95 %. */
  readonly half: Quantity<K>;
  /** What the half width is made of, the largest part first. */
  readonly parts: readonly Part[];
  /** Whose equations were used, in order. */
  readonly sources: readonly Citation[];
  /** What else it shows. */
  readonly facts: readonly Fact[];
  /** What is to be said of it. */
  readonly notices: readonly Notice[];
  /** The formulas that were used, each with its revision. */
  readonly formulas: readonly { readonly id: string; readonly revision: number }[];
  /** The calculation as it can be followed by hand. */
  readonly working: () => Working[];
}

/** What a way of measuring gives. */
export interface Taken<K extends string> {
  /** How it was made, in words. */
  readonly by: string;
  /** What it came to. */
  readonly value: Quantity<K>;
}

interface Call {
  readonly formula: AnyFormula;
  readonly args: Readonly<Record<string, unknown>>;
}

type Path = readonly (string | number)[];

/** Where rows that a notice counts stand in a file. */
type RowsOf = Pick<About, "lines" | "file">;

/** What a measurement is taken from. */
export interface TakingOf {
  /** Where assumptions and hints are listed. */
  readonly ledger: Ledger;
  /** Where it stands, as one word: `stream.measured.2`. */
  readonly key: string;
  /** Where it stands. */
  readonly path: Path;
  /** How it was measured: the key that stands for the way. */
  readonly way: string;
  /** Whether feet and gallons come first in what is printed of it. */
  readonly customary: boolean;
}

/** Works one measurement out: calls formulas, keeps what they were called with and what they said. */
export class Taking {
  /** Where it stands, as one word: `stream.measured.2`. */
  readonly key: string;
  /** Where it stands. */
  readonly path: Path;
  /** Where assumptions and hints are listed. */
  readonly ledger: Ledger;
  /** Whether feet and gallons come first in what is printed of it. */
  readonly customary: boolean;
  readonly notices: Notice[] = [];
  readonly facts: Fact[] = [];
  readonly #way: string;
  /** Where the way of measuring stands under the measurement. */
  readonly #at: Path;
  readonly #calls: Call[] = [];
  readonly #cited: Citation[] = [];
  readonly #placed = new WeakSet<Notice>();

  /** @param of - What it is taken from. */
  constructor({ ledger, key, path, way, customary }: TakingOf) {
    this.ledger = ledger;
    this.key = key;
    this.path = path;
    this.customary = customary;
    this.#way = way;
    // A flow, a fall and a gauge stand straight under the measurement.
    this.#at = ["flow", "gross", "gauge"].includes(way) ? [] : [way];
  }

  /** Calls a formula; a limit that is exceeded becomes a notice, because the survey is what it is. */
  readonly call = <I extends Inputs, O extends Outputs, C extends Constants, S extends boolean>(
    formula: Formula<I, O, C, S>,
    args: NoInfer<Args<I>>,
  ): Result<O, S> => {
    this.sheet(formula, args);
    return formula(args, { onNotice: this.tell });
  };

  /** Keeps a formula that an analysis worked with, for the sheet. */
  readonly sheet = <I extends Inputs, O extends Outputs, C extends Constants, S extends boolean>(
    formula: Formula<I, O, C, S>,
    args: NoInfer<Args<I>>,
  ): void => {
    this.#calls.push({ formula: formula, args: args });
    this.cite(formula.definition.source);
  };

  /** Names whose equation or figure was used. */
  cite(source: Citation): void {
    this.#cited.push(source);
  }

  /** Takes a notice of a formula or an analysis, in the words of the survey. */
  readonly tell = (notice: Notice): void => this.telling(this.#at)(notice);

  /** The same for another place under the measurement, or for rows of a file. */
  telling(at: Path, rows: RowsOf = {}): (notice: Notice) => void {
    return (notice) => {
      const { message, ...placed } = this.#place(notice, at, rows);
      // Too few of something is not a figure beyond a range.
      const extrapolated =
        notice.code.endsWith("/out-of-range") && !message.startsWith("number of ");
      this.notices.push({
        ...placed,
        message: extrapolated ? `${message} The figure is an extrapolation.` : message,
      });
    };
  }

  /** Forbids what the measurement comes to. */
  stop(code: string, message: string): void {
    this.tell({ code, severity: "stop", path: [], message });
  }

  /** Works something out; what nothing physical can have is told with its place in the survey. */
  guarded<T>(run: () => T, at: Path = this.#at, rows: RowsOf = {}): T {
    try {
      return run();
    } catch (error) {
      if (!(error instanceof NonPhysicalError)) throw error;
      throw new NonPhysicalError(
        error.notices.map((notice) =>
          this.#placed.has(notice) ? notice : this.#place(notice, at, rows),
        ),
      );
    }
  }

  /** What nothing physical can have, with its place under the way of measuring. */
  refusal(at: Path, message: string): NonPhysicalError {
    return new NonPhysicalError([{ code: "non-physical", severity: "stop", path: at, message }]);
  }

  #place(notice: Notice, at: Path, rows: RowsOf): Notice {
    const about = { source: this.ledger.sourceOf(this.key), way: this.#way, at, ...rows };
    const placed = {
      ...notice,
      path: [...this.path, ...inSurveyKeys(notice.path, about)],
      message: inSurveyWords(notice, about),
    };
    this.#placed.add(placed);
    return placed;
  }

  /** Lists something that was taken for the user. */
  assume(at: Path, what: string, value: string, because?: Citation): void {
    this.ledger.assume([...this.path, ...at], what, value, because);
  }

  /** A reading under the measurement, with its spread as a source of its own. */
  reading<K extends string>(
    at: string,
    about: Parameters<Ledger["reading"]>[1],
    given: Quantity<K>,
  ): Quantity<K> {
    return this.ledger.reading(`${this.key}.${at}`, about, given);
  }

  /** Names sources of uncertainty: what each is, and how to know it better. */
  hints(hints: Readonly<Record<string, readonly [what: string, how?: string]>>): void {
    for (const [source, [what, how]] of Object.entries(hints))
      this.ledger.hint(source, { what, how });
  }

  /** Adds a source of uncertainty to a result, as a share of it at 95 %. */
  spread<K extends string>(
    value: Quantity<K>,
    share: number,
    at: string,
    what: string,
    how?: string,
  ): Quantity<K> {
    const source = this.ledger.sourceOf(`${this.key}.${at}`);
    this.ledger.hint(source, { what, how });
    return value.plusMinus(value.abs().times(share), source);
  }

  /** The measurement, made. */
  made<K extends string>({
    name,
    on,
    by,
    value,
  }: Taken<K> & {
    readonly name: string | undefined;
    readonly on: string | undefined;
  }): Measurement<K> {
    return {
      path: this.path,
      name: name ?? by,
      by,
      ...(on !== undefined && { on }),
      value,
      half: value.standardUncertainty().times(k95),
      parts: this.ledger.partsOf(value),
      sources: this.#sources(),
      facts: this.facts,
      notices: this.notices,
      formulas: this.formulas(),
      working: this.working,
    };
  }

  /** Whose equations were used, each once. */
  #sources(): Citation[] {
    return Array.from(new Map(this.#cited.map((each) => [cite(each), each])).values());
  }

  /** Every formula that was called, once. */
  formulas(): { id: string; revision: number }[] {
    const byId = new Map(
      this.#calls.map(({ formula }) => [formula.id, formula.definition.revision ?? 1]),
    );
    return Array.from(byId, ([id, revision]) => ({ id, revision }));
  }

  /** The calculation sheet. */
  readonly working = (): Working[] =>
    this.#calls.map(({ formula, args }) => working(formula as never, args as never));
}
