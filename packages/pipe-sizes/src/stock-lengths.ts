import { commonPractice, table } from "@leat/formula";
import { foot, metre, type Quantity } from "@leat/quantity";

import type { Pipe } from "./pipe.ts";

/**
 * Lengths that inch pipe is sold in, in feet, by series: sticks, and coils of PE up to a size. What a yard has in stock
 * differs; longer coils are made to order.
 */
export const stockLengthsFeet = /* @__PURE__ */ table(() => ({
  id: "stock-lengths-feet",
  key: "series",
  units: { stick: foot, shortCoil: foot, coil: foot, longCoil: foot },
  source: commonPractice.at("lengths of inch pipe", "practice"),
  rows: [
    { series: "PE IPS", stick: 40, shortCoil: 100, coil: 300, longCoil: 500 },
    { series: "PE SIDR", stick: undefined, shortCoil: 100, coil: 300, longCoil: 400 },
    {
      series: "PVC schedule",
      stick: 20,
      shortCoil: undefined,
      coil: undefined,
      longCoil: undefined,
    },
    { series: "PVC SDR", stick: 20, shortCoil: undefined, coil: undefined, longCoil: undefined },
    { series: "steel", stick: 21, shortCoil: undefined, coil: undefined, longCoil: undefined },
  ],
}));

/** Lengths that metric pipe is sold in, in metres, by series. */
export const stockLengthsMetres = /* @__PURE__ */ table(() => ({
  id: "stock-lengths-metres",
  key: "series",
  units: { stick: metre, shortCoil: metre, coil: metre, longCoil: metre },
  source: commonPractice.at("lengths of metric pipe", "practice"),
  rows: [
    { series: "PE ISO", stick: 6, shortCoil: 50, coil: 100, longCoil: 200 },
    { series: "PVC ISO", stick: 6, shortCoil: undefined, coil: undefined, longCoil: undefined },
  ],
}));

/** Widest pipe that comes in coils, in metres: 4 in on the outside, 2 in on the inside, 110 mm on the outside. */
const widestCoil = { "PE IPS": 4.5 * 0.0254, "PE SIDR": 2.067 * 0.0254, "PE ISO": 0.11 } as const;

/** A length that pipe comes in. */
export interface StockLength {
  /** Straight, or coiled. */
  readonly form: "stick" | "coil";
  /** How long. */
  readonly length: Quantity<"pipe length">;
}

/**
 * Lengths that a pipe is sold in, shortest first, for counting joints. Common practice: ask the yard.
 *
 * @param pipe - The pipe.
 * @returns Sticks and coils; none for a pipe of one's own, nor for pipe that is made to order, such as 3 in by SIDR.
 * @example
 * ```ts
 * import { readPipe, stockLengthsOf } from "@leat/pipe-sizes";
 *
 * stockLengthsOf(readPipe("110 mm PVC PN 10")).map(({ form, length }) => `${form} of ${length}`)[0]; // => "stick of 6 m"
 * ```
 */
export function stockLengthsOf(pipe: Pipe): StockLength[] {
  const { series } = pipe;
  if (series === "own") return [];
  const [row, unit] =
    series === "PE ISO" || series === "PVC ISO"
      ? ([stockLengthsMetres.row(series), metre] as const)
      : ([stockLengthsFeet.row(series), foot] as const);
  const diameter = series === "PE SIDR" ? pipe.insideDiameter.average : pipe.outsideDiameter;
  // A hair for the rounding of inches.
  const coiled =
    series in widestCoil &&
    diameter.in(metre) <= widestCoil[series as keyof typeof widestCoil] + 1e-9;
  const lengths: [StockLength["form"], number | undefined][] = [
    ["stick", row.stick],
    ["coil", coiled ? row.shortCoil : undefined],
    ["coil", coiled ? row.coil : undefined],
    ["coil", coiled ? row.longCoil : undefined],
  ];
  return lengths.flatMap(([form, length]) =>
    length === undefined ? [] : [{ form, length: unit.of(length).as("pipe length") }],
  );
}
