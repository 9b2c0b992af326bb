import { describe, expect, it } from "vitest";

import { topLevelProblems } from "../tools/top-level.ts";
import { filesUnder } from "../tools/tree.ts";

describe("the top level", () => {
  it("holds what belongs there", () => {
    expect(topLevelProblems(filesUnder())).toEqual([]);
  });

  it("is refused with anything else", () => {
    expect(topLevelProblems(["package.json", "docs/a.md", "notes.txt", "src/a.ts"])).toEqual([
      "notes.txt does not belong at the top of the repository",
      "src does not belong at the top of the repository",
    ]);
  });
});
