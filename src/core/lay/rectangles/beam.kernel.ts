import type { SearchTables } from "./searchTables.ts";

/** One generation of partial plans, as arrays over states. */
export interface Generation {
  /** [number of states]. */
  readonly size: Int32Array;
  readonly segments: Int32Array;
  /** Row per state, `mostSegments` + 1 wide. */
  readonly segAcross: Int32Array;
  readonly segAlong: Int32Array;
  /** Row per state, `sizeStride` wide: copies left of each size. */
  readonly left: Uint16Array;
  readonly leftHash: Int32Array;
  /** Of skyline and copies left. */
  readonly hash: Int32Array;
  readonly piecesLeft: Int32Array;
  /** Pieces or blocks placed. */
  readonly moves: Int32Array;
  readonly waste: Float64Array;
  readonly placed: Float64Array;
  /** Positions in `narrowestFirst` and `shortestFirst` before which no copies are left. */
  readonly narrow: Int32Array;
  readonly short: Int32Array;
  /** Index into the history. */
  readonly node: Int32Array;
}

/** Children judged but not made yet, and the radix sorter's memory. */
export interface Candidates {
  /** [count, threshold key bits, 1 once any child within the budget was dropped]. */
  readonly state: Int32Array;
  readonly key: Uint32Array;
  readonly parent: Int32Array;
  /** way · 2 + side; −1 gives the segment up, −2 only its first `block` units. */
  readonly move: Int32Array;
  /** Copies across · 65536 + copies along. */
  readonly block: Int32Array;
  readonly order: Int32Array;
  readonly spare: Int32Array;
  readonly counts: Int32Array;
  readonly floatKey: Float32Array;
}

/** What every node placed, to read a plan back. */
export interface History {
  /** [nodes]. */
  readonly size: Int32Array;
  readonly parent: Int32Array;
  readonly way: Int32Array;
  readonly block: Int32Array;
  readonly across: Int32Array;
  readonly along: Int32Array;
}

/** How states are ranked; see `expandStates`. */
export interface Guide {
  /** Added to the share of waste, so that size counts even without waste. */
  readonly wasteFloor: number;
  /** Factor on a child that neither fills the width nor is level with a wall. */
  readonly mismatch: number;
  /** Added factor per skyline segment. */
  readonly perSegment: number;
  /** Added factor per skyline segment and piece left: the last pieces must level the skyline. */
  readonly perEnd: number;
  /** Exponent on the mean area of what was placed. */
  readonly bigFirst: number;
  /** Whether equal pieces may be put down as one block. */
  readonly blocks: boolean;
  /** Whether pieces may also go to the right end of a segment. */
  readonly bothSides: boolean;
  /**
   * Extents across that a hollow beside a taller left neighbour may have (ascending), or null. With them every
   * plan pushed to the cut end and the lower selvedge can be reached, so an exhausted beam is a proof.
   */
  readonly hollows: Int32Array | null;
}

/** Working memory for beams up to `width` states wide. */
export interface BeamMemory {
  readonly beamWidth: number;
  readonly mostSegments: number;
  readonly sizeStride: number;
  readonly now: Generation;
  readonly coming: Generation;
  readonly candidates: Candidates;
  readonly history: History;
  readonly table: Int32Array;
  readonly sizeHash: Int32Array;
}

const MOST_SEGMENTS = 120;

/** Allocates for a beam of `beamWidth` states on the tables. About 40 bytes a state, segment and size. */
export function beamMemory(tables: SearchTables, beamWidth: number): BeamMemory {
  const mostSegments = Math.min(MOST_SEGMENTS, tables.pieces + 1);
  const sizeStride = (tables.sizes + 1) & ~1;
  const room = 6 * beamWidth + 100 * tables.ways + 4096;
  let hashSize = 1024;
  while (hashSize < 4 * beamWidth) hashSize *= 2;
  const sizeHash = new Int32Array(tables.sizes);
  let mixed = 0x2545f491;
  for (let size = 0; size < tables.sizes; size++) {
    mixed = Math.imul(mixed ^ (mixed >>> 15), 0x2c1b3c6d) + 0x7ed55d16;
    sizeHash[size] = mixed | 1;
  }
  // Giving segments up adds generations; a beam that outgrows this ends.
  const nodes = beamWidth * (tables.pieces + 2) * 1.5 + 2 * beamWidth + 16;
  return {
    beamWidth,
    mostSegments,
    sizeStride,
    now: generation(beamWidth, mostSegments, sizeStride),
    coming: generation(beamWidth, mostSegments, sizeStride),
    candidates: {
      state: new Int32Array(3),
      key: new Uint32Array(room),
      parent: new Int32Array(room),
      move: new Int32Array(room),
      block: new Int32Array(room),
      order: new Int32Array(room),
      spare: new Int32Array(room),
      counts: new Int32Array(2048),
      floatKey: new Float32Array(1),
    },
    history: {
      size: new Int32Array(1),
      parent: new Int32Array(nodes),
      way: new Int32Array(nodes),
      block: new Int32Array(nodes),
      across: new Int32Array(nodes),
      along: new Int32Array(nodes),
    },
    table: new Int32Array(hashSize),
    sizeHash,
  };
}

