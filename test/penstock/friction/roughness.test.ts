import { roughness } from "@leat/penstock";
import { plasticRoughness } from "@leat/pipe-sizes";
import { millimetre } from "@leat/quantity";
import { describe, expect, it } from "vitest";

describe("roughness", () => {
  it("keeps each range in order", () => {
    for (const { material, low, typical, high } of roughness.definition.rows) {
      expect(low, material).toBeLessThanOrEqual(typical);
      expect(typical, material).toBeLessThanOrEqual(high);
    }
  });

  it("holds what Moody's chart and EPANET print for new pipe", () => {
    // EPANET 2.2 User Manual, Table 3.2, in 0.001 ft: plastic 0.005, steel 0.15, galvanized iron 0.5, cast iron 0.85.
    for (const [material, millifeet] of [
      ["PVC", 0.005],
      ["polyethylene", 0.005],
      ["commercial steel, new", 0.15],
      ["galvanised iron", 0.5],
      ["cast iron, new", 0.85],
      ["asphalted cast iron", 0.4],
      ["drawn brass or copper", 0.005],
    ] as const) {
      const printed = millifeet * 0.3048;
      expect(roughness.get(material, "low").in(millimetre), material).toBeLessThanOrEqual(
        printed * 1.02,
      );
      expect(roughness.get(material, "high").in(millimetre), material).toBeGreaterThanOrEqual(
        printed * 0.98,
      );
    }
    // Moody 1944: wood stave 0.0006 to 0.003 ft, concrete 0.001 to 0.01 ft, riveted steel 0.003 to 0.03 ft.
    for (const [material, low, high] of [
      ["wood stave", 0.6, 3],
      ["concrete", 1, 10],
      ["riveted steel", 3, 30],
    ] as const) {
      expect(roughness.get(material, "low").in(millimetre) / (low * 0.3048), material).toBeCloseTo(
        1,
        1,
      );
      expect(
        roughness.get(material, "high").in(millimetre) / (high * 0.3048),
        material,
      ).toBeCloseTo(1, 1);
    }
  });

  it("takes the geometric middle where only a range is printed", () => {
    for (const material of [
      "polyethylene",
      "PVC",
      "steel, slightly corroded",
      "steel, moderately corroded",
      "steel, heavily corroded",
      "wood stave",
      "concrete",
      "riveted steel",
    ] as const) {
      const { low, typical, high } = roughness.row(material);
      expect(typical / Math.sqrt(low * high), material).toBeGreaterThan(0.92);
      expect(typical / Math.sqrt(low * high), material).toBeLessThan(1.08);
    }
  });

  it("is for plastics what the tables of pipe say", () => {
    for (const [material, plastic] of [
      ["polyethylene", "PE"],
      ["PVC", "PVC"],
    ] as const) {
      const { material: _, ...here } = roughness.row(material);
      const { plastic: __, ...there } = plasticRoughness.row(plastic);
      expect(here).toEqual(there);
    }
  });
});
