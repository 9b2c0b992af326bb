import type { AnyUnit } from "@leat/quantity";
import { Quality } from "@leat/quantity/column";

import { type DateColumn, type DateForm, dateForm, isoDay, shortYearsNote } from "./date.ts";
import { ProblemList } from "./problem-list.ts";
import type { Problem } from "./problem.ts";
import type { NumberColumn } from "./quantity-cell.ts";
import {
  readTable,
  type Table,
  type TableCounts,
  type TableForm,
  type WantedColumn,
} from "./table.ts";
import { refuseOtherHeading, stated, temperatureScale, unitOfKind } from "./unit-cell.ts";

/** What a meter of conductivity shows: what it measures, or what that would be at another temperature. */
export type ConductivityReads = "raw" | "compensated";

/** How a logger of conductivity writes its file. */
export interface ConductivitySpec extends TableForm {
  /** Column of the times: numbers of a unit, or clock times or dates with them in a form. */
  readonly time: NumberColumn | DateColumn;
  /** Column of the conductivity. */
  readonly conductivity: NumberColumn;
  /** Column of the temperature of the water: `°C`, `°F` or `K`. */
  readonly temperature?: NumberColumn | undefined;
  /** What the meter shows. */
  readonly reads: ConductivityReads;
}

/** A cell of a series that holds no number. */
interface SeriesFault {
  /** Row of the series, from 0. */
  readonly row: number;
  /** Line of the file, from 1. */
  readonly line: number;
  /** Which column. */
  readonly column: "conductivity" | "temperature";
  /** What stands there. */
  readonly text: string;
}

/** Conductivity in the order that it was logged. */
export interface ConductivitySeries {
  /** Time of each row in seconds, each later than the one before, from {@link ConductivitySeries.from}. */
  readonly seconds: Float64Array;
  /** What second 0 is: a date, the midnight before the first row, or the zero of the file's own count. */
  readonly from: string;
  /** Conductivity in S/m as it stands in the file, whatever it is; 0 where it is no number. */
  readonly conductivity: Float64Array;
  /** {@link Quality} of each conductivity: a gap where it is no number. */
  readonly quality: Uint8Array;
  /** Temperature of the water in K; 0 where it is no number. */
  readonly temperature?: Float64Array;
  /** {@link Quality} of each temperature. */
  readonly temperatureQuality?: Uint8Array;
  /** What the meter shows, as it was stated. */
  readonly reads: ConductivityReads;
  /** The line of the file that each row stands on, from 1. */
  readonly lines: Uint32Array;
  /** Cells that hold no number. */
  readonly faults: readonly SeriesFault[];
  /** What became of the rows. */
  readonly counts: TableCounts & {
    /** Rows of the series. */
    readonly rows: number;
    /** Midnights that clock times went past. */
    readonly midnights: number;
  };
  /** What is worth knowing and stops nothing. */
  readonly notes: readonly Problem[];
}

const secondsInDay = 86_400;

/**
 * Reads the file of a conductivity logger.
 *
 * Numbers are handed on as they stand, whatever a logger may mean by them: 0, 9999 and −1 are for the analysis to
 * judge. Text where a number is due is a fault, with its line. Times must rise from row to row; clock times without
 * a date go past midnight where they fall by more than half a day.
 *
 * @param text - Text of the file.
 * @param file - Its name, for problems.
 * @param spec - How it is written.
 * @returns The series.
 * @throws FileError with every problem, each with its line and column; of each kind the first twenty.
 */
