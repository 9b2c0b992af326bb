// Runs the compiler as a person would, on a folder of its own.
import { execFile } from "node:child_process";
import { fileURLToPath } from "node:url";

const root = fileURLToPath(new URL("../../", import.meta.url));
const bin = fileURLToPath(new URL("../../node_modules/typescript/bin/tsc", import.meta.url));

/** What `tsc -p` prints; it exits with an error where it finds one, which is what is asked for here. */
export async function compile(project: string, ...options: string[]): Promise<string> {
  return await new Promise((resolve, reject) => {
    execFile(
      process.execPath,
      [bin, "-p", project, "--pretty", "false", ...options],
      { cwd: root },
      (error, stdout, stderr) => {
        if (stderr || (error && !stdout)) reject(new Error(stderr || error?.message));
        else resolve(stdout);
      },
    );
  });
}
