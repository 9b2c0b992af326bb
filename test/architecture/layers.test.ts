import { describe, expect, it } from "vitest";

import { layerProblems } from "../tools/layers.ts";
import { packageIn, planted, readTree } from "../tools/tree.ts";

const tree = readTree();
const standing = layerProblems(tree);

/** What the check says anew once one package depends on another. */
function problemsWith(folder: string, dependency: string): string[] {
  return layerProblems(
    planted(tree, (copy) => {
      const { manifest } = packageIn(copy, folder);
      manifest.dependencies = { ...manifest.dependencies, [dependency]: "workspace:^" };
    }),
  ).filter((problem) => !standing.includes(problem));
}

describe("layers", () => {
  it("are only ever gone down", () => {
    expect(standing).toEqual([]);
  });

  it("refuse a sibling", () => {
    expect(problemsWith("penstock", "@leat/impulse-turbine")).toEqual([
      "penstock (layer 3) may not depend on impulse-turbine (layer 3)",
    ]);
  });

  it("refuse a higher one", () => {
    expect(problemsWith("quantity", "@leat/formula")).toEqual([
      "quantity (layer 0) may not depend on formula (layer 1)",
    ]);
  });

  it("refuse a package that has none", () => {
    expect(problemsWith("penstock", "@leat/mill")).toEqual([
      "penstock depends on @leat/mill, which has no layer",
    ]);
  });
});
