import { ringBox } from "./box.ts";
import { unionOnGrid } from "./clipper.ts";
import { convexParts } from "./convexParts.ts";
import { type Ring, signedArea } from "./ring.ts";

/**
 * A shape on the whole-number grid, ready for no-fit polygons: no doubled or straight-through vertices.
 * Coordinates stay below half of `CLIPPER_RANGE`, so that every cross product is exact in a double.
 */
export interface GridShape {
  readonly outer: Ring;
  readonly holes: readonly Ring[];
  /** Convex parts of the shape, holes taken out. */
  readonly parts: readonly Ring[];
  /** Convex parts of the outside alone. */
  readonly solidParts: readonly Ring[];
}

/** The ring without doubled vertices and vertices on a straight line; fewer than three left gives an empty ring. */
function tidyRing(ring: Ring): Ring {
  const points: number[] = Array.from(ring);
  let changed = true;
  while (changed && points.length >= 6) {
    changed = false;
    for (let i = 0; i < points.length && points.length >= 6; i += 2) {
      const n = points.length;
      const px = points[(i + n - 2) % n]!;
      const py = points[(i + n - 1) % n]!;
      const nx = points[(i + 2) % n]!;
      const ny = points[(i + 3) % n]!;
      const cross = (points[i]! - px) * (ny - points[i + 1]!) - (points[i + 1]! - py) * (nx - points[i]!);
      if (cross !== 0) continue;
      points.splice(i, 2);
      changed = true;
      i -= 2;
    }
  }
  return points.length >= 6 ? Float64Array.from(points) : new Float64Array(0);
}

/** A grid shape from whole-number rings (outside counter-clockwise, holes clockwise). */
export function gridShape(outer: Ring, holes: readonly Ring[]): GridShape {
  const cleanOuter = tidyRing(outer);
  const cleanHoles = holes.map(tidyRing).filter((hole) => hole.length > 0);
  const solidParts = convexParts(cleanOuter, []);
  const parts = cleanHoles.length > 0 ? convexParts(cleanOuter, cleanHoles) : solidParts;
  return { outer: cleanOuter, holes: cleanHoles, parts, solidParts };
}

/** 0 for the half turn [0°, 180°), 1 for the rest. */
function halfTurn(x: number, y: number): number {
  return y > 0 || (y === 0 && x > 0) ? 0 : 1;
}

/** Whether direction (ax, ay) comes before (bx, by), counted counter-clockwise from the x axis. Exact. */
function isBefore(ax: number, ay: number, bx: number, by: number): boolean {
  const ha = halfTurn(ax, ay);
  const hb = halfTurn(bx, by);
  return ha !== hb ? ha < hb : ax * by - ay * bx > 0;
}

/** Edges of a convex ring by angle: directions, and the vertex each leads to. */
interface EdgeFan {
  readonly dx: Float64Array;
  readonly dy: Float64Array;
  readonly vx: Float64Array;
  readonly vy: Float64Array;
  readonly count: number;
}

function edgeFan(ring: Ring): EdgeFan {
  const count = ring.length / 2;
  let first = 0;
  const edge = (i: number): [number, number] => {
    const a = (i % count) * 2;
    const b = ((i + 1) % count) * 2;
    return [ring[b]! - ring[a]!, ring[b + 1]! - ring[a + 1]!];
  };
  for (let i = 1; i < count; i++) if (isBefore(...edge(i), ...edge(first))) first = i;
  const fan: EdgeFan = {
    dx: new Float64Array(count),
    dy: new Float64Array(count),
    vx: new Float64Array(count),
    vy: new Float64Array(count),
    count,
  };
  for (let k = 0; k < count; k++) {
    const i = (first + k) % count;
    const [dx, dy] = edge(i);
    fan.dx[k] = dx;
    fan.dy[k] = dy;
    fan.vx[k] = ring[i * 2]!;
    fan.vy[k] = ring[i * 2 + 1]!;
  }
  return fan;
}

/** Vertex of the fan furthest to the right of direction (dx, dy): the number of its edges that come before it, wrapped. */
function vertexFor(fan: EdgeFan, dx: number, dy: number): number {
  let k = 0;
  while (k < fan.count && isBefore(fan.dx[k]!, fan.dy[k]!, dx, dy)) k++;
  return k === fan.count ? 0 : k;
}

/**
 * Convolution cycle of a simple ring with a convex one: walk the ring; at each edge carry the convex ring's
 * extreme vertex, at a left turn insert its edges inside the turn, at a right turn take them back. The closed
 * path winds round each point of the Minkowski sum once for every piece of `ring ∩ (p − convex)`, all of which
 * are simply connected, hence a positive number of times; so its non-zero region is the sum
 * (Guibas, Ramshaw & Stolfi 1983, FOCS: convolution of tracings, from memory).
 */
