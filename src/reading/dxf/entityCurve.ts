import { arcPart, type Curve, type CurvePart } from "../../core/patterns/curve.ts";
import type { DxfEntity } from "./dxfDrawing.ts";
import { type DxfRecord, numberOf } from "./groups.ts";
import { splineCurve } from "./spline.ts";

/** Whether an entity's points are in the world's coordinates or in those of its own plane (its extrusion). */
export interface EntityCurve {
  readonly curve: Curve;
  readonly isOwnPlane: boolean;
}

/**
 * The line of an entity in the file's units; null for one that draws none of its own.
 * Source: DXF reference, ENTITIES (LINE, ARC, CIRCLE, ELLIPSE, LWPOLYLINE, POLYLINE, SPLINE) and "Object coordinate
 * systems"; bulge = tan of a quarter of the angle, positive counter-clockwise (group code 42).
 */
export function entityCurve(entity: DxfEntity): EntityCurve | null {
  switch (entity.kind) {
    case "LINE":
      return world({
        x: numberOf(entity, 10),
        y: numberOf(entity, 20),
        parts: [{ kind: "straight", x: numberOf(entity, 11), y: numberOf(entity, 21) }],
        closed: false,
      });
    case "ARC":
      return ownPlane(circular(entity, numberOf(entity, 50), numberOf(entity, 51)));
    case "CIRCLE":
      return ownPlane({ ...circular(entity, 0, 360), closed: true });
    case "ELLIPSE":
      return world(ellipse(entity));
    case "LWPOLYLINE":
      return ownPlane(bulged(lightVertices(entity), (numberOf(entity, 70) & 1) === 1));
    case "POLYLINE":
      return polyline(entity);
    case "SPLINE": {
      const curve = splineCurve(entity);
      return curve && world(curve);
    }
    default:
      return null;
  }
}

const world = (curve: Curve): EntityCurve => ({ curve, isOwnPlane: false });
const ownPlane = (curve: Curve): EntityCurve => ({ curve, isOwnPlane: true });

/** Counter-clockwise from one angle to the other, degrees. */
function circular(entity: DxfRecord, fromDeg: number, toDeg: number): Curve {
  const centre = [numberOf(entity, 10), numberOf(entity, 20)] as const;
  const radius = numberOf(entity, 40);
  let sweep = (toDeg - fromDeg) % 360;
  if (sweep <= 0) sweep += 360;
  return arcCurve(centre, [radius, 0], [0, radius], (fromDeg * Math.PI) / 180, (sweep * Math.PI) / 180);
}

function ellipse(entity: DxfRecord): Curve {
  const u = [numberOf(entity, 11), numberOf(entity, 21)] as const;
  const ratio = numberOf(entity, 40, 1);
  // Seen from below, the other radius lies on the other side.
  const hand = numberOf(entity, 230, 1) < 0 ? -1 : 1;
  const v = [-hand * ratio * u[1], hand * ratio * u[0]] as const;
  const from = numberOf(entity, 41, 0);
  const full = 2 * Math.PI;
  let sweep = (numberOf(entity, 42, full) - from) % full;
  if (sweep <= 1e-9) sweep += full;
  return arcCurve([numberOf(entity, 10), numberOf(entity, 20)], u, v, from, sweep);
}

type Pair = readonly [number, number];

/** An arc in parts of at most half a turn; a whole turn closes. */
function arcCurve(centre: Pair, u: Pair, v: Pair, from: number, sweep: number): Curve {
  const pieces = Math.abs(sweep) > Math.PI + 1e-9 ? 2 : 1;
  const parts = Array.from({ length: pieces }, (_, i) =>
    arcPart(centre, u, v, from + (i * sweep) / pieces, sweep / pieces),
  );
  const x = centre[0] + u[0] * Math.cos(from) + v[0] * Math.sin(from);
  const y = centre[1] + u[1] * Math.cos(from) + v[1] * Math.sin(from);
  const closed = Math.abs(sweep) >= 2 * Math.PI - 1e-9;
  if (closed) parts[pieces - 1] = { ...parts[pieces - 1]!, x, y };
  return { x, y, parts, closed };
}

/** A corner and the bulge of the edge after it. */
interface Vertex {
  x: number;
  y: number;
  bulge: number;
}

function lightVertices(entity: DxfRecord): Vertex[] {
  const vertices: Vertex[] = [];
  for (const { code, value } of entity.groups) {
    const last = vertices.at(-1);
    if (code === 10) vertices.push({ x: Number(value), y: 0, bulge: 0 });
    else if (code === 20 && last) last.y = Number(value);
    else if (code === 42 && last) last.bulge = Number(value);
  }
  return vertices;
}

const SPLINE_FRAME = 16;
const MESHES = 16 | 64;

function polyline(entity: DxfEntity): EntityCurve | null {
  const flags = numberOf(entity, 70);
  if ((flags & MESHES) !== 0) return null;
  const vertices = entity.parts
    .filter((part) => part.kind === "VERTEX" && (numberOf(part, 70) & SPLINE_FRAME) === 0)
    .map((part) => ({ x: numberOf(part, 10), y: numberOf(part, 20), bulge: numberOf(part, 42) }));
  const curve = bulged(vertices, (flags & 1) === 1);
  const isInSpace = (flags & 8) !== 0;
  return { curve, isOwnPlane: !isInSpace };
}

function bulged(vertices: readonly Vertex[], closed: boolean): Curve {
  const parts: CurvePart[] = [];
  for (const [i, from] of vertices.entries()) {
    const to = vertices[i + 1] ?? (closed ? vertices[0]! : null);
    if (to === null) break;
    parts.push(bulgePart(from, to));
  }
  return { x: vertices[0]?.x ?? 0, y: vertices[0]?.y ?? 0, parts, closed };
}

function bulgePart(from: Vertex, to: Vertex): CurvePart {
  const { bulge } = from;
  const chord = Math.hypot(to.x - from.x, to.y - from.y);
  if (Math.abs(bulge) < 1e-12 || chord === 0) return { kind: "straight", x: to.x, y: to.y };
  // The centre lies (1 − b²) / (4 b) chords to the left of the chord's middle.
  const off = (1 - bulge * bulge) / (4 * bulge);
  const cx = (from.x + to.x) / 2 - off * (to.y - from.y);
  const cy = (from.y + to.y) / 2 + off * (to.x - from.x);
  const radius = (chord * (1 + bulge * bulge)) / (4 * Math.abs(bulge));
  const start = Math.atan2(from.y - cy, from.x - cx);
  return arcPart([cx, cy], [radius, 0], [0, radius], start, 4 * Math.atan(bulge), [to.x, to.y]);
}
