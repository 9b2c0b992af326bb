import { formula, input, output } from "@leat/formula";

import { swameeSharma } from "../sources.ts";

/**
 * Loss coefficient of an entrance flush with a wall, its edge rounded.
 *
 *     K = 0.5/(1 + 36·(r/D)^1.2)
 *
 * A square edge, r = 0, gives 0.5. Crane's table reads 0.24 at r/D = 0.04 and 0.09 at 0.1, where this gives 0.29 and
 * 0.15: the higher is followed. A pipe that projects into the water loses 0.8 to 1.0, see {@link entranceCoefficients}.
 *
 * @throws NonPhysicalError a negative radius, a bore of zero or less.
 */
export const roundedEntranceCoefficient = /* @__PURE__ */ formula(() => ({
  id: "rounded-entrance-coefficient",
  equation: "K = 0.5/(1 + 36·(r/D)^1.2)",
  inputs: {
    /** Radius of the rounded edge; 0 where it is square. */
    edgeRadius: input("length", "r"),
    /** Bore of the pipe. */
    insideDiameter: input("length", "D", { domain: "positive" }),
  },
  output: output("coefficient", "K"),
  source: swameeSharma.at("form loss of a rounded entrance", "secondary"),
  body: ({ r, D }) => 0.5 / (1 + 36 * (r / D) ** 1.2),
}));