function generation(states: number, mostSegments: number, sizeStride: number): Generation {
  return {
    size: new Int32Array(1),
    segments: new Int32Array(states),
    segAcross: new Int32Array(states * (mostSegments + 1)),
    segAlong: new Int32Array(states * (mostSegments + 1)),
    left: new Uint16Array(states * sizeStride),
    leftHash: new Int32Array(states),
    hash: new Int32Array(states),
    piecesLeft: new Int32Array(states),
    moves: new Int32Array(states),
    waste: new Float64Array(states),
    placed: new Float64Array(states),
    narrow: new Int32Array(states),
    short: new Int32Array(states),
    node: new Int32Array(states),
  };
}

/** Makes `now` the one empty plan. */
export function startBeam(tables: SearchTables, memory: BeamMemory): void {
  const { now, history } = memory;
  now.size[0] = 1;
  now.segments[0] = 1;
  now.segAcross[0] = 0;
  now.segAcross[1] = tables.width;
  now.segAlong[0] = 0;
  for (let size = 0; size < tables.sizes; size++) now.left[size] = tables.sizeCount[size]!;
  now.leftHash[0] = 0;
  now.piecesLeft[0] = tables.pieces;
  now.moves[0] = 0;
  now.waste[0] = 0;
  now.placed[0] = 0;
  now.narrow[0] = 0;
  now.short[0] = 0;
  now.node[0] = 0;
  history.size[0] = 1;
  history.parent[0] = -1;
  memory.candidates.state[0] = 0;
  memory.candidates.state[1] = -1;
  memory.candidates.state[2] = 0;
}

/**
 * Judges every child of states `from` … `to` − 1 of `now` and collects those among the best so far. A child puts
 * a piece (or a block of equal pieces) at an end of the lowest, then leftmost, segment, or gives that segment up
 * to its lower neighbour. Lower is better:
 *   (waste ÷ (placed + waste) + wasteFloor) · (moves ÷ placed)^bigFirst · mismatch · (1 + perSegment · segments)
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
  // One state may add this many: every way in each block, on both sides, and the hollows.
  const flush = key.length - mostChildren(tables, guide);
  const { wasteFloor, mismatch, perSegment, perEnd, bigFirst, blocks, bothSides, hollows } = guide;
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
          const sides = rest === 0 || !bothSides ? 1 : 2;
          for (let side = 0; side < sides; side++) {
            judged++;
            const other = side === 0 ? wallRight : wallLeft;
            const own = side === 0 ? wallLeft : wallRight;
            let newWaste = waste;
            if (rest > 0 && rest < least && piecesLeft > nx * ny) {
              newWaste += rest * Math.min(blockAlong, other);
            }
            const above = room - blockAlong;
            if (above < leastAlong) newWaste += above * blockAcross;
            if (newWaste > budget) continue;
            const newPlaced = placed + area;
            const mean = moves / newPlaced;
            let score =
              (newWaste / (newPlaced + newWaste) + wasteFloor) * (bigFirst === 1 ? mean : mean ** bigFirst);
            let grown = m;
            if (rest > 0) {
              if (blockAlong !== own) {
                grown++;
                if (blockAlong !== other) score *= mismatch;
              }
            } else {
              if (blockAlong === own) grown--;
              if (blockAlong === other) grown--;
            }
            score *= 1 + perSegment * grown + (perEnd * grown) / piecesLeft;
            floatKey[0] = score;
            const bits = keyBits[0]!;
            if (bits >= threshold) {
              state[2] = 1;
              continue;
            }
            key[count] = bits;
            parent[count] = s;
            move[count] = way * 2 + side;
            block[count] = (nx << 16) | ny;
            count++;
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
        (bigFirst === 1 ? mean : mean ** bigFirst) *
        (1 + (perSegment + perEnd / piecesLeft) * (m - (wallLeft === wallRight ? 2 : 1)));
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
          (moves / Math.max(1, placed)) ** bigFirst *
          mismatch *
          (1 + (perSegment + perEnd / piecesLeft) * m);
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
  return tables.ways * blocks * (guide.bothSides ? 2 : 1) + (guide.hollows === null ? 0 : guide.hollows.length) + 2;
}

/** Fills `order` with the candidates' indices by key: three passes of an 11-bit radix sort. Stable. */
export function sortCandidates(candidates: Candidates, count: number): void {
  const { key, order, spare, counts } = candidates;
  let source = spare;
  let target = order;
  for (let i = 0; i < count; i++) source[i] = i;
  for (let shift = 0; shift < 33; shift += 11) {
    counts.fill(0);
    for (let i = 0; i < count; i++) counts[(key[i]! >>> shift) & 2047]!++;
    let sum = 0;
    for (let bucket = 0; bucket < 2048; bucket++) {
      const c = counts[bucket]!;
      counts[bucket] = sum;
      sum += c;
    }
    for (let i = 0; i < count; i++) {
      const index = source[i]!;
      target[counts[(key[index]! >>> shift) & 2047]!++] = index;
    }
    const swap = source;
    source = target;
    target = swap;
  }
  // Three passes end in `order`.
}

