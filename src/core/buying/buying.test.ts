import fc from "fast-check";
import { expect, test } from "vitest";
import { sampleMaterial } from "../../../tests/tools/sampleMaterial.ts";
import { rectangleRing, solid } from "../geometry/ring.ts";
import type { LayPlan } from "../lay/problem/layProblem.ts";
import { type Material, PLAIN_REPEAT } from "../materials/material.ts";
import { offcutsOf } from "./offcuts.ts";
import { purchaseOf } from "./purchase.ts";
import { matchedLength, roundUpTo } from "./quantity.ts";
import { shopLength } from "./shopLength.ts";

const EUROS = { currency: "EUR" };
const INCH = 25.4;
const YARD = 914.4;

// Common practice, no source: straight match, cut step = ceil(length / repeat) × repeat.
test.each([
  [96, 27, 108],
  [116, 25, 125],
  [118, 13, 130],
  [70, 32, 96],
  [64, 32, 64],
])("a piece of %d with a repeat of %d takes %d", (length, repeat, takes) => {
  expect(matchedLength(length, repeat)).toBe(takes);
});

const material = sampleMaterial("cloth", {
  price: { amount: 20, basis: { kind: "length", mm: YARD }, step: 0 },
  stock: [{ kind: "roll", id: "roll", width: 1500, selvedge: 0, length: null, squaring: 0, flaws: [] }],
});

const used = (usedLength: number, stockId = "roll"): LayPlan => ({
  materialId: "cloth",
  placements: [],
  unplaced: [],
  uses: [{ stockId, usedLength, bound: null }],
  evaluations: 0,
  seed: 1,
});

// Common practice, no source: inches ÷ 36 × price of a yard; five lines of one bag add up to 13.90.
test("cost of cloth by the inches used", () => {
  const lines = [
    [10, 20, 556],
    [19, 9.5, 501],
    [10, 5, 139],
    [5, 9, 125],
    [5, 5, 69],
  ] as const;
  const costs = lines.map(([inches, amount]) => {
    const priced = { ...material, price: { ...material.price!, amount } };
    return purchaseOf(priced, used(inches * INCH), EUROS).toPay!;
  });
  expect(costs).toEqual(lines.map(([, , cost]) => cost));
  expect(costs.reduce((a, b) => a + b)).toBe(1390);
});

test("bought in the shop's steps, ends squared, washed first, one repeat more", () => {
  const stock = [{ ...material.stock[0]!, squaring: 20 } as Material["stock"][number]];
  const price = { amount: 20, basis: { kind: "length", mm: 1000 }, step: 100 } as const;
  expect(purchaseOf({ ...material, price, stock }, used(1420), EUROS)).toMatchObject({
    buyLength: 1500,
    toPay: 3000,
  });
  expect(purchaseOf({ ...material, price, stock }, used(1460), EUROS)).toMatchObject({ buyLength: 1500 });
  expect(purchaseOf({ ...material, price, stock }, used(1460.01), EUROS)).toMatchObject({ buyLength: 1600 });
  const shrinkage = { lengthwise: 0.05, crosswise: 0, when: "before-cutting" } as const;
  expect(purchaseOf({ ...material, price, stock, shrinkage }, used(950), EUROS)).toMatchObject({ buyLength: 1100 });
  expect(
    purchaseOf({ ...material, price, stock, repeat: { ...PLAIN_REPEAT, along: 320 } }, used(1420), EUROS),
  ).toMatchObject({ buyLength: 1800 });
});

test("a length is asked for in the unit its price is by", () => {
  expect(shopLength(1485.9, material.price, "en")).toBe("1 5/8 yd");
  expect(shopLength(1300, { amount: 1, basis: { kind: "length", mm: 1000 }, step: 100 }, "en")).toBe("1.3 m");
  expect(shopLength(1300, null, "de")).toBe("1,3 m");
  // Without a step of the shop's own: up to the next centimetre or eighth, never short.
  expect(shopLength(499.1, null, "en")).toBe("0.5 m");
  expect(shopLength(1490, material.price, "en")).toBe("1 3/4 yd");
});

