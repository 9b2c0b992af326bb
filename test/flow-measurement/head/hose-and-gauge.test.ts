import { hoseAndGaugeHead } from "@leat/flow-measurement";
import { type Assumption, NonPhysicalError } from "@leat/formula";
import {
  kilogramPerCubicMetre,
  metre,
  metrePerSecondSquared,
  pascal,
  point,
  pressureOfColumn,
  QuantityError,
} from "@leat/quantity";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";

const gravity = metrePerSecondSquared.of(9.79);
const density = kilogramPerCubicMetre.of(999);

describe("hoseAndGaugeHead", () => {
  it("finds the column that presses on the gauge, and the gauge's own height", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 200, noNaN: true }),
        fc.double({ min: -20, max: 20, noNaN: true }),
        (h, z) => {
          const pressure = pressureOfColumn(metre.of(h), density, gravity);
          const head = hoseAndGaugeHead({
            gauge: point("local atmosphere", pressure, "hose foot"),
            gaugeAboveJet: metre.of(z),
            density,
            gravity,
          });
          expect(head.in(metre)).toBeCloseTo(h + z, 10);
          expect(head.kind).toBe("gross head");
        },
      ),
    );
  });

  it("reports the density and the gravity that it assumes", () => {
    const assumed: Assumption[] = [];
    const gauge = point("local atmosphere", pascal.of(300000), "hose foot");
    hoseAndGaugeHead(
      { gauge, gaugeAboveJet: metre.of(0) },
      { onAssumed: (assumption) => assumed.push(assumption) },
    );
    expect(assumed.map(({ input, value }) => `${input} ${value}`)).toEqual([
      "density 999.7 kg/m³",
      "gravity 9.80665 m/s²",
    ]);
  });

  it("refuses an absolute pressure, a pressure difference and weightless water", () => {
    const gaugeAboveJet = metre.of(0);
    expect(() =>
      hoseAndGaugeHead({ gauge: point("vacuum", pascal.of(400000)) as never, gaugeAboveJet }),
    ).toThrow(QuantityError);
    expect(() => hoseAndGaugeHead({ gauge: pascal.of(400000) as never, gaugeAboveJet })).toThrow(
      "gauge = 400000 Pa (pressure) is refused: give a point over local atmosphere",
    );
    const gauge = point("local atmosphere", pascal.of(300000), "hose foot");
    expect(() =>
      hoseAndGaugeHead({ gauge, gaugeAboveJet, density: kilogramPerCubicMetre.of(0) }),
    ).toThrow(NonPhysicalError);
  });
});
