// The search finds every hole in its own arithmetic. So whatever leaves the outline engine is judged here from the
// outlines as given, posed and clipped by this file triangle by triangle, which shares no code with the search or its
// judge but earcut, whose triangles must add up to the outline: pieces of 3 mm beside pieces of a metre, straight and
// odd turns, closed cloth, with and without a gap.
import earcut from "earcut";
import fc from "fast-check";
import { expect, test } from "vitest";
import { type Polygon, solid } from "../../src/core/geometry/ring.ts";
import { compileJob } from "../../src/core/lay/outlines/compile/compileJob.ts";
import { OUTLINE_TUNING } from "../../src/core/lay/outlines/outlineEngine.ts";
import { OutlineRun } from "../../src/core/lay/outlines/outlineRun.ts";
import type { LayPiece } from "../../src/core/lay/problem/layProblem.ts";
import type { RegionJob } from "../../src/core/lay/problem/region.ts";

type Point = [number, number];

/** Most of the smaller piece that two pieces may share, and of a piece that may lie beyond the cloth. */
const MOST_SHARE = 1e-6;
const EVALUATIONS = 40_000;

const share = fc.double({ min: 0, max: 1, noNaN: true });
/** Extents from 3 mm to a metre, small ones as likely as large. */
const extent = share.map((u) => 3 * 10 ** (2.5 * u));

/** A crooked polygon with corners on no grid, or every second corner drawn in to half. */
const crooked = fc
  .tuple(extent, extent, fc.array(fc.tuple(share, share), { minLength: 4, maxLength: 9 }), fc.boolean())
  .map(([width, height, corners, isHollow]): Polygon => {
    const ring = corners.flatMap(([turn, reach], i) => {
      const angle = (2 * Math.PI * (i + 0.4 * turn)) / corners.length;
      const r = (0.3 + 0.2 * reach) * (isHollow && i % 2 === 1 ? 0.5 : 1);
      return [width * (0.5 + r * Math.cos(angle)), height * (0.5 + r * Math.sin(angle))];
    });
    return solid(Float64Array.from(ring));
  });

/** Turns allowed; none listed stands for any turn at all. */
const turns = fc.oneof(
  fc.constantFrom([], [0], [0, 180], [0, 90, 180, 270]),
  fc.array(fc.integer({ min: 1, max: 359 }), { minLength: 1, maxLength: 3 }).map((odd) => [0, ...odd]),
);

const pieces = fc
  .tuple(
    turns,
    fc.array(fc.tuple(crooked, fc.integer({ min: 1, max: 6 }), fc.boolean()), { minLength: 2, maxLength: 6 }),
  )
  .map(([allowed, list]): LayPiece[] =>
    list.map(([outline, count, isPaired], i) => ({
      id: `p${i}`,
      outline,
      count,
      orientations: (allowed.length > 0 ? allowed : [0]).flatMap((turnDeg) =>
        isPaired ? [false, true].map((mirrored) => ({ turnDeg, mirrored })) : [{ turnDeg, mirrored: false }],
      ),
      freeTurn: allowed.length === 0,
    })),
  );

const hide = solid(Float64Array.of(0, 0, 700, 60, 1300, 0, 1200, 500, 1330, 900, 600, 820, 80, 990, 160, 400));
const scar = solid(Float64Array.of(500, 300, 640, 320, 610, 470, 520, 400));

const job = fc.tuple(pieces, fc.boolean(), fc.constantFrom(0, 1.5)).map(
  ([list, isHide, gap]): RegionJob => ({
    region: isHide
      ? { width: 1000, length: 1340, outline: hide, flaws: [scar] }
      : { width: 1300, length: null, outline: null, flaws: [] },
    pieces: list,
    gap,
    margin: 0,
    pinned: [],
    goal: isHide ? "most" : "shortest",
  }),
);

const pointsOf = (ring: ArrayLike<number>): Point[] =>
  Array.from({ length: ring.length / 2 }, (_, i): Point => [ring[2 * i]!, ring[2 * i + 1]!]);

/** Mirrored left to right if asked, then turned counter-clockwise, then shifted. */
function posed(outline: Polygon, pose: { x: number; y: number; turnDeg: number; mirrored: boolean }): Point[] {
  const turn = (pose.turnDeg * Math.PI) / 180;
  return pointsOf(outline.outer).map(([px, y]) => {
    const x = pose.mirrored ? -px : px;
    return [x * Math.cos(turn) - y * Math.sin(turn) + pose.x, x * Math.sin(turn) + y * Math.cos(turn) + pose.y];
  });
}

const areaOf = (points: readonly Point[]): number =>
  Math.abs(
    points.reduce((sum, [x, y], i) => {
      const [nx, ny] = points[(i + 1) % points.length]!;
      return sum + (x * ny - nx * y) / 2;
    }, 0),
  );
/** Triangles of a simple polygon, counter-clockwise. */
function triangles(points: readonly Point[]): Point[][] {
  const corners = earcut(points.flat());
  const out: Point[][] = [];
  for (let i = 0; i < corners.length; i += 3) {
    const [a, b, c] = [points[corners[i]!]!, points[corners[i + 1]!]!, points[corners[i + 2]!]!];
    out.push(cross(a, b, c) < 0 ? [a, c, b] : [a, b, c]);
  }
  const sum = out.reduce((area, triangle) => area + areaOf(triangle), 0);
  expect(Math.abs(sum / areaOf(points) - 1)).toBeLessThan(1e-9);
  return out;
}

