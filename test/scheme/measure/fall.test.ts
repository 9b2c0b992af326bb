import { altimeterHead } from "@leat/flow-measurement";
import { celsius, foot, hour, metre } from "@leat/quantity";
import type { Measurement } from "@leat/scheme";
import { describe, expect, it } from "vitest";

import { fallBy, measure, partsOf, said } from "./measuring.ts";

const metres = (measurement: Measurement<"gross head">): number => measurement.value.in(metre);
const half = (measurement: Measurement<"gross head">): number => measurement.half.in(metre);

const ft = 0.3048;
/** Pounds of 0.45359237 kg on inches of 25.4 mm. */
const psi = (0.45359237 * 9.80665) / 0.0254 ** 2;
/** Water of 10 °C is 999.70 kg/m³. */
const weight = 999.7 * 9.80665;
const k95 = 1.959964;
/** Half of the 95 % interval of a rectangle, over half its width. */
const ofRectangle = k95 / Math.sqrt(3);

describe("a stated fall", () => {
  it("is taken as it is written", () => {
    const fall = fallBy("110 ft ± 2 ft");
    expect([metres(fall), half(fall)]).toEqual([
      expect.closeTo(110 * ft, 12),
      expect.closeTo(2 * ft, 12),
    ]);
    expect([fall.by, partsOf(fall)]).toEqual(["stated", ["fall"]]);
    expect(half(fallBy("110 ft"))).toBeCloseTo(0.03 * 110 * ft, 12);
  });

  it("is read to a division of its instrument", () => {
    const fall = fallBy("{ gross: 33.5 m, read to: 0.2 m }");
    expect(half(fall)).toBeCloseTo(0.1 * ofRectangle, 6);
  });

  it("as a pressure is a gauge at the nozzles, and that is listed", () => {
    const text = "stream: 1 L/s\nfall: 47.7 psi";
    const { fall, assumed } = measure(text);
    const [gauge] = fall?.measurements ?? [];
    expect(gauge?.by).toBe("gauge");
    expect(gauge?.value.in(metre)).toBeCloseTo((47.7 * psi) / weight, 3);
    expect(assumed.find(({ path }) => path.join(".") === "fall.gross")).toEqual({
      path: ["fall", "gross"],
      what: "a pressure given as the fall",
      value:
        "47.7 psi, a gauge at nozzle height on the full pipe at rest; turned to head with the density of the water",
      because: undefined,
    });
  });
});

describe("a gauge", () => {
  it("without its class is taken within 2 %", () => {
    const fall = fallBy("{ gauge: 3.2 bar, gauge above nozzles: 0.5 m }");
    expect(metres(fall)).toBeCloseTo(3.2e5 / weight + 0.5, 3);
    expect(half(fall)).toBeCloseTo((0.02 * 3.2e5) / weight, 2);
    expect(partsOf(fall)).toEqual(["gauge reading at the bottom", "temperature of the water"]);
  });

  it("with its zero, which is taken off", () => {
    const fall = fallBy("{ gauge: 3.2 bar, gauge zero: 0.1 bar }");
    expect(metres(fall)).toBeCloseTo(3.1e5 / weight, 3);
  });

  it("by its class: a share of the scale, and half a division", () => {
    const fall = fallBy(
      '{ gauge: 47.5 psi, gauge zero: -0.5 psi, full scale: 100 psi, class: "1.6", read to: 1 psi, gauge above nozzles: 2 ft }',
    );
    expect(metres(fall)).toBeCloseTo((48 * psi) / weight + 2 * ft, 3);
    // EN 837-1: 1.6 % of the span, anywhere within.
    expect(half(fall)).toBeCloseTo((Math.hypot(1.6, 0.5) * ofRectangle * psi) / weight, 3);
    expect(partsOf(fall)).toEqual([
      "the gauge's class",
      "reading of the dial",
      "temperature of the water",
    ]);
    expect(fall.facts).toEqual([
      { what: "gauge of class 1.6", value: "may be wrong by 1.60 psi (0.110 bar)" },
    ]);
  });

  it("that is strained or low on its scale is told of", () => {
    const fall = fallBy('{ gauge: 1 bar, gauge zero: 0.3 bar, full scale: 10 bar, class: "1" }');
    expect(said(fall, "gauge-head/zero-off")).toEqual({
      severity: "caution",
      path: "fall.gauge zero",
      message:
        "zero = 0.3 bar is more than this gauge may be wrong by anywhere. It was strained: read another gauge.",
    });
    expect(said(fall, "gauge-head/low-on-scale")).toMatchObject({ path: "fall.gauge" });
  });
});

