import { describe, expect, it } from "vitest";

import { manifestProblems } from "../tools/manifests.ts";
import { packageIn, planted, readTree } from "../tools/tree.ts";
import type { Tree } from "../tools/tree.ts";

const tree = readTree();

const standing = manifestProblems(tree);

/** What the check says anew once a violation is planted in a copy of the repository. */
function problemsAfter(plant: (copy: Tree) => void): string[] {
  return manifestProblems(planted(tree, plant)).filter((problem) => !standing.includes(problem));
}

describe("manifests", () => {
  it("are alike, and the root lists every package", () => {
    expect(tree.packages.length).toBeGreaterThan(0);
    expect(standing).toEqual([]);
  });

  it("are refused with another module type", () => {
    expect(
      problemsAfter((copy) => {
        packageIn(copy, "water").manifest["type"] = "commonjs";
      }),
    ).toEqual([`packages/water/package.json: type is "commonjs"; it must be "module"`]);
  });

  it("are refused with side effects", () => {
    expect(
      problemsAfter((copy) => {
        packageIn(copy, "water").manifest["sideEffects"] = true;
      }),
    ).toEqual(["packages/water/package.json: sideEffects is true; it must be false"]);
  });

  it("are refused with a field too many or too few", () => {
    const [extra] = problemsAfter((copy) => {
      packageIn(copy, "water").manifest["main"] = "./dist/index.js";
    });
    expect(extra).toMatch(
      /^packages\/water\/package\.json: fields are name, .*, main; they must be/u,
    );
    const [missing] = problemsAfter((copy) => {
      delete packageIn(copy, "water").manifest["license"];
    });
    expect(missing).toMatch(/fields are name, version, description, repository, .*; they must be/u);
  });

  it("are refused with exports in another order", () => {
    expect(
      problemsAfter((copy) => {
        packageIn(copy, "numerics").manifest.exports = {
          ".": {
            types: "./dist/index.d.ts",
            "@leat/source": "./src/index.ts",
            default: "./dist/index.js",
          },
          "./package.json": "./package.json",
        };
      }),
    ).toEqual([
      'packages/numerics/package.json: exports is {".":{"types":"./dist/index.d.ts",' +
        '"@leat/source":"./src/index.ts","default":"./dist/index.js"},"./package.json":"./package.json"}; ' +
        'it must be {".":{"@leat/source":"./src/index.ts","types":"./dist/index.d.ts",' +
        '"default":"./dist/index.js"},"./package.json":"./package.json"}',
    ]);
  });

  it("are refused with an export of a file that is not there", () => {
    expect(
      problemsAfter((copy) => {
        const { exports = {} } = packageIn(copy, "numerics").manifest;
        delete exports["./package.json"];
        exports["./roots"] = {
          "@leat/source": "./src/roots/index.ts",
          types: "./dist/roots/index.d.ts",
          default: "./dist/roots/index.js",
        };
        exports["./package.json"] = "./package.json";
        packageIn(copy, "numerics").sources = packageIn(copy, "numerics").sources.filter(
          ({ path }) => path !== "packages/numerics/src/roots/index.ts",
        );
      }),
    ).toEqual([
      'packages/numerics/package.json: exports "./roots" from ./src/roots/index.ts, which is not there',
    ]);
  });

  it("are refused with files, licence or engines of their own", () => {
    expect(
      problemsAfter((copy) => {
        const { manifest } = packageIn(copy, "nozzles");
        manifest["files"] = ["dist"];
        manifest["license"] = "ISC";
        manifest["engines"] = { node: ">=22" };
      }),
    ).toEqual([
      'packages/nozzles/package.json: license is "ISC"; it must be "MIT"',
      'packages/nozzles/package.json: files is ["dist"]; it must be ["dist","src","!**/*.tsbuildinfo"]',
      'packages/nozzles/package.json: engines is {"node":">=22"}; it must be {"node":">=20.19"}',
    ]);
  });

  it("are refused with a version of a dependency of their own", () => {
    const [problem, ...others] = problemsAfter((copy) => {
      const { dependencies = {} } = packageIn(copy, "water").manifest;
      dependencies["@leat/quantity"] = "^0.1.0";
    });
    expect(problem).toMatch(
      /^packages\/water\/package\.json: dependencies is .*"@leat\/quantity":"\^0\.1\.0".*; it must be .*"@leat\/quantity":"workspace:\^"/u,
    );
    expect(others).toEqual([]);
  });

  it("are refused without a layer, a description or a version", () => {
    expect(
      problemsAfter((copy) => {
        const { manifest } = packageIn(copy, "nozzles");
        manifest.leat = { layer: 2.5 };
        manifest["description"] = "nozzles";
        manifest["version"] = "next";
      }),
    ).toEqual([
      "packages/nozzles/package.json: description is not a sentence",
      'packages/nozzles/package.json: version is "next"',
      "packages/nozzles/package.json: leat.layer is 2.5, not a whole number 0 to 6",
    ]);
  });
});

describe("tsconfigs", () => {
  it("are refused with options of their own", () => {
    const [problem] = problemsAfter((copy) => {
      packageIn(copy, "water").tsconfig["compilerOptions"] = { composite: true };
    });
    expect(problem).toMatch(
      /^packages\/water\/tsconfig\.json: compilerOptions is \{"composite":true\}; it must be/u,
    );
  });

  it("are refused with references that are not the dependencies", () => {
    expect(
      problemsAfter((copy) => {
        packageIn(copy, "formula").tsconfig.references = [
          { path: "../quantity" },
          { path: "../water" },
        ];
      }),
    ).toEqual([
      "packages/formula/tsconfig.json: references lack ../numerics",
      "packages/formula/tsconfig.json: references have ../water too many",
    ]);
  });
});

describe("the root", () => {
  it("is refused without a package in the build", () => {
    expect(
      problemsAfter((copy) => {
        copy.build.references =
          copy.build.references?.filter(({ path }) => path !== "packages/water") ?? [];
      }),
    ).toEqual(["tsconfig.build.json: references lack packages/water"]);
  });

  it("is refused without a package among its devDependencies", () => {
    expect(
      problemsAfter((copy) => {
        delete copy.manifest.devDependencies?.["@leat/water"];
      }),
    ).toEqual(["package.json: devDependencies lack @leat/water"]);
  });

  it("is refused with a package that is not there, or by another way than the workspace", () => {
    expect(
      problemsAfter((copy) => {
        copy.manifest.devDependencies = {
          ...copy.manifest.devDependencies,
          "@leat/mill": "workspace:*",
          "@leat/water": "^0.1.0",
        };
      }),
    ).toEqual([
      "package.json: devDependencies have @leat/mill too many",
      'package.json: @leat/water is "^0.1.0", not "workspace:*"',
    ]);
  });
});

describe("names", () => {
  it("are refused where they are a drawer's and not a topic's", () => {
    expect(
      problemsAfter((copy) => {
        packageIn(copy, "water").sources.push(
          { path: "packages/water/src/helpers/density.ts", text: "" },
          { path: "packages/water/src/utils.ts", text: "" },
        );
      }),
    ).toEqual([
      'packages/water/src/helpers/density.ts: "helpers" is not a topic: name the idea',
      'packages/water/src/utils.ts: "utils.ts" is not a topic: name the idea',
    ]);
    const problems = problemsAfter((copy) => {
      packageIn(copy, "water").folder = "common";
    });
    expect(problems).toContain('packages/common: "common" is not a topic: name the idea');
  });
});
