import { NonPhysicalError } from "@leat/formula";
import { designScheme, measureSurvey } from "@leat/scheme";
import { readFieldSurvey, readSurvey } from "@leat/scheme/read";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

import { cloud, type Files, logged, measure, opening } from "./measuring.ts";

/** Surveys of one measurement, in US customary units and in metric ones: an inch is 25.4 mm, a gallon 231 in³. */
const alike: readonly [what: string, us: string, metric: string][] = [
  [
    "a stated flow and fall",
    "stream: 400 gal/min ± 20 gal/min\nfall: 110 ft ± 2 ft",
    "stream: 25.2360785600 L/s ± 1.261803928 L/s\nfall: 33.528 m ± 0.6096 m",
  ],
  [
    "a notch and a gauge",
    "stream: { notch: { shape: V, angle: 90°, head: 6 in ± 0.1 in, sill: 2 ft, channel: 8 ft }, leaks: 2 gal/min ± 1 gal/min }\nfall: { gauge: 47.7 psi ± 1 psi, gauge above nozzles: 2 ft, water above upper mark: 6 in }",
    "stream: { notch: { shape: V, angle: 90°, head: 152.4 mm ± 2.54 mm, sill: 0.6096 m, channel: 2.4384 m }, leaks: 0.1261803928 L/s ± 0.0630901964 L/s }\nfall: { gauge: 328.8799227238626 kPa ± 6.894757293168361 kPa, gauge above nozzles: 0.6096 m, water above upper mark: 152.4 mm }",
  ],
  [
    "a drowned rectangular notch, by divisions, and levels",
    "stream: { notch: { shape: rectangular, width: 16 in, head: 4 in, read to: 1/8 in, sill: 1 ft, channel: 5 ft, tail water: 1 in ± 0.1 in } }\nfall: { levels: { instrument: builder's level, out: [{ back: 1.2 ft, fore: 11.4 ft }], returning: [{ back: 11.42 ft, fore: 1.2 ft }], rod: 13 ft } }",
    "stream: { notch: { shape: rectangular, width: 406.4 mm, head: 101.6 mm, read to: 3.175 mm, sill: 0.3048 m, channel: 1.524 m, tail water: 25.4 mm ± 2.54 mm } }\nfall: { levels: { instrument: builder's level, out: [{ back: 0.36576 m, fore: 3.47472 m }], returning: [{ back: 3.480816 m, fore: 0.36576 m }], rod: 3.9624 m } }",
  ],
  [
    "a crest and a hose",
    "stream: { crest: { head: 6 in ± 1/8 in, width: 4 ft, length: 18 in, sill: 1 ft } }\nfall: { hose: { steps: [4 ft 7 in, 5 ft] } }",
    "stream: { crest: { head: 152.4 mm ± 3.175 mm, width: 1.2192 m, length: 457.2 mm, sill: 0.3048 m } }\nfall: { hose: { steps: [1.397 m, 1.524 m] } }",
  ],
  [
    "fillings and a map",
    "stream: { bucket: [{ volume: 5 gal, time: 10 s }, { volume: 5 gal, time: 10.3 s }, { volume: 5 gal, time: 9.9 s }] }\nfall: { map: { upper: 1340 ft, lower: 1225 ft, interval: 40 ft } }",
    "stream: { bucket: [{ volume: 18.92705892 L, time: 10 s }, { volume: 18.92705892 L, time: 10.3 s }, { volume: 18.92705892 L, time: 9.9 s }] }\nfall: { map: { upper: 408.432 m, lower: 373.38 m, interval: 12.192 m } }",
  ],
  [
    "floats and an altimeter",
    "stream: { floats: { stretch: 40 ft, times: [21 s, 23 s, 25 s], sections: [{ width: 6 ft, depths: [4 in, 6 in] }, { area: 2 ft² }], depth: 1.5 ft } }\nfall: { altimeter: { upper: { time: 09:40, reads: 1340 ft }, lower: { time: 10:10, reads: 1225 ft }, air: 59 °F, division: 1 ft } }",
    "stream: { floats: { stretch: 12.192 m, times: [21 s, 23 s, 25 s], sections: [{ width: 1.8288 m, depths: [101.6 mm, 152.4 mm] }, { area: 0.18580608 m² }], depth: 0.4572 m } }\nfall: { altimeter: { upper: { time: 09:40, reads: 408.432 m }, lower: { time: 10:10, reads: 373.38 m }, air: 15 °C, division: 0.3048 m } }",
  ],
  [
    "a meter and a barometer",
    "stream: { meter: { edges: [{ at: 0 ft }, { at: 5 ft }], verticals: [{ at: 1 ft, depth: 1 ft, six tenths: 1.2 ft/s }, { at: 3 ft, depth: 2 ft, two tenths: 1.5 ft/s, eight tenths: 1 ft/s }], exposure: 40 s, rating: group } }\nfall: { barometer: { upper: { time: 09:40, reads: 28.5 inHg }, lower: { time: 10:10, reads: 28.7 inHg }, air: 59 °F, division: 0.01 inHg } }",
    "stream: { meter: { edges: [{ at: 0 m }, { at: 1.524 m }], verticals: [{ at: 0.3048 m, depth: 0.3048 m, six tenths: 0.36576 m/s }, { at: 0.9144 m, depth: 0.6096 m, two tenths: 0.4572 m/s, eight tenths: 0.3048 m/s }], exposure: 40 s, rating: group } }\nfall: { barometer: { upper: { time: 09:40, reads: 96.5120762497 kPa }, lower: { time: 10:10, reads: 97.1893539778 kPa }, air: 15 °C, division: 0.03386388640341 kPa } }",
  ],
  [
    "nozzles",
    "stream: { nozzles: { gauge: 38 psi ± 1 psi, gauge above nozzles: 6 in, open: [1/2 in, 3/8 in], bore: 3 in, coefficient: 0.95 ± 0.02 } }",
    "stream: { nozzles: { gauge: 262.0007771403977 kPa ± 6.894757293168361 kPa, gauge above nozzles: 152.4 mm, open: [12.7 mm, 9.525 mm], bore: 76.2 mm, coefficient: 0.95 ± 0.02 } }",
  ],
  [
    "a staff",
    "stream: { staff: { readings: [1 ft, 1.02 ft], read to: 0.02 ft, calibration: 0.01 ft, gaugings: [{ stage: 0.7 ft, flow: 100 gal/min }, { stage: 0.9 ft, flow: 210 gal/min }, { stage: 1.2 ft, flow: 500 gal/min }, { stage: 1.4 ft, flow: 800 gal/min }] } }",
    "stream: { staff: { readings: [0.3048 m, 0.310896 m], read to: 6.096 mm, calibration: 3.048 mm, gaugings: [{ stage: 0.21336 m, flow: 6.30901964 L/s }, { stage: 0.27432 m, flow: 13.248941244 L/s }, { stage: 0.36576 m, flow: 31.5450982 L/s }, { stage: 0.42672 m, flow: 50.47215712 L/s }] } }",
  ],
];

