import { expect, test } from "vitest";
import { seededRng } from "../search/rng.ts";
import { barFunction, PLAIN, ROUNDED_DOWN, STEPS_OF_K, WHOLE_OR_NOTHING } from "./barFunctions.kernel.ts";
import { barSimplex, bestPattern, enterColumn, knapsackMemory } from "./barSimplex.kernel.ts";

/** All lists of whole numbers from 1 up, ascending, whose sum is at most `capacity`. */
function* bars(capacity: number, least = 1): Generator<number[]> {
  yield [];
  for (let x = least; x <= capacity; x++) for (const rest of bars(capacity - x, x)) yield [x, ...rest];
}

test("no bar is worth more under a bar function than the whole capacity: every bar is tried", () => {
  for (const family of [PLAIN, WHOLE_OR_NOTHING, ROUNDED_DOWN, STEPS_OF_K]) {
    for (let capacity = 2; capacity <= 11; capacity++) {
      for (let k = 1; k <= (family === ROUNDED_DOWN ? 20 : capacity / 2); k++) {
        const whole = barFunction(family, k, capacity, capacity);
        for (const bar of bars(capacity)) {
          const worth = bar.reduce((sum, x) => sum + barFunction(family, k, capacity, x), 0);
          expect(worth, `${family} ${k} ${capacity} ${bar}`).toBeLessThanOrEqual(whole);
        }
      }
    }
  }
});

test("the best pattern is worth what trying every pattern gives", () => {
  const slow = (extents: Int32Array, worth: Float64Array, most: Int32Array, capacity: number, item = 0): number => {
    if (item === extents.length) return 0;
    let best = 0;
    for (let n = 0; n <= most[item]! && n * extents[item]! <= capacity; n++) {
      const rest = slow(extents, worth, most, capacity - n * extents[item]!, item + 1);
      best = Math.max(best, n * worth[item]! + rest);
    }
    return best;
  };
  for (let seed = 1; seed <= 200; seed++) {
    const rng = seededRng(seed);
    const items = 1 + rng.below(5);
    const capacity = 5 + rng.below(30);
    const extents = Int32Array.from({ length: items }, () => 1 + rng.below(12));
    const worth = Float64Array.from({ length: items }, () => rng.unit());
    const most = Int32Array.from({ length: items }, () => rng.below(7));
    const counts = new Int32Array(items);
    const value = bestPattern(extents, worth, most, capacity, knapsackMemory(capacity, items), counts);
    expect(value).toBeCloseTo(slow(extents, worth, most, capacity), 9);
    expect(counts.reduce((sum, n, i) => sum + n * worth[i]!, 0)).toBeCloseTo(value, 9);
    expect(counts.reduce((sum, n, i) => sum + n * extents[i]!, 0)).toBeLessThanOrEqual(capacity);
    expect(counts.every((n, i) => n <= most[i]!)).toBe(true);
  }
});

test("after columns have entered, the kept inverse undoes the basis and gives its values", () => {
  for (let seed = 1; seed <= 50; seed++) {
    const rng = seededRng(seed);
    const rows = 2 + rng.below(6);
    const simplex = barSimplex(rows);
    const columns = Array.from({ length: rows }, (_, i) =>
      Float64Array.from({ length: rows }, (_, j) => +(i === j)),
    );
    const right = Float64Array.from({ length: rows }, () => 1 + rng.unit());
    for (let i = 0; i < rows; i++) simplex.inverse[i * rows + i] = 1;
    simplex.values.set(right);
    simplex.basis.set(columns.map((_, i) => i));
    for (let turn = 0; turn < 8; turn++) {
      const column = Float64Array.from({ length: rows }, () => rng.unit());
      columns.push(column);
      expect(enterColumn(simplex, column, columns.length - 1)).toBe(true);
    }
    // The slow twin: the basic columns times their values are the right side, and none is negative.
    for (let row = 0; row < rows; row++) {
      let sum = 0;
      for (let i = 0; i < rows; i++) sum += columns[simplex.basis[i]!]![row]! * simplex.values[i]!;
      expect(sum).toBeCloseTo(right[row]!, 6);
    }
    expect(Math.min(...simplex.values)).toBeGreaterThanOrEqual(0);
  }
});
