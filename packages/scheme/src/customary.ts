import { isQuantity } from "@leat/quantity";

const customary = new Set([
  "in",
  "ft",
  "yd",
  "mi",
  "gal",
  "gal/min",
  "gal/d",
  "ft³",
  "ft³/s",
  "acre",
  "mi²",
  "ft/s",
  "psi",
  "inHg",
]);
const metric = new Set([
  "mm",
  "cm",
  "m",
  "km",
  "L",
  "m³",
  "L/s",
  "L/min",
  "m³/s",
  "m³/h",
  "ha",
  "km²",
  "m/s",
  "kPa",
  "bar",
]);

/**
 * Whether a survey is written in US customary units: most of its lengths, flows, volumes and pressures are.
 *
 * @param survey - A survey, or a part of one.
 * @returns True where feet, gallons and psi outnumber metres, litres and bar.
 */
export function isCustomary(survey: unknown): boolean {
  let balance = 0;
  const walk = (value: unknown): void => {
    if (isQuantity(value)) {
      const symbol = value["~unit"]?.symbol ?? "";
      balance += Number(customary.has(symbol)) - Number(metric.has(symbol));
    } else if (Array.isArray(value)) value.forEach(walk);
    else if (typeof value === "object" && value !== null) Object.values(value).forEach(walk);
  };
  walk(survey);
  return balance > 0;
}
