// A package depends on lower layers only, so siblings never meet and there are no cycles.
import type { Tree } from "./tree.ts";

/**
 * Checks that every dependency between packages goes down.
 *
 * @param tree - the repository
 * @returns one line for each dependency that does not
 */
export function layerProblems(tree: Tree): string[] {
  const layers = new Map(
    tree.packages.map(({ manifest }) => [manifest.name, manifest.leat?.layer]),
  );
  return tree.packages.flatMap(({ folder, manifest }) =>
    Object.keys(manifest.dependencies ?? {})
      .filter((name) => name.startsWith("@leat/"))
      .flatMap((name) => {
        const from = layers.get(manifest.name);
        const to = layers.get(name);
        if (to === undefined) return [`${folder} depends on ${name}, which has no layer`];
        return from !== undefined && to < from
          ? []
          : [
              `${folder} (layer ${from}) may not depend on ${name.replace("@leat/", "")} (layer ${to})`,
            ];
      }),
  );
}