describe("a measurement in two systems of units", () => {
  it.each(alike)("is one measurement: %s", (_, us, metric) => {
    const [a, b] = [measure(us), measure(metric)];
    for (const key of ["flow", "fall"] as const) {
      const [one, other] = [a[key]?.taken.value, b[key]?.taken.value];
      expect(one === undefined).toBe(other === undefined);
      if (!one || !other) continue;
      expect(one["~si"] / other["~si"]).toBeCloseTo(1, 9);
      const [u, v] = [one, other].map((q) => q.standardUncertainty()["~si"]);
      expect(u! / v!).toBeCloseTo(1, 9);
    }
  });
});

/** Every way of measuring, some with their ± written and some without, with files. */
const files: Files = {
  "left.csv": cloud(1.2, (row, reading) => (row === 30 ? -9999 : reading)),
  "right.csv": cloud(1.0),
  "cut.csv": cloud(1.2, undefined, 45),
  "cal.csv": "Added,EC\n0,62\n2,103\n4,140\n6,185\n",
  "feed.csv": `Time,EC\n${Array.from({ length: 120 }, (_, i) => `${i},${i < 20 ? 62 : 142 + 0.02 * i}`).join("\n")}\n`,
};
const ways: readonly string[] = [
  ...alike.flatMap(([, us, metric]) => [us, metric]),
  `stream: { salt: { mass: 100 g, probes: [{ file: left.csv, ${logged} }, { file: right.csv, ${logged} }], calibration: { water: 1 L ± 5 mL, solution: 10 g/L, made with: distilled water, readings: { file: cal.csv, added: Added, added unit: mL, conductivity: EC, conductivity unit: µS/cm } } } }`,
  `stream: { salt: { mass: 100 g, probes: [{ file: cut.csv, ${logged.replace("compensated", "raw")} }], temperature: 8 °C } }`,
  `stream: { salt feed: { rate: 1 L/min, solution: 100 g/L, probes: [{ file: feed.csv, ${logged} }] } }`,
  "stream: { notch: { shape: rectangular, width: 2 ft, head: 5 ft } }\nfall: { plank: { steps: [1 m, 2 m, 0.5 m], again: [1 m, 2 m, -0.5 m] } }",
  "stream: { floats: { stretch: 2 m, times: [5 s], sections: [{ width: 2 m ± 0.1 m, depths: [0.2 m ± 0.01 m] }], bed: cobbles } }\nfall: { satellite: { upper: 412 m, lower: 371 m, receiver: telephone or handheld, apart: 250 m } }",
  "stream: { meter: { edges: [{ at: 0 m ± 0.1 m }, { at: 2 m, depth: 0.1 m }], verticals: [{ at: 1 m, depth: 0.3 m ± 0.01 m, surface: 0.4 m/s ± 0.1 m/s }, { at: 1.4 m, depth: 0.3 m, two tenths: 0.5 m/s, six tenths: 0.4 m/s, eight tenths: 0.2 m/s }] } }\nfall: { gauge: 1 bar, full scale: 16 bar, class: B, gauge zero: 0.9 bar, flood above lower mark: 1 m }",
  "stream: { staff: { readings: [0.2 m, 0.9 m], read to: 10 mm, gaugings: [{ stage: 0.21 m ± 0.01 m, flow: 9 L/s ± 1 L/s }, { stage: 0.26 m, flow: 24 L/s }, { stage: 0.34 m, flow: 67 L/s }, { stage: 0.45 m, flow: 142 L/s }] } }\nfall: 45 psi",
  "stream: { measured: [{ flow: 10 L/s ± 1 L/s }, { flow: 20 L/s ± 1 L/s }, { on: 2026-08-14, bucket: [{ volume: 20 L, time: 10 s ± 1 s }, { volume: 20 L ± 1 L, time: 20 s }] }] }",
];

