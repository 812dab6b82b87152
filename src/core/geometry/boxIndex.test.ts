import fc from "fast-check";
import { expect, test } from "vitest";
import { boxesMeet } from "./box.ts";
import { boxIndex } from "./boxIndex.ts";

const box = fc
  .tuple(...([0, 1, 2, 3] as const).map(() => fc.integer({ min: -50, max: 50 })))
  .map(([a, b, c, d]) => ({
    minX: Math.min(a!, b!),
    maxX: Math.max(a!, b!),
    minY: Math.min(c!, d!),
    maxY: Math.max(c!, d!),
  }));

test("an index finds what looking at every box finds, in the same order", () => {
  let found = 0;
  fc.assert(
    fc.property(
      fc.array(box, { maxLength: 60 }),
      fc.array(box, { minLength: 1, maxLength: 8 }),
      (boxes, windows) => {
        const near = boxIndex(boxes, (one) => one);
        for (const window of windows) {
          const expected = boxes.filter((one) => boxesMeet(one, window));
          found += expected.length;
          expect(near(window)).toEqual(expected);
        }
      },
    ),
  );
  expect(found).toBeGreaterThan(500);
});

test("boxes that touch at a corner meet, boxes apart do not", () => {
  const a = { minX: 0, maxX: 1, minY: 0, maxY: 1 };
  expect(boxesMeet(a, { minX: 1, maxX: 2, minY: 1, maxY: 2 })).toBe(true);
  expect(boxesMeet(a, { minX: 1.01, maxX: 2, minY: 0, maxY: 1 })).toBe(false);
  expect(boxesMeet(a, { minX: 0, maxX: 1, minY: -2, maxY: -0.01 })).toBe(false);
});
