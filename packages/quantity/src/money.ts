import { QuantityError } from "./error.ts";
import { isQuantity, Quantity } from "./quantity.ts";
import { Unit } from "./unit.ts";

// ISO 4217, list one as published on 2026-01-01, without funds, metals and units of account: what a
// supplier can be paid in.
const codes =
  "AED AFN ALL AMD AOA ARS AUD AWG AZN BAM BBD BDT BHD BIF BMD BND BOB BRL BSD BTN BWP BYN BZD CAD " +
  "CDF CHF CLP CNY COP CRC CUP CVE CZK DJF DKK DOP DZD EGP ERN ETB EUR FJD FKP GBP GEL GHS GIP GMD " +
  "GNF GTQ GYD HKD HNL HTG HUF IDR ILS INR IQD IRR ISK JMD JOD JPY KES KGS KHR KMF KPW KRW KWD KYD " +
  "KZT LAK LBP LKR LRD LSL LYD MAD MDL MGA MKD MMK MNT MOP MRU MUR MVR MWK MXN MYR MZN NAD NGN NIO " +
  "NOK NPR NZD OMR PAB PEN PGK PHP PKR PLN PYG QAR RON RSD RUB RWF SAR SBD SCR SDG SEK SGD SHP SLE " +
  "SOS SRD SSP STN SVC SYP SZL THB TJS TMT TND TOP TRY TTD TWD TZS UAH UGX USD UYU UZS VED VES VND " +
  "VUV WST XAF XCD XCG XOF XPF YER ZAR ZMW ZWG";

/** Currencies without a minor unit, and those with a thousandth. */
const whole = "BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX VND VUV XAF XOF XPF";
const thousandths = "BHD IQD JOD KWD LYD OMR TND";

/** Whether a text is an active currency code. */
export function isCurrency(code: unknown): code is string {
  return typeof code === "string" && /^[A-Z]{3}$/.test(code) && codes.includes(code);
}

/**
 * The unit of a currency: `currency("USD").of(12)`, `currency("EUR").per(metre)`.
 *
 * @param code - An active ISO 4217 code of a currency; not of a fund or a metal.
 * @returns The unit.
 * @throws {@link QuantityError} `currency` for any other text.
 */
export function currency(code: string): Unit<"money"> {
  if (!isCurrency(code)) {
    throw new QuantityError(
      "currency",
      `${String(code).slice(0, 60)} is not an active ISO 4217 currency`,
    );
  }
  return new Unit("money", code, 1, 1, code);
}

/**
 * Decimal places of a currency: 2 for USD, 0 for JPY, 3 for KWD.
 *
 * @param code - An active ISO 4217 code.
 * @returns The number of places of its minor unit.
 * @throws {@link QuantityError} `currency`.
 */
export function minorUnits(code: string): number {
  const { symbol } = currency(code);
  return whole.includes(symbol) ? 0 : thousandths.includes(symbol) ? 3 : 2;
}

/**
 * An amount rounded to the minor unit of its currency, a half away from zero: 1.005 USD is 1.01 USD.
 *
 * It is the decimal number that is rounded, to 15 digits, not its binary neighbour below.
 *
 * @param amount - The amount.
 * @returns The rounded amount; its uncertainty stays.
 * @throws {@link QuantityError} `kind`, `currency`.
 */
export function roundMoney(amount: Quantity<"money">): Quantity<"money"> {
  if (!isQuantity(amount) || amount.kind !== "money") {
    throw new QuantityError("kind", `${String(amount)} is not money`);
  }
  const unit = currency(String(amount["~currency"]));
  const scale = 10 ** minorUnits(unit.symbol);
  const minor = Math.round(Number((Math.abs(amount["~si"]) * scale).toPrecision(15)));
  const value = minor === 0 ? 0 : (Math.sign(amount["~si"]) * minor) / scale;
  return new Quantity("money", value, amount["~sources"], unit.symbol, value, unit);
}

/**
 * The total of a quote: each line is rounded to the minor unit, then they are added.
 *
 * @param lines - Amounts of one currency; at least one.
 * @returns The total.
 * @throws {@link QuantityError} `empty` without lines, `currency` for two currencies.
 */
export function totalMoney(lines: readonly Quantity<"money">[]): Quantity<"money"> {
  if (lines.length === 0) throw new QuantityError("empty", "a total of no lines has no currency");
  return lines.map(roundMoney).reduce((sum, line) => roundMoney(sum.plus(line)));
}

/**
 * An amount in another currency: the one door between two.
 *
 * @param amount - The amount.
 * @param rate - How many of the other currency one of this buys; above zero.
 * @param to - The other currency: `currency("EUR")`.
 * @returns The amount, not rounded.
 * @throws {@link QuantityError} `kind`, `currency`, `number` for a rate that is no rate.
 */
export function exchange(
  amount: Quantity<"money">,
  rate: number,
  to: Unit<"money">,
): Quantity<"money"> {
  if (!(rate > 0 && rate < Infinity))
    throw new QuantityError("number", `${String(rate)} is not a rate of exchange`);
  const { symbol } = currency(String(to.currency));
  // Checks that it is money in a currency.
  roundMoney(amount);
  const { "~si": value, "~sources": sources } = amount.times(rate);
  return new Quantity("money", value, sources, symbol);
}
