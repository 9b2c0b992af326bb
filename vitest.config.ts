import { defaultServerConditions } from "vite";
import { defineConfig } from "vitest/config";

// Workspace packages are imported from their sources: testing needs no build.
export default defineConfig({
  ssr: { resolve: { conditions: ["@leat/source", ...defaultServerConditions] } },
  test: {
    include: ["test/**/*.test.ts"],
    // Test files share loaded modules: mathjs alone takes a second to load.
    isolate: false,
    // A shared machine may be busy; no test measures time.
    testTimeout: 30_000,
    // Examples in the documentation are written there to be run as the sources are.
    server: { deps: { inline: [/\.cache\/leat-examples/] } },
    // Checks the types of everything that tsconfig.json includes, not of these files alone.
    typecheck: { enabled: true, include: ["test/**/*.test-d.ts"], tsconfig: "tsconfig.json" },
    coverage: {
      include: ["packages/*/src/**/*.ts"],
      exclude: ["packages/cli/src/bin.ts"],
      reporter: ["text", "lcov"],
    },
  },
});
