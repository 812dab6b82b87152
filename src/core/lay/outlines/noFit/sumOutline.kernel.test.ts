import { expect, test } from "vitest";
import { gridShape, noFitRings } from "../../../geometry/noFit.ts";
import { type Ring, reversedRing, signedArea } from "../../../geometry/ring.ts";
import { type Rng, seededRng } from "../../search/rng.ts";
import { movingRing, restingRing, shakenRing } from "../compile/sumRings.ts";
import { addFeatureGrid, ringEdges } from "./featureGrid.ts";
import { emptyArena, HEAD } from "./gridArena.ts";
import { fillCell } from "./gridCells.kernel.ts";
import { EDGE } from "./gridEdges.kernel.ts";
import { isWholeSum, sumOutline, sumWork } from "./sumOutline.kernel.ts";

/** A star-shaped ring with whole coordinates, or an L when `n` is 0. */
function randomRing(rng: Rng, n: number, size: number): Ring {
  if (n === 0) return Float64Array.of(0, 0, size, 0, size, size / 4, size / 4, size / 4, size / 4, size, 0, size);
  const points: number[] = [];
  for (let i = 0; i < n; i++) {
    const radius = size * (0.3 + 0.7 * rng.unit());
    const turn = ((i + 0.6 * rng.unit()) / n) * 2 * Math.PI;
    points.push(Math.round(radius * Math.cos(turn)), Math.round(radius * Math.sin(turn)));
  }
  const ring = Float64Array.from(points);
  return signedArea(ring) > 0 ? ring : reversedRing(ring);
}

/** Area and length of loose edges. */
function measure(edges: Float64Array, count: number): { area: number; length: number; convex: number } {
  let [area, length, convex] = [0, 0, 0];
  for (let e = 0; e < count * EDGE; e += EDGE) {
    const [x, y, ux, uy, long, flags] = [...edges.subarray(e, e + EDGE)] as [
      number,
      number,
      number,
      number,
      number,
      number,
    ];
    area += (x * (y + uy * long) - (x + ux * long) * y) / 2;
    length += long;
    convex += flags & 1;
  }
  return { area, length, convex };
}

test("the outline of a sum is that of the union of its convex parts, corners told apart the same way", () => {
  const rng = seededRng(4);
  const work = sumWork();
  for (let k = 0; k < 150; k++) {
    const a = shakenRing(randomRing(rng, k % 5 === 0 ? 0 : 4 + rng.below(14), 10_000_000), 2 * k + 1);
    const b = shakenRing(randomRing(rng, k % 7 === 0 ? 0 : 4 + rng.below(14), 6_000_000), 2 * k + 2);
    const [cos, sin] = [
      [1, 0],
      [0, 1],
      [-1, 0],
      [0.6, 0.8],
    ][k % 4] as [number, number];
    const moving = movingRing(b, cos, sin, k % 3 === 0 ? -1 : 1);
    sumOutline(work, restingRing(a), moving);
    expect(isWholeSum(work), `pair ${k}`).toBe(true);
    const other = Float64Array.from(
      { length: 2 * moving.count },
      (_, i) => -(i % 2 ? moving.y : moving.x)[i >> 1]!,
    );
    const twin = ringEdges(noFitRings(gridShape(a, []), gridShape(other, [])));
    const found = measure(work.edges, work.edgeCount);
    const wanted = measure(twin, twin.length / EDGE);
    expect(Math.abs(found.area / wanted.area - 1), `pair ${k}: area`).toBeLessThan(1e-6);
    expect(Math.abs(found.length / wanted.length - 1), `pair ${k}: length`).toBeLessThan(1e-5);
    expect(Math.abs(found.convex - wanted.convex), `pair ${k}: corners`).toBeLessThanOrEqual(2);
  }
});

test("what is shaken holds the ring as it was", () => {
  const rng = seededRng(9);
  for (let k = 0; k < 40; k++) {
    const ring = randomRing(rng, k % 4 === 0 ? 0 : 5 + rng.below(12), 10_000_000);
    const edges = ringEdges([shakenRing(ring, k)]);
    for (let i = 0; i < ring.length; i += 2) {
      // Each corner lies to the left of every edge that passes near it.
      for (let e = 0; e < edges.length; e += EDGE) {
        const dx = ring[i]! - edges[e]!;
        const dy = ring[i + 1]! - edges[e + 1]!;
        const along = edges[e + 2]! * dx + edges[e + 3]! * dy;
        const left = edges[e + 2]! * dy - edges[e + 3]! * dx;
        if (along > 0 && along < edges[e + 4]! && Math.abs(left) < 2000) expect(left).toBeGreaterThan(0);
      }
    }
  }
});

test("a cell is the same whether it is filled first or last", () => {
  const edges = ringEdges([randomRing(seededRng(3), 11, 1_000_000)]);
  const wish = { minX: -1.1e6, minY: -1.1e6, maxX: 1.1e6, maxY: 1.1e6, side: 16, near: 4e4, insideOut: false };
  const told = (order: readonly number[]): string[] => {
    const arena = emptyArena();
    const grid = addFeatureGrid(arena, edges, edges.length / EDGE, wish);
    const base = arena.heads[grid * HEAD + 5]!;
    for (const cell of order) fillCell(arena, grid, base + cell);
    return order.map((_, cell) => {
      const code = arena.cells[base + cell]!;
      if (code === -1 || code % 2 === 1) return `${code}`;
      const list = code < 0 ? -code - 2 : code / 2;
      return arena.cells.slice(list, list + 1 + (arena.cells[list]! >> 1)).join();
    });
  };
  const forward = Array.from({ length: 256 }, (_, i) => i);
  expect(told(forward)).toEqual(told([...forward].reverse()));
});
