import { midSectionDischarge } from "@leat/flow-measurement";
import { NonPhysicalError } from "@leat/formula";
import {
  cubicMetrePerSecond,
  foot,
  footPerSecond,
  metre,
  metrePerSecond,
  squareMetre,
} from "@leat/quantity";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";

type Row = readonly [distance: number, depth: number, velocity: number];
const verticals = (rows: readonly Row[]) =>
  rows.map(([b, d, v]) => ({
    distance: metre.of(b),
    depth: metre.of(d),
    velocity: metrePerSecond.of(v),
  }));
const flowOf = (rows: readonly Row[]): number =>
  midSectionDischarge({ verticals: verticals(rows) }).flow.in(cubicMetrePerSecond);
const areaOf = (rows: readonly Row[]): number =>
  midSectionDischarge({ verticals: verticals(rows) }).area.in(squareMetre);

/** Steps, depths and velocities of a stream between two edges. */
const streams = fc
  .array(
    fc.tuple(
      fc.double({ min: 0.05, max: 2, noNaN: true }),
      fc.double({ min: 0, max: 1.5, noNaN: true }),
      fc.double({ min: -0.2, max: 2, noNaN: true }),
    ),
    { minLength: 3, maxLength: 20 },
  )
  .map((rows) => {
    let b = 0;
    return rows.map(([step, d, v]): Row => [(b += step), d, v]);
  });

describe("midSectionDischarge", () => {
  it("of one velocity is that velocity times the area", () => {
    fc.assert(
      fc.property(streams, (rows) => {
        const even = rows.map(([b, d]): Row => [b, d, 0.7]);
        expect(flowOf(even)).toBeCloseTo(0.7 * areaOf(even), 12);
      }),
    );
  });

  it("has the area of trapezoids between the same depths", () => {
    fc.assert(
      fc.property(streams, (rows) => {
        let area = 0;
        for (let i = 1; i < rows.length; i++)
          area += ((rows[i]![1] + rows[i - 1]![1]) / 2) * (rows[i]![0] - rows[i - 1]![0]);
        expect(areaOf(rows)).toBeCloseTo(area, 12);
      }),
    );
  });

  it("does not change where a vertical is put between two that are alike", () => {
    fc.assert(
      fc.property(
        streams,
        fc.nat(),
        fc.double({ min: 0.1, max: 0.9, noNaN: true }),
        (rows, at, share) => {
          const i = 1 + (at % (rows.length - 1));
          const even = rows.map(([b]): Row => [b, 0.4, 0.6]);
          const between = even[i - 1]![0] + share * (even[i]![0] - even[i - 1]![0]);
          expect(flowOf(even.toSpliced(i, 0, [between, 0.4, 0.6]))).toBeCloseTo(flowOf(even), 12);
        },
      ),
    );
  });

  it("does not change with the zero of the tape, nor from the other bank", () => {
    fc.assert(
      fc.property(streams, fc.double({ min: -50, max: 50, noNaN: true }), (rows, shift) => {
        expect(flowOf(rows.map(([b, d, v]): Row => [b + shift, d, v]))).toBeCloseTo(
          flowOf(rows),
          10,
        );
        const last = rows.at(-1)![0];
        const back = rows.map(([b, d, v]): Row => [last - b, d, v]).toReversed();
        expect(flowOf(back)).toBeCloseTo(flowOf(rows), 10);
      }),
    );
  });

  it("grows fourfold with every length doubled, and twice with every velocity", () => {
    fc.assert(
      fc.property(streams, (rows) => {
        const q = flowOf(rows);
        expect(flowOf(rows.map(([b, d, v]): Row => [2 * b, 2 * d, v]))).toBeCloseTo(4 * q, 10);
        expect(flowOf(rows.map(([b, d, v]): Row => [b, d, 2 * v]))).toBeCloseTo(2 * q, 10);
      }),
    );
  });

  it("is the same in feet", () => {
    fc.assert(
      fc.property(streams, (rows) => {
        const q = midSectionDischarge({
          verticals: rows.map(([b, d, v]) => ({
            distance: foot.of(b / 0.3048),
            depth: foot.of(d / 0.3048),
            velocity: footPerSecond.of(v / 0.3048),
          })),
        }).flow.in(cubicMetrePerSecond);
        expect(q).toBeCloseTo(flowOf(rows), 10);
      }),
    );
  });

  it("carries the uncertainty of each depth by its width and velocity", () => {
    const rows = verticals([
      [0, 0, 0],
      [1, 0.5, 0.4],
      [2, 0, 0],
    ]);
    const { flow } = midSectionDischarge({
      verticals: rows.map((row, i) =>
        i === 1 ? { ...row, depth: row.depth.plusMinus(metre.of(0.05), "rod") } : row,
      ),
    });
    expect(flow.standardUncertainty().in(cubicMetrePerSecond) * 1.959964).toBeCloseTo(0.02, 7);
  });

  it("refuses what is no cross-section", () => {
    const refused = (rows: readonly Row[], message: string) => {
      expect(() => flowOf(rows)).toThrow(NonPhysicalError);
      expect(() => flowOf(rows)).toThrow(message);
    };
    refused(
      [
        [0, 0, 0],
        [1, 0, 0],
      ],
      "mid-section-discharge: verticals = 2 rows, which hold no water between two edges. Give both edges and what is between them.",
    );
    refused(
      [
        [0, 0, 0],
        [1, 0.2, 0.3],
        [1, 0.3, 0.3],
        [2, 0, 0],
      ],
      "mid-section-discharge: verticals.2.distance does not lie beyond that of the row before. List the rows from one edge to the other.",
    );
    refused(
      [
        [0, 0, 0],
        [1, -0.2, 0.3],
        [2, 0, 0],
      ],
      "mid-section-discharge: verticals.1.depth = -0.2 m is below zero",
    );
  });
});
