import { type SearchTables, searchTables } from "../../src/core/lay/problem/rectangles/searchTables.ts";
import type { Rng } from "../../src/core/lay/search/rng.ts";

/** A few sizes of small rectangles on a narrow width, some of which may turn, and their pieces in any order. */
export function randomOrder(rng: Rng): { tables: SearchTables; order: number[] } {
  const width = 6 + rng.below(20);
  const sizes = Array.from({ length: 2 + rng.below(8) }, () => {
    const [a, b] = [1 + rng.below(width), 1 + rng.below(12)];
    const turns = b <= width && a !== b && rng.below(2) === 0;
    return { count: 1 + rng.below(4), ways: turns ? [[a, b] as const, [b, a] as const] : [[a, b] as const] };
  });
  const order = sizes.flatMap((size, index) => new Array<number>(size.count).fill(index));
  for (let i = order.length - 1; i > 0; i--) {
    const j = rng.below(i + 1);
    [order[i], order[j]] = [order[j]!, order[i]!];
  }
  return { tables: searchTables(width, sizes, []), order };
}
