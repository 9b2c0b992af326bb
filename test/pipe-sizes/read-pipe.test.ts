import { type Pipe, pipesLike, pipesOf, readPipe } from "@leat/pipe-sizes";
import { QuantityError } from "@leat/quantity";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";

const every: readonly Pipe[] = [
  ...([7, 7.3, 9, 9.3, 11, 13.5, 15.5, 17, 21, 26, 32.5] as const).flatMap((dr) =>
    (["PE4710", "PE3608"] as const).flatMap((material) =>
      pipesOf({ series: "PE IPS", dr, material }),
    ),
  ),
  ...([6, 7.4, 9, 11, 13.6, 17, 21, 26, 33, 41] as const).flatMap((sdr) =>
    (["PE100", "PE80"] as const).flatMap((material) =>
      pipesOf({ series: "PE ISO", sdr, material }),
    ),
  ),
  ...([40, 80] as const).flatMap((schedule) => pipesOf({ series: "PVC schedule", schedule })),
  ...([13.5, 17, 21, 26, 32.5, 41] as const).flatMap((sdr) => pipesOf({ series: "PVC SDR", sdr })),
  ...([5.3, 7, 9, 11.5, 15, 19] as const).flatMap((sidr) =>
    (["PE4710", "PE3608"] as const).flatMap((material) =>
      pipesOf({ series: "PE SIDR", sidr, material }),
    ),
  ),
  ...([6, 8, 10, 12.5, 16, 20, 25] as const).flatMap((pressure) =>
    pipesOf({ series: "PVC ISO", pressure }),
  ),
  ...([40, 80, "STD"] as const).flatMap((schedule) =>
    (["black", "galvanised"] as const).flatMap((finish) =>
      pipesOf({ series: "steel", schedule, finish }),
    ),
  ),
];

