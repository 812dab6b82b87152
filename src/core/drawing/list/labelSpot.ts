import { type Box, ringBox } from "../../geometry/box.ts";
import type { Ring } from "../../geometry/ring.ts";

/** A level block of room inside an outline: its centre, and how wide it may be at the height asked for. */
export interface LabelSpot {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  /** True when a line (fold, stitch …) runs through the block. */
  readonly crossed: boolean;
}

const ROWS = 17;

/** Where the outlines cross a level line, left to right; pairs enclose the inside (even-odd). */
function crossings(rings: readonly Ring[], y: number): number[] {
  const xs: number[] = [];
  for (const ring of rings) {
    for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
      const y0 = ring[j + 1]!;
      const y1 = ring[i + 1]!;
      if (y0 > y === y1 > y) continue;
      xs.push(ring[j]! + ((ring[i]! - ring[j]!) * (y - y0)) / (y1 - y0));
    }
  }
  return xs.sort((a, b) => a - b);
}

type Span = readonly [number, number];

function spansAt(rings: readonly Ring[], y: number): Span[] {
  const xs = crossings(rings, y);
  const spans: Span[] = [];
  for (let i = 0; i + 1 < xs.length; i += 2) spans.push([xs[i]!, xs[i + 1]!]);
  return spans;
}

function meet(a: readonly Span[], b: readonly Span[]): Span[] {
  const out: Span[] = [];
  for (const [a0, a1] of a) {
    for (const [b0, b1] of b) {
      const lo = Math.max(a0, b0);
      const hi = Math.min(a1, b1);
      if (hi > lo) out.push([lo, hi]);
    }
  }
  return out;
}

/** Level stretches with what lies on bands over the height `low` to `high` taken out. */
function besides(spans: readonly Span[], bands: readonly Box[], low: number, high: number): Span[] {
  let left: Span[] = [...spans];
  for (const { minX, maxX, minY, maxY } of bands) {
    if (minY > high || maxY < low) continue;
    left = left.flatMap(([lo, hi]): Span[] =>
      maxX < lo || minX > hi
        ? [[lo, hi]]
        : [[lo, Math.min(minX, hi)] as const, [Math.max(maxX, lo), hi] as const].filter(([a, b]) => b > a),
    );
  }
  return left;
}

function touches(line: ArrayLike<number>, box: Box): boolean {
  for (let i = 0; i + 3 < line.length; i += 2) {
    if (segmentMeetsBox(line[i]!, line[i + 1]!, line[i + 2]!, line[i + 3]!, box)) return true;
  }
  return false;
}

/** True when a segment has a point in the closed box. */
export function segmentMeetsBox(x0: number, y0: number, x1: number, y1: number, box: Box): boolean {
  const { minX, minY, maxX, maxY } = box;
  if ((x0 < minX && x1 < minX) || (x0 > maxX && x1 > maxX)) return false;
  if ((y0 < minY && y1 < minY) || (y0 > maxY && y1 > maxY)) return false;
  if (x0 >= minX && x0 <= maxX && y0 >= minY && y0 <= maxY) return true;
  // The boxes meet, so the segment does unless all four corners lie on one side of its line.
  const dx = x1 - x0;
  const dy = y1 - y0;
  const lowLeft = dx * (minY - y0) - dy * (minX - x0);
  const lowRight = dx * (minY - y0) - dy * (maxX - x0);
  const highLeft = dx * (maxY - y0) - dy * (minX - x0);
  const highRight = dx * (maxY - y0) - dy * (maxX - x0);
  const least = Math.min(lowLeft, lowRight, highLeft, highRight);
  return least <= 0 && Math.max(lowLeft, lowRight, highLeft, highRight) >= 0;
}

/**
 * Room for a level block `width` × `height` mm inside rings (outside and holes, even-odd), as near the middle as
 * can be and off the bands; blocks that no line of `lines` (flat points) runs through are preferred. Null when there
 * is none.
 * Looks at 17 levels, so a very thin neck may be missed. Cost O(levels · points).
 */
export function labelSpot(
  rings: readonly Ring[],
  lines: readonly ArrayLike<number>[],
  width: number,
  height: number,
  bands: readonly Box[] = [],
): LabelSpot | null {
  const box = ringBox(rings[0]!);
  const room = box.maxY - box.minY - height;
  if (room < 0 || box.maxX - box.minX < width) return null;
  const middle = (box.minX + box.maxX) / 2;
  let second: LabelSpot | null = null;
  for (let k = 0; k < ROWS; k++) {
    // Middle first, then further and further up and down.
    const step = k % 2 === 0 ? k / 2 : -(k + 1) / 2;
    const y = (box.minY + box.maxY) / 2 + (step * room) / (ROWS - 1);
    // A hair inside, so that a block as high as the outline does not lie on its edges.
    const reach = height / 2 - 1e-6;
    let spans = spansAt(rings, y);
    for (const at of [y - reach, y - reach / 2, y + reach / 2, y + reach]) spans = meet(spans, spansAt(rings, at));
    for (const [lo, hi] of besides(spans, bands, y - height / 2, y + height / 2)) {
      if (hi - lo < width) continue;
      const x = Math.min(Math.max(middle, lo + width / 2), hi - width / 2);
      const block = { minX: x - width / 2, maxX: x + width / 2, minY: y - height / 2, maxY: y + height / 2 };
      const crossed = lines.some((line) => touches(line, block));
      const spot = { x, y, width: hi - lo, crossed };
      if (!crossed) return spot;
      second ??= spot;
    }
  }
  return second;
}
