import { describe, expect, it } from "vitest";

import { logged, problemsOf } from "./measuring.ts";

const notch = "shape: V, angle: 90°, head: 150 mm, sill: 0.5 m, channel: 2 m";
const floats = "stretch: 12 m, times: [20 s]";
const meter = (verticals: string, edges = "{ at: 0 m }, { at: 2 m }"): string =>
  `meter: { edges: [${edges}], verticals: [${verticals}] }`;
const record = "{ file: days.csv, date: Date, date form: YYYY-MM-DD, flow: Flow, flow unit: L/s }";

describe("what keys of a survey ask of one another", () => {
  it.each([
    // A list and a single measurement, and two ways of measuring.
    [
      "stream: { flow: 12 L/s, measured: [{ flow: 12 L/s }] }",
      "stream.measured stands beside flow; give one way of measuring.",
    ],
    [
      "stream: { on: 2026-08-14, measured: [{ flow: 12 L/s }] }",
      "stream.on stands beside measured; write it into a row of the list.",
    ],
    [
      `stream: { flow: 12 L/s, notch: { ${notch} } }`,
      "stream.notch stands beside flow; give one way of measuring.",
    ],
    [
      "stream: { measured: [{ flow: 12 L/s, bucket: [{ volume: 20 L, time: 10 s }] }] }",
      "stream.measured.1.bucket stands beside flow; give one way of measuring.",
    ],
    [
      "stream: { measured: [{ on: 2026-08-14 }] }",
      "stream.measured.1 has no flow, notch, crest, bucket, floats, meter, salt, salt feed, nozzles, staff; write one of them.",
    ],
    [
      "stream: { leave: 30 % }",
      "stream has no flow, notch, crest, bucket, floats, meter, salt, salt feed, nozzles, staff, measured; write one of them.",
    ],
    [
      "stream: 12 L/s\nfall: { measured: [{ gross: 30 m, gauge: 3 bar }] }",
      "fall.measured.1.gauge stands beside gross; give one way of measuring.",
    ],
    // Notches.
    [
      "stream: { notch: { shape: V, head: 150 mm, sill: 0.5 m, channel: 2 m } }",
      "stream.notch is a V notch and has no angle; write it.",
    ],
    [
      "stream: { notch: { shape: V, angle: 90°, head: 150 mm, channel: 2 m } }",
      "stream.notch is a V notch and has no sill; write it.",
    ],
    [
      "stream: { notch: { shape: V, angle: 90°, head: 150 mm, sill: 0.5 m } }",
      "stream.notch is a V notch and has no channel; write it.",
    ],
    [
      "stream: { notch: { shape: trapezoidal, head: 150 mm } }",
      "stream.notch is a trapezoidal notch and has no width; write it.",
    ],
    [
      "stream: { notch: { shape: rectangular, width: 0.5 m, angle: 90°, head: 150 mm } }",
      "stream.notch.angle is not of a rectangular notch; leave it out.",
    ],
    [
      `stream: { notch: { ${notch}, width: 1 m } }`,
      "stream.notch.width is not of a V notch; leave it out.",
    ],
    [
      "stream: { notch: { shape: rectangular, width: 0.5 m, channel: 400 mm, head: 150 mm } }",
      "stream.notch.channel = 400 mm is narrower than the notch in it (0.5 m); write the width of the channel that brings the water.",
    ],
    [
      "stream: { flow: 12 L/s, board: { shape: V, sill: 0.5 m, channel: 2 m, from: 60 mm, to: 200 mm, division: 10 mm } }",
      "stream.board is a V notch and has no angle; write it.",
    ],
    // A staff.
    [
      "stream: { staff: { readings: [0.3 m], read to: 10 mm } }",
      "stream.staff needs the flows that were measured at its readings, in one place: gaugings, or gaugings file.",
    ],
    [
      "stream: { staff: { readings: [0.3 m], read to: 10 mm, gaugings: [{ stage: 0.2 m, flow: 1 L/s }], gaugings file: { file: r.csv, stage: S, stage unit: m, flow: Q, flow unit: L/s } } }",
      "stream.staff needs the flows that were measured at its readings, in one place: gaugings, or gaugings file.",
    ],
    // Floats.
    [
      `stream: { floats: { ${floats}, sections: [{ area: 1 m² }, { width: 2 m }], bed: cobbles } }`,
      "stream.floats.sections.2 needs either an area, or a width and depths.",
    ],
    [
      `stream: { floats: { ${floats}, sections: [{ area: 1 m², width: 2 m }], bed: cobbles } }`,
      "stream.floats.sections.1 needs either an area, or a width and depths.",
    ],
    [
      `stream: { floats: { ${floats}, sections: [{ area: 1 m² }] } }`,
      "stream.floats needs one thing to take the coefficient from: coefficient, bed or depth.",
    ],
    [
      `stream: { floats: { ${floats}, sections: [{ area: 1 m² }], bed: cobbles, depth: 1 ft } }`,
      "stream.floats needs one thing to take the coefficient from: coefficient, bed or depth.",
    ],
    // A meter.
    [
      `stream: { ${meter("{ at: 1 m, depth: 0.5 m, two tenths: 0.3 m/s }")} }`,
      "stream.meter.verticals.1 has two tenths; a vertical is read at the surface, at six tenths, or at two and eight tenths, with six tenths between them or without.",
    ],
    [
      `stream: { ${meter("{ at: 1 m, depth: 0.5 m, surface: 0.4 m/s, six tenths: 0.3 m/s }")} }`,
      "stream.meter.verticals.1 has surface, six tenths; a vertical is read at the surface, at six tenths, or at two and eight tenths, with six tenths between them or without.",
    ],
    [
      `stream: { ${meter("{ at: 1 m, depth: 0.5 m, six tenths: 0.3 m/s }", "{ at: 0 m, share: 0.6 }, { at: 2 m }")} }`,
      "stream.meter.edges.1.share is of the velocity at an upright bank; write the depth there, or leave it out.",
    ],
    // Salt.
    [
      `stream: { salt: { mass: 1 kg, temperature: 8 °C, probes: [{ file: a.csv, ${logged}, temperature: T, temperature unit: °C }] } }`,
      "stream.salt.temperature stands beside the temperatures in the files of the probes; give one of them.",
    ],
    // The year.
    [
      `stream: { record: ${record}, gauged: { record: ${record} } }`,
      "stream.gauged stands beside record; give one of them.",
    ],
    [
      "stream: { flow: 12 L/s, leave: 30 %, leave by rules: { flow: 4 L/s } }",
      "stream.leave by rules stands beside leave; give one of them.",
    ],
    [
      "stream: { flow: 12 L/s, leave by rules: { tennant: good } }",
      "stream.leave by rules has tennant and no low months; write it.",
    ],
    [
      "stream: { flow: 12 L/s, leave by rules: { flow: 4 L/s, take above: 50 % } }",
      "stream.leave by rules has take above and no hands off; write it.",
    ],
    [
      "stream: { flow: 12 L/s, leave by rules: { most: 4 L/s } }",
      "stream.leave by rules says of nothing that it must stay; write a rule, or flow: 0 L/s.",
    ],
    // A gauge, and what is of a gauge only.
    [
      "stream: 12 L/s\nfall: { gauge: 3 bar, read to: 0.1 m }",
      "fall.read to is a length, and the reading a pressure; write a division of the instrument that was read.",
    ],
    [
      "stream: 12 L/s\nfall: { gross: 30 m, read to: 0.1 bar }",
      "fall.read to is a pressure, and the reading a length; write a division of the instrument that was read.",
    ],
    [
      "stream: 12 L/s\nfall: { map: { upper: 300 m, lower: 200 m, interval: 20 m }, read to: 0.1 m }",
      "fall.read to is of a gauge or of a stated fall, and neither is here; leave it out.",
    ],
    [
      'stream: 12 L/s\nfall: { gauge: 3 bar, class: "1.6" }',
      "fall.class stands without full scale; write both, as they stand on the dial.",
    ],
    [
      "stream: 12 L/s\nfall: { gross: 3 bar, full scale: 10 bar }",
      "fall.full scale stands without class; write both, as they stand on the dial.",
    ],
    [
      "stream: 12 L/s\nfall: { gross: 30 m, gauge above nozzles: 1 m }",
      "fall.gauge above nozzles is of a gauge, and no gauge was read; leave it out.",
    ],
  ])("%s", (text, message) => {
    expect(problemsOf(text).map((problem) => problem.message)).toEqual([message]);
  });

  it("may be met: nothing is wrong with a gauge that is given as the fall, with all that stands on its dial", () => {
    expect(() =>
      problemsOf('stream: 12 L/s\nfall: { gross: 3 bar, full scale: 10 bar, class: "1.6" }'),
    ).toThrow("nothing is wrong with it");
  });
});

