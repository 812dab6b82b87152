import type { GridArena } from "./gridArena.ts";
import { fillCell } from "./gridCells.kernel.ts";
import { LEAST, OUTSIDE } from "./gridEdges.kernel.ts";

/**
 * Hot loops of the outline search: how deep a position lies inside no-fit polygons, from feature grids.
 *
 * A neighbour is a row of `ROW` numbers: box of its no-fit polygon in the region (0 minX, 1 maxX, 2 minY, 3 maxY),
 * its position (4 x, 5 y), the turn into the grid's frame (6 … 9, row-major 2 × 2), 10 weight, 11 tolerance,
 * the grid's corner (12 x, 13 y) and cells per unit (14 x, 15 y); and three whole numbers: first cell, cells a side, the grid.
 *
 * Beside the cells of a grid stands a byte for each: what any point of it is deep at least (`LEAST`), or `OUTSIDE`.
 *
 * Cell codes: 0 not filled yet; −1 outside and far; ≤ −2 outside but near, list at −code − 2; odd: one edge, number code >> 1, whose
 * line gives the exact signed depth; even: list at code >> 1, lists stand in the array of the cells. A list is its
 * length × 2, plus 1 when the whole cell lies inside, then edge numbers (`gridEdges.kernel.ts`).
 */
export const ROW = 16;
export const ROW_INTS = 3;

/**
 * Adds to `probe[3]` the weighted sum of depths at (`probe[0]`, `probe[1]`) over neighbours `pick[from … to − 1]`;
 * stops early once it reaches `probe[2]`. (Doubles go by array: as arguments they would be put on the heap each call.)
 * Depths up to a neighbour's tolerance count as touching. Distances in grid units. What a cell is deep at least
 * decides about half of the samples that lose, without a look at lists and edges; the sum is a lower bound then.
 */
export function weightedDepth(
  probe: Float64Array,
  rows: Float64Array,
  ints: Int32Array,
  pick: Int32Array,
  from: number,
  to: number,
  arena: GridArena,
): void {
  let { least, cells, edges } = arena;
  const x = probe[0]!;
  const y = probe[1]!;
  const limit = probe[2]!;
  let sum = probe[3]!;
  for (let p = from; p < to; p++) {
    const k = pick[p]!;
    const o = k * 16;
    if (x <= rows[o]! || x >= rows[o + 1]! || y <= rows[o + 2]! || y >= rows[o + 3]!) continue;
    const dx = x - rows[o + 4]!;
    const dy = y - rows[o + 5]!;
    const lx = rows[o + 6]! * dx + rows[o + 7]! * dy;
    const ly = rows[o + 8]! * dx + rows[o + 9]! * dy;
    const fx = (lx - rows[o + 12]!) * rows[o + 14]!;
    const fy = (ly - rows[o + 13]!) * rows[o + 15]!;
    const n = ints[k * 3 + 1]!;
    if (!(fx >= 0 && fy >= 0 && fx < n && fy < n)) continue;
    const at = ints[k * 3]! + (fy | 0) * n + (fx | 0);
    const known = least[at + 3 * ints[k * 3]! + 4 * n * n]!;
    if (known === OUTSIDE) continue;
    const sure = LEAST[known]!;
    if (sure > rows[o + 11]!) {
      const lower = sum + sure * rows[o + 10]!;
      if (lower >= limit) {
        sum = lower;
        break;
      }
    }
    let code = cells[at]!;
    if (code === 0) {
      fillCell(arena, ints[k * 3 + 2]!, at);
      ({ least, cells, edges } = arena);
      code = cells[at]!;
      if (code < 0) continue;
    }
    let depth = 0;
    if ((code & 1) === 1) {
      const e = (code >> 1) * 6;
      depth = edges[e + 2]! * (ly - edges[e + 1]!) - edges[e + 3]! * (lx - edges[e]!);
    } else {
      const l = code >> 1;
      const head = cells[l]!;
      const end = l + (head >> 1);
      let best = Infinity;
      let inside = true;
      for (let i = l + 1; i <= end; i++) {
        const e = cells[i]! * 6;
        const qx = lx - edges[e]!;
        const qy = ly - edges[e + 1]!;
        const ux = edges[e + 2]!;
        const uy = edges[e + 3]!;
        const t = qx * ux + qy * uy;
        const len = edges[e + 4]!;
        if (t < 0) {
          const d = qx * qx + qy * qy;
          if (d < best) {
            best = d;
            inside = (edges[e + 5]! & 1) === 0;
          }
        } else if (t > len) {
          const rx = qx - len * ux;
          const ry = qy - len * uy;
          const d = rx * rx + ry * ry;
          if (d < best) {
            best = d;
            inside = (edges[e + 5]! & 2) === 0;
          }
        } else {
          const side = ux * qy - uy * qx;
          const d = side * side;
          if (d < best) {
            best = d;
            inside = side > 0;
          }
        }
      }
      if (inside || (head & 1) === 1) depth = Math.sqrt(best);
    }
    if (depth > rows[o + 11]!) {
      sum += depth * rows[o + 10]!;
      if (sum >= limit) break;
    }
  }
  probe[3] = sum;
}

