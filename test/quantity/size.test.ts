import { QuantityError } from "@leat/quantity";
import { readSize } from "@leat/quantity/text";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

import { thrown } from "./thrown.ts";

describe("readSize", () => {
  it.each([
    ["2/0 AWG", "AWG", "2/0"],
    ["AWG 2/0", "AWG", "2/0"],
    ["2/0", "AWG", "2/0"],
    ["4/0", "AWG", "4/0"],
    ["#2/0", "AWG", "2/0"],
    ["#2", "AWG", "2"],
    ["# 10 awg", "AWG", "10"],
    ["No. 2", "AWG", "2"],
    ["2 AWG", "AWG", "2"],
    ["0 AWG", "AWG", "1/0"],
    ["250 kcmil", "kcmil", "250"],
    ["250 MCM", "kcmil", "250"],
    ["211.6 kcmil", "kcmil", "211.6"],
    ["35 mm2", "mm²", "35"],
    ["35 mm²", "mm²", "35"],
    ["35 sq mm", "mm²", "35"],
    ["1.5 mm^2", "mm²", "1.5"],
  ])("reads %s", (text, system, name) => {
    expect(readSize(text)).toEqual({ system, name });
  });

  it.each([
    ["012", "ambiguous: 012: is it 1/0 or 12?"],
    ["00", "ambiguous: 00: is it 2/0 or 0?"],
    ["000 AWG", "ambiguous: 000 AWG: is it 3/0 or 0?"],
    ["2", "ambiguous: 2: is it AWG or mm²?"],
    ["2,5 mm²", "ambiguous: 2,5 mm^2: write a decimal point"],
    ["5/0", "size: 5/0 is not a size such as 2/0 AWG, 250 kcmil or 35 mm²"],
    ["41 AWG", "size: 41 AWG is not a size such as 2/0 AWG, 250 kcmil or 35 mm²"],
    ["2.5 AWG", "size: 2.5 AWG is not a size such as 2/0 AWG, 250 kcmil or 35 mm²"],
    ["2/0 kcmil", "size: 2/0 kcmil is not a size such as 2/0 AWG, 250 kcmil or 35 mm²"],
    ["0 mm²", "size: 0 mm^2 is not a size such as 2/0 AWG, 250 kcmil or 35 mm²"],
    ["35 mm", "size: 35 mm is not a size such as 2/0 AWG, 250 kcmil or 35 mm²"],
    ["35 ft", "size: 35 ft is not a size such as 2/0 AWG, 250 kcmil or 35 mm²"],
    ["", "empty: field text is empty"],
  ])("refuses %s", (text, message) => {
    expect(thrown(() => readSize(text))).toBe(message);
  });

  it("reads random text, or refuses it with the one error", () => {
    const text = fc.oneof(
      fc.string(),
      fc.string({
        unit: fc.constantFrom(
          ...Array.from("0123/#., "),
          "AWG",
          "kcmil",
          "MCM",
          "mm²",
          "No.",
          "sq ",
        ),
        maxLength: 6,
      }),
    );
    let reads = 0;
    fc.assert(
      fc.property(text, (line) => {
        try {
          const { system, name } = readSize(line);
          expect(readSize(`${name} ${system}`)).toEqual({ system, name });
          reads++;
        } catch (error) {
          if (!(error instanceof QuantityError)) throw error;
        }
      }),
      { numRuns: 20_000 },
    );
    expect(reads).toBeGreaterThan(50);
  });
});
