import { minkowskiDiff, type Path64, PointInPolygonResult, pointInPolygon } from "clipper2-ts";
import { intersection } from "polyclip-ts";
import { expect, test, vi } from "vitest";
import { ringBox } from "../../src/core/geometry/box.ts";
import { gridShape, noFitRings } from "../../src/core/geometry/noFit.ts";
import type { Ring } from "../../src/core/geometry/ring.ts";
import { nearestExit, ROW, ROW_INTS, weightedDepth } from "../../src/core/lay/outlines/noFit/depth.kernel.ts";
import { addFeatureGrid, ringEdges } from "../../src/core/lay/outlines/noFit/featureGrid.ts";
import { emptyArena, HEAD } from "../../src/core/lay/outlines/noFit/gridArena.ts";
import { EDGE } from "../../src/core/lay/outlines/noFit/gridEdges.kernel.ts";
import { type Rng, seededRng } from "../../src/core/lay/search/rng.ts";
import { seedOf } from "../tools/seeded.ts";

/** Queries per run; the long suite asks for a million (`LONG_TESTS=1`). */
const QUERIES = process.env["LONG_TESTS"] === "1" ? 1_000_000 : 10_000;

vi.setConfig({ testTimeout: 600_000 });

/** A star-shaped ring with whole coordinates: simple, mostly not convex. */
function randomRing(rng: Rng, size: number): Ring {
  const n = 3 + rng.below(12);
  const turns = Array.from({ length: n }, () => rng.unit() * 2 * Math.PI).sort((a, b) => a - b);
  const points: number[] = [];
  turns.forEach((turn, i) => {
    const next = turns[(i + 1) % n]! + (i + 1 === n ? 2 * Math.PI : 0);
    const radius = size * (0.2 + 0.8 * rng.unit());
    points.push(Math.round(radius * Math.cos(turn)), Math.round(radius * Math.sin(turn)));
    // Never a gap of half a turn or more, so that the centre stays inside.
    if (next - turn > 2) {
      const mid = (turn + next) / 2;
      points.push(Math.round(size * Math.cos(mid)), Math.round(size * Math.sin(mid)));
    }
  });
  return Float64Array.from(points);
}

function distanceToRings(rings: readonly Ring[], x: number, y: number): number {
  let least = Infinity;
  for (const ring of rings)
    for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
      const ux = ring[i]! - ring[j]!;
      const uy = ring[i + 1]! - ring[j + 1]!;
      const t = Math.min(1, Math.max(0, ((x - ring[j]!) * ux + (y - ring[j + 1]!) * uy) / (ux * ux + uy * uy)));
      least = Math.min(least, Math.hypot(x - ring[j]! - t * ux, y - ring[j + 1]! - t * uy));
    }
  return least;
}

function holds(rings: readonly Ring[], x: number, y: number): boolean {
  let inside = false;
  for (const ring of rings)
    for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
      const yi = ring[i + 1]!;
      const yj = ring[j + 1]!;
      if (yi > y !== yj > y && x < ((ring[j]! - ring[i]!) * (y - yi)) / (yj - yi) + ring[i]!) inside = !inside;
    }
  return inside;
}

/** One no-fit polygon in a feature grid, as a row that the kernels take. */
function gridRow(rings: readonly Ring[]) {
  const arena = emptyArena();
  const boxes = rings.map(ringBox);
  const minX = Math.min(...boxes.map((b) => b.minX));
  const minY = Math.min(...boxes.map((b) => b.minY));
  const maxX = Math.max(...boxes.map((b) => b.maxX));
  const maxY = Math.max(...boxes.map((b) => b.maxY));
  const near = 0.04 * Math.min(maxX - minX, maxY - minY);
  const wish = { minX: minX - near, minY: minY - near, maxX: maxX + near, maxY: maxY + near };
  const edges = ringEdges(rings);
  const grid = addFeatureGrid(arena, edges, edges.length / EDGE, { ...wish, side: 32, near, insideOut: false });
  const rows = new Float64Array(ROW);
  rows.set([minX, maxX, minY, maxY, 0, 0, 1, 0, 0, 1, 1, 0]);
  rows.set(arena.heads.subarray(grid * HEAD, grid * HEAD + 4), 12);
  const ints = new Int32Array(ROW_INTS);
  ints.set([arena.heads[grid * HEAD + 5]!, arena.heads[grid * HEAD + 4]!, grid]);
  return { arena, rows, ints, probe: new Float64Array(4) };
}

