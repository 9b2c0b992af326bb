// The little that the checks need to know of a source's syntax tree.
import { parseSync } from "vite";
import type { ESTree } from "vite";

/** A node of any type, as the walk sees it. */
export interface Node {
  type: string;
  start: number;
  end: number;
  [field: string]: unknown;
}

/** A comment and where it stands. */
export interface Comment {
  type: "Line" | "Block";
  value: string;
  start: number;
  end: number;
}

/** A parsed source. */
interface Syntax {
  body: Node[];
  comments: Comment[];
  program: Node;
}

/**
 * Parses TypeScript.
 *
 * @param path - named in the error
 * @param text - the source
 * @returns the tree and its comments
 * @throws SyntaxError where the text does not parse
 */
export function parse(path: string, text: string): Syntax {
  const { program, comments, errors } = parseSync(path, text, { lang: "ts", sourceType: "module" });
  const [error] = errors;
  if (error !== undefined) throw new SyntaxError(`${path}: ${error.message}`);
  const tree: ESTree.Program = program;
  return {
    program: tree as unknown as Node,
    body: tree.body as unknown as Node[],
    comments: comments.map(({ type, value, start, end }) => ({ type, value, start, end })),
  };
}

/** Whether a value met in the tree is a node. */
export function isNode(value: unknown): value is Node {
  return typeof value === "object" && value !== null && typeof (value as Node).type === "string";
}

/**
 * Lists a node's children.
 *
 * @param node - the parent
 * @returns each child node with the name of the field that holds it
 */
function childrenOf(node: Node): [field: string, child: Node][] {
  return Object.entries(node).flatMap(([field, value]) =>
    (Array.isArray(value) ? value : [value])
      .filter(isNode)
      .map((child): [string, Node] => [field, child]),
  );
}

/**
 * Visits a node and everything below it.
 *
 * @param node - where to start
 * @param visit - called with each node
 */
export function walk(node: Node, visit: (node: Node) => void): void {
  visit(node);
  for (const [, child] of childrenOf(node)) walk(child, visit);
}

/**
 * Lists what a source imports, in any form: `import`, `export … from`, `import()`, `import("…").T`.
 *
 * @param path - named in errors
 * @param text - the source
 * @returns the specifiers in order; a computed `import()` is reported as `"(computed)"`
 */
export function importSpecifiers(path: string, text: string): string[] {
  const found: string[] = [];
  walk(parse(path, text).program, (node) => {
    if (
      (node.type === "ImportDeclaration" ||
        node.type === "ExportNamedDeclaration" ||
        node.type === "ExportAllDeclaration" ||
        node.type === "ImportExpression" ||
        node.type === "TSImportType") &&
      isNode(node["source"])
    ) {
      const { value } = node["source"];
      found.push(typeof value === "string" ? value : "(computed)");
    }
    if (node.type === "TSExternalModuleReference" && isNode(node["expression"])) {
      found.push(String(node["expression"]["value"]));
    }
  });
  return found;
}

/** Wrappers that hold an expression; below every other `TS…` node are types only. */
const expressionsInTypes = new Set([
  "TSAsExpression",
  "TSInstantiationExpression",
  "TSNonNullExpression",
  "TSSatisfiesExpression",
]);

/**
 * Lists the names a source uses and declares nowhere: globals.
 *
 * @param path - named in errors
 * @param text - the source
 * @returns each global once; members of `Date` and `Math` with their name, `new Date()` as such
 */
export function globalsUsed(path: string, text: string): string[] {
  const declared = new Set<string>();
  const used = new Set<string>();
  const look = (node: Node): void => {
    if (node.type.startsWith("TS") && !expressionsInTypes.has(node.type)) return;
    if (node.type === "Identifier") used.add(String(node["name"]));
    if (node.type === "MemberExpression" && node["computed"] === false) {
      const { object, property } = node as unknown as { object: Node; property: Node };
      if (object.type === "Identifier")
        used.add(`${String(object["name"])}.${String(property["name"])}`);
    }
    if (node.type === "NewExpression" && (node["arguments"] as Node[]).length === 0) {
      const callee = node["callee"] as Node;
      if (callee.type === "Identifier") used.add(`new ${String(callee["name"])}()`);
    }
    for (const [field, child] of childrenOf(node)) {
      const isName = (field === "property" || field === "key") && node["computed"] === false;
      if (isName && !(node.type === "Property" && node["shorthand"] === true)) continue;
      if (bindings[node.type]?.includes(field) === true) bind(child, declared);
      look(child);
    }
  };
  look(parse(path, text).program);
  return [...used].filter((name) => !declared.has(name.replace(/^new |[.(].*$/gu, "")));
}

/** Where names are declared: fields, by the type of the node. */
const bindings: Record<string, string[]> = {
  ArrowFunctionExpression: ["params"],
  CatchClause: ["param"],
  ClassDeclaration: ["id"],
  FunctionDeclaration: ["id", "params"],
  FunctionExpression: ["id", "params"],
  ImportDefaultSpecifier: ["local"],
  ImportNamespaceSpecifier: ["local"],
  ImportSpecifier: ["local"],
  VariableDeclarator: ["id"],
};

function bind(pattern: Node, declared: Set<string>): void {
  if (pattern.type === "Identifier") declared.add(String(pattern["name"]));
  for (const [field, child] of childrenOf(pattern)) {
    const isDefault = pattern.type === "AssignmentPattern" && field === "right";
    const isKey = pattern.type === "Property" && field === "key";
    if (!isDefault && !isKey && field !== "typeAnnotation") bind(child, declared);
  }
}

/** Calls of these only make a value. */
const makers =
  /^(Array|BigInt|Float64Array|Intl\.\w+|Map|Math\.\w+|Number|Object\.(freeze|fromEntries|entries|keys|values)|RegExp|Set|String|String\.raw|Symbol|Symbol\.for|Uint8Array|WeakMap|WeakSet)$/u;

/**
 * Tells whether a statement does something when it is reached, beyond making values: calls that are not marked as pure, and
 * changes of what exists. Bodies of functions are not reached.
 *
 * @param statement - at the top of a module
 * @param text - the module
 */
export function acts(statement: Node, text: string): boolean {
  switch (statement.type) {
    case "ArrowFunctionExpression":
    case "FunctionDeclaration":
    case "FunctionExpression":
      return false;
    case "AssignmentExpression":
    case "AwaitExpression":
    case "ThrowStatement":
    case "UpdateExpression":
      return true;
    case "UnaryExpression":
      if (statement["operator"] === "delete") return true;
      break;
    case "CallExpression":
    case "NewExpression":
    case "TaggedTemplateExpression": {
      const { start, end } = (statement["callee"] ?? statement["tag"]) as Node;
      const isMarked = /\/\* @__PURE__ \*\/\s*$/u.test(text.slice(0, statement.start));
      if (!isMarked && !makers.test(text.slice(start, end))) return true;
      break;
    }
    default:
  }
  return childrenOf(statement).some(([, child]) => acts(child, text));
}
