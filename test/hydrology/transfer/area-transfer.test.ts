import { NonPhysicalError, type Notice, OutOfValidityError, series } from "@leat/formula";
import {
  areaRatioTransfer,
  areaTransfer,
  areaTransferSpread,
  runoffRatioTransfer,
  runoffTransfer,
} from "@leat/hydrology";
import {
  cubicFootPerSecond,
  cubicMetrePerSecond,
  litrePerSecond,
  millimetrePerYear,
  one,
  percent,
  squareKilometre,
  squareMile,
} from "@leat/quantity";
import { Column } from "@leat/quantity/column";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

const number = (min: number, max: number): fc.Arbitrary<number> =>
  fc.double({ min, max, noNaN: true });
const loose = { onNotice: () => undefined };

describe("areaRatioTransfer", () => {
  it("scales with the flow, and goes there and back", () => {
    fc.assert(
      fc.property(
        number(0.001, 1e3),
        number(1, 1e3),
        number(0.5, 1.5),
        number(0.7, 1.02),
        (flow, gauged, ratio, φ) => {
          const areas = { gaugedArea: squareKilometre.of(gauged), exponent: one.of(φ) };
          const area = squareKilometre.of(gauged * ratio);
          const carry = (q: number): number =>
            areaRatioTransfer({ ...areas, area, gaugedFlow: cubicMetrePerSecond.of(q) }, loose).in(
              cubicMetrePerSecond,
            );
          expect(carry(3 * flow)).toBeCloseTo(3 * carry(flow), 9);
          const back = areaRatioTransfer(
            {
              exponent: one.of(φ),
              gaugedArea: area,
              area: areas.gaugedArea,
              gaugedFlow: cubicMetrePerSecond.of(carry(flow)),
            },
            loose,
          ).in(cubicMetrePerSecond);
          expect(back / flow).toBeCloseTo(1, 12);
          // More area gives more flow, and equal areas the same.
          expect(Math.sign(carry(flow) - flow)).toBe(
            Math.abs(ratio - 1) < 1e-12 ? Math.sign(carry(flow) - flow) : Math.sign(ratio - 1),
          );
        },
      ),
    );
  });

  it("gives the same in miles and feet", () => {
    const metric = areaRatioTransfer({
      gaugedFlow: cubicMetrePerSecond.of(2),
      gaugedArea: squareKilometre.of(100),
      area: squareKilometre.of(70),
      exponent: one.of(0.9),
    });
    const customary = areaRatioTransfer({
      gaugedFlow: cubicFootPerSecond.of(2 / 0.3048 ** 3),
      gaugedArea: squareMile.of(100 / 2.589988110336),
      area: squareMile.of(70 / 2.589988110336),
      exponent: one.of(0.9),
    });
    expect(customary.in(cubicMetrePerSecond)).toBeCloseTo(metric.in(cubicMetrePerSecond), 12);
  });

  it("carries a column as it carries a flow", () => {
    const rest = {
      gaugedArea: squareKilometre.of(10),
      area: squareKilometre.of(8),
      exponent: one.of(0.85),
    };
    const flows = [0, 12.5, 300];
    const column = series(areaRatioTransfer, {
      ...rest,
      gaugedFlow: Column.of(litrePerSecond, flows),
    });
    expect([...column.in(litrePerSecond)]).toEqual(
      flows.map((flow) =>
        areaRatioTransfer({ ...rest, gaugedFlow: litrePerSecond.of(flow) }).in(litrePerSecond),
      ),
    );
  });

  it("is trusted between half and one and a half of the gauge's area, and for exponents that were fitted", () => {
    const far = {
      gaugedFlow: litrePerSecond.of(100),
      gaugedArea: squareKilometre.of(10),
      area: squareKilometre.of(4.9),
      exponent: one.of(0.65),
    };
    expect(() => areaRatioTransfer(far)).toThrow(OutOfValidityError);
    expect(() => areaRatioTransfer(far)).toThrow(
      "area-ratio-transfer: area/gaugedArea = 0.49 is below 0.5, the range USGS gives (Scientific Investigations Report 2008–5126, drainage-area ratio method).",
    );
    expect(() => areaRatioTransfer(far)).toThrow(
      "area-ratio-transfer: exponent = 0.65 is below 0.7, the range USGS gives",
    );
    expect(() =>
      areaRatioTransfer({ ...far, area: squareKilometre.of(15.1), exponent: one.of(1.03) }),
    ).toThrow(/area\/gaugedArea = 1\.51 is above 1\.5[\s\S]*exponent = 1\.03 is above 1\.02/u);
    expect(() => areaRatioTransfer({ ...far, area: squareKilometre.of(0) }, loose)).toThrow(
      NonPhysicalError,
    );
  });
});

