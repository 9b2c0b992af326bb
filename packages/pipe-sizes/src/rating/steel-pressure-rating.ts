import { formula, input, output, range, ratio } from "@leat/formula";
import { metre, one } from "@leat/quantity";

import { astmA53, awwaM11 } from "../sources.ts";

/**
 * Pressure that a steel pipe carries at a share of its yield strength.
 *
 *     P = 2·F·Y·E·(m·t − c)/D
 *
 * The wall is the nominal one: m is the share of it that the mill guarantees, and c is what rust may take or a thread
 * cuts away. Half of the yield strength is for steady pressure; three quarters with surge.
 *
 * @throws NonPhysicalError a negative strength, factor, wall or allowance, an outside diameter of zero or less.
 * @throws OutOfValidityError a design factor above 0.75, a joint or wall share above 1, an allowance of more than half of the wall, and `onNotice` is absent.
 * @example
 * ```ts
 * import { steelPressureRating } from "@leat/pipe-sizes";
 * import { inch, poundPerSquareInch } from "@leat/quantity";
 *
 * const p = steelPressureRating({
 *   outsideDiameter: inch.of(3.5),
 *   wall: inch.of(0.216),
 *   yieldStrength: poundPerSquareInch.of(30_000),
 * });
 * p.in(poundPerSquareInch).toFixed(0); // => "1620"
 * ```
 */
export const steelPressureRating = /* @__PURE__ */ formula(() => ({
  id: "steel-pressure-rating",
  equation: "P = 2·F·Y·E·(m·t - c)/D",
  inputs: {
    /** Outside diameter of the pipe, not its nominal size. */
    outsideDiameter: input("length", "D", { domain: "positive" }),
    /** Nominal wall. */
    wall: input("length", "t"),
    /** Yield strength of the steel: 30 000 psi for grade A and furnace-welded pipe, 35 000 psi for grade B. */
    yieldStrength: input("pressure", "Y"),
    /** Share of the yield strength that the wall may be stressed to. */
    designFactor: input("ratio", "F", {
      default: one.of(0.5),
      because: awwaM11.at("half of the yield strength at working pressure", "memory"),
    }),
    /** Strength of the weld over that of the wall: 1 for seamless pipe, less for pipe with a seam that is not tested. */
    jointFactor: input("ratio", "E", {
      default: one.of(1),
      because: awwaM11.at("welds that are tested count as the wall", "memory"),
    }),
    /** Share of the nominal wall that the pipe is sure to have. */
    wallShare: input("ratio", "m", {
      default: one.of(0.875),
      because: astmA53.at(
        "the wall is nowhere more than 12.5 % under the nominal one",
        "secondary",
      ),
    }),
    /** Depth that rust may take, or that a thread cuts away. */
    corrosionAllowance: input("length", "c", {
      default: metre.of(0),
      because: awwaM11.at("coated pipe: none", "memory"),
    }),
  },
  output: output("pressure", "P"),
  limits: [
    range(
      "designFactor",
      { max: one.of(0.75) },
      awwaM11.at("three quarters of the yield strength with surge", "memory"),
    ),
    range("jointFactor", { max: one.of(1) }, awwaM11.at("a weld adds nothing", "memory")),
    range(
      "wallShare",
      { max: one.of(1) },
      astmA53.at("the nominal wall is not exceeded by plan", "secondary"),
    ),
    ratio(
      "corrosionAllowance",
      "wall",
      { max: 0.5 },
      awwaM11.at("an allowance that leaves a wall", "memory"),
    ),
  ],
  source: awwaM11.at("Barlow's formula, p = 2·s·t/D", "memory"),
  body: ({ D, t, Y, F, E, m, c }) => (2 * F * Y * E * (m * t - c)) / D,
}));
