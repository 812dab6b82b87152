import type { Rng } from "../../../search/rng.ts";
import {
  type BeamChildren,
  type BeamGuide,
  type BeamStates,
  type BeamWorld,
  CLOTH,
  COLUMN,
  FREE_SIZE,
  MOST_FREE,
  SEGMENT,
} from "./beamState.ts";

/** Blocks up to this many pieces wide are all tried, then only the widest; likewise tall. */
const TIMES_ACROSS = 4;
const TIMES_ALONG = 3;

/** One beam under way. */
export interface BeamRun {
  readonly world: BeamWorld;
  readonly guide: BeamGuide;
  readonly rng: Rng;
  /** Area that may be left unused, and the area in all. */
  readonly budget: number;
  readonly area: number;
  /** Extent along of the cloth to fill. */
  readonly height: number;
  readonly reachAcross: Int32Array;
  readonly reachAlong: Int32Array;
  readonly children: BeamChildren;
  /** Children kept per level. */
  readonly most: number;
  /** [children in the heap, children scored]. */
  readonly tally: Float64Array;
}

/** Whether any piece left fits w × h, when `skip` (a size, or −1) is used up. */
export function fitsAny(
  world: BeamWorld,
  left: Int16Array,
  at: number,
  w: number,
  h: number,
  skip: number,
): boolean {
  const { wayAcross, wayAlong, waySize, ways } = world.tables;
  for (let way = 0; way < ways; way++) {
    if (wayAcross[way]! > w || wayAlong[way]! > h) continue;
    const size = waySize[way]!;
    if (size !== skip && left[at + size]! > 0) return true;
  }
  return false;
}

/** Largest usable extent within `extent`; an empty table holds every extent usable. */
export function reach(table: Int32Array, extent: number): number {
  return table.length === 0 ? extent : table[extent]!;
}

/** Area of a free w × h rectangle that no piece left can ever use. */
function wasteOf(run: BeamRun, left: Int16Array, at: number, w: number, h: number, skip: number): number {
  if (w <= 0 || h <= 0) return 0;
  const rw = reach(run.reachAcross, w);
  const rh = reach(run.reachAlong, h);
  if (rw === 0 || rh === 0 || !fitsAny(run.world, left, at, rw, rh, skip)) return w * h;
  return w * h - rw * rh;
}

/** Scores all children of state `i` and keeps the best in the heap. */
export function scoreChildren(run: BeamRun, states: BeamStates, i: number): void {
  const { tables, stages, strips } = run.world;
  const { wayAcross, wayAlong, waySize, sizeArea, ways } = tables;
  const { left, free } = states;
  const at = i * tables.sizes;
  const top = (i * MOST_FREE + states.freeCount[i]! - 1) * FREE_SIZE;
  const w = free[top]!;
  const h = free[top + 1]!;
  const level = free[top + 4]!;
  const leastAcross = strips.sideLoose && free[top + 2]! + w === tables.width ? 0 : strips.least;
  const leastAlong = level === CLOTH || (strips.endLoose && free[top + 3]! + h === run.height) ? 0 : strips.least;
  const placedArea = states.placedArea[i]!;
  const waste = states.waste[i]!;
  const placed = states.placed[i]!;
  if (level !== CLOTH) offer(run, i, -1, 0, 0, 0, waste + w * h, placedArea, placed, run.guide.loose);
  for (let way = 0; way < ways; way++) {
    const size = waySize[way]!;
    const rest = left[at + size]!;
    const pw = wayAcross[way]!;
    const ph = wayAlong[way]!;
    if (rest === 0 || pw > w || ph > h) continue;
    const widest = level === COLUMN ? 1 : Math.min(rest, Math.floor(w / pw));
    for (let nx = 1; nx <= widest; nx = nx < TIMES_ACROSS || nx === widest ? nx + 1 : widest) {
      const tallest = stages === 2 ? 1 : Math.min(Math.floor(rest / nx), Math.floor(h / ph));
      for (let ny = 1; ny <= tallest; ny = ny < TIMES_ALONG || ny === tallest ? ny + 1 : tallest) {
        const count = nx * ny;
        const skip = count === rest ? size : -1;
        const bw = nx * pw;
        const bh = ny * ph;
        const dw = w - bw;
        const dh = h - bh;
        if ((dw > 0 && dw < leastAcross) || (dh > 0 && dh < leastAlong)) continue;
        const area = placedArea + count * sizeArea[size]!;
        const fit = dw === 0 || dh === 0 ? 1 : run.guide.loose;
        if (level === CLOTH) {
          scoreSegments(run, left, at, i, way, nx, ny, w, h, waste, area, placed + count, skip);
          continue;
        }
        if (level !== SEGMENT) {
          // Across first: beside the block as high as it, beyond it the full width. A column's side is trimmed off.
          const beside = level === COLUMN ? dw * bh : wasteOf(run, left, at, dw, bh, skip);
          const lost = beside + wasteOf(run, left, at, w, dh, skip);
          offer(run, i, way, nx, ny, 0, waste + lost, area, placed + count, fit);
          if (level === COLUMN || dw === 0 || dh === 0) continue;
        }
        if (stages === 2) {
          offer(
            run,
            i,
            way,
            nx,
            ny,
            1,
            waste + wasteOf(run, left, at, dw, h, skip) + bw * dh,
            area,
            placed + count,
            fit,
          );
          continue;
        }
        // Three stages: over several columns side by side there is no cut left to part them.
        if (stages === 3 && nx > 1 && dh > 0) continue;
        const lost = wasteOf(run, left, at, dw, h, skip) + wasteOf(run, left, at, bw, dh, skip);
        offer(run, i, way, nx, ny, 1, waste + lost, area, placed + count, fit);
      }
    }
  }
}

