import { NonPhysicalError } from "@leat/formula";
import {
  cheapestPipe,
  lostEnergy,
  narrowestPipe,
  penstockGradeLine,
  penstockProfile,
  pipeCurve,
  type PipeCurveInput,
  presentWorthFactor,
} from "@leat/penstock";
import { ownPipe, pipesOf, readPipe } from "@leat/pipe-sizes";
import {
  celsius,
  coherentUnit,
  currency,
  each,
  hour,
  kilowattHour,
  litrePerSecond,
  metre,
  millimetre,
  one,
  pascal,
  point,
} from "@leat/quantity";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";

const level = (height: number) => point("site datum", metre.of(height), "nozzle");
const k = coherentUnit("coefficient");
const pipes = pipesOf({ series: "PE ISO", sdr: 17 });
const profile = penstockProfile({
  stations: [
    { chainage: metre.of(0), elevation: level(49) },
    { chainage: metre.of(320), elevation: level(0) },
  ],
  measured: "along the slope",
  reaches: [
    { pipe: pipes[0]!, to: metre.of(100), fittings: [{ coefficient: k.of(0.5), at: metre.of(0) }] },
    { pipe: pipes[0]!, fittings: [{ coefficient: k.of(0.1), count: 4 }] },
  ],
});
const euro = currency("EUR");
/** Price of pipe by weight of plastic: with the square of the bore. */
const priced = pipes.map((pipe) => ({
  pipe,
  price: euro.of(1500 * pipe.insideDiameter.average.in(metre) ** 2).dividedBy(metre.of(1)),
}));
const input: PipeCurveInput = {
  profile,
  water: level(50),
  flow: litrePerSecond.of(12),
  temperature: celsius.at(8),
  trials: pipes.map((pipe) => ({ pipe })),
};
const money = {
  energyPrice: euro.of(0.3).dividedBy(kilowattHour.of(1)),
  runningTime: hour.of(8000),
  efficiency: coherentUnit("efficiency").of(0.5),
  years: each.of(20),
  interest: one.of(0.04),
};

