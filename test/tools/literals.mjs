// Changes every number that a formula computes with by 1 %, one at a time, and asks the checks of that formula to notice: its
// reference rows first, then its printed equation, its loop over a column against its body, and the residual of a solver. Exits 1
// where none does.
//
//     npm run literals                     every formula of every package
//     npm run literals -- <folder>         formulas and rows of one folder
//
// Looked at: bodies, steps, constants, defaults of inputs and series, and the functions and constants that they reach in packages
// of formulas. Not looked at: limits and rows of tables, which have tests of their own, and 0, of which 1 % is nothing.
// A number beside a list's length is a count and is changed by one.
//
// A number that no answer depends on, such as the most steps of a solver, is passed over where a comment
// `// guard: why` stands at the end of its line or on the line above.
import { readdirSync, readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join, relative, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { Script } from "node:vm";

import { build } from "esbuild";
import { parseSync } from "vite";

const root = fileURLToPath(new URL("../..", import.meta.url));

/** Packages that formulas are written with: their numbers are theirs to test. */
const below = new Set(["numerics", "quantity", "formula"]);

/** Parts of a definition that no answer depends on. */
const aside = new Set(["id", "revision", "equation", "limits", "output", "source"]);

/** Milliseconds after which a changed formula counts as one that never answers. */
const patience = 2000;

// ---------------------------------------------------------------------------------------------------------------- syntax

const isNode = (value) => typeof value?.type === "string";

/** A node's children, each with the field that holds it; types are left out. */
function* childrenOf(node) {
  for (const [field, value] of Object.entries(node)) {
    for (const child of Array.isArray(value) ? value : [value]) {
      if (isNode(child) && !/^TS(?!As|NonNull|Satisfies|Instantiation)/u.test(child.type))
        yield [field, child];
    }
  }
}

const sources = new Map();

/** A source file: what it declares at the top, what it imports, what its guards guard. */
function sourceOf(path) {
  if (sources.has(path)) return sources.get(path);
  const text = readFileSync(path, "utf8");
  const { program, comments, errors } = parseSync(path, text, { lang: "ts", sourceType: "module" });
  if (errors.length > 0) throw new SyntaxError(`${path}: ${errors[0].message}`);
  const starts = [0, ...Array.from(text.matchAll(/\n/gu), ({ index }) => index + 1)];
  const source = {
    path,
    text,
    program,
    declared: new Map(),
    imported: new Map(),
    passedOn: new Map(),
    guards: new Map(),
  };
  source.lineAt = (offset) => starts.findLastIndex((start) => start <= offset) + 1;
  for (const statement of program.body) index(source, statement);

  const isBlank = (line, from = 0) => {
    const code = text.slice(starts[line - 1], starts[line] ?? text.length).slice(from);
    return /^\s*(?:\/\/.*|\/?\*.*)?$/u.test(code);
  };
  for (const { value, start, end } of comments) {
    const [, why] = /^\*?\s*guard:\s*(\S[\s\S]*?)\s*$/u.exec(value) ?? [];
    if (why === undefined) continue;
    let line = source.lineAt(start);
    if (text.slice(starts[line - 1], start).trim() === "") {
      line = source.lineAt(end) + 1;
      while (line < starts.length && isBlank(line)) line += 1;
    }
    source.guards.set(line, why.replaceAll(/\s*\n\s*\*?\s*/gu, " "));
  }
  sources.set(path, source);
  return source;
}

function index(source, statement) {
  const { declared, imported, passedOn } = source;
  const from = statement.source?.value;
  switch (statement.type) {
    case "ImportDeclaration":
      for (const { local, imported: name } of statement.specifiers)
        imported.set(local.name, { from, name: name?.name ?? "*" });
      break;
    case "ExportAllDeclaration":
      passedOn.set(`* ${from}`, { from, name: "*" });
      break;
    case "ExportNamedDeclaration":
      if (statement.declaration) index(source, statement.declaration);
      for (const { local, exported } of statement.specifiers) {
        passedOn.set(
          exported.name,
          from === undefined ? { local: local.name } : { from, name: local.name },
        );
      }
      break;
    case "VariableDeclaration":
      for (const declarator of statement.declarations)
        if (declarator.id.type === "Identifier") declared.set(declarator.id.name, declarator);
      break;
    case "FunctionDeclaration":
    case "ClassDeclaration":
      declared.set(statement.id.name, statement);
      break;
    default:
  }
}

/** The file that an import leads to, where it is one of ours that may hold numbers of formulas. */
function fileOf(from, path) {
  if (from.startsWith(".")) return resolve(dirname(path), from);
  const [, folder] = /^@leat\/([\w-]+)$/u.exec(from) ?? [];
  return folder === undefined || below.has(folder)
    ? undefined
    : join(root, "packages", folder, "src", "index.ts");
}

/** Where a name is declared: the file and the declaration. */
function declarationOf(name, source) {
  const declaration = source.declared.get(name);
  if (declaration) return { source, declaration };
  const found = source.imported.get(name) ?? source.passedOn.get(name);
  if (found?.local !== undefined) return declarationOf(found.local, source);
  const ways = found ? [found] : [...source.passedOn.values()].filter((way) => way.name === "*");
  for (const way of ways) {
    const file = fileOf(way.from, source.path);
    const there = file && declarationOf(way.name === "*" ? name : way.name, sourceOf(file));
    if (there) return there;
  }
  return undefined;
}

const bare = (node) => (node?.type === "ParenthesizedExpression" ? bare(node.expression) : node);

const callee = (node) =>
  node?.type === "CallExpression" && node.callee.type === "Identifier"
    ? node.callee.name
    : undefined;

/** Every call of `formula` in a file, with the id that it gives. */
function formulasIn(source) {
  const found = [];
  const look = (node) => {
    if (callee(node) === "formula" && source.imported.get("formula")?.from === "@leat/formula") {
      const [define] = node.arguments;
      const { body } = define ?? {};
      const definition = bare(
        body?.type === "BlockStatement"
          ? body.body.find(({ type }) => type === "ReturnStatement")?.argument
          : body,
      );
      const id = definition?.properties?.find(({ key }) => key?.name === "id")?.value.value;
      if (id === undefined)
        throw new Error(
          `${source.path}:${source.lineAt(node.start)}: a formula of which no id is found`,
        );
      found.push({ id, source, define, definition });
    }
    for (const [, child] of childrenOf(node)) look(child);
  };
  look(source.program);
  return found;
}

/** The numbers that an answer of a formula may depend on. */
function* literalsOf({ source, define, definition }) {
  const reached = new Set();
  const waiting = [{ source, node: define }];
  for (let next = waiting.pop(); next; next = waiting.pop()) yield* look(next.source, next.node);

  function* look(where, node, isCount = false) {
    if (node.type === "Literal" && typeof node.value === "number")
      yield { source: where, node, isCount };
    if (node.type === "Identifier") {
      const found = declarationOf(node.name, where);
      // Another formula answers for its own numbers, and a table for its rows.
      if (
        !found ||
        reached.has(found.declaration) ||
        ["formula", "table"].includes(callee(found.declaration.init))
      )
        return;
      reached.add(found.declaration);
      waiting.push({ source: found.source, node: found.declaration });
      return;
    }
    for (const [field, child] of childrenOf(node)) {
      const isName =
        (field === "property" || field === "key") &&
        node.computed === false &&
        !(node.type === "Property" && node.shorthand);
      if (isName || (node === definition && aside.has(child.key?.name))) continue;
      yield* look(
        where,
        child,
        node.type === "BinaryExpression" && [node.left, node.right].some(isLength),
      );
    }
  }
}

const isLength = (node) => node.type === "MemberExpression" && node.property.name === "length";

/** Every number to change, once, with the formulas that reach it. */
function collect(formulas) {
  const found = new Map();
  let zeros = 0;
  for (const each of formulas) {
    for (const { source, node, isCount } of literalsOf(each)) {
      const key = `${source.path}:${node.start}`;
      const known = found.get(key);
      if (known) known.formulas.add(each.id);
      else {
        const line = source.lineAt(node.start);
        const raw = source.text.slice(node.start, node.end);
        if (Number(raw.replaceAll("_", "")) !== node.value)
          throw new Error(`${key}: ${raw} is not ${node.value}`);
        if (node.value === 0) zeros += 1;
        const { value } = node;
        const changed = isCount ? value + 1 : value * 1.01;
        found.set(key, {
          source,
          node,
          line,
          raw,
          value,
          changed,
          why: source.guards.get(line),
          formulas: new Set([each.id]),
        });
      }
    }
  }
  const literals = [...found.values()]
    .filter(({ value }) => value !== 0)
    .toSorted((a, b) => a.source.path.localeCompare(b.source.path) || a.node.start - b.node.start);
  return { literals, zeros };
}

// ---------------------------------------------------------------------------------------------------------------- running

/** One bundle of everything, in which the numbers are read from a list: an instance with another list is a changed source. */
async function bundleOf(files, literals) {
  const byFile = groupBy(literals, ({ source }) => source.path);
  const at = new Map(literals.map((literal, place) => [literal, place]));
  const entry = [
    `export { checkRows, argsOf } from "@leat/formula/reference";`,
    `export { isFormula } from "@leat/formula";`,
    `export { resolve } from ${JSON.stringify(join(root, "packages/formula/src/resolve.ts"))};`,
    `export { equationProblems } from ${JSON.stringify(join(root, "test/formula/equation.ts"))};`,
    ...files.map((file, place) => `export * as file${place} from ${JSON.stringify(file)};`),
  ].join("\n");
  const { outputFiles } = await build({
    stdin: { contents: entry, resolveDir: root },
    bundle: true,
    write: false,
    format: "cjs",
    platform: "node",
    conditions: ["@leat/source"],
    external: ["mathjs", "yaml", "zod"],
    logLevel: "error",
    plugins: [
      {
        name: "numbers-from-a-list",
        setup({ onLoad }) {
          onLoad({ filter: /\.ts$/ }, ({ path }) => {
            const here = byFile.get(path);
            if (!here) return undefined;
            let contents = "";
            let from = 0;
            for (const literal of here) {
              contents += `${sources.get(path).text.slice(from, literal.node.start)}$numbers[${at.get(literal)}]`;
              from = literal.node.end;
            }
            return { contents: contents + sources.get(path).text.slice(from), loader: "ts" };
          });
        },
      },
    ],
  });
  return new Script(
    `(function (require, module, exports, $numbers) {${outputFiles[0].text}\n})`,
  ).runInThisContext();
}

function groupBy(list, keyOf) {
  const groups = new Map();
  for (const each of list) groups.set(keyOf(each), [...(groups.get(keyOf(each)) ?? []), each]);
  return groups;
}

const require = createRequire(import.meta.url);

/** The modules with these numbers in them, and the formulas that they export. */
function instance(bundle, numbers) {
  const module = { exports: {} };
  bundle(require, module, module.exports, numbers);
  const formulas = new Map();
  for (const [name, exported] of Object.entries(module.exports)) {
    if (!/^file\d+$/u.test(name)) continue;
    for (const value of Object.values(exported))
      if (module.exports.isFormula(value)) formulas.set(value.id, value);
  }
  return { ...module.exports, formulas };
}

/** What the rows say of a formula: a sentence for each row that does not hold. How many rows there are is asked elsewhere. */
const rowProblems = ({ checkRows }, formula, rows) =>
  checkRows(formula, rows).problems.filter((problem) => problem.startsWith(`${formula.id}, row `));

/** Checks besides the rows, in the order in which they are asked. */
const others = ["equation", "series", "residual"];

/** What a row shows of the printed equation, and of the loop over a column. */
function otherProblems(
  { argsOf, resolve: resolved, equationProblems },
  { definition },
  row,
  kinds,
) {
  const { letters } = resolved(definition, argsOf(definition, row.inputs));
  const result = definition.body(letters);
  const problems = [];
  if (kinds.has("equation") && !definition.equation.includes("Σ"))
    problems.push(...equationProblems(definition, letters, result));
  // Of coherent units: what 1 % of a coefficient leaves is far more, what rounding leaves is far less.
  if (kinds.has("residual") && definition.solver && !(Math.abs(result.residual) <= 1e-7))
    problems.push(`the residual is ${result.residual}`);
  if (kinds.has("series") && definition.series) {
    const { letter } = definition.inputs[definition.series.over];
    const out = new Float64Array(2);
    definition.series.loop(Float64Array.of(letters[letter], letters[letter]), letters, out, 0, 2);
    for (const each of out)
      if (!(Math.abs(each - result) <= 1e-12 * Math.abs(result)))
        problems.push(`the loop gives ${each}, the body ${result}`);
  }
  return problems;
}

/** Calls, and gives up where it takes too long. */
function inTime(call) {
  globalThis.leatCall = call;
  try {
    return new Script("leatCall()").runInThisContext({ timeout: patience });
  } finally {
    delete globalThis.leatCall;
  }
}

/** Problems of a call, one where it throws or never ends. */
function problemsOf(call) {
  try {
    return inTime(call);
  } catch (error) {
    return [error instanceof Error ? error.message : String(error)];
  }
}

/** Which check notices a change, in words; nothing where none does. */
function noticed(changed, rowsOf, ids, kindsOf) {
  const list = ids.filter((id) => changed.formulas.has(id));
  for (const id of list) {
    const formula = changed.formulas.get(id);
    const [first] = problemsOf(() => rowProblems(changed, formula, rowsOf(id)));
    if (first !== undefined) return { id, by: /, (row \d+) \(/u.exec(first)?.[1] ?? first };
  }
  for (const kind of others) {
    for (const id of list.filter((each) => kindsOf(each).has(kind))) {
      const formula = changed.formulas.get(id);
      for (const row of rowsOf(id)) {
        const [first] = problemsOf(() => otherProblems(changed, formula, row, new Set([kind])));
        if (first !== undefined) return { id, by: kind };
      }
    }
  }
  return undefined;
}

// ---------------------------------------------------------------------------------------------------------------- the run

const only = process.argv[2] && resolve(process.argv[2]);
const under = (folder, suffix) =>
  readdirSync(folder, { recursive: true, encoding: "utf8" })
    .filter((path) => path.endsWith(suffix) && !path.includes("node_modules"))
    .toSorted()
    .map((path) => join(folder, path));

const folders = only
  ? [only]
  : readdirSync(join(root, "packages"))
      .filter((folder) => folder !== "cli" && !below.has(folder))
      .map((folder) => join(root, "packages", folder, "src"));
const candidates = folders
  .flatMap((folder) => under(folder, ".ts"))
  .filter((path) => !path.endsWith(".test.ts"));
const formulas = candidates.flatMap((path) => formulasIn(sourceOf(path)));
const rows = new Map();
for (const path of under(only ?? join(root, "test"), ".rows.json")) {
  const { formula, rows: more } = JSON.parse(readFileSync(path, "utf8"));
  if (formula !== undefined)
    rows.set(formula, [
      ...(rows.get(formula) ?? []),
      ...more.filter(({ kind }) => kind !== "regression"),
    ]);
}

const { literals, zeros } = collect(formulas);
const files = [...new Set(formulas.map(({ source }) => source.path))];
const bundle = await bundleOf(files, literals);
const numbers = literals.map(({ value }) => value);

// A check that already fails would notice anything: it is left out, and said.
const plain = instance(bundle, numbers);
const broken = [];
const trusted = new Map();
const kinds = new Map();
for (const { id, source } of formulas) {
  const formula = plain.formulas.get(id);
  if (!formula) {
    broken.push(`${id}: ${relative(root, source.path)} does not export it`);
    continue;
  }
  const holds = (row) => {
    const problems = problemsOf(() => rowProblems(plain, formula, [row]));
    broken.push(...problems);
    return problems.length === 0;
  };
  trusted.set(id, (rows.get(id) ?? []).filter(holds));
  const works = (kind) => {
    const problems = trusted
      .get(id)
      .flatMap((row) => problemsOf(() => otherProblems(plain, formula, row, new Set([kind]))));
    if (problems.length > 0) broken.push(`${id}, ${kind}: ${problems[0]}`);
    return problems.length === 0;
  };
  kinds.set(id, new Set(others.filter(works)));
}

const rowsOf = (id) => trusted.get(id) ?? [];
const kindsOf = (id) => kinds.get(id) ?? new Set();
const results = literals.map((literal, place) => {
  const changed = problemsOf(() => [
    instance(bundle, numbers.toSpliced(place, 1, literal.changed)),
  ])[0];
  if (typeof changed === "string") return { ...literal, red: { id: "import", by: changed } };
  const near = [...literal.formulas];
  const far = formulas.map(({ id }) => id).filter((id) => !literal.formulas.has(id));
  return {
    ...literal,
    red: noticed(changed, rowsOf, near, kindsOf) ?? noticed(changed, rowsOf, far, kindsOf),
  };
});

const place = ({ source, line, raw }) => `${relative(root, source.path)}:${line}  ${raw}`;
const guards = results.filter(({ why }) => why !== undefined);
const counted = results.filter(({ why }) => why === undefined);
const green = counted.filter(({ red }) => red === undefined);
for (const each of counted) {
  const { red, formulas: ids } = each;
  console.log(
    `${place(each)}  ${red ? `red by ${red.id}, ${red.by}` : `GREEN in ${[...ids].join(", ")}`}`,
  );
}
if (guards.length > 0) {
  console.log(`\nGuards, which no answer depends on (1 % is seen where it says so):`);
  for (const each of guards)
    console.log(
      `${place(each)}  guard: ${each.why}${each.red ? `  (red by ${each.red.id}: no guard is needed)` : ""}`,
    );
}
if (green.length > 0) {
  console.log(`\nNo check sees 1 % of these; give rows that do, or a tighter tolerance:`);
  for (const each of green)
    console.log(
      `${place(each)}  in ${[...each.formulas].map((id) => `${id} (${rowsOf(id).length} rows)`).join(", ")}`,
    );
}
if (broken.length > 0) {
  console.log(`\nAlready broken, and left out:`);
  for (const problem of broken) console.log(problem);
}
const loose = counted.filter(({ red }) => others.includes(red?.by)).length;
console.log(
  `\n${formulas.length} formulas. Tables (their tests), limits (their messages) and ${zeros} zeros are not changed; ${guards.length} guards; ${loose} red by no row but by the printed equation, the loop or the residual.`,
);
console.log(
  `${counted.length} literals, ${counted.length - green.length} red, ${green.length} green`,
);
process.exitCode = green.length > 0 || broken.length > 0 || counted.length === 0 ? 1 : 0;