/**
 * A block on the cloth opens a segment cut across the whole width: as high as the block, higher by one or two
 * pieces that may go beyond it, or, when long rips are allowed, the whole rest.
 */
function scoreSegments(
  run: BeamRun,
  left: Int16Array,
  at: number,
  i: number,
  way: number,
  nx: number,
  ny: number,
  w: number,
  h: number,
  waste: number,
  area: number,
  placed: number,
  skip: number,
): void {
  const { tables, stages } = run.world;
  const { wayAcross, wayAlong, waySize, ways } = tables;
  const bw = nx * wayAcross[way]!;
  const bh = ny * wayAlong[way]!;
  const dw = w - bw;
  const lost = wasteOf(run, left, at, dw, bh, skip) + wasteOf(run, left, at, w, h - bh, skip);
  offer(run, i, way, nx, ny, bh, waste + lost, area, placed, 1);
  // In two stages the block is the highest of its segment, so that nothing goes beyond it.
  if (dw === 0 || stages === 2 || (stages === 3 && nx > 1)) return;
  for (let next = 0; next < ways; next++) {
    const size = waySize[next]!;
    if (size === skip || left[at + size]! === 0) continue;
    const extra = wayAlong[next]!;
    if (bh + extra > h || (wayAcross[next]! > bw && wayAcross[next]! > dw)) continue;
    offerSegment(bh + extra);
  }
  if (run.guide.longRips && h > bh) offerSegment(h);

  function offerSegment(height: number): void {
    const lostHere =
      wasteOf(run, left, at, dw, height, skip) +
      wasteOf(run, left, at, bw, height - bh, skip) +
      wasteOf(run, left, at, w, h - height, skip);
    offer(run, i, way, nx, ny, height, waste + lostHere, area, placed, run.guide.loose);
  }
}

/** Puts a child in the heap when it is within budget and better than the worst kept. */
function offer(
  run: BeamRun,
  parent: number,
  way: number,
  nx: number,
  ny: number,
  split: number,
  waste: number,
  area: number,
  placed: number,
  fit: number,
): void {
  run.tally[1]!++;
  if (waste > run.budget) return;
  const { guide, children, most } = run;
  // Little waste, and large pieces first: small ones fill what is left.
  let score = area === 0 ? 1 : (waste / (area + waste) + guide.calm) * ((placed + 1) / area) * fit;
  if (guide.chance > 0) score *= 1 + guide.chance * run.rng.unit();
  const heap = children.score;
  const slots = children.slot;
  let count = run.tally[0]!;
  let slot = count;
  let p: number;
  if (count >= most) {
    if (score >= heap[0]!) return;
    slot = slots[0]!;
    p = 0;
    for (;;) {
      let c = 2 * p + 1;
      if (c >= count) break;
      if (c + 1 < count && heap[c + 1]! > heap[c]!) c++;
      if (heap[c]! <= score) break;
      heap[p] = heap[c]!;
      slots[p] = slots[c]!;
      p = c;
    }
  } else {
    p = count++;
    run.tally[0] = count;
    while (p > 0) {
      const q = (p - 1) >> 1;
      if (heap[q]! >= score) break;
      heap[p] = heap[q]!;
      slots[p] = slots[q]!;
      p = q;
    }
  }
  heap[p] = score;
  slots[p] = slot;
  children.parent[slot] = parent;
  children.way[slot] = way;
  children.timesAcross[slot] = nx;
  children.timesAlong[slot] = ny;
  children.split[slot] = split;
}
