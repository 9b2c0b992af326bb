import type { Quantity } from "@leat/quantity";

import { type DateColumn, dateForm, isoDay, shortYearsNote } from "./date.ts";
import { ProblemList } from "./problem-list.ts";
import type { Problem } from "./problem.ts";
import { nameOf, type NumberColumn, readCell } from "./quantity-cell.ts";
import { readTable, type TableCounts, type TableForm, type WantedColumn } from "./table.ts";
import { refuseOtherHeading, stated, unitOfKind } from "./unit-cell.ts";

/** How a table of gaugings is written. */
export interface GaugingsSpec extends TableForm {
  /** Column of the dates. */
  readonly date?: DateColumn | undefined;
  /** Column of the stages, read on a staff: of either sign. */
  readonly stage: NumberColumn;
  /** Column of the flows. */
  readonly flow: NumberColumn;
  /** Begins the names of the sources of uncertainty; the name of the file by default. */
  readonly source?: string | undefined;
}

/** A gauging: a flow measured while a staff was read. */
interface Gauging {
  /** Line of the file, from 1. */
  readonly line: number;
  /** The day, as `2009-01-02`, where there is a column of dates. */
  readonly on?: string;
  /** Stage over the zero of the staff. */
  readonly stage: Quantity<"length">;
  /** Flow. */
  readonly flow: Quantity<"volume flow">;
}

/** Gaugings as they were written down. */
export interface Gaugings {
  /** The gaugings, in the order of the file. */
  readonly gaugings: readonly Gauging[];
  /** What became of the rows. */
  readonly counts: TableCounts;
  /** What is worth knowing and stops nothing. */
  readonly notes: readonly Problem[];
}

/**
 * Reads a table of gaugings, in any order. A cell may have a spread, such as `1.53 ± 0.08`; its source is named by
 * the row and the column: `rating.2.flow`.
 *
 * @param text - Text of the file.
 * @param file - Its name, for problems.
 * @param spec - How it is written.
 * @returns The gaugings.
 * @throws FileError with every problem, each with its line and column; of each kind the first twenty.
 */
export function readGaugings(text: string, file: string, spec: GaugingsSpec): Gaugings {
  const problems = new ProblemList(file);
  const { date } = spec;
  const form =
    date &&
    stated(file, "gaugings/date-form", ["date", "form"], () =>
      dateForm(date.form, date.yearsFrom, "date"),
    );
  const units = {
    stage: stated(file, "gaugings/unit", ["stage", "unit"], () =>
      unitOfKind(spec.stage.unit, "length", "m"),
    ),
    flow: stated(file, "gaugings/unit", ["flow", "unit"], () =>
      unitOfKind(spec.flow.unit, "volume flow", "m3/s"),
    ),
  };
  const columns: Record<string, WantedColumn> = {
    ...(date && { date: { column: date.column, reads: "text" } }),
    stage: { column: spec.stage.column, reads: "number" },
    flow: { column: spec.flow.column, reads: "number" },
  };
  const table = readTable(text, file, { ...spec, columns });
  for (const key of ["stage", "flow"] as const)
    refuseOtherHeading(table, key, units[key], problems, "gaugings/unit");
  const id = spec.source ?? nameOf(file);
  const gaugings = table.lines.flatMap((line, row): Gauging[] => {
    const cell = { table, row, id, problems, code: "gaugings" };
    const stage = readCell(cell, "stage", spec.stage.unit, "length", "any");
    const flow = readCell(cell, "flow", spec.flow.unit, "volume flow");
    const day = table.cells["date"]?.[row] ?? "";
    const seconds = form?.secondsOf(day);
    if (form && seconds !== undefined && Number.isNaN(seconds)) {
      problems.add("gaugings/date", () =>
        table.say(
          row,
          "date",
          `${table.headings["date"]} ${JSON.stringify(day.slice(0, 60))} ${form.fault(day)}.`,
        ),
      );
      return [];
    }
    if (!stage || !flow) return [];
    return [
      {
        line,
        ...(seconds !== undefined && { on: isoDay(Math.floor(seconds / 86_400)) }),
        stage,
        flow,
      },
    ];
  });
  problems.throwIfAny();
  return {
    gaugings,
    counts: table.counts,
    notes: [...table.notes, ...(form && date ? shortYearsNote(form, date, table, "date") : [])],
  };
}