describe("every measurement", () => {
  const all = ways.map((text) => measure(text, files));
  const each = all.flatMap(({ flow, fall }) => [
    ...(flow?.measurements ?? []),
    ...(fall?.measurements ?? []),
  ]);

  it("is made of shares whose squares add up to one", () => {
    for (const { parts } of each) {
      const sum = parts.reduce((total, { share }) => total + share * share, 0);
      expect(sum).toBeCloseTo(1, 12);
    }
  });

  it("has the ± of what it is made of, above zero, and a fall and a flow above zero", () => {
    for (const { value, half } of each) {
      expect(value["~si"]).toBeGreaterThan(0);
      expect(half["~si"]).toBeCloseTo(1.959963984540054 * value.standardUncertainty()["~si"], 12);
      expect(half["~si"]).toBeGreaterThan(0);
    }
  });

  // camelCase, dotted and slashed names, names with a hyphen before a colon.
  const program =
    /\b[a-z]{2,}[A-Z]|\b[a-z]+\.[a-z]+\.|\bcreek\.|[a-z]\/[a-z]+:|^[a-z]+-[a-z-]+: |undefined|NaN|Infinity/u;

  it("names what its ± is made of, and how to know it better, in words", () => {
    for (const { parts } of each) {
      for (const { what, measure: how } of parts) {
        expect(what).not.toMatch(program);
        expect(what).toMatch(/^[a-z]/u);
        expect(how ?? "").not.toMatch(program);
      }
    }
  });

  it("is spoken of in the words of a survey", () => {
    for (const { notices, boards } of all) {
      for (const { message } of notices) expect(message).not.toMatch(program);
      for (const { name } of boards) expect(name).not.toMatch(program);
    }
    for (const { facts } of each) {
      for (const { what, value } of facts) expect(`${what} ${value}`).not.toMatch(program);
    }
  });

  it("has every notice at a place in the survey", () => {
    for (const text of ways) {
      const { survey, assumed, place } = readFieldSurvey(text, "creek.yaml", opening(files));
      for (const { path } of measureSurvey(survey, assumed).notices) {
        expect(["stream", "fall"]).toContain(path[0]);
        expect(place(path).line).toBeGreaterThan(0);
      }
    }
  });

  it("has a sheet for each formula, and cites whose it is", () => {
    for (const { working, formulas, sources } of each) {
      const sheets = working();
      expect(new Set(sheets.map(({ formula }) => formula))).toEqual(
        new Set(formulas.map(({ id }) => id)),
      );
      if (formulas.length > 0) expect(sources.length).toBeGreaterThan(0);
    }
  });

  it("has a sheet that comes to what was measured, by every way that is a formula of one flow", () => {
    const [crest] = measure(alike[3]![1]).flow!.measurements;
    const [floats] = measure(alike[5]![1]).flow!.measurements;
    const [meter] = measure(alike[6]![1]).flow!.measurements;
    const [nozzles] = measure(alike[7]![1]).flow!.measurements;
    const [staff] = measure(alike[8]![1]).flow!.measurements;
    for (const made of [crest, floats, meter, nozzles, staff]) {
      const results = made!.working().at(-1)!.results;
      expect(Number.parseFloat(results[0]!.value)).toBeCloseTo(made!.value["~si"], 6);
    }
  });
});

