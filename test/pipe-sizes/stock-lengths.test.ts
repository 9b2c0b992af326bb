import { ownPipe, readPipe, stockLengthsOf } from "@leat/pipe-sizes";
import { inch, millimetre } from "@leat/quantity";
import { describe, expect, it } from "vitest";

const lengths = (name: string): string[] =>
  stockLengthsOf(readPipe(name)).map(({ form, length }) => `${form} of ${length.toString()}`);

describe("stockLengthsOf", () => {
  it.each([
    ["2 in PE DR 11", ["stick of 40 ft", "coil of 100 ft", "coil of 300 ft", "coil of 500 ft"]],
    ["4 in PE DR 11", ["stick of 40 ft", "coil of 100 ft", "coil of 300 ft", "coil of 500 ft"]],
    ["5 in PE DR 11", ["stick of 40 ft"]],
    ["2 in PE SIDR 5.3", ["coil of 100 ft", "coil of 300 ft", "coil of 400 ft"]],
    ["3 in PE SIDR 15", []],
    ["110 mm PE SDR 17", ["stick of 6 m", "coil of 50 m", "coil of 100 m", "coil of 200 m"]],
    ["125 mm PE SDR 17", ["stick of 6 m"]],
    ["4 in PVC SDR 26", ["stick of 20 ft"]],
    ["4 in PVC Sch 40", ["stick of 20 ft"]],
    ["110 mm PVC PN 10", ["stick of 6 m"]],
    ["3 in steel Sch 40", ["stick of 21 ft"]],
  ])("of %s are %j (common practice)", (name, expected) => {
    expect(lengths(name)).toEqual(expected);
  });

  it("are none for a pipe of one's own", () => {
    expect(
      stockLengthsOf(
        ownPipe({
          outsideDiameter: inch.of(4.5),
          wall: inch.of(0.237),
          roughness: millimetre.of(0.05),
        }),
      ),
    ).toEqual([]);
  });
});
