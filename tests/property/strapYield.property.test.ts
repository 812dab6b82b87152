import { expect, test } from "vitest";
import { packByBlocks } from "../../src/core/lay/boxes/straps/blockRecursion.ts";
import type { Tiling } from "../../src/core/lay/boxes/straps/strapProblem.ts";
import { yieldBound } from "../../src/core/lay/boxes/straps/yieldBounds.ts";
import { seededRng } from "../../src/core/lay/search/rng.ts";
import { seedOf } from "../tools/seeded.ts";

/** Random straps as a maker has them, in half inches: roll 44–60 in, strap 1–8½ × 10–60 in, length 18–180 in. */
function randomTilings(count: number, seed: number): Tiling[] {
  const rng = seededRng(seed);
  return Array.from({ length: count }, () => {
    const width = 2 * [44, 45, 54, 58, 60][rng.below(5)]!;
    const b = 2 + rng.below(15);
    const a = 20 + rng.below(101);
    return { a, b, length: 2 * (18 + rng.below(163)), width };
  });
}

test("plans are valid, never above the bound, and at least nine in ten are proven", () => {
  const tilings = randomTilings(150, seedOf(7));
  let proven = 0;
  for (const tiling of tilings) {
    const bound = yieldBound(tiling);
    const { count, tiles } = packByBlocks(tiling, bound, 3, 1e6);
    expect(tiles).toHaveLength(count);
    expect(count).toBeLessThanOrEqual(bound);
    const covered = new Uint8Array(tiling.length * tiling.width);
    for (const { x, y, crosswise } of tiles) {
      const [dx, dy] = crosswise ? [tiling.b, tiling.a] : [tiling.a, tiling.b];
      expect(x + dx <= tiling.length && y + dy <= tiling.width).toBe(true);
      for (let column = x; column < x + dx; column++) {
        const from = column * tiling.width + y;
        expect(covered.subarray(from, from + dy).indexOf(1)).toBe(-1);
        covered.fill(1, from, from + dy);
      }
    }
    if (count === bound) proven++;
  }
  console.log(`strap yield: ${proven} of ${tilings.length} proven`);
  expect(proven / tilings.length).toBeGreaterThanOrEqual(0.9);
});