describe("a key that is not known", () => {
  it.each([
    [
      `stream: { notch: { ${notch}, tailwater: 10 mm } }`,
      "stream.notch.tailwater is not known here; is it tail water? Known are shape, angle, width, sill, channel, head, read to, tail water.",
    ],
    [
      "stream: { measured: [{ buckets: [{ volume: 20 L, time: 10 s }] }] }",
      "stream.measured.1.buckets is not known here; is it bucket?",
    ],
    [
      "stream: 12 L/s\nfall: { measured: [{ gross: 30 m, on: 2026-08-14 }] }",
      "fall.measured.1.on is not known here; is it",
    ],
    [
      `stream: { ${meter("{ at: 1 m, depth: 0.5 m, six tenth: 0.3 m/s }")} }`,
      "stream.meter.verticals.1.six tenth is not known here; is it six tenths?",
    ],
  ])("%s", (text, message) => {
    expect(problemsOf(text)[0]?.message).toContain(message);
  });
});

describe("a word that is not known", () => {
  it("is answered with the words that are, quoted where they have a comma in them", () => {
    const [problem] = problemsOf(
      `stream: { floats: { ${floats}, sections: [{ area: 1 m² }], bed: gravel } }`,
    );
    expect(problem?.message).toBe(
      'stream.floats.bed = "gravel" is not known here; write one of "lined or planed channel", "mud, sand or fine gravel", "cobbles", "boulders or shallow riffle".',
    );
  });
});
