import { designScheme, type Designed } from "@leat/scheme";
import { type OpenFile, readSurvey } from "@leat/scheme/read";

/** The scheme of a survey's text. */
export function designed(text: string, file = "survey.yaml", open?: OpenFile): Designed {
  const { survey, assumed } = readSurvey(text, file, open);
  return designScheme(survey, assumed);
}

/** The shortest survey that gives a scheme. */
export const fiveLines = [
  "fall: 110 ft",
  "stream: 400 gal/min",
  "reaches: 900 ft",
  "cable: 300 ft",
  "bank: 48 V",
].join("\n");

/** An invented site, whole, in US customary units. */
export const customary = `
leat: 1
site: { name: an invented site, water temperature: 50 °F }
stream: { flow: 400 gal/min ± 20 gal/min, leave: 30 % }
fall: { gross: 100 ft ± 1 ft }
reaches:
  - pipe: 4 in PE DR 11
    bore: 3.63 in
    roughness: 0.0002 in
    length: 800 ft ± 5 ft
    fittings: [{ k: 0.5 }, { k: 0.4, count: 2 }]
jets: { nozzles: [0.6 in, 0.6 in], coefficient: 0.94, velocity coefficient: 0.97 }
wheel: { efficiency: 70 % ± 5 %, diameter: 8 in, speed ratio: 0.46 }
machine: { efficiency: 80 % ± 5 % }
cable: { length: 300 ft ± 3 ft, size: 2/0 AWG, metal: copper, temperature: 86 °F }
bank: { volts: 48 V, charging: 54.5 V, chemistry: flooded lead-acid }
divert: { margin: 50 %, volts: 56 V, element: { power: 2000 W, volts: 120 V }, tank: 50 gal, second: air heater }
`;

/** The same site in metric units. */
export const metric = `
leat: 1
site: { name: an invented site, water temperature: 10 °C }
stream: { flow: 25.23607856 L/s ± 1.261803928 L/s, leave: 30 % }
fall: { gross: 30.48 m ± 0.3048 m }
reaches:
  - pipe: 4 in PE DR 11
    bore: 92.202 mm
    roughness: 0.00508 mm
    length: 243.84 m ± 1.524 m
    fittings: [{ k: 0.5 }, { k: 0.4, count: 2 }]
jets: { nozzles: [15.24 mm, 15.24 mm], coefficient: 0.94, velocity coefficient: 0.97 }
wheel: { efficiency: 70 % ± 5 %, diameter: 203.2 mm, speed ratio: 0.46 }
machine: { efficiency: 80 % ± 5 % }
cable: { length: 91.44 m ± 0.9144 m, size: 2/0 AWG, metal: copper, temperature: 30 °C }
bank: { volts: 48 V, charging: 54.5 V, chemistry: flooded lead-acid }
divert: { margin: 50 %, volts: 56 V, element: { power: 2000 W, volts: 120 V }, tank: 189.2705892 L, second: air heater }
`;

/** A salt slug at a probe, as a survey writes it; {@link saltCloud} is its file. */
export const saltSlug: string = `{ salt: { mass: 60 g, probes: [{ file: cloud.csv, time: s, time unit: s,
  conductivity: EC, conductivity unit: µS/cm, reads: compensated }] } }`;

/** An invented cloud of salt over a background of 80 µS/cm. */
export const saltCloud: string = [
  "s,EC",
  ...Array.from({ length: 400 }, (_, i) => {
    const t = (5 * i - 400) / 60;
    const rise = t > 0 ? 12 * t ** 3 * Math.exp(-t) : 0;
    return `${5 * i},${(80 + rise + 0.01 * (i % 3)).toFixed(2)}`;
  }),
].join("\n");
