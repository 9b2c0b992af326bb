import {
  airVapourPressure,
  altimeterHead,
  altimeterHeight,
  type AltimeterInput,
  barometerHead,
  type BarometerInput,
  barometricHeight,
} from "@leat/flow-measurement";
import { type Assumption, NonPhysicalError, OutOfValidityError } from "@leat/formula";
import {
  celsius,
  fahrenheit,
  foot,
  hectopascal,
  hour,
  inchOfMercury,
  kelvin,
  metre,
  minute,
  one,
  pascal,
  percent,
  point,
  poundPerSquareInch,
  QuantityError,
} from "@leat/quantity";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";

const air = (hPa: number) => point("vacuum", hectopascal.of(hPa));
const columnOf = (p1: number, p2: number, t = 15) =>
  barometricHeight({
    lowerPressure: air(p1),
    upperPressure: air(p2),
    airTemperature: celsius.at(t),
  }).in(metre);
const pressures = fc.double({ min: 700, max: 1050, noNaN: true });
const warmth = fc.double({ min: -19, max: 39, noNaN: true });

describe("barometricHeight", () => {
  it("adds up from station to station through air of one temperature", () => {
    fc.assert(
      fc.property(pressures, pressures, pressures, warmth, (a, b, c, t) => {
        expect(columnOf(a, b, t) + columnOf(b, c, t)).toBeCloseTo(columnOf(a, c, t), 8);
        expect(columnOf(b, a, t)).toBeCloseTo(-columnOf(a, b, t), 8);
      }),
    );
  });

  it("grows with the warmth and the moisture of the air, and as the pressure falls", () => {
    fc.assert(
      fc.property(pressures, warmth, (p, t) => {
        expect(columnOf(p, p - 5, t)).toBeLessThan(columnOf(p, p - 5, t + 1));
        expect(columnOf(p, p - 5, t)).toBeLessThan(columnOf(p, p - 6, t));
        const moist = barometricHeight({
          lowerPressure: air(p),
          upperPressure: air(p - 5),
          airTemperature: celsius.at(t),
          vapourPressure: hectopascal.of(5),
        });
        expect(moist.in(metre)).toBeGreaterThan(columnOf(p, p - 5, t));
      }),
    );
  });

  it("answers alike in inches of mercury and °F, and is nothing between equal pressures", () => {
    fc.assert(
      fc.property(pressures, warmth, (p, t) => {
        const us = barometricHeight({
          lowerPressure: point("vacuum", inchOfMercury.of(inchOfMercury.fromSI(100 * p))),
          upperPressure: point("vacuum", inchOfMercury.of(inchOfMercury.fromSI(100 * p - 900))),
          airTemperature: fahrenheit.at(1.8 * t + 32),
        });
        expect(us.in(metre)).toBeCloseTo(columnOf(p, p - 9, t), 7);
        expect(columnOf(p, p, t)).toBe(0);
      }),
    );
  });

  it("agrees with Symons' table in every one of its 24 figures, within 0.08 ft to the hundredth of an inch", () => {
    // Plympton, The Aneroid Barometer: rows of mean pressure in inches, columns of mean temperature in °F.
    const printed: Record<number, number[]> = {
      27: [9.7, 9.9, 10.1, 10.3, 10.6, 10.8],
      28: [9.3, 9.5, 9.8, 10.0, 10.2, 10.4],
      29: [9.0, 9.2, 9.4, 9.6, 9.8, 10.0],
      30: [8.7, 8.9, 9.1, 9.3, 9.5, 9.7],
    };
    for (const [inches, row] of Object.entries(printed)) {
      row.forEach((feet, i) => {
        const airTemperature = fahrenheit.at(30 + 10 * i);
        const got = barometricHeight({
          lowerPressure: point("vacuum", inchOfMercury.of(Number(inches) + 0.005)),
          upperPressure: point("vacuum", inchOfMercury.of(Number(inches) - 0.005)),
          airTemperature,
          // English air, neither dry nor full.
          vapourPressure: airVapourPressure({ relativeHumidity: percent.of(60), airTemperature }),
        });
        expect(Math.abs(got.in(foot) - feet), `${inches} in, column ${i}`).toBeLessThan(0.08);
      });
    }
  });

  it("refuses temperatures and pressures that no hillside has, and gauge pressures", () => {
    expect(() => columnOf(1000, 990, 85)).toThrow(OutOfValidityError);
    expect(() => columnOf(1000, 990, 85)).toThrow(
      "barometric-height: airTemperature = 85 °C is above 323.15 K, the range common practice gives",
    );
    expect(() => columnOf(1000, 290)).toThrow(
      "barometric-height: upperPressure = 290 hPa over vacuum is below 300 hPa (30000 Pa), the range common practice gives",
    );
    const stations = { lowerPressure: air(1000), upperPressure: air(990) };
    expect(() =>
      barometricHeight({
        ...stations,
        airTemperature: celsius.at(15),
        vapourPressure: pascal.of(-1),
      }),
    ).toThrow(NonPhysicalError);
    expect(() =>
      barometricHeight({
        ...stations,
        upperPressure: point("local atmosphere", poundPerSquareInch.of(14)) as never,
        airTemperature: celsius.at(15),
      }),
    ).toThrow(QuantityError);
  });
});