function convolution(ring: Ring, convex: Ring): Ring {
  const fan = edgeFan(convex);
  const n = ring.length / 2;
  const out: number[] = [];
  const lastX = ring[0]! - ring[2 * n - 2]!;
  const lastY = ring[1]! - ring[2 * n - 1]!;
  let inX = lastX;
  let inY = lastY;
  let k = vertexFor(fan, inX, inY);
  for (let i = 0; i < n; i++) {
    const x = ring[2 * i]!;
    const y = ring[2 * i + 1]!;
    const next = ((i + 1) % n) * 2;
    const outX = ring[next]! - x;
    const outY = ring[next + 1]! - y;
    const goal = vertexFor(fan, outX, outY);
    const step = inX * outY - inY * outX > 0 ? 1 : fan.count - 1;
    out.push(x + fan.vx[k]!, y + fan.vy[k]!);
    while (k !== goal) {
      k = (k + step) % fan.count;
      out.push(x + fan.vx[k]!, y + fan.vy[k]!);
    }
    inX = outX;
    inY = outY;
  }
  return Float64Array.from(out);
}

function negated(ring: Ring): Ring {
  return ring.map((value) => (value === 0 ? 0 : -value));
}

/** Whether a box of `inner`'s size could lie inside one of the holes of `outer`. */
function mayLieInHole(inner: GridShape, outer: GridShape): boolean {
  const box = ringBox(inner.outer);
  return outer.holes.some((hole) => {
    const room = ringBox(hole);
    return room.maxX - room.minX >= box.maxX - box.minX && room.maxY - room.minY >= box.maxY - box.minY;
  });
}

/**
 * No-fit polygon of `b` about `a`: the shifts of b (with a at rest) at which the two overlap, as the interior of
 * the rings that come back (outsides counter-clockwise, holes clockwise); on the rings they touch.
 *
 * Shapes: both on the grid; result on the same grid, crossings rounded to it (at most 0.71 units off).
 * Cost:   one convolution cycle per convex part of the simpler shape, O((n + m)) each, and one union.
 * Limits: zero-width slits and single points at which b would fit exactly are closed by the union's rounding.
 */
export function noFitRings(a: GridShape, b: GridShape): Ring[] {
  const aHole = a.holes.length > 0 && mayLieInHole(b, a);
  const bHole = !aHole && b.holes.length > 0 && mayLieInHole(a, b);
  const aParts = aHole ? a.parts : a.solidParts;
  const bParts = bHole ? b.parts : b.solidParts;
  const splitA = aHole || (!bHole && aParts.length <= bParts.length);
  const cycles = splitA
    ? aParts.map((part) => convolution(negated(b.outer), part))
    : bParts.map((part) => convolution(a.outer, negated(part)));
  if (aParts.length === 1 && bParts.length === 1) return [tidyRing(cycles[0]!)];
  return unionInSteps(cycles)
    .map(tidyRing)
    .filter((ring) => ring.length > 0);
}

/** Vertices that one union takes at once: its cost grows with the square of the crossings. */
const MOST_AT_ONCE = 3_000;

/**
 * Union of many cycles, neighbours first: all at once, a panel of 200 teeth takes half a minute. Exact in the same
 * sense as one union; crossings are rounded once a step.
 */
function unionInSteps(cycles: readonly Ring[]): Ring[] {
  let groups = cycles.map((ring): Ring[] => [ring]);
  for (;;) {
    const joined: Ring[][] = [];
    let open: Ring[] = [];
    let members = 0;
    let vertices = 0;
    const close = (): void => {
      if (members > 0) joined.push(members === 1 ? open : unionOnGrid(open));
      [open, members, vertices] = [[], 0, 0];
    };
    for (const group of groups) {
      const more = group.reduce((sum, ring) => sum + ring.length / 2, 0);
      if (members > 1 && vertices + more > MOST_AT_ONCE) close();
      open = [...open, ...group];
      members++;
      vertices += more;
    }
    if (joined.length === 0) return unionOnGrid(open);
    close();
    groups = joined;
  }
}

/** One ring that runs round the frame, along a bridge to the hole's leftmost corner, round the hole and back. */
function keyhole(outer: Ring, hole: Ring): Ring {
  const box = ringBox(outer);
  const n = hole.length / 2;
  let left = 0;
  for (let i = 1; i < n; i++) if (hole[2 * i]! < hole[2 * left]!) left = i;
  const points = [box.minX, hole[2 * left + 1]!];
  for (let k = 0; k <= n; k++) {
    const i = (left + k) % n;
    points.push(hole[2 * i]!, hole[2 * i + 1]!);
  }
  points.push(
    box.minX,
    hole[2 * left + 1]!,
    box.minX,
    box.minY,
    box.maxX,
    box.minY,
    box.maxX,
    box.maxY,
    box.minX,
    box.maxY,
  );
  return Float64Array.from(points);
}

/**
 * Inner-fit polygon of `b` in a frame (a box with holes in which b may lie): the shifts at which b lies inside a
 * hole, as clockwise rings; empty when b fits in none. Same grid, rounding and limits as `noFitRings`.
 */
export function frameNoFitRings(frame: GridShape, b: GridShape): Ring[] {
  const cycles =
    frame.holes.length === 1
      ? b.solidParts.map((part) => convolution(keyhole(frame.outer, frame.holes[0]!), negated(part)))
      : frame.parts.map((part) => convolution(negated(b.outer), part));
  return unionInSteps(cycles)
    .map(tidyRing)
    .filter((ring) => ring.length > 0 && signedArea(ring) < 0);
}