const cross = (a: Point, b: Point, p: Point): number =>
  (b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]);

/** What a convex polygon has in common with a triangle (Sutherland & Hodgman 1974). */
function clipped(polygon: readonly Point[], [a, b, c]: readonly Point[]): Point[] {
  let rest = [...polygon];
  for (const [from, to] of [
    [a!, b!],
    [b!, c!],
    [c!, a!],
  ] as const) {
    const kept: Point[] = [];
    for (const [i, p] of rest.entries()) {
      const q = rest[(i + 1) % rest.length]!;
      const [atP, atQ] = [cross(from, to, p), cross(from, to, q)];
      if (atP >= 0) kept.push(p);
      if (atP >= 0 !== atQ >= 0) {
        const t = atP / (atP - atQ);
        kept.push([p[0] + t * (q[0] - p[0]), p[1] + t * (q[1] - p[1])]);
      }
    }
    rest = kept;
  }
  return rest;
}

/** Area that two simple polygons have in common. */
const sharedArea = (first: readonly Point[], second: readonly Point[]): number => {
  // Near the origin, where doubles are finest.
  const [ox, oy] = first[0]!;
  const near = (points: readonly Point[]): Point[] => points.map(([x, y]): Point => [x - ox, y - oy]);
  const others = triangles(near(second));
  return triangles(near(first)).reduce(
    (sum, one) => others.reduce((rest, other) => rest + areaOf(clipped(one, other)), sum),
    0,
  );
};

/** Distance from a point to a line between two others. */
function toLine([x, y]: Point, [ax, ay]: Point, [bx, by]: Point): number {
  const [dx, dy] = [bx - ax, by - ay];
  const t = Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy)));
  return Math.hypot(x - ax - t * dx, y - ay - t * dy);
}

/** Distance between two polygons that do not overlap: a corner of one is nearest to an edge of the other. */
const distance = (first: readonly Point[], second: readonly Point[]): number => {
  const fromCorners = (corners: readonly Point[], ring: readonly Point[]): number =>
    Math.min(...corners.map((p) => Math.min(...ring.map((a, i) => toLine(p, a, ring[(i + 1) % ring.length]!)))));
  return Math.min(fromCorners(first, second), fromCorners(second, first));
};

const boxOf = (points: readonly Point[]) => {
  const xs = points.map(([x]) => x);
  const ys = points.map(([, y]) => y);
  return { minX: Math.min(...xs), maxX: Math.max(...xs), minY: Math.min(...ys), maxY: Math.max(...ys) };
};

test("what leaves the engine shares less than a millionth of the smaller piece, keeps its gap, and lies on the cloth", () => {
  let pairs = 0;
  let near = 0;
  let judged = 0;
  let dropped = 0;
  fc.assert(
    fc.property(job, fc.integer({ min: 1, max: 1000 }), (problem, seed) => {
      const run = new OutlineRun(compileJob(problem), seed, OUTLINE_TUNING);
      for (const _ of run.run(EVALUATIONS)) if (run.state.evaluations > EVALUATIONS) break;
      for (const _ of run.finish());
      judged += run.judged;
      dropped += run.dropped;
      const outlines = new Map(problem.pieces.map((piece) => [piece.id, piece.outline]));
      const laid = run.plan.placements.map((place) => {
        const points = posed(outlines.get(place.pieceId)!, place);
        return { points, area: areaOf(points), box: boxOf(points) };
      });
      const { region } = problem;
      for (const { points, area, box } of laid) {
        if (region.outline === null) {
          const slack = 1e-6 * Math.sqrt(area);
          expect(box.minX).toBeGreaterThanOrEqual(-slack);
          expect(box.minY).toBeGreaterThanOrEqual(-slack);
          expect(box.maxY).toBeLessThanOrEqual(region.width + slack);
          expect(box.maxX).toBeLessThanOrEqual(run.plan.length + slack);
        } else {
          const on = sharedArea(points, pointsOf(region.outline.outer));
          expect((area - on) / area).toBeLessThan(MOST_SHARE);
          for (const flaw of region.flaws)
            expect(sharedArea(points, pointsOf(flaw.outer)) / area).toBeLessThan(MOST_SHARE);
        }
      }
      for (const [i, a] of laid.entries())
        for (const b of laid.slice(0, i)) {
          const { gap } = problem;
          if (a.box.minX >= b.box.maxX + gap || b.box.minX >= a.box.maxX + gap) continue;
          if (a.box.minY >= b.box.maxY + gap || b.box.minY >= a.box.maxY + gap) continue;
          if (gap > 0) {
            near++;
            expect(distance(a.points, b.points)).toBeGreaterThanOrEqual(
              gap - 1e-6 * Math.sqrt(Math.min(a.area, b.area)),
            );
          }
          pairs++;
          const shared = sharedArea(a.points, b.points);
          expect(shared / Math.min(a.area, b.area)).toBeLessThan(MOST_SHARE);
        }
    }),
    { numRuns: 60, endOnFailure: true },
  );
  console.log(
    `touching: ${pairs} pairs clipped, ${near} with a gap between them; ${judged} plans judged by the engine, ${dropped} sent back`,
  );
  expect(pairs).toBeGreaterThan(300);
  expect(near).toBeGreaterThan(0);
  // A judge that often sends plans back would mean that the search believes in holes.
  expect(dropped).toBeLessThanOrEqual(judged / 50);
});