describe("airVapourPressure", () => {
  it("rises with the humidity in proportion, and doubles for some 10 K", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 1, noNaN: true }), warmth, (u, t) => {
        const e = (humidity: number, at: number) =>
          airVapourPressure({
            relativeHumidity: one.of(humidity),
            airTemperature: celsius.at(at),
          }).in(pascal);
        expect(e(u, t)).toBeCloseTo(u * e(1, t), 8);
        const tenfold = e(u, t + 10) / e(u, t);
        expect(tenfold).toBeGreaterThan(1.6);
        expect(tenfold).toBeLessThan(2.4);
      }),
    );
  });

  it("refuses a humidity of more than all, and steam", () => {
    const airTemperature = celsius.at(20);
    expect(() => airVapourPressure({ relativeHumidity: percent.of(101), airTemperature })).toThrow(
      "air-vapour-pressure: relativeHumidity = 101 % is not between 0 and 1",
    );
    expect(() =>
      airVapourPressure({ relativeHumidity: one.of(1), airTemperature: celsius.at(60) }),
    ).toThrow("air-vapour-pressure: airTemperature = 60 °C is above 323.15 K");
  });
});

describe("altimeterHeight", () => {
  it("is what the scale shows in air as the scale takes it, and as much more as the air is warmer", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 3000, noNaN: true }),
        fc.double({ min: 10, max: 300, noNaN: true }),
        fc.double({ min: 0.9, max: 1.1, noNaN: true }),
        (low, rise, warm) => {
          const middle = 288.15 - 0.0065 * (low + rise / 2);
          const readings = { lowerReading: metre.of(low), upperReading: metre.of(low + rise) };
          const standard = altimeterHeight({
            ...readings,
            airTemperature: point("absolute zero", kelvin.of(middle * warm)),
          });
          expect(standard.in(metre)).toBeCloseTo(rise * warm, 8);
          const isothermal = altimeterHeight({
            ...readings,
            airTemperature: point("absolute zero", kelvin.of(283.15 * warm)),
            scale: "isothermal 50 °F",
          });
          expect(isothermal.in(metre)).toBeCloseTo(rise * warm, 8);
        },
      ),
    );
  });

  it("agrees with the barometer that it is: the standard atmosphere between 500 m and 600 m, 15 K too warm", () => {
    // ISO 2533: p = 101325·(T/288.15)^5.25588, worked here and not in the library.
    const standard = (h: number) => 1013.25 * ((288.15 - 0.0065 * h) / 288.15) ** 5.255879;
    const airTemperature = point("absolute zero", kelvin.of(288.15 - 0.0065 * 550 + 15));
    const height = altimeterHeight({
      lowerReading: metre.of(500),
      upperReading: metre.of(600),
      airTemperature,
    });
    const column = barometricHeight({
      lowerPressure: air(standard(500)),
      upperPressure: air(standard(600)),
      airTemperature,
    });
    expect(height.in(metre)).toBeCloseTo(column.in(metre), 2);
  });

  it("refuses a scale that it does not know", () => {
    expect(() =>
      altimeterHeight({
        lowerReading: metre.of(1),
        upperReading: metre.of(2),
        airTemperature: celsius.at(10),
        scale: "feet" as never,
      }),
    ).toThrow("give one of standard atmosphere, isothermal 50 °F");
  });
});