const near = new Float64Array(3);

/** How far along edge `e` the place lies, from the nearest point of the edge to it into `out`, and on which side it is. */
function foot(edges: Float64Array, e: number, lx: number, ly: number, out: Float64Array): number {
  const [qx, qy] = [lx - edges[e]!, ly - edges[e + 1]!];
  const [ux, uy] = [edges[e + 2]!, edges[e + 3]!];
  const t = qx * ux + qy * uy;
  const clamped = Math.min(Math.max(t, 0), edges[e + 4]!);
  out[0] = qx - clamped * ux;
  out[1] = qy - clamped * uy;
  out[2] = ux * qy - uy * qx;
  return t;
}

/**
 * Signed depth at (`probe[0]`, `probe[1]`) in neighbour `k` (negative outside) into `out[0]`, and the unit direction
 * in the region in which to leave by the nearest feature into `out[1]`, `out[2]`. False where the neighbour is far away.
 */
export function nearestExit(
  probe: Float64Array,
  rows: Float64Array,
  ints: Int32Array,
  k: number,
  arena: GridArena,
  out: Float64Array,
): boolean {
  const x = probe[0]!;
  const y = probe[1]!;
  const o = k * 16;
  const dx = x - rows[o + 4]!;
  const dy = y - rows[o + 5]!;
  const lx = rows[o + 6]! * dx + rows[o + 7]! * dy;
  const ly = rows[o + 8]! * dx + rows[o + 9]! * dy;
  const fx = (lx - rows[o + 12]!) * rows[o + 14]!;
  const fy = (ly - rows[o + 13]!) * rows[o + 15]!;
  const n = ints[k * 3 + 1]!;
  if (!(fx >= 0 && fy >= 0 && fx < n && fy < n)) return false;
  const at = ints[k * 3]! + (fy | 0) * n + (fx | 0);
  if (arena.cells[at] === 0) fillCell(arena, ints[k * 3 + 2]!, at);
  const { cells, edges } = arena;
  const code = cells[at]!;
  if (code === -1) return false;
  let depth = 0;
  let nx = 0;
  let ny = 0;
  if (code > 0 && (code & 1) === 1) {
    const e = (code >> 1) * 6;
    const ux = edges[e + 2]!;
    const uy = edges[e + 3]!;
    depth = ux * (ly - edges[e + 1]!) - uy * (lx - edges[e]!);
    nx = uy;
    ny = -ux;
  } else {
    const l = code < 0 ? -code - 2 : code >> 1;
    const head = cells[l]!;
    const end = l + (head >> 1);
    let best = Infinity;
    let inside = true;
    for (let i = l + 1; i <= end; i++) {
      const e = cells[i]! * 6;
      const t = foot(edges, e, lx, ly, near);
      const d = near[0]! * near[0]! + near[1]! * near[1]!;
      if (d >= best) continue;
      best = d;
      const len = edges[e + 4]!;
      if (t < 0) inside = (edges[e + 5]! & 1) === 0;
      else if (t > len) inside = (edges[e + 5]! & 2) === 0;
      else inside = near[2]! > 0;
      const length = Math.sqrt(d);
      if ((t >= 0 && t <= len) || length < 1e-6) {
        nx = edges[e + 3]!;
        ny = -edges[e + 2]!;
      } else {
        // Nearest is a corner: leave straight through it.
        const out = inside ? -1 : 1;
        nx = (out * near[0]!) / length;
        ny = (out * near[1]!) / length;
      }
    }
    if ((head & 1) === 1) inside = true;
    depth = inside ? Math.sqrt(best) : -Math.sqrt(best);
  }
  out[0] = depth;
  out[1] = rows[o + 6]! * nx + rows[o + 8]! * ny;
  out[2] = rows[o + 7]! * nx + rows[o + 9]! * ny;
  return true;
}
