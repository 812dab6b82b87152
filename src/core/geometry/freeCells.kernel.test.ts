// Cells that outlines touch, one by one: by clipping each edge (Liang and Barsky 1984, ACM Transactions on Graphics
// 3(1)) and by the cell's middle; and the largest free rectangle by trying every one.
import fc from "fast-check";
import { expect, test } from "vitest";
import { largestFree, markTouched } from "./freeCells.kernel.ts";
import { isInside } from "./inside.ts";

type Point = [number, number];

/** A simple outline round (x, y), its corners by angle, on whole numbers. */
const star = (x: number, y: number, least: number, most: number) =>
  fc.array(fc.integer({ min: least, max: most }), { minLength: 3, maxLength: 8 }).map((reaches) =>
    reaches.map((reach, i): Point => {
      const angle = (2 * Math.PI * (i + 0.3)) / reaches.length;
      return [Math.round(x + reach * Math.cos(angle)), Math.round(y + reach * Math.sin(angle))];
    }),
  );

/** Lines that no whole number lies on, apart by what is said. */
const lines = (from: number, gaps: readonly number[]): Float64Array => {
  let at = from + Math.SQRT1_2;
  return Float64Array.from([at, ...gaps.map((gap) => (at += gap))]);
};
const gaps = (count: number) => fc.array(fc.integer({ min: 4, max: 40 }), { minLength: count, maxLength: count });

function touched(rings: readonly (readonly Point[])[], xs: Float64Array, ys: Float64Array): number[] {
  const flat = rings.flat(2);
  const ends: number[] = [];
  for (const ring of rings) ends.push((ends.at(-1) ?? 0) + 2 * ring.length);
  const out = new Uint8Array((xs.length - 1) * (ys.length - 1));
  markTouched(Float64Array.from(flat), Int32Array.from(ends), xs, ys, new Float64Array(flat.length), out);
  return [...out];
}

/** Whether an edge runs through a box. */
function runsThrough([x0, y0]: Point, [x1, y1]: Point, low: Point, high: Point): boolean {
  let [from, to] = [0, 1];
  for (const [at, by, least, most] of [
    [x0, x1 - x0, low[0], high[0]],
    [y0, y1 - y0, low[1], high[1]],
  ] as const) {
    if (by === 0 && (at < least || at > most)) return false;
    if (by === 0) continue;
    const ends = [(least - at) / by, (most - at) / by].sort((a, b) => a - b);
    [from, to] = [Math.max(from, ends[0]!), Math.min(to, ends[1]!)];
  }
  return from < to;
}

test("the cells marked are those that an edge runs through or whose middle lies inside, holes left out", () => {
  let [full, free] = [0, 0];
  fc.assert(
    fc.property(star(100, 60, 20, 90), star(100, 60, 3, 18), gaps(5), gaps(4), (outer, hole, across, up) => {
      const [xs, ys] = [lines(0, [100 - across[0]!, ...across, 500]), lines(10, up)];
      const cells = touched([outer, hole], xs, ys);
      const rings = [outer, hole].map((ring) => Float64Array.from(ring.flat()));
      for (let row = 0; row + 1 < ys.length; row++)
        for (let column = 0; column + 1 < xs.length; column++) {
          const low: Point = [xs[column]!, ys[row]!];
          const high: Point = [xs[column + 1]!, ys[row + 1]!];
          const isCut = [outer, hole].some((ring) =>
            ring.some((at, i) => runsThrough(at, ring[(i + 1) % ring.length]!, low, high)),
          );
          const isTaken = isCut || isInside(rings, (low[0] + high[0]) / 2, (low[1] + high[1]) / 2);
          expect(cells[row * (xs.length - 1) + column], `row ${row}, column ${column}`).toBe(isTaken ? 1 : 0);
          if (isTaken) full++;
          else free++;
        }
    }),
    { numRuns: 40, endOnFailure: true },
  );
  expect(Math.min(full, free)).toBeGreaterThan(100);
});

