// What the types cost an editor: type instantiations do not swing from run to run, as seconds do.
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

import { expect, it, onTestFinished } from "vitest";

import { compile } from "./compiler.ts";

/** Formulas of the trade, over units that change from line to line: 20 × 25. */
const formulas: ((n: number) => string)[] = [
  (n) => `volt.of(${n}).times(ampere.of(2))`,
  (n) => `volt.of(${n}).dividedBy(ampere.of(2)).times(ampere.of(2).squared())`,
  (n) =>
    `${pick(flows, n)}.of(${n}).times(kilogramPerCubicMetre.of(1000)).times(metrePerSecondSquared.of(9.8)).times(${pick(lengths, n)}.of(40).as("net head"))`,
  (n) =>
    `metrePerSecondSquared.of(9.8).times(2).times(${pick(lengths, n)}.of(${n}).as("net head")).sqrt()`,
  (n) => `${pick(flows, n)}.of(${n}).dividedBy(squareMetre.of(0.01))`,
  (n) => `${pick(lengths, n)}.of(${n}).as("gross head").minus(metre.of(3).as("head loss"))`,
  (n) => `metre.of(${n}).as("net head").plus(${pick(lengths, n)}.of(3).as("head loss"))`,
  (n) => `metrePerSecond.of(${n}).squared().dividedBy(metrePerSecondSquared.of(9.8).times(2))`,
  (n) =>
    `metrePerSecond.of(${n}).times(millimetre.of(100)).dividedBy(squareMetrePerSecond.of(1e-6))`,
  (n) => `newtonMetre.of(${n}).times(revolutionPerMinute.of(600))`,
  (n) => `torque(newton.of(${n}), ${pick(lengths, n)}.of(0.2)).times(radianPerSecond.of(60))`,
  (n) =>
    `${pick(pressures, n)}.of(${n}).dividedBy(kilogramPerCubicMetre.of(1000)).dividedBy(metrePerSecondSquared.of(9.8))`,
  (n) => `ohmPerKilometre.of(${n}).times(${pick(lengths, n)}.of(200)).times(ampere.of(15))`,
  (n) => `ohmMetre.of(1.7e-8).times(metre.of(${n})).dividedBy(squareMillimetre.of(16))`,
  (n) =>
    `watt.of(${n}).as("shaft power").plus(kilowatt.of(1).as("electric power")).times(hour.of(24))`,
  (n) => `currency("USD").per(${pick(lengths, n)}).of(3.2).times(metre.of(${n}).as("pipe length"))`,
  (n) => `kilowattHour.of(${n}).times(currency("USD").per(kilowattHour).of(0.3))`,
  (n) =>
    `joulePerKilogramKelvin.of(4186).times(kilogram.of(${n})).times(kelvin.of(30)).dividedBy(watt.of(500))`,
  (n) =>
    `gigapascal.of(2.2).dividedBy(kilogramPerCubicMetre.of(${n})).sqrt().times(metrePerSecond.of(1)).dividedBy(metrePerSecondSquared.of(9.8))`,
  (n) =>
    `${pick(lengths, n)}.of(${n}).times(${pick(lengths, n + 1)}.of(2)).dividedBy(metre.of(3)).sqrt().dividedBy(second.of(2))`,
];
const lengths = ["metre", "foot", "inch", "millimetre", "kilometre"];
const flows = ["litrePerSecond", "gallonPerMinute", "cubicFootPerSecond", "cubicMetrePerSecond"];
const pressures = ["pascal", "bar", "poundPerSquareInch", "kilopascal"];
const pick = (from: string[], n: number): string => from[n % from.length] ?? "";

/** Measured with TypeScript 7.0.2: 6 310 more than the package alone takes, whose own sources are checked too. Times 1.3. */
const ceiling = 8200;

it("500 expressions of the trade cost a bounded number of type instantiations", async () => {
  const folder = mkdtempSync(join(tmpdir(), "instantiations-"));
  onTestFinished(() => {
    rmSync(folder, { recursive: true });
  });
  const source = fileURLToPath(new URL("../../packages/quantity/src/index.ts", import.meta.url));
  writeFileSync(
    join(folder, "tsconfig.json"),
    JSON.stringify({
      extends: fileURLToPath(new URL("../../tsconfig.base.json", import.meta.url)),
      compilerOptions: {
        noEmit: true,
        noUnusedLocals: false,
        paths: { "@leat/quantity": [source] },
      },
      files: ["lines.mts"],
    }),
  );
  const lines = Array.from(
    { length: 500 },
    (_, i) => `export const r${i} = ${formulas[i % 20]?.(Math.floor(i / 20) + 1) ?? ""};`,
  );
  const names = [
    ...new Set(lines.join("\n").match(/\b[a-z]\w+(?=\.of\(|\.per\(|\()|(?<=\.per\()\w+/gu)),
  ].filter(
    (name) =>
      !["of", "per", "as", "times", "dividedBy", "plus", "minus", "squared", "sqrt"].includes(name),
  );
  const count = async (text: string): Promise<number> => {
    writeFileSync(
      join(folder, "lines.mts"),
      `import { ${names.join(", ")} } from "@leat/quantity";\n${text}\n`,
    );
    const report = await compile(folder, "--extendedDiagnostics");
    expect(report).not.toContain("error TS");
    return Number(/^Instantiations:\s*(\d+)/mu.exec(report)?.[1]);
  };
  const alone = await count(`export const used = [${names.join(", ")}];`);
  const all = await count(lines.join("\n"));
  console.log(
    `type instantiations: ${alone} for the package alone, ${all - alone} for 500 expressions`,
  );
  expect(all - alone).toBeGreaterThan(500);
  expect(all - alone).toBeLessThan(ceiling);
}, 60_000);
