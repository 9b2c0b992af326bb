import { turningPointsOf } from "@leat/penstock";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";

describe("turningPointsOf", () => {
  it("finds humps and dips by the depth that counts, and neither end", () => {
    const line = [100, 80, 84, 60, 59.5, 59.8, 40, 45, 44, 46, 0];
    expect(turningPointsOf(line, 0.2)).toEqual({ high: [2, 5, 7, 9], low: [1, 4, 6, 8] });
    expect(turningPointsOf(line, 1)).toEqual({ high: [2, 7, 9], low: [1, 6, 8] });
    expect(turningPointsOf(line, 2)).toEqual({ high: [2, 9], low: [1, 6] });
    expect(turningPointsOf(line, 5)).toEqual({ high: [9], low: [6] });
    expect(turningPointsOf(line, 7)).toEqual({ high: [], low: [] });
  });

  it("knows no turn in a pipe that only falls, in one that rises at first its hump alone", () => {
    expect(turningPointsOf([10, 8, 8, 3], 0.1)).toEqual({ high: [], low: [] });
    expect(turningPointsOf([10, 12, 3], 0.1)).toEqual({ high: [1], low: [] });
    expect(turningPointsOf([10, 2, 3], 0.1)).toEqual({ high: [], low: [1] });
  });

  it("takes the first of several points of one height", () => {
    expect(turningPointsOf([10, 5, 8, 8, 8, 2], 1)).toEqual({ high: [2], low: [1] });
  });

  it("alternates, and each turn is as deep as asked from its neighbours", () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0, max: 100, noNaN: true }), { minLength: 2, maxLength: 60 }),
        fc.double({ min: 0.5, max: 40, noNaN: true }),
        (heights, depth) => {
          const { high, low } = turningPointsOf(heights, depth);
          const turns = [...high, ...low].toSorted((a, b) => a - b);
          turns.forEach((turn, i) => {
            expect(turn > 0 && turn < heights.length - 1).toBe(true);
            const next = turns[i + 1];
            if (next === undefined) return;
            expect(high.includes(turn)).toBe(low.includes(next));
            expect(Math.abs(heights[turn]! - heights[next]!)).toBeGreaterThanOrEqual(depth);
          });
        },
      ),
    );
  });
});
