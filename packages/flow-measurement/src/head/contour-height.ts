import { firstPrinciples, formula, input, output, pointInput, ratio } from "@leat/formula";

/**
 * Height of a place between two contours of a map, taken as on an even slope.
 *
 *     z = z1 + I·a/b
 *
 * @throws NonPhysicalError a contour interval or a distance between contours that is not above zero.
 * @throws OutOfValidityError a place that is not between the two contours, and `onNotice` is absent.
 * @example
 * ```ts
 * const height = contourHeight({
 *   contour: point("site datum", foot.of(840), "map"),
 *   interval: foot.of(40),
 *   fromContour: millimetre.of(1.5),
 *   betweenContours: millimetre.of(6),
 * });
 * format(height, foot, 3); // => "850 ft"
 * ```
 */
export const contourHeight = /* @__PURE__ */ formula(() => ({
  id: "contour-height",
  equation: "z = z1 + I·a/b",
  inputs: {
    /** Height of the lower of the two contours. */
    contour: pointInput("site datum", "z1"),
    /** Height from one contour to the next. */
    interval: input("length", "I", { domain: "positive" }),
    /** How far up from the lower contour the place lies, measured on the map. */
    fromContour: input("length", "a"),
    /** How far the two contours are apart there, measured the same way. */
    betweenContours: input("length", "b", { domain: "positive" }),
  },
  output: output("length", "z"),
  limits: [
    ratio(
      "fromContour",
      "betweenContours",
      { max: 1 },
      firstPrinciples.at("a place between two contours"),
    ),
  ],
  source: firstPrinciples.at("a straight line between two heights"),
  body: ({ z1, I, a, b }) => z1 + (I * a) / b,
}));
