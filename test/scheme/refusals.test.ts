import { designScheme, UnbuildableError } from "@leat/scheme";
import { FileError, readSurvey } from "@leat/scheme/read";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

import { customary, designed, fiveLines } from "./surveys.ts";

/** What a file is refused with. */
function refusal(text: string): string {
  try {
    readSurvey(text, "s.yaml");
  } catch (error) {
    if (error instanceof FileError) return error.message;
    throw error;
  }
  return "";
}

/** Why no scheme can be made. */
function reason(text: string): UnbuildableError | undefined {
  try {
    designed(text);
  } catch (error) {
    if (error instanceof UnbuildableError) return error;
    throw error;
  }
  return undefined;
}

/** Paths of the numbers in a value that are not finite. */
function notFinite(value: unknown, path = ""): string[] {
  if (typeof value === "number") return Number.isFinite(value) ? [] : [`${path} = ${value}`];
  if (typeof value !== "object" || value === null) return [];
  return Object.entries(value).flatMap(([key, child]) => notFinite(child, `${path}.${key}`));
}

const notch = (keys: string): string => fiveLines.replace("400 gal/min", `{ notch: { ${keys} } }`);
const site = (keys: string): string => `${fiveLines}\nsite: { ${keys} }`;

describe("a number that nothing physical can have", () => {
  it.each([
    [
      customary.replace("70 % ± 5 %", "150 %"),
      "s.yaml:13:22: survey/range: wheel.efficiency = 150 % is above 100 %; from 0 % to 100 % is possible, such as 70 %.",
    ],
    [
      customary.replace("80 % ± 5 %", "101 %"),
      "s.yaml:14:24: survey/range: machine.efficiency = 101 % is above 100 %; from 0 % to 100 % is possible, such as 80 %.",
    ],
    [
      fiveLines.replace("400 gal/min", "{ flow: 400 gal/min, leave: 150 % }"),
      "s.yaml:2:37: survey/range: stream.leave = 150 % is above 100 %; from 0 % to 100 % is possible, such as 30 %.",
    ],
    [
      `${fiveLines}\njets: { coefficient: 1.2, velocity coefficient: 1.01 }`,
      [
        "s.yaml:6:22: survey/range: jets.coefficient = 1.2 is above 1; from 0 to 1 is possible, such as 0.95.",
        "s.yaml:6:49: survey/range: jets.velocity coefficient = 1.01 is above 1; from 0 to 1 is possible, such as 0.97.",
      ].join("\n"),
    ],
    [
      site("water temperature: -20 °C"),
      "s.yaml:6:28: survey/range: site.water temperature = -20 °C is below 0 °C; from 0 °C to 100 °C is possible, such as 50 °F.",
    ],
    [
      site("latitude: 91°"),
      "s.yaml:6:19: survey/range: site.latitude = 91° is above 90°; from -90° to 90° is possible, such as 41°.",
    ],
    [
      site("elevation: 10000 km"),
      "s.yaml:6:20: survey/range: site.elevation = 10000 km is above 9000 m; from -450 m to 9000 m is possible, such as 1,250 ft.",
    ],
    [
      fiveLines.replace("300 ft", "{ length: 300 ft, temperature: -250 °C }"),
      "s.yaml:4:39: survey/range: cable.temperature = -250 °C is below -60 °C; from -60 °C to 150 °C is possible, such as 40 °C.",
    ],
    [
      notch("shape: V, angle: 200°, head: 3 in, sill: 1 ft, channel: 2 m"),
      "s.yaml:2:37: survey/range: stream.notch.angle = 200° is above 179°; from 1° to 179° is possible, such as 90°.",
    ],
    [
      notch("shape: rectangular, width: 5 m, head: 3 in, channel: 2 m"),
      "s.yaml:2:73: survey/range: stream.notch.channel = 2 m is narrower than the notch in it (5 m); write the width of the channel that brings the water.",
    ],
  ])("is refused where it stands (%#)", (text, message) => {
    expect(refusal(text)).toBe(message);
  });

  it.each([
    customary.replace("70 % ± 5 %", "100 %"),
    site("water temperature: 0 °C, latitude: -90°, elevation: -400 m"),
    notch("shape: rectangular, width: 2 m, head: 3 in, channel: 2 m"),
  ])("is taken at its very bound (%#)", (text) => {
    expect(refusal(text)).toBe("");
    expect(notFinite(designed(text).numbers)).toEqual([]);
  });

  it("is told in a second for five thousand rows that are wrong", () => {
    const text = `reaches:\n${"  - { a: 1 }\n".repeat(5000)}`;
    // Each row: an unknown key and no length; besides, four sections are missing.
    expect(refusal(text).split("\n")).toHaveLength(10_004);
  });
});

