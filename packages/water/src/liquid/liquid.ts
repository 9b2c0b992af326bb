// What all properties of the liquid share: the pressure that is taken where none is given, and where they end.

import {
  bound,
  commonPractice,
  firstPrinciples,
  type InputOptions,
  type Limit,
  range,
} from "@leat/formula";
import { kelvin, megapascal, pascal, type Point, point } from "@leat/quantity";

import { iapwsIf97 } from "../sources.ts";
import { saturationMegapascals } from "./saturation.ts";

/** One standard atmosphere, unless another pressure is given: 1 bar more adds 0.005 % to the density. */
export const atOneAtmosphere = (): { readonly default: Point<"vacuum"> } & Required<
  Pick<InputOptions<never>, "because">
> => ({
  default: point("vacuum", pascal.of(101325)),
  because: firstPrinciples.at("standard atmosphere, exact by convention"),
});

/** From the ice point to 100 °C. */
export const liquidTemperature = (): Limit<"temperature"> =>
  range(
    "temperature",
    { min: kelvin.of(273.15), max: kelvin.of(373.15) },
    commonPractice.at(
      "liquid water at a site, 0 °C to 100 °C; the formulation goes on to 623.15 K",
      "practice",
    ),
  );

/** Above the pressure of its vapour, or it boils, and within the formulation. */
export const liquidPressure = (): readonly Limit<"pressure">[] => [
  bound(
    "pressure",
    "pressure over vapour pressure",
    ({ T, p, K, MPa }: { T: number; p: number; K: number; MPa: number }) =>
      p / (saturationMegapascals(T / K) * MPa),
    { min: 1 },
    iapwsIf97.at("region 1", "secondary"),
  ),
  range("pressure", { max: megapascal.of(100) }, iapwsIf97.at("region 1", "secondary")),
];

/** Units in which the line of saturation is fitted. */
export const saturationUnits = /* @__PURE__ */ (() => ({
  K: kelvin.of(1),
  MPa: megapascal.of(1),
}))();