describe("readPipe", () => {
  it("reads back the name of every pipe there is", () => {
    expect(every.length).toBe(2 * 188 + 2 * 217 + 28 + 67 + 2 * 60 + 104 + 2 * 57);
    for (const pipe of every) expect(readPipe(pipe.name), pipe.name).toEqual(pipe);
  });

  it("lists each among those of its class, by rising bore", () => {
    for (const pipe of every.filter((_, i) => i % 7 === 0)) {
      const like = pipesLike(pipe.name);
      expect(like.map(({ name }) => name)).toContain(pipe.name);
      const bores = like.map(({ insideDiameter }) => insideDiameter.average["~si"]);
      expect(bores).toEqual(bores.toSorted((a, b) => a - b));
      expect(new Set(like.map(({ series, material }) => `${series} ${material}`)).size).toBe(1);
    }
    expect(pipesLike("2 in PE SIDR 15 coil").map(({ name }) => name)).toEqual(
      ["1/2", "3/4", "1", "1 1/4", "1 1/2", "2", "2 1/2", "3", "4", "6"].map(
        (size) => `${size} in PE4710 SIDR 15`,
      ),
    );
    // Of one nominal pressure, wide pipe is of a thinner ratio: the list goes on.
    expect(pipesLike("90 mm PVC SDR 21").map(({ name }) => name)).toContain("110 mm PVC PN 10");
  });

  it.each([
    ["2 in PE SIDR 15 coil", "2 in PE4710 SIDR 15"],
    ['1" HDPE SIDR-11.5', "1 in PE4710 SIDR 11.5"],
    ["1-1/4 in PE3608 SIDR 15, coil", "1 1/4 in PE3608 SIDR 15"],
    ["110 mm PVC PN 10", "110 mm PVC PN 10"],
    ["110mm uPVC PN10", "110 mm PVC PN 10"],
    ["63 mm PVC-U PN 12.5 pipe", "63 mm PVC PN 12.5"],
    ["110 mm PVC SDR 26", "110 mm PVC PN 10"],
    ["90 mm PVC SDR 26", "90 mm PVC PN 8"],
    ["63 mm PE PN 16", "63 mm PE100 SDR 11"],
    ["63 mm PE80 PN 12.5", "63 mm PE80 SDR 11"],
    ["110 mm HDPE SDR 33", "110 mm PE100 SDR 33"],
    ["3 in steel Sch 40", "3 in steel Sch 40"],
    ['2 1/2" carbon steel pipe schedule 80', "2 1/2 in steel Sch 80"],
    ["2 in galvanized steel Sch 40", "2 in galvanised steel Sch 40"],
    ["2 in galv. steel STD", "2 in galvanised steel STD"],
    ["12 in black steel standard", "12 in steel STD"],
    ["4 in PE DR 15.5", "4 in PE4710 DR 15.5"],
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
      "PE in iron pipe sizes: 4 in is not made in DR 12; it is made in DR 7, DR 7.3, DR 9, DR 9.3, DR 11, DR 13.5, DR 15.5, DR 17, DR 21, DR 26, DR 32.5.",
    ],
    ["7 in PE DR 11", "PE in iron pipe sizes: there is no size of 7 in; sizes are 1/2, 3/4,"],
    ["1.6 in PE DR 11", "PE in iron pipe sizes: there is no size of 1 .6 in; sizes are 1/2, 3/4,"],
    ["100 mm PE SDR 11", "metric PE: there is no size of 100 mm; sizes are 16, 20,"],
    [
      "110 mm PVC Sch 40",
      '"110 mm PVC Sch 40" is not read as a pipe: in millimetres PVC is named by PN or SDR, such as 110 mm PVC PN 10.',
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
      '"4 PE DR 11" is not read as a pipe: write it as 4 in PE DR 11, 2 in PE SIDR 15, 110 mm PE100 SDR 17, 4 in PVC Sch 40, 4 in PVC SDR 26, 110 mm PVC PN 10 or 3 in steel Sch 40.',
    ],
    [
      "2 in PE SIDR 11",
      "PE sized by its inside: 2 in is not made in SIDR 11; it is made in SIDR 5.3, SIDR 7, SIDR 9, SIDR 11.5, SIDR 15, SIDR 19.",
    ],
    [
      "110 mm PVC PN 11",
      "metric PVC: 110 mm is not made in PN 11; it is made in PN 6, PN 8, PN 10, PN 12.5, PN 16, PN 20, PN 25.",
    ],
    ["110 mm PVC SDR 12", "metric PVC: 110 mm is not made in SDR 12; it is made in SDR 11,"],
    ["100 mm PVC PN 10", "metric PVC: there is no size of 100 mm; sizes are 20, 25,"],
    ["110 mm PE PN 7", "metric PE: PN 7 is not made of PE100; it is made in PN 25,"],
    ["4 in steel Sch 60", "steel: 4 in is not made in Sch 60; it is made in Sch 40, Sch 80, STD."],
    [
      "100 mm steel Sch 40",
      '"100 mm steel Sch 40" is not read as a pipe: steel is known here by nominal inches only, such as 3 in steel Sch 40.',
    ],
    [
      "4 in steel SDR 26",
      '"4 in steel SDR 26" is not read as a pipe: steel is made by schedule, such as Sch 40 or STD.',
    ],
    [
      "4 in steel 80 Sch 40",
      '"4 in steel 80 Sch 40" is not read as a pipe: 80 is no grade of steel',
    ],
    ["4 in PE STD", '"4 in PE STD" is not read as a pipe: STD is a wall of steel pipe.'],
    ["4 in PVC STD", '"4 in PVC STD" is not read as a pipe: STD is a wall of steel pipe.'],
    [
      "4 in galvanised PE DR 11",
      '"4 in galvanised PE DR 11" is not read as a pipe: galvanised is said of steel, and not of PE.',
    ],
    [
      "63 mm PE SIDR 15",
      '"63 mm PE SIDR 15" is not read as a pipe: SIDR is a ratio of pipe in inches, such as 2 in PE SIDR 15.',
    ],
    [
      "2 in PVC SIDR 15",
      '"2 in PVC SIDR 15" is not read as a pipe: SIDR is a ratio of PE pipe, such as 2 in PE SIDR 15.',
    ],
    [
      "2 in PE PN 10",
      '"2 in PE PN 10" is not read as a pipe: PN is said of pipe in millimetres; in inches PE is named by DR or SIDR.',
    ],
    [
      "2 in PVC PN 10",
      '"2 in PVC PN 10" is not read as a pipe: PN is said of pipe in millimetres; in inches PVC is named by Sch or SDR.',
    ],
    ["2 in poly pipe", '"2 in poly pipe" is not read as a pipe: write it as'],
    ["DN 100 steel Sch 40", '"DN 100 steel Sch 40" is not read as a pipe: write it as'],
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
        "SIDR",
        "PN",
        "STD",
        "steel",
        "galvanised",
        "coil",
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
            expect((error as Error).message.length).toBeLessThan(400);
          }
        },
      ),
    );
    expect(() => readPipe(undefined as never)).toThrow(QuantityError);
  });
});
