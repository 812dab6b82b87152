import fc from "fast-check";
import { expect, test } from "vitest";
import { minorDigits, toMinor } from "./money.ts";

// Outside: the currency digits of the machine's own tables (ECMA-402, CurrencyDigits: the minor units of ISO 4217).
test("every currency has the digits that the machine's tables give it", () => {
  const digitsOf = (currency: string) =>
    new Intl.NumberFormat("en", { style: "currency", currency }).resolvedOptions().maximumFractionDigits;
  const common = "EUR USD GBP CHF SEK NOK DKK PLN CZK CAD AUD NZD JPY KRW VND CLP ISK PYG UGX XOF XAF XPF".split(
    " ",
  );
  for (const currency of [...common, "BHD", "JOD", "KWD", "OMR", "TND", "INR", "MXN", "BRL", "ZAR", "TRY"])
    expect([currency, minorDigits(currency)]).toEqual([currency, digitsOf(currency)]);
  expect(minorDigits("shells")).toBe(2);
});

// Common practice, no source: inches ÷ 36 × price of a yard; five lines of one bag add up to 13.90.
test("cloth by the inches used, line by line and in all, to the last cent", () => {
  const lines = [
    [10, 20, 556],
    [19, 9.5, 501],
    [10, 5, 139],
    [5, 9, 125],
    [5, 5, 69],
  ] as const;
  const cents = lines.map(([inches, price]) => toMinor((inches / 36) * price, "EUR"));
  expect(cents).toEqual(lines.map(([, , cost]) => cost));
  expect(cents.reduce((sum, each) => sum + each)).toBe(1390);
});

test("an amount written with the currency's digits keeps them; half a coin goes up", () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 1e11 }), fc.constantFrom("EUR", "JPY", "KWD"), (minor, currency) => {
      const digits = minorDigits(currency);
      expect(toMinor(Number((minor / 10 ** digits).toFixed(digits)), currency)).toBe(minor);
    }),
  );
  // 1.005 and 5.555 are held by a double just under themselves.
  expect([1.005, 5.555, 0.125, 2.675].map((amount) => toMinor(amount, "EUR"))).toEqual([101, 556, 13, 268]);
  expect(() => toMinor(Number.NaN, "EUR")).toThrow(RangeError);
});
