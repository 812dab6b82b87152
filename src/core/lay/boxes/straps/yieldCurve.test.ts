import { expect, test } from "vitest";
import { strapYield } from "./strapYield.ts";
import { lengthToBuy, lengthToCut, yieldCurve } from "./yieldCurve.ts";

const CLOTH = { strapWidth: 100, strapLength: 700, clothWidth: 1070, gap: 0, directions: "both" } as const;

test("the curve climbs, and every step is what its length gives and a hair less does not", () => {
  const steps = yieldCurve(CLOTH, 100, 2000);
  for (const [i, step] of steps.entries()) {
    expect(strapYield(CLOTH, step.length).count).toBeGreaterThanOrEqual(step.count);
    const before = steps[i - 1];
    if (before === undefined) continue;
    expect(step.length).toBeGreaterThan(before.length);
    expect(step.count).toBeGreaterThan(before.count);
    // Between two steps nothing is gained.
    expect(strapYield(CLOTH, step.length - 0.01).count).toBe(before.count);
  }
  // 13 on a metre, proven; the 14th strap comes where one more lies across.
  const metre = steps.findLast(({ length }) => length <= 1000)!;
  expect(metre).toMatchObject({ count: 13, proven: true });
});

// Strips all one way need no search: rows of ten, or one more for every width (exact arithmetic).
test("straps all one way climb by whole rows", () => {
  const along = yieldCurve({ ...CLOTH, directions: "lengthwise" }, 1, 2200);
  expect(along).toEqual([
    { length: 1, count: 0, proven: true },
    { length: 700, count: 10, proven: true },
    { length: 1400, count: 20, proven: true },
    { length: 2100, count: 30, proven: true },
  ]);
  const across = yieldCurve({ ...CLOTH, directions: "crosswise" }, 1, 350);
  expect(across.map(({ length, count }) => [length, count])).toEqual([
    [1, 0],
    [100, 1],
    [200, 2],
    [300, 3],
  ]);
  // A strap as wide as the cloth in no direction has no curve.
  expect(yieldCurve({ ...CLOTH, strapWidth: 1200, strapLength: 1300 }, 1, 3000)).toHaveLength(1);
});

// 100 cut from cloth that loses 3 % takes 103.09, not 103 (exact arithmetic), and both ends besides.
test("squaring and shrinkage: what is bought and what is cut are the same sum both ways", () => {
  const loss = { squaring: 20, lengthwise: 0.03, crosswise: 0 };
  expect(lengthToBuy(100, { ...loss, squaring: 0 })).toBeCloseTo(103.09, 2);
  expect(lengthToBuy(970, loss)).toBeCloseTo(1040, 9);
  expect(lengthToCut(1040, loss)).toBeCloseTo(970, 9);
  expect(lengthToCut(30, loss)).toBe(0);
});
