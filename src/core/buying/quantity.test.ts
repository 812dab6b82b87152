import fc from "fast-check";
import { expect, test } from "vitest";
import type { Price } from "../materials/price.ts";
import { amountFor, parted } from "./money.ts";
import { bought, costAt } from "./quantity.ts";

const METRE = { kind: "length", mm: 1000 } as const;
const price: Price = { amount: 12, basis: METRE, step: 100, least: 500, steps: [{ from: 5000, amount: 11 }] };

// By hand, in steps of 10 cm, half a metre at least, from 5 m on 11.00: 4.6 m at 12.00 are 55.20, 5 m at 11.00 are 55.00.
test("the least that is sold, the shop's steps, and more where more costs less", () => {
  expect(bought(price, 120, "EUR")).toEqual({ quantity: 500, cost: 600 });
  expect(bought(price, 1420, "EUR")).toEqual({ quantity: 1500, cost: 1800 });
  expect(bought(price, 4500, "EUR")).toEqual({ quantity: 4500, cost: 5400 });
  expect(bought(price, 4501, "EUR")).toEqual({ quantity: 5000, cost: 5500 });
  expect(bought(price, 7010, "EUR")).toEqual({ quantity: 7100, cost: 7810 });
});

// Half a yard at 9.00 a yard, asked for 20 in: one yard. By hand.
test("sold by the half yard", () => {
  const yards: Price = { amount: 9, basis: { kind: "length", mm: 914.4 }, step: 457.2 };
  expect(bought(yards, 20 * 25.4, "USD")).toEqual({ quantity: 914.4, cost: 900 });
  expect(bought(yards, 18 * 25.4, "USD")).toEqual({ quantity: 457.2, cost: 450 });
});

test("needing more never costs less, and nothing cheaper is passed over", () => {
  const step = fc.record({ from: fc.integer({ min: 1, max: 9000 }), amount: fc.integer({ min: 1, max: 30 }) });
  fc.assert(
    fc.property(
      fc.array(step, { maxLength: 4 }),
      fc.constantFrom(0, 100, 250, 457.2),
      fc.integer({ min: 0, max: 2000 }),
      fc.integer({ min: 1, max: 8000 }),
      fc.integer({ min: 0, max: 3000 }),
      (steps, sold, least, needed, more) => {
        const asked: Price = { amount: 20, basis: METRE, step: sold, least, steps };
        const few = bought(asked, needed, "EUR");
        expect(few.quantity).toBeGreaterThanOrEqual(needed - 1e-6);
        // Dearer from a quantity on is a price list nobody writes: only falling prices promise this.
        const falls = [...steps].sort((a, b) => a.from - b.from);
        const isFalling = falls.every(({ amount }, i) => amount <= (falls[i - 1]?.amount ?? 20));
        if (!isFalling) return;
        expect(bought(asked, needed + more, "EUR").cost).toBeGreaterThanOrEqual(few.cost);
        for (const { from } of steps) {
          const quantity = sold > 0 ? Math.ceil(from / sold - 1e-9) * sold : from;
          if (quantity >= Math.max(needed, least))
            expect(few.cost).toBeLessThanOrEqual(costAt(asked, quantity, "EUR"));
        }
      },
    ),
  );
});

test("a price with a fraction of a cent, a currency without cents and one with three digits", () => {
  expect(amountFor(0.125, 1000, 1000, "EUR")).toBe(13);
  expect(amountFor(1250, 1500, 1000, "JPY")).toBe(1875);
  expect(amountFor(1.2345, 1000, 1000, "KWD")).toBe(1235);
});

test("parts of an amount add up to it, and none is a coin or more off its share", () => {
  const weight = fc.integer({ min: 0, max: 10_000 });
  fc.assert(
    fc.property(
      fc.integer({ min: 0, max: 1e9 }),
      fc.array(weight, { minLength: 1, maxLength: 9 }),
      (minor, weights) => {
        const parts = parted(minor, weights);
        const all = weights.reduce((sum, each) => sum + each, 0);
        expect(parts.reduce((sum, each) => sum + each, 0)).toBe(minor);
        if (all === 0) return;
        for (const [i, part] of parts.entries())
          expect(Math.abs(part - (minor * weights[i]!) / all)).toBeLessThan(1 + 1e-6);
      },
    ),
  );
});
