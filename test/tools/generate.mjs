// Makes the generated files of @leat/quantity and docs/quantities.md from packages/quantity/kinds.mjs.
// With --check it writes nothing and exits 1 where a file is out of date.
import { existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname } from "node:path";
import { pathToFileURL } from "node:url";

/** The generated files, by path, from a table of kinds and units. */
export function generate({ bases, kinds, sums, origins, units }) {
  const byName = new Map(kinds.map((kind) => [kind.name, kind]));
  const dim = (kind) => (kind.of ? byName.get(kind.of) : kind).dim;
  const exponents = (kind) => bases.map((base) => String(dim(kind)[base] ?? 0));
  const steps = Array.from({ length: 21 }, (_, i) => (i - 10) / 2);
  const head =
    "// Generated from kinds.mjs by `npm run generate`: change the table, not this file.\n\n";

  const canonical = kinds.filter((kind) => !kind.of);
  const relatives = (plain) => kinds.filter((kind) => kind === plain || kind.of === plain.name);
  const union = (names) => names.map((name) => JSON.stringify(name)).join(" | ");

  const table = (name, says, entries) =>
    `/** ${says} */\nexport interface ${name} {\n${entries.map(([key, value]) => `  ${JSON.stringify(key)}: ${value};`).join("\n")}\n}\n`;
  const group = (sign) => {
    const rows = new Map();
    for (const [left, by, right, result] of sums) {
      if (by === sign) rows.set(left, { ...rows.get(left), [right]: result });
    }
    return [...rows].map(([left, row]) => [
      left,
      `{ ${Object.entries(row)
        .map(([right, result]) => `${JSON.stringify(right)}: ${JSON.stringify(result)}`)
        .join("; ")} }`,
    ]);
  };

  const types =
    head +
    table(
      "ExponentsOf",
      "Base exponents of each named kind: metre, kilogram, second, ampere, kelvin, currency, radian.",
      kinds.map((kind) => [
        kind.name,
        `[${exponents(kind)
          .map((e) => JSON.stringify(e))
          .join(", ")}]`,
      ]),
    ) +
    "\n" +
    table(
      "NameOf",
      "What a product of these exponents is called.",
      canonical.map((kind) => [exponents(kind).join(), JSON.stringify(kind.name)]),
    ) +
    "\n" +
    table(
      "RelativesOf",
      "Kinds of one dimension, between which `as` is the door.",
      canonical
        .filter((kind) => relatives(kind).length > 1)
        .flatMap((plain) =>
          relatives(plain).map((kind) => [kind.name, union(relatives(plain).map((k) => k.name))]),
        ),
    ) +
    "\n" +
    table(
      "PlainOf",
      "The plain kind that a kind is a kind of.",
      kinds.filter((kind) => kind.of).map((kind) => [kind.name, JSON.stringify(kind.of)]),
    ) +
    "\n" +
    table("PlusOf", "Sums of unlike kinds that have a meaning.", group("+")) +
    "\n" +
    table("MinusOf", "Differences of unlike kinds that have a meaning.", group("-")) +
    "\n" +
    table(
      "DifferenceOf",
      "What two points of an origin are apart.",
      origins.map((o) => [o.name, JSON.stringify(o.difference)]),
    ) +
    "\n" +
    table(
      "SumOf",
      "Sum of two exponents, in halves from −5 to 5.",
      steps.map((a) => [
        String(a),
        `{ ${steps
          .filter((b) => Math.abs(a + b) <= 5)
          .map((b) => `${JSON.stringify(String(b))}: ${JSON.stringify(String(a + b))}`)
          .join("; ")} }`,
      ]),
    ) +
    "\n" +
    table(
      "NegativeOf",
      "The exponent with its sign changed.",
      steps.map((a) => [String(a), JSON.stringify(String(-a || 0))]),
    ) +
    "\n" +
    table(
      "HalfOf",
      "Half of an exponent.",
      steps.filter(Number.isInteger).map((a) => [String(a), JSON.stringify(String(a / 2 || 0))]),
    );

  const packed = (kind) =>
    bases.reduce((sum, base, i) => sum + 2 * (dim(kind)[base] ?? 0) * 64 ** i, 0);
  const runtime =
    head +
    `/** Base units, in the order of the packed exponents. */\nexport const bases: readonly string[] = ${JSON.stringify(bases)};\n\n` +
    `/** Name, coherent unit, packed exponents, and the plain kind that it is a kind of. */\n` +
    `export const kindTable: readonly (readonly [string, string, number, string?])[] = [\n` +
    kinds
      .map(
        (kind) =>
          `  ${JSON.stringify([kind.name, kind.unit, packed(kind), ...(kind.of ? [kind.of] : [])])},`,
      )
      .join("\n") +
    `\n];\n\n` +
    `/** Left, sign, right, result, for sums of unlike kinds. */\n` +
    `export const sumTable: readonly (readonly string[])[] = ${JSON.stringify(sums)};\n\n` +
    `/** Origin of a point: the kind of its differences, and whether it has instances. */\n` +
    `export const originTable: Readonly<Record<string, readonly [string, boolean]>> = ${JSON.stringify(Object.fromEntries(origins.map((o) => [o.name, [o.difference, !!o.instance]])))};\n`;

  const unitFile =
    head +
    `import { unit, type Unit } from "../unit.ts";\n\n` +
    units
      .map(([name, kind, symbol, factor]) => {
        const [num, den] = fraction(factor);
        const definition =
          factor === "1"
            ? `${symbol}, the coherent unit of ${kind}.`
            : `${symbol} = ${factor.replaceAll("*", " × ").replace("pi", "π")} ${byName.get(kind).unit}, exactly.`;
        return `/** ${definition} */\nexport const ${name}: Unit<${JSON.stringify(kind)}> = /* @__PURE__ */ unit(${JSON.stringify(kind)}, ${JSON.stringify(symbol)}, ${num}${den === "1" ? "" : `, ${den}`});`;
      })
      .join("\n") +
    "\n";

  const words =
    head +
    `import * as u from "./units.ts";\nimport type { Unit } from "../unit.ts";\n\n` +
    `/** Every unit with the other words it is read by; true marks US customary units, where a comma groups thousands. */\n` +
    `export const unitWords: readonly (readonly [unit: Unit<string>, words: string, us?: true])[] = /* @__PURE__ */ (() => [\n` +
    units
      .map(
        ([name, , , , also, us]) =>
          `  [u.${name} as Unit<string>, ${JSON.stringify(also.join("|"))}${us ? ", true" : ""}],`,
      )
      .join("\n") +
    `\n])();\n`;

  const exponentText = (kind) =>
    bases
      .flatMap((base) => {
        const e = dim(kind)[base];
        return e ? [e === 1 ? base : `${base}^${e}`] : [];
      })
      .join("·") || "1";
  const page =
    `# Quantities and units\n\nGenerated from \`packages/quantity/kinds.mjs\` by \`npm run generate\`.\n\n` +
    `## Kinds\n\n| kind | coherent unit | base units | kind of | what it is |\n| --- | --- | --- | --- | --- |\n` +
    kinds
      .map(
        (kind) =>
          `| ${kind.name} | ${kind.unit} | ${exponentText(kind)} | ${kind.of ?? ""} | ${kind.says} |`,
      )
      .join("\n") +
    `\n\n## Sums of unlike kinds\n\n| left | | right | gives |\n| --- | --- | --- | --- |\n` +
    sums
      .map(([a, sign, b, result]) => `| ${a} | ${sign === "-" ? "−" : sign} | ${b} | ${result} |`)
      .join("\n") +
    `\n\n## Points\n\n| origin | differences are | it is |\n| --- | --- | --- |\n` +
    origins.map((o) => `| ${o.name} | ${o.difference} | ${o.says} |`).join("\n") +
    `\n\n## Units\n\nFactors are exact definitions; a gallon is a US gallon.\n\n| unit | kind | to the coherent unit | also read as |\n| --- | --- | --- | --- |\n` +
    units
      .map(
        ([, kind, symbol, factor, also]) =>
          `| ${symbol} | ${kind} | ${factor.replaceAll("*", " × ").replace("pi", "π")} | ${also.join(", ").replaceAll("|", "\\|")} |`,
      )
      .join("\n") +
    "\n";

  return {
    "packages/quantity/src/generated/types.ts": types,
    "packages/quantity/src/generated/kinds.ts": runtime,
    "packages/quantity/src/generated/units.ts": unitFile,
    "packages/quantity/src/generated/words.ts": words,
    "docs/quantities.md": page,
  };
}

