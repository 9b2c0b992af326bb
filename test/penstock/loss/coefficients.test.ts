import { OutOfValidityError } from "@leat/formula";
import {
  beadCoefficient,
  bendCoefficient,
  bendCoefficientOf,
  coefficientInOtherBore,
  coefficientInOtherBoreOf,
  colebrookFactorOf,
  contractionCoefficient,
  entranceCoefficients,
  expansionCoefficient,
  fittingCoefficients,
  hazenWilliams,
  hazenWilliamsCoefficients,
  mitreCoefficient,
  pipeVelocityOf,
  polyethyleneFlowCoefficients,
  reachLossOf,
  reynoldsNumberOf,
  roughness,
  roundedEntranceCoefficient,
  screenCoefficient,
  valveCoefficients,
  velocityHeadsOf,
} from "@leat/penstock";
import {
  coherentUnit,
  cubicMetrePerSecond,
  degree,
  foot,
  inch,
  metre,
  millimetre,
  one,
  squareMetre,
} from "@leat/quantity";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";

const k = coherentUnit("coefficient");
const shares = fc.double({ min: 0.1, max: 0.99, noNaN: true });
const angles = fc.double({ min: 1, max: 180, noNaN: true });

describe("changes of bore", () => {
  it("lose nothing where the bore stays, and what Borda and Carnot say where it opens out", () => {
    const same = { smallerBore: millimetre.of(80), largerBore: millimetre.of(80) };
    expect(expansionCoefficient(same)["~si"]).toBe(0);
    expect(contractionCoefficient(same)["~si"]).toBe(0);
    const far = { smallerBore: millimetre.of(1), largerBore: metre.of(10) };
    expect(expansionCoefficient(far)["~si"]).toBeCloseTo(1, 6);
    expect(contractionCoefficient(far)["~si"]).toBeCloseTo(0.5, 6);
    // (V1 − V2)²/2g over V1²/2g
    fc.assert(
      fc.property(shares, (ratio) => {
        const got = expansionCoefficient({ smallerBore: metre.of(ratio), largerBore: metre.of(1) });
        expect(got["~si"]).toBeCloseTo((1 - ratio ** 2) ** 2, 12);
      }),
    );
  });

  it("lose less through a cone, less the slimmer it is", () => {
    fc.assert(
      fc.property(shares, angles, (ratio, angle) => {
        const bores = { smallerBore: metre.of(ratio), largerBore: metre.of(1) };
        const at = (formula: typeof expansionCoefficient, degrees: number): number =>
          formula({ ...bores, coneAngle: degree.of(degrees) })["~si"];
        for (const formula of [expansionCoefficient, contractionCoefficient]) {
          expect(at(formula, angle)).toBeLessThanOrEqual(at(formula, 180) * (1 + 1e-12));
          if (Math.abs(angle - 45) > 1)
            expect(at(formula, angle * 0.95)).toBeLessThanOrEqual(at(formula, angle));
        }
      }),
    );
  });

  it("meet within 1.5 % where one law of a cone follows the other", () => {
    const bores = { smallerBore: metre.of(0.5), largerBore: metre.of(1) };
    for (const formula of [expansionCoefficient, contractionCoefficient]) {
      const [below, above] = [45, 45.001].map(
        (a) => formula({ ...bores, coneAngle: degree.of(a) })["~si"],
      );
      expect(Math.abs(below! / above! - 1)).toBeLessThan(0.015);
    }
  });

  it("refuse bores the wrong way round, and an angle beyond a step", () => {
    const wrong = { smallerBore: millimetre.of(90), largerBore: millimetre.of(80) };
    expect(() => expansionCoefficient(wrong)).toThrow(OutOfValidityError);
    expect(() => expansionCoefficient(wrong)).toThrow("smallerBore/largerBore = 1.125 is above 1");
    expect(() => contractionCoefficient(wrong)).toThrow(
      "smallerBore/largerBore = 1.125 is above 1",
    );
    const right = { smallerBore: millimetre.of(70), largerBore: millimetre.of(80) };
    expect(() => expansionCoefficient({ ...right, coneAngle: degree.of(200) })).toThrow(
      "coneAngle = 200° is above 180°",
    );
  });

  it("move a coefficient to another bore so that the same head is lost", () => {
    fc.assert(
      fc.property(shares, shares, (own, other) => {
        const moved = coefficientInOtherBore({
          coefficient: k.of(0.7),
          ownBore: metre.of(own),
          insideDiameter: metre.of(other),
        });
        const head = (coefficient: number, bore: number): number =>
          velocityHeadsOf(coefficient, pipeVelocityOf(0.01, bore), 9.80665);
        expect(head(moved["~si"], other) / head(0.7, own)).toBeCloseTo(1, 10);
        expect(coefficientInOtherBoreOf(moved["~si"], other, own)).toBeCloseTo(0.7, 10);
      }),
    );
  });
});