/** … asked as the search asks it. */
function gridQuery(rings: readonly Ring[]): (x: number, y: number, limit?: number) => number {
  const { arena, rows, ints, probe } = gridRow(rings);
  const pick = Int32Array.of(0);
  return (x, y, limit = Infinity) => {
    probe.set([x, y, limit, 0]);
    weightedDepth(probe, rows, ints, pick, 0, 1, arena);
    return probe[3]!;
  };
}

test("the feature grid gives the depth that brute force finds", () => {
  const rng = seededRng(seedOf(11));
  const pairs = Math.ceil(QUERIES / 500);
  let inside = 0;
  for (let p = 0; p < pairs; p++) {
    const a = gridShape(randomRing(rng, 10_000_000), []);
    const b = gridShape(randomRing(rng, 2_000_000 + rng.below(8_000_000)), []);
    const rings = noFitRings(a, b);
    const query = gridQuery(rings);
    for (let q = 0; q < 500; q++) {
      const x = (rng.unit() * 2 - 1) * 2.1e7;
      const y = (rng.unit() * 2 - 1) * 2.1e7;
      const truth = holds(rings, x, y) ? distanceToRings(rings, x, y) : 0;
      if (truth > 0) inside++;
      const depth = query(x, y);
      // Exact at the outline; far inside a pruned list may be off by a sliver of the piece's size.
      const slack = truth < 300_000 ? 1.5 : 60_000;
      if (Math.abs(depth - truth) > slack)
        throw new Error(`pair ${p}: depth ${depth} at ${x}, ${y}; brute force ${truth}`);
      // What a cell is deep at least must never decide a sample that the depth itself would not.
      const limit = depth * (0.6 + 0.8 * rng.unit());
      const stopped = query(x, y, limit);
      if (depth > 0 && (depth < limit ? stopped !== depth : !(stopped >= limit && stopped <= depth)))
        throw new Error(`pair ${p}: depth ${depth} at ${x}, ${y}, but ${stopped} with the limit ${limit}`);
    }
  }
  expect(inside).toBeGreaterThan(QUERIES / 20);
});

// polyclip-ts (Martinez, Rueda & Feito 2009) shares no code with the no-fit polygons.
test("the way out leads to the outline, as far as brute force says, on the side it says", () => {
  const rng = seededRng(seedOf(23));
  const out = new Float64Array(3);
  let [inside, outside] = [0, 0];
  for (let p = 0; p < 20; p++) {
    const a = gridShape(randomRing(rng, 10_000_000), []);
    const rings = noFitRings(a, gridShape(randomRing(rng, 4_000_000 + rng.below(6_000_000)), []));
    const { arena, rows, ints, probe } = gridRow(rings);
    for (let q = 0; q < 500; q++) {
      // Near the outline, where pieces are brought into exact contact.
      const ring = rings[rng.below(rings.length)]!;
      const at = 2 * rng.below(ring.length / 2);
      const x = ring[at]! + (rng.unit() * 2 - 1) * 400_000;
      const y = ring[at + 1]! + (rng.unit() * 2 - 1) * 400_000;
      probe.set([x, y, Infinity, 0]);
      if (!nearestExit(probe, rows, ints, 0, arena, out)) continue;
      const [depth, nx, ny] = [out[0]!, out[1]!, out[2]!];
      const distance = distanceToRings(rings, x, y);
      if (distance < 2) continue;
      const isIn = holds(rings, x, y);
      if (distance < 300_000) {
        if (isIn) inside++;
        else outside++;
        expect(Math.abs(depth - (isIn ? distance : -distance))).toBeLessThan(2);
        expect(Math.hypot(nx, ny)).toBeCloseTo(1, 9);
        expect(distanceToRings(rings, x + depth * nx, y + depth * ny)).toBeLessThan(2);
      }
    }
  }
  expect(Math.min(inside, outside)).toBeGreaterThan(1000);
});