describe("pipeCurve", () => {
  it("is a curve: loss and speed fall as the bore rises, price rises", () => {
    const { rows, grossHead } = pipeCurve({ ...input, trials: priced, money });
    expect(grossHead["~si"]).toBe(50);
    expect(rows.length).toBe(pipes.length);
    rows.slice(1).forEach((row, i) => {
      const before = rows[i]!;
      expect(row.insideDiameter["~si"]).toBeGreaterThan(before.insideDiameter["~si"]);
      expect(row.lost["~si"]).toBeLessThan(before.lost["~si"]);
      expect(row.velocity["~si"]).toBeLessThan(before.velocity["~si"]);
      expect(row.price!["~si"]).toBeGreaterThan(before.price!["~si"]);
      expect(row.energyWorth!["~si"]).toBeLessThan(before.energyWorth!["~si"]);
      expect(row.share["~si"]).toBeCloseTo(row.lost["~si"] / 50, 12);
      expect(row.netHead["~si"] + row.lost["~si"]).toBeCloseTo(50, 9);
    });
  });

  it("loses what the grade line of that pipe loses", () => {
    const pipe = readPipe("125 mm PE100 SDR 17");
    const drawn = penstockGradeLine({
      ...input,
      profile: { ...profile, reaches: profile.reaches.map((reach) => ({ ...reach, pipe })) },
      atmosphere: point("vacuum", pascal.of(95000)),
    });
    const row = pipeCurve(input).rows.find((one) => one.pipe.name === pipe.name);
    expect(row?.lost["~si"]).toBeCloseTo(drawn.lost["~si"], 12);
    expect(row?.atRest["~si"]).toBeCloseTo(drawn.pressures[1]!.atRest["~si"], 6);
  });

  it("shares one bore over all reaches, so that it is uncertain once", () => {
    const row = pipeCurve(input).rows.find(({ pipe }) => pipe.name === "125 mm PE100 SDR 17");
    expect([...row!.lost.sources().keys()].toSorted()).toEqual([
      "reaches.0.bore",
      "reaches.0.fittings",
      "reaches.0.roughness",
    ]);
  });

  it("is the same in whatever order pipes are tried", () => {
    const names = (trials: PipeCurveInput["trials"]): string[] =>
      pipeCurve({ ...input, trials }).rows.map(({ pipe }) => pipe.name);
    expect(names(input.trials.toReversed())).toEqual(names(input.trials));
  });

  it("notes pipes past the flow of greatest power and those that do not hold", () => {
    const { notices, rows } = pipeCurve({
      ...input,
      trials: [...pipesOf({ series: "PE ISO", sdr: 41 }), readPipe("63 mm PE100 SDR 17")].map(
        (pipe) => ({ pipe }),
      ),
    });
    expect(notices.map(({ code, severity }) => [severity, code])).toEqual([
      ["note", "pipe-curve/past-greatest-power"],
      ["note", "pipe-curve/does-not-hold"],
    ]);
    expect(notices[0]?.message).toMatch(
      /^pipe-curve: 12 L\/s is past the flow of greatest power of 63 mm PE100 SDR 17, .*: less water would give more power there\. Take a wider pipe\.$/,
    );
    expect(notices[1]?.message).toMatch(
      /^pipe-curve: not known to carry the pressure at rest: .*SDR 41.*\. They are not chosen; take a stronger class for the lower part at least\.$/,
    );
    for (const row of rows) expect(row.mostShare["~si"]).toBeGreaterThan(1 / 3);
  });

  it("refuses what cannot be compared, all at once", () => {
    const thrown = (changed: Partial<PipeCurveInput>): string[] => {
      try {
        pipeCurve({ ...input, ...changed });
      } catch (error) {
        return (error as NonPhysicalError).notices.map(({ message }) => message);
      }
      return [];
    };
    expect(thrown({ trials: [], flow: litrePerSecond.of(0), water: level(0) })).toEqual([
      "pipe-curve: trials is empty. Give one pipe or more.",
      "pipe-curve: flow = 0 L/s is not above zero. Give the flow that the pipe is to carry.",
      "pipe-curve: the water does not stand above the end of the pipe, but 0 m above it. Check the two levels.",
    ]);
    expect(thrown({ money, trials: [{ pipe: readPipe("125 mm PE100 SDR 17") }] })).toEqual([
      "pipe-curve: trials.0.price of 125 mm PE100 SDR 17 is missing. Give what a length of it costs, or leave money out.",
    ]);
    expect(() => pipeCurve({ ...input, trials: [] })).toThrow(NonPhysicalError);
  });
});

describe("narrowestPipe", () => {
  it("takes the first that keeps the share and holds", () => {
    const curve = pipeCurve(input);
    fc.assert(
      fc.property(fc.double({ min: 0.002, max: 0.6, noNaN: true }), (share) => {
        const found = narrowestPipe(curve, one.of(share))!;
        const i = curve.rows.indexOf(found);
        expect(found.share["~si"]).toBeLessThanOrEqual(share);
        expect(curve.rows[i - 1]!.share["~si"]).toBeGreaterThan(share);
      }),
    );
    expect(narrowestPipe(curve, one.of(0.1))?.pipe.name).toBe("125 mm PE100 SDR 17");
    expect(narrowestPipe(curve, one.of(1e-9))).toBeUndefined();
  });

  it("passes over pipe that does not hold, or of which nobody says so", () => {
    const bare = ownPipe({
      outsideDiameter: millimetre.of(140),
      wall: millimetre.of(5),
      roughness: millimetre.of(0.003),
      material: "PE",
    });
    const trials = [
      { pipe: bare },
      { pipe: readPipe("140 mm PE100 SDR 41") },
      { pipe: readPipe("160 mm PE100 SDR 17") },
    ];
    const curve = pipeCurve({ ...input, trials });
    expect(curve.rows.map(({ holds }) => holds)).toEqual([false, false, true]);
    expect(narrowestPipe(curve, one.of(0.1))?.pipe.name).toBe("160 mm PE100 SDR 17");
    const hot = pipeCurve({
      ...input,
      trials: [{ pipe: readPipe("160 mm PE100 SDR 26") }],
      temperature: celsius.at(40),
    });
    // 0.74 of PN 6 at 40 °C is less than 50 m of water.
    expect(hot.rows[0]?.holds).toBe(false);
  });
});

