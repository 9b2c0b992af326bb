// Removes every package's build, the outputs of deleted modules included.
import { readdirSync, rmSync } from "node:fs";

for (const name of readdirSync("packages")) {
  rmSync(`packages/${name}/dist`, { recursive: true, force: true });
}
