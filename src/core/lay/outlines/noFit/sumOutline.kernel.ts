import type { SumRing } from "../compile/sumRings.ts";
import { EDGE } from "./gridEdges.kernel.ts";

/** What a sum needs beside its rings, kept from one to the next; arrays grow when they must. */
export interface SumWork {
  /** Directed pieces of the convolution: start x, y, end x, y; the positive ones first. */
  parts: Float64Array;
  /** Which of a piece's ends turn left: 1 the start, 2 the end. */
  corners: Uint8Array;
  /** How many, and how many of them are positive. */
  partCount: number;
  positive: number;
  /** Pieces by their least x. */
  order: Int32Array;
  keys: Float64Array;
  /** Crossings of positive pieces: where on the piece (0 … 1), which way the winding changes, the next of the piece. */
  at: Float64Array;
  step: Int8Array;
  next: Int32Array;
  crossings: number;
  /** First crossing of each positive piece, or −1; along the piece once sorted. */
  first: Int32Array;
  /** The boundary: edges as the depth kernel wants them. */
  edges: Float64Array;
  edgeCount: number;
}

export function sumWork(): SumWork {
  return {
    parts: new Float64Array(4 * 512),
    corners: new Uint8Array(512),
    partCount: 0,
    positive: 0,
    order: new Int32Array(512),
    keys: new Float64Array(512),
    at: new Float64Array(1024),
    step: new Int8Array(1024),
    next: new Int32Array(1024),
    crossings: 0,
    first: new Int32Array(512),
    edges: new Float64Array(256 * EDGE),
    edgeCount: 0,
  };
}

function addPart(work: SumWork, x: number, y: number, dx: number, dy: number, corners: number): void {
  if (work.partCount * 4 === work.parts.length) {
    const bigger = new Float64Array(2 * work.parts.length);
    bigger.set(work.parts);
    work.parts = bigger;
    const more = new Uint8Array(2 * work.corners.length);
    more.set(work.corners);
    work.corners = more;
  }
  work.corners[work.partCount] = corners;
  const o = 4 * work.partCount++;
  work.parts[o] = x;
  work.parts[o + 1] = y;
  work.parts[o + 2] = x + dx;
  work.parts[o + 3] = y + dy;
}

/**
 * Edges of `b` carried along corners of `a`: each where its direction lies within the corner's turn, forward at a left
 * turn (`sign` 1), backward at a right turn (−1).
 */
function addParts(work: SumWork, a: SumRing, b: SumRing, sign: 1 | -1): void {
  const wanted = sign === 1 ? 1 : 0;
  for (let i = 0; i < a.count; i++) {
    if (a.isConvex[i] !== wanted) continue;
    const before = i === 0 ? a.count - 1 : i - 1;
    const after = i === a.count - 1 ? 0 : i + 1;
    const ax = a.x[i]!;
    const ay = a.y[i]!;
    const ux = sign * (ax - a.x[before]!);
    const uy = sign * (ay - a.y[before]!);
    const vx = sign * (a.x[after]! - ax);
    const vy = sign * (a.y[after]! - ay);
    for (let j = 0; j < b.count; j++) {
      const k = j === b.count - 1 ? 0 : j + 1;
      const dx = b.x[k]! - b.x[j]!;
      const dy = b.y[k]! - b.y[j]!;
      // With `sign` −1 both directions are turned about, which turns a right turn's two tests into those of a left turn.
      if (ux * dy - uy * dx <= 0 || dx * vy - dy * vx <= 0) continue;
      const corners = b.isConvex[j]! + 2 * b.isConvex[k]!;
      if (sign === 1) addPart(work, ax + b.x[j]!, ay + b.y[j]!, dx, dy, corners);
      else addPart(work, ax + b.x[k]!, ay + b.y[k]!, -dx, -dy, 0);
    }
  }
}

