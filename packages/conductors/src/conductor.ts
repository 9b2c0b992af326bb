import type { Citation } from "@leat/formula";
import { celsius, perKelvin, type Point, type Quantity, QuantityError } from "@leat/quantity";
import { type Size } from "@leat/quantity/text";

import { iecConductors } from "./iec-conductors.ts";
import { necAmpacities } from "./nec-ampacities.ts";
import { necConductors } from "./nec-conductors.ts";

/** What a conductor is made of. */
export type ConductorMaterial = "copper" | "aluminium";

/** Stranded, or one solid wire. */
export type ConductorForm = "stranded" | "solid";

/** Currents that a conductor may carry, by what its insulation and terminals stand, under the table's conditions. */
export interface Ampacity {
  /** All of 60 °C. */
  readonly at60?: Quantity<"current">;
  /** All of 75 °C. */
  readonly at75?: Quantity<"current">;
  /** All of 90 °C. */
  readonly at90?: Quantity<"current">;
  /** The table, whose conditions these are. */
  readonly source: Citation;
}

/** A conductor as its table gives it. */
export interface Conductor {
  /** Such as `2/0 AWG copper`. */
  readonly name: string;
  /** System and name of its size. */
  readonly size: Size;
  /** Copper or aluminium. */
  readonly material: ConductorMaterial;
  /** Stranded or solid. */
  readonly form: ConductorForm;
  /** Nominal area. */
  readonly area: Quantity<"area">;
  /** Direct-current resistance, at {@link Conductor.at}. */
  readonly resistancePerLength: Quantity<"resistance per length">;
  /** Temperature at which the table gives the resistance. */
  readonly at: Point<"absolute zero">;
  /** Relative change of resistance per kelvin, from that temperature. */
  readonly temperatureCoefficient: Quantity<"temperature coefficient">;
  /** The table of resistances. */
  readonly source: Citation;
  /** Ampacity, where there is a table of it; metric conductors have none here. */
  readonly ampacity?: Ampacity;
}

/** Options of {@link conductor} and {@link conductorsOf}. */
export interface ConductorOptions {
  /** Stranded by default. */
  readonly form?: ConductorForm;
}

/** The printed rows of a table, with every column that any row has. */
type Printed = Readonly<Record<string, string | number | undefined>>;

/** What the two tables have in common. */
interface Family {
  readonly rows: readonly Printed[];
  readonly columns: Readonly<Record<string, { of(value: number): unknown }>>;
  readonly source: Citation;
  readonly at: Point<"absolute zero">;
  readonly temperatureCoefficient: Readonly<
    Record<ConductorMaterial, Quantity<"temperature coefficient">>
  >;
}

/** The American table, with the coefficients of its note; the metric one, with those of annealed copper and 61 % aluminium. */
function familyOf(system: Size["system"]): Family {
  const { definition } = system === "mm²" ? iecConductors : necConductors;
  const rows: readonly Printed[] = definition.rows;
  return {
    rows:
      system === "mm²"
        ? rows
        : rows.filter(({ size }) => (system === "kcmil") === isKcmil(String(size))),
    columns: definition.units,
    source: definition.source,
    at: celsius.at(system === "mm²" ? 20 : 75),
    temperatureCoefficient:
      system === "mm²"
        ? { copper: perKelvin.of(0.00393), aluminium: perKelvin.of(0.00403) }
        : { copper: perKelvin.of(0.00323), aluminium: perKelvin.of(0.0033) },
  };
}

/** American sizes from 250 on are thousands of circular mils; the gauge ends at 4/0. */
function isKcmil(size: string): boolean {
  return Number(size) >= 250;
}

const systems: readonly Size["system"][] = ["AWG", "kcmil", "mm²"];
const materials: readonly ConductorMaterial[] = ["copper", "aluminium"];
const forms: readonly ConductorForm[] = ["stranded", "solid"];

function oneOf<T extends string>(what: string, given: T, allowed: readonly T[]): T {
  if (allowed.includes(given)) return given;
  throw new QuantityError(
    "size",
    `${what} ${given.slice(0, 40)} is not one of ${allowed.join(", ")}.`,
  );
}

