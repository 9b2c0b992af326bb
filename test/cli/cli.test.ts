import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

import { exit, run } from "@leat/cli";
import { litrePerSecond, metre } from "@leat/quantity";
import { fromPlain, type Measurements } from "@leat/scheme";
import { afterAll, describe, expect, it } from "vitest";

import { cloud, logged } from "../scheme/measure/measuring.ts";
import { customary, fiveLines } from "../scheme/surveys.ts";

const folder = mkdtempSync(join(tmpdir(), "leat-"));
afterAll(() => {
  rmSync(folder, { recursive: true, force: true });
});

async function leat(...args: string[]): Promise<{ code: number; out: string; err: string }> {
  const written = { out: "", err: "" };
  const code = await run(args, {
    stdout: { write: (text) => (written.out += text) },
    stderr: { write: (text) => (written.err += text) },
  });
  return { code, ...written };
}

function file(name: string, text: string | Uint8Array): string {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
}

describe("leat", () => {
  it("helps, and tells its version", async () => {
    expect(await leat("--help")).toMatchObject({ code: exit.right, err: "" });
    expect((await leat()).out).toContain("leat design SURVEY.yaml");
    expect((await leat("--version")).out).toMatch(/^\d+\.\d+\.\d+\n$/u);
  });

  it.each([
    [
      ["desing", "x.yaml"],
      'leat: "desing" is not a command; there are measure, stream, design and schema\nSee leat --help.\n',
    ],
    [["design"], "leat: design takes one survey file\nSee leat --help.\n"],
    [["design", "a", "b"], "leat: design takes one survey file\nSee leat --help.\n"],
    [["schema", "a"], "leat: schema takes no file\nSee leat --help.\n"],
    [["--json"], "leat: no command is given\nSee leat --help.\n"],
  ])("refuses %j as wrong usage", async (args, err) => {
    expect(await leat(...args)).toEqual({ code: exit.usage, out: "", err });
  });

  it("refuses an unknown option as wrong usage", async () => {
    expect((await leat("design", "x.yaml", "--jsn")).code).toBe(exit.usage);
  });

  it("designs: the watts with their ±, every loss, what was assumed, cautions", async () => {
    const { code, out, err } = await leat("design", file("five.yaml", fiveLines));
    expect([code, err]).toEqual([exit.right, ""]);
    for (const part of [
      "W ± ",
      "(95 %, k = 1.96)",
      "WHERE THE POWER GOES",
      "− wheel",
      "WHAT WOULD NARROW IT MOST",
      "TAKEN FOR YOU",
      "CAUTIONS",
      "may be taken",
    ]) {
      expect(out).toContain(part);
    }
    expect(out.split("\n").every((line) => line.length <= 100)).toBe(true);
  });

  it("prints a sum that a reader can add up", async () => {
    const { out } = await leat("design", file("us.yaml", customary));
    const rows = [...out.matchAll(/^ {2}([−=w]).* (\d+) W +[\d.]+ %$/gmu)].map(
      ([, sign, watts]) => [sign, Number(watts)] as const,
    );
    const gross = rows[0]![1];
    const losses = rows.filter(([sign]) => sign === "−").reduce((sum, [, watts]) => sum + watts, 0);
    const delivered = rows.at(-1)![1];
    expect(Math.abs(gross - losses - delivered)).toBeLessThanOrEqual(rows.length / 2);
  });

  it("gives the same as data", async () => {
    const { code, out } = await leat("design", file("five.yaml", fiveLines), "--json", "--working");
    const { leat: version, result } = JSON.parse(out) as {
      leat: number;
      result: { working: unknown[]; account: { losses: unknown[] } };
    };
    expect([code, version]).toEqual([exit.right, 1]);
    expect(result.account.losses).toHaveLength(6);
    expect(result.working.length).toBeGreaterThan(10);
  });

  it("shows the working: each formula, its numbers with units, its source", async () => {
    const { out } = await leat("design", file("us.yaml", customary), "--working");
    const working = out.slice(out.indexOf("WORKING"));
    for (const part of [
      "v = Cv · √(2·g·H)",
      "d = 0.6 in = 0.01524 m",
      "T = 50 °F = 283.15 K",
      "source: ",
      "revision 1",
    ]) {
      expect(working).toContain(part);
    }
  });

  it("withholds the watts of a scheme with a stop, prints it first and exits 3", async () => {
    const text = customary.replace("400 gal/min ± 20 gal/min", "80 gal/min");
    const { code, out } = await leat("design", file("stop.yaml", text));
    expect(code).toBe(exit.stop);
    expect(out).not.toContain("W ± ");
    expect(out.indexOf("STOP")).toBeLessThan(out.indexOf("WATER"));
  });

  it("tells why no scheme can be worked out at all, and exits 3", async () => {
    const { code, out, err } = await leat(
      "design",
      file("none.yaml", fiveLines.replace("110 ft", "2000 ft")),
    );
    expect([code, out]).toEqual([exit.stop, ""]);
    expect(err).toContain("none.yaml: STOP pipe-none-strong-enough: ");
  });

  it("tells every problem of a survey with its place, exits 1 and shows no stack", async () => {
    const path = file("bad.yaml", "fall: -110 ft\nstream: 400\n");
    const { code, out, err } = await leat("design", path);
    expect([code, out]).toEqual([exit.input, ""]);
    expect(
      err
        .split("\n")
        .filter(Boolean)
        .every((line) => line.startsWith(`${path}:`)),
    ).toBe(true);
    expect(err).toContain(":1:7: survey/sign: ");
    expect(err).not.toContain("    at ");
  });

  it.each([
    [
      "a file that is not there",
      () => join(folder, "nowhere.yaml"),
      "file/missing: there is no such file. Check its name and folder.",
    ],
    ["a folder", () => folder, "file/folder: this is a folder. Name the file in it."],
    [
      "bytes that are no text",
      () => file("bytes.yaml", new Uint8Array([0x66, 0xff, 0xfe])),
      "file/not-text: this is not text in UTF-8. Save it as plain text.",
    ],
    [
      "10 MB",
      () => file("big.yaml", "a: b\n".repeat(2_000_000)),
      "file/too-large: the file has 10000000 characters, and a survey at most 262144. Is it the right file?",
    ],
  ])("refuses %s", async (_, path, message) => {
    const given = path();
    expect(await leat("design", given)).toEqual({
      code: exit.input,
      out: "",
      err: `${given}:1:1: ${message}\n`,
    });
  });

  it("prints the JSON Schema of the survey", async () => {
    const { code, out } = await leat("schema");
    expect([code, (JSON.parse(out) as { title: string }).title]).toEqual([
      exit.right,
      "Leat survey",
    ]);
  });
});

