import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

import { describe, expect, it, onTestFinished } from "vitest";

import { root } from "../tools/tree.ts";

/** What is counted in a report, for a run that ended with a status. */
function countOf(report: unknown, status: number): string {
  const folder = mkdtempSync(join(tmpdir(), "count-"));
  onTestFinished(() => {
    rmSync(folder, { recursive: true });
  });
  const path = join(folder, "tests.json");
  if (report !== undefined) writeFileSync(path, JSON.stringify(report));
  const script = join(root, "test/tools/count.mjs");
  return spawnSync(process.execPath, [script, path, String(status)], { encoding: "utf8" }).stdout;
}

const green = {
  numPassedTests: 7,
  numFailedTests: 0,
  testResults: [{ status: "passed", assertionResults: [{}] }],
};

describe("the count of a test run", () => {
  it("is the runner's own", () => {
    expect(countOf(green, 0)).toBe("7 0\n");
    const testResults = [{ status: "failed", assertionResults: [{}] }];
    expect(countOf({ ...green, numFailedTests: 2, testResults }, 1)).toBe("7 2\n");
  });

  it("has a failure for each file that could not be run", () => {
    const testResults = [{ status: "failed", assertionResults: [] }];
    expect(countOf({ ...green, testResults }, 1)).toBe("7 1\n");
  });

  it("has a failure for a run that failed in another way", () => {
    expect(countOf(green, 1)).toBe("7 1\n");
    expect(countOf(undefined, 1)).toBe("0 1\n");
    expect(countOf({}, 1)).toBe("0 1\n");
  });
});
