// Each mistake of the fixture, as the compiler and as the running code answer it. The words are part of what is
// promised: both kinds, both values, the operation.
import { readFileSync } from "node:fs";

import { beforeAll, describe, expect, it } from "vitest";

import { compile } from "./compiler.ts";
import { thrown } from "./thrown.ts";

const path = "../types/quantity/mistakes.ts";
const { mistakes } = (await import(/* @vite-ignore */ path)) as {
  mistakes: Record<string, () => unknown>;
};

/** By mistake: what the compiler prints, line under line, and code and message at run time. */
const answers: [mistake: string, compiled: string[], ran: string][] = [
  [
    "flow for head",
    [
      `TS2345: Argument of type 'Quantity<"volume flow">' is not assignable to parameter of type 'Quantity<"gross head">'.`,
      "Types of property 'kind' are incompatible.",
      `Type '"volume flow"' is not assignable to type '"gross head"'.`,
    ],
    "kind: cannot add 12 L/s (volume flow) to 40 m (gross head)",
  ],
  [
    "pipe for loss",
    [
      `TS2345: Argument of type 'Quantity<"pipe length">' is not assignable to parameter of type 'Quantity<"gross head" | "head loss" | "net head">'.`,
      "Types of property 'kind' are incompatible.",
      `Type '"pipe length"' is not assignable to type '"gross head" | "head loss" | "net head"'.`,
    ],
    "kind: cannot subtract 120 m (pipe length) from 40 m (gross head)",
  ],
  [
    "head for loss",
    [
      `TS2345: Argument of type 'Quantity<"gross head">' is not assignable to parameter of type 'Quantity<"head loss">'.`,
      "Types of property 'kind' are incompatible.",
      `Type '"gross head"' is not assignable to type '"head loss"'.`,
    ],
    "kind: cannot subtract 40 m (gross head) from 3 m (head loss)",
  ],
  [
    "number for head",
    [
      `TS2345: Argument of type 'number' is not assignable to parameter of type 'Quantity<"gross head">'.`,
    ],
    "kind: cannot add 3 (not a quantity) to 40 m (gross head)",
  ],
  [
    "energy for torque",
    [
      `TS2345: Argument of type 'Quantity<"energy">' is not assignable to parameter of type 'Quantity<"torque">'.`,
      "Types of property 'kind' are incompatible.",
      `Type '"energy"' is not assignable to type '"torque"'.`,
    ],
    "kind: cannot add 3 J (energy) to 3 N·m (torque)",
  ],
  [
    "head for pipe",
    [
      `TS2345: Argument of type 'Quantity<"gross head">' is not assignable to parameter of type 'Quantity<"pipe length">'.`,
      "Types of property 'kind' are incompatible.",
      `Type '"gross head"' is not assignable to type '"pipe length"'.`,
    ],
    "kind: cannot compare 120 m (pipe length) with 40 m (gross head)",
  ],
  [
    "flow out of head",
    [
      `TS2345: Argument of type 'Unit<"volume flow">' is not assignable to parameter of type 'Unit<"gross head"> | Unit<"length">'.`,
      `Type 'Unit<"volume flow">' is not assignable to type 'Unit<"gross head">'.`,
      "Types of property 'kind' are incompatible.",
      `Type '"volume flow"' is not assignable to type '"gross head"'.`,
    ],
    "kind: 40 m (gross head) has no L/s (volume flow)",
  ],
  [
    "power out of head",
    [
      `TS2345: Argument of type '"power"' is not assignable to parameter of type '"gross head" | "head loss" | "length" | "net head" | "pipe length"'.`,
    ],
    "kind: 40 m (gross head) cannot be taken as power",
  ],
  [
    "volts for power",
    [
      `TS2345: Argument of type 'Quantity<"voltage">' is not assignable to parameter of type 'Quantity<"power">'.`,
      "Types of property 'kind' are incompatible.",
      `Type '"voltage"' is not assignable to type '"power"'.`,
    ],
    "kind: cannot subtract 1 W (power) from 120 V (voltage)",
  ],
  [
    "volts per amp for power",
    [
      `TS2345: Argument of type 'Quantity<"resistance">' is not assignable to parameter of type 'Quantity<"power">'.`,
      "Types of property 'kind' are incompatible.",
      `Type '"resistance"' is not assignable to type '"power"'.`,
    ],
    "kind: cannot subtract 1 W (power) from 7.74193548387097 Ω (resistance)",
  ],
  [
    "unnamed for power",
    [
      `TS2345: Argument of type 'Quantity<"m^-2.5·s">' is not assignable to parameter of type 'Quantity<"power">'.`,
      "Types of property 'kind' are incompatible.",
      `Type '"m^-2.5·s"' is not assignable to type '"power"'.`,
    ],
    "kind: cannot subtract 1 W (power) from 166.666666666667 m^-2.5·s (m^-2.5·s)",
  ],
  [
    "beyond the range",
    [
      `TS2345: Argument of type 'Quantity<"an exponent beyond the range">' is not assignable to parameter of type 'Quantity<"power">'.`,
      "Types of property 'kind' are incompatible.",
      `Type '"an exponent beyond the range"' is not assignable to type '"power"'.`,
    ],
    "exponent: m^8 has an exponent beyond 5",
  ],
  [
    "text for number",
    ["TS2345: Argument of type 'string' is not assignable to parameter of type 'number'."],
    "not-finite: 3 m is not a finite number",
  ],
  [
    "pressure for force",
    [
      `TS2345: Argument of type 'Quantity<"pressure">' is not assignable to parameter of type 'Quantity<"force">'.`,
      "Types of property 'kind' are incompatible.",
      `Type '"pressure"' is not assignable to type '"force"'.`,
    ],
    "kind: a torque needs a force, not 3 Pa",
  ],
  [
    "flow for spread",
    [
      `TS2345: Argument of type 'Quantity<"volume flow">' is not assignable to parameter of type 'Quantity<"gross head"> | Quantity<"length">'.`,
      `Type 'Quantity<"volume flow">' is not assignable to type 'Quantity<"gross head">'.`,
      "Types of property 'kind' are incompatible.",
      `Type '"volume flow"' is not assignable to type '"gross head"'.`,
    ],
    "kind: cannot spread 40 m (gross head) by 12 L/s (volume flow)",
  ],
  [
    "price for amount",
    [
      `TS2345: Argument of type 'Quantity<"price per length">' is not assignable to parameter of type 'Quantity<"money">'.`,
      "Types of property 'kind' are incompatible.",
      `Type '"price per length"' is not assignable to type '"money"'.`,
    ],
    "kind: cannot add 3 USD/m (price per length) to 3 USD (money)",
  ],
  [
    "sum of temperatures",
    [
      `TS2740: Type 'Point<"absolute zero">' is missing the following properties from type 'Quantity<"temperature difference">': kind, "~currency", times, dividedBy, and 9 more.`,
    ],
    "kind: cannot move 20 °C (a point over absolute zero) by 5 °C",
  ],
  [
    "stage for elevation",
    [
      "TS2769: No overload matches this call.",
      "The last overload gave the following error.",
      `Type 'Point<"staff zero">' is missing the following properties from type 'Quantity<"length">': kind, "~currency", times, dividedBy, and 9 more.`,
    ],
    "origin: cannot subtract 12 m over peg (a point over site datum) and 1 m over staff: two origins",
  ],
  [
    "length for temperature",
    [
      `TS2345: Argument of type 'Quantity<"length">' is not assignable to parameter of type 'Quantity<"temperature difference">'.`,
      "Types of property 'kind' are incompatible.",
      `Type '"length"' is not assignable to type '"temperature difference"'.`,
    ],
    "kind: cannot move 20 °C (a point over absolute zero) by 3 m",
  ],
  [
    "gauge for absolute",
    [
      `TS2345: Argument of type 'Point<"local atmosphere">' is not assignable to parameter of type 'Point<"vacuum">'.`,
      "Types of property 'origin' are incompatible.",
      `Type '"local atmosphere"' is not assignable to type '"vacuum"'.`,
    ],
    "origin: a point over vacuum is needed, not 3 Pa over a",
  ],
  [
    "metres out of flows",
    [
      `TS2345: Argument of type 'Unit<"length">' is not assignable to parameter of type 'Unit<"volume flow">'.`,
      "Types of property 'kind' are incompatible.",
      `Type '"length"' is not assignable to type '"volume flow"'.`,
    ],
    "kind: a column of volume flow has no m (length)",
  ],
  [
    "head out of flows",
    [
      `TS2345: Argument of type '"gross head"' is not assignable to parameter of type '"volume flow"'.`,
    ],
    "kind: a column of volume flow cannot be taken as gross head",
  ],
  [
    "text in a column",
    ["TS2322: Type 'string' is not assignable to type 'number'."],
    "column: row 0 of length is not a finite number",
  ],
  [
    "net for gross",
    [
      `TS2345: Argument of type 'Quantity<"volume flow">' is not assignable to parameter of type 'Quantity<"head loss" | "net head">'.`,
      "Types of property 'kind' are incompatible.",
      `Type '"volume flow"' is not assignable to type '"head loss" | "net head"'.`,
    ],
    "kind: asked for net head, and this is stored as gross head",
  ],
  [
    "speed for flow",
    [
      `TS2345: Argument of type 'Quantity<"velocity">' is not assignable to parameter of type 'Quantity<"volume flow">'.`,
      "Types of property 'kind' are incompatible.",
      `Type '"velocity"' is not assignable to type '"volume flow"'.`,
    ],
    "kind: cannot compare 12 L/s (volume flow) with 1 m/s (velocity)",
  ],
];

