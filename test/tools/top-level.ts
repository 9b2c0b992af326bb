// The top level holds the repository's parts, and beside these only what a tool or a habit looks for there.

const parts = new Set(["docs", "packages", "test"]);

const habits = new Set([
  ".changeset",
  ".ci",
  ".gitignore",
  ".oxfmtrc.json",
  ".oxlintrc.json",
  "DEVELOPERS.md",
  "LICENSE",
  "README.md",
  "knip.json",
  "package.json",
  "pnpm-lock.yaml",
  "pnpm-workspace.yaml",
  "stryker.config.json",
  "tsconfig.base.json",
  "tsconfig.build.json",
  "tsconfig.json",
  "vitest.config.ts",
]);

/**
 * Checks what lies at the top of the repository.
 *
 * @param paths - the files of the repository, relative to its root
 * @returns one line for each file or folder that belongs elsewhere
 */
export function topLevelProblems(paths: string[]): string[] {
  const names = new Set(paths.map((path) => path.split("/")[0] ?? path));
  return [...names]
    .filter((name) => !parts.has(name) && !habits.has(name))
    .map((name) => `${name} does not belong at the top of the repository`);
}