const at = (time: number, hPa: number) => ({ time: hour.of(time), pressure: air(hPa) });
const walk = (more: Partial<BarometerInput> = {}): BarometerInput => ({
  lower: at(10, 921.4),
  upper: at(11, 913.3),
  airTemperature: celsius.at(14),
  division: hectopascal.of(0.1),
  ...more,
});

describe("barometerHead", () => {
  it("takes the weather as even between two readings of the first station (Helvellyn, surveyed at 2927 ft)", () => {
    const reading = (time: number, inches: number) => ({
      time: hour.of(time),
      pressure: point("vacuum", inchOfMercury.of(inches)),
    });
    const { head } = barometerHead({
      lower: reading(10, 29.89),
      upper: reading(13, 26.81),
      again: reading(17, 29.76),
      airTemperature: fahrenheit.at(55.5),
      division: inchOfMercury.of(0.02),
    });
    // 12 August 1862, a pocket aneroid; the book of the day made 2922 ft of it.
    expect(Math.abs(head.in(foot) - 2927)).toBeLessThan(0.005 * 2927);
    const moved = 29.89 - (0.13 * 3) / 7;
    const byHand = barometricHeight({
      lowerPressure: point("vacuum", inchOfMercury.of(moved)),
      upperPressure: point("vacuum", inchOfMercury.of(26.81)),
      airTemperature: fahrenheit.at(55.5),
    });
    expect(head.in(metre)).toBeCloseTo(byHand.in(metre), 9);
  });

  it("sees the weather by an instrument that stood still, whichever station was first", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -3, max: 3, noNaN: true }),
        fc.double({ min: 0.1, max: 4, noNaN: true }),
        fc.boolean(),
        (change, hours, upFirst) => {
          // The weather moves both stations and the base alike.
          const later = 10 + hours;
          const [lower, upper] = upFirst
            ? [at(later, 921.4 + change), at(10, 913.3)]
            : [at(10, 921.4), at(later, 913.3 + change)];
          const base = [at(9, 950 - change / hours), at(10, 950), at(later, 950 + change)];
          const { head } = barometerHead(walk({ lower, upper, base }));
          expect(head.in(metre)).toBeCloseTo(columnOf(921.4 + change, 913.3 + change, 14), 8);
          expect(barometerHead(walk({ lower, upper, base })).notices).toEqual([]);
        },
      ),
    );
  });

  it("keeps by their names what is uncertain", () => {
    const sources = (input: BarometerInput) => [...barometerHead(input).head.sources().keys()];
    expect(sources(walk({ again: at(12, 921.8), name: "walk" })).toSorted()).toEqual([
      "walk.readings",
      "walk.temperature",
      "walk.weather",
    ]);
    const same = { lower: at(10, 921.4), upper: at(10, 913.3) };
    expect(sources(walk(same)).toSorted()).toEqual(["barometer.readings", "barometer.temperature"]);
  });

  it("counts half of a division for each reading, half of a change, and 3 K", () => {
    const half = (input: BarometerInput, source: string) =>
      Math.abs(barometerHead(input).head.sources().get(source)!.in(metre));
    const perHectopascal = columnOf(921.4, 920.4, 14);
    const perDivision = (0.05 * perHectopascal) / Math.sqrt(3);
    const same = { lower: at(10, 921.4), upper: at(10, 913.3) };
    expect(half(walk(same), "barometer.readings")).toBeCloseTo(perDivision * Math.SQRT2, 3);
    expect(half(walk({ again: at(12, 921.4) }), "barometer.readings")).toBeCloseTo(
      perDivision * Math.sqrt(1.5),
      3,
    );
    expect(half(walk({ base: [at(10, 950), at(11, 950)] }), "barometer.readings")).toBeCloseTo(
      perDivision * 2,
      3,
    );
    expect(half(walk({ again: at(12, 921.8) }), "barometer.weather")).toBeCloseTo(
      (0.2 * perHectopascal) / Math.sqrt(3),
      2,
    );
    expect(half(walk(), "barometer.weather")).toBeCloseTo(perHectopascal / Math.sqrt(3), 2);
    const { head } = barometerHead(walk(same));
    expect(half(walk(same), "barometer.temperature")).toBeCloseTo(
      (head.in(metre) * 3) / 287.15 / Math.sqrt(3),
      4,
    );
  });

  it("reports the 3 K, and not where the temperature has a spread of its own", () => {
    const assumed: Assumption[] = [];
    const onAssumed = (each: Assumption) => assumed.push(each);
    const onNotice = (): void => undefined;
    barometerHead(walk(), { onAssumed, onNotice });
    expect(assumed.map(({ input, value }) => `${input} ${value}`)).toEqual([
      "airTemperature within 3 K",
      "vapourPressure 0 Pa",
      "gravity 9.80665 m/s²",
    ]);
    assumed.length = 0;
    const airTemperature = celsius.at(14).plusMinus(kelvin.of(1), "thermometer");
    const { head } = barometerHead(walk({ airTemperature }), { onAssumed, onNotice });
    expect(assumed.map(({ input }) => input)).toEqual(["vapourPressure", "gravity"]);
    expect(head.sources().has("thermometer")).toBe(true);
  });

  it("warns where nothing shows the weather, and where the head is too small for it", () => {
    const told: string[] = [];
    const { notices } = barometerHead(walk(), {
      onNotice: ({ message }) => told.push(message),
    });
    expect(notices.map(({ code }) => code)).toEqual([
      "barometer-head/drift-unknown",
      "barometer-head/vague",
    ]);
    expect(told).toEqual([
      "barometer-head: nothing shows what the weather did between the two readings; 1 hPa an hour is counted either way. Leave a second instrument at one station, or go back to the first one.",
      "barometer-head: ± 10.4 m is 14 % of a head of 74.2 m, too much to choose a pipe by. Level the fall, or read a gauge on a full hose.",
    ]);
    expect(barometerHead(walk({ again: at(12, 921.5) })).notices).toEqual([]);
  });

  it("refuses readings without a time, without a pressure, and out of order", () => {
    const bad = (more: Partial<BarometerInput>) => () => barometerHead(walk(more));
    expect(bad({ lower: { pressure: air(921.4) } as never })).toThrow(NonPhysicalError);
    expect(bad({ lower: { pressure: air(921.4) } as never })).toThrow(
      "barometer-head: lower.time is missing. Give the time of day, as hours.",
    );
    expect(bad({ base: [{ time: hour.of(1), pressure: hectopascal.of(900) } as never] })).toThrow(
      "barometer-head: base.0.pressure is missing. Give the pressure of the air over vacuum, not a gauge reading.",
    );
    expect(bad({ again: at(10.5, 921.5) })).toThrow(
      "barometer-head: again.time = 10.5 h does not follow the other two readings, the last of them at 11 h. Give times of one day in their order.",
    );
    expect(bad({ base: [at(10, 950)] })).toThrow(
      "barometer-head: base has fewer than two readings. Read it before and after.",
    );
    expect(bad({ base: [at(10, 950), at(9, 950)] })).toThrow(
      "barometer-head: base.1.time = 9 h does not follow 10 h. Give its readings in their order.",
    );
    expect(bad({ base: [at(10, 950), at(10.5, 950)] })).toThrow(
      "barometer-head: base was read from 10 h to 10.5 h, and not at 11 h, when the other was. Read it for as long as the other is carried.",
    );
    expect(bad({ division: hectopascal.of(0) })).toThrow(
      "barometer-head: division = 0 hPa is not above zero. Give the smallest step that it shows.",
    );
    expect(bad({ lower: at(11, 913.3), upper: at(11, 921.4) })).toThrow(
      "barometer-head: the upper station's pressure, 921.4 hPa, is not below the lower one's, 913.3 hPa, at the same moment. See whether the stations are exchanged.",
    );
    expect(bad({ again: at(12, 921.5), airTemperature: celsius.at(140) })).toThrow(
      OutOfValidityError,
    );
  });
});

