import { type Notice, cite } from "@leat/formula";
import {
  californiaApproachVelocities,
  californiaCriterion,
  fishScreen,
  nmfsApproachVelocities,
  nmfsCriterion,
  nmfsOpenings,
  nmfsOpenShare,
} from "@leat/intake";
import {
  cubicFootPerSecond,
  footPerSecond,
  inch,
  litrePerSecond,
  metre,
  millimetre,
  percent,
  squareFoot,
  squareMetre,
} from "@leat/quantity";
import { describe, expect, it } from "vitest";

const plate = { cleaning: "passive", material: "woven wire or perforated plate" } as const;

describe("criteria for fish", () => {
  it("are those that the agencies print", () => {
    const { approachVelocity, openShare } = nmfsCriterion(plate);
    expect(approachVelocity.in(footPerSecond)).toBeCloseTo(0.2, 12);
    expect(openShare?.in(percent)).toBeCloseTo(27, 12);
    expect(nmfsApproachVelocities.get("active", "approachVelocity").in(footPerSecond)).toBeCloseTo(
      0.4,
      12,
    );
    expect(
      californiaCriterion("rivers and streams").approachVelocity.in(footPerSecond),
    ).toBeCloseTo(0.33, 12);
    expect(
      californiaApproachVelocities
        .get("where delta smelt are", "approachVelocity")
        .in(footPerSecond),
    ).toBeCloseTo(0.2, 12);
    expect(nmfsOpenShare.get("any", "openShare").in(percent)).toBe(27);
  });

  it("print the same openings in inches and in millimetres", () => {
    for (const material of nmfsOpenings.keys()) {
      const inches = nmfsOpenings.get(material, "openingInch").in(millimetre);
      expect(
        Math.abs(inches - nmfsOpenings.get(material, "openingMillimetre").in(millimetre)),
      ).toBeLessThanOrEqual(0.005);
    }
    expect(nmfsOpenings.get("woven wire or perforated plate", "openingInch").in(inch)).toBe(3 / 32);
  });

  it("name whose they are and how sure we are", () => {
    expect(cite(nmfsOpenings.definition.source)).toContain("read in a second text");
    expect(cite(nmfsOpenShare.definition.source)).toContain("to be confirmed");
    expect(californiaCriterion("rivers and streams").jurisdiction).toBe("California");
  });
});

describe("fishScreen", () => {
  it("gives California's example: 1 ft³/s through 3 ft² is 0.33 ft/s", () => {
    const { approachVelocity, kept } = fishScreen({
      flow: cubicFootPerSecond.of(1),
      effectiveArea: squareFoot.of(3.04),
      criterion: californiaCriterion("rivers and streams"),
    });
    expect(approachVelocity.in(footPerSecond)).toBeCloseTo(0.33, 2);
    expect(kept).toBe(true);
  });

  it("says what is not kept, whose it is and what to do", () => {
    const told: Notice[] = [];
    const { kept, notices } = fishScreen(
      {
        flow: litrePerSecond.of(12),
        effectiveArea: squareMetre.of(0.15),
        opening: millimetre.of(3),
        openShare: percent.of(20),
        criterion: nmfsCriterion(plate),
      },
      { onNotice: (notice) => told.push(notice) },
    );
    expect(kept).toBe(false);
    expect(told).toEqual(notices);
    expect(notices.map(({ severity, message }) => `${severity}: ${message}`)).toEqual([
      "caution: fish-screen: the water comes to the screen at 0.26 ft/s, above the 0.2 ft/s that US National Marine Fisheries Service (United States, federal) asks. Fish are held on it: make the screen larger.",
      "caution: fish-screen: openings of 3 mm are wider than the 0.09375 in that US National Marine Fisheries Service (United States, federal) asks. Fry go through: take a finer screen.",
      "caution: fish-screen: 20 % of the screen is open, less than the 27 % that US National Marine Fisheries Service (United States, federal) asks. The water is fast in the openings: take a more open screen.",
      "caution: fish-screen: the fisheries agency of the stream decides what is asked of a screen there. US National Marine Fisheries Service (United States, federal) is only one.",
    ]);
  });

  it("says what it could not check, and keeps a screen at the limit", () => {
    const { kept, notices } = fishScreen({
      flow: cubicFootPerSecond.of(0.2),
      effectiveArea: squareFoot.of(1),
      criterion: nmfsCriterion(plate),
    });
    expect(kept).toBe(true);
    expect(notices.map(({ code, path }) => [code, path])).toEqual([
      ["screen/not-checked", ["opening"]],
      ["screen/not-checked", ["openShare"]],
      ["screen/agency-decides", ["criterion"]],
    ]);
    expect(notices[0]!.message).toBe(
      "fish-screen: opening is not given, and US National Marine Fisheries Service (United States, federal) asks at most 0.09375 in. Give it to have it checked.",
    );
  });

  it("refuses what is no flow, no area and no opening", () => {
    const good = {
      flow: litrePerSecond.of(12),
      effectiveArea: squareMetre.of(0.5),
      criterion: nmfsCriterion(plate),
    };
    expect(() => fishScreen({ ...good, flow: metre.of(1) as never })).toThrow(
      "fish-screen: flow = 1 m (length) is refused: give a volume flow (such as 1 m³/s).",
    );
    expect(() => fishScreen({ ...good, effectiveArea: squareMetre.of(0) })).toThrow(
      "fish-screen: effectiveArea = 0 m² is not above zero. Check its sign and its unit.",
    );
    expect(() => fishScreen({ ...good, flow: litrePerSecond.of(-1) })).toThrow(
      "fish-screen: flow = -1 L/s is below zero. Check its sign and its unit.",
    );
    expect(() => fishScreen({ ...good, opening: 3 as never })).toThrow(
      "fish-screen: opening = number is refused: give a length (such as 1 m).",
    );
  });
});
