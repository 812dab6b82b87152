import type { SearchTables } from "../../../problem/rectangles/searchTables.ts";
import { dropSegment, raiseUnderBlocked } from "./skylineSegments.kernel.ts";

/** Along values above every real one. */
export const UNCAPPED = 0x3fffffff;

/** Working memory and result of `decodeOrder`; make one per search with `decodeBuffers`. */
export interface DecodeBuffers {
  readonly segAcross: Int32Array;
  readonly segAlong: Int32Array;
  /** Linked list both ways over the entries (1-based) of the order that are not placed yet; slot 0 is the head. */
  readonly next: Int32Array;
  readonly previous: Int32Array;
  /** First entry of each size that is not placed yet, 0 when none; and the next entry of the same size. */
  readonly sizeEntry: Int32Array;
  readonly nextAlike: Int32Array;
  readonly outWay: Int32Array;
  readonly outAlong: Int32Array;
  readonly outAcross: Int32Array;
  /** [rectangles placed, furthest end, entries looked at, blocked boxes looked at]. */
  readonly result: Int32Array;
}

/** Buffers for jobs of the table's size. */
export function decodeBuffers(tables: SearchTables): DecodeBuffers {
  const n = tables.pieces;
  const segments = n + tables.blocked.length + 4;
  return {
    segAcross: new Int32Array(segments),
    segAlong: new Int32Array(segments),
    next: new Int32Array(n + 1),
    previous: new Int32Array(n + 1),
    sizeEntry: new Int32Array(tables.sizes),
    nextAlike: new Int32Array(n + 1),
    outWay: new Int32Array(n),
    outAlong: new Int32Array(n),
    outAcross: new Int32Array(n),
    result: new Int32Array(4),
  };
}

/**
 * Lays the pieces in best-fit fashion: always on the lowest, then leftmost, segment of the skyline, always the
 * first piece of `order` (sizes, one entry per piece) among those that fit it best; a segment nothing fits on is
 * raised to its lower neighbour. Pieces that would end beyond `cap` are passed over.
 *
 * Returns the area of the pieces left out; where the others lie is in `out`. Stops as soon as the cloth lost so far
 * leaves no room for all but `mostLeft` of the area, and then returns what must stay out at least, which is more. Fit
 * is judged as in the score families of the skyline literature (Leung, Zhang & Sim 2011): width filled and level with
 * a wall first.
 * O(pieces · entries looked at).
 */
