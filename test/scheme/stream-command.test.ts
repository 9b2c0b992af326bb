import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

import { exit, run } from "@leat/cli";
import { isQuantity, litrePerSecond } from "@leat/quantity";
import { fromPlain, type StreamYear } from "@leat/scheme";
import { afterAll, describe, expect, it } from "vitest";

const folder = mkdtempSync(join(tmpdir(), "leat-stream-"));
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

/** A survey beside its record. */
function survey(name: string, text: string, rows?: readonly string[]): string {
  if (rows) writeFileSync(join(folder, "creek.csv"), `Date,Flow\n${rows.join("\n")}\n`);
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
}

const record = `stream:
  record: { file: creek.csv, date: Date, date form: YYYY-MM-DD, flow: Flow, flow unit: L/s }
  leave: 2 L/s
`;

/** Two years of days, 6 to 18 L/s. */
const days = Array.from({ length: 730 }, (_, row) => {
  const date = new Date(Date.UTC(2021, 0, 1 + row)).toISOString().slice(0, 10);
  return `${date},${(12 + 6 * Math.cos((2 * Math.PI * row) / 365)).toFixed(1)}`;
});

const hazelBurn = join(import.meta.dirname, "../../docs/examples/hazel-burn.yaml");

describe("leat stream", () => {
  it("prints what is known, the curve, the months, low flows, what may be taken and the hours", async () => {
    const { code, out, err } = await leat("stream", survey("good.yaml", record, days));
    expect([code, err]).toEqual([exit.right, ""]);
    for (const part of [
      "WHAT IS KNOWN\n  daily flows                    its own record\n",
      "730 of 730 have a flow",
      "FLOW DURATION (L/s)",
      "whole years",
      "MONTHS (L/s)",
      "LOW FLOWS",
      "  all year                       2.00 L/s (31.7 gal/min)",
      "may be taken",
      "BUILT FOR",
      "No energy: the survey has no pipe, cable and bank yet.",
      "TAKEN FOR YOU",
      "CAUTIONS (the regulator decides what stays)",
    ]) {
      expect(out).toContain(part);
    }
  });

  it("prints a wide page for no one, and no words of programs", async () => {
    for (const path of [survey("wide.yaml", record, days), hazelBurn]) {
      const { out } = await leat("stream", path);
      expect(out.split("\n").filter((text) => text.length > 92 && !text.includes(path))).toEqual(
        [],
      );
      expect(out).not.toMatch(/NaN|undefined|null|onNotice|\b[a-z]+[A-Z]\w*\(|\brow \d/u);
    }
  });

  it("counts every day of a year once, and all of the water", async () => {
    const { out } = await leat("stream", survey("sums.yaml", record, days));
    const table = out.slice(out.indexOf("BUILT FOR"), out.indexOf("No energy"));
    const rows = [...table.matchAll(/^ +[\d.]+ +(\d+) +(\d+) +(\d+) +[\d.]+/gmu)];
    expect(rows.length).toBeGreaterThan(5);
    for (const [, full, part, idle] of rows) {
      const sum = Number(full) + Number(part) + Number(idle);
      expect(Math.abs(sum - 365.25)).toBeLessThanOrEqual(1.5);
    }
    const shares = [...out.matchAll(/ L\/s, (\d+) % of it/gu)].map(([, n]) => Number(n));
    expect(shares.reduce((a, b) => a + b)).toBe(100);
  });

  it("gives data that is read back as it was", async () => {
    const { code, out } = await leat("stream", survey("data.yaml", record, days), "--json");
    expect(code).toBe(exit.right);
    const plain = JSON.parse(out) as { leat: number; is: string };
    expect([plain.leat, plain.is]).toEqual([1, "stream"]);
    const year = fromPlain(plain) as StreamYear;
    const [january] = year.months;
    expect(isQuantity(january?.mean)).toBe(true);
    // 2 L/s stay of what flows, every day.
    expect(january?.left?.in(litrePerSecond)).toBeCloseTo(2, 9);
    expect(year.record?.used).toBe(730);
    // Days are in the files; the result has sums of them.
    expect(out.length).toBeLessThan(400_000);
  });

  it("tells what is wrong with the record by file, line and column, all at once, twenty of each kind", async () => {
    const rows = days.map((row, i) =>
      i < 30 ? row.replace(/,.*/u, ",much") : i < 33 ? row.replace(/,/u, ",-") : row,
    );
    const { code, out, err } = await leat("stream", survey("bad.yaml", record, rows));
    expect([code, out]).toEqual([exit.input, ""]);
    const lines = err.trim().split("\n");
    const places = lines.map(
      (text) => /creek\.csv:(\d+):(\d+): ([a-z/-]+): /u.exec(text)?.slice(1) ?? [text],
    );
    expect(places.slice(0, 2)).toEqual([
      ["2", "12", "record/number"],
      ["3", "12", "record/number"],
    ]);
    expect(lines.filter((text) => text.includes(": record/number: "))).toHaveLength(20 + 1);
    expect(lines.filter((text) => text.includes(": record/negative: "))).toHaveLength(3);
  });

  it("tells where the survey names a record that is not there", async () => {
    const path = survey("lost.yaml", record.replace("creek.csv", "lost.csv"));
    const { code, err } = await leat("stream", path);
    expect(code).toBe(exit.input);
    expect(err).toContain(`${path}:2:19: file/missing: lost.csv: `);
  });

  it("stops where nothing is known of the year", async () => {
    const path = survey("once.yaml", "stream: { on: 2024-08-14, flow: 12 L/s }\n");
    expect(await leat("stream", path)).toEqual({
      code: exit.stop,
      out: "",
      err: `${path}: STOP year-unknown: stream: nothing is known of the stream through the year: there is no record, no gauged stream, and one measurement on a day that is told. Give a record, or measure once a month and write the day (on).\n`,
    });
  });

  it("tells a rule that the record cannot answer at its line", async () => {
    const rules = record.replace("leave: 2 L/s", "leave by rules: { exceeded: 99.99 % }");
    const path = survey("rules.yaml", rules, days);
    const { code, err } = await leat("stream", path);
    expect(code).toBe(exit.input);
    expect(err).toMatch(/rules\.yaml:3:19: [a-z/-]+: share = 99\.99 % is outside /u);
  });
});

describe("the invented site with everything", () => {
  it.each(["measure", "stream", "design"])("is right for leat %s", async (command) => {
    const { code, out, err } = await leat(command, hazelBurn);
    expect([code, err]).toEqual([exit.right, ""]);
    expect(out.startsWith("Hazel Burn (an invented site)\n")).toBe(true);
  });

  it("agrees with itself: its visits with the gauge, and the ways of each day", async () => {
    const { out } = await leat("stream", hazelBurn);
    expect(out).toContain("carried over by                7 visits on the same days");
    const departures = [...out.matchAll(/carried over [\d.]+: ([+−]?\d+) %/gu)].map(([, n]) =>
      Number(n!.replace("−", "-")),
    );
    expect(departures).toHaveLength(7);
    for (const departure of departures) expect(Math.abs(departure)).toBeLessThanOrEqual(5);
    expect((await leat("measure", hazelBurn)).out).not.toContain("disagree");
  });
});