function columnOf(material: ConductorMaterial, form: ConductorForm): string {
  return form === "stranded" ? material : material === "copper" ? "solidCopper" : "solidAluminium";
}

/** A column of a printed row with its unit, or nothing where the table leaves it out. */
function printed<K extends string>(
  family: Family,
  row: Printed,
  column: string,
): Quantity<K> | undefined {
  const value = row[column];
  return typeof value === "number" ? (family.columns[column]?.of(value) as Quantity<K>) : undefined;
}

function ampacityOf(name: string, material: ConductorMaterial): Ampacity | undefined {
  const { rows, units, source } = necAmpacities.definition;
  const row = (rows as readonly Printed[]).find(({ size }) => size === name);
  const at = (limit: 60 | 75 | 90): Quantity<"current"> | undefined => {
    const value = row?.[`${material}${limit}`];
    return typeof value === "number" ? units[`${material}${limit}`].of(value) : undefined;
  };
  const [at60, at75, at90] = [at(60), at(75), at(90)];
  return at90 && { ...(at60 && { at60 }), ...(at75 && { at75 }), at90, source };
}

function make(
  system: Size["system"],
  family: Family,
  row: Printed,
  material: ConductorMaterial,
  form: ConductorForm,
): Conductor | undefined {
  const resistancePerLength = printed<"resistance per length">(
    family,
    row,
    columnOf(material, form),
  );
  const area = printed<"area">(family, row, "area");
  if (!resistancePerLength || !area) return undefined;
  const size = String(row["size"]);
  const ampacity = system === "mm²" ? undefined : ampacityOf(size, material);
  return {
    name: `${size} ${system} ${form === "solid" ? "solid " : ""}${material}`,
    size: { system, name: size },
    material,
    form,
    area,
    resistancePerLength,
    at: family.at,
    temperatureCoefficient: family.temperatureCoefficient[material],
    source: family.source,
    ...(ampacity && { ampacity }),
  };
}

/**
 * A conductor by its size and material.
 *
 * @param size - System and name, as `readSize` gives it: `readSize("2/0 AWG")`.
 * @param material - Copper or aluminium.
 * @param options - `form: "solid"` for one wire.
 * @returns The conductor, its resistance as printed.
 * @throws QuantityError `size` for a size, a material or a form that the table does not have; the message lists those it has.
 * @example
 * ```ts
 * const c = conductor({ system: "AWG", name: "2/0" }, "copper");
 * [c.name, c.resistancePerLength, c.at].join(", ");
 * // => 2/0 AWG copper, 0.0967 Ω/kft, 75 °C
 * ```
 */
export function conductor(
  size: Size,
  material: ConductorMaterial,
  options: ConductorOptions = {},
): Conductor {
  const found = conductorsOf(size.system, material, options);
  const one = found.find((c) => c.size.name === size.name);
  if (one) return one;
  const form = options.form ?? "stranded";
  throw new QuantityError(
    "size",
    `${size.name.slice(0, 40)} ${size.system} is not in the table of ${form} ${material}; it has ${found.map((c) => c.size.name).join(", ")}.`,
  );
}

/**
 * The conductors of one system and material, thinnest first, to choose from. American ones run on from AWG to kcmil.
 *
 * @param system - `AWG`, `kcmil` or `mm²`.
 * @param material - Copper or aluminium.
 * @param options - `form: "solid"` for solid wires.
 * @returns Conductors by rising area.
 * @throws QuantityError `size` for anything but a listed system, material or form.
 * @example
 * ```ts
 * conductorsOf("AWG", "copper")
 *   .filter((c) => c.resistancePerLength.in(ohmPerKilofoot) <= 0.2)
 *   .map((c) => c.size.name)
 *   .join(" ");
 * // => 2 1 1/0 2/0 3/0 4/0
 * ```
 */
export function conductorsOf(
  system: Size["system"],
  material: ConductorMaterial,
  options: ConductorOptions = {},
): Conductor[] {
  const family = familyOf(oneOf("system", system, systems));
  oneOf("material", material, materials);
  const form = oneOf("form", options.form ?? "stranded", forms);
  return family.rows
    .flatMap((row) => make(system, family, row, material, form) ?? [])
    .toSorted((a, b) => (a.area.lessThan(b.area) ? -1 : 1));
}
