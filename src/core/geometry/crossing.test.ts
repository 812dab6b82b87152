import fc from "fast-check";
import { expect, test } from "vitest";
import { firstCrossing } from "./crossing.ts";
import { rectangleRing } from "./ring.ts";

const crossing = (...points: number[]) => firstCrossing(Float64Array.from(points));

test("simple rings have no crossing, convex or not", () => {
  expect(firstCrossing(rectangleRing(0, 0, 3, 2))).toBeNull();
  expect(crossing(0, 0, 4, 0, 4, 4, 2, 1, 0, 4)).toBeNull();
  expect(crossing(0, 0, 2, 0, 4, 0, 4, 4)).toBeNull();
});

test("a bow tie crosses in its middle", () => {
  expect(crossing(0, 0, 2, 2, 2, 0, 0, 2)).toEqual({ first: 0, second: 2, x: 1, y: 1 });
});

test("touching at a vertex and running back over an edge are found", () => {
  expect(crossing(0, 0, 4, 0, 4, 4, 2, 0, 0, 4)).toMatchObject({ x: 2, y: 0 });
  expect(crossing(0, 0, 4, 0, 2, 0, 2, 3)).toMatchObject({ first: 0, second: 1 });
  expect(crossing(0, 0, 4, 0, 4, 4, 4, -1)).not.toBeNull();
});

/** The slow twin in whole numbers: do two edges share a point, or run back over each other where they are neighbours? */
function meet(corners: readonly (readonly [number, number])[], i: number, j: number): boolean {
  const n = corners.length;
  const [a, b, c, d] = [corners[i]!, corners[(i + 1) % n]!, corners[j]!, corners[(j + 1) % n]!];
  const side = (p: readonly number[], q: readonly number[], r: readonly number[]) =>
    Math.sign((q[0]! - p[0]!) * (r[1]! - p[1]!) - (q[1]! - p[1]!) * (r[0]! - p[0]!));
  const on = (p: readonly number[], q: readonly number[], r: readonly number[]) =>
    side(p, q, r) === 0 && [0, 1].every((k) => (r[k]! - p[k]!) * (r[k]! - q[k]!) <= 0);
  const isNext = (i + 1) % n === j || (j + 1) % n === i;
  if (isNext) {
    const [before, at, after] = (i + 1) % n === j ? [a, b, d] : [c, a, b];
    const back = (before[0] - at[0]) * (after[0] - at[0]) + (before[1] - at[1]) * (after[1] - at[1]) > 0;
    return side(before, at, after) === 0 && back;
  }
  if (on(a, b, c) || on(a, b, d) || on(c, d, a) || on(c, d, b)) return true;
  return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
}

test("the first two edges that meet are those that trying all pairs finds, and the place is on both", () => {
  let [met, simple] = [0, 0];
  const place = fc.tuple(fc.integer({ min: -60, max: -50 }), fc.integer({ min: 70, max: 79 }));
  fc.assert(
    fc.property(fc.array(place, { minLength: 3, maxLength: 7 }), (corners) => {
      const n = corners.length;
      // None repeated in a row.
      fc.pre(corners.every(([x, y], i) => x !== corners[(i + 1) % n]![0] || y !== corners[(i + 1) % n]![1]));
      let wanted: readonly [number, number] | null = null;
      for (let i = 0; i < n && !wanted; i++)
        for (let j = i + 1; j < n && !wanted; j++) if (meet(corners, i, j)) wanted = [i, j];
      const found = crossing(...corners.flat());
      expect(found && [found.first, found.second]).toEqual(wanted);
      // At a 128th of the size, which doubles hold exactly, it is the same.
      const small = crossing(...corners.flat().map((value) => value / 128));
      expect(small && [small.first, small.second]).toEqual(wanted);
      if (!found) {
        simple++;
        return;
      }
      met++;
      for (const edge of [found.first, found.second]) {
        const [[x0, y0], [x1, y1]] = [corners[edge]!, corners[(edge + 1) % n]!];
        const long = Math.hypot(x1 - x0, y1 - y0);
        const along = ((found.x - x0) * (x1 - x0) + (found.y - y0) * (y1 - y0)) / long;
        expect(Math.abs((found.x - x0) * (y1 - y0) - (found.y - y0) * (x1 - x0)) / long).toBeLessThan(1e-9);
        expect([along > -1e-9, along < long + 1e-9]).toEqual([true, true]);
      }
    }),
    { numRuns: 500, endOnFailure: true },
  );
  expect(Math.min(met, simple)).toBeGreaterThan(60);
});
