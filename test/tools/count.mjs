// Reads the counts of a test run out of vitest's JSON report: `passed failed`. A file that could not be run counts as one
// failure, and so does a run that failed in another way: no report, or an error in the types.
import { readFileSync } from "node:fs";

const [path, status] = process.argv.slice(2);
const { passed, failed } = read(path);
console.log(`${passed} ${failed === 0 && status !== "0" ? 1 : failed}`);

function read(file) {
  try {
    const { numPassedTests, numFailedTests, testResults } = JSON.parse(readFileSync(file, "utf8"));
    const notRun = testResults.filter(
      ({ status: result, assertionResults }) =>
        result === "failed" && assertionResults.length === 0,
    );
    return { passed: numPassedTests, failed: numFailedTests + notRun.length };
  } catch (error) {
    console.error(String(error));
    return { passed: 0, failed: 0 };
  }
}
