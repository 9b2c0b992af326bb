/** A number in plain digits, 15 significant, so that 0.1 + 0.2 is printed as 0.3. */
export function digitsOf(value: number): string {
  return plain(String(Number(value.toPrecision(15))));
}

/** Writes out an exponent from 1e-9 to 1e21; beyond, it stays. A minus is a minus sign in the text. */
export function plain(text: string): string {
  const [, sign = "", whole = "", part = "", exponent] =
    /^(-?)(\d+)(?:\.(\d+))?(?:e([+-]\d+))?$/.exec(text) ?? [];
  if (exponent === undefined) return text;
  const shift = Number(exponent);
  if (shift < -9 || shift > 21) return text;
  if (shift < 0) return `${sign}0.${"0".repeat(-shift - 1)}${whole}${part}`;
  return `${sign}${(whole + part).padEnd(whole.length + shift, "0")}`;
}

/** A number with its unit; 1 is not printed, and ° stands close. */
export function withUnit(number: string, symbol: string): string {
  return symbol === "1" ? number : symbol === "°" ? number + symbol : `${number} ${symbol}`;
}
