import { formula, input, output, range } from "@leat/formula";
import { kilometre } from "@leat/quantity";

import { iso2533 } from "../sources.ts";

/**
 * Geopotential height of a levelled elevation: the height that would cost the same work under standard
 * gravity.
 *
 *     H = r·z/(r + z)
 *
 * The standard atmosphere counts in it; a map does not. The two are 1.4 m apart at 3,000 m, 13 Pa of air.
 *
 * @throws OutOfValidityError outside −2 km to 80 km, and `onNotice` is absent.
 * @example
 * ```ts
 * import { metre } from "@leat/quantity";
 * import { geopotentialHeight } from "@leat/water";
 *
 * geopotentialHeight({ elevation: metre.of(3000) }).in(metre).toFixed(1); // => "2998.6"
 * ```
 */
export const geopotentialHeight = /* @__PURE__ */ formula(() => ({
  id: "geopotential-height",
  equation: "H = r·z/(r + z)",
  inputs: {
    /** Geometric height above mean sea level, as a map gives it; negative below. */
    elevation: input("length", "z", { domain: "any" }),
  },
  output: output("length", "H"),
  constants: { r: kilometre.of(6356.766) },
  limits: [
    range(
      "elevation",
      { min: kilometre.of(-2), max: kilometre.of(80) },
      iso2533.at("scope", "memory"),
    ),
  ],
  source: iso2533.at("geopotential and geometric altitude", "secondary"),
  body: ({ z, r }) => (r * z) / (r + z),
}));
