import type { Point, Quantity } from "@leat/quantity";

import { ProblemList } from "./problem-list.ts";
import type { Problem } from "./problem.ts";
import { nameOf, type NumberColumn, readCell } from "./quantity-cell.ts";
import { readTable, type TableCounts, type TableForm, type WantedColumn } from "./table.ts";
import { refuseOtherHeading, stated, temperatureScale, unitOfKind } from "./unit-cell.ts";

/** How a table of a calibration is written. */
export interface CalibrationSpec extends TableForm {
  /** Column of the volume of salt solution added so far, in all. */
  readonly added: NumberColumn;
  /** Column of the conductivity after it. */
  readonly conductivity: NumberColumn;
  /** Column of the temperature: `°C`, `°F` or `K`. */
  readonly temperature?: NumberColumn | undefined;
  /** Begins the names of the sources of uncertainty; the name of the file by default. */
  readonly source?: string | undefined;
}

/** A step of a calibration. */
interface CalibrationStep {
  /** Line of the file, from 1. */
  readonly line: number;
  /** Volume of salt solution added so far, in all. */
  readonly added: Quantity<"volume">;
  /** Conductivity after it. */
  readonly conductivity: Quantity<"conductivity">;
  /** Temperature of the water. */
  readonly temperature?: Point<"absolute zero">;
}

/** A calibration as it was written down. */
export interface Calibration {
  /** The steps, in the order of the file. */
  readonly steps: readonly CalibrationStep[];
  /** What became of the rows. */
  readonly counts: TableCounts;
  /** What is worth knowing and stops nothing. */
  readonly notes: readonly Problem[];
}

/**
 * Reads the table of a calibration: salt solution added to a sample of the stream, and the conductivity after each.
 *
 * The volume is what was added so far in all, so that it rises from row to row, from 0 where the sample itself was
 * read. Remarks below the table are passed over where the columns that are wanted hold nothing, and counted.
 *
 * @param text - Text of the file.
 * @param file - Its name, for problems.
 * @param spec - How it is written.
 * @returns The steps.
 * @throws FileError with every problem, each with its line and column; of each kind the first twenty.
 */
export function readCalibration(text: string, file: string, spec: CalibrationSpec): Calibration {
  const problems = new ProblemList(file);
  const units = {
    added: stated(file, "calibration/unit", ["added", "unit"], () =>
      unitOfKind(spec.added.unit, "volume", "L"),
    ),
    conductivity: stated(file, "calibration/unit", ["conductivity", "unit"], () =>
      unitOfKind(spec.conductivity.unit, "conductivity", "µS/cm"),
    ),
  };
  const { temperature } = spec;
  if (temperature)
    stated(file, "calibration/unit", ["temperature", "unit"], () =>
      temperatureScale(temperature.unit),
    );
  const columns: Record<string, WantedColumn> = {
    added: { column: spec.added.column, reads: "number" },
    conductivity: { column: spec.conductivity.column, reads: "number" },
    ...(temperature && { temperature: { column: temperature.column, reads: "number" } }),
  };
  const table = readTable(text, file, { ...spec, columns });
  for (const key of ["added", "conductivity"] as const)
    refuseOtherHeading(table, key, units[key], problems, "calibration/unit");
  const id = spec.source ?? nameOf(file);
  const steps = table.lines.flatMap((line, row): CalibrationStep[] => {
    const cell = { table, row, id, problems, code: "calibration" };
    const added = readCell(cell, "added", spec.added.unit, "volume");
    const conductivity = readCell(cell, "conductivity", spec.conductivity.unit, "conductivity");
    const blank = table.cells["temperature"]?.[row] === "";
    const warm =
      temperature && !blank
        ? readCell(cell, "temperature", temperature.unit, "absolute zero")
        : undefined;
    if (!added || !conductivity) return [];
    return [{ line, added, conductivity, ...(warm && { temperature: warm }) }];
  });
  for (const [n, step] of steps.entries()) {
    const before = steps[n - 1];
    if (!before || step.added["~si"] > before.added["~si"]) continue;
    problems.add("calibration/order", () =>
      table.say(
        table.lines.indexOf(step.line),
        "added",
        `${table.headings["added"]} ${step.added.toString()} is not above that of line ${before.line}, ${before.added.toString()}. Write the volume added so far, in all.`,
      ),
    );
  }
  problems.throwIfAny();
  return { steps, counts: table.counts, notes: table.notes };
}
