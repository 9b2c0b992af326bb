// The one table of kinds and units. `npm run generate` makes from it the type-level tables, the
// run-time table and docs/quantities.md; a test refuses generated files that are out of date.
//
// Exponents are of metre, kilogram, second, ampere, kelvin, currency (¤) and radian. The first kind
// with a set of exponents is what a product of those exponents is called; a kind with `of` is one
// that must not be mixed with its plain quantity by accident.

/** Base units, in the order in which exponents are written. */
export const bases = ["m", "kg", "s", "A", "K", "¤", "rad"];

/** @type {Array<{ name: string, unit: string, dim?: Record<string, number>, of?: string, says: string }>} */
export const kinds = [
  { name: "ratio", unit: "1", dim: {}, says: "a number over a number of the same sort" },
  { name: "length", unit: "m", dim: { m: 1 }, says: "a distance" },
  { name: "area", unit: "m²", dim: { m: 2 }, says: "a surface or a cross-section" },
  { name: "volume", unit: "m³", dim: { m: 3 }, says: "a volume of water, of a tank" },
  { name: "volume flow", unit: "m³/s", dim: { m: 3, s: -1 }, says: "volume passing per time" },
  { name: "velocity", unit: "m/s", dim: { m: 1, s: -1 }, says: "distance per time" },
  {
    name: "acceleration",
    unit: "m/s²",
    dim: { m: 1, s: -2 },
    says: "change of velocity per time; gravity",
  },
  {
    name: "kinematic viscosity",
    unit: "m²/s",
    dim: { m: 2, s: -1 },
    says: "dynamic viscosity over density",
  },
  {
    name: "specific energy",
    unit: "J/kg",
    dim: { m: 2, s: -2 },
    says: "energy per mass, gravity times head",
  },
  { name: "mass", unit: "kg", dim: { kg: 1 }, says: "a mass" },
  {
    name: "density",
    unit: "kg/m³",
    dim: { kg: 1, m: -3 },
    says: "mass per volume; a concentration by mass",
  },
  { name: "mass flow", unit: "kg/s", dim: { kg: 1, s: -1 }, says: "mass passing per time" },
  {
    name: "mass per length",
    unit: "kg/m",
    dim: { kg: 1, m: -1 },
    says: "weight of a pipe or a cable, per length",
  },
  { name: "time", unit: "s", dim: { s: 1 }, says: "a duration" },
  {
    name: "frequency",
    unit: "Hz",
    dim: { s: -1 },
    says: "cycles per time; not a speed of rotation",
  },
  { name: "force", unit: "N", dim: { kg: 1, m: 1, s: -2 }, says: "a push or a pull" },
  {
    name: "pressure",
    unit: "Pa",
    dim: { kg: 1, m: -1, s: -2 },
    says: "a pressure difference; a stress; a modulus",
  },
  {
    name: "dynamic viscosity",
    unit: "Pa·s",
    dim: { kg: 1, m: -1, s: -1 },
    says: "shear stress over shear rate",
  },
  {
    name: "specific weight",
    unit: "N/m³",
    dim: { kg: 1, m: -2, s: -2 },
    says: "density times gravity",
  },
  { name: "energy", unit: "J", dim: { kg: 1, m: 2, s: -2 }, says: "work or heat" },
  { name: "power", unit: "W", dim: { kg: 1, m: 2, s: -3 }, says: "energy per time" },
  { name: "angle", unit: "rad", dim: { rad: 1 }, says: "a plane angle" },
  {
    name: "angular velocity",
    unit: "rad/s",
    dim: { rad: 1, s: -1 },
    says: "angle turned per time; speed of a wheel",
  },
  {
    name: "torque",
    unit: "N·m/rad",
    dim: { kg: 1, m: 2, s: -2, rad: -1 },
    says: "force times arm, per radian turned; not an energy",
  },
  {
    name: "moment of inertia",
    unit: "kg·m²/rad²",
    dim: { kg: 1, m: 2, rad: -2 },
    says: "torque over angular acceleration",
  },
  { name: "current", unit: "A", dim: { A: 1 }, says: "electric current" },
  {
    name: "charge",
    unit: "C",
    dim: { A: 1, s: 1 },
    says: "current times time; a battery's amp hours",
  },
  {
    name: "voltage",
    unit: "V",
    dim: { kg: 1, m: 2, s: -3, A: -1 },
    says: "electric potential difference",
  },
  {
    name: "resistance",
    unit: "Ω",
    dim: { kg: 1, m: 2, s: -3, A: -2 },
    says: "voltage over current",
  },
  {
    name: "resistance per length",
    unit: "Ω/m",
    dim: { kg: 1, m: 1, s: -3, A: -2 },
    says: "resistance of a conductor, per length",
  },
  {
    name: "resistivity",
    unit: "Ω·m",
    dim: { kg: 1, m: 3, s: -3, A: -2 },
    says: "resistance times area over length",
  },
  {
    name: "conductance",
    unit: "S",
    dim: { kg: -1, m: -2, s: 3, A: 2 },
    says: "current over voltage",
  },
  {
    name: "conductivity",
    unit: "S/m",
    dim: { kg: -1, m: -3, s: 3, A: 2 },
    says: "electric conductivity of water",
  },
  { name: "inductance", unit: "H", dim: { kg: 1, m: 2, s: -2, A: -2 }, says: "flux over current" },
  {
    name: "capacitance",
    unit: "F",
    dim: { kg: -1, m: -2, s: 4, A: 2 },
    says: "charge over voltage",
  },
  {
    name: "voltage constant",
    unit: "V·s/rad",
    dim: { kg: 1, m: 2, s: -2, A: -1, rad: -1 },
    says: "a machine's volts over its speed",
  },
  {
    name: "temperature difference",
    unit: "K",
    dim: { K: 1 },
    says: "a rise or a fall of temperature; a temperature itself is a point",
  },
  {
    name: "temperature coefficient",
    unit: "1/K",
    dim: { K: -1 },
    says: "relative change per kelvin",
  },
  {
    name: "specific heat",
    unit: "J/(kg·K)",
    dim: { m: 2, s: -2, K: -1 },
    says: "heat per mass and kelvin",
  },
  {
    name: "heat capacity",
    unit: "J/K",
    dim: { kg: 1, m: 2, s: -2, K: -1 },
    says: "heat per kelvin",
  },
  { name: "money", unit: "¤", dim: { "¤": 1 }, says: "an amount in one currency" },
  { name: "price per length", unit: "¤/m", dim: { "¤": 1, m: -1 }, says: "price of pipe or cable" },
  {
    name: "price per energy",
    unit: "¤/J",
    dim: { "¤": 1, kg: -1, m: -2, s: 2 },
    says: "price of a kilowatt hour",
  },

  { name: "gross head", unit: "m", of: "length", says: "intake water level above the jet" },
  { name: "net head", unit: "m", of: "length", says: "head left before the nozzle, above the jet" },
  { name: "head loss", unit: "m", of: "length", says: "head turned to heat on the way" },
  { name: "pipe length", unit: "m", of: "length", says: "length along the pipe; not a head" },
  { name: "hydraulic power", unit: "W", of: "power", says: "power of water" },
  { name: "shaft power", unit: "W", of: "power", says: "power at a shaft" },
  { name: "electric power", unit: "W", of: "power", says: "volts times amps" },
  { name: "efficiency", unit: "1", of: "ratio", says: "power out over power in, 0 to 1" },
  { name: "coefficient", unit: "1", of: "ratio", says: "an empirical factor" },
  { name: "count", unit: "1", of: "ratio", says: "a number of things" },
];

