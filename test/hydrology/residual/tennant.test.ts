import { type TennantCondition, tennantSeasons, tennantShares } from "@leat/hydrology";
import { percent, QuantityError } from "@leat/quantity";
import { describe, expect, it } from "vitest";

// Typed from table 1 of Tennant's report of 1975 and from the rows of the published values, apart from the code.
const printed = [
  ["flushing or maximum", undefined, undefined, 200, 200],
  ["optimum range", undefined, undefined, 60, 100],
  ["outstanding", 40, 60, undefined, undefined],
  ["excellent", 30, 50, undefined, undefined],
  ["good", 20, 40, undefined, undefined],
  ["fair or degrading", 10, 30, undefined, undefined],
  ["poor or minimum", 10, 10, undefined, undefined],
  ["severe degradation", undefined, undefined, 0, 10],
];

describe("tennantShares", () => {
  it("has all eight rows as printed", () => {
    expect(
      tennantShares.definition.rows.map(
        ({ condition, octoberToMarch, aprilToSeptember, least, most }) => [
          condition,
          octoberToMarch,
          aprilToSeptember,
          least,
          most,
        ],
      ),
    ).toEqual(printed);
    expect(tennantShares.get("good", "aprilToSeptember").in(percent)).toBe(40);
    expect(tennantShares.get("optimum range", "most").in(percent)).toBe(100);
  });

  it("never asks for less of a better condition, nor for more in the season of low flow", () => {
    const seasons = tennantShares.definition.rows.filter(
      ({ octoberToMarch }) => octoberToMarch !== undefined,
    );
    for (const [i, row] of seasons.entries()) {
      expect(row.octoberToMarch!).toBeLessThanOrEqual(row.aprilToSeptember!);
      const worse = seasons[i + 1];
      if (!worse) continue;
      expect(row.octoberToMarch!).toBeGreaterThanOrEqual(worse.octoberToMarch!);
      expect(row.aprilToSeptember!).toBeGreaterThan(worse.aprilToSeptember!);
    }
  });
});

describe("tennantSeasons", () => {
  it.each([
    ["outstanding", 40, 60],
    ["excellent", 30, 50],
    ["good", 20, 40],
    ["fair or degrading", 10, 30],
    ["poor or minimum", 10, 10],
  ] as const)(
    "keeps %s with %d and %d %% in the seasons that the caller states",
    (condition, low, high) => {
      // A southern stream that is low in summer.
      const { shares } = tennantSeasons({ condition, lowFlowMonths: [12, 1, 2, 3] });
      expect(shares.map((share) => share.in(percent))).toEqual(
        Array.from({ length: 12 }, (_, i) => ([11, 0, 1, 2].includes(i) ? low : high)),
      );
    },
  );

  it("refuses a condition without two seasons, and seasons that are none", () => {
    expect(() =>
      tennantSeasons({ condition: "optimum range" as TennantCondition, lowFlowMonths: [1] }),
    ).toThrow(QuantityError);
    expect(() =>
      tennantSeasons({ condition: "optimum range" as TennantCondition, lowFlowMonths: [1] }),
    ).toThrow("tennant-shares: the source gives no octoberToMarch for optimum range.");
    expect(() => tennantSeasons({ condition: "good", lowFlowMonths: [] })).toThrow(
      "tennant-seasons: lowFlowMonths has 0 months, and there are two seasons. State the months in which the stream is low; Tennant's are six.",
    );
    expect(() =>
      tennantSeasons({ condition: "good", lowFlowMonths: [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12] }),
    ).toThrow("lowFlowMonths has 12 months");
    expect(() => tennantSeasons({ condition: "good", lowFlowMonths: [1, 1] })).toThrow(
      "seasonal-shares: January is in season 0 already. Leave it in one, once.",
    );
    expect(() => tennantSeasons({ condition: "good", lowFlowMonths: [0] })).toThrow(
      "seasonal-shares: month 0 is none. Give numbers from 1, January, to 12.",
    );
  });
});