describe("runoffRatioTransfer", () => {
  it("is the area ratio where both give the same, and grows with the runoff", () => {
    const gaugedFlow = litrePerSecond.of(100);
    const areas = { area: squareKilometre.of(7), gaugedArea: squareKilometre.of(10) };
    const gaugedRunoff = millimetrePerYear.of(900);
    const carry = (runoff: number): number =>
      runoffRatioTransfer({
        gaugedFlow,
        ...areas,
        gaugedRunoff,
        runoff: millimetrePerYear.of(runoff),
      }).in(litrePerSecond);
    expect(carry(900)).toBeCloseTo(
      areaRatioTransfer({ gaugedFlow, ...areas }).in(litrePerSecond),
      12,
    );
    expect(carry(1200)).toBeCloseTo((carry(900) * 4) / 3, 12);
    expect(() => carry(2000)).toThrow(
      "runoff/gaugedRunoff = 2.222 is above 2, the range common practice gives",
    );
    expect(() => carry(400)).toThrow("runoff/gaugedRunoff = 0.4444 is below 0.5");
  });

  it("carries a column as it carries a flow", () => {
    const rest = {
      area: squareKilometre.of(7),
      gaugedArea: squareKilometre.of(10),
      gaugedRunoff: millimetrePerYear.of(900),
      runoff: millimetrePerYear.of(700),
    };
    const column = series(runoffRatioTransfer, {
      ...rest,
      gaugedFlow: Column.of(litrePerSecond, [0, 9, 80]),
    });
    expect([...column.in(litrePerSecond)]).toEqual(
      [0, 9, 80].map((flow) =>
        runoffRatioTransfer({ ...rest, gaugedFlow: litrePerSecond.of(flow) }).in(litrePerSecond),
      ),
    );
  });
});

describe("areaTransfer and runoffTransfer", () => {
  const areas = { name: "creek", area: squareKilometre.of(29), gaugedArea: squareKilometre.of(42) };

  it("add the uncertainty of the method under its own name to that of the areas", () => {
    const area = areas.area.plusMinus(squareKilometre.of(2.9), "map");
    const { factor, form, seen } = areaTransfer({ ...areas, area, spread: percent.of(15) });
    expect([form, seen]).toEqual(["factor", undefined]);
    expect(factor.in(one)).toBeCloseTo(29 / 42, 12);
    const relative = new Map(
      [...factor.sources()].map(([id, c]) => [id, c.in(one) / factor.in(one)]),
    );
    expect(relative.get("creek: method")).toBeCloseTo(0.15, 12);
    expect(relative.get("map")).toBeCloseTo(0.1 / 1.959963984540054, 6);
  });

  it("take the spread of a neighbouring stream where none is given, and say so", () => {
    const told: Notice[] = [];
    const onNotice = (notice: Notice): number => told.push(notice);
    const { factor } = areaTransfer(areas, { onNotice });
    expect(factor.standardUncertainty().in(one)).toBeCloseTo((29 / 42) * 0.35, 12);
    const runoffs = { runoff: millimetrePerYear.of(1000), gaugedRunoff: millimetrePerYear.of(800) };
    const wetter = runoffTransfer({ ...areas, ...runoffs }, { onNotice });
    expect(wetter.factor.in(one)).toBeCloseTo((29 / 42) * 1.25, 12);
    expect(wetter.factor.standardUncertainty().in(one)).toBeCloseTo((29 / 42) * 1.25 * 0.35, 12);
    expect(told.map(({ code, severity, message }) => [code, severity, message])).toEqual([
      [
        "area-transfer/spread-assumed",
        "note",
        "area-transfer: spread was not given, and 35 % is taken (common practice, no source, flows carried over by area alone). Measure the site a few times, or give what the method is trusted to.",
      ],
      [
        "runoff-transfer/spread-assumed",
        "note",
        "runoff-transfer: spread was not given, and 35 % is taken (common practice, no source, flows carried over by area alone). Measure the site a few times, or give what the method is trusted to.",
      ],
    ]);
  });

  it("trust the same stream more than a neighbour", () => {
    expect(areaTransferSpread.keys()).toEqual(["same stream", "neighbouring stream"]);
    expect(areaTransferSpread.get("same stream", "spread").in(percent)).toBeLessThan(
      areaTransferSpread.get("neighbouring stream", "spread").in(percent),
    );
    expect(areaTransferSpread.definition.source.standing).toBe("practice");
  });
});