/** Pieces by their least x. */
function sortParts(work: SumWork): void {
  const { parts, partCount } = work;
  if (work.order.length < partCount) {
    work.order = new Int32Array(2 * partCount);
    work.keys = new Float64Array(2 * partCount);
    work.first = new Int32Array(2 * partCount);
  }
  const { order, keys } = work;
  for (let p = 0; p < partCount; p++) keys[p] = Math.min(parts[4 * p]!, parts[4 * p + 2]!);
  // Shell's sort: a comparator called from the library costs more than all else here.
  let gap = 1;
  while (gap < partCount / 9) gap = 3 * gap + 1;
  for (let p = 0; p < partCount; p++) order[p] = p;
  for (; gap > 0; gap = Math.floor(gap / 3))
    for (let p = gap; p < partCount; p++) {
      const held = order[p]!;
      const key = keys[held]!;
      let q = p;
      for (; q >= gap && keys[order[q - gap]!]! > key; q -= gap) order[q] = order[q - gap]!;
      order[q] = held;
    }
}

function addCrossing(work: SumWork, part: number, at: number, step: 1 | -1): void {
  if (work.crossings === work.at.length) {
    const size = 2 * work.crossings;
    const [atNow, stepNow, nextNow] = [work.at, work.step, work.next];
    work.at = new Float64Array(size);
    work.at.set(atNow);
    work.step = new Int8Array(size);
    work.step.set(stepNow);
    work.next = new Int32Array(size);
    work.next.set(nextNow);
  }
  const { at: all, next, first } = work;
  const c = work.crossings++;
  all[c] = at;
  work.step[c] = step;
  // Sorted in by where it lies on the piece.
  let before = -1;
  let after = first[part]!;
  while (after >= 0 && all[after]! < at) {
    before = after;
    after = next[after]!;
  }
  next[c] = after;
  if (before < 0) first[part] = c;
  else next[before] = c;
}

/** Where positive pieces are crossed by others. */
function findCrossings(work: SumWork): void {
  const { parts, partCount, positive, order, first } = work;
  work.crossings = 0;
  first.fill(-1, 0, positive);
  for (let s = 0; s < partCount; s++) {
    const p = order[s]!;
    const px = parts[4 * p]!;
    const py = parts[4 * p + 1]!;
    const qx = parts[4 * p + 2]!;
    const qy = parts[4 * p + 3]!;
    const right = Math.max(px, qx);
    const low = Math.min(py, qy);
    const high = Math.max(py, qy);
    const dx = qx - px;
    const dy = qy - py;
    for (let t = s + 1; t < partCount; t++) {
      const r = order[t]!;
      const rx = parts[4 * r]!;
      const sx = parts[4 * r + 2]!;
      if (rx > right && sx > right) break;
      const ry = parts[4 * r + 1]!;
      const sy = parts[4 * r + 3]!;
      if ((ry > high && sy > high) || (ry < low && sy < low)) continue;
      if (p >= positive && r >= positive) continue;
      const a = dx * (ry - py) - dy * (rx - px);
      const b = dx * (sy - py) - dy * (sx - px);
      // Pieces that only share an end (one follows the other) do not cross; whole numbers make this exact.
      if (a * b >= 0) continue;
      const ex = sx - rx;
      const ey = sy - ry;
      const c = ex * (py - ry) - ey * (px - rx);
      const d = ex * (qy - ry) - ey * (qx - rx);
      if (c * d >= 0) continue;
      // The other piece runs from right (a < 0) to left of this one: this one runs from its left to its right.
      if (p < positive) addCrossing(work, p, c / (c - d), d > c ? 1 : -1);
      if (r < positive) addCrossing(work, r, a / (a - b), b > a ? 1 : -1);
    }
  }
}

