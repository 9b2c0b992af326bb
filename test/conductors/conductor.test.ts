import { conductor, conductorsOf, iecConductors, necConductors } from "@leat/conductors";
import {
  ampere,
  celsius,
  ohmPerKilofoot,
  ohmPerKilometre,
  perKelvin,
  QuantityError,
  squareMillimetre,
} from "@leat/quantity";
import { readSize } from "@leat/quantity/text";
import { describe, expect, it } from "vitest";

describe("conductor", () => {
  it("is the printed row with its temperature and coefficient", () => {
    const c = conductor(readSize("2/0 AWG"), "aluminium");
    expect(c.name).toBe("2/0 AWG aluminium");
    expect(c.size).toEqual({ system: "AWG", name: "2/0" });
    expect(c.resistancePerLength.in(ohmPerKilofoot)).toBe(0.159);
    expect(c.at.in(celsius)).toBe(75);
    expect(c.temperatureCoefficient.in(perKelvin)).toBe(0.0033);
    expect(c.source.place).toBe("ch. 9, table 8");
    const { at60, at75, at90 } = c.ampacity ?? {};
    expect([at60, at75, at90].map((amps) => amps?.in(ampere))).toEqual([115, 135, 150]);
  });

  it("takes kcmil, square millimetres and solid wire", () => {
    expect(conductor(readSize("250 kcmil"), "copper").resistancePerLength.in(ohmPerKilofoot)).toBe(
      0.0515,
    );
    const metric = conductor(readSize("35 mm²"), "copper");
    expect(metric.resistancePerLength.in(ohmPerKilometre)).toBe(0.524);
    expect(metric.at.in(celsius)).toBe(20);
    expect(metric.temperatureCoefficient.in(perKelvin)).toBe(0.00393);
    expect(metric.ampacity).toBeUndefined();
    const solid = conductor(readSize("12 AWG"), "copper", { form: "solid" });
    expect(solid.name).toBe("12 AWG solid copper");
    expect(solid.resistancePerLength.in(ohmPerKilofoot)).toBe(1.93);
  });

  it("has coefficients that agree: that of 75 °C is that of 20 °C, moved", () => {
    for (const material of ["copper", "aluminium"] as const) {
      const [us, metric] = [
        conductor(readSize("2 AWG"), material),
        conductor(readSize("35 mm²"), material),
      ].map((c) => c.temperatureCoefficient.in(perKelvin)) as [number, number];
      expect(Math.abs(us - metric / (1 + metric * 55))).toBeLessThanOrEqual(0.000005);
    }
  });

  it("gives the ampacities that there are", () => {
    const thin = conductor(readSize("18 AWG"), "copper").ampacity;
    expect([thin?.at60, thin?.at75, thin?.at90?.in(ampere)]).toEqual([undefined, undefined, 14]);
    expect(conductor(readSize("14 AWG"), "aluminium").ampacity).toBeUndefined();
    expect(conductor(readSize("14 AWG"), "copper").ampacity?.source.place).toContain("310.16");
  });

  it("refuses what its table does not have, and lists what it has", () => {
    expect(() => conductor(readSize("5 AWG"), "copper")).toThrow(
      "5 AWG is not in the table of stranded copper; it has 18, 16, 14, 12, 10, 8, 6, 4, 3, 2, 1, 1/0, 2/0, 3/0, 4/0.",
    );
    expect(() => conductor(readSize("2 AWG"), "copper", { form: "solid" })).toThrow(
      "it has 18, 16, 14, 12, 10, 8.",
    );
    expect(() => conductor(readSize("4 mm²"), "aluminium")).toThrow(QuantityError);
    // A size in the wrong system is not found in the other.
    expect(() => conductor({ system: "AWG", name: "250" }, "copper")).toThrow(QuantityError);
    expect(() => conductor({ system: "kcmil", name: "2" }, "copper")).toThrow(QuantityError);
    expect(() => conductor({ system: "mm²", name: "constructor" }, "copper")).toThrow(
      QuantityError,
    );
  });

  it("refuses a material, a form and a system that are none", () => {
    expect(() => conductor(readSize("2 AWG"), "silver" as never)).toThrow(
      "material silver is not one of copper, aluminium.",
    );
    expect(() => conductor(readSize("2 AWG"), "copper", { form: "braided" as never })).toThrow(
      "form braided is not one of stranded, solid.",
    );
    expect(() => conductorsOf("SWG" as never, "copper")).toThrow(
      "system SWG is not one of AWG, kcmil, mm².",
    );
  });
});

describe("conductorsOf", () => {
  it("rises in area and falls in resistance, and holds every printed size once", () => {
    for (const material of ["copper", "aluminium"] as const) {
      const american = [...conductorsOf("AWG", material), ...conductorsOf("kcmil", material)];
      const metric = conductorsOf("mm²", material);
      expect(american.map((c) => c.size.name)).toEqual(necConductors.keys());
      expect(metric.map((c) => c.size.name)).toEqual(
        material === "copper" ? iecConductors.keys() : iecConductors.keys().slice(7),
      );
      for (const list of [american, metric]) {
        list.slice(1).forEach((c, i) => {
          const before = list[i] as (typeof list)[number];
          expect(c.area.greaterThan(before.area)).toBe(true);
          expect(c.resistancePerLength.lessThan(before.resistancePerLength)).toBe(true);
        });
      }
    }
  });

  it("has American and metric tables that agree where sizes are near: 2/0 AWG is 67 mm²", () => {
    const c = conductor(readSize("2/0 AWG"), "copper");
    expect(c.area.in(squareMillimetre)).toBeCloseTo(67.4, 1);
    const at20 =
      (c.resistancePerLength.in(ohmPerKilometre) *
        (1 - 0.00323 * 55) *
        c.area.in(squareMillimetre)) /
      70;
    expect(
      at20 / conductor(readSize("70 mm²"), "copper").resistancePerLength.in(ohmPerKilometre),
    ).toBeCloseTo(0.94, 1);
  });
});