describe("bends", () => {
  it("lose nothing straight on, and more the further they turn, up to 115°", () => {
    expect(bendCoefficientOf(0, 5, 0.016)).toBe(0);
    expect(mitreCoefficient({ bendAngle: degree.of(0) })["~si"]).toBe(0);
    fc.assert(
      fc.property(
        fc.double({ min: 2, max: 110, noNaN: true }),
        fc.double({ min: 1, max: 30, noNaN: true }),
        (angle, radii) => {
          const at = (degrees: number): number =>
            bendCoefficientOf((degrees * Math.PI) / 180, radii, 0.016);
          expect(at(angle * 1.05)).toBeGreaterThan(at(angle));
        },
      ),
    );
  });

  it("lose most where they are tight, less than a mitre of the same angle", () => {
    for (const angle of [30, 45, 90]) {
      const bend = (radii: number): number =>
        bendCoefficientOf((angle * Math.PI) / 180, radii, 0.016);
      expect(bend(1)).toBeGreaterThan(bend(3));
      expect(bend(1.5)).toBeLessThan(mitreCoefficient({ bendAngle: degree.of(angle) })["~si"]);
    }
    expect(mitreCoefficient({ bendAngle: degree.of(22.5) })["~si"] * 2).toBeLessThan(
      mitreCoefficient({ bendAngle: degree.of(45) })["~si"],
    );
  });

  it("refuse what is no bend", () => {
    const bend = {
      bendAngle: degree.of(90),
      bendRadius: metre.of(0.04),
      insideDiameter: metre.of(0.1),
      frictionFactor: k.of(0.02),
    };
    expect(() => bendCoefficient(bend)).toThrow("bendRadius/insideDiameter = 0.4 is below 0.5");
    expect(() =>
      bendCoefficient({ ...bend, bendRadius: metre.of(1), bendAngle: degree.of(190) }),
    ).toThrow("bendAngle = 190° is above 180°");
    expect(() => mitreCoefficient({ bendAngle: degree.of(160) })).toThrow(
      "bendAngle = 160° is above 150°",
    );
  });
});

