import fc from "fast-check";
import { expect, test } from "vitest";
import { freeSpacePlans } from "./freeSpaces.ts";
import { startOrders } from "./orderSearch.ts";
import type { PlacedRectangle } from "./rectangleJob.ts";
import { type SearchTables, searchTables } from "./searchTables.ts";

/** Every plan offered: its end and its rectangles. */
function plansOf(tables: SearchTables, bound: number, best: number) {
  const plans: { end: number; rectangles: readonly PlacedRectangle[] }[] = [];
  let least = best;
  const offer = (end: number, rectangles: readonly PlacedRectangle[]): number => {
    plans.push({ end, rectangles });
    least = Math.min(least, end);
    return least;
  };
  for (const _ of freeSpacePlans(tables, startOrders(tables), bound, best, offer));
  return plans;
}

test("a thin piece goes into the gap beside wide ones, far behind the front", () => {
  const tables = searchTables(
    100,
    [
      { count: 2, ways: [[90, 50]] },
      { count: 1, ways: [[10, 100]] },
    ],
    [],
  );
  const ends = plansOf(tables, 100, 200).map(({ end }) => end);
  expect(Math.min(...ends)).toBe(100);
});

test("every plan offered has all pieces, none over another, all within the width and its own end", () => {
  const sizes = fc.array(
    fc.record({
      across: fc.integer({ min: 1, max: 20 }),
      along: fc.integer({ min: 1, max: 20 }),
      count: fc.integer({ min: 1, max: 4 }),
      turns: fc.boolean(),
    }),
    { minLength: 1, maxLength: 8 },
  );
  fc.assert(
    fc.property(sizes, (list) => {
      const tables = searchTables(
        20,
        list.map(({ across, along, count, turns }) => ({
          count,
          ways:
            turns && across !== along
              ? [[across, along] as const, [along, across] as const]
              : [[across, along] as const],
        })),
        [],
      );
      const tallest = list.reduce((sum, { along, across, count }) => sum + count * Math.max(along, across), 0);
      const plans = plansOf(tables, 1, tallest);
      expect(plans.length).toBeGreaterThan(0);
      for (const { end, rectangles } of plans) {
        const boxes = rectangles.map(({ size, way, along, across }) => {
          const index = way === 0 ? tables.sizeFirstWay[size]! : tables.sizeSecondWay[size]!;
          return { x: along, y: across, dx: tables.wayAlong[index]!, dy: tables.wayAcross[index]! };
        });
        expect(boxes).toHaveLength(tables.pieces);
        expect(Math.max(...boxes.map(({ x, dx }) => x + dx))).toBe(end);
        for (const [i, a] of boxes.entries()) {
          expect(Math.min(a.x, a.y, 20 - a.y - a.dy)).toBeGreaterThanOrEqual(0);
          for (const b of boxes.slice(0, i)) {
            const apart = a.x >= b.x + b.dx || b.x >= a.x + a.dx || a.y >= b.y + b.dy || b.y >= a.y + a.dy;
            expect(apart).toBe(true);
          }
        }
      }
    }),
    { numRuns: 100 },
  );
});
