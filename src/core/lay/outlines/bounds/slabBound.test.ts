import fc from "fast-check";
import { expect, test } from "vitest";
import { ringBox } from "../../../geometry/box.ts";
import { polygonArea, type Ring, rectangleRing, solid } from "../../../geometry/ring.ts";
import type { LayPiece } from "../../problem/layProblem.ts";
import type { RegionJob } from "../../problem/region.ts";
import { BREATH } from "../../search/breath.ts";
import { slabBounds } from "./slabBound.ts";

function jobOf(rings: readonly Ring[], turns: readonly number[], more: Partial<RegionJob> = {}): RegionJob {
  const pieces = rings.map((ring, i): LayPiece => {
    const orientations = turns.map((turnDeg) => ({ turnDeg, mirrored: false }));
    return { id: `p${i}`, outline: solid(ring), count: 1, orientations, freeTurn: false };
  });
  const region = { width: 100, length: null, outline: null, flaws: [] };
  return { region, pieces, gap: 0, margin: 0, pinned: [], goal: "shortest", ...more };
}

const boundOf = (job: RegionJob): number =>
  Math.max(0, ...[...slabBounds(job)].filter((bound) => bound !== BREATH));

/** Both parts of a convex ring cut by the line through a point at an angle. */
function cut(ring: Ring, x: number, y: number, angle: number): Ring[] {
  const [nx, ny] = [Math.sin(angle), -Math.cos(angle)];
  return [1, -1].map((sign) => {
    const out: number[] = [];
    for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
      const side = (at: number): number => sign * ((ring[at]! - x) * nx + (ring[at + 1]! - y) * ny);
      const [a, b] = [side(j), side(i)];
      if (a < 0 !== b < 0) {
        const share = a / (a - b);
        out.push(ring[j]! + share * (ring[i]! - ring[j]!), ring[j + 1]! + share * (ring[i + 1]! - ring[j + 1]!));
      }
      if (b >= 0) out.push(ring[i]!, ring[i + 1]!);
    }
    return Float64Array.from(out);
  });
}

const unit = fc.double({ min: 0, max: 1, noNaN: true });
const cuts = fc.array(fc.tuple(unit, unit, fc.double({ min: 0, max: Math.PI, noNaN: true })), { maxLength: 8 });
const TURNS: readonly (readonly number[])[] = [[0], [0, 180], [0, 90, 180, 270], [90, 270]];
const turns = fc.constantFrom(...TURNS);

test("a length cut up without waste is never ruled out, whatever the cuts", () => {
  fc.assert(
    fc.property(cuts, turns, fc.integer({ min: 20, max: 300 }), (list, allowed, length) => {
      let rings: Ring[] = [rectangleRing(0, 0, length, 100)];
      for (const [u, v, angle] of list) rings = rings.flatMap((ring) => cut(ring, u * length, v * 100, angle));
      const whole = rings.filter((ring) => ring.length >= 6 && polygonArea(solid(ring)) > 1e-3);
      // Pieces that must lie turned come out of cloth that is turned with them.
      const turned = allowed.includes(0) ? whole : whole.map(quarterTurned);
      expect(boundOf(jobOf(turned, allowed))).toBeLessThanOrEqual(length + 1e-6);
    }),
  );
});

/** A quarter turn clockwise, which a turn by 90 degrees takes back. */
function quarterTurned(ring: Ring): Ring {
  return ring.map((_, i) => (i % 2 === 0 ? ring[i + 1]! : -ring[i - 1]!));
}

test("rectangles cut apart with a gap between them are never ruled out", () => {
  const cutAt = fc.array(fc.tuple(unit, unit, fc.boolean()), { maxLength: 8 });
  fc.assert(
    fc.property(
      cutAt,
      turns,
      fc.integer({ min: 20, max: 300 }),
      fc.constantFrom(1, 3),
      (list, allowed, length, gap) => {
        let rings: Ring[] = [rectangleRing(-gap / 2, -gap / 2, length + gap, 100 + gap)];
        for (const [u, v, upright] of list)
          rings = rings.flatMap((ring) => cut(ring, u * length, v * 100, upright ? Math.PI / 2 : 0));
        const apart = rings
          .filter((ring) => ring.length >= 8)
          .map((ring) => ringBox(ring))
          .filter((box) => box.maxX - box.minX > gap && box.maxY - box.minY > gap)
          .map((box) =>
            rectangleRing(
              box.minX + gap / 2,
              box.minY + gap / 2,
              box.maxX - box.minX - gap,
              box.maxY - box.minY - gap,
            ),
          );
        const turned = allowed.includes(0) ? apart : apart.map(quarterTurned);
        expect(boundOf(jobOf(turned, allowed, { gap }))).toBeLessThanOrEqual(length + 1e-6);
      },
    ),
  );
});

/** A rectangle whose left end is a half circle's upper and lower quarter, as a bag body has. */
function roundedBody(along: number, across: number, radius: number): Ring {
  const points: number[] = [along, 0, along, across];
  for (let i = 0; i <= 12; i++) {
    const t = Math.PI / 2 + (i / 12) * (Math.PI / 2);
    points.push(radius + radius * Math.cos(t), across - radius + radius * Math.sin(t));
  }
  for (let i = 0; i <= 12; i++) {
    const t = Math.PI + (i / 12) * (Math.PI / 2);
    points.push(radius + radius * Math.cos(t), radius + radius * Math.sin(t));
  }
  return Float64Array.from(points);
}

test("bodies of which only two lie side by side need three lengths for six", () => {
  // 38 mm of 100 mm across: two to a column by height, while their area alone would ask for 2.28 of 30 mm.
  const six = Array.from({ length: 6 }, () => roundedBody(30, 38, 8));
  const byArea = six.reduce((sum, ring) => sum + polygonArea(solid(ring)), 0) / 100;
  const bound = boundOf(jobOf(six, [0, 180]));
  expect(byArea).toBeLessThan(68);
  expect(bound).toBeGreaterThan(80);
  expect(bound).toBeLessThanOrEqual(90);
});

test("nothing is told of pieces that may lie aslant, or of closed cloth", () => {
  const job = jobOf([rectangleRing(0, 0, 30, 60)], [0]);
  const free = job.pieces.map((piece) => ({ ...piece, freeTurn: true }));
  expect([...slabBounds({ ...job, pieces: free })]).toEqual([]);
  expect([...slabBounds({ ...job, region: { ...job.region, length: 50 } })]).toEqual([]);
});