describe("the mouth of a pipe", () => {
  it("loses less the rounder it is, from a square edge's half", () => {
    const at = (radius: number): number =>
      roundedEntranceCoefficient({ edgeRadius: metre.of(radius), insideDiameter: metre.of(1) })[
        "~si"
      ];
    expect(at(0)).toBe(fittingCoefficients.row("square entrance").coefficient);
    fc.assert(
      fc.property(shares, (r) => {
        expect(at(r)).toBeLessThan(at(r * 0.9));
      }),
    );
    const { rows } = entranceCoefficients.definition;
    expect(rows.map(({ low, high }) => low <= high)).toEqual([true, true, true, true]);
    expect(rows.map(({ low }) => low)).toEqual([0.05, 0.2, 0.5, 0.8]);
    expect(entranceCoefficients.get("projecting pipe", "high")["~si"]).toBe(1);
  });

  it("loses more through a screen the less of it is open, and endlessly where nothing is", () => {
    const at = (open: number, blocked = 0): number =>
      screenCoefficient({
        openShare: one.of(open),
        blockedShare: one.of(blocked),
        screenArea: squareMetre.of(0.05),
        insideDiameter: metre.of(0.1),
      })["~si"];
    expect(at(1)).toBe(0);
    fc.assert(
      fc.property(shares, fc.double({ min: 0, max: 0.9, noNaN: true }), (open, blocked) => {
        expect(at(open, blocked)).toBeCloseTo(at(open * (1 - blocked)), 9);
        expect(at(open)).toBeLessThan(at(open * 0.95));
      }),
    );
    expect(() => at(0.4, 1)).toThrow("screen-coefficient: K is not a number for these inputs");
  });
});

describe("the bead of butt fusion", () => {
  it("loses nothing where there is none, and at least the widening behind it", () => {
    const at = (height: number, edge?: number): number =>
      beadCoefficient({
        beadHeight: millimetre.of(height),
        insideDiameter: millimetre.of(92),
        ...(edge !== undefined && { edgeCoefficient: k.of(edge) }),
      })["~si"];
    expect(at(0)).toBe(0);
    fc.assert(
      fc.property(
        fc.double({ min: 0.5, max: 9, noNaN: true }),
        fc.double({ min: 0.001, max: 0.5, noNaN: true }),
        (height, edge) => {
          const open = (1 - (2 * height) / 92) ** 2;
          expect(at(height, edge)).toBeGreaterThan((1 / open - 1) ** 2);
          expect(at(height, edge)).toBeGreaterThan(at(height * 0.9, edge));
        },
      ),
    );
    expect(() => at(10)).toThrow("beadHeight/insideDiameter = 0.1087 is above 0.1");
    expect(() => at(1, 0.6)).toThrow("edgeCoefficient = 0.6 is above 0.5");
  });

  it("every 6 m makes up what C = 150, which was measured with beads, loses beyond smooth pipe", () => {
    const bead = beadCoefficient({
      beadHeight: millimetre.of(3),
      insideDiameter: millimetre.of(92),
    })["~si"];
    for (const velocity of [2, 3]) {
      const flow = (velocity * Math.PI * 0.092 ** 2) / 4;
      const beaded = reachLossOf(flow, 0.092, 3e-6, 6, bead, 1e-6, 9.80665);
      const hazen = hazenWilliams({
        flow: cubicMetrePerSecond.of(flow),
        insideDiameter: millimetre.of(92),
        length: metre.of(6).as("pipe length"),
        flowCoefficient: k.of(150),
      });
      expect(Math.abs(hazen["~si"] / beaded - 1)).toBeLessThan(0.03);
      expect(hazen["~si"] / reachLossOf(flow, 0.092, 3e-6, 6, 0, 1e-6, 9.80665)).toBeGreaterThan(
        1.035,
      );
    }
  });
});

describe("valves", () => {
  it("lose more the further they are shut", () => {
    const rows = valveCoefficients.definition.rows;
    const of = (kind: string): number[] =>
      rows.filter(({ valve }) => valve.startsWith(kind)).map(({ coefficient }) => coefficient);
    for (const kind of [
      "gate valve",
      "diaphragm valve",
      "globe valve",
      "plug cock",
      "butterfly valve",
    ]) {
      const line = of(kind);
      expect(line.length).toBeGreaterThan(1);
      expect(line).toEqual(line.toSorted((a, b) => a - b));
    }
    expect(valveCoefficients.get("gate valve, half open", "coefficient")["~si"]).toBe(4.5);
    expect(rows.length).toBe(31);
  });

  it("are as a theory of Weisbach's cocks has them: turned twice as far, tens of times the loss", () => {
    const at = (valve: Parameters<typeof valveCoefficients.row>[0]): number =>
      valveCoefficients.row(valve).coefficient;
    // Weisbach's own rows as another textbook prints them: 0.05 0.29 1.56 17.3 206 and 0.24 0.52 1.54 10.8 118.
    expect([5, 10, 20, 40, 60].map((a) => at(`plug cock, turned ${a}°` as never))).toEqual([
      0.05, 0.29, 1.56, 17.3, 206,
    ]);
    expect([5, 10, 20, 40, 60].map((a) => at(`butterfly valve, turned ${a}°` as never))).toEqual([
      0.24, 0.52, 1.54, 10.8, 118,
    ]);
  });
});