/** How often the convolution winds round the point just right of piece `own` at (x, y) on it. */
function windingBeside(work: SumWork, own: number, x: number, y: number): number {
  const { parts, partCount } = work;
  let winding = 0;
  for (let p = 0; p < partCount; p++) {
    const ay = parts[4 * p + 1]!;
    const by = parts[4 * p + 3]!;
    if (ay > y === by > y) continue;
    if (p === own) {
      // Seen from its right side, a piece that runs down lies on the ray to the right.
      if (by < ay) winding--;
      continue;
    }
    const ax = parts[4 * p]!;
    const bx = parts[4 * p + 2]!;
    if (ax < x && bx < x) continue;
    const side = (bx - ax) * (y - ay) - (by - ay) * (x - ax);
    // Left of an upward piece or right of a downward one: the ray to the right meets it.
    if (by > ay ? side > 0 : side < 0) winding += by > ay ? 1 : -1;
  }
  const ay = parts[4 * own + 1]!;
  const by = parts[4 * own + 3]!;
  // On a level piece the rule above answers for the point above it.
  if (ay === by && parts[4 * own + 2]! > parts[4 * own]!) winding--;
  return winding;
}

function addEdge(work: SumWork, part: number, from: number, to: number): void {
  if (work.edgeCount * EDGE === work.edges.length) {
    const bigger = new Float64Array(2 * work.edges.length);
    bigger.set(work.edges);
    work.edges = bigger;
  }
  const { parts, edges } = work;
  const x = parts[4 * part]!;
  const y = parts[4 * part + 1]!;
  const dx = parts[4 * part + 2]! - x;
  const dy = parts[4 * part + 3]! - y;
  const length = Math.sqrt(dx * dx + dy * dy);
  const o = EDGE * work.edgeCount++;
  edges[o] = x + from * dx;
  edges[o + 1] = y + from * dy;
  edges[o + 2] = dx / length;
  edges[o + 3] = dy / length;
  edges[o + 4] = (to - from) * length;
  // Outlines of sums turn as the convolution does, and right where two of its pieces cross.
  edges[o + 5] = work.corners[part]! & ((from === 0 ? 1 : 0) + (to === 1 ? 2 : 0));
}

/**
 * The outline of the Minkowski sum of two simple rings (counter-clockwise, in general position: no edge of the one
 * parallel to one of the other, no three pieces through a point) as loose edges in `work.edges`, the sum to their left.
 *
 * The convolution of the rings winds round each point of the sum a positive number of times. Only pieces at left turns
 * can bound the sum; they are cut where other pieces cross, and what has winding 0 to its right is kept.
 * Source: Guibas, Ramshaw & Stolfi 1983, FOCS (from memory).
 * Cost:   O(n·m + p²), p pieces: some 50 µs for rings of 16 corners.
 */
export function sumOutline(work: SumWork, a: SumRing, b: SumRing): void {
  work.partCount = 0;
  addParts(work, a, b, 1);
  addParts(work, b, a, 1);
  work.positive = work.partCount;
  addParts(work, a, b, -1);
  addParts(work, b, a, -1);
  sortParts(work);
  findCrossings(work);
  work.edgeCount = 0;
  const { parts, first, at, step, next } = work;
  for (let p = 0; p < work.positive; p++) {
    const x = parts[4 * p]!;
    const y = parts[4 * p + 1]!;
    let c = first[p]!;
    const half = (c < 0 ? 1 : at[c]!) / 2;
    let winding = windingBeside(work, p, x + half * (parts[4 * p + 2]! - x), y + half * (parts[4 * p + 3]! - y));
    let from = 0;
    for (; c >= 0; c = next[c]!) {
      const to = at[c]!;
      if (winding === 0 && to > from) addEdge(work, p, from, to);
      winding += step[c]!;
      from = to;
    }
    if (winding === 0) addEdge(work, p, from, 1);
  }
}

/** Whether the edges found close: what a coincidence of three pieces in a point would spoil. */
export function isWholeSum(work: SumWork): boolean {
  const { edges, edgeCount } = work;
  let x = 0;
  let y = 0;
  for (let e = 0; e < edgeCount * EDGE; e += EDGE) {
    x += edges[e + 2]! * edges[e + 4]!;
    y += edges[e + 3]! * edges[e + 4]!;
  }
  return edgeCount >= 3 && Math.abs(x) + Math.abs(y) < 1;
}