describe("cheapestPipe", () => {
  it("weighs price against energy, and takes a wider pipe where energy is dear", () => {
    const at = (price: number, years = 20): string | undefined =>
      cheapestPipe(
        pipeCurve({
          ...input,
          trials: priced,
          money: {
            ...money,
            energyPrice: euro.of(price).dividedBy(kilowattHour.of(1)),
            years: each.of(years),
          },
        }),
      )?.pipe.name;
    const width = (name: string | undefined): number => Number.parseFloat(name!);
    expect(width(at(3))).toBeGreaterThan(width(at(0.3)));
    expect(width(at(0.3))).toBeGreaterThan(width(at(0.02)));
    expect(width(at(0.3, 40))).toBeGreaterThanOrEqual(width(at(0.3, 5)));
  });

  it("is the least of the sums, by hand", () => {
    const curve = pipeCurve({ ...input, trials: priced, money });
    const best = cheapestPipe(curve)!;
    for (const row of curve.rows) {
      if (!row.holds || !(row.netHead["~si"] > 0)) continue;
      expect(best.cost!["~si"]).toBeLessThanOrEqual(row.cost!["~si"]);
    }
    const bore = best.insideDiameter.in(metre);
    expect(best.price!["~si"]).toBeCloseTo(320 * 1500 * bore ** 2, 8);
    // ρ·g·Q·h·η in kW for 8000 h a year at 0.3 EUR, twenty years at 4 %: 13.5903 times (compound interest tables).
    const kilowatts = (999.85 * 9.80665 * 0.012 * best.lost["~si"] * 0.5) / 1000;
    expect(best.energyWorth!["~si"] / (kilowatts * 8000 * 0.3 * 13.5903)).toBeCloseTo(1, 4);
    expect(best.cost!.currency()).toBe("EUR");
    expect(cheapestPipe(pipeCurve(input))).toBeUndefined();
  });

  it("passes over pipe that does not hold, however cheap, and pipe that the flow does not pass", () => {
    const give = euro.of(0.01).dividedBy(metre.of(1));
    const dear = euro.of(900).dividedBy(metre.of(1));
    const trials = [
      { pipe: readPipe("140 mm PE100 SDR 41"), price: give },
      { pipe: readPipe("63 mm PE100 SDR 17"), price: give },
      { pipe: readPipe("160 mm PE100 SDR 17"), price: dear },
    ];
    expect(cheapestPipe(pipeCurve({ ...input, trials, money }))?.pipe.name).toBe(
      "160 mm PE100 SDR 17",
    );
    expect(
      cheapestPipe(pipeCurve({ ...input, trials: trials.slice(0, 2), money })),
    ).toBeUndefined();
  });

  it("counts every year alike where money costs nothing", () => {
    expect(presentWorthFactor({ interest: one.of(0), years: each.of(25) })["~si"]).toBe(25);
    expect(presentWorthFactor({ interest: one.of(1e-9), years: each.of(25) })["~si"]).toBeCloseTo(
      25,
      6,
    );
    fc.assert(
      fc.property(
        fc.double({ min: 0.001, max: 0.3, noNaN: true }),
        fc.integer({ min: 1, max: 60 }),
        (rate, years) => {
          let sum = 0;
          for (let year = 1; year <= years; year += 1) sum += (1 + rate) ** -year;
          expect(
            presentWorthFactor({ interest: one.of(rate), years: each.of(years) })["~si"],
          ).toBeCloseTo(sum, 9);
        },
      ),
    );
    expect(() => presentWorthFactor({ interest: one.of(0), years: each.of(101) })).toThrow(
      "years = 101 each is above 100 each",
    );
    const { interest: _, ...free } = money;
    const plain = pipeCurve({ ...input, trials: priced, money: free });
    const row = plain.rows.at(-1)!;
    const { efficiency, runningTime } = money;
    const density = coherentUnit("density").of(999.8488);
    const lost = lostEnergy({
      flow: input.flow,
      headLoss: row.lost,
      efficiency,
      runningTime,
      density,
    });
    expect(row.energyWorth!["~si"]).toBeCloseTo(lost.in(kilowattHour) * 0.3 * 20, 3);
  });
});
