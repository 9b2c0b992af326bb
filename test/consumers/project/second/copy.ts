// The second installed copy: below this folder lies a node_modules of its own.
export * from "@leat/quantity";
export * from "@leat/quantity/column";
export * from "@leat/quantity/text";