describe("a scheme", () => {
  const rest = "reaches: 900 ft\ncable: 300 ft\nbank: 48 V\n";

  it.each([
    ["a notch and levels", alike[2]![1]],
    [
      "fillings and a stated fall",
      "stream: { bucket: [{ volume: 5 gal, time: 1 s }] }\nfall: 110 ft",
    ],
    [
      "two days, and two measurements of the fall that disagree",
      "stream: { measured: [{ on: 2026-08-14, flow: 300 gal/min }, { on: 2026-08-20, flow: 400 gal/min ± 20 gal/min }, { on: 2026-08-20, flow: 380 gal/min ± 30 gal/min }] }\nfall: { measured: [{ gross: 110 ft ± 1 ft }, { gauge: 45 psi ± 0.5 psi }] }",
    ],
  ])("is made of the flow and the fall as they were measured: %s", (_, text) => {
    const { survey, assumed } = readSurvey(`${text}\n${rest}`, "creek.yaml");
    const { design } = designScheme(survey, assumed);
    const { flow, fall } = measure(text);
    for (const [inScheme, measured] of [
      [design.stream.measured, flow!.taken.value],
      [design.fall.gross, fall!.taken.value],
    ] as const) {
      expect(inScheme["~si"]).toBe(measured["~si"]);
      expect(inScheme.standardUncertainty()["~si"]).toBe(measured.standardUncertainty()["~si"]);
    }
    expect([design.stream.by, design.fall.by]).toEqual([flow!.by, fall!.by]);
    const said = new Set(design.notices.map(({ message }) => message));
    for (const { message, code } of [...flow!.notices, ...fall!.notices])
      expect([code, said.has(message)]).toEqual([code, true]);
  });
});

