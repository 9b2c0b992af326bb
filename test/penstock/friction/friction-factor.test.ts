import { type Notice, OutOfValidityError } from "@leat/formula";
import {
  colebrookFactorOf,
  frictionFactor,
  frictionFactorOf,
  laminarFriction,
  swameeJain,
} from "@leat/penstock";
import { one } from "@leat/quantity";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";

const at = (
  reynolds: number,
  r = 0,
): { reynolds: ReturnType<typeof one.of>; relativeRoughness: ReturnType<typeof one.of> } => ({
  reynolds: one.of(reynolds),
  relativeRoughness: one.of(r),
});

describe("frictionFactor", () => {
  it("is laminar below 2000 whatever the wall, and Colebrook–White above 4000", () => {
    expect(frictionFactor(at(1000, 0.04))["~si"]).toBe(0.064);
    expect(frictionFactor(at(1000, 0.04))["~si"]).toBe(
      laminarFriction({ reynolds: one.of(1000) })["~si"],
    );
    expect(frictionFactor(at(1e5, 0.002))["~si"]).toBe(colebrookFactorOf(1e5, 0.002));
  });

  it("has no jump anywhere", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 500, max: 10_000, noNaN: true }),
        fc.double({ min: 0, max: 0.05, noNaN: true }),
        (re, r) => {
          expect(frictionFactorOf(re * (1 + 1e-9), r) / frictionFactorOf(re, r)).toBeCloseTo(1, 7);
        },
      ),
    );
    for (const end of [2000, 4000]) {
      expect(frictionFactorOf(end * (1 + 1e-12), 0.01)).toBeCloseTo(
        frictionFactorOf(end, 0.01),
        12,
      );
    }
  });

  it("says that flow is in transition: by an error, or by a notice", () => {
    expect(() => frictionFactor(at(2001))).toThrow(OutOfValidityError);
    expect(() => frictionFactor(at(3999))).toThrow(OutOfValidityError);
    expect(() => frictionFactor(at(2500))).toThrow(
      "friction-factor: flow is in transition between laminar (Re ≤ 2000) and turbulent (Re ≥ 4000), where no law holds: |Re − 3000| = 500 is below 1000, the range US EPA gives",
    );
    const told: Notice[] = [];
    const f = frictionFactor(at(2500), { onNotice: (notice) => told.push(notice) });
    expect(told.map(({ code, path }) => [code, path])).toEqual([
      ["friction-factor/out-of-range", ["reynolds"]],
    ]);
    expect(f["~si"]).toBeGreaterThan(0.032);
    expect(f["~si"]).toBeLessThan(colebrookFactorOf(2500, 0));
    for (const re of [2000, 4000]) expect(() => frictionFactor(at(re))).not.toThrow();
  });

  it("lies between the laminar and the turbulent end in transition, within a quarter of EPANET's cubic", () => {
    // The cubic of EPANET 2.2 User Manual, ch. 12 (Dunlop), typed from the manual.
    const cubic = (re: number, r: number): number => {
      const y2 = r / 3.7 + 5.74 / re ** 0.9;
      const y3 = -0.86859 * Math.log(r / 3.7 + 5.74 / 4000 ** 0.9);
      const fa = y3 ** -2;
      const fb = fa * (2 - 0.00514215 / (y2 * y3));
      const x = re / 2000;
      const x4 = x * (0.032 - 3 * fa + 0.5 * fb);
      return 7 * fa - fb + x * (0.128 - 17 * fa + 2.5 * fb + x * (-0.128 + 13 * fa - 2 * fb + x4));
    };
    for (const r of [0, 0.001, 0.01]) {
      for (const re of [2100, 2600, 3100, 3600, 3950]) {
        const line = frictionFactorOf(re, r);
        expect(line).toBeGreaterThan(0.032);
        expect(line).toBeLessThan(colebrookFactorOf(4000, r));
        expect(Math.abs(line / cubic(re, r) - 1)).toBeLessThan(0.25);
      }
    }
  });

  it("refuses flow and walls that are off Moody's chart", () => {
    expect(() => frictionFactor(at(2e8))).toThrow(
      "friction-factor: Reynolds number = 200000000 is above 100000000, the range Moody gives",
    );
    expect(() => frictionFactor(at(1e5, 0.051))).toThrow(
      "friction-factor: relativeRoughness = 0.051 is above 0.05, the range Moody gives",
    );
    expect(() => laminarFriction({ reynolds: one.of(2001) })).toThrow(
      "laminar-friction: Reynolds number = 2001 is above 2000, the range US EPA gives",
    );
    expect(() => swameeJain(at(3000))).toThrow(
      "swamee-jain: Reynolds number = 3000 is below 4000, the range US EPA gives",
    );
    expect(() => swameeJain(at(2e8, 0.02))).toThrow(
      "swamee-jain: relativeRoughness = 0.02 is above 0.01, the range Swamee and Jain gives",
    );
    expect(() => swameeJain(at(2e8))).toThrow(
      "swamee-jain: Reynolds number = 200000000 is above 100000000, the range Swamee and Jain gives",
    );
  });
});
