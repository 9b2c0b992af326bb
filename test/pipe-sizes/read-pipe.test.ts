import { type Pipe, pipesOf, readPipe } from "@leat/pipe-sizes";
import { QuantityError } from "@leat/quantity";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";

const every: readonly Pipe[] = [
  ...([7, 7.3, 9, 11, 13.5, 17, 21, 26, 32.5] as const).flatMap((dr) =>
    (["PE4710", "PE3608"] as const).flatMap((material) =>
      pipesOf({ series: "PE IPS", dr, material }),
    ),
  ),
  ...([6, 7.4, 9, 11, 13.6, 17, 21, 26] as const).flatMap((sdr) =>
    (["PE100", "PE80"] as const).flatMap((material) =>
      pipesOf({ series: "PE ISO", sdr, material }),
    ),
  ),
  ...([40, 80] as const).flatMap((schedule) => pipesOf({ series: "PVC schedule", schedule })),
  ...([13.5, 17, 21, 26, 32.5, 41] as const).flatMap((sdr) => pipesOf({ series: "PVC SDR", sdr })),
];

describe("readPipe", () => {
  it("reads back the name of every pipe there is", () => {
    expect(every.length).toBe(2 * 99 + 2 * 137 + 28 + 67);
    for (const pipe of every) expect(readPipe(pipe.name), pipe.name).toEqual(pipe);
  });

  it.each([
    ["4 in PE DR 11", "4 in PE4710 DR 11"],
    ["110 mm PE100 SDR 17", "110 mm PE100 SDR 17"],
    ["4 in PVC Sch 40", "4 in PVC Sch 40"],
    ["4 in PVC SDR 26", "4 in PVC SDR 26"],
    ['1 1/2" PVC Sch 40', "1 1/2 in PVC Sch 40"],
    ["1½ in HDPE DR 9", "1 1/2 in PE4710 DR 9"],
    ["1.5 in PE 4710 SDR 11", "1 1/2 in PE4710 DR 11"],
    ["0.75-inch PVC schedule 80", "3/4 in PVC Sch 80"],
    ["¾ in PVC Sch 80", "3/4 in PVC Sch 80"],
    ["63mm PE SDR 11", "63 mm PE100 SDR 11"],
    ["3/4 in pe3608 dr 7", "3/4 in PE3608 DR 7"],
    ["1-1/2 in. uPVC, Sch. 40", "1 1/2 in PVC Sch 40"],
    ["  2 1/2 inches PVC 1120 pipe SDR-21 ", "2 1/2 in PVC SDR 21"],
    ["4″ PE pipe DR-17", "4 in PE4710 DR 17"],
  ])("reads %s", (text, name) => {
    expect(readPipe(text).name).toBe(name);
  });

  it.each([
    [
      "4 in PE DR 12",
      "PE in iron pipe sizes: 4 in is not made in DR 12; it is made in DR 7, DR 7.3, DR 9, DR 11, DR 13.5, DR 17, DR 21, DR 26, DR 32.5.",
    ],
    ["7 in PE DR 11", "PE in iron pipe sizes: there is no size of 7 in; sizes are 1/2, 3/4,"],
    ["1.6 in PE DR 11", "PE in iron pipe sizes: there is no size of 1 .6 in; sizes are 1/2, 3/4,"],
    ["100 mm PE SDR 11", "metric PE: there is no size of 100 mm; sizes are 16, 20,"],
    [
      "110 mm PVC Sch 40",
      '"110 mm PVC Sch 40" is not read as a pipe: PVC is known here in inches only, such as 4 in PVC Sch 40.',
    ],
    [
      "4 in PE Sch 40",
      '"4 in PE Sch 40" is not read as a pipe: PE is made by dimension ratio, such as DR 11, and not by schedule.',
    ],
    [
      "4 in PVC DR 26",
      '"4 in PVC DR 26" is not read as a pipe: PVC in iron pipe sizes is named by SDR or Sch; DR is the name of municipal PVC with another outside diameter.',
    ],
    [
      "4 in PE100 DR 11",
      '"4 in PE100 DR 11" is not read as a pipe: in inches the grade is PE4710 or PE3608.',
    ],
    [
      "110 mm PE4710 SDR 11",
      '"110 mm PE4710 SDR 11" is not read as a pipe: in millimetres the grade is PE100 or PE80.',
    ],
    [
      "1 1/2 mm PE SDR 11",
      '"1 1/2 mm PE SDR 11" is not read as a pipe: sizes in millimetres are whole numbers, such as 110 mm.',
    ],
    [
      "4 PE DR 11",
      '"4 PE DR 11" is not read as a pipe: write it as 4 in PE DR 11, 110 mm PE100 SDR 17, 4 in PVC Sch 40 or 4 in PVC SDR 26.',
    ],
    ["4 in PE", '"4 in PE" is not read as a pipe: write it as'],
    ["", '"" is not read as a pipe: write it as'],
  ])("refuses %s", (text, message) => {
    expect(() => readPipe(text)).toThrow(QuantityError);
    expect(() => readPipe(text)).toThrow(message);
  });

  it("throws nothing but its own error, in short, whatever it is given", () => {
    const bits = fc.array(
      fc.constantFrom(
        "4",
        "110",
        " ",
        "1/2",
        "in",
        "mm",
        '"',
        "PE",
        "PVC",
        "DR",
        "SDR",
        "Sch",
        "11",
        "40",
        ".",
        "½",
        "-",
        "\n",
        "x".repeat(200),
      ),
    );
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string(),
          bits.map((parts) => parts.join("")),
        ),
        (text) => {
          try {
            expect(readPipe(text).name.length).toBeGreaterThan(0);
          } catch (error) {
            expect(error).toBeInstanceOf(QuantityError);
            expect((error as Error).message.length).toBeLessThan(300);
          }
        },
      ),
    );
    expect(() => readPipe(undefined as never)).toThrow(QuantityError);
  });
});