describe("any numbers", () => {
  const positive = fc.integer({ min: 1, max: 2000 }).map((n) => (n / 100).toFixed(2));
  const number = fc.integer({ min: -500, max: 2000 }).map((n) => (n / 100).toFixed(2));
  const texts = fc.oneof(
    fc
      .tuple(
        fc.constantFrom(
          "shape: V, angle: 90°",
          "shape: rectangular, width: 1 m",
          "shape: trapezoidal, width: 0.5 m",
        ),
        positive,
        positive,
        positive,
        positive,
      )
      .map(
        ([shape, head, sill, channel, tail]) =>
          `stream: { notch: { ${shape}, head: ${head} ft, sill: ${sill} m, channel: ${Math.max(1, Number(channel))} m, tail water: ${tail} in } }`,
      ),
    fc
      .tuple(positive, positive, positive)
      .map(
        ([a, b, c]) =>
          `stream: { staff: { readings: [${a} ft], read to: 10 mm, gaugings: [{ stage: 1 ft, flow: ${b} L/s }, { stage: 2 ft, flow: ${c} L/s }, { stage: 3 ft, flow: 9 L/s }, { stage: 4 ft, flow: 12 L/s }] } }`,
      ),
    fc
      .tuple(number, number, positive)
      .map(
        ([a, b, depth]) =>
          `stream: { meter: { edges: [{ at: 0 m }, { at: ${a} m }], verticals: [{ at: ${b} m, depth: ${depth} m, six tenths: ${b} m/s }] } }`,
      ),
    fc
      .tuple(number, positive, number, number)
      .map(
        ([zero, gauge, up, down]) =>
          `stream: 1 L/s\nfall: { gauge: ${gauge} bar, gauge zero: ${zero} bar, full scale: 10 bar, class: C, water above upper mark: ${up} m, nozzles above lower mark: ${down} m }`,
      ),
    fc
      .tuple(number, number, number)
      .map(
        ([a, b, c]) =>
          `stream: 1 L/s\nfall: { levels: { instrument: hand level, out: [{ back: ${a} m, fore: ${b} m }], returning: [{ back: ${c} m, fore: ${a} m }] } }`,
      ),
    fc
      .tuple(number, number, positive)
      .map(
        ([a, b, air]) =>
          `stream: 1 L/s\nfall: { altimeter: { upper: { time: ${Math.abs(Number(a))} h, reads: ${a} m }, lower: { time: 1 h, reads: ${b} m }, air: ${air} °C, division: 1 m } }`,
      ),
  );

  it("give a flow and a fall above zero with a ±, or are stopped, or are refused at a place in the survey", () => {
    fc.assert(
      fc.property(texts, (text) => {
        const { survey, assumed } = readFieldSurvey(text, "creek.yaml");
        try {
          const { flow, fall, boards } = measureSurvey(survey, assumed);
          for (const made of [flow, fall]) {
            if (!made) continue;
            const { value } = made.taken;
            expect(
              value["~si"] > 0 || made.notices.some(({ code }) => /^no-(?:flow|fall)$/u.test(code)),
            ).toBe(true);
            expect(value.standardUncertainty()["~si"]).toBeGreaterThan(0);
            expect(Number.isFinite(value.standardUncertainty()["~si"])).toBe(true);
          }
          for (const { lines } of boards) expect(lines.length).toBeLessThanOrEqual(60);
        } catch (error) {
          if (!(error instanceof NonPhysicalError)) throw error;
          for (const { path, message } of error.notices) {
            expect(["stream", "fall"]).toContain(path[0]);
            expect(message).not.toMatch(/\b[a-z]{2,}[A-Z]|NaN|creek\./u);
          }
        }
      }),
      { numRuns: 300 },
    );
  });
});