const shows = (time: number, feet: number) => ({ time: hour.of(time), altitude: foot.of(feet) });
const climb = (more: Partial<AltimeterInput> = {}): AltimeterInput => ({
  lower: shows(9, 1240),
  upper: shows(9.5, 1410),
  airTemperature: fahrenheit.at(78),
  division: foot.of(5),
  ...more,
});

describe("altimeterHead", () => {
  it("is altimeterHeight once the weather is taken off", () => {
    const expected = altimeterHeight({
      lowerReading: foot.of(1240),
      upperReading: foot.of(1405),
      airTemperature: fahrenheit.at(78),
    }).in(foot);
    const byBase = altimeterHead(climb({ base: [shows(9, 900), shows(9.5, 905)] }));
    // The first station is moved up to the time of the second: 1245 to 1410, five feet higher in the air.
    expect(byBase.head.in(foot)).toBeCloseTo(expected, 1);
    const byReturn = altimeterHead(climb({ again: shows(10, 1250) }));
    expect(byReturn.head.in(foot)).toBeCloseTo(byBase.head.in(foot), 9);
    const downFirst = altimeterHead(climb({ lower: shows(10, 1250), again: shows(10.5, 1420) }));
    // Ten feet in the hour from 9:30, five of them by 10:00.
    expect(downFirst.head.in(foot)).toBeCloseTo(byBase.head.in(foot), 1);
  });

  it("counts what it is read to, the weather and the air, by their names", () => {
    const sources = altimeterHead(climb({ name: "watch" })).head.sources();
    expect([...sources.keys()].toSorted()).toEqual([
      "watch.readings",
      "watch.temperature",
      "watch.weather",
    ]);
    const warm = altimeterHead(climb()).head.in(metre) / foot.of(170).in(metre);
    const got = (source: string) => Math.abs(sources.get(source)!.in(foot));
    expect(got("watch.readings")).toBeCloseTo((warm * 2.5 * Math.SQRT2) / Math.sqrt(3), 2);
    expect(got("watch.weather")).toBeCloseTo((warm * (4.25 / 0.3048)) / Math.sqrt(3), 1);
  });

  it("takes the scale of the instrument and the moisture of the air", () => {
    const dry = altimeterHead(climb({ upper: shows(9, 1410) })).head.in(foot);
    const moist = altimeterHead(
      climb({
        upper: shows(9, 1410),
        vapourPressure: hectopascal.of(20),
        airPressure: air(960),
      }),
    ).head.in(foot);
    expect(moist / dry).toBeCloseTo(1 / (1 - (0.378 * 20) / 960), 9);
    const old = altimeterHead(climb({ upper: shows(9, 1410), scale: "isothermal 50 °F" }));
    expect(old.head.in(foot)).toBeCloseTo((170 * 537.67) / 509.67, 6);
  });

  it("warns and refuses as the barometer does, in the unit of the readings", () => {
    const [drift, vague] = altimeterHead(climb({ upper: shows(10, 1410) })).notices;
    expect(drift?.message).toContain("altimeter-head: nothing shows what the weather did");
    expect(drift?.message).toContain("8.5 m an hour is counted either way");
    expect(vague?.message).toMatch(/^altimeter-head: ± 3\d\.\d ft is 1\d % of a head of 17\d ft/u);
    const bad = (more: Partial<AltimeterInput>) => () => altimeterHead(climb(more));
    expect(bad({ upper: shows(9.5, 1240) })).toThrow(
      "altimeter-head: the upper station shows 1240 ft, not more than the lower one's 1240 ft at the same moment. See whether the stations are exchanged.",
    );
    expect(bad({ lower: { time: minute.of(540) } as never })).toThrow(
      "altimeter-head: lower.altitude is missing. Give what the altimeter shows, a length.",
    );
    expect(bad({ upper: { altitude: foot.of(1410) } as never })).toThrow(
      "altimeter-head: upper.time is missing. Give the time of day, as hours.",
    );
    expect(bad({ division: foot.of(-1) })).toThrow(NonPhysicalError);
  });
});
