import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

import { exit, run } from "@leat/cli";
import { afterAll, describe, expect, it } from "vitest";

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
      'leat: "desing" is not a command; there are measure, design and schema\nSee leat --help.\n',
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
    ["a folder", () => folder, "file/folder: this is a folder. Name the survey file in it."],
    [
      "bytes that are no text",
      () => file("bytes.yaml", new Uint8Array([0x66, 0xff, 0xfe])),
      "file/not-text: this is not text in UTF-8. Save the survey as plain text.",
    ],
    [
      "10 MB",
      () => file("big.yaml", "a: b\n".repeat(2_000_000)),
      "file/too-large: the file has 10000000 bytes, and a survey a few thousand. Is it the right file?",
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
