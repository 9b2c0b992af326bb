// The first installed copy, its entries as one.
export * from "@leat/quantity";
export * from "@leat/quantity/column";
export * from "@leat/quantity/text";
