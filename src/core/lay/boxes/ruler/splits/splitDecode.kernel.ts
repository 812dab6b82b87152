import type { SearchTables } from "../../../problem/rectangles/searchTables.ts";

/** How the L left beside a piece is parted: first cut across the roll, first along it, or whichever wastes less. */
const SPLIT_ACROSS = 0;
const SPLIT_ALONG = 1;
export const SPLIT_SMALLER = 2;

/** Working memory and result of `decodeSplits`. */
export interface SplitBuffers {
  /** Stack of free rectangles: across, along, width, height, four numbers each. */
  readonly free: Int32Array;
  readonly next: Int32Array;
  readonly left: Int32Array;
  readonly stamp: Int32Array;
  readonly outWay: Int32Array;
  readonly outAlong: Int32Array;
  readonly outAcross: Int32Array;
  /** [rectangles placed, furthest end, entries looked at]. */
  readonly result: Int32Array;
}

/** How narrow a strip may be that is left over, units, and whether the far side and the far end of the cloth are loose. */
export interface NarrowRule {
  readonly least: number;
  readonly sideLoose: boolean;
  readonly endLoose: boolean;
}

export const ANY_STRIP: NarrowRule = { least: 0, sideLoose: true, endLoose: true };

/** Buffers for jobs of the table's size. */
export function splitBuffers(tables: SearchTables): SplitBuffers {
  const n = tables.pieces;
  return {
    free: new Int32Array(4 * (n + 4)),
    next: new Int32Array(n + 1),
    left: new Int32Array(tables.sizes),
    stamp: new Int32Array(tables.sizes),
    outWay: new Int32Array(n),
    outAlong: new Int32Array(n),
    outAcross: new Int32Array(n),
    result: new Int32Array(3),
  };
}

/**
 * Lays pieces so that edge-to-edge cuts part them: takes the last free rectangle, lays in its near corner the
 * first piece of `order` (sizes, one entry per piece) among those that match most of its sides, and parts the
 * rest in two free rectangles, the smaller next, as `splits` (one entry per piece) says. A rectangle nothing
 * fits is given up. The first free rectangle is the cloth up to `cap`.
 *
 * With `strips.least`, a piece goes only where nothing or at least that much is left beside and beyond it, but for what
 * is left along the loose edges of the cloth.
 *
 * Returns the area of the pieces left out; where the others lie is in `out`.
 * Source: recursive placing with priorities: Zhang, Shi, Leung & Wu 2016, Inf. Process. Lett. 116:15–21.
 */
export function decodeSplits(
  tables: SearchTables,
  order: Int32Array,
  splits: Uint8Array,
  cap: number,
  out: SplitBuffers,
  strips: NarrowRule = ANY_STRIP,
): number {
  const { wayAcross, wayAlong, sizeFirstWay, sizeSecondWay, sizeLeastAcross, sizeLeastAlong } = tables;
  const { narrowestFirst, shortestFirst } = tables;
  const { least, sideLoose, endLoose } = strips;
  const { free, next, left, stamp, outWay, outAlong, outAcross, result } = out;
  const n = order.length;
  const sizes = tables.sizes;
  let areaLeft = tables.area;
  for (let i = 0; i < n; i++) next[i] = i + 1;
  next[n] = 0;
  left.set(tables.sizeCount);
  stamp.fill(-1);
  let narrow = 0;
  let short = 0;
  let placed = 0;
  let furthest = 0;
  let looked = 0;
  let step = 0;
  free[0] = 0;
  free[1] = 0;
  free[2] = tables.width;
  free[3] = cap;
  let top = 4;
  while (top > 0 && placed < n) {
    top -= 4;
    step++;
    const across = free[top]!;
    const along = free[top + 1]!;
    const w = free[top + 2]!;
    const h = free[top + 3]!;
    while (narrow < sizes && left[narrowestFirst[narrow]!] === 0) narrow++;
    while (short < sizes && left[shortestFirst[short]!] === 0) short++;
    if (w < sizeLeastAcross[narrowestFirst[narrow]!]! || h < sizeLeastAlong[shortestFirst[short]!]!) continue;
    const leastAcross = sideLoose && across + w === tables.width ? 0 : least;
    const leastAlong = endLoose && along + h === cap ? 0 : least;
    let bestFit = -1;
    let bestWay = -1;
    let bestEntry = 0;
    let before = 0;
    let bestBefore = 0;
    // Entry e of the order sits in slot e + 1 of the list; slot 0 is the head.
    for (let slot = next[0]!; slot !== 0; before = slot, slot = next[slot]!) {
      const size = order[slot - 1]!;
      if (stamp[size] === step) continue;
      stamp[size] = step;
      looked++;
      let way = sizeFirstWay[size]!;
      for (;;) {
        const dw = w - wayAcross[way]!;
        const dh = h - wayAlong[way]!;
        if ((dw === 0 || (dw > 0 && dw >= leastAcross)) && (dh === 0 || (dh > 0 && dh >= leastAlong))) {
          const fit = (dw === 0 ? 2 : 0) + (dh === 0 ? 2 : 0);
          if (fit > bestFit) {
            bestFit = fit;
            bestWay = way;
            bestEntry = slot;
            bestBefore = before;
          }
        }
        const second = sizeSecondWay[size]!;
        if (second < 0 || way === second) break;
        way = second;
      }
      if (bestFit === 4) break;
    }
    if (bestFit < 0) continue;
    const pw = wayAcross[bestWay]!;
    const ph = wayAlong[bestWay]!;
    next[bestBefore] = next[bestEntry]!;
    left[tables.waySize[bestWay]!]!--;
    areaLeft -= pw * ph;
    outWay[placed] = bestWay;
    outAcross[placed] = across;
    outAlong[placed] = along;
    placed++;
    if (along + ph > furthest) furthest = along + ph;
    const dw = w - pw;
    const dh = h - ph;
    let split = splits[bestEntry - 1]!;
    // The larger rest is kept whole: cut across when more is left along.
    if (split === SPLIT_SMALLER) split = dw * ph <= pw * dh ? SPLIT_ACROSS : SPLIT_ALONG;
    const besideHeight = split === SPLIT_ACROSS ? ph : h;
    const beyondWidth = split === SPLIT_ACROSS ? w : pw;
    const beside = dw * besideHeight;
    const beyond = beyondWidth * dh;
    for (let turn = 0; turn < 2; turn++) {
      // Larger first, so that the smaller comes off the stack next.
      const pushBeside = turn === 0 ? beside > beyond : beside <= beyond;
      if (pushBeside && beside > 0) {
        free[top] = across + pw;
        free[top + 1] = along;
        free[top + 2] = dw;
        free[top + 3] = besideHeight;
        top += 4;
      } else if (!pushBeside && beyond > 0) {
        free[top] = across;
        free[top + 1] = along + ph;
        free[top + 2] = beyondWidth;
        free[top + 3] = dh;
        top += 4;
      }
    }
  }
  result[0] = placed;
  result[1] = furthest;
  result[2] = looked;
  return areaLeft;
}
