import { intakeCautions, type IntakeFacts } from "@leat/intake";
import { celsius, kilopascal, poundPerSquareInch } from "@leat/quantity";
import { describe, expect, it } from "vitest";

/** Everything known, and all of it harmless. */
const harmless: IntakeFacts = {
  collapsePressure: kilopascal.of(400),
  coldest: celsius.at(6),
  impounds: false,
  noFish: true,
};
const always = ["intake/entrapment", "intake/working-in-water"];
const codes = (facts?: IntakeFacts): string[] => intakeCautions(facts).map(({ code }) => code);

describe("intakeCautions", () => {
  it("are all given where nothing is known", () => {
    expect(codes()).toEqual([
      ...always,
      "intake/fish",
      "intake/vacuum-collapse",
      "intake/ice",
      "intake/impounding",
    ]);
  });

  it("are those of every intake where the rest is harmless", () => {
    expect(codes(harmless)).toEqual(always);
  });

  it.each<[string, IntakeFacts]>([
    ["intake/fish", { noFish: false }],
    ["intake/vacuum-collapse", { collapsePressure: poundPerSquareInch.of(14) }],
    ["intake/ice", { coldest: celsius.at(-0.1) }],
    ["intake/impounding", { impounds: true }],
  ])("%s is given for what calls for it alone", (code, facts) => {
    expect(codes({ ...harmless, ...facts })).toEqual([...always, code]);
  });

  it("say what to do, whose word it is, and weigh as cautions", () => {
    for (const { severity, message, source } of intakeCautions()) {
      expect(severity).toBe("caution");
      expect(message.length).toBeGreaterThan(80);
      expect(message).toMatch(/^[A-Z].*\.$/u);
      expect(source).toBeDefined();
    }
  });
});