describe("level and rod", () => {
  const out = "out: [{ back: 1.2 m, fore: 3.4 m }, { back: 0.8 m, fore: 3.6 m }]";

  it("run once: back sights less fore sights", () => {
    const fall = fallBy(`{ levels: { instrument: automatic level, ${out} } }`);
    expect(metres(fall)).toBeCloseTo(2.2 + 2.8, 12);
    // Two set-ups of 2 mm; a rod that may be 0.1 % out.
    expect(half(fall)).toBeCloseTo(
      k95 * Math.hypot(0.002 * Math.SQRT2, (0.001 * 5) / Math.sqrt(3)),
      6,
    );
    expect(partsOf(fall)).toEqual(["the rod", "the readings"]);
    expect(said(fall, "levelling/not-closed")).toEqual({
      severity: "caution",
      path: "fall.levels",
      message:
        "run once, with nothing to check it. Run it back to the first mark, by another way if there is one: a whole foot misread would not show.",
    });
  });

  it("run back: what is left over is shared out", () => {
    const fall = fallBy(
      `{ levels: { instrument: automatic level, ${out}, returning: [{ back: 3.5 m, fore: 1.0 m }, { back: 3.3 m, fore: 0.804 m }] } }`,
    );
    // 5.000 m down and 4.996 m up.
    expect(metres(fall)).toBeCloseTo((5 + 4.996) / 2, 9);
    expect(fall.facts).toEqual([
      {
        what: "left over, out and back",
        // 1.96·2 mm·√4 is allowed.
        value: "0.00400 m (0.0131 ft); 0.00784 m (0.0257 ft) is allowed",
      },
    ]);
    expect(said(fall, "levelling/does-not-close")).toBeUndefined();
  });

  it("names readings that were written with their ±", () => {
    const fall = fallBy(
      "{ levels: { instrument: automatic level, out: [{ back: 1.2 m ± 0.01 m, fore: 3.4 m ± 0.01 m }] } }",
    );
    expect(partsOf(fall).filter((what) => what === "reading of the rod")).toHaveLength(2);
  });
});

describe("steps", () => {
  it("of a hose add up", () => {
    const fall = fallBy("{ hose: { steps: [4 ft 7 in, 5 ft, 3 ft 6 in] } }");
    expect(metres(fall)).toBeCloseTo((4 + 7 / 12 + 5 + 3.5) * ft, 12);
    // 4 mm a step.
    expect(half(fall)).toBeCloseTo(k95 * 0.004 * Math.sqrt(3), 6);
    expect([fall.by, partsOf(fall)]).toEqual(["water-filled hose, in steps", ["the readings"]]);
  });

  it("of a plank, taken twice, are combined", () => {
    const fall = fallBy("{ plank: { steps: [1.21 m, 0.94 m], again: [1.215 m, 0.945 m] } }");
    expect(metres(fall)).toBeCloseTo((2.15 + 2.16) / 2, 9);
    expect([fall.by, partsOf(fall)]).toEqual([
      "plank and level, in steps",
      ["the readings", "the bubble"],
    ]);
  });
});

describe("the weight of the air", () => {
  it("by barometer: R·T/g·ln(p1/p2)", () => {
    const fall = fallBy(
      "{ barometer: { upper: { time: 09:40, reads: 970.1 hPa }, lower: { time: 09:40, reads: 974.2 hPa }, air: 15 °C, division: 0.1 hPa } }",
    );
    const air = (287.05287 * 288.15) / 9.80665;
    expect(metres(fall)).toBeCloseTo(air * Math.log(974.2 / 970.1), 6);
    // Two readings to half of 0.1 hPa, rectangles; 3 K of the air, one too.
    expect(half(fall)).toBeCloseTo(
      ofRectangle * Math.hypot(((0.05 * Math.SQRT2) / 972) * air, (3 / 288.15) * metres(fall)),
      1,
    );
    expect(new Set(partsOf(fall))).toEqual(new Set(["the readings", "temperature of the air"]));
  });

  it("by barometer, half an hour apart: the weather counts", () => {
    const fall = fallBy(
      "{ barometer: { upper: { time: 09:40, reads: 970.1 hPa }, lower: { time: 10:10, reads: 974.2 hPa }, air: 60 °F, division: 0.1 hPa } }",
    );
    expect(said(fall, "barometer-head/drift-unknown")).toMatchObject({
      severity: "caution",
      path: "fall.barometer",
    });
    expect(partsOf(fall)[0]).toBe("change of the weather");
    expect(said(fall, "barometer-head/vague")?.message).toMatch(/^± /u);
  });

  it("by altimeter, gone back to the first place", () => {
    const fall = fallBy(
      "{ altimeter: { upper: { time: 09:40, reads: 1340 ft }, lower: { time: 10:10, reads: 1225 ft }, again: { time: 10:40, reads: 1344 ft }, air: 15 °C, division: 1 ft } }",
    );
    const at = (
      time: number,
      altitude: number,
    ): { time: ReturnType<typeof hour.of>; altitude: ReturnType<typeof foot.of> } => ({
      time: hour.of(time),
      altitude: foot.of(altitude),
    });
    const { head } = altimeterHead({
      upper: at(9 + 40 / 60, 1340),
      lower: at(10 + 10 / 60, 1225),
      again: at(10 + 40 / 60, 1344),
      airTemperature: celsius.at(15),
      division: foot.of(1),
    });
    expect(metres(fall)).toBeCloseTo(head.in(metre), 9);
    // Half of the 4 ft that the weather moved the scale by: 117 ft, near the standard atmosphere's temperature.
    expect(metres(fall) / (117 * ft)).toBeCloseTo(1, 1);
    expect(new Set(partsOf(fall))).toEqual(
      new Set(["the readings", "change of the weather", "temperature of the air"]),
    );
  });

  it("lists what is taken for it in words", () => {
    const { assumed } = measure(
      "stream: 1 L/s\nfall: { altimeter: { upper: { time: 09:40, reads: 1340 ft }, lower: { time: 10:10, reads: 1225 ft }, air: 15 °C, division: 1 ft } }",
    );
    expect(
      assumed.filter(({ path }) => path.join(".") === "fall.altimeter").map(({ what }) => what),
    ).toEqual([
      "spread of the air's temperature",
      "air that the altimeter's scale is made for",
      "vapour in the air",
      "pressure of the air",
    ]);
  });
});

