import { expect, test } from "vitest";
import { packByBlocks } from "../../src/core/lay/boxes/straps/blockRecursion.ts";
import type { YieldQuestion } from "../../src/core/lay/boxes/straps/strapProblem.ts";
import { yieldBound } from "../../src/core/lay/boxes/straps/yieldBounds.ts";
import { seededRng } from "../../src/core/lay/search/rng.ts";
import { seedOf } from "../tools/seeded.ts";

/** Random straps as a maker has them, in half inches: roll 44–60 in, strap 1–8½ × 10–60 in, length 18–180 in. */
function randomQuestions(count: number, seed: number): YieldQuestion[] {
  const rng = seededRng(seed);
  return Array.from({ length: count }, () => {
    const width = 2 * [44, 45, 54, 58, 60][rng.below(5)]!;
    const b = 2 + rng.below(15);
    const a = 20 + rng.below(101);
    return { a, b, length: 2 * (18 + rng.below(163)), width };
  });
}

test("plans are valid, never above the bound, and at least nine in ten are proven", () => {
  const questions = randomQuestions(150, seedOf(7));
  let proven = 0;
  for (const question of questions) {
    const bound = yieldBound(question);
    const { count, tiles } = packByBlocks(question, bound, 3, 1e6);
    expect(tiles).toHaveLength(count);
    expect(count).toBeLessThanOrEqual(bound);
    const covered = new Uint8Array(question.length * question.width);
    for (const { x, y, crosswise } of tiles) {
      const [dx, dy] = crosswise ? [question.b, question.a] : [question.a, question.b];
      expect(x + dx <= question.length && y + dy <= question.width).toBe(true);
      for (let column = x; column < x + dx; column++) {
        const from = column * question.width + y;
        expect(covered.subarray(from, from + dy).indexOf(1)).toBe(-1);
        covered.fill(1, from, from + dy);
      }
    }
    if (count === bound) proven++;
  }
  console.log(`strap yield: ${proven} of ${questions.length} proven`);
  expect(proven / questions.length).toBeGreaterThanOrEqual(0.9);
});