/** An invented brook, measured in every way that has something to say. */
const brook = `
site: { name: an invented brook, latitude: 41°, elevation: 1200 ft, water temperature: 50 °F }
stream:
  leave: 20 gal/min
  measured:
    - name: notch at the ford
      on: 2026-08-14
      notch: { shape: V, angle: 90°, head: 3 1/2 in, read to: 1/8 in, sill: 1 ft, channel: 5 ft }
      leaks: 1 gal/min
    - on: 2026-08-14
      notch: { shape: rectangular, width: 16 in, head: 1 1/4 in, read to: 1/8 in, sill: 1 ft, channel: 5 ft }
    - on: 2026-08-14
      bucket: [{ volume: 5 gal, time: 5.1 s }, { volume: 5 gal, time: 5.6 s }, { volume: 5 gal, time: 5.3 s }]
    - on: 2026-08-16
      floats: { stretch: 40 ft, times: [21 s, 22 s, 19.5 s, 24 s], sections: [{ width: 6 ft, depths: [3 in, 5 in, 6 in] }, { area: 2.4 ft² }], depth: 5 in }
    - on: 2026-08-16
      meter: { edges: [{ at: 0 ft }, { at: 6 ft }], verticals: [{ at: 2 ft, depth: 8 in, six tenths: 0.9 ft/s }, { at: 4 ft, depth: 6 in, surface: 1 ft/s }] }
    - on: 2026-08-17
      salt:
        mass: 100 g
        probes:
          - { file: left.csv, ${logged} }
          - { file: right.csv, ${logged} }
    - on: 2026-08-18
      staff: { readings: [0.30 m, 0.31 m, 0.30 m], read to: 10 mm, zero: 0.15 m, gaugings: [{ stage: 0.21 m, flow: 9.2 L/s }, { stage: 0.26 m, flow: 24.5 L/s }, { stage: 0.34 m, flow: 67 L/s }] }
fall:
  measured:
    - { name: hose and gauge, gauge: 47.7 psi, full scale: 100 psi, class: "1.6", read to: 1 psi }
    - levels: { instrument: builder's level, out: [{ back: 1.0 ft, fore: 60 ft }, { back: 1.2 ft, fore: 52 ft }], returning: [{ back: 60 ft, fore: 1 ft }, { back: 51.6 ft, fore: 1.2 ft }] }
    - barometer: { upper: { time: 9:40, reads: 970.1 hPa }, lower: { time: 10:10, reads: 974.2 hPa }, air: 60 °F, division: 0.1 hPa }
`;