/** Numerator and denominator of a factor, as source text: exact integers where both fit a double. */
function fraction(expression) {
  const flat = expression.replaceAll(/[()]/g, "");
  // Everything after the first "/" of these expressions divides, but for one written as a/b*c, which the table does not use.
  const [top, ...bottoms] = flat.split("/");
  let num = 1n;
  let den = 1n;
  const pi = { top: 0, bottom: 0 };
  const take = (text, up) => {
    for (const factor of text.split("*")) {
      if (factor === "pi") pi[up ? "top" : "bottom"] += 1;
      else {
        const [whole, part = ""] = factor.split(".");
        const n = BigInt(whole + part);
        const d = 10n ** BigInt(part.length);
        if (up) [num, den] = [num * n, den * d];
        else [num, den] = [num * d, den * n];
      }
    }
  };
  take(top, true);
  for (const bottom of bottoms) take(bottom, false);
  const common = gcd(num, den);
  [num, den] = [num / common, den / common];
  const safe = BigInt(Number.MAX_SAFE_INTEGER);
  if (num > safe || den > safe) {
    if (pi.top || pi.bottom)
      throw new Error(`${expression} needs more than two doubles: ${num}/${den}`);
    // Too long for a pair of doubles: the nearest double, from 40 more digits than it holds.
    return [String(Number(`${(num * 10n ** 60n) / den}e-60`)), "1"];
  }
  // A product is written out: bundlers do not drop an unused unit for whose factor one would be computed.
  const text = (n, hasPi) =>
    hasPi ? (n === 1n ? "Math.PI" : String(Number(n) * Math.PI)) : String(n);
  return [text(num, pi.top), text(den, pi.bottom)];
}

function gcd(a, b) {
  return b === 0n ? a : gcd(b, a % b);
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? "").href) {
  const files = generate(await import("../../packages/quantity/kinds.mjs"));
  for (const [path, text] of Object.entries(files)) {
    if (process.argv.includes("--check")) {
      if (!existsSync(path) || readFileSync(path, "utf8") !== text) {
        console.error(`${path} is out of date: npm run generate`);
        process.exitCode = 1;
      }
    } else {
      mkdirSync(dirname(path), { recursive: true });
      writeFileSync(path, text);
    }
  }
}
