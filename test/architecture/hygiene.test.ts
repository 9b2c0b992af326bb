import { describe, expect, it } from "vitest";

import { hygieneProblems } from "../tools/hygiene.ts";
import { filesUnder, readText } from "../tools/tree.ts";

/** What the check says of one line; `·` keeps the words out of this file. */
function problemsOf(line: string): string[] {
  return hygieneProblems([{ path: "notes.md", text: `first\n${line.replaceAll("·", "")}\n` }]);
}

describe("the repository's text", () => {
  it("names no one machine and tells nothing of how it came about", () => {
    const files = filesUnder().filter((path) => path !== "pnpm-lock.yaml");
    expect(files).toContain("package.json");
    expect(hygieneProblems(files.map(readText))).toEqual([]);
  });

  it.each([
    ["see /wo·rk/main/x.ts", "is a path of one machine"],
    ["path: '/ro·ot/.npmrc'", "is a path of one machine"],
    ["in /ho·me/someone/leat", "is a path of one machine"],
    ["in C:·\\Projects\\leat", "is a path of one machine"],
    ["from https:/·/registry.example.org/", "names a registry host"],
    ["from npm·js.org", "names a registry host"],
    ["written by Clau·de", "names a writing tool"],
    ["as a language mo·del", "names a writing tool"],
    ["as the tran·script says", "speaks of how the work is organised"],
    ["a sub·agent wrote it", "speaks of how the work is organised"],
    ["Co-Auth·ored-By: someone", "speaks of how the work is organised"],
    ["closes iss·ue #12", "cites the number of an issue"],
    ["<<<·<<<< HEAD", "is left of a merge"],
  ])("is refused with: %s", (line, why) => {
    expect(problemsOf(line)).toEqual([`notes.md:2: ${why}`]);
  });

  it.each(["the work/rest cycle", "tests read ../shared/reference/data", "an issue of water"])(
    "may say: %s",
    (line) => {
      expect(problemsOf(line)).toEqual([]);
    },
  );
});
