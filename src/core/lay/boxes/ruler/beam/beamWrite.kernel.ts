import { type BeamRun, fitsAny, reach } from "./beam.kernel.ts";
import { ANY, type BeamStates, CLOTH, COLUMN, FREE_SIZE, KEYS_PER_SIZE, MOST_FREE, SEGMENT } from "./beamState.ts";

/**
 * Writes child `slot` of `from` as state `to` of `into`. Returns a hash of what is left and free, or −1 when the
 * child is dead: nothing free, too many rectangles or over budget. The caller sets `trail`.
 */
export function writeChild(run: BeamRun, from: BeamStates, slot: number, into: BeamStates, to: number): number {
  const { children, world } = run;
  const { tables, stages, keys } = world;
  const { free, left } = into;
  const sizes = tables.sizes;
  const i = children.parent[slot]!;
  const way = children.way[slot]!;
  const at = to * sizes;
  for (let size = 0; size < sizes; size++) left[at + size] = from.left[i * sizes + size]!;
  const base = to * MOST_FREE * FREE_SIZE;
  const fromBase = i * MOST_FREE * FREE_SIZE;
  let end = (from.freeCount[i]! - 1) * FREE_SIZE;
  for (let k = 0; k < end; k++) free[base + k] = from.free[fromBase + k]!;
  let area = from.placedArea[i]!;
  let placed = from.placed[i]!;
  if (way >= 0) {
    const w = from.free[fromBase + end]!;
    let h = from.free[fromBase + end + 1]!;
    const x = from.free[fromBase + end + 2]!;
    const y = from.free[fromBase + end + 3]!;
    const level = from.free[fromBase + end + 4]!;
    const nx = children.timesAcross[slot]!;
    const ny = children.timesAlong[slot]!;
    const bw = nx * tables.wayAcross[way]!;
    const bh = ny * tables.wayAlong[way]!;
    let along = children.split[slot]! === 1;
    if (level === CLOTH) {
      const height = children.split[slot]!;
      if (h > height) {
        put(w, h - height, x, y + height, CLOTH);
      }
      h = height;
      along = true;
    }
    const inner = stages < Infinity ? (level === CLOTH ? SEGMENT : level) : ANY;
    const w2 = along ? bw : w;
    const h1 = along ? h : bh;
    const beyondLevel = stages < Infinity ? COLUMN : ANY;
    const trimmed = level === COLUMN;
    const besideFirst = (w - bw) * h1 >= w2 * (h - bh);
    for (let turn = 0; turn < 2; turn++) {
      if ((turn === 0) === besideFirst) {
        if (!trimmed && w > bw && h1 > 0) put(w - bw, h1, x + bw, y, inner);
      } else if (h > bh && stages !== 2) put(w2, h - bh, x, y + bh, beyondLevel);
    }
    const size = tables.waySize[way]!;
    left[at + size]! -= nx * ny;
    area += nx * ny * tables.sizeArea[size]!;
    placed += nx * ny;
  }
  into.placedArea[to] = area;
  into.placed[to] = placed;
  if (placed === run.world.tables.pieces) return 0;
  let kept = base;
  let live = 0;
  let hash = 0;
  for (let k = base; k < base + end; k += FREE_SIZE) {
    const w = reach(run.reachAcross, free[k]!);
    const h = reach(run.reachAlong, free[k + 1]!);
    if (w === 0 || h === 0 || !fitsAny(world, left, at, w, h, -1)) continue;
    free[kept] = w;
    free[kept + 1] = h;
    free[kept + 2] = free[k + 2]!;
    free[kept + 3] = free[k + 3]!;
    free[kept + 4] = free[k + 4]!;
    live += w * h;
    hash = (hash + mixed(Math.imul(w, 40503) + h * 4 + free[kept + 4]!)) | 0;
    kept += FREE_SIZE;
  }
  const count = (kept - base) / FREE_SIZE;
  const waste = run.area - area - live;
  if (count === 0 || count >= MOST_FREE - 3 || waste > run.budget) return -1;
  for (let size = 0; size < sizes; size++) {
    hash = (hash + keys[size * KEYS_PER_SIZE + (left[at + size]! & (KEYS_PER_SIZE - 1))]!) | 0;
  }
  into.freeCount[to] = count;
  into.waste[to] = waste;
  return hash & 0x7fffffff;

  function put(w: number, h: number, x: number, y: number, level: number): void {
    const k = base + end;
    free[k] = w;
    free[k + 1] = h;
    free[k + 2] = x;
    free[k + 3] = y;
    free[k + 4] = level;
    end += FREE_SIZE;
  }
}

function mixed(value: number): number {
  let m = Math.imul(value, 0x9e3779b1);
  m ^= m >>> 15;
  m = Math.imul(m, 0x85ebca6b);
  m ^= m >>> 13;
  return Math.imul(m, 0xc2b2ae35);
}
