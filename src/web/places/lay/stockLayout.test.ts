import { expect, test } from "vitest";
import { rectangleRing, solid } from "../../../core/geometry/ring.ts";
import type { LayProblem, Stock } from "../../../core/lay/problem/layProblem.ts";
import { isBesideLarger, stockAt, stockLayout, tableBox } from "./stockLayout.ts";

const leftover = (id: string, along: number, across: number): Stock => ({
  ...{ kind: "remnant", id, flaws: [] },
  outline: solid(rectangleRing(0, 0, along, across)),
});
const roll: Stock = { kind: "roll", id: "roll", width: 1000, length: 2000, flaws: [] };

function table(stocks: readonly Stock[]) {
  const problem: LayProblem = { materialId: "cloth", pieces: [], stocks, gap: 0, margin: 0, pinned: [] };
  return stockLayout(problem, null);
}

test("leftovers lie side by side above the roll as long as they are no longer than it", () => {
  const laid = table([leftover("a", 800, 400), leftover("b", 700, 500), leftover("c", 900, 300), roll]);
  const [a, b, c, own] = laid;
  expect(own).toMatchObject({ offsetX: 0, offsetY: 0 });
  // Own arithmetic: 60 mm between them; the third begins a row of its own, above.
  expect(b!.offsetX).toBe(860);
  expect(b!.offsetY).toBe(a!.offsetY);
  expect(c!.offsetX).toBe(0);
  expect(laid.every(({ offsetY }) => offsetY >= 0)).toBe(true);
  expect(c!.offsetY).not.toBe(a!.offsetY);
  expect(tableBox(laid)).toMatchObject({ minX: 0, maxX: 2000, minY: 0 });
  // One under the other they would take 400 + 500 + 300 above the roll.
  expect(tableBox(laid).maxY).toBeLessThan(1000 + 400 + 500 + 300);
});

test("no two stocks lie over one another, and each is found where it lies", () => {
  const laid = table([...[300, 500, 200, 640, 410].map((mm, i) => leftover(`left-${i}`, mm, 900 - mm)), roll]);
  const boxes = laid.map(({ stock, box, offsetX, offsetY }) => ({
    id: stock.id,
    ...{ minX: box.minX + offsetX, maxX: box.maxX + offsetX },
    ...{ minY: box.minY + offsetY, maxY: box.maxY + offsetY },
  }));
  for (const a of boxes)
    for (const b of boxes)
      if (a !== b) expect(a.maxX <= b.minX || b.maxX <= a.minX || a.maxY <= b.minY || b.maxY <= a.minY).toBe(true);
  for (const { id, minX, maxX, minY, maxY } of boxes)
    expect(stockAt(laid, (minX + maxX) / 2, (minY + maxY) / 2)?.stock.id).toBe(id);
});

test("leftovers alone make a table about half as wide again as high", () => {
  const laid = table(Array.from({ length: 9 }, (_, i) => leftover(`${i}`, 400, 400)));
  const { minX, maxX, minY, maxY } = tableBox(laid);
  expect((maxX - minX) / (maxY - minY)).toBeGreaterThan(0.8);
  expect((maxX - minX) / (maxY - minY)).toBeLessThan(2);
});

test("in a wide view leftovers lie before the cut end of the roll, in a high one above it", () => {
  const stocks = [leftover("a", 600, 400), leftover("b", 500, 500), roll];
  const problem: LayProblem = { materialId: "cloth", pieces: [], stocks, gap: 0, margin: 0, pinned: [] };
  expect(isBesideLarger(problem, null, 2.3)).toBe(true);
  expect(isBesideLarger(problem, null, 0.8)).toBe(false);
  const [a, b, own] = stockLayout(problem, null, true);
  expect(own).toMatchObject({ offsetX: 0, offsetY: 0 });
  for (const each of [a!, b!]) expect(each.box.maxX + each.offsetX).toBeLessThanOrEqual(-60);
  // Without a roll, or without leftovers, there is nothing to lie beside.
  expect(isBesideLarger({ ...problem, stocks: [roll] }, null, 3)).toBe(false);
});