const compiled = new Map<string, string[]>();
beforeAll(async () => {
  const lines = readFileSync(new URL(path, import.meta.url), "utf8").split("\n");
  let at: string[] = [];
  for (const line of (await compile("test/types/quantity")).trimEnd().split("\n")) {
    const [, row, text] =
      /^test\/types\/quantity\/mistakes\.ts\((\d+),\d+\): error (.*)$/u.exec(line) ?? [];
    if (text === undefined) at.push(line.trimStart());
    else {
      const name = /^ {2}"(.*?)":/u.exec(lines[Number(row) - 1] ?? "")?.[1] ?? `line ${row}`;
      at = [...(compiled.get(name) ?? []), text];
      compiled.set(name, at);
    }
  }
}, 60_000);

describe("a mistake", () => {
  it.each(answers)("is told by the compiler: %s", (mistake, expected) => {
    expect(compiled.get(mistake)).toEqual(expected);
  });

  it.each(answers)("is told where it runs: %s", (mistake, _, expected) => {
    expect(thrown(mistakes[mistake] as () => unknown)).toBe(expected);
  });

  it("is in the list, every one, and nothing else is wrong", () => {
    const names = answers.map(([name]) => name);
    expect(Object.keys(mistakes)).toEqual(names);
    expect([...compiled.keys()].toSorted()).toEqual(names.toSorted());
  });

  it("is told in one line of less than 160 characters where it runs", () => {
    for (const [, , ran] of answers) {
      expect(ran).not.toContain("\n");
      expect(ran.length).toBeLessThan(160);
    }
  });
});
