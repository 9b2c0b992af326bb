import { QuantityError } from "./error.ts";
import { kindOf } from "./kind.ts";
import { type AnyQuantity, isQuantity, Quantity } from "./quantity.ts";
import { combineSources } from "./sources.ts";

// The named doors that add or remove the radian, and those between a pressure and a column of water.

/**
 * Torque of a force at an arm: F·r, per radian turned.
 *
 * @param force - The force, across the arm.
 * @param arm - Distance from the axis.
 * @returns The torque, which times an angular velocity is a power.
 */
export function torque(force: Quantity<"force">, arm: Quantity<"length">): Quantity<"torque"> {
  return product("torque", force, "force", arm, "length");
}

/**
 * Speed of a point on a wheel: ω·r.
 *
 * @param speed - Speed of rotation.
 * @param radius - Distance from the axis.
 * @returns The speed of the rim.
 */
export function rimSpeed(
  speed: Quantity<"angular velocity">,
  radius: Quantity<"length">,
): Quantity<"velocity"> {
  return product("velocity", speed, "angular velocity", radius, "length");
}

/**
 * The height of a column of water that a pressure holds up: p/(ρ·g).
 *
 * @param pressure - A pressure difference.
 * @param density - Density of the water, at its temperature.
 * @param gravity - Gravity at the site.
 * @returns The height.
 */
export function columnOfPressure(
  pressure: Quantity<"pressure">,
  density: Quantity<"density">,
  gravity: Quantity<"acceleration">,
): Quantity<"length"> {
  return pressure.dividedBy(density).dividedBy(gravity);
}

/**
 * The pressure under a column of water: ρ·g·h.
 *
 * @param height - Height of the column.
 * @param density - Density of the water, at its temperature.
 * @param gravity - Gravity at the site.
 * @returns The pressure difference.
 */
export function pressureOfColumn(
  height: Quantity<"length">,
  density: Quantity<"density">,
  gravity: Quantity<"acceleration">,
): Quantity<"pressure"> {
  return height.times(density).times(gravity);
}

function product<K extends string>(
  kind: K,
  a: AnyQuantity,
  aKind: string,
  b: AnyQuantity,
  bKind: string,
): Quantity<K> {
  for (const [value, needed] of [
    [a, aKind],
    [b, bKind],
  ] as const) {
    if (!isQuantity(value) || kindOf(value.kind).plain !== needed) {
      throw new QuantityError("kind", `a ${kind} needs a ${needed}, not ${String(value)}`);
    }
  }
  const sources = combineSources(a["~sources"], b["~si"], b["~sources"], a["~si"]);
  return new Quantity(kind, a["~si"] * b["~si"], sources);
}
