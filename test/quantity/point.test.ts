import {
  bar,
  celsius,
  coherentUnit,
  fahrenheit,
  foot,
  hectopascal,
  isPoint,
  kelvin,
  metre,
  millimetre,
  pascal,
  Point,
  point,
  poundPerSquareInch,
  toAbsolute,
  toGauge,
} from "@leat/quantity";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

import { exponentsIn, table } from "./table.ts";
import { thrown, untyped } from "./thrown.ts";

const degreesC = (t: number) => celsius.at(t);

describe("temperatures", () => {
  // Definitions: t/°C = T/K − 273.15 and t/°F = 9/5·t/°C + 32 (SI brochure 2019, 2.3.1; NIST SP 811, B.8).
  it.each([
    [0, 273.15, 32],
    [100, 373.15, 212],
    [-40, 233.15, -40],
    [37, 310.15, 98.6],
    [-273.15, 0, -459.67],
  ])("%d °C is %d K and %d °F", (c, k, f) => {
    expect(degreesC(c).overOrigin().in(kelvin)).toBeCloseTo(k, 10);
    expect(degreesC(c).in(fahrenheit)).toBeCloseTo(f, 10);
    expect(fahrenheit.at(f).in(celsius)).toBeCloseTo(c, 10);
  });

  it("differ by a difference, which has no zero of its own", () => {
    const rise = degreesC(20).minus(degreesC(10));
    expect(rise).toMatchObject({ kind: "temperature difference" });
    expect(rise.in(kelvin)).toBe(10);
    expect(degreesC(20).plus(kelvin.of(5)).in(celsius)).toBeCloseTo(25, 10);
    expect(degreesC(20).minus(kelvin.of(5)).in(celsius)).toBeCloseTo(15, 10);
  });

  it("come back as written", () => {
    expect(fahrenheit.at(72).in(fahrenheit)).toBe(72);
    expect(String(fahrenheit.at(72))).toBe("72 °F");
    expect(String(degreesC(0.1))).toBe("0.1 °C");
  });

  it("go to and fro", () => {
    fc.assert(
      fc.property(fc.double({ min: -273, max: 5000, noNaN: true }), (t) => {
        const there = new Point("absolute zero", degreesC(t)["~si"]);
        expect(there.in(celsius)).toBeCloseTo(t, 9);
        expect(fahrenheit.at(there.in(fahrenheit)).in(celsius)).toBeCloseTo(t, 9);
      }),
    );
  });

  it("are ordered", () => {
    expect(degreesC(0).lessThan(fahrenheit.at(33))).toBe(true);
    expect(degreesC(0).greaterThan(fahrenheit.at(33))).toBe(false);
  });
});

describe("pressures", () => {
  const gauge = point("local atmosphere", poundPerSquareInch.of(50), "nozzle");
  const site = point("vacuum", hectopascal.of(845));

  it("need the atmosphere of the site to be absolute", () => {
    const absolute = toAbsolute(gauge, site);
    expect(absolute.origin).toBe("vacuum");
    // 50 psi × 6894.757 Pa/psi (NIST SP 811, B.8) + 84 500 Pa.
    expect(absolute.overOrigin().in(pascal)).toBeCloseTo(50 * 6894.757 + 84_500, 1);
    expect(toGauge(absolute, site, "nozzle").minus(gauge).in(pascal)).toBeCloseTo(0, 8);
  });

  it("may be below the atmosphere and not below vacuum", () => {
    expect(point("local atmosphere", bar.of(-0.2), "summit").overOrigin().in(bar)).toBe(-0.2);
    expect(thrown(() => point("vacuum", bar.of(-0.2)))).toBe(
      "not-finite: -20000 Pa is below vacuum",
    );
  });
});

describe("instances", () => {
  const a = point("staff zero", metre.of(0.52), "upper staff");
  const b = point("staff zero", metre.of(0.5), "lower staff");
  it("of one origin subtract where they are the same", () => {
    expect(a.minus(point("staff zero", metre.of(0.5), "upper staff")).in(millimetre)).toBeCloseTo(
      20,
      10,
    );
    expect(a.plus(metre.of(1)).instance).toBe("upper staff");
    expect(a.minus(metre.of(0.02)).minus(a).in(metre)).toBeCloseTo(-0.02, 12);
    expect(b.lessThan(b.plus(metre.of(0.01)))).toBe(true);
  });

  it("are named", () => {
    expect(a.toString()).toBe("0.52 m over upper staff");
    expect(isPoint(a)).toBe(true);
    expect(isPoint(metre.of(1))).toBe(false);
  });
});

