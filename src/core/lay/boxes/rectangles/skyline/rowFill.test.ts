import fc from "fast-check";
import { expect, test } from "vitest";
import { type SearchTables, searchTables } from "../../../problem/rectangles/searchTables.ts";
import { fillRows, type RowFillBuffers, rowFillBuffers } from "./rowFill.kernel.ts";
import { UNCAPPED } from "./skylineDecode.kernel.ts";

interface Laid {
  readonly way: number;
  readonly along: number;
  readonly across: number;
}

/** The same fill by trying every set of pieces, on one height for each unit across. */
function slowFill(tables: SearchTables, worth: Float64Array, cap: number): readonly Laid[][] {
  const heights = new Array<number>(tables.width).fill(0);
  const left = [...tables.sizeCount];
  const rows: Laid[][] = [];
  while (left.some((count) => count > 0)) {
    const base = Math.min(...heights);
    const start = heights.indexOf(base);
    let end = start;
    while (end < tables.width && heights[end] === base) end++;
    const best = bestSet(tables, worth, left, end - start, cap - base);
    const wallLeft = start > 0 ? heights[start - 1]! : UNCAPPED;
    const wallRight = end < tables.width ? heights[end]! : UNCAPPED;
    if (best.length === 0) {
      if (start === 0 && end === tables.width) return rows;
      heights.fill(Math.min(wallLeft, wallRight), start, end);
      continue;
    }
    for (const way of best) left[tables.waySize[way]!]!--;
    const total = best.reduce((sum, way) => sum + tables.wayAcross[way]!, 0);
    const tallestFirst = [...best].reverse().sort((a, b) => tables.wayAlong[b]! - tables.wayAlong[a]!);
    const atLeft = wallLeft >= wallRight;
    let x = atLeft ? start : end - total;
    rows.push(
      (atLeft ? tallestFirst : tallestFirst.reverse()).map((way) => {
        const across = x;
        x += tables.wayAcross[way]!;
        heights.fill(base + tables.wayAlong[way]!, across, x);
        return { way, along: base, across };
      }),
    );
  }
  return rows;
}

function bestSet(
  tables: SearchTables,
  worth: Float64Array,
  left: readonly number[],
  gap: number,
  room: number,
): readonly number[] {
  let best: readonly number[] = [];
  let most = 0;
  const stock = [...left];
  const extend = (chosen: readonly number[], from: number, free: number, sum: number): void => {
    if (sum > most) {
      most = sum;
      best = chosen;
    }
    for (let way = from; way < tables.ways; way++) {
      const size = tables.waySize[way]!;
      if (stock[size] === 0 || tables.wayAcross[way]! > free || tables.wayAlong[way]! > room) continue;
      stock[size]!--;
      extend([...chosen, way], way, free - tables.wayAcross[way]!, sum + worth[way]!);
      stock[size]!++;
    }
  };
  extend([], 0, gap, 0);
  return best;
}

function rowsOf({ result, outWay, outAlong, outAcross, outRow }: RowFillBuffers): Laid[][] {
  const rows: Laid[][] = Array.from({ length: result[2]! }, () => []);
  for (let i = 0; i < result[0]!; i++)
    rows[outRow[i]!]!.push({ way: outWay[i]!, along: outAlong[i]!, across: outAcross[i]! });
  return rows;
}

const side = fc.integer({ min: 1, max: 9 });
const sizes = fc.array(
  fc.record({ count: fc.integer({ min: 1, max: 2 }), across: side, along: side, turns: fc.boolean() }),
  { minLength: 1, maxLength: 4 },
);

test("each row is the set worth most, as in a slow fill that tries them all", () => {
  fc.assert(
    fc.property(sizes, fc.integer({ min: 9, max: 14 }), fc.integer({ min: 12, max: 60 }), (list, width, cap) => {
      const tables = searchTables(
        width,
        list.map(({ count, across, along, turns }) => {
          return {
            count,
            ways:
              turns && across !== along
                ? [
                    [across, along],
                    [along, across],
                  ]
                : [[across, along]],
          };
        }),
        [],
      );
      // Powers of two and a little: no two sets are worth the same, so the best one is the same for both.
      const worth = Float64Array.from(tables.wayAcross, (across, way) => across + 2 ** -(way + 3) / 7);
      const buffers = rowFillBuffers(tables);
      const complete = fillRows(tables, worth, UNCAPPED, buffers);
      expect(complete).toBe(true);
      expect(rowsOf(buffers)).toEqual(slowFill(tables, worth, UNCAPPED));
      const inCap = fillRows(tables, worth, cap, buffers);
      if (inCap) {
        expect(buffers.result[1]).toBeLessThanOrEqual(cap);
        expect(rowsOf(buffers)).toEqual(slowFill(tables, worth, cap));
      }
    }),
  );
});
