import { type Unit, unit } from "@leat/quantity";

/**
 * The area of a circle of one thousandth of an inch across: π/4 · (0.0254 mm)², the unit in which
 * American conductor areas are printed.
 */
export const circularMil: Unit<"area"> = /* @__PURE__ */ unit(
  "area",
  "cmil",
  5.067_074_790_974_977e-10,
);
