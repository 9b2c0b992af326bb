import {
  peDesignStress,
  peIsoTemperatureFactors,
  peRequiredStrength,
  peTemperatureFactors,
  plasticRoughness,
  pvcTemperatureFactors,
} from "@leat/pipe-sizes";
import { megapascal, millimetre, one, poundPerSquareInch } from "@leat/quantity";
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