export function decodeOrder(
  tables: SearchTables,
  order: Int32Array,
  cap: number,
  out: DecodeBuffers,
  mostLeft: number = Infinity,
): number {
  const { wayAcross, wayAlong, waySize, sizeFirstWay, sizeSecondWay, narrowestFirst, sizeLeastAcross } = tables;
  const { waysByAcross, acrossSorted, waysByAlong, alongSorted, blocked, width, ways } = tables;
  const { segAcross, segAlong, next, previous, sizeEntry, nextAlike, outWay, outAlong, outAcross, result } = out;
  const n = order.length;
  const blockedEnd = blocked.length;
  const longest = ways > 0 ? alongSorted[ways - 1]! : 0;
  // Boxes before this one lie behind the front, which never goes back.
  let ahead = 0;
  let boxes = 0;
  // A choice is ranked by score, then the earlier entry, then the lower way, in one number: score s lies between
  // (s − 1) · span and s · span.
  const span = (n + 1) * ways;
  let areaLeft = tables.area;
  // Area that must stay out: below 0 while there is cloth to spare.
  let mustStay = tables.area - cap * width;
  for (let i = 0; i < n; i++) {
    next[i] = i + 1;
    previous[i + 1] = i;
  }
  next[n] = 0;
  sizeEntry.fill(0);
  for (let entry = n; entry > 0; entry--) {
    const size = order[entry - 1]!;
    nextAlike[entry] = sizeEntry[size]!;
    sizeEntry[size] = entry;
  }
  let narrow = 0;
  let placed = 0;
  let furthest = 0;
  let looked = 0;
  let m = 1;
  segAcross[0] = 0;
  segAcross[1] = width;
  segAlong[0] = 0;
  while (placed < n) {
    let at = 0;
    let base = segAlong[0]!;
    for (let i = 1; i < m; i++) {
      const along = segAlong[i]!;
      if (along < base) {
        base = along;
        at = i;
      }
    }
    let room = cap - base;
    if (room <= 0) break;
    const start = segAcross[at]!;
    const gap = segAcross[at + 1]! - start;
    const wallLeft = at > 0 ? segAlong[at - 1]! - base : room;
    const wallRight = at + 1 < m ? segAlong[at + 1]! - base : room;
    // The lowest blocked box over this segment limits how far pieces may reach; they stand by their near ends.
    let hit = -1;
    while (ahead < blockedEnd && blocked[ahead + 1]! <= base) ahead += 4;
    const reach = base + Math.min(room, longest);
    for (let b = ahead; b < blockedEnd && blocked[b]! < reach; b += 4) {
      boxes++;
      if (blocked[b + 1]! <= base || blocked[b + 2]! >= start + gap || blocked[b + 3]! <= start) continue;
      room = Math.max(0, blocked[b]! - base);
      hit = b;
      break;
    }
    const tall = Math.max(wallLeft, wallRight);
    const low = Math.min(wallLeft, wallRight);
    while (sizeEntry[narrowestFirst[narrow]!]! === 0) narrow++;
    const least = sizeLeastAcross[narrowestFirst[narrow]!]!;
    let best = 0;
    if (least <= gap && room > 0) {
      // Ways up to `fitting` are no wider than the gap; those that fill it stand right before.
      let fitting = 0;
      for (let lowest = 0, high = ways; lowest < high; ) {
        const middle = (lowest + high) >> 1;
        if (acrossSorted[middle]! <= gap) lowest = middle + 1;
        else high = middle;
        fitting = lowest;
      }
      let w = fitting - 1;
      for (; w >= 0 && acrossSorted[w] === gap; w--) {
        looked++;
        const way = waysByAcross[w]!;
        const entry = sizeEntry[waySize[way]!]!;
        const along = wayAlong[way]!;
        if (entry === 0 || along > room) continue;
        let score = 5;
        if (along === tall) score = along === low ? 9 : 8;
        else if (along === low) score = 7;
        const rank = score * span - entry * ways - way;
        if (rank > best) best = rank;
      }
      if (best === 0) {
        // Level with a wall: 4 and 3, one less when the rest of the gap becomes useless.
        for (let wall = tall, score = 4; score >= 3; wall = low, score--) {
          if (score === 3 && (low === tall || best > 3 * span)) break;
          if (wall > room) continue;
          let from = 0;
          for (let high = ways; from < high; ) {
            const middle = (from + high) >> 1;
            if (alongSorted[middle]! < wall) from = middle + 1;
            else high = middle;
          }
          for (; from < ways && alongSorted[from] === wall; from++) {
            looked++;
            const way = waysByAlong[from]!;
            const across = wayAcross[way]!;
            const entry = sizeEntry[waySize[way]!]!;
            if (entry === 0 || across >= gap) continue;
            const rank = (gap - across < least ? score - 1 : score) * span - entry * ways - way;
            if (rank > best) best = rank;
          }
        }
        if (best < 2 * span) {
          // Any that fits: 2, or 1 when the rest becomes useless. Few ways fit: look at them; else walk the order.
          if (w < 12) {
            for (; w >= 0; w--) {
              looked++;
              const way = waysByAcross[w]!;
              const entry = sizeEntry[waySize[way]!]!;
              if (entry === 0 || wayAlong[way]! > room) continue;
              const rank = (gap - acrossSorted[w]! < least ? 1 : 2) * span - entry * ways - way;
              if (rank > best) best = rank;
            }
          } else {
            for (let entry = next[0]!; entry !== 0; entry = next[entry]!) {
              if (best > 2 * span - (entry + 1) * ways) break;
              looked++;
              const size = order[entry - 1]!;
              const first = sizeFirstWay[size]!;
              for (let way = first; way >= 0; way = way === first ? sizeSecondWay[size]! : -1) {
                const across = wayAcross[way]!;
                if (across > gap || wayAlong[way]! > room) continue;
                const rank = (gap - across < least ? 1 : 2) * span - entry * ways - way;
                if (rank > best) best = rank;
              }
            }
          }
        }
      }
    }
    if (best === 0) {
      // Raise what lies under the box only when that may open a narrower place, or when the wall ends inside it.
      if (hit >= 0 && (least <= gap || low > room)) {
        m = raiseUnderBlocked(segAcross, segAlong, m, at, blocked[hit + 1]!, blocked[hit + 2]!, blocked[hit + 3]!);
      } else {
        if (m === 1) break;
        // Raise to the lower neighbour and merge with it (with both when level).
        mustStay += low * gap;
        if (mustStay > mostLeft) {
          areaLeft = mustStay;
          break;
        }
        const rise = base + low;
        segAlong[at] = rise;
        if (at + 1 < m && segAlong[at + 1] === rise) m = dropSegment(segAcross, segAlong, m, at + 1);
        if (at > 0 && segAlong[at - 1] === rise) m = dropSegment(segAcross, segAlong, m, at);
      }
      continue;
    }
    const chosen = span - (best % span);
    const bestWay = chosen % ways;
    const bestEntry = (chosen - bestWay) / ways;
    const across = wayAcross[bestWay]!;
    const along = wayAlong[bestWay]!;
    const after = next[bestEntry]!;
    const before = previous[bestEntry]!;
    next[before] = after;
    if (after !== 0) previous[after] = before;
    sizeEntry[waySize[bestWay]!] = nextAlike[bestEntry]!;
    areaLeft -= across * along;
    const atLeft =
      across === gap || (along === wallLeft ? true : along === wallRight ? false : wallLeft >= wallRight);
    outWay[placed] = bestWay;
    outAlong[placed] = base;
    outAcross[placed] = atLeft ? start : start + gap - across;
    placed++;
    const top = base + along;
    if (top > furthest) furthest = top;
    if (across === gap) {
      segAlong[at] = top;
      if (at + 1 < m && segAlong[at + 1] === top) m = dropSegment(segAcross, segAlong, m, at + 1);
      if (at > 0 && segAlong[at - 1] === top) m = dropSegment(segAcross, segAlong, m, at);
    } else if (atLeft) {
      if (at > 0 && segAlong[at - 1] === top) segAcross[at] = start + across;
      else {
        for (let i = m; i >= at; i--) {
          segAcross[i + 1] = segAcross[i]!;
          segAlong[i + 1] = segAlong[i]!;
        }
        m++;
        segAlong[at] = top;
        segAcross[at + 1] = start + across;
      }
    } else if (at + 1 < m && segAlong[at + 1] === top) segAcross[at + 1]! -= across;
    else {
      for (let i = m; i > at; i--) {
        segAcross[i + 1] = segAcross[i]!;
        segAlong[i + 1] = segAlong[i]!;
      }
      m++;
      segAcross[at + 1] = start + gap - across;
      segAlong[at + 1] = top;
    }
  }
  result[0] = placed;
  result[1] = furthest;
  result[2] = looked;
  result[3] = boxes;
  return placed === n ? 0 : areaLeft;
}
