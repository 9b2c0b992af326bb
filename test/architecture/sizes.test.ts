import { describe, expect, it } from "vitest";

import { ceilingProblems } from "../tools/bundles.ts";
import type { Ceiling } from "../tools/bundles.ts";
import { root } from "../tools/tree.ts";

const heavy = ["mathjs", "yaml", "zod"];

const ceilings: Ceiling[] = [
  { code: `export * from "@leat/quantity";`, bytes: 10 * 1024, mustNotContain: heavy },
  // Each with what it needs of the main entry.
  { code: `export * from "@leat/quantity/text";`, bytes: 12 * 1024, mustNotContain: heavy },
  { code: `export * from "@leat/quantity/column";`, bytes: 9 * 1024, mustNotContain: heavy },
  {
    code:
      `export { vNotchDischarge } from "@leat/flow-measurement"; ` +
      `export { metre, millimetre, degree, litrePerSecond, format } from "@leat/quantity";`,
    bytes: 12 * 1024,
    mustNotContain: heavy,
  },
  // Not a promise about its size: only scheme/read may bring the readers of files.
  { code: `export * from "@leat/scheme";`, bytes: 200 * 1024, mustNotContain: heavy },
];

describe("sizes", () => {
  it.each(ceilings)("are kept: $code", async (ceiling) => {
    expect(await ceilingProblems(ceiling, root)).toEqual([]);
  });

  it("are seen to be too large", async () => {
    const code = `export { kilometre } from "data:text/javascript,export const kilometre = 1000";`;
    const [problem] = await ceilingProblems({ code, bytes: 10, mustNotContain: [] }, root);
    expect(problem).toMatch(/ takes \d+ bytes of 10$/u);
    expect(await ceilingProblems({ code, bytes: 100, mustNotContain: [] }, root)).toEqual([]);
  });

  it("are seen to hold what they must not", async () => {
    const code = `import * as z from "zod/mini"; export const one = z.number();`;
    expect(
      await ceilingProblems({ code, bytes: 50_000, mustNotContain: ["yaml", "zod"] }, root),
    ).toEqual([`${code} brings zod along`]);
    expect(await ceilingProblems({ code, bytes: 50_000, mustNotContain: ["yaml"] }, root)).toEqual(
      [],
    );
  });
});
