import { expect, test } from "vitest";
import { searchTables } from "../../../problem/rectangles/searchTables.ts";
import { seededRng } from "../../../search/rng.ts";
import { fillStacks, readStack, stackTable } from "./shelfStacks.kernel.ts";

/** The slow twin: every number of copies of every way. */
function slowStack(
  ways: readonly { across: number; along: number; most: number; worth: number }[],
  width: number,
  height: number,
  single: boolean,
  at = 0,
): number {
  if (at === ways.length) return 0;
  const { across, along, most, worth } = ways[at]!;
  let best = 0;
  if (single) {
    const own = across <= width && along <= height && most > 0 ? worth : 0;
    return Math.max(own, slowStack(ways, width, height, true, at + 1));
  }
  for (let copies = 0; copies <= (across <= width ? most : 0) && copies * along <= height; copies++) {
    best = Math.max(best, copies * worth + slowStack(ways, width, height - copies * along, false, at + 1));
  }
  return best;
}

test("stacks for all widths and heights are worth what trying every stack gives, and can be read back", () => {
  for (let seed = 1; seed <= 60; seed++) {
    const rng = seededRng(seed);
    const sizes = Array.from({ length: 1 + rng.below(3) }, () => {
      const [a, b] = [1 + rng.below(9), 1 + rng.below(9)];
      const ways = a !== b && rng.below(2) === 0 ? [[a, b] as const, [b, a] as const] : [[a, b] as const];
      return { count: 1 + rng.below(4), ways };
    });
    const tables = searchTables(12, sizes, []);
    const worth = Float64Array.from(tables.sizeArea, (area) => area * (1 + rng.unit()));
    const ways = Array.from({ length: tables.ways }, (_, way) => ({
      across: tables.wayAcross[way]!,
      along: tables.wayAlong[way]!,
      most: tables.sizeCount[tables.waySize[way]!]!,
      worth: worth[tables.waySize[way]!]!,
    }));
    const single = seed % 2 === 0;
    const table = stackTable(tables, 18, single);
    fillStacks(tables, tables.sizeCount, worth, table);
    const counts = new Int32Array(tables.ways);
    table.widths.forEach((width, w) => {
      for (let height = 0; height <= 18; height++) {
        const value = table.value[w * 19 + height]!;
        expect(value).toBeCloseTo(slowStack(ways, width, height, single), 9);
        readStack(tables, table, w, height, counts);
        const read = [...counts].map((count, way) => ({ count, ...ways[way]! })).filter(({ count }) => count > 0);
        expect(read.reduce((sum, one) => sum + one.count * one.worth, 0)).toBeCloseTo(value, 9);
        if (single) expect(read.reduce((sum, one) => sum + one.count, 0)).toBeLessThanOrEqual(1);
        expect(read.reduce((sum, one) => sum + one.count * one.along, 0)).toBeLessThanOrEqual(height);
        expect(read.every((one) => one.across <= width && one.count <= one.most)).toBe(true);
      }
    });
  }
});
