import { describe, expect, it } from "vitest";

import {
  cloud,
  type Files,
  fallBy,
  flowBy,
  logged,
  measure,
  problemsOf,
  refusalOf,
  said,
} from "./measuring.ts";

const salt = (file: string, more = ""): string =>
  `stream:\n  salt:\n    mass: 100 g\n    probes:\n      - { file: ${file}, ${logged} }\n${more}`;
const calibration = (file: string): string =>
  `    calibration:\n      water: 1 L\n      solution: 10 g/L\n      made with: stream water\n      readings: { file: ${file}, added: Added, added unit: mL, conductivity: EC, conductivity unit: µS/cm }\n`;
const gaugings =
  "gaugings: [{ stage: 0.2 m, flow: 10 L/s }, { stage: 0.3 m, flow: 30 L/s }, { stage: 0.4 m, flow: 60 L/s }]";

const files: Files = {
  "left.csv": cloud(1.2),
  "flat.csv": cloud(0),
  "short.csv": "Time,EC\n0,62\n5,62\n",
  "back.csv": "Time,EC\n0,62\n5,62\n3,63\n",
  "falls.csv": "Added,EC\n0,62\n2,103\n4,101\n6,180\n",
  "twice.csv": "Added,EC\n0,62\n2,103\n2,140\n6,180\n",
  "two.csv": "Added,EC\n0,62\n2,103\n",
};

describe("what cannot be is refused in the survey, at its line and column", () => {
  it.each<[what: string, text: string, problem: string]>([
    [
      "a negative time",
      "stream:\n  bucket:\n    - { volume: 20 L, time: 10 s }\n    - { volume: 20 L, time: -10 s }\n",
      "creek.yaml:4:29: survey/sign: stream.bucket.2.time = -10 s is negative; a time above zero is needed. Check its sign.",
    ],
    [
      "a time of nothing",
      "stream:\n  floats: { stretch: 10 m, times: [10 s, 0 s], sections: [{ area: 1 m² }], bed: cobbles }\n",
      "creek.yaml:2:42: survey/sign: stream.floats.times.2 = 0 s is zero; a time above zero is needed. Check its sign.",
    ],
    [
      "a file that is not there",
      salt("nowhere.csv"),
      "creek.yaml:5:17: file/missing: nowhere.csv: there is no such file. Check its name and folder.",
    ],
    [
      "a path out of the folder",
      salt("../left.csv"),
      "creek.yaml:5:17: survey/path: stream.salt.probes.1.file = ../left.csv leaves the folder of the survey (..); write the name of a file beside the survey, such as record.csv or data/record.csv.",
    ],
    [
      "two probes with one file",
      salt("left.csv", `      - { file: left.csv, ${logged} }\n`),
      "creek.yaml:6:17: survey/two-ways: stream.salt.probes.2.file is the file of the first probe; write that of the second, or leave it out.",
    ],
    [
      "times that fall, in the file",
      salt("back.csv"),
      "back.csv:4:1: series/time-order: Time 3 is before that of line 3, 5. Put the rows in the order of their times.",
    ],
    [
      "a calibration whose additions do not rise, in the file",
      salt("left.csv", calibration("twice.csv")),
      "twice.csv:4:1: calibration/order: Added 2 mL is not above that of line 3, 2 mL. Write the volume added so far, in all.",
    ],
    [
      "a board that ends below where it begins",
      "stream:\n  flow: 12 L/s\n  board: { shape: rectangular, width: 1 m, sill: 0.5 m, channel: 2 m, from: 200 mm, to: 100 mm, division: 10 mm }\n",
      "creek.yaml:3:89: survey/range: stream.board.to = 100 mm is not above from (200 mm); write the highest mark of the ruler.",
    ],
    [
      "a board of too many lines",
      "stream:\n  flow: 12 L/s\n  board: { shape: rectangular, width: 1 m, sill: 0.5 m, channel: 2 m, from: 1 mm, to: 900 mm, division: 1 mm }\n",
      "creek.yaml:3:105: survey/range: stream.board.division = 1 mm makes 900 lines, and a board has at most 500; write a coarser division.",
    ],
  ])("%s", (_, text, problem) => {
    expect(
      problemsOf(text, files).map(
        ({ file, line, column, code, message }) => `${file}:${line}:${column}: ${code}: ${message}`,
      ),
    ).toEqual([problem]);
  });

  it("a survey that is read without its folder", () => {
    expect(problemsOf(salt("left.csv"), {})[0]?.code).toBe("file/missing");
  });
});

