import {
  peDesignStress,
  peIsoTemperatureFactors,
  peRequiredStrength,
  peTemperatureFactors,
  metalExpansion,
  pipeExpansion,
  plasticExpansion,
  plasticRoughness,
  pvcIsoTemperatureFactors,
  pvcTemperatureFactors,
  steelRoughness,
} from "@leat/pipe-sizes";
import { megapascal, millimetre, one, perKelvin, poundPerSquareInch } from "@leat/quantity";
import { describe, expect, it } from "vitest";

describe("temperature factors", () => {
  it("fall as the pipe warms, from 1", () => {
    for (const table of [peTemperatureFactors, peIsoTemperatureFactors, pvcTemperatureFactors]) {
      const factors = table.definition.rows.map(({ factor }) => factor as number);
      expect(factors[0]).toBe(1);
      expect(factors).toEqual(factors.toSorted((a, b) => b - a));
      expect(new Set(factors).size).toBe(factors.length);
    }
  });

  it("are for PVC those of the handbook, which differs from a maker's page at 110 and 130 °F only", () => {
    const maker = {
      "80 °F": 0.88,
      "90 °F": 0.75,
      "100 °F": 0.62,
      "110 °F": 0.51,
      "120 °F": 0.4,
      "130 °F": 0.31,
      "140 °F": 0.22,
    } as const;
    for (const [at, factor] of Object.entries(maker)) {
      const held = pvcTemperatureFactors.get(at as keyof typeof maker, "factor").in(one);
      expect(held).toBe({ "110 °F": 0.5, "130 °F": 0.3 }[at] ?? factor);
    }
  });

  it("are for PE those of AWWA M55 and of ISO 4427-1", () => {
    expect(peTemperatureFactors.get("80 °F", "factor").in(one)).toBe(1);
    expect(peTemperatureFactors.get("90 °F", "factor").in(one)).toBe(0.9);
    expect(peTemperatureFactors.get("100 °F", "factor").in(one)).toBe(0.8);
    expect(peIsoTemperatureFactors.get("30 °C", "factor").in(one)).toBe(0.87);
    expect(peIsoTemperatureFactors.get("40 °C", "factor").in(one)).toBe(0.74);
    expect(() => peTemperatureFactors.row("120 °F" as never)).toThrow(
      "pe-temperature-factors: 120 °F is not in the table; it has 80 °F, 90 °F, 100 °F.",
    );
  });
});

describe("design stresses", () => {
  it("are those of a maker's bulletin (PPI TR-4): 1000 and 630 psi, 800 and 400 psi", () => {
    expect(peDesignStress.get("PE4710", "at73F").in(poundPerSquareInch)).toBe(1000);
    expect(peDesignStress.get("PE4710", "at140F").in(poundPerSquareInch)).toBe(630);
    expect(peDesignStress.get("PE3608", "at73F").in(poundPerSquareInch)).toBe(800);
    expect(peDesignStress.get("PE3608", "at140F").in(poundPerSquareInch)).toBe(400);
  });

  it("are for PE 100 and PE 80 what their names say: the strength in bar", () => {
    for (const { material, strength } of peRequiredStrength.definition.rows)
      expect(material).toBe(`PE${strength * 10}`);
    expect(peRequiredStrength.get("PE100", "strength").in(megapascal)).toBe(10);
  });
});

describe("plasticRoughness", () => {
  it("keeps its ranges in order, around the 0.005 of a thousandth of a foot that EPANET and PE makers print", () => {
    for (const { plastic, low, typical, high } of plasticRoughness.definition.rows) {
      expect(low <= typical && typical <= high, plastic).toBe(true);
      expect(low).toBeCloseTo(0.000005 * 304.8, 4);
    }
    expect(plasticRoughness.get("PE", "typical").in(millimetre)).toBe(0.003);
  });
});

describe("steelRoughness", () => {
  it("keeps its ranges in order, around what EPANET prints: 0.15 and 0.5 thousandths of a foot", () => {
    for (const { finish, low, typical, high } of steelRoughness.definition.rows) {
      const printed = { black: 0.15, galvanised: 0.5 }[finish] * 0.3048;
      expect(low <= typical && typical <= high, finish).toBe(true);
      expect(Math.abs(typical / printed - 1), finish).toBeLessThan(0.02);
    }
  });
});

describe("thermal expansion", () => {
  it("is of metals 11.7, 16.8 and 17.8 millionths per kelvin (Machinery's Handbook, 31st ed., Table 15)", () => {
    expect(metalExpansion.get("carbon steel", "coefficient").in(perKelvin)).toBeCloseTo(
      11.7e-6,
      12,
    );
    expect(metalExpansion.get("copper", "coefficient").in(perKelvin)).toBeCloseTo(16.8e-6, 12);
    expect(metalExpansion.get("stainless steel", "coefficient").in(perKelvin)).toBeCloseTo(
      17.8e-6,
      12,
    );
  });

  it("gives the inches per hundred feet that ASME B31.9 prints for plastics, from 70 °F", () => {
    for (const [plastic, to, inches] of [
      ["PVC 1120", 100, 1.08],
      ["PE 3406", 100, 2.16],
    ] as const) {
      const coefficient = plasticExpansion.get(plastic, "coefficient").in(perKelvin);
      expect((coefficient / 1.8) * (to - 70) * 1200, plastic).toBeCloseTo(inches, 9);
    }
  });

  it("is to plan with a range that holds what tables and makers print", () => {
    for (const { material, low, typical, high } of pipeExpansion.definition.rows)
      expect(low <= typical && typical <= high, material).toBe(true);
    const within = (material: "PE" | "PVC" | "steel", millionths: number): void => {
      const { low, high } = pipeExpansion.row(material);
      expect(millionths, material).toBeGreaterThanOrEqual(low - 0.1);
      expect(millionths, material).toBeLessThanOrEqual(high + 0.1);
    };
    // ASME B31.9: PE 3406 60, PE 2306 80, PVC 30 per °F; design text of a maker 90 per °F; PE100 sheets 130 and 150 per K.
    for (const perF of [60, 80, 90]) within("PE", perF * 1.8);
    for (const perK of [130, 150]) within("PE", perK);
    within("PVC", 30 * 1.8);
    // ASME B31.9: carbon steel 6.33 per °F; Machinery's Handbook 11.7 per K.
    within("steel", 6.33 * 1.8);
    within("steel", 11.7);
  });
});

describe("pvcIsoTemperatureFactors", () => {
  it("falls by steps, and not below the 2 % a degree over 20 °C that warm countries take off", () => {
    const { rows } = pvcIsoTemperatureFactors.definition;
    expect(rows.map(({ factor }) => factor)).toEqual([1, 0.8, 0.63]);
    for (const { upTo, factor } of rows)
      expect(factor).toBeGreaterThanOrEqual(1 - 0.02 * (Number.parseFloat(upTo) - 20));
  });
});
