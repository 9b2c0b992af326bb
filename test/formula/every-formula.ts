import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";

import { type AnyFormula, isFormula } from "@leat/formula";
import type { ReferenceRow } from "@leat/formula/reference";

const root = join(import.meta.dirname, "..", "..");

/** A formula that a package exports, by the name that it is exported under. */
export interface Exported {
  /** Package folder. */
  readonly folder: string;
  /** Name. */
  readonly name: string;
  /** The formula. */
  readonly formula: AnyFormula;
}

/** Every formula that any package exports. */
export async function everyFormula(): Promise<Exported[]> {
  const found: Exported[] = [];
  for (const folder of readdirSync(join(root, "packages"))) {
    if (folder === "cli") continue;
    const module = (await import(join(root, "packages", folder, "src", "index.ts"))) as Record<
      string,
      unknown
    >;
    for (const [name, value] of Object.entries(module)) {
      if (isFormula(value)) found.push({ folder, name, formula: value });
    }
  }
  return found;
}

/** Every file of reference rows, by the id of its formula. */
export function everyRowFile(): Map<string, { file: string; rows: ReferenceRow[] }> {
  const files = readdirSync(join(root, "test"), { recursive: true, encoding: "utf8" }).filter(
    (file) => file.endsWith(".rows.json"),
  );
  const byFormula = new Map<string, { file: string; rows: ReferenceRow[] }>();
  for (const file of files) {
    const content = JSON.parse(readFileSync(join(root, "test", file), "utf8")) as {
      formula?: string;
      rows: ReferenceRow[];
    };
    if (content.formula === undefined) continue;
    const known = byFormula.get(content.formula);
    byFormula.set(content.formula, { file, rows: [...(known?.rows ?? []), ...content.rows] });
  }
  return byFormula;
}
