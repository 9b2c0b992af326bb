// Every entry of the package as one: what two installed copies are compared by.
export * from "@leat/quantity";
export * from "@leat/quantity/column";
export * from "@leat/quantity/text";
