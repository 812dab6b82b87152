import type { SearchTables } from "../../../problem/rectangles/searchTables.ts";

/** Free spaces at the most; a laying out with more is given up. */
const MOST_SPACES = 4096;

/** Working memory and result of `layInSpaces`; make one per job with `spaceBuffers`. */
export interface SpaceBuffers {
  /** Maximal free rectangles: along and across of the low corner, extents along and across, four numbers each. */
  readonly spaces: Int32Array;
  /** What the last piece left of the spaces it cut. */
  readonly made: Int32Array;
  readonly outWay: Int32Array;
  readonly outAlong: Int32Array;
  readonly outAcross: Int32Array;
  /** [rectangles placed, furthest end, spaces looked at]. */
  readonly result: Int32Array;
}

/** Buffers for jobs of the table's size. */
export function spaceBuffers(tables: SearchTables): SpaceBuffers {
  return {
    spaces: new Int32Array(4 * MOST_SPACES),
    made: new Int32Array(16 * MOST_SPACES),
    outWay: new Int32Array(tables.pieces),
    outAlong: new Int32Array(tables.pieces),
    outAcross: new Int32Array(tables.pieces),
    result: new Int32Array(3),
  };
}

/**
 * Lays pieces in the order given (sizes, one entry per piece) into the maximal free rectangles, until one finds no
 * space before `cap`: at the least end, or (`closest`) where the lesser rest beside it is least.
 * O(pieces · free spaces).
 * Source: J. Jylänki 2010, "A thousand ways to pack the bin" (maximal rectangles, best short side), from memory.
 */
export function layInSpaces(
  tables: SearchTables,
  order: Int32Array,
  cap: number,
  closest: boolean,
  out: SpaceBuffers,
): void {
  const { wayAlong, wayAcross, sizeFirstWay, sizeSecondWay } = tables;
  const { spaces, made, outWay, outAlong, outAcross, result } = out;
  const n = order.length;
  let m = 1;
  let placed = 0;
  let end = 0;
  let looked = n;
  spaces[0] = 0;
  spaces[1] = 0;
  spaces[2] = cap;
  spaces[3] = tables.width;
  for (; placed < n; placed++) {
    const size = order[placed]!;
    const firstWay = sizeFirstWay[size]!;
    let bestWay = -1;
    let best = 0;
    let first = 0x7fffffff;
    let second = 0x7fffffff;
    for (let way = firstWay; way >= 0; way = way === firstWay ? sizeSecondWay[size]! : -1) {
      const dx = wayAlong[way]!;
      const dy = wayAcross[way]!;
      looked += m;
      for (let s = 0; s < 4 * m; s += 4) {
        const restAlong = spaces[s + 2]! - dx;
        const restAcross = spaces[s + 3]! - dy;
        if (restAlong < 0 || restAcross < 0) continue;
        const one = closest ? Math.min(restAlong, restAcross) : spaces[s]! + dx;
        const two = closest ? Math.max(restAlong, restAcross) : spaces[s + 1]!;
        if (one > first || (one === first && two >= second)) continue;
        first = one;
        second = two;
        bestWay = way;
        best = s;
      }
    }
    if (bestWay < 0) break;
    const x = spaces[best]!;
    const y = spaces[best + 1]!;
    const toX = x + wayAlong[bestWay]!;
    const toY = y + wayAcross[bestWay]!;
    outWay[placed] = bestWay;
    outAlong[placed] = x;
    outAcross[placed] = y;
    if (toX > end) end = toX;
    // Spaces that the piece does not touch stay; of the others what lies beyond each of its sides.
    let kept = 0;
    let k = 0;
    for (let s = 0; s < 4 * m; s += 4) {
      const sx = spaces[s]!;
      const sy = spaces[s + 1]!;
      const dx = spaces[s + 2]!;
      const dy = spaces[s + 3]!;
      if (x >= sx + dx || toX <= sx || y >= sy + dy || toY <= sy) {
        kept = put(spaces, kept, sx, sy, dx, dy);
        continue;
      }
      if (x > sx) k = put(made, k, sx, sy, x - sx, dy);
      if (toX < sx + dx) k = put(made, k, toX, sy, sx + dx - toX, dy);
      if (y > sy) k = put(made, k, sx, sy, dx, y - sy);
      if (toY < sy + dy) k = put(made, k, sx, toY, dx, sy + dy - toY);
    }
    // Spaces that stay lie in none of the new ones, which are parts of spaces they did not lie in.
    for (let i = 0; i < k; i += 4) {
      let inOther = false;
      for (let j = 0; j < k && !inOther; j += 4)
        inOther = j !== i && liesIn(made, i, made, j) && (j < i || !liesIn(made, j, made, i));
      for (let j = 0; j < kept && !inOther; j += 4) inOther = liesIn(made, i, spaces, j);
      if (inOther) continue;
      if (kept === spaces.length) {
        m = 0;
        break;
      }
      kept = put(spaces, kept, made[i]!, made[i + 1]!, made[i + 2]!, made[i + 3]!);
    }
    m = m === 0 ? 0 : kept >> 2;
  }
  result[0] = placed;
  result[1] = end;
  result[2] = looked;
}

/** Writes a space at `at`; returns the place after it. */
function put(list: Int32Array, at: number, x: number, y: number, dx: number, dy: number): number {
  list[at] = x;
  list[at + 1] = y;
  list[at + 2] = dx;
  list[at + 3] = dy;
  return at + 4;
}

/** Whether space `i` of `list` lies in space `j` of `others`. */
function liesIn(list: Int32Array, i: number, others: Int32Array, j: number): boolean {
  return (
    list[i]! >= others[j]! &&
    list[i + 1]! >= others[j + 1]! &&
    list[i]! + list[i + 2]! <= others[j]! + others[j + 2]! &&
    list[i + 1]! + list[i + 3]! <= others[j + 1]! + others[j + 3]!
  );
}
