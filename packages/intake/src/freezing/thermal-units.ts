import { type Unit, unit } from "@leat/quantity";

/** Heat through a material, over its thickness, area and the difference of temperature. */
export type ThermalConductivityKind = "m·kg·s^-3·K^-1";

/** What a length of pipe puts in the way of heat: difference of temperature over heat per length. */
export type PipeResistanceKind = "m^-1·kg^-1·s^3·K";

/** Heat from a surface over its area and the difference of temperature. */
export type SurfaceCoefficientKind = "kg·s^-3·K^-1";

/** W/(m·K), of a conductivity. */
export const wattPerMetreKelvin: Unit<ThermalConductivityKind> = /* @__PURE__ */ unit(
  "m·kg·s^-3·K^-1",
  "W/(m·K)",
  1,
);

/** Btu·in/(h·ft²·°F), of a conductivity: the degree is a difference, 5/9 K. */
export const btuInchPerHourSquareFootDegree: Unit<ThermalConductivityKind> = /* @__PURE__ */ unit(
  "m·kg·s^-3·K^-1",
  "Btu·in/(h·ft²·°F)",
  /* @__PURE__ */ 1055.05585262 * 0.0254 * 9,
  /* @__PURE__ */ 3600 * 0.3048 * 0.3048 * 5,
);

/** K·m/W, of a length of pipe. */
export const kelvinMetrePerWatt: Unit<PipeResistanceKind> = /* @__PURE__ */ unit(
  "m^-1·kg^-1·s^3·K",
  "K·m/W",
  1,
);

/** W/(m²·K), from a surface. */
export const wattPerSquareMetreKelvin: Unit<SurfaceCoefficientKind> = /* @__PURE__ */ unit(
  "kg·s^-3·K^-1",
  "W/(m²·K)",
  1,
);