describe("heights", () => {
  it("by satellite, each within 10 m of a telephone", () => {
    const fall = fallBy(
      "{ satellite: { upper: 412 m, lower: 371 m, receiver: telephone or handheld } }",
    );
    expect([metres(fall), half(fall)]).toEqual([
      expect.closeTo(41, 12),
      expect.closeTo(10 * Math.SQRT2, 9),
    ]);
    expect(partsOf(fall)).toEqual(["height at the intake", "height at the nozzles"]);
    expect(said(fall, "satellite-head/vague")?.message).toBe(
      "± 14.1 m is 34 % of a head of 41 m, too much to choose a pipe by. Level the fall, or read a gauge on a full hose.",
    );
  });

  it("by a map, 90 % of them within half a contour", () => {
    const fall = fallBy("{ map: { upper: 1340 ft, lower: 1225 ft, interval: 40 ft } }");
    expect(metres(fall)).toBeCloseTo(115 * ft, 12);
    expect(half(fall)).toBeCloseTo(20 * (k95 / 1.644854) * Math.SQRT2 * ft, 5);
    expect(fall.by).toBe("contours of a map");
  });
});

describe("marks", () => {
  const levelled =
    "gross: 30.0 m ± 0.1 m, water above upper mark: 0.3 m, nozzles above lower mark: 0.8 m";

  it("are brought to water and nozzles", () => {
    const fall = fallBy(`{ ${levelled} }`);
    expect(metres(fall)).toBeCloseTo(30 + 0.3 - 0.8, 12);
    expect(half(fall)).toBeCloseTo(0.1, 9);
    expect(fall.formulas.map(({ id }) => id)).toEqual(["water-to-nozzle-head"]);
  });

  it("tell what lies below the nozzles", () => {
    const fall = fallBy(
      `{ ${levelled}, tail water above lower mark: 0.2 m, flood above lower mark: 1.1 m }`,
    );
    expect(fall.facts).toEqual([
      { what: "nozzles above the tail water", value: "0.600 m (1.97 ft)" },
      { what: "nozzles above the flood mark", value: "-0.300 m (-0.984 ft)" },
    ]);
    expect(said(fall, "fall-between/below-flood-mark")).toEqual({
      severity: "caution",
      path: "fall.flood above lower mark",
      message:
        "the nozzle, 0.8 m above the lower mark, is not above the flood mark, 1.1 m above it. Set the machine higher, or count on stopping it and on wet windings.",
    });
    expect(
      said(
        fallBy(`{ ${levelled}, tail water above lower mark: 0.9 m }`),
        "fall-between/below-tail-water",
      ),
    ).toMatchObject({ path: "fall.tail water above lower mark" });
  });

  it("carry the ± of their own, in words", () => {
    const fall = fallBy(
      "{ gauge: 3.2 bar, gauge above nozzles: 0.5 m ± 0.1 m, gauge zero: 0.1 bar ± 0.05 bar, water above upper mark: 0.3 m ± 0.1 m, nozzles above lower mark: 0.8 m ± 0.1 m }",
    );
    expect(partsOf(fall)).toEqual(
      expect.arrayContaining([
        "height of the gauge over the nozzles",
        "height of the water over the upper mark",
        "height of the nozzles over the lower mark",
        "zero of the gauge",
      ]),
    );
  });
});
