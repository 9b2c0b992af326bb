// Records for the tests: made ones, and two real ones where their files are at hand.
import { existsSync, readFileSync } from "node:fs";

import { cubicMetrePerSecond, day, litrePerSecond } from "@leat/quantity";
import { Column, type ColumnUncertainty, Quality, TimeAxis } from "@leat/quantity/column";

type Flows = Column<"volume flow">;

/** What a made record may have besides its flows. */
export interface Made {
  readonly start?: string;
  readonly waterYearStart?: number;
  readonly uncertainty?: ColumnUncertainty;
}

/** A record of flows in L/s, day by day; null is a gap. */
export function record(flows: readonly (number | null)[], made: Made = {}): Flows {
  const { start = "2001-01-01", waterYearStart, uncertainty } = made;
  const axis = TimeAxis.regular({
    start,
    step: day.of(1),
    count: flows.length,
    utcOffset: "+00:00",
    waterYearStart,
  });
  return Column.of(litrePerSecond, flows, { axis, uncertainty });
}

/** As many flows as asked for, each from its row. */
export function flowsOf<T>(days: number, flow: (row: number) => T): T[] {
  return Array.from({ length: days }, (_, row) => flow(row));
}

const folder = new URL("../../../shared/reference/data/", import.meta.url);
const choptankFile = new URL("choptank_01491000_daily.csv", folder);
const creekFile = new URL("wsc_08MG026_daily.csv", folder);

/** Whether the real records are absent; what rests on them is skipped. */
export const noRealRecords: boolean = !existsSync(choptankFile) || !existsSync(creekFile);

/** Daily flows by date, in m³/s, as a record with a gap for every date that has none. */
function fromDates(rows: readonly (readonly [string, string, string | undefined])[]): Flows {
  const seconds = (date: string): number => Date.parse(`${date}T00:00Z`) / 86_400_000;
  const start = seconds(rows[0]![0]);
  const count = seconds(rows.at(-1)![0]) - start + 1;
  const values = new Float64Array(count);
  const quality = new Uint8Array(count).fill(Quality.gap);
  const flags: Readonly<Record<string, number>> = {
    A: Quality.partial,
    B: Quality.ice,
    E: Quality.estimated,
  };
  for (const [date, flow, symbol = ""] of rows) {
    if (flow === "") continue;
    const row = seconds(date) - start;
    values[row] = Number(flow);
    quality[row] = flags[symbol] ?? 0;
  }
  const axis = TimeAxis.regular({
    start: rows[0]![0],
    step: day.of(1),
    count,
    utcOffset: "+00:00",
    waterYearStart: 10,
  });
  return Column.wrap(cubicMetrePerSecond.kind, values, quality, { axis });
}

function lines(file: URL): string[][] {
  return readFileSync(file, "utf8")
    .trim()
    .split("\n")
    .map((line) => line.trim().replaceAll('"', "").split(","));
}

/** Thirty-two years without a gap: U.S. Geological Survey, station 01491000, public domain. */
export function longRecord(): Flows {
  return fromDates(
    lines(choptankFile)
      .slice(1)
      .map(([date, flow]) => [date!, flow!, undefined]),
  );
}

/** A steep mountain creek with gaps, ice and estimates: Water Survey of Canada, station 08MG026, CC-BY 4.0. */
export function creekRecord(): Flows {
  return fromDates(
    lines(creekFile)
      .filter(([, parameter]) => parameter === "1")
      .map(([, , date, flow, symbol]) => [date!.replaceAll("/", "-"), flow!, symbol]),
  );
}