export function readConductivity(
  text: string,
  file: string,
  spec: ConductivitySpec,
): ConductivitySeries {
  const problems = new ProblemList(file);
  const clock = clockOf(spec.time, file);
  const unit = stated(file, "series/unit", ["conductivity", "unit"], () =>
    unitOfKind(spec.conductivity.unit, "conductivity", "µS/cm"),
  );
  const { temperature: warm } = spec;
  const scale =
    warm && stated(file, "series/unit", ["temperature", "unit"], () => temperatureScale(warm.unit));
  const columns: Record<string, WantedColumn> = {
    time: { column: spec.time.column, reads: "form" in clock ? "text" : "number" },
    conductivity: { column: spec.conductivity.column, reads: "number" },
    ...(warm && { temperature: { column: warm.column, reads: "number" } }),
  };
  const table = readTable(text, file, { ...spec, columns });
  refuseOtherHeading(table, "conductivity", unit, problems, "series/unit");
  if (!("form" in clock)) refuseOtherHeading(table, "time", clock, problems, "series/unit");

  const { seconds, from, midnights } = timesOf(table, clock, problems);
  const faults: SeriesFault[] = [];
  const numbers = (
    column: "conductivity" | "temperature",
    toSI: (number: number) => number,
  ): { values: Float64Array; quality: Uint8Array } => {
    const cells = table.cells[column] as readonly string[];
    const values = new Float64Array(cells.length);
    const quality = new Uint8Array(cells.length);
    for (const [row, cell] of cells.entries()) {
      const number = table.numberOf(cell);
      if (Number.isNaN(number)) {
        faults.push({ row, line: table.lines[row] as number, column, text: cell });
        quality[row] = Quality.gap;
      } else values[row] = toSI(number) + 0;
    }
    return { values, quality };
  };
  const conductivity = numbers("conductivity", (number) => unit.toSI(number));
  if (faults.length === table.lines.length) {
    problems.add("series/no-numbers", () =>
      table.say(
        0,
        "conductivity",
        `${table.headings["conductivity"]} has no number in ${faults.length === 1 ? "its row" : `any of its ${faults.length} rows`}, but text such as ${JSON.stringify(faults[0]?.text.slice(0, 60))}. Is it the right column?`,
      ),
    );
  }
  problems.throwIfAny();
  const temperature =
    scale && numbers("temperature", (number) => scale.unit.toSI(number + scale.offset));
  const notes: Problem[] = [...table.notes];
  if (midnights > 0) {
    const row = seconds.findIndex((each) => each >= secondsInDay);
    const { place, path, message } = table.say(
      row,
      "time",
      `${table.headings["time"]} falls here, by more than half a day: taken as midnight${midnights > 1 ? `, the first of ${midnights}` : ""}.`,
    );
    notes.push({ file, ...place, code: "series/midnight", path, message });
  }
  if ("form" in clock) notes.push(...shortYearsNote(clock, spec.time as DateColumn, table, "time"));
  return {
    seconds,
    from,
    conductivity: conductivity.values,
    quality: conductivity.quality,
    ...(temperature && {
      temperature: temperature.values,
      temperatureQuality: temperature.quality,
    }),
    reads: spec.reads,
    lines: Uint32Array.from(table.lines),
    faults: faults.toSorted((a, b) => a.row - b.row),
    counts: { ...table.counts, rows: table.lines.length, midnights },
    notes,
  };
}

/** The form of the times, or their unit. */
function clockOf(time: ConductivitySpec["time"], file: string): DateForm | AnyUnit {
  return "form" in time
    ? stated(file, "series/time-form", ["time", "form"], () =>
        dateForm(time.form, time.yearsFrom, "time of day"),
      )
    : stated(file, "series/unit", ["time", "unit"], () => unitOfKind(time.unit, "time", "s"));
}

/** The seconds of each row, each later than the one before. */
function timesOf(
  table: Table<string>,
  clock: DateForm | AnyUnit,
  problems: ProblemList,
): { seconds: Float64Array; from: string; midnights: number } {
  const cells = table.cells["time"] as readonly string[];
  const heading = table.headings["time"];
  const seconds = new Float64Array(cells.length);
  const dated = "form" in clock && clock.dated;
  let zero = 0;
  let midnights = 0;
  let before = -1;
  for (const [row, cell] of cells.entries()) {
    const at = "form" in clock ? clock.secondsOf(cell) : clock.toSI(table.numberOf(cell));
    if (Number.isNaN(at)) {
      problems.add("series/time", () =>
        table.say(
          row,
          "time",
          `${heading} ${JSON.stringify(cell.slice(0, 60))} ${"form" in clock ? clock.fault(cell) : "is not a number"}.`,
        ),
      );
      continue;
    }
    if (before < 0 && dated) zero = Math.floor(at / secondsInDay) * secondsInDay;
    let time = at - zero + midnights * secondsInDay;
    const last = seconds[before];
    // A clock that falls back by more than half a day went past midnight.
    if ("form" in clock && !dated && last !== undefined && last - time > secondsInDay / 2) {
      midnights += 1;
      time += secondsInDay;
    }
    if (last !== undefined && !(time > last)) {
      const line = table.lines[before];
      problems.add(time === last ? "series/time-twice" : "series/time-order", () =>
        table.say(
          row,
          "time",
          time === last
            ? `${heading} ${cell} stands on line ${line} already. Write the fraction of the second, or leave one of the rows out.`
            : `${heading} ${cell} is before that of line ${line}, ${cells[before]}. Put the rows in the order of their times.`,
        ),
      );
    }
    seconds[row] = time;
    before = row;
  }
  const from = !("form" in clock)
    ? `0 ${clock.symbol} of the file`
    : dated
      ? isoDay(zero / secondsInDay)
      : "midnight before the first row";
  return { seconds, from, midnights };
}
