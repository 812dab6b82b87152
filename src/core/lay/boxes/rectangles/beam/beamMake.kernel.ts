import type { SearchTables } from "../../../problem/rectangles/searchTables.ts";
import type { BeamMemory, Generation } from "./beamMemory.ts";

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
      const way = move[index]!;
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
      const next = history.size[0]!;
      history.size[0] = next + 1;
      history.parent[next] = node;
      history.way[next] = way;
      history.block[next] = block[index]!;
      history.across[next] = start;
      history.along[next] = base;
      node = next;
      if (piecesLeft === 0) return node;
      newAcross[t + k] = start;
      newAlong[t + k] = base + along;
      k++;
      if (start + across < end) {
        newAcross[t + k] = start + across;
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