describe("leat measure", () => {
  file(
    "left.csv",
    cloud(1.2, (row, reading) => (row === 30 ? -9999 : reading)),
  );
  file("right.csv", cloud(1.1));
  file("back.csv", "Time,EC\n0,62\n5,62\n3,63\n");

  it("prints a measurement, its ±, what it is made of and whose its equation is", async () => {
    const path = file("one.yaml", "stream: { bucket: [{ volume: 20 L, time: 10 s }] }\n");
    const { code, out, err } = await leat("measure", path);
    expect([code, err]).toEqual([exit.right, ""]);
    // 2 L/s ± 20 % of one filling and 3 % of the vessel; a gallon a minute is 0.0630901964 L/s.
    expect(out.split("\n").slice(0, 8)).toEqual([
      "one",
      `from ${path}; every ± is 95 % (k = 1.96)`,
      "",
      "FLOW",
      "  timed volume",
      "    it comes to                  2.00 ± 0.40 L/s (31.7 ± 6.4 gal/min)",
      "    the ± is of                  scatter of the fillings 98 %, the vessel's volume 2 %",
      "    fillings                     1",
    ]);
  });

  it("prints parts of one name together, and no more figures than the ± has", async () => {
    const rows = [10, 10, 10].map((t) => `{ volume: 1000 L ± 10 L, time: ${t} s ± 0.3 s }`);
    const text = `stream: { name: weir, bucket: [${rows.join(", ")}] }\n`;
    const { out } = await leat("measure", file("drum.yaml", text));
    // Three timings of 3 %, each another, and a vessel of 1 %: 3 parts of 4, and 2.0 % of 100 L/s.
    expect(out).toContain("it comes to                  100.0 ± 2.0 L/s (1585 ± 32 gal/min)\n");
    expect(out).toContain("the ± is of                  timing 75 %, the vessel's volume 25 %\n");
    expect(out).toContain("FLOW\n  weir, timed volume\n");
  });

  it("prints every one of a survey, and those of a day together", async () => {
    const { code, out, err } = await leat("measure", file("brook.yaml", brook));
    expect([code, err]).toEqual([exit.right, ""]);
    for (const part of [
      "  1. notch at the ford, V notch, 2026-08-14\n",
      "  7. staff and rating, 2026-08-18\n",
      "  together, 2026-08-14\n    they come to   ",
      "    they disagree                the ± is widened, as is told below\n",
      "FALL\n  1. hose and gauge, gauge\n",
      "FLOW BOARD (notch at the ford, V notch)\n      ruler  gal/min",
      "* outside the range of the form: not to be relied on.",
      "20.0 gal/min must stay: the water must stand ",
      "TAKEN FOR YOU",
      "LOOK AT THIS",
      "  flow 6, salt slug: left.csv: line 32 ",
      "NOTES",
      "CAUTIONS (the regulator and local codes come first)\n  Moving water",
    ]) {
      expect(out).toContain(part);
    }
    expect(out).not.toContain("STOP");
  });

  it("prints no line wider than 92 characters, and no words of programs", async () => {
    const { out } = await leat("measure", file("brook.yaml", brook));
    const lines = out.split("\n");
    expect(lines.filter((line) => line.length > 92)).toEqual([]);
    expect(lines.filter((line) => line.endsWith(" "))).toEqual([]);
    const own = out.replaceAll(folder, "");
    expect(own.match(/\b[a-z]{2,}[A-Z]\w*|\b[a-z]+(?:-[a-z]+)+\/|undefined|NaN/gu)).toBeNull();
    expect(own).not.toContain("brook.stream");
    // A number stays with its percent and its ±.
    expect(lines.filter((line) => /^ *%|±$/u.test(line))).toEqual([]);
  });

  it("prints stops first, says which figure they forbid, and exits 3", async () => {
    const text =
      "stream: { measured: [{ flow: 12 L/s }, { notch: { shape: rectangular, width: 2 ft, head: 5 ft, sill: 2 ft, channel: 6 ft } }] }\n";
    const { code, out, err } = await leat("measure", file("feet.yaml", text));
    expect([code, err]).toEqual([exit.stop, ""]);
    expect(out.indexOf("STOP: correct this first\n  flow 2, rectangular notch: head = 5 ft")).toBe(
      out.indexOf("STOP"),
    );
    expect(out.indexOf("STOP")).toBeLessThan(out.indexOf("FLOW"));
    expect(out.match(/: not to be used$/gmu)).toHaveLength(2);
  });

  it("gives the same as data, which is read back as quantities", async () => {
    const { code, out } = await leat("measure", file("brook.yaml", brook), "--json");
    expect(code).toBe(exit.right);
    const plain = JSON.parse(out) as { leat: number; is: string };
    expect([plain.leat, plain.is]).toEqual([1, "measurements"]);
    const { site, flow, fall, boards } = fromPlain(plain) as Measurements;
    expect([site, flow?.measurements.length, fall?.measurements.length, boards.length]).toEqual([
      "an invented brook",
      7,
      3,
      2,
    ]);
    const { value, half } = flow!.measurements[2]!;
    // Three fillings of five gallons.
    const mean = ((1 / 5.1 + 1 / 5.6 + 1 / 5.3) / 3) * 5 * 3.785411784;
    expect(value.in(litrePerSecond)).toBeCloseTo(mean, 9);
    expect(half.in(litrePerSecond)).toBeGreaterThan(0.03 * mean);
    expect(fall!.taken.value.in(metre)).toBeGreaterThan(30);
    expect(boards[0]!.lines[0]!.head.in(metre)).toBeCloseTo(0.0254 / 8, 12);
  });

  it("shows the working: the equation of each, its numbers, its source", async () => {
    const { out } = await leat("measure", file("brook.yaml", brook), "--working");
    const working = out.slice(out.indexOf("WORKING"));
    for (const part of [
      "Q = Σ(V/t) / n",
      "Q = C·Am·Vs",
      "Q = M / (CF · A)",
      "Q = Q1·((h − h0)/h1)^b",
      "h = 3.5 in = 0.0889 m   head",
      "θ = 90° = 1.570796 rad   angle",
      "v-notch-discharge, revision ",
      "within: ",
      "source: ",
    ]) {
      expect(working).toContain(part);
    }
  });

  it.each([
    [
      "a number that cannot be",
      "stream:\n  bucket: [{ volume: 20 L, time: -10 s }]\n",
      ":2:34: survey/sign: stream.bucket.1.time = -10 s is negative; a time above zero is needed. Check its sign.",
    ],
    [
      "a file that is not there",
      `stream: { salt: { mass: 1 kg, probes: [{ file: nowhere.csv, ${logged} }] } }\n`,
      ":1:48: file/missing: nowhere.csv: there is no such file. Check its name and folder.",
    ],
    [
      "a folder for a file",
      `stream: { salt: { mass: 1 kg, probes: [{ file: salt, ${logged} }] } }\n`,
      ":1:48: file/folder: salt: this is a folder. Name the file in it.",
    ],
    [
      "a path out of the folder of the survey",
      `stream: { salt: { mass: 1 kg, probes: [{ file: ../left.csv, ${logged} }] } }\n`,
      ":1:48: survey/path: stream.salt.probes.1.file = ../left.csv leaves the folder of the survey (..); write the name of a file beside the survey, such as record.csv or data/record.csv.",
    ],
    [
      "what no stream can have",
      "stream:\n  notch: { shape: V, angle: 60°, head: 100 mm, sill: 0.5 m, channel: 2 m, tail water: 0.1 m }\n",
      ":2:87: non-physical: tail water = 0.1 m is not below the head, 100 mm: nothing flows. Read both again, over the same sill.",
    ],
  ])("tells of %s with its place, and exits 1", async (_, text, problem) => {
    mkdirSync(join(folder, "salt"), { recursive: true });
    const path = file("bad.yaml", text);
    expect(await leat("measure", path)).toEqual({
      code: exit.input,
      out: "",
      err: `${path}${problem}\n`,
    });
  });

  it("tells of a table with the path of its own file", async () => {
    const text = `stream: { salt: { mass: 1 kg, probes: [{ file: back.csv, ${logged} }] } }\n`;
    const { code, err } = await leat("measure", file("bad.yaml", text));
    expect([code, err]).toEqual([
      exit.input,
      `${join(folder, "back.csv")}:4:1: series/time-order: Time 3 is before that of line 3, 5. Put the rows in the order of their times.\n`,
    ]);
  });
});
