import { expect, test } from "vitest";
import type { PlacedRectangle } from "../../../problem/rectangles/rectangleJob.ts";
import { type SearchTables, searchTables } from "../../../problem/rectangles/searchTables.ts";
import { seededRng } from "../../../search/rng.ts";
import { valueCorrection } from "./valueCorrection.ts";

/** Twenty pieces half to nearly as wide as the roll, and ten narrow ones that fit beside them. */
function wideJob(): SearchTables {
  const rng = seededRng(7);
  const wide = Array.from({ length: 20 }, () => [50 + rng.below(46), 5 + rng.below(40)] as const);
  const narrow = Array.from({ length: 10 }, () => [5 + rng.below(20), 30 + rng.below(60)] as const);
  return searchTables(
    100,
    [...wide, ...narrow].map((way) => ({ count: 1, ways: [way] })),
    [],
  );
}

function run(seed: number, looks: number): { ends: number[]; last: readonly PlacedRectangle[] } {
  const ends: number[] = [];
  let last: readonly PlacedRectangle[] = [];
  const fills = valueCorrection(wideJob(), seededRng(seed))!;
  for (const _ of fills.turn(looks, (end, rectangles) => {
    ends.push(end);
    last = rectangles();
  }));
  return { ends, last };
}

test("corrected worths give shorter plans than the first ones drawn, and the same ones for the same seed", () => {
  const { ends, last } = run(1, 300_000);
  expect(ends.length).toBeGreaterThan(1);
  expect(ends.at(-1)!).toBeLessThan(ends[0]!);
  expect(run(1, 300_000)).toEqual({ ends, last });
});

test("a plan offered holds every piece once, inside the roll and clear of the others", () => {
  const tables = wideJob();
  const { ends, last } = run(2, 100_000);
  expect([...last].map(({ size }) => size).sort((a, b) => a - b)).toEqual(Array.from({ length: 30 }, (_, i) => i));
  const boxes = last.map(({ size, along, across }) => {
    const way = tables.sizeFirstWay[size]!;
    return { along, across, toAlong: along + tables.wayAlong[way]!, toAcross: across + tables.wayAcross[way]! };
  });
  expect(Math.max(...boxes.map((box) => box.toAlong))).toBe(ends.at(-1));
  expect(Math.max(...boxes.map((box) => box.toAcross))).toBeLessThanOrEqual(tables.width);
  for (const [i, a] of boxes.entries())
    for (const b of boxes.slice(i + 1)) {
      const apart =
        a.toAlong <= b.along || b.toAlong <= a.along || a.toAcross <= b.across || b.toAcross <= a.across;
      expect(apart).toBe(true);
    }
});

test("jobs of many pieces side by side, and blocked cloth, are left to the other searches", () => {
  const slim = searchTables(100, [{ count: 30, ways: [[10, 20]] }], []);
  expect(valueCorrection(slim, seededRng(1))).toBeNull();
  const blocked = [{ fromAlong: 0, toAlong: 5, fromAcross: 0, toAcross: 5 }];
  expect(valueCorrection(searchTables(100, [{ count: 3, ways: [[90, 20]] }], blocked), seededRng(1))).toBeNull();
});
