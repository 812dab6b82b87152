import fc from "fast-check";
import { expect, test } from "vitest";
import type { PlacedRectangle } from "../../../problem/rectangles/rectangleJob.ts";
import { type SearchTables, searchTables } from "../../../problem/rectangles/searchTables.ts";
import { seededRng } from "../../../search/rng.ts";
import { startOrders } from "../skyline/orderSearch.ts";
import { layInSpaces, spaceBuffers } from "./freeSpaces.kernel.ts";
import { freeSpacePlans } from "./freeSpaces.ts";

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

/**
 * The slow twin: on unit cells, every empty rectangle that is not part of a larger empty one is a free space. Gives
 * the two numbers by which the best place is chosen (of those in the low corner of the space at `corner`, if given),
 * or null where the piece finds none.
 */
function slowChoice(
  cells: readonly boolean[][],
  ways: readonly (readonly [across: number, along: number])[],
  closest: boolean,
  corner: readonly [x: number, y: number] | null,
): readonly number[] | null {
  const [cap, width] = [cells.length, cells[0]!.length];
  const isFree = (x: number, y: number, toX: number, toY: number): boolean =>
    x >= 0 &&
    y >= 0 &&
    toX <= cap &&
    toY <= width &&
    cells.slice(x, toX).every((row) => row.slice(y, toY).every((taken) => !taken));
  let best: readonly number[] | null = null;
  for (let x = 0; x < cap; x++)
    for (let y = 0; y < width; y++)
      for (let toX = x + 1; toX <= cap; toX++)
        for (let toY = y + 1; toY <= width; toY++) {
          if (corner !== null && (x !== corner[0] || y !== corner[1])) continue;
          if (!isFree(x, y, toX, toY)) continue;
          const grows = [isFree(x - 1, y, toX, toY), isFree(x, y - 1, toX, toY)];
          grows.push(isFree(x, y, toX + 1, toY), isFree(x, y, toX, toY + 1));
          if (grows.includes(true)) continue;
          for (const [across, along] of ways) {
            const rests = [toX - x - along, toY - y - across].sort((a, b) => a - b);
            if (rests[0]! < 0) continue;
            const mine = closest ? rests : [x + along, y];
            if (best === null || mine[0]! < best[0]! || (mine[0] === best[0] && mine[1]! < best[1]!)) best = mine;
          }
        }
  return best;
}

test("pieces go into maximal free spaces as the slow twin chooses", () => {
  let complete = 0;
  for (let seed = 1; seed <= 60; seed++) {
    const rng = seededRng(seed);
    const width = 4 + rng.below(6);
    const sizes = Array.from({ length: 2 + rng.below(4) }, () => {
      const [a, b] = [1 + rng.below(width - 1), 1 + rng.below(4)];
      const turns = a !== b && b <= width && rng.below(2) === 0;
      return { count: 1 + rng.below(3), ways: turns ? [[a, b] as const, [b, a] as const] : [[a, b] as const] };
    });
    const tables = searchTables(width, sizes, []);
    const order = startOrders(tables)[rng.below(5)]!;
    const cap = Math.max(...tables.wayAlong, Math.ceil((1.15 * tables.area) / width));
    const closest = rng.below(2) === 0;
    const out = spaceBuffers(tables);
    layInSpaces(tables, order, cap, closest, out);
    const cells = Array.from({ length: cap }, () => new Array<boolean>(width).fill(false));
    let end = 0;
    for (let i = 0; i < order.length; i++) {
      const choice = slowChoice(cells, sizes[order[i]!]!.ways, closest, null);
      if (i >= out.result[0]!) {
        expect(choice, `seed ${seed}`).toBeNull();
        break;
      }
      const way = out.outWay[i]!;
      const [x, y] = [out.outAlong[i]!, out.outAcross[i]!];
      const [along, across] = [tables.wayAlong[way]!, tables.wayAcross[way]!];
      expect(tables.waySize[way]).toBe(order[i]);
      expect(slowChoice(cells, [[across, along]], closest, [x, y]), `seed ${seed}`).toEqual(choice);
      for (let r = x; r < x + along; r++) for (let c = y; c < y + across; c++) cells[r]![c] = true;
      end = Math.max(end, x + along);
    }
    expect(out.result[1]).toBe(end);
    if (out.result[0] === order.length) complete++;
  }
  expect(Math.min(complete, 60 - complete)).toBeGreaterThan(5);
});