test("own stock is not bought; without a price nothing is made up", () => {
  const stock = [{ ...material.stock[0]!, length: 3000 } as Material["stock"][number]];
  expect(purchaseOf({ ...material, stock }, used(YARD), EUROS)).toMatchObject({
    buyLength: 0,
    toPay: 0,
    ownWorth: 2000,
  });
  expect(purchaseOf({ ...material, price: null }, used(500), EUROS)).toMatchObject({ buyLength: 500, toPay: null });
  expect(purchaseOf(material, used(0), EUROS)).toMatchObject({ bills: [], buyLength: 0, toPay: 0 });
});

// Common practice, no source: skins are sold by the square foot in quarters.
test("a skin costs its area, rounded up to a quarter of a square foot", () => {
  const shape = { kind: "rectangle", along: 24 * INCH, across: 12.1 * INCH } as const;
  const price = { amount: 10, basis: { kind: "area", mm2: (12 * INCH) ** 2 }, step: (12 * INCH) ** 2 / 4 } as const;
  const skin: Material = { ...material, price, stock: [{ kind: "skin", id: "hide", shape, flaws: [], count: 2 }] };
  expect(purchaseOf(skin, used(100, "hide (2)"), EUROS).ownWorth).toBe(2250);
});

test("steps are not doubled by rounding in the arithmetic", () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 500 }), fc.constantFrom(100, YARD / 8, 0.1), (n, step) => {
      expect(roundUpTo(n * step, step)).toBeCloseTo(n * step, 9);
    }),
  );
});

test("offcuts: what is left of a rectangle, largest first", () => {
  const region = { length: 1000, width: 500, outline: null };
  const piece = (x: number, y: number, along: number, across: number) => solid(rectangleRing(x, y, along, across));
  expect(offcutsOf(region, [piece(0, 0, 600, 300)])[0]).toEqual({ x: 600, y: 0, along: 400, across: 500 });
  expect(offcutsOf(region, [piece(0, 0, 1000, 500)])).toEqual([]);
  expect(offcutsOf({ ...region, length: 40 }, [])).toEqual([]);
});

test("offcuts of a skin stay inside its outline and off its flaws", () => {
  const outline = solid(Float64Array.of(0, 0, 400, 0, 0, 400));
  const [first] = offcutsOf({ length: 400, width: 400, outline }, []);
  // The largest square in the corner of a right triangle has half its legs as sides: here 200 less a cell.
  expect(first).toMatchObject({ x: 5, y: 5 });
  expect(first!.along * first!.across).toBeGreaterThan(185 * 185);
  expect(first!.x + first!.along + first!.y + first!.across).toBeLessThanOrEqual(400);
});

test("no offcut meets a piece or another offcut", () => {
  const box = fc.tuple(
    fc.nat(700),
    fc.nat(350),
    fc.integer({ min: 20, max: 300 }),
    fc.integer({ min: 20, max: 200 }),
  );
  fc.assert(
    fc.property(fc.array(box, { maxLength: 8 }), (boxes) => {
      const taken = boxes.map(([x, y, along, across]) => ({ x, y, along, across }));
      const found = offcutsOf(
        { length: 800, width: 400, outline: null },
        taken.map(({ x, y, along, across }) => solid(rectangleRing(x, y, along, across))),
      );
      const apart = (a: (typeof taken)[0], b: (typeof taken)[0]) =>
        a.x + a.along <= b.x || b.x + b.along <= a.x || a.y + a.across <= b.y || b.y + b.across <= a.y;
      found.forEach((offcut, i) => {
        expect(taken.every((piece) => apart(offcut, piece))).toBe(true);
        expect(found.slice(i + 1).every((other) => apart(offcut, other))).toBe(true);
        expect(Math.min(offcut.along, offcut.across)).toBeGreaterThanOrEqual(60);
      });
    }),
    { numRuns: 60 },
  );
});