describe("a survey of which no scheme can be made", () => {
  it.each([["400 gal/min"], ["500 gal/min"], ["100 %"]])(
    "says that nothing may be taken where %s must stay",
    (leave) => {
      const why = reason(
        fiveLines.replace("400 gal/min", `{ flow: 400 gal/min, leave: ${leave} }`),
      );
      expect(why).toMatchObject({ code: "nothing-to-take", path: ["stream", "leave"] });
      // 400 gal/min is 25.2 L/s.
      expect(why?.message).toContain("all that was measured (25.2 L/s): nothing may be taken.");
    },
  );

  it("says that a hair of a pipe passes nothing to the nozzles", () => {
    const why = reason(
      `${fiveLines.replace("900 ft", "{ length: 900 ft, bore: 0.001 mm, roughness: 0.0001 mm }")}\njets: { nozzles: [20 mm] }`,
    );
    expect(why?.message).toBe(
      "the pipe takes all of the 33.5 m of fall before the nozzles pass any water: nothing is left for the jets. Name a wider pipe.",
    );
    expect(why?.code).toBe("pipe-cannot-carry");
  });

  it("says that a wall is rougher than the pipe is wide", () => {
    const why = reason(
      fiveLines.replace("900 ft", "{ length: 900 ft, bore: 4 mm, roughness: 5 mm }"),
    );
    expect(why?.message).toBe(
      "reach 1 would be rougher (5.00 mm) than it is wide (4.00 mm): no water passes. Check the unit of its bore and of its roughness.",
    );
    expect(why).toMatchObject({ code: "rougher-than-wide", path: ["reaches", 0] });
  });

  it("says that there is no fall where the gauge hangs too far below the nozzles", () => {
    // By hand: 10 psi is 7.03 m of water; 30 ft lower is −9.14 m: −2.1 m.
    const why = reason(
      fiveLines.replace("110 ft", "{ gauge: 10 psi, gauge above nozzles: -30 ft }"),
    );
    expect(why).toMatchObject({ code: "no-fall", path: ["fall"] });
    expect(why?.message).toBe(
      "the fall comes out as -2.1 m: the water must stand above the nozzles. Check the reading, and whether the gauge lies above or below them.",
    );
  });
});

describe("300 surveys of numbers from far too small to far too large", () => {
  /** Around a usual size three times of four, else anywhere within six powers of ten. */
  const size = (usual: number): fc.Arbitrary<string> =>
    fc
      .tuple(
        fc.integer({ min: 10, max: 99 }),
        fc.oneof(
          { weight: 3, arbitrary: fc.constant(0) },
          { weight: 1, arbitrary: fc.integer({ min: -6, max: 6 }) },
        ),
      )
      .map(([digits, power]) => (digits * usual * 10 ** (power - 1)).toPrecision(3));
  const maybe = (arbitrary: fc.Arbitrary<string>): fc.Arbitrary<string> =>
    fc.option(arbitrary, { nil: "" });
  const whole = fc
    .record({
      fall: size(10).map((n) => `fall: { gross: ${n} m }`),
      stream: fc.tuple(
        size(3),
        maybe(
          fc.oneof(
            size(1).map((n) => `, leave: ${n} L/s`),
            size(10).map((n) => `, leave: ${n} %`),
          ),
        ),
      ),
      reach: fc.tuple(
        size(50),
        maybe(size(60).map((n) => `, bore: ${n} mm`)),
        maybe(size(0.01).map((n) => `, roughness: ${n} mm`)),
        maybe(size(0.5).map((n) => `, fittings: [{ k: ${n} }]`)),
      ),
      jets: maybe(size(4).map((n) => `jets: { nozzles: [${n} mm] }`)),
      wheel: maybe(
        fc
          .tuple(size(10), size(0.1))
          .map(([n, d]) => `wheel: { efficiency: ${n} %, diameter: ${d} m }`),
      ),
      cable: fc.tuple(size(20), maybe(size(10).map((n) => `, temperature: ${n} °C`))),
      volts: size(12),
      place: maybe(size(9).map((n) => `site: { elevation: ${n} m, latitude: ${n}° }`)),
    })
    .map(({ fall, stream, reach, jets, wheel, cable, volts, place }) =>
      [
        fall,
        `stream: { flow: ${stream[0]} L/s${stream[1]} }`,
        `reaches: { length: ${reach[0]} m${reach.slice(1).join("")} }`,
        jets,
        wheel,
        `cable: { length: ${cable[0]} m${cable[1]} }`,
        `bank: { volts: ${volts} V }`,
        place,
      ]
        .filter((line) => line !== "")
        .join("\n"),
    );

  it("give finite numbers, or a reason in words", () => {
    let made = 0;
    fc.assert(
      fc.property(whole, (text) => {
        try {
          const { survey, assumed } = readSurvey(text, "s.yaml");
          const { design, numbers } = designScheme(survey, assumed);
          made += 1;
          expect(notFinite(numbers)).toEqual([]);
          expect(notFinite(JSON.parse(JSON.stringify(design)))).toEqual([]);
          expect(JSON.stringify(design)).not.toMatch(/\b(NaN|Infinity|undefined)\b/u);
        } catch (error) {
          if (!(error instanceof FileError || error instanceof UnbuildableError)) throw error;
          expect(error.message).not.toMatch(/\b(NaN|Infinity|undefined)\b/u);
        }
      }),
      { numRuns: 300, seed: 31 },
    );
    expect(made).toBeGreaterThan(20);
  });
});
