import type { Notice } from "@leat/formula";
import { drainPoints } from "@leat/intake";
import { litrePerSecond, metre } from "@leat/quantity";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";

const run = (...heights: number[]) =>
  heights.map((height, i) => ({ distance: metre.of(10 * i), height: metre.of(height) }));

describe("drainPoints", () => {
  it("finds no low point in a pipe that falls or rises all the way, or lies level", () => {
    for (const heights of [
      [30, 20, 10, 0],
      [0, 1, 2],
      [5, 5, 5],
      [30, 20, 20, 0],
    ]) {
      expect(drainPoints({ points: run(...heights) })).toEqual({
        lows: [],
        highs: [],
        notices: [],
      });
    }
  });

  it("finds each low point with the water over it, and the high points between", () => {
    const told: Notice[] = [];
    const { lows, highs } = drainPoints(
      { points: run(30, 12, 15, 8, 8, 9, 0) },
      { onNotice: (notice) => told.push(notice) },
    );
    expect(lows.map(({ index, depth }) => [index, depth["~si"]])).toEqual([
      [1, 3],
      [3, 1],
    ]);
    expect(highs.map(({ index, depth }) => [index, depth["~si"]])).toEqual([
      [2, 7],
      [5, 9],
    ]);
    expect(told.map(({ path, message }) => [path, message])).toEqual([
      [
        ["points", 1],
        "drain-points: point 2, 10 m along, holds 3 m of water when the pipe is shut down. Put a drain there, or it freezes and bursts.",
      ],
      [
        ["points", 3],
        "drain-points: point 4, 30 m along, holds 1 m of water when the pipe is shut down. Put a drain there, or it freezes and bursts.",
      ],
    ]);
  });

  it("agrees with looking at every point and its neighbours", () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 0, max: 6 }), { minLength: 2, maxLength: 12 }),
        (heights) => {
          const { lows, highs } = drainPoints({ points: run(...heights) });
          // Levels taken together, a point is low where both sides rise.
          const steps = heights.flatMap((h, i) =>
            i > 0 && h === heights[i - 1] ? [] : [{ h, i }],
          );
          const inner = steps.slice(1, -1).map(({ h, i }, k) => ({
            i,
            low: steps[k]!.h > h && steps[k + 2]!.h > h,
            high: steps[k]!.h < h && steps[k + 2]!.h < h,
          }));
          expect(lows.map(({ index }) => index)).toEqual(
            inner.filter((p) => p.low).map((p) => p.i),
          );
          expect(highs.map(({ index }) => index)).toEqual(
            inner.filter((p) => p.high).map((p) => p.i),
          );
          for (const { depth } of [...lows, ...highs]) expect(depth["~si"]).toBeGreaterThan(0);
        },
      ),
    );
  });

  it("refuses one point, points out of order and what is no length", () => {
    expect(() => drainPoints({ points: run(3) })).toThrow(
      "drain-points: points has 1, and a run needs two or more. Give the intake first and the open end last.",
    );
    const points = [...run(3, 2), { distance: metre.of(5), height: metre.of(1) }];
    expect(() => drainPoints({ points })).toThrow(
      "drain-points: points.2.distance = 5 m is no farther along than 10 m, the one before. Give the points in order from the intake.",
    );
    expect(() =>
      drainPoints({
        points: [...run(3), { distance: litrePerSecond.of(1) as never, height: metre.of(1) }],
      }),
    ).toThrow("drain-points: points.1.distance = 1 L/s (volume flow) is refused");
  });
});