function keepBest(candidates: Candidates, count: number, keep: number): number {
  if (count <= keep) return count;
  const { key, parent, move, block, order, spare } = candidates;
  for (const column of [key, parent, move, block]) {
    for (let i = 0; i < keep; i++) spare[i] = column[order[i]!]!;
    for (let i = 0; i < keep; i++) column[i] = spare[i]!;
  }
  return keep;
}

/**
 * Makes children in `order` positions `from` … `to` − 1 and adds those to `then` that are new (by skyline and
 * pieces left) and still within the budget, until it holds the beam width. Returns the history node of a
 * finished plan, else −1.
 */
export function makeChildren(
  tables: SearchTables,
  memory: BeamMemory,
  cap: number,
  budget: number,
  from: number,
  to: number,
): number {
  const { wayAcross, wayAlong, waySize, narrowestFirst, shortestFirst, sizeLeastAcross, sizeLeastAlong } = tables;
  const { now, coming: then, candidates, history, table, sizeHash, mostSegments, sizeStride, beamWidth } = memory;
  const { parent, move, block, order } = candidates;
  const row = mostSegments + 1;
  const mask = table.length - 1;
  const oldAcross = now.segAcross;
  const oldAlong = now.segAlong;
  const newAcross = then.segAcross;
  const newAlong = then.segAlong;
  for (let position = from; position < to; position++) {
    const target = then.size[0]!;
    if (target >= beamWidth) return -1;
    const index = order[position]!;
    const s = parent[index]!;
    const o = s * row;
    const t = target * row;
    const m = now.segments[s]!;
    let at = 0;
    let base = oldAlong[o]!;
    for (let i = 1; i < m; i++) {
      const along = oldAlong[o + i]!;
      if (along < base) {
        base = along;
        at = i;
      }
    }
    const start = oldAcross[o + at]!;
    const end = oldAcross[o + at + 1]!;
    let waste = now.waste[s]!;
    let placed = now.placed[s]!;
    let piecesLeft = now.piecesLeft[s]!;
    let leftHash = now.leftHash[s]!;
    const leftFrom = s * sizeStride;
    const leftTo = target * sizeStride;
    for (let i = 0; i < sizeStride; i++) then.left[leftTo + i] = now.left[leftFrom + i]!;
    let narrow = now.narrow[s]!;
    let short = now.short[s]!;
    let moves = now.moves[s]!;
    let node = now.node[s]!;
    // Skyline of the child, levels merged as it is written.
    let k = 0;
    for (let i = 0; i < at; i++) {
      newAcross[t + i] = oldAcross[o + i]!;
      newAlong[t + i] = oldAlong[o + i]!;
    }
    k = at;
    if (m + 2 > mostSegments) {
      candidates.state[2] = 1;
      continue;
    }
    if (move[index] === -2) {
      const rise = oldAlong[o + at - 1]!;
      waste += block[index]! * (rise - base);
      newAcross[t + k] = start;
      newAlong[t + k] = rise;
      newAcross[t + k + 1] = start + block[index]!;
      newAlong[t + k + 1] = base;
      k += 2;
    } else if (move[index] === -1) {
      const wallLeft = at > 0 ? oldAlong[o + at - 1]! : cap;
      const wallRight = at + 1 < m ? oldAlong[o + at + 1]! : cap;
      const rise = Math.min(wallLeft, wallRight);
      waste += (end - start) * (rise - base);
      newAcross[t + k] = start;
      newAlong[t + k] = rise;
      k++;
    } else {
      const way = move[index]! >> 1;
      const nx = block[index]! >> 16;
      const ny = block[index]! & 65535;
      const across = wayAcross[way]! * nx;
      const along = wayAlong[way]! * ny;
      const size = waySize[way]!;
      then.left[leftTo + size]! -= nx * ny;
      leftHash = (leftHash + Math.imul(sizeHash[size]!, nx * ny)) | 0;
      piecesLeft -= nx * ny;
      placed += across * along;
      moves++;
      const corner = (move[index]! & 1) === 0 ? start : end - across;
      const next = history.size[0]!;
      history.size[0] = next + 1;
      history.parent[next] = node;
      history.way[next] = way;
      history.block[next] = block[index]!;
      history.across[next] = corner;
      history.along[next] = base;
      node = next;
      if (piecesLeft === 0) return node;
      if (corner > start) {
        newAcross[t + k] = start;
        newAlong[t + k] = base;
        k++;
      }
      newAcross[t + k] = corner;
      newAlong[t + k] = base + along;
      k++;
      if (corner + across < end) {
        newAcross[t + k] = corner + across;
        newAlong[t + k] = base;
        k++;
      }
      while (then.left[leftTo + narrowestFirst[narrow]!]! === 0) narrow++;
      while (then.left[leftTo + shortestFirst[short]!]! === 0) short++;
    }
    for (let i = at + 1; i < m; i++, k++) {
      newAcross[t + k] = oldAcross[o + i]!;
      newAlong[t + k] = oldAlong[o + i]!;
    }
    newAcross[t + k] = tables.width;
    const least = sizeLeastAcross[narrowestFirst[narrow]!]!;
    const leastAlong = sizeLeastAlong[shortestFirst[short]!]!;
    waste += settle(newAcross, newAlong, t, k, cap, least, leastAlong);
    k = settledSegments[0]!;
    if (waste > budget || (k === 1 && newAlong[t]! >= cap)) {
      history.size[0] = node === now.node[s]! ? history.size[0]! : node;
      continue;
    }
    let hash = leftHash;
    for (let i = 0; i < k; i++) {
      hash = Math.imul(hash ^ newAcross[t + i]!, 0x2c1b3c6d);
      hash = Math.imul((hash ^ (hash >>> 13)) + newAlong[t + i]!, 0x297a2d39);
    }
    hash ^= hash >>> 15;
    let slot = hash & mask;
    let twin = false;
    while (table[slot] !== 0) {
      const other = table[slot]! - 1;
      if (then.hash[other] === hash && isSameState(then, other, target, k, row, sizeStride)) {
        twin = true;
        break;
      }
      slot = (slot + 1) & mask;
    }
    if (twin) {
      history.size[0] = node === now.node[s]! ? history.size[0]! : node;
      continue;
    }
    table[slot] = target + 1;
    then.hash[target] = hash;
    then.segments[target] = k;
    then.leftHash[target] = leftHash;
    then.piecesLeft[target] = piecesLeft;
    then.moves[target] = moves;
    then.waste[target] = waste;
    then.placed[target] = placed;
    then.narrow[target] = narrow;
    then.short[target] = short;
    then.node[target] = node;
    then.size[0] = target + 1;
  }
  return -1;
}