describe("messages", () => {
  const upper = point("staff zero", metre.of(0.52), "upper staff");
  const lower = point("staff zero", metre.of(0.5), "lower staff");
  const loose = point("site datum", metre.of(12));
  it.each([
    [
      "origin: cannot subtract 0.52 m over upper staff (a point over staff zero) and 0.5 m over lower staff: two origins",
      () => upper.minus(lower),
    ],
    [
      "origin: cannot compare 0.52 m over upper staff (a point over staff zero) and 0.5 m over lower staff: two origins",
      () => upper.lessThan(lower),
    ],
    [
      "origin: cannot subtract 12 m over site datum (a point over site datum) and 11 m over site datum: name the instance of the origin",
      () => loose.minus(point("site datum", metre.of(11))),
    ],
    [
      "origin: cannot subtract 20 °C (a point over absolute zero) and 0.52 m over upper staff: two origins",
      () => celsius.at(20).minus(untyped(upper)),
    ],
    [
      "origin: cannot compare 20 °C (a point over absolute zero) and 20: two origins",
      () => celsius.at(20).greaterThan(untyped(20)),
    ],
    [
      "kind: cannot move 20 °C (a point over absolute zero) by 10 °C",
      () => celsius.at(20).plus(untyped(celsius.at(10))),
    ],
    [
      "kind: cannot move 20 °C (a point over absolute zero) by 3 m",
      () => celsius.at(20).minus(untyped(metre.of(3))),
    ],
    ["kind: 20 °C (a point over absolute zero) has no m", () => celsius.at(20).in(untyped(metre))],
    [
      "kind: 0.52 m over upper staff (a point over staff zero) has no °C",
      () => upper.in(untyped(celsius)),
    ],
    ["kind: a vacuum point needs a pressure, not 3 m", () => point("vacuum", untyped(metre.of(3)))],
    ["kind: a vacuum point needs a pressure, not 3", () => point("vacuum", untyped(3))],
    ["origin: sea level is not an origin", () => point(untyped("sea level"), untyped(metre.of(3)))],
    [
      "origin: constructor is not an origin",
      () => point(untyped("constructor"), untyped(metre.of(3))),
    ],
    [
      "origin: a point over local atmosphere is needed, not 3 Pa over vacuum",
      () => toAbsolute(untyped(point("vacuum", pascal.of(3))), point("vacuum", pascal.of(3))),
    ],
    [
      "origin: a point over vacuum is needed, not 3 Pa over nozzle",
      () =>
        toAbsolute(
          point("local atmosphere", pascal.of(3), "nozzle"),
          untyped(point("local atmosphere", pascal.of(3), "nozzle")),
        ),
    ],
    [
      "origin: a point over vacuum is needed, not 3 Pa",
      () => toGauge(untyped(pascal.of(3)), point("vacuum", pascal.of(3)), "nozzle"),
    ],
    ["not-finite: -1 K is below absolute zero", () => celsius.at(-274.15)],
    ["not-finite: NaN °C is not a finite number", () => celsius.at(NaN)],
    [
      "kind: 20 °C is not a plain number: use in(unit), plus or lessThan",
      () => untyped(celsius.at(20)) < untyped(celsius.at(30)),
    ],
  ])("%s", (message, call) => {
    expect(thrown(call)).toBe(message);
  });

  it("are no methods that a point has not", () => {
    for (const name of ["times", "dividedBy", "squared", "sqrt", "negate", "abs", "as"])
      expect(celsius.at(20)).not.toHaveProperty(name);
  });

  it("print where text is wanted", () => {
    expect(String(celsius.at(20))).toBe("20 °C");
  });
});

describe("uncertainty", () => {
  it("is shared by what is measured on one staff, and leaves the difference", () => {
    const zero = metre.of(0.01);
    const high = point("staff zero", metre.of(0.52), "staff").plusMinus(zero, "zero of the staff");
    const low = point("staff zero", metre.of(0.31), "staff").plusMinus(zero, "zero of the staff");
    expect(high.minus(low).standardUncertainty().in(metre)).toBe(0);
    expect(high.minus(high).sources().size).toBe(0);
    expect(high.standardUncertainty().in(metre)).toBeCloseTo(0.01 / 1.96, 6);
    expect(
      high.within(foot.of(1), "waves").plus(metre.of(1)).standardUncertainty().in(metre),
    ).toBeCloseTo(Math.hypot(0.01 / 1.96, 0.3048 / Math.sqrt(3)), 6);
    expect(high.plusMinus(zero, "x").in(metre)).toBe(0.52);
  });
});

describe("origins", () => {
  it.each(table.origins)(
    "of the table take the difference that it says: $name",
    ({ name, difference }) => {
      const made = point(untyped(name), untyped(coherentUnit(difference).of(2)), "here");
      expect(
        made.minus(point(untyped(name), untyped(coherentUnit(difference).of(2)), "here")).kind,
      ).toBe(difference);
      expect(
        exponentsIn(table.kinds.find((kind) => kind.name === difference) as never),
      ).toHaveLength(7);
    },
  );
});