test("a shift overlaps by the no-fit polygon just where an independent library finds shared area", () => {
  const rng = seededRng(seedOf(5));
  const toGeometry = (ring: Ring, x: number, y: number): [number, number][][] => {
    const points: [number, number][] = [];
    for (let i = 0; i < ring.length; i += 2) points.push([ring[i]! + x, ring[i + 1]! + y]);
    return [points];
  };
  let apart = 0;
  for (let p = 0; p < Math.ceil(QUERIES / 200); p++) {
    const a = gridShape(randomRing(rng, 9000), []);
    const b = gridShape(randomRing(rng, 5000), []);
    const rings = noFitRings(a, b);
    for (let q = 0; q < 10; q++) {
      const x = rng.below(28_000) - 14_000;
      const y = rng.below(28_000) - 14_000;
      if (distanceToRings(rings, x, y) < 3) continue;
      const overlaps = holds(rings, x, y);
      const shared = intersection(toGeometry(a.outer, 0, 0), toGeometry(b.outer, x, y));
      expect(shared.length > 0, `pair ${p}, shift ${x}, ${y}`).toBe(overlaps);
      if (!overlaps) apart++;
    }
  }
  expect(apart).toBeGreaterThan(20);
});

function pathOf(ring: Ring, sign: number, x: number, y: number): Path64 {
  const path: Path64 = [];
  for (let i = 0; i < ring.length; i += 2) path.push({ x: sign * ring[i]! + x, y: sign * ring[i + 1]! + y });
  return path;
}

// clipper2-ts (a port of Clipper2) sweeps one outline along the other; what lies wholly in the other piece's copy is
// inside as well. One question a query: QUERIES of them are asked.
test("a shift overlaps by the no-fit polygon just where another library's Minkowski difference holds it", () => {
  const rng = seededRng(seedOf(23));
  const perPair = 200;
  const crossings = (paths: readonly Path64[], x: number, y: number): number =>
    paths.filter((path) => pointInPolygon({ x, y }, path) === PointInPolygonResult.IsInside).length;
  let asked = 0;
  let inside = 0;
  while (asked < QUERIES) {
    const a = gridShape(randomRing(rng, 9000), []);
    const b = gridShape(randomRing(rng, 5000), []);
    const rings = noFitRings(a, b);
    const swept = minkowskiDiff(pathOf(b.outer, 1, 0, 0), pathOf(a.outer, 1, 0, 0), true);
    const whole = [pathOf(a.outer, 1, -b.outer[0]!, -b.outer[1]!), pathOf(b.outer, -1, a.outer[0]!, a.outer[1]!)];
    for (let q = 0; q < perPair; q++) {
      const x = rng.below(28_000) - 14_000;
      const y = rng.below(28_000) - 14_000;
      if (distanceToRings(rings, x, y) < 3) continue;
      asked++;
      const truth = crossings(swept, x, y) % 2 === 1 || crossings(whole, x, y) > 0;
      if (truth) inside++;
      if (holds(rings, x, y) !== truth)
        throw new Error(`query ${asked}: shift ${x}, ${y}, overlap expected: ${truth}`);
    }
  }
  expect(inside).toBeGreaterThan(QUERIES / 10);
  expect(inside).toBeLessThan(0.9 * QUERIES);
});
