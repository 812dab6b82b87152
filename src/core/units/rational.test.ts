// Quotients of whole numbers against what ECMAScript itself rounds once: decimal text, and whole numbers.
import fc from "fast-check";
import { expect, test } from "vitest";
import { addRational, decimalRational, rationalToNumber, timesRational } from "./rational.ts";

const digits = (most: number) =>
  fc.array(fc.integer({ min: 0, max: 9 }), { minLength: 1, maxLength: most }).map((all) => `1${all.join("")}`);

test("a decimal of any length is the double that its text is", () => {
  fc.assert(
    fc.property(digits(60), digits(60), (whole, part) => {
      const text = `${whole}.${part}`;
      expect(rationalToNumber(decimalRational(text))).toBe(Number(text));
      expect(rationalToNumber(decimalRational(`0.${part}`))).toBe(Number(`0.${part}`));
      expect(rationalToNumber({ num: BigInt(whole), den: 1n })).toBe(Number(whole));
    }),
  );
  expect(decimalRational(".5")).toEqual({ num: 5n, den: 10n });
  expect(rationalToNumber(decimalRational(""))).toBe(0);
});

test("a quotient that both sides share a long factor with is the short one's double", () => {
  const small = fc.bigInt({ min: 1n, max: 10n ** 6n });
  fc.assert(
    fc.property(small, small, fc.integer({ min: 0, max: 90 }), (num, den, power) => {
      const factor = 7n ** BigInt(power);
      expect(rationalToNumber({ num: num * factor, den: den * factor })).toBe(Number(num) / Number(den));
    }),
  );
});

test("sums and products are exact", () => {
  const third = { num: 1n, den: 3n };
  const sum = addRational(addRational(third, { num: 1n, den: 6n }), { num: 1n, den: 2n });
  expect(rationalToNumber(sum)).toBe(1);
  expect(rationalToNumber(timesRational(third, { num: 9n, den: 4n }))).toBe(0.75);
  expect(rationalToNumber(timesRational(decimalRational("0.1"), { num: 254n, den: 10n }))).toBe(2.54);
});
