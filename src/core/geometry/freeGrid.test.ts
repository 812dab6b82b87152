import fc from "fast-check";
import { expect, test } from "vitest";
import { linesOf, markBoxes } from "./freeGrid.ts";

test("lines rise from end to end, each once, by number and not by letter", () => {
  expect([...linesOf(0, 100, [30, 9, 30, 100, 0, -4, 120, 8.5])]).toEqual([0, 8.5, 9, 30, 100]);
  expect([...linesOf(-20, -5, [])]).toEqual([-20, -5]);
});

test("a cell is taken where its middle lies in a box, boxes reaching beyond the lines included", () => {
  const box = fc
    .tuple(...([0, 1, 2, 3] as const).map(() => fc.integer({ min: -2, max: 12 })))
    .map(([a, b, c, d]) => ({
      minX: Math.min(a!, b!),
      maxX: Math.max(a!, b!),
      minY: Math.min(c!, d!),
      maxY: Math.max(c!, d!),
    }));
  let taken = 0;
  fc.assert(
    fc.property(fc.array(box, { maxLength: 4 }), (boxes) => {
      const xs = linesOf(
        0,
        10,
        boxes.flatMap(({ minX, maxX }) => [minX, maxX]),
      );
      const ys = linesOf(
        1,
        9,
        boxes.flatMap(({ minY, maxY }) => [minY, maxY]),
      );
      const columns = xs.length - 1;
      const out = new Uint8Array(columns * (ys.length - 1));
      markBoxes(boxes, xs, ys, out);
      for (let row = 0; row + 1 < ys.length; row++)
        for (let column = 0; column < columns; column++) {
          const [x, y] = [(xs[column]! + xs[column + 1]!) / 2, (ys[row]! + ys[row + 1]!) / 2];
          const isIn = boxes.some(({ minX, maxX, minY, maxY }) => x > minX && x < maxX && y > minY && y < maxY);
          expect(out[row * columns + column]).toBe(isIn ? 1 : 0);
          if (isIn) taken++;
        }
    }),
    { numRuns: 150, endOnFailure: true },
  );
  expect(taken).toBeGreaterThan(200);
});
