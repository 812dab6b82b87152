import { turnCosSin } from "../../../geometry/pose.ts";
import { polygonArea, type Ring } from "../../../geometry/ring.ts";
import { isLoose, type LayPiece } from "../../problem/layProblem.ts";
import { pieceExtents } from "../../problem/pieceExtent.ts";
import { BREATH, type Breath } from "../../search/breath.ts";
import type { CompiledJob, Variant } from "../compile/compileJob.ts";
import type { NoFitStore } from "../noFit/noFitStore.ts";

/** Shapes taller than this share of the width are looked at as a row that cannot pass one another. */
const TALL = 0.34;

/** Least extent along the roll over the allowed turns, mm; 0 for a piece that may lie at others besides. */
function leastLength(piece: LayPiece): number {
  return isLoose(piece) ? 0 : Math.min(...pieceExtents(piece).map(({ along }) => along));
}

/**
 * Least area of the piece with half the gap round it: the sum of a set and a disc has at least the area
 * (√A + √π · r)² (Brunn–Minkowski inequality).
 */
function leastArea(piece: LayPiece, half: number): number {
  return (Math.sqrt(polygonArea(piece.outline)) + Math.sqrt(Math.PI) * half) ** 2;
}

/** The no-fit polygon of `moving` about `fixed`, in the region's directions. */
function noFitInRegion(store: NoFitStore, fixed: Variant, moving: Variant): Ring[] {
  const swapped = fixed.shape > moving.shape;
  const base = swapped ? moving : fixed;
  const sign = swapped ? -1 : 1;
  return store.ringsOf(store.pairGrid(fixed, moving)).map((ring) => {
    const out = new Float64Array(ring.length);
    for (let i = 0; i < ring.length; i += 2) {
      const x = base.flip * ring[i]!;
      out[i] = sign * (base.cos * x - base.sin * ring[i + 1]!);
      out[i + 1] = sign * (base.sin * x + base.cos * ring[i + 1]!);
    }
    return out;
  });
}

/** Least x ≥ 0 at which a shift (x, y), y between `low` and `high`, leaves the rings' interior. */
function leastPassing(rings: readonly Ring[], low: number, high: number): number {
  let least = Infinity;
  let winding = 0;
  const mid = (low + high) / 2;
  for (const ring of rings)
    for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
      const [ax, ay, bx, by] = [ring[j]!, ring[j + 1]!, ring[i]!, ring[i + 1]!];
      const side = ay === by ? 0 : ax + ((mid - ay) / (by - ay)) * (bx - ax);
      if (ay > mid !== by > mid && side > 0) winding += by > ay ? 1 : -1;
      if (Math.max(ay, by) < low || Math.min(ay, by) > high) continue;
      const at = (y: number): number => (ay === by ? ax : ax + ((y - ay) / (by - ay)) * (bx - ax));
      const from = ay === by ? ax : at(Math.min(Math.max(ay, low), high));
      const to = ay === by ? bx : at(Math.min(Math.max(by, low), high));
      if (Math.min(from, to) <= 0 && Math.max(from, to) >= 0) return 0;
      if (from > 0) least = Math.min(least, from, to);
    }
  return winding !== 0 && Number.isFinite(least) ? least : 0;
}

/** Least shift along the roll from a copy of shape `a` to the next, one of shape `b`; grid units. A breath for each pair of turns. */
function* leastShift(job: CompiledJob, store: NoFitStore, a: number, b: number): Generator<Breath, number> {
  const { window } = job;
  let least = Infinity;
  for (const u of job.variantsOf[a]!)
    for (const v of job.variantsOf[b]!) {
      const fixed = job.variants[u]!;
      const moving = job.variants[v]!;
      yield* store.prepare(fixed, moving);
      const low = window.minY - moving.minY - (window.maxY - fixed.maxY);
      const high = window.maxY - moving.maxY - (window.minY - fixed.minY);
      // Rounding of crossings may have moved the polygon by a unit.
      least = Math.min(least, leastPassing(noFitInRegion(store, fixed, moving), low - 1, high + 1) - 1);
      yield BREATH;
    }
  return Math.max(0, least);
}

/**
 * Length that a row of tall copies needs: in whatever order they stand along the roll, each is at least its least
 * shift beyond the one before, interlocking allowed. Tried for the tallest shapes, then the two tallest, and so on.
 */
function* rowBound(job: CompiledJob, store: NoFitStore): Generator<Breath, number> {
  const { window, variants, variantsOf, shapes } = job;
  const height = (v: number): number => variants[v]!.maxY - variants[v]!.minY;
  const half = (v: number): number => Math.min(variants[v]!.maxX, -variants[v]!.minX);
  const counts = shapes.map(() => 0);
  for (const { shape } of job.items) counts[shape]!++;
  const least = shapes.map((_, s) => Math.min(...variantsOf[s]!.map(height)));
  const tall = shapes
    .map((_, s) => s)
    .filter((s) => least[s]! > TALL * (window.maxY - window.minY) && counts[s]! > 0);
  tall.sort((a, b) => least[b]! - least[a]!);
  let best = 0;
  for (let k = 1; k <= Math.min(tall.length, 8); k++) {
    const row = tall.slice(0, k);
    const gaps: number[] = [];
    for (const s of row) {
      const before = row.filter((t) => t !== s || counts[s]! > 1);
      let gap = before.length === 0 ? 0 : Infinity;
      for (const t of before) gap = Math.min(gap, yield* leastShift(job, store, t, s));
      gaps.push(gap);
    }
    const sum = row.reduce((total, s, i) => total + counts[s]! * gaps[i]!, 0) - Math.max(...gaps);
    best = Math.max(best, sum + 2 * Math.min(...row.map((s) => Math.min(...variantsOf[s]!.map(half)))));
  }
  return best;
}

/**
 * Proven least length of an open roll for the job's pieces, mm, valid for interlocking pieces: the largest of area
 * over width, the longest piece, and the row of tall pieces (the last only without a gap and free turns, where the
 * grid's outlines are the pieces' own). Null for other regions.
 * Cost: no-fit polygons of the tall shapes, a breath after each.
 */
export function* outlineBound(compiled: CompiledJob, store: NoFitStore): Generator<Breath, number | null> {
  const { job, unitsPerMm } = compiled;
  const { width, length, outline } = job.region;
  if (length !== null || outline !== null || job.pinned.length > 0) return null;
  const inset = job.margin - job.gap / 2;
  const room = width - 2 * inset;
  if (!(room > 0) || job.pieces.length === 0) return null;
  const area = job.pieces.reduce((sum, piece) => sum + piece.count * leastArea(piece, job.gap / 2), 0);
  const longest = Math.max(...job.pieces.filter((p) => p.count > 0).map(leastLength), 0) + job.gap;
  const isExact =
    job.gap === 0 &&
    !compiled.isDetailed &&
    compiled.shapes.every(({ grow }) => grow === 0) &&
    job.pieces.every((p) => !isLoose(p) && p.outline.outer.length / 2 <= 48 && isSquare(p));
  const fits = compiled.items.every(({ shape }) => compiled.variantsOf[shape]!.length > 0);
  const row = isExact && fits ? (yield* rowBound(compiled, store)) / unitsPerMm : 0;
  return Math.max(area / room, longest, row) * (1 - 1e-9) + 2 * inset;
}

/** Whether all turns are quarter turns, so that turned outlines are exact on the grid. */
function isSquare(piece: LayPiece): boolean {
  return piece.orientations.every((o) => turnCosSin(o.turnDeg).every(Number.isInteger));
}