describe("what no stream can have is refused with its line", () => {
  it.each<[what: string, text: string, line: number, path: string, message: string]>([
    [
      "salt that nothing shows of",
      salt("flat.csv"),
      5,
      "stream.salt.probes.0.conductivity",
      "flat.csv: no cloud of salt stands out of the scatter of 0 µS/cm. Give window and background if you see one, or throw in more salt.",
    ],
    [
      "a record of two readings",
      salt("short.csv"),
      5,
      "stream.salt.probes.0.conductivity",
      "short.csv: conductivity has 2 good readings of 2. Give a record with the background before and after.",
    ],
    [
      "a window beyond the record",
      salt("left.csv", "    window: { from: 2000 s, to: 3000 s }\n"),
      6,
      "stream.salt.window",
      "left.csv: window, 2000 s to 3000 s, holds fewer than two good readings; the record has 0 s to 1195 s.",
    ],
    [
      "raw readings without a temperature",
      salt("left.csv").replace("compensated", "raw"),
      3,
      "stream.salt.calibration",
      "left.csv: the readings are raw and have no temperature, the factor (without calibration) is of conductivity at 25 °C. Give the temperature of the water.",
    ],
    [
      "a calibration whose conductivity falls, by the line of its file",
      salt("left.csv", calibration("falls.csv")),
      10,
      "stream.salt.calibration.readings.2.conductivity",
      "falls.csv: readings, line 4: conductivity = 101 µS/cm does not rise with the salt. Check the row.",
    ],
    [
      "a calibration of two readings",
      salt("left.csv", calibration("two.csv")),
      10,
      "stream.salt.calibration.readings",
      "two.csv: 2 readings make no line with an error. Take five or more, the first without salt.",
    ],
    [
      "a plateau that is none",
      `stream:\n  salt feed:\n    rate: 1 L/min\n    solution: 100 g/L\n    probes: [{ file: flat.csv, ${logged} }]\n`,
      5,
      "stream.salt feed.probes.0.conductivity",
      "flat.csv: no plateau of 10 readings over a background was found. Feed the salt for longer, log from before it begins, or give background and plateau.",
    ],
    [
      "tail water as high as the head",
      "stream:\n  notch:\n    shape: V\n    angle: 90°\n    head: 100 mm\n    sill: 0.5 m\n    channel: 2 m\n    tail water: 100 mm\n",
      8,
      "stream.notch.tail water",
      "tail water = 100 mm is not below the head, 100 mm: nothing flows. Read both again, over the same sill.",
    ],
    [
      "the same over a crest",
      "stream:\n  crest:\n    head: 100 mm\n    width: 1 m\n    length: 0.4 m\n    sill: 0.3 m\n    tail water: 110 mm\n",
      7,
      "stream.crest.tail water",
      "tail water = 110 mm is not below the head, 100 mm: nothing flows. Read both again, over the same sill.",
    ],
    [
      "a staff read below the stage of zero flow",
      `stream:\n  staff:\n    readings: [0.05 m]\n    read to: 10 mm\n    zero: 0.1 m\n    ${gaugings}\n`,
      3,
      "stream.staff.stage",
      "stage = 0.05 m over the staff is below that of zero flow, 0.1 m over the staff. Nothing passes the control, or the staff was misread.",
    ],
    [
      "a gauging below the stage of zero flow",
      `stream:\n  staff:\n    readings: [0.3 m]\n    read to: 10 mm\n    zero: 0.25 m\n    ${gaugings}\n`,
      6,
      "stream.staff.gaugings.0.stage",
      "gauging 1: stage = 0.2 m over the staff is not above the stage of zero flow, 0.25 m over the staff, yet 10 L/s was measured. Correct the row or the zero.",
    ],
    [
      "two gaugings",
      "stream:\n  staff: { readings: [0.3 m], read to: 10 mm, gaugings: [{ stage: 0.2 m, flow: 10 L/s }, { stage: 0.3 m, flow: 30 L/s }] }\n",
      2,
      "stream.staff.gaugings",
      "2 gaugings give a line through them and say nothing of how far it is off. Measure three or more.",
    ],
    [
      "verticals out of their order",
      "stream:\n  meter:\n    edges: [{ at: 0 m }, { at: 2 m }]\n    verticals:\n      - { at: 1 m, depth: 0.5 m, six tenths: 0.3 m/s }\n      - { at: 0.8 m, depth: 0.5 m, six tenths: 0.3 m/s }\n",
      6,
      "stream.meter.verticals.1.at",
      "verticals.2.at = 0.8 m is not beyond 1 m of the row before. List the rows along the tape, each place once.",
    ],
    [
      "a vertical that nothing was read in",
      "stream:\n  measured:\n    - flow: 1 L/s\n    - meter:\n        edges: [{ at: 0 m }, { at: 2 m }]\n        verticals:\n          - { at: 1 m, depth: 0.5 m }\n",
      7,
      "stream.measured.1.meter.verticals.0.velocity",
      "verticals.1.velocity is missing, in 0.5 m of water. Measure it, or leave the row out.",
    ],
    [
      "nozzles as wide as their pipe",
      "stream:\n  nozzles:\n    gauge: 3 bar\n    open: [50 mm, 50 mm]\n    bore: 60 mm\n",
      4,
      "stream.nozzles.open",
      "jets are together as wide as the pipe: no pressure would be left to drive them. Check bores and pipe.",
    ],
    [
      "a reading beyond the rod: feet and inches for feet and tenths",
      "stream: 1 L/s\nfall:\n  levels:\n    instrument: builder's level\n    out:\n      - { back: 1.2 ft, fore: 13.4 ft }\n    rod: 13 ft\n",
      6,
      "fall.levels.out.0.fore",
      "out.1.fore = 13.4 ft is beyond the end of a rod of 13 ft. Check the reading and its unit: feet and inches, or feet and tenths?",
    ],
    [
      "steps that go up",
      "stream: 1 L/s\nfall:\n  hose:\n    steps: [1 m, -3 m]\n",
      4,
      "fall.hose.steps",
      "the steps do not add up to a fall. Take them from the upper mark to the lower one, drops above zero.",
    ],
    [
      "a barometer that shows less at the foot",
      "stream: 1 L/s\nfall:\n  barometer:\n    upper: { time: 09:40, reads: 974.1 hPa }\n    lower: { time: 09:40, reads: 970.2 hPa }\n    air: 15 °C\n    division: 0.1 hPa\n",
      4,
      "fall.barometer.upper.reads",
      "the upper station's pressure, 974.1 hPa, is not below the lower one's, 970.2 hPa, at the same moment. See whether the stations are exchanged.",
    ],
    [
      "times out of their order",
      "stream: 1 L/s\nfall:\n  altimeter:\n    upper: { time: 09:40, reads: 450 m }\n    lower: { time: 09:50, reads: 415 m }\n    again: { time: 09:30, reads: 450 m }\n    air: 15 °C\n    division: 1 m\n",
      6,
      "fall.altimeter.again.time",
      "again.time = 09:30 does not follow the other two readings, the last of them at 09:50. Give times of one day in their order.",
    ],
    [
      "heights that were exchanged",
      "stream: 1 L/s\nfall:\n  map:\n    upper: 300 m\n    lower: 371 m\n    interval: 20 m\n",
      4,
      "fall.map.upper",
      "upper = 300 m is not above lower = 371 m. See whether the places are exchanged.",
    ],
    [
      "nozzles above the water",
      "stream: 1 L/s\nfall:\n  gross: 3 m\n  nozzles above lower mark: 5 m\n",
      3,
      "fall",
      "the nozzle is not below the water of the intake: 3 m between the marks, less 5 m to the nozzle, and 0 m to the water. Check the signs.",
    ],
    [
      "a gauge read in the wrong unit",
      'stream: 1 L/s\nfall:\n  gauge: 30 bar\n  full scale: 100 psi\n  class: "1.6"\n',
      3,
      "fall.gauge",
      "gauge = 30 bar is beyond a scale of 100 psi, where no gauge can read. Was it 30 psi?",
    ],
  ])("%s", (_, text, line, path, message) => {
    expect(refusalOf(text, files)).toEqual({ line, path, message });
  });
});