/** Sums of unlike kinds that have a meaning: [left, sign, right, result]. */
export const sums = [
  ["gross head", "-", "head loss", "net head"],
  ["gross head", "-", "net head", "head loss"],
  ["net head", "+", "head loss", "gross head"],
  ["head loss", "+", "net head", "gross head"],
  ...["power", "hydraulic power", "shaft power", "electric power"].flatMap((a, _, all) =>
    all.flatMap((b) =>
      b === a
        ? []
        : [
            [a, "+", b, "power"],
            [a, "-", b, "power"],
          ],
    ),
  ),
];

/** What kind of point stands on each origin. */
export const origins = [
  { name: "absolute zero", difference: "temperature difference", says: "a temperature" },
  { name: "vacuum", difference: "pressure", says: "an absolute pressure" },
  {
    name: "local atmosphere",
    difference: "pressure",
    instance: true,
    says: "a gauge pressure, at its station",
  },
  {
    name: "site datum",
    difference: "length",
    instance: true,
    says: "an elevation, over its datum",
  },
  { name: "staff zero", difference: "length", instance: true, says: "a stage, on its staff" },
];

// Factors are expressions over exact definitions, worked out by the generator in exact rational
// arithmetic and rounded once, so that no factor carries the error of another.
// The words beside the symbol are in the spelling of the reader: it takes off a plural s, and turns
// meter into metre, ′ into ' and the like.
/** @type {Array<[name: string, kind: string, symbol: string, factor: string, also: string[], us?: boolean]>} */
export const units = [
  ["metre", "length", "m", "1", ["metre"]],
  ["millimetre", "length", "mm", "1/1000", ["millimetre"]],
  ["centimetre", "length", "cm", "1/100", ["centimetre"]],
  ["kilometre", "length", "km", "1000", ["kilometre"]],
  ["inch", "length", "in", "0.0254", ["inch", "inches", '"'], true],
  ["foot", "length", "ft", "0.3048", ["foot", "feet", "'"], true],
  ["yard", "length", "yd", "3*0.3048", ["yard"], true],
  ["mile", "length", "mi", "5280*0.3048", ["mile"], true],
  ["kilofoot", "length", "kft", "1000*0.3048", [], true],

  ["squareMetre", "area", "m²", "1", []],
  ["squareMillimetre", "area", "mm²", "1/1000000", []],
  ["squareCentimetre", "area", "cm²", "1/10000", []],
  ["squareKilometre", "area", "km²", "1000000", []],
  ["hectare", "area", "ha", "10000", ["hectare"]],
  ["squareInch", "area", "in²", "0.0254*0.0254", ["sq in"], true],
  ["squareFoot", "area", "ft²", "0.3048*0.3048", ["sq ft"], true],
  ["acre", "area", "acre", "43560*0.3048*0.3048", ["ac"], true],
  ["squareMile", "area", "mi²", "5280*5280*0.3048*0.3048", ["sq mi"], true],

  ["cubicMetre", "volume", "m³", "1", []],
  ["litre", "volume", "L", "1/1000", ["l", "litre"]],
  ["gallon", "volume", "gal", "231*0.0254*0.0254*0.0254", ["gallon", "US gal", "US gallon"], true],
  [
    "imperialGallon",
    "volume",
    "imp gal",
    "0.00454609",
    ["imperial gal", "imperial gallon", "UK gal"],
  ],
  ["cubicFoot", "volume", "ft³", "0.3048*0.3048*0.3048", ["cu ft"], true],
  [
    "acreFoot",
    "volume",
    "acre-ft",
    "43560*0.3048*0.3048*0.3048",
    ["acre-foot", "acre-feet", "ac-ft"],
    true,
  ],

  ["cubicMetrePerSecond", "volume flow", "m³/s", "1", ["cumec"]],
  ["litrePerSecond", "volume flow", "L/s", "1/1000", []],
  ["litrePerMinute", "volume flow", "L/min", "1/60000", []],
  ["cubicMetrePerHour", "volume flow", "m³/h", "1/3600", []],
  ["cubicMetrePerDay", "volume flow", "m³/d", "1/86400", []],
  [
    "gallonPerMinute",
    "volume flow",
    "gal/min",
    "231*0.0254*0.0254*0.0254/60",
    ["gpm", "GPM"],
    true,
  ],
  ["gallonPerDay", "volume flow", "gal/d", "231*0.0254*0.0254*0.0254/86400", ["gpd"], true],
  ["cubicFootPerSecond", "volume flow", "ft³/s", "0.3048*0.3048*0.3048", ["cfs", "CFS"], true],

  ["metrePerSecond", "velocity", "m/s", "1", []],
  ["footPerSecond", "velocity", "ft/s", "0.3048", ["fps"], true],
  ["metrePerSecondSquared", "acceleration", "m/s²", "1", []],
  ["footPerSecondSquared", "acceleration", "ft/s²", "0.3048", [], true],
  ["squareMetrePerSecond", "kinematic viscosity", "m²/s", "1", []],
  ["squareMillimetrePerSecond", "kinematic viscosity", "mm²/s", "1/1000000", ["cSt"]],

  ["kilogram", "mass", "kg", "1", ["kilogram"]],
  ["gram", "mass", "g", "1/1000", ["gram"]],
  ["milligram", "mass", "mg", "1/1000000", []],
  ["tonne", "mass", "t", "1000", ["tonne"]],
  ["pound", "mass", "lb", "0.45359237", ["lbs", "pound"], true],
  ["kilogramPerCubicMetre", "density", "kg/m³", "1", []],
  ["gramPerLitre", "density", "g/L", "1", []],
  ["milligramPerLitre", "density", "mg/L", "1/1000", []],
  ["poundPerCubicFoot", "density", "lb/ft³", "0.45359237/(0.3048*0.3048*0.3048)", [], true],
  ["kilogramPerMetre", "mass per length", "kg/m", "1", []],
  ["poundPerFoot", "mass per length", "lb/ft", "0.45359237/0.3048", [], true],

  ["second", "time", "s", "1", ["sec", "second"]],
  ["minute", "time", "min", "60", ["minute"]],
  ["hour", "time", "h", "3600", ["hr", "hour"]],
  ["day", "time", "d", "86400", ["day"]],
  ["year", "time", "yr", "365.25*86400", ["year", "a"]],
  ["hertz", "frequency", "Hz", "1", []],

  ["newton", "force", "N", "1", []],
  ["kilonewton", "force", "kN", "1000", []],
  ["poundForce", "force", "lbf", "0.45359237*9.80665", [], true],

  ["pascal", "pressure", "Pa", "1", []],
  ["hectopascal", "pressure", "hPa", "100", ["mbar"]],
  ["kilopascal", "pressure", "kPa", "1000", []],
  ["megapascal", "pressure", "MPa", "1000000", []],
  ["gigapascal", "pressure", "GPa", "1000000000", []],
  ["bar", "pressure", "bar", "100000", []],
  ["atmosphere", "pressure", "atm", "101325", []],
  [
    "poundPerSquareInch",
    "pressure",
    "psi",
    "0.45359237*9.80665/(0.0254*0.0254)",
    ["PSI", "lbf/in²"],
    true,
  ],
  [
    "kilopoundPerSquareInch",
    "pressure",
    "ksi",
    "1000*0.45359237*9.80665/(0.0254*0.0254)",
    [],
    true,
  ],
  ["inchOfMercury", "pressure", "inHg", "0.0254*13595.1*9.80665", [], true],
  ["pascalSecond", "dynamic viscosity", "Pa·s", "1", []],
  ["millipascalSecond", "dynamic viscosity", "mPa·s", "1/1000", ["cP"]],

  ["joule", "energy", "J", "1", []],
  ["megajoule", "energy", "MJ", "1000000", []],
  ["wattHour", "energy", "Wh", "3600", []],
  ["kilowattHour", "energy", "kWh", "3600000", []],
  ["britishThermalUnit", "energy", "Btu", "1055.05585262", ["BTU"], true],
  ["watt", "power", "W", "1", ["watt"]],
  ["kilowatt", "power", "kW", "1000", []],
  ["voltAmpere", "power", "VA", "1", []],
  ["kilovoltAmpere", "power", "kVA", "1000", []],
  ["horsepower", "power", "hp", "550*0.3048*0.45359237*9.80665", ["HP"], true],
  ["metricHorsepower", "power", "metric hp", "75*9.80665", ["hp (metric)"]],

  ["radian", "angle", "rad", "1", []],
  ["degree", "angle", "°", "pi/180", ["deg", "degree"]],
  ["radianPerSecond", "angular velocity", "rad/s", "1", []],
  ["revolutionPerMinute", "angular velocity", "rpm", "pi/30", ["r/min", "rev/min", "RPM"]],
  ["newtonMetre", "torque", "N·m", "1", ["Nm"]],
  [
    "poundForceFoot",
    "torque",
    "lbf·ft",
    "0.45359237*9.80665*0.3048",
    ["lb-ft", "ft-lb", "ft·lbf"],
    true,
  ],

  ["ampere", "current", "A", "1", ["amp"]],
  ["milliampere", "current", "mA", "1/1000", []],
  ["coulomb", "charge", "C", "1", []],
  ["ampereHour", "charge", "Ah", "3600", []],
  ["volt", "voltage", "V", "1", ["volt"]],
  ["millivolt", "voltage", "mV", "1/1000", []],
  ["ohm", "resistance", "Ω", "1", ["ohm"]],
  ["milliohm", "resistance", "mΩ", "1/1000", ["mohm", "milliohm"]],
  ["ohmPerMetre", "resistance per length", "Ω/m", "1", []],
  ["ohmPerKilometre", "resistance per length", "Ω/km", "1/1000", []],
  ["ohmPerKilofoot", "resistance per length", "Ω/kft", "1/304.8", [], true],
  ["ohmMetre", "resistivity", "Ω·m", "1", []],
  ["siemens", "conductance", "S", "1", []],
  ["siemensPerMetre", "conductivity", "S/m", "1", []],
  ["microsiemensPerCentimetre", "conductivity", "µS/cm", "1/10000", ["uS/cm"]],
  ["henry", "inductance", "H", "1", []],
  ["millihenry", "inductance", "mH", "1/1000", []],
  ["farad", "capacitance", "F", "1", []],
  ["microfarad", "capacitance", "µF", "1/1000000", ["uF"]],
  ["voltPerThousandRpm", "voltage constant", "V/krpm", "3/(100*pi)", ["V/1000 rpm"]],

  ["kelvin", "temperature difference", "K", "1", []],
  ["perKelvin", "temperature coefficient", "1/K", "1", []],
  ["joulePerKilogramKelvin", "specific heat", "J/(kg·K)", "1", []],

  ["one", "ratio", "1", "1", []],
  ["percent", "ratio", "%", "1/100", []],
  ["each", "count", "each", "1", ["ea"]],
];