test("what lies on a line touches the rows on both its sides and the column that follows; beyond the lines the last one", () => {
  const grid = Float64Array.of(0, 10, 20, 30, 40);
  const marked = (...ring: Point[]): string[] => {
    const cells = touched([ring], grid, grid);
    return [3, 2, 1, 0].map((row) => cells.slice(4 * row, 4 * row + 4).join(""));
  };
  expect(marked([10, 10], [20, 10], [20, 20], [10, 20])).toEqual(["0000", "0110", "0110", "0110"]);
  // A thin outline that lies in one row, along and across.
  expect(marked([3, 12], [37, 12], [37, 14], [3, 14])).toEqual(["0000", "0000", "1111", "0000"]);
  expect(marked([12, 3], [14, 3], [14, 37], [12, 37])).toEqual(["0100", "0100", "0100", "0100"]);
  // Aslant through two cells and the corner of a third.
  expect(marked([1, 11], [5, 11], [15, 21], [11, 21])).toEqual(["0000", "0100", "1100", "0000"]);
  // Round everything: no edge runs through the cells.
  expect(marked([-5, -5], [45, -5], [45, 45], [-5, 45])).toEqual(["1111", "1111", "1111", "1111"]);
  expect(marked([50, 12], [60, 12], [60, 18])).toEqual(["0000", "0000", "0001", "0000"]);
  expect(marked([-60, 12], [-50, 12], [-50, 18])).toEqual(["0000", "0000", "1000", "0000"]);
  expect(marked([5, 52], [6, 52], [6, 58])).toEqual(["0000", "0000", "0000", "0000"]);
});

/** Every rectangle of free cells: the largest, of equal ones the lowest, then that which ends lowest, then the leftmost. */
function tried(blocked: Uint8Array, xs: Float64Array, ys: Float64Array, leastSide: number): number[] {
  const columns = xs.length - 1;
  let best: number[] = [0, 0, 0, 0];
  let area = 0;
  for (let low = 0; low + 1 < ys.length; low++)
    for (let high = low + 1; high < ys.length; high++)
      for (let left = 0; left < columns; left++)
        for (let right = left + 1; right <= columns; right++) {
          const [wide, tall] = [xs[right]! - xs[left]!, ys[high]! - ys[low]!];
          if (wide < leastSide || tall < leastSide || wide * tall <= area) continue;
          let isFree = true;
          for (let row = low; row < high; row++)
            for (let column = left; column < right; column++) if (blocked[row * columns + column]) isFree = false;
          if (!isFree) continue;
          area = wide * tall;
          best = [left, low, right - left, high - low];
        }
  return best;
}

test("the largest free rectangle is the one that trying all of them finds, whatever the scratch arrays held", () => {
  const found = new Map<string, number>();
  const cells = fc.array(fc.constantFrom(0, 0, 0, 1), { minLength: 42, maxLength: 42 });
  const steps = (count: number) => fc.array(fc.constantFrom(1, 1, 2, 3), { minLength: count, maxLength: count });
  fc.assert(
    fc.property(cells, steps(7), steps(6), fc.integer({ min: 0, max: 4 }), (blocked, across, up, leastSide) => {
      const lay = (from: number, by: readonly number[]) => {
        // Eighths, so that areas of less than 1 mm² are found too.
        let at = from;
        return Float64Array.from([at, ...by.map((step) => (at += step / 8))]);
      };
      const [xs, ys] = [lay(-3, across), lay(5, up)];
      const out = Int32Array.of(9, 9, 9, 9);
      const least = leastSide / 8;
      largestFree(
        Uint8Array.from(blocked),
        xs,
        ys,
        least,
        new Int32Array(7).fill(5),
        new Int32Array(8).fill(3),
        out,
      );
      const wanted = tried(Uint8Array.from(blocked), xs, ys, least);
      expect([...out]).toEqual(wanted);
      found.set(wanted.join(), 1);
    }),
    { numRuns: 200, endOnFailure: true },
  );
  expect(found.size).toBeGreaterThan(50);
  const whole = new Int32Array(4);
  const line = Float64Array.of(0, 4, 9);
  largestFree(new Uint8Array(4), line, line, 9, new Int32Array(2), new Int32Array(3), whole);
  expect([...whole]).toEqual([0, 0, 2, 2]);
  largestFree(new Uint8Array(4), line, line, 9.5, new Int32Array(2), new Int32Array(3), whole);
  expect([...whole]).toEqual([0, 0, 0, 0]);
});