describe("what is odd is told, and counted all the same", () => {
  it("fillings that disagree wildly", () => {
    const flow = flowBy(
      "{ bucket: [{ volume: 20 L, time: 10 s }, { volume: 20 L, time: 10.2 s }, { volume: 20 L, time: 30 s }, { volume: 20 L, time: 10.1 s }] }",
    );
    expect(said(flow, "timed-volume/stands-out")).toMatchObject({
      severity: "caution",
      path: "stream.bucket.2",
    });
    expect(said(flow, "timed-volume/apart")).toEqual({
      severity: "caution",
      path: "stream.bucket.2",
      message:
        "bucket.3, 0.6667 L/s, lies 60 % from the mean of 4 fillings, 1.652 L/s. It is counted all the same. Was all of the flow in the vessel? Time it again.",
    });
  });

  it("a cloud of salt whose tail never returns: a stop", () => {
    const flow = flowBy(`{ salt: { mass: 100 g, probes: [{ file: cut.csv, ${logged} }] } }`, {
      "cut.csv": cloud(1.2, undefined, 45),
    });
    expect(said(flow, "tail-missing")).toMatchObject({
      severity: "stop",
      path: "stream.salt.probes.0.conductivity",
    });
    expect(said(flow, "tail-missing")?.message).toMatch(
      /^cut\.csv: the record ends before the background is back\. An exponential through its end would add \d+ µS·s\/cm, \d+\.\d % of the sum, by which the flow is too great\. Log until the background is back\.$/u,
    );
  });

  it.each<[what: string, fault: Parameters<typeof cloud>[1], code: string, message: RegExp]>([
    [
      "a fault code of the logger",
      (row, reading) => (row === 30 ? -9999 : reading),
      "readings-fault-code",
      /^probe\.csv: line 32 holds? a fault code of the logger\. A straight line bridges/u,
    ],
    [
      "text for a number",
      (row, reading) => (row === 30 ? "lost" : reading),
      "readings-gap",
      /^probe\.csv: line 32 holds? nothing\. A straight line bridges/u,
    ],
    [
      "a spike",
      (row, reading) => (row === 30 ? 240 : reading),
      "readings-spike",
      /^probe\.csv: line 32 stands? apart from the readings on either side\. A straight line bridges/u,
    ],
    [
      "a sensor that is stuck",
      (row, reading) => (row >= 30 && row < 45 ? 80.5 : reading),
      "readings-stuck",
      /^probe\.csv: 14 rows, on lines 33 to 46 are equal while the water changed: the sensor was stuck\. A straight line bridges/u,
    ],
  ])("%s, by the line of its file", (_, fault, code, message) => {
    const flow = flowBy(`{ salt: { mass: 100 g, probes: [{ file: probe.csv, ${logged} }] } }`, {
      "probe.csv": cloud(1.2, fault),
    });
    expect(said(flow, code)?.severity).toBe("caution");
    expect(said(flow, code)?.message).toMatch(message);
    expect(flow.facts.find(({ what }) => what.startsWith("rows at fault in "))?.value).toMatch(
      /^\d+, bridged by straight lines: \d+\.\d % of the sum$/u,
    );
  });

  it("feet entered for inches: a stop that names the likely slip", () => {
    const flow = flowBy(
      "{ notch: { shape: rectangular, width: 2 ft, head: 5 ft, sill: 2 ft, channel: 6 ft } }",
    );
    expect(said(flow, "head-unit")).toEqual({
      severity: "stop",
      path: "stream.notch.head",
      message:
        "head = 5 ft is outside the range of this notch; 5 in would fit. The flow it gives cannot be used: look at the ruler again and correct the survey.",
    });
    expect(said(flow, "kindsvater-carter-discharge/out-of-range")?.severity).toBe("caution");
  });

  it("a head that is too low for the notch: it may be true, and is no stop", () => {
    const flow = flowBy(
      "{ notch: { shape: V, angle: 90°, head: 1 in, sill: 3 ft, channel: 8 ft } }",
    );
    expect(said(flow, "head-unit")).toEqual({
      severity: "caution",
      path: "stream.notch.head",
      message:
        "head = 1 in is outside the range of this notch; 1 ft would fit. Look at the ruler again: if it was read right, the water is too low for this notch.",
    });
  });

  it("a flow that is none, where no form reaches: a stop", () => {
    const flow = flowBy(
      "{ notch: { shape: rectangular, width: 1 m, head: 9.15 ft, sill: 0.01 m, channel: 17.46 m } }",
    );
    expect(said(flow, "no-flow")).toEqual({
      severity: "stop",
      path: "stream.notch",
      message:
        "the flow comes to -0.339 L/s (-5.37 gal/min), which is none. Check the readings: the form does not reach so far.",
    });
  });

  it("a fall that is none, by a gauge that shows less than its zero: a stop", () => {
    // 0.3 bar of water is 3.06 m.
    const fall = fallBy("{ gauge: 0.5 bar, gauge zero: 0.8 bar }");
    expect(said(fall, "no-fall")).toEqual({
      severity: "stop",
      path: "fall",
      message:
        "the fall comes to -3.06 m (-10.0 ft), which is none. Check the readings and their signs.",
    });
  });

  it("a levelling that does not close, with what it looks like", () => {
    const fall = fallBy(
      "{ levels: { instrument: automatic level, out: [{ back: 1.2 m, fore: 3.4 m }], returning: [{ back: 3.4 m, fore: 0.9 m }] } }",
    );
    expect(said(fall, "levelling/does-not-close")).toEqual({
      severity: "caution",
      path: "fall.levels",
      message:
        "out and back are 0.3 m apart, more than the 0.00554 m allowed (what 2 set-ups of this automatic level scatter, at 95 %). Run it again before leaving the site. That is 1 ft, as near as this run can tell: look for one misread.",
    });
  });

  it("a step with its sign wrong, by its row", () => {
    const fall = fallBy("{ plank: { steps: [1 m, 2 m, 0.5 m], again: [1 m, 2 m, -0.5 m] } }");
    expect(said(fall, "plank-levelling/does-not-close")?.message).toContain(
      "That is twice the difference of steps.3: see whether its sign is wrong.",
    );
  });

  it("the same of two measurements is told of both", () => {
    const { flow, notices } = measure(
      "stream:\n  measured:\n    - bucket: [{ volume: 20 L, time: 10 s }]\n    - bucket: [{ volume: 20 L, time: 10.1 s }]\n",
    );
    for (const each of flow!.measurements)
      expect(said(each, "timed-volume/single-filling")).toBeDefined();
    expect(notices.filter(({ code }) => code === "timed-volume/single-filling")).toHaveLength(1);
  });
});
