import type { SearchTables } from "../../../problem/rectangles/searchTables.ts";
import { keepBest, sortCandidates } from "./beamCandidates.kernel.ts";
import type { BeamMemory, Guide } from "./beamMemory.ts";

/**
 * Judges every child of states `from` … `to` − 1 of `now` and collects those among the best so far. A child puts
 * a piece (or a block of equal pieces) at the left end of the lowest, then leftmost, segment, or gives that segment up
 * to its lower neighbour. Lower is better:
 *   (waste ÷ (placed + waste) + wasteFloor) · (moves ÷ placed) · mismatch · (1 + perSegment · segments)
 * Children whose waste exceeds the budget cap · width − area are dropped. Returns the children judged.
 */
export function expandStates(
  tables: SearchTables,
  memory: BeamMemory,
  guide: Guide,
  cap: number,
  budget: number,
  from: number,
  to: number,
): number {
  const { wayAcross, wayAlong, waySize, narrowestFirst, sizeLeastAcross, shortestFirst, sizeLeastAlong } = tables;
  const { waysByAcross } = tables;
  const { now, candidates, mostSegments, sizeStride, beamWidth } = memory;
  const { segAcross, segAlong, left } = now;
  const { state, key, parent, move, block, floatKey } = candidates;
  const keyBits = new Uint32Array(floatKey.buffer);
  const ways = tables.ways;
  const row = mostSegments + 1;
  // One state may add this many: every way in each block, and the hollows.
  const flush = key.length - mostChildren(tables, guide);
  const { wasteFloor, mismatch, perSegment, blocks, hollows } = guide;
  let judged = 0;
  let count = state[0]!;
  let threshold = state[1]! >>> 0;

  for (let s = from; s < to; s++) {
    const m = now.segments[s]!;
    const o = s * row;
    const leftRow = s * sizeStride;
    let at = 0;
    let base = segAlong[o]!;
    for (let i = 1; i < m; i++) {
      const along = segAlong[o + i]!;
      if (along < base) {
        base = along;
        at = i;
      }
    }
    const start = segAcross[o + at]!;
    const gap = segAcross[o + at + 1]! - start;
    const room = cap - base;
    const wallLeft = at > 0 ? segAlong[o + at - 1]! - base : room;
    const wallRight = at + 1 < m ? segAlong[o + at + 1]! - base : room;
    const waste = now.waste[s]!;
    const placed = now.placed[s]!;
    const moves = now.moves[s]! + 1;
    const piecesLeft = now.piecesLeft[s]!;
    const least = sizeLeastAcross[narrowestFirst[now.narrow[s]!]!]!;
    const leastAlong = sizeLeastAlong[shortestFirst[now.short[s]!]!]!;
    for (let w = 0; w < ways; w++) {
      const way = waysByAcross[w]!;
      const across = wayAcross[way]!;
      if (across > gap) break;
      const size = waySize[way]!;
      const copies = left[leftRow + size]!;
      if (copies === 0) continue;
      const along = wayAlong[way]!;
      if (along > room) continue;
      // Blocks: 1 × 1 first, then the counts across and along that fill the gap, the wall or the stock of copies.
      let nx = 1;
      const mostX = blocks ? Math.min(copies, Math.floor(gap / across)) : 1;
      for (;;) {
        const mostY = blocks ? Math.min(Math.floor(copies / nx), Math.floor(room / along)) : 1;
        let ny = 1;
        for (;;) {
          const blockAcross = nx * across;
          const blockAlong = ny * along;
          const rest = gap - blockAcross;
          const area = blockAcross * blockAlong;
          judged++;
          let newWaste = waste;
          if (rest > 0 && rest < least && piecesLeft > nx * ny) newWaste += rest * Math.min(blockAlong, wallRight);
          const above = room - blockAlong;
          if (above < leastAlong) newWaste += above * blockAcross;
          if (newWaste <= budget) {
            const newPlaced = placed + area;
            let score = ((newWaste / (newPlaced + newWaste) + wasteFloor) * moves) / newPlaced;
            let grown = m;
            if (rest > 0) {
              if (blockAlong !== wallLeft) {
                grown++;
                if (blockAlong !== wallRight) score *= mismatch;
              }
            } else {
              if (blockAlong === wallLeft) grown--;
              if (blockAlong === wallRight) grown--;
            }
            floatKey[0] = score * (1 + perSegment * grown);
            const bits = keyBits[0]!;
            if (bits >= threshold) state[2] = 1;
            else {
              key[count] = bits;
              parent[count] = s;
              move[count] = way;
              block[count] = (nx << 16) | ny;
              count++;
            }
          }
          if (ny >= mostY) break;
          ny = ny < 3 ? ny + 1 : ny < mostY >> 1 ? mostY >> 1 : mostY;
        }
        if (nx >= mostX) break;
        nx = nx < 4 ? nx + 1 : nx < mostX >> 1 ? mostX >> 1 : mostX;
      }
    }
    // Give the segment up.
    const low = Math.min(wallLeft, wallRight);
    const raisedWaste = waste + gap * low;
    if (m > 1 && raisedWaste <= budget) {
      judged++;
      const mean = placed > 0 ? (moves - 1) / placed : 0;
      floatKey[0] =
        (raisedWaste / (placed + raisedWaste) + wasteFloor) *
        mean *
        (1 + perSegment * (m - (wallLeft === wallRight ? 2 : 1)));
      if (keyBits[0]! < threshold) {
        key[count] = keyBits[0]!;
        parent[count] = s;
        move[count] = -1;
        block[count] = 0;
        count++;
      } else state[2] = 1;
    }
    // Leave a hollow at the left, closed by an overhanging piece from the left neighbour's top.
    if (hollows !== null && at > 0) {
      for (let h = 0; h < hollows.length; h++) {
        const to = hollows[h]!;
        if (to <= start) continue;
        const hollowWaste = waste + (to - start) * wallLeft;
        if (start + gap - to < least || hollowWaste > budget) break;
        judged++;
        floatKey[0] =
          (hollowWaste / (placed + hollowWaste) + wasteFloor) *
          (moves / Math.max(1, placed)) *
          mismatch *
          (1 + perSegment * m);
        if (keyBits[0]! >= threshold) {
          state[2] = 1;
          continue;
        }
        key[count] = keyBits[0]!;
        parent[count] = s;
        move[count] = -2;
        block[count] = to - start;
        count++;
      }
    }
    if (count > flush) {
      sortCandidates(candidates, count);
      if (count > 2 * beamWidth) state[2] = 1;
      count = keepBest(candidates, count, 2 * beamWidth);
      if (count === 2 * beamWidth) threshold = key[count - 1]!;
    }
  }
  state[0] = count;
  state[1] = threshold | 0;
  return judged;
}

/** Most children of one state. */
function mostChildren(tables: SearchTables, guide: Guide): number {
  const blocks = guide.blocks ? 42 : 1;
  return tables.ways * blocks + (guide.hollows === null ? 0 : guide.hollows.length) + 2;
}
