import { existsSync, readFileSync } from "node:fs";

import {
  currency,
  exchange,
  metre,
  minorUnits,
  roundMoney,
  totalMoney,
  unit,
} from "@leat/quantity";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

import { thrown, untyped } from "./thrown.ts";

const usd = currency("USD");
const eur = currency("EUR");

const isKnown = (code: string): boolean => !thrown(() => currency(code)).startsWith("currency");

describe("currencies", () => {
  // Codes that a library of locales still lists, and why they are none here.
  const gone = "ANG BGN CUC HRK SLL ZWL".split(" ");
  const notMoney = "XDR XSU".split(" ");

  it("are those of Intl, but for withdrawn ones and units of account", () => {
    const listed = Intl.supportedValuesOf("currency");
    const notHere = listed.filter((code) => !isKnown(code));
    expect(notHere.filter((code) => !gone.includes(code) && !notMoney.includes(code))).toEqual([]);
    const letters = Array.from("ABCDEFGHIJKLMNOPQRSTUVWXYZ");
    const here = letters
      .flatMap((a) => letters.flatMap((b) => letters.map((c) => a + b + c)))
      .filter(isKnown);
    expect(here).toHaveLength(155);
    // The second code of the bolívar is in the standard and in no locale; new codes may be ahead of an older Intl.
    expect(
      here.filter((code) => !listed.includes(code) && !["VED", "XCG", "ZWG"].includes(code)),
    ).toEqual([]);
    for (const code of [...gone, ...notMoney]) expect(isKnown(code)).toBe(false);
  });

  it("have the minor units of ISO 4217, where Intl has not taken them away for want of coins", () => {
    // CLDR gives no digits to these, whose coins are gone; the standard keeps their hundredths or thousandths.
    const daily = "AFN ALL COP HUF IDR IQD IRR KPW LAK LBP MGA MMK PKR RSD SOS SYP YER".split(" ");
    for (const code of daily) expect(minorUnits(code)).toBe(code === "IQD" ? 3 : 2);
    for (const code of Intl.supportedValuesOf("currency").filter(isKnown)) {
      const { maximumFractionDigits } = new Intl.NumberFormat("en", {
        style: "currency",
        currency: code,
      }).resolvedOptions();
      if (!daily.includes(code))
        expect([code, minorUnits(code)]).toEqual([code, maximumFractionDigits]);
    }
    // ISO 4217 list one, from memory, to be confirmed.
    for (const [code, places] of [
      ["IQD", 3],
      ["KWD", 3],
      ["JPY", 0],
      ["ISK", 0],
      ["IDR", 2],
      ["HUF", 2],
      ["USD", 2],
    ] as const) {
      expect([code, minorUnits(code)]).toEqual([code, places]);
    }
  });

  const lists = "/usr/share/iso-codes/json/iso_4217.json";
  it.skipIf(!existsSync(lists))(
    "are in the list of the iso-codes project, but for those that are newer",
    () => {
      const { 4217: entries } = JSON.parse(readFileSync(lists, "utf8")) as {
        4217: { alpha_3: string }[];
      };
      const funds =
        "BOV CHE CHW CLF COU MXV USN UYI UYW XAG XAU XBA XBB XBC XBD XDR XPD XPT XSU XTS XUA XXX XAD".split(
          " ",
        );
      const codes = entries.map(({ alpha_3 }) => alpha_3);
      expect(
        codes.filter((code) => !isKnown(code) && !gone.includes(code) && !funds.includes(code)),
      ).toEqual([]);
    },
  );

  it("are refused where they are none", () => {
    expect(thrown(() => currency("usd"))).toBe("currency: usd is not an active ISO 4217 currency");
    expect(thrown(() => currency("USD EUR"))).toBe(
      "currency: USD EUR is not an active ISO 4217 currency",
    );
    expect(thrown(() => currency("DZD".slice(1) + "E"))).toBe(
      "currency: ZDE is not an active ISO 4217 currency",
    );
    expect(thrown(() => minorUnits("XXX"))).toBe(
      "currency: XXX is not an active ISO 4217 currency",
    );
    expect(thrown(() => currency(untyped(undefined)))).toBe(
      "currency: undefined is not an active ISO 4217 currency",
    );
  });
});

describe("amounts", () => {
  it("are rounded to the minor unit, a half away from zero", () => {
    expect(roundMoney(usd.of(1.005)).in(usd)).toBe(1.01);
    expect(roundMoney(usd.of(-1.005)).in(usd)).toBe(-1.01);
    expect(roundMoney(usd.of(1.0049)).in(usd)).toBe(1);
    expect(roundMoney(usd.of(0.335).times(3)).in(usd)).toBe(1.01);
    expect(roundMoney(currency("JPY").of(12.5)).toString()).toBe("13 JPY");
    expect(roundMoney(currency("KWD").of(1.2345)).toString()).toBe("1.235 KWD");
    expect(Object.is(roundMoney(usd.of(-0.001)).in(usd), 0)).toBe(true);
  });

  it("keep their uncertainty when they are rounded", () => {
    const price = usd.of(10.004).plusMinus(usd.of(1), "quote");
    expect(roundMoney(price).standardUncertainty().in(usd)).toBeCloseTo(1 / 1.96, 4);
  });

  it("are priced, rounded and totalled", () => {
    const pipe = usd.per(metre).of(3.333).times(metre.of(3));
    expect(pipe.in(usd)).toBeCloseTo(9.999, 12);
    expect(totalMoney([pipe, pipe]).in(usd)).toBe(20);
    expect(totalMoney([usd.of(0.1), usd.of(0.2)]).in(usd)).toBe(0.3);
  });

  it("are totalled as their cents are", () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: -1e9, max: 1e9 }), { minLength: 1, maxLength: 200 }),
        (cents) => {
          const total = totalMoney(cents.map((c) => usd.of(c / 100)));
          expect(total.in(usd)).toBe(cents.reduce((a, b) => a + b, 0) / 100);
        },
      ),
    );
  });

  it("are exchanged by a rate that is given", () => {
    expect(exchange(usd.of(12), 0.5, eur).toString()).toBe("6 EUR");
    const doubtful = exchange(usd.of(12).plusMinus(usd.of(1), "quote"), 0.5, eur);
    expect(doubtful.standardUncertainty().in(eur)).toBeCloseTo(0.5 / 1.96, 4);
    expect(exchange(unit("money", "kUSD", 1000, 1, "USD").of(1), 2, eur).in(eur)).toBe(2000);
  });

  it.each<[string, () => unknown]>([
    [
      "currency: USD and EUR do not combine: exchange one first",
      () => totalMoney([usd.of(1), eur.of(1)]),
    ],
    ["empty: a total of no lines has no currency", () => totalMoney([])],
    ["kind: 1 m is not money", () => roundMoney(untyped(metre.of(1)))],
    ["kind: 1 m is not money", () => exchange(untyped(metre.of(1)), 2, eur)],
    ["number: 0 is not a rate of exchange", () => exchange(usd.of(1), 0, eur)],
    ["number: NaN is not a rate of exchange", () => exchange(usd.of(1), NaN, eur)],
    ["number: Infinity is not a rate of exchange", () => exchange(usd.of(1), Infinity, eur)],
    [
      "currency: undefined is not an active ISO 4217 currency",
      () => exchange(usd.of(1), 2, unit("money", "x", 1)),
    ],
  ])("are refused: %s", (message, call) => {
    expect(thrown(call)).toBe(message);
  });
});
