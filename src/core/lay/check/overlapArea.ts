import type { LaidOutline } from "./laidOutline.ts";

/**
 * Area common to two outlines.
 *
 * The plane is cut into upright slabs at every vertex and at every crossing of an edge of one with an edge of the
 * other. Inside a slab no edges cross, so what both outlines cover is a stack of trapezoids whose area is width
 * times height at the middle. Touching or coinciding edges need no special case: they make trapezoids without
 * height. A crossing missed by rounding costs an error of the size of the rounding.
 *
 * Cost: O((n + k) log(n + k)) for edges that are monotone on the whole (k crossings), O(n²) at worst.
 */
export function overlapArea(a: LaidOutline, b: LaidOutline): number {
  const from = Math.max(a.minX, b.minX);
  const to = Math.min(a.maxX, b.maxX);
  const top = Math.min(a.maxY, b.maxY);
  if (from >= to || Math.max(a.minY, b.minY) >= top) return 0;
  const edges = [...edgesWithin(a, 0, from, to, top), ...edgesWithin(b, 1, from, to, top)];
  edges.sort((e, f) => e.x1 - f.x1);
  return slabSum(edges, slabBorders(edges, from, to));
}

interface Edge {
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  /** Rise per mm along x. */
  readonly slope: number;
  readonly y2: number;
  readonly owner: 0 | 1;
  /** Height in the middle of the slab at hand. */
  y: number;
}

/** Edges that count between two uprights; upright edges bound no area, and edges above `top` cover nothing below. */
function edgesWithin(outline: LaidOutline, owner: 0 | 1, from: number, to: number, top: number): Edge[] {
  const { edges } = outline;
  const out: Edge[] = [];
  for (let i = 0; i < edges.length; i += 4) {
    const x1 = edges[i]!;
    const x2 = edges[i + 2]!;
    if (x1 >= to || x2 <= from || x1 === x2) continue;
    const y1 = edges[i + 1]!;
    const y2 = edges[i + 3]!;
    if (y1 > top && y2 > top) continue;
    out.push({ x1, y1, x2, y2, slope: (y2 - y1) / (x2 - x1), owner, y: 0 });
  }
  return out;
}

function heightAt(edge: Edge, x: number): number {
  // From the nearer end, so that the end itself is met exactly.
  return x - edge.x1 < edge.x2 - x ? edge.y1 + (x - edge.x1) * edge.slope : edge.y2 - (edge.x2 - x) * edge.slope;
}

/** Sorted x of vertices and crossings in `from … to`; `edges` sorted by x1. */
function slabBorders(edges: readonly Edge[], from: number, to: number): Float64Array {
  const borders = [from, to];
  const active: Edge[][] = [[], []];
  const note = (x: number): void => {
    if (x > from && x < to) borders.push(x);
  };
  for (const edge of edges) {
    note(edge.x1);
    note(edge.x2);
    const others = active[1 - edge.owner]!;
    let kept = 0;
    for (const other of others) {
      if (other.x2 <= edge.x1) continue;
      others[kept++] = other;
      const left = edge.x1;
      const right = Math.min(edge.x2, other.x2);
      const before = heightAt(edge, left) - heightAt(other, left);
      const after = heightAt(edge, right) - heightAt(other, right);
      if (before * after < 0) note(left + (right - left) * (before / (before - after)));
    }
    others.length = kept;
    active[edge.owner]!.push(edge);
  }
  return Float64Array.from(borders).sort();
}

/** Sum over slabs of what both outlines cover; `edges` sorted by x1. */
function slabSum(edges: readonly Edge[], borders: Float64Array): number {
  let area = 0;
  let next = 0;
  let active: Edge[] = [];
  for (let s = 1; s < borders.length; s++) {
    const width = borders[s]! - borders[s - 1]!;
    const middle = borders[s - 1]! + width / 2;
    while (next < edges.length && edges[next]!.x1 < middle) active.push(edges[next++]!);
    active = active.filter((edge) => edge.x2 > middle);
    if (width <= 0) continue;
    for (const edge of active) edge.y = heightAt(edge, middle);
    active.sort((e, f) => e.y - f.y);
    area += width * commonHeight(active);
  }
  return area;
}

/** Length of an upright that lies in both outlines, given the edges it meets from below. */
function commonHeight(active: readonly Edge[]): number {
  const inside = [false, false];
  let height = 0;
  for (let i = 0; i < active.length; i++) {
    const edge = active[i]!;
    if (inside[0] && inside[1]) height += edge.y - active[i - 1]!.y;
    inside[edge.owner] = !inside[edge.owner];
  }
  return height;
}