describe("hazenWilliams", () => {
  it("has the coefficients of the manual, and those of PE with its smooth wall", () => {
    // EPANET 2.2 User Manual, Table 3.2, typed again.
    const printed = {
      plastic: [140, 150],
      "steel, new": [140, 150],
      "galvanised iron": [120, 120],
      "cast iron, new": [130, 140],
    };
    expect(
      Object.fromEntries(
        hazenWilliamsCoefficients.definition.rows.map(({ material, low, high }) => [
          material,
          [low, high],
        ]),
      ),
    ).toEqual(printed);
    const pe = polyethyleneFlowCoefficients.row("PE, butt fused");
    expect([pe.low, pe.high]).toEqual([150, 155]);
    expect(Math.abs(roughness.get("polyethylene", "low").in(foot) / 0.000005 - 1)).toBeLessThan(
      0.02,
    );
    // Table 3.2 again: roughness of new plastic, steel, galvanised and cast iron.
    const feet = (
      material: Parameters<typeof roughness.row>[0],
      column: "low" | "typical",
    ): number => roughness.get(material, column).in(foot) * 1000;
    expect(Math.abs(feet("PVC", "low") / 0.005 - 1)).toBeLessThan(0.02);
    expect(Math.abs(feet("commercial steel, new", "typical") / 0.15 - 1)).toBeLessThan(0.02);
    expect(Math.abs(feet("galvanised iron", "typical") / 0.5 - 1)).toBeLessThan(0.02);
    expect(Math.abs(feet("cast iron, new", "typical") / 0.85 - 1)).toBeLessThan(0.02);
  });

  it("lies within 8 % of Colebrook and White in plastic of ordinary size and speed, at 20 °C", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.055, max: 0.3, noNaN: true }),
        fc.double({ min: 0.8, max: 3, noNaN: true }),
        (bore, velocity) => {
          const flow = (velocity * Math.PI * bore ** 2) / 4;
          const factor = colebrookFactorOf(reynoldsNumberOf(velocity, bore, 1e-6), 3e-6 / bore);
          const hazen = hazenWilliams({
            flow: cubicMetrePerSecond.of(flow),
            insideDiameter: metre.of(bore),
            length: metre.of(100).as("pipe length"),
            flowCoefficient: k.of(150),
          });
          expect(
            Math.abs(hazen["~si"] / velocityHeadsOf((factor * 100) / bore, velocity, 9.80665) - 1),
          ).toBeLessThan(0.08);
        },
      ),
    );
  });

  it("says where it ends", () => {
    const reach = {
      flow: cubicMetrePerSecond.of(0.001),
      insideDiameter: inch.of(3),
      length: metre.of(1).as("pipe length"),
      flowCoefficient: k.of(150),
    };
    expect(() => hazenWilliams({ ...reach, insideDiameter: inch.of(1.5) })).toThrow(
      "insideDiameter = 1.5 in is below 2 in",
    );
    expect(() => hazenWilliams({ ...reach, flow: cubicMetrePerSecond.of(0.02) })).toThrow(
      "velocity in feet a second = 14.39 is above 10",
    );
    expect(() => hazenWilliams({ ...reach, flowCoefficient: k.of(200) })).toThrow(
      "flowCoefficient = 200 is above 160",
    );
  });
});
