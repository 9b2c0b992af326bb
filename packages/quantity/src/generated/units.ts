// Generated from kinds.mjs by `npm run generate`: change the table, not this file.

import { unit, type Unit } from "../unit.ts";

/** m, the coherent unit of length. */
export const metre: Unit<"length"> = /* @__PURE__ */ unit("length", "m", 1);
/** mm = 1/1000 m, exactly. */
export const millimetre: Unit<"length"> = /* @__PURE__ */ unit("length", "mm", 1, 1000);
/** cm = 1/100 m, exactly. */
export const centimetre: Unit<"length"> = /* @__PURE__ */ unit("length", "cm", 1, 100);
/** km = 1000 m, exactly. */
export const kilometre: Unit<"length"> = /* @__PURE__ */ unit("length", "km", 1000);
/** in = 0.0254 m, exactly. */
export const inch: Unit<"length"> = /* @__PURE__ */ unit("length", "in", 127, 5000);
/** ft = 0.3048 m, exactly. */
export const foot: Unit<"length"> = /* @__PURE__ */ unit("length", "ft", 381, 1250);
/** yd = 3 × 0.3048 m, exactly. */
export const yard: Unit<"length"> = /* @__PURE__ */ unit("length", "yd", 1143, 1250);
/** mi = 5280 × 0.3048 m, exactly. */
export const mile: Unit<"length"> = /* @__PURE__ */ unit("length", "mi", 201168, 125);
/** kft = 1000 × 0.3048 m, exactly. */
export const kilofoot: Unit<"length"> = /* @__PURE__ */ unit("length", "kft", 1524, 5);
/** m², the coherent unit of area. */
export const squareMetre: Unit<"area"> = /* @__PURE__ */ unit("area", "m²", 1);
/** mm² = 1/1000000 m², exactly. */
export const squareMillimetre: Unit<"area"> = /* @__PURE__ */ unit("area", "mm²", 1, 1000000);
/** cm² = 1/10000 m², exactly. */
export const squareCentimetre: Unit<"area"> = /* @__PURE__ */ unit("area", "cm²", 1, 10000);
/** km² = 1000000 m², exactly. */
export const squareKilometre: Unit<"area"> = /* @__PURE__ */ unit("area", "km²", 1000000);
/** ha = 10000 m², exactly. */
export const hectare: Unit<"area"> = /* @__PURE__ */ unit("area", "ha", 10000);
/** in² = 0.0254 × 0.0254 m², exactly. */
export const squareInch: Unit<"area"> = /* @__PURE__ */ unit("area", "in²", 16129, 25000000);
/** ft² = 0.3048 × 0.3048 m², exactly. */
export const squareFoot: Unit<"area"> = /* @__PURE__ */ unit("area", "ft²", 145161, 1562500);
/** acre = 43560 × 0.3048 × 0.3048 m², exactly. */
export const acre: Unit<"area"> = /* @__PURE__ */ unit("area", "acre", 316160658, 78125);
/** mi² = 5280 × 5280 × 0.3048 × 0.3048 m², exactly. */
export const squareMile: Unit<"area"> = /* @__PURE__ */ unit("area", "mi²", 40468564224, 15625);
/** m³, the coherent unit of volume. */
export const cubicMetre: Unit<"volume"> = /* @__PURE__ */ unit("volume", "m³", 1);
/** mL = 1/1000000 m³, exactly. */
export const millilitre: Unit<"volume"> = /* @__PURE__ */ unit("volume", "mL", 1, 1000000);
/** L = 1/1000 m³, exactly. */
export const litre: Unit<"volume"> = /* @__PURE__ */ unit("volume", "L", 1, 1000);
/** gal = 231 × 0.0254 × 0.0254 × 0.0254 m³, exactly. */
export const gallon: Unit<"volume"> = /* @__PURE__ */ unit("volume", "gal", 473176473, 125000000000);
/** imp gal = 0.00454609 m³, exactly. */
export const imperialGallon: Unit<"volume"> = /* @__PURE__ */ unit("volume", "imp gal", 454609, 100000000);
/** ft³ = 0.3048 × 0.3048 × 0.3048 m³, exactly. */
export const cubicFoot: Unit<"volume"> = /* @__PURE__ */ unit("volume", "ft³", 55306341, 1953125000);
/** acre-ft = 43560 × 0.3048 × 0.3048 × 0.3048 m³, exactly. */
export const acreFoot: Unit<"volume"> = /* @__PURE__ */ unit("volume", "acre-ft", 60228605349, 48828125);
/** m³/s, the coherent unit of volume flow. */
export const cubicMetrePerSecond: Unit<"volume flow"> = /* @__PURE__ */ unit("volume flow", "m³/s", 1);
/** L/s = 1/1000 m³/s, exactly. */
export const litrePerSecond: Unit<"volume flow"> = /* @__PURE__ */ unit("volume flow", "L/s", 1, 1000);
/** L/min = 1/60000 m³/s, exactly. */
export const litrePerMinute: Unit<"volume flow"> = /* @__PURE__ */ unit("volume flow", "L/min", 1, 60000);
/** m³/h = 1/3600 m³/s, exactly. */
export const cubicMetrePerHour: Unit<"volume flow"> = /* @__PURE__ */ unit("volume flow", "m³/h", 1, 3600);
/** m³/d = 1/86400 m³/s, exactly. */
export const cubicMetrePerDay: Unit<"volume flow"> = /* @__PURE__ */ unit("volume flow", "m³/d", 1, 86400);
/** gal/min = 231 × 0.0254 × 0.0254 × 0.0254/60 m³/s, exactly. */
export const gallonPerMinute: Unit<"volume flow"> = /* @__PURE__ */ unit("volume flow", "gal/min", 157725491, 2500000000000);
/** gal/d = 231 × 0.0254 × 0.0254 × 0.0254/86400 m³/s, exactly. */
export const gallonPerDay: Unit<"volume flow"> = /* @__PURE__ */ unit("volume flow", "gal/d", 157725491, 3600000000000000);
/** ft³/s = 0.3048 × 0.3048 × 0.3048 m³/s, exactly. */
export const cubicFootPerSecond: Unit<"volume flow"> = /* @__PURE__ */ unit("volume flow", "ft³/s", 55306341, 1953125000);
/** m/s, the coherent unit of velocity. */
export const metrePerSecond: Unit<"velocity"> = /* @__PURE__ */ unit("velocity", "m/s", 1);
/** ft/s = 0.3048 m/s, exactly. */
export const footPerSecond: Unit<"velocity"> = /* @__PURE__ */ unit("velocity", "ft/s", 381, 1250);
/** m/s², the coherent unit of acceleration. */
export const metrePerSecondSquared: Unit<"acceleration"> = /* @__PURE__ */ unit("acceleration", "m/s²", 1);
/** ft/s² = 0.3048 m/s², exactly. */
export const footPerSecondSquared: Unit<"acceleration"> = /* @__PURE__ */ unit("acceleration", "ft/s²", 381, 1250);
/** m²/s, the coherent unit of kinematic viscosity. */
export const squareMetrePerSecond: Unit<"kinematic viscosity"> = /* @__PURE__ */ unit("kinematic viscosity", "m²/s", 1);
/** mm²/s = 1/1000000 m²/s, exactly. */
export const squareMillimetrePerSecond: Unit<"kinematic viscosity"> = /* @__PURE__ */ unit("kinematic viscosity", "mm²/s", 1, 1000000);
/** kg, the coherent unit of mass. */
export const kilogram: Unit<"mass"> = /* @__PURE__ */ unit("mass", "kg", 1);
/** g = 1/1000 kg, exactly. */
export const gram: Unit<"mass"> = /* @__PURE__ */ unit("mass", "g", 1, 1000);
/** mg = 1/1000000 kg, exactly. */
export const milligram: Unit<"mass"> = /* @__PURE__ */ unit("mass", "mg", 1, 1000000);
/** t = 1000 kg, exactly. */
export const tonne: Unit<"mass"> = /* @__PURE__ */ unit("mass", "t", 1000);
/** lb = 0.45359237 kg, exactly. */
export const pound: Unit<"mass"> = /* @__PURE__ */ unit("mass", "lb", 45359237, 100000000);
/** kg/m³, the coherent unit of density. */
export const kilogramPerCubicMetre: Unit<"density"> = /* @__PURE__ */ unit("density", "kg/m³", 1);
/** g/L, the coherent unit of density. */
export const gramPerLitre: Unit<"density"> = /* @__PURE__ */ unit("density", "g/L", 1);
/** mg/L = 1/1000 kg/m³, exactly. */
export const milligramPerLitre: Unit<"density"> = /* @__PURE__ */ unit("density", "mg/L", 1, 1000);
/** lb/ft³ = 0.45359237/(0.3048 × 0.3048 × 0.3048) kg/m³, exactly. */
export const poundPerCubicFoot: Unit<"density"> = /* @__PURE__ */ unit("density", "lb/ft³", 28349523125, 1769802912);
/** kg/m, the coherent unit of mass per length. */
export const kilogramPerMetre: Unit<"mass per length"> = /* @__PURE__ */ unit("mass per length", "kg/m", 1);
/** lb/ft = 0.45359237/0.3048 kg/m, exactly. */
export const poundPerFoot: Unit<"mass per length"> = /* @__PURE__ */ unit("mass per length", "lb/ft", 45359237, 30480000);
/** s, the coherent unit of time. */
export const second: Unit<"time"> = /* @__PURE__ */ unit("time", "s", 1);
/** min = 60 s, exactly. */
export const minute: Unit<"time"> = /* @__PURE__ */ unit("time", "min", 60);
/** h = 3600 s, exactly. */
export const hour: Unit<"time"> = /* @__PURE__ */ unit("time", "h", 3600);
/** d = 86400 s, exactly. */
export const day: Unit<"time"> = /* @__PURE__ */ unit("time", "d", 86400);
/** yr = 365.25 × 86400 s, exactly. */
export const year: Unit<"time"> = /* @__PURE__ */ unit("time", "yr", 31557600);
/** Hz, the coherent unit of frequency. */
export const hertz: Unit<"frequency"> = /* @__PURE__ */ unit("frequency", "Hz", 1);
/** N, the coherent unit of force. */
export const newton: Unit<"force"> = /* @__PURE__ */ unit("force", "N", 1);
/** kN = 1000 N, exactly. */
export const kilonewton: Unit<"force"> = /* @__PURE__ */ unit("force", "kN", 1000);
/** lbf = 0.45359237 × 9.80665 N, exactly. */
export const poundForce: Unit<"force"> = /* @__PURE__ */ unit("force", "lbf", 8896443230521, 2000000000000);
/** Pa, the coherent unit of pressure. */
export const pascal: Unit<"pressure"> = /* @__PURE__ */ unit("pressure", "Pa", 1);
/** hPa = 100 Pa, exactly. */
export const hectopascal: Unit<"pressure"> = /* @__PURE__ */ unit("pressure", "hPa", 100);
/** kPa = 1000 Pa, exactly. */
export const kilopascal: Unit<"pressure"> = /* @__PURE__ */ unit("pressure", "kPa", 1000);
/** MPa = 1000000 Pa, exactly. */
export const megapascal: Unit<"pressure"> = /* @__PURE__ */ unit("pressure", "MPa", 1000000);
/** GPa = 1000000000 Pa, exactly. */
export const gigapascal: Unit<"pressure"> = /* @__PURE__ */ unit("pressure", "GPa", 1000000000);
/** bar = 100000 Pa, exactly. */
export const bar: Unit<"pressure"> = /* @__PURE__ */ unit("pressure", "bar", 100000);
/** atm = 101325 Pa, exactly. */
export const atmosphere: Unit<"pressure"> = /* @__PURE__ */ unit("pressure", "atm", 101325);
/** psi = 0.45359237 × 9.80665/(0.0254 × 0.0254) Pa, exactly. */
export const poundPerSquareInch: Unit<"pressure"> = /* @__PURE__ */ unit("pressure", "psi", 8896443230521, 1290320000);
/** ksi = 1000 × 0.45359237 × 9.80665/(0.0254 × 0.0254) Pa, exactly. */
export const kilopoundPerSquareInch: Unit<"pressure"> = /* @__PURE__ */ unit("pressure", "ksi", 8896443230521, 1290320);
/** inHg = 0.0254 × 13595.1 × 9.80665 Pa, exactly. */
export const inchOfMercury: Unit<"pressure"> = /* @__PURE__ */ unit("pressure", "inHg", 3386388640341, 1000000000);
/** Pa·s, the coherent unit of dynamic viscosity. */
export const pascalSecond: Unit<"dynamic viscosity"> = /* @__PURE__ */ unit("dynamic viscosity", "Pa·s", 1);
/** mPa·s = 1/1000 Pa·s, exactly. */
export const millipascalSecond: Unit<"dynamic viscosity"> = /* @__PURE__ */ unit("dynamic viscosity", "mPa·s", 1, 1000);
/** J, the coherent unit of energy. */
export const joule: Unit<"energy"> = /* @__PURE__ */ unit("energy", "J", 1);
/** MJ = 1000000 J, exactly. */
export const megajoule: Unit<"energy"> = /* @__PURE__ */ unit("energy", "MJ", 1000000);
/** Wh = 3600 J, exactly. */
export const wattHour: Unit<"energy"> = /* @__PURE__ */ unit("energy", "Wh", 3600);
/** kWh = 3600000 J, exactly. */
export const kilowattHour: Unit<"energy"> = /* @__PURE__ */ unit("energy", "kWh", 3600000);
/** Btu = 1055.05585262 J, exactly. */
export const britishThermalUnit: Unit<"energy"> = /* @__PURE__ */ unit("energy", "Btu", 52752792631, 50000000);
/** W, the coherent unit of power. */
export const watt: Unit<"power"> = /* @__PURE__ */ unit("power", "W", 1);
/** kW = 1000 W, exactly. */
export const kilowatt: Unit<"power"> = /* @__PURE__ */ unit("power", "kW", 1000);
/** VA, the coherent unit of power. */
export const voltAmpere: Unit<"power"> = /* @__PURE__ */ unit("power", "VA", 1);
/** kVA = 1000 W, exactly. */
export const kilovoltAmpere: Unit<"power"> = /* @__PURE__ */ unit("power", "kVA", 1000);
/** hp = 550 × 0.3048 × 0.45359237 × 9.80665 W, exactly. */
export const horsepower: Unit<"power"> = /* @__PURE__ */ unit("power", "hp", 745.6998715822702);
/** metric hp = 75 × 9.80665 W, exactly. */
export const metricHorsepower: Unit<"power"> = /* @__PURE__ */ unit("power", "metric hp", 588399, 800);
/** rad, the coherent unit of angle. */
export const radian: Unit<"angle"> = /* @__PURE__ */ unit("angle", "rad", 1);
/** ° = π/180 rad, exactly. */
export const degree: Unit<"angle"> = /* @__PURE__ */ unit("angle", "°", Math.PI, 180);
/** rad/s, the coherent unit of angular velocity. */
export const radianPerSecond: Unit<"angular velocity"> = /* @__PURE__ */ unit("angular velocity", "rad/s", 1);
/** rpm = π/30 rad/s, exactly. */
export const revolutionPerMinute: Unit<"angular velocity"> = /* @__PURE__ */ unit("angular velocity", "rpm", Math.PI, 30);
/** N·m, the coherent unit of torque. */
export const newtonMetre: Unit<"torque"> = /* @__PURE__ */ unit("torque", "N·m", 1);
/** lbf·ft = 0.45359237 × 9.80665 × 0.3048 N·m/rad, exactly. */
export const poundForceFoot: Unit<"torque"> = /* @__PURE__ */ unit("torque", "lbf·ft", 3389544870828501, 2500000000000000);
/** A, the coherent unit of current. */
export const ampere: Unit<"current"> = /* @__PURE__ */ unit("current", "A", 1);
/** mA = 1/1000 A, exactly. */
export const milliampere: Unit<"current"> = /* @__PURE__ */ unit("current", "mA", 1, 1000);
/** C, the coherent unit of charge. */
export const coulomb: Unit<"charge"> = /* @__PURE__ */ unit("charge", "C", 1);
/** Ah = 3600 C, exactly. */
export const ampereHour: Unit<"charge"> = /* @__PURE__ */ unit("charge", "Ah", 3600);
/** V, the coherent unit of voltage. */
export const volt: Unit<"voltage"> = /* @__PURE__ */ unit("voltage", "V", 1);
/** mV = 1/1000 V, exactly. */
export const millivolt: Unit<"voltage"> = /* @__PURE__ */ unit("voltage", "mV", 1, 1000);
/** Ω, the coherent unit of resistance. */
export const ohm: Unit<"resistance"> = /* @__PURE__ */ unit("resistance", "Ω", 1);
/** mΩ = 1/1000 Ω, exactly. */
export const milliohm: Unit<"resistance"> = /* @__PURE__ */ unit("resistance", "mΩ", 1, 1000);
/** Ω/m, the coherent unit of resistance per length. */
export const ohmPerMetre: Unit<"resistance per length"> = /* @__PURE__ */ unit("resistance per length", "Ω/m", 1);
/** Ω/km = 1/1000 Ω/m, exactly. */
export const ohmPerKilometre: Unit<"resistance per length"> = /* @__PURE__ */ unit("resistance per length", "Ω/km", 1, 1000);
/** Ω/kft = 1/304.8 Ω/m, exactly. */
export const ohmPerKilofoot: Unit<"resistance per length"> = /* @__PURE__ */ unit("resistance per length", "Ω/kft", 5, 1524);
/** Ω·m, the coherent unit of resistivity. */
export const ohmMetre: Unit<"resistivity"> = /* @__PURE__ */ unit("resistivity", "Ω·m", 1);
/** S, the coherent unit of conductance. */
export const siemens: Unit<"conductance"> = /* @__PURE__ */ unit("conductance", "S", 1);
/** S/m, the coherent unit of conductivity. */
export const siemensPerMetre: Unit<"conductivity"> = /* @__PURE__ */ unit("conductivity", "S/m", 1);
/** µS/cm = 1/10000 S/m, exactly. */
export const microsiemensPerCentimetre: Unit<"conductivity"> = /* @__PURE__ */ unit("conductivity", "µS/cm", 1, 10000);
/** mS/cm = 1/10 S/m, exactly. */
export const millisiemensPerCentimetre: Unit<"conductivity"> = /* @__PURE__ */ unit("conductivity", "mS/cm", 1, 10);
/** µS·s/cm = 1/10000 S·s/m, exactly. */
export const microsiemensSecondPerCentimetre: Unit<"conductivity time"> = /* @__PURE__ */ unit("conductivity time", "µS·s/cm", 1, 10000);
/** (mg/L)/(µS/cm) = 10 kg/(m²·S), exactly. */
export const milligramPerLitrePerMicrosiemensPerCentimetre: Unit<"concentration per conductivity"> = /* @__PURE__ */ unit("concentration per conductivity", "(mg/L)/(µS/cm)", 10);
/** L/(s·km²) = 1/1000000000 m/s, exactly. */
export const litrePerSecondPerSquareKilometre: Unit<"runoff"> = /* @__PURE__ */ unit("runoff", "L/(s·km²)", 1, 1000000000);
/** mm/yr = 1/(1000 × 365.25 × 86400) m/s, exactly. */
export const millimetrePerYear: Unit<"runoff"> = /* @__PURE__ */ unit("runoff", "mm/yr", 1, 31557600000);
/** H, the coherent unit of inductance. */
export const henry: Unit<"inductance"> = /* @__PURE__ */ unit("inductance", "H", 1);
/** mH = 1/1000 H, exactly. */
export const millihenry: Unit<"inductance"> = /* @__PURE__ */ unit("inductance", "mH", 1, 1000);
/** F, the coherent unit of capacitance. */
export const farad: Unit<"capacitance"> = /* @__PURE__ */ unit("capacitance", "F", 1);
/** µF = 1/1000000 F, exactly. */
export const microfarad: Unit<"capacitance"> = /* @__PURE__ */ unit("capacitance", "µF", 1, 1000000);
/** V/krpm = 3/(100 × π) V·s/rad, exactly. */
export const voltPerThousandRpm: Unit<"voltage constant"> = /* @__PURE__ */ unit("voltage constant", "V/krpm", 3, 314.1592653589793);
/** K, the coherent unit of temperature difference. */
export const kelvin: Unit<"temperature difference"> = /* @__PURE__ */ unit("temperature difference", "K", 1);
/** 1/K, the coherent unit of temperature coefficient. */
export const perKelvin: Unit<"temperature coefficient"> = /* @__PURE__ */ unit("temperature coefficient", "1/K", 1);
/** J/(kg·K), the coherent unit of specific heat. */
export const joulePerKilogramKelvin: Unit<"specific heat"> = /* @__PURE__ */ unit("specific heat", "J/(kg·K)", 1);
/** 1, the coherent unit of ratio. */
export const one: Unit<"ratio"> = /* @__PURE__ */ unit("ratio", "1", 1);
/** % = 1/100 1, exactly. */
export const percent: Unit<"ratio"> = /* @__PURE__ */ unit("ratio", "%", 1, 100);
/** each, the coherent unit of count. */
export const each: Unit<"count"> = /* @__PURE__ */ unit("count", "each", 1);
