// Makes docs/sources.md and docs/reference-rows.md. With --check it writes nothing and exits 1 where one is out of date.
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";

import { createServer, defaultServerConditions } from "vite";

const root = fileURLToPath(new URL("../..", import.meta.url));
const server = await createServer({
  root,
  configFile: false,
  logLevel: "error",
  server: { middlewareMode: true, watch: null, ws: false },
  optimizeDeps: { noDiscovery: true },
  ssr: { resolve: { conditions: ["@leat/source", ...defaultServerConditions] } },
});
const { pages } = await server.ssrLoadModule("/test/tools/pages.ts");
for (const [path, text] of Object.entries(await pages())) {
  const file = root + path;
  if (!process.argv.includes("--check")) {
    writeFileSync(file, text);
  } else if (!existsSync(file) || readFileSync(file, "utf8") !== text) {
    console.error(`${path} is out of date: npm run rows`);
    process.exitCode = 1;
  }
}
await server.close();