/** Whether state `a` has the skyline (k segments) and copies left of the one being made in row `b`. */
function isSameState(gen: Generation, a: number, b: number, k: number, row: number, sizeStride: number): boolean {
  if (gen.segments[a] !== k) return false;
  const { segAcross, segAlong, left } = gen;
  for (let i = 0; i < k; i++) {
    if (segAcross[a * row + i] !== segAcross[b * row + i] || segAlong[a * row + i] !== segAlong[b * row + i])
      return false;
  }
  for (let i = 0; i < sizeStride; i++) if (left[a * sizeStride + i] !== left[b * sizeStride + i]) return false;
  return true;
}

/** Segments left by the last `settle`. */
const settledSegments = new Int32Array(1);

/**
 * Raises what can hold no piece any more: hollows narrower than the narrowest piece, and segments with less room
 * to the cap than the shortest; merges level neighbours. Returns the area given up.
 */
function settle(
  across: Int32Array,
  along: Int32Array,
  at: number,
  count: number,
  cap: number,
  least: number,
  leastAlong: number,
): number {
  let waste = 0;
  let m = count;
  for (let i = 0; i < m; i++) {
    const height = along[at + i]!;
    if (height < cap && cap - height < leastAlong) {
      waste += (across[at + i + 1]! - across[at + i]!) * (cap - height);
      along[at + i] = cap;
    }
  }
  let i = 0;
  while (i < m) {
    if (i + 1 < m && along[at + i] === along[at + i + 1]) {
      for (let j = i + 1; j < m; j++) {
        across[at + j] = across[at + j + 1]!;
        along[at + j] = along[at + j + 1]!;
      }
      m--;
      continue;
    }
    const height = along[at + i]!;
    const width = across[at + i + 1]! - across[at + i]!;
    if (width < least && height < cap) {
      const leftWall = i > 0 ? along[at + i - 1]! : cap;
      const rightWall = i + 1 < m ? along[at + i + 1]! : cap;
      if (leftWall > height && rightWall > height) {
        const rise = Math.min(leftWall, rightWall);
        waste += width * (rise - height);
        along[at + i] = rise;
        if (i > 0) i--;
        continue;
      }
    }
    i++;
  }
  settledSegments[0] = m;
  return waste;
}
