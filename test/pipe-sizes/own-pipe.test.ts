import { boreOf, ownPipe, pePipeIPS } from "@leat/pipe-sizes";
import {
  inch,
  kilogramPerCubicMetre,
  millimetre,
  poundPerFoot,
  poundPerSquareInch,
} from "@leat/quantity";
import { describe, expect, it } from "vitest";

describe("ownPipe", () => {
  const measured = {
    outsideDiameter: inch.of(4.5),
    wall: inch.of(0.237),
    roughness: millimetre.of(0.05),
  };

  it("is as it was measured, and states no pressure of its own", () => {
    const pipe = ownPipe(measured);
    expect(boreOf(pipe).in(inch)).toBeCloseTo(4.026, 9);
    expect(boreOf(pipe, "minimum").in(inch)).toBe(boreOf(pipe).in(inch));
    expect(pipe.pressureRating).toBeUndefined();
    expect(pipe.massPerLength).toBeUndefined();
    expect(pipe.roughness.low).toBe(measured.roughness);
    expect(pipe.name).toBe("pipe of 4.5 in with a wall of 0.237 in");
  });

  it("keeps what else is known", () => {
    const roughness = {
      low: millimetre.of(0.03),
      typical: millimetre.of(0.045),
      high: millimetre.of(0.1),
    };
    const pipe = ownPipe({
      ...measured,
      roughness,
      name: "old steel",
      material: "steel",
      pressureRating: poundPerSquareInch.of(300),
    });
    expect(pipe).toMatchObject({ name: "old steel", material: "steel", roughness, series: "own" });
    expect(pipe.pressureRating!.in(poundPerSquareInch)).toBe(300);
  });

  it("has a weight where its density is known: of 4 in steel, 10.79 lb/ft (ASME B36.10M)", () => {
    const pipe = ownPipe({ ...measured, density: kilogramPerCubicMetre.of(7850) });
    expect(pipe.massPerLength!.in(poundPerFoot)).toBeCloseTo(10.8, 1);
  });

  it("refuses a wall that leaves no bore, or no wall", () => {
    expect(() => ownPipe({ ...measured, wall: inch.of(2.25) })).toThrow(
      "own pipe: a wall of 2.25 in in an outside diameter of 4.5 in leaves no pipe. Check both.",
    );
    expect(() => ownPipe({ ...measured, wall: inch.of(0) })).toThrow("leaves no pipe");
  });
});

describe("boreOf", () => {
  it("takes the average wall unless the least is asked for", () => {
    const pipe = pePipeIPS("4", 11);
    expect(boreOf(pipe).in(inch)).toBe(3.633);
    expect(boreOf(pipe, "average").in(inch)).toBe(3.633);
    expect(boreOf(pipe, "minimum").in(inch)).toBe(3.682);
  });
});
