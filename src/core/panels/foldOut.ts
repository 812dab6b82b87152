import { type ContourEdge, contourEdges, flattenContour } from "../geometry/contourArcs.ts";
import { firstCrossing } from "../geometry/crossing.ts";
import type { Seamed } from "./cutLine.ts";

/** A shape opened out over a fold: the whole outline, and where the fold runs. */
export interface FoldedOut {
  readonly whole: Seamed;
  /** Ends of the fold line. */
  readonly fold: readonly [number, number, number, number];
  /** The point's mirror image across the fold. */
  mirror(x: number, y: number): readonly [number, number];
}

/** Nearer to a straight line than this (sine of the turn), a corner on the fold is none. */
const STRAIGHT = 1e-9;

/** One edge with what it has; `corner` is the style of the corner it starts at. */
interface SeamEdge {
  readonly edge: ContourEdge;
  readonly allowance: number;
  readonly hem: boolean;
  readonly corner: Seamed["corners"][number];
  readonly mirrored: boolean;
}

/**
 * The shape and its mirror image across edge `fold`, which must be straight with the whole shape on its left. Null
 * when the two halves touch anywhere else.
 */
export function foldOut(half: Seamed, fold: number): FoldedOut | null {
  const edges = contourEdges(half.contour);
  const line = edges[fold]!;
  const length = Math.hypot(line.x1 - line.x0, line.y1 - line.y0);
  const ux = (line.x1 - line.x0) / length;
  const uy = (line.y1 - line.y0) / length;
  const mirror = (x: number, y: number): readonly [number, number] => {
    const off = 2 * ((y - line.y0) * ux - (x - line.x0) * uy);
    return [x + off * uy, y - off * ux];
  };
  const all = edges.map(
    (edge, i): SeamEdge => ({
      edge,
      allowance: half.allowances[i]!,
      hem: half.hems[i]!,
      corner: half.corners[i]!,
      mirrored: false,
    }),
  );
  // From the fold's end round to its start, then the mirror image back again.
  const there = [...all.slice(fold + 1), ...all.slice(0, fold)];
  const back = there.toReversed().map((one, i): SeamEdge => {
    const { x0, y0, x1, y1, bulge } = one.edge;
    const [fromX, fromY] = mirror(x1, y1);
    const [toX, toY] = mirror(x0, y0);
    // Reversed and mirrored: the arc keeps its sense. Its corner is the one it ended at before.
    const corner = i === 0 ? half.corners[fold]! : there[there.length - i]!.corner;
    return { ...one, edge: { x0: fromX, y0: fromY, x1: toX, y1: toY, bulge }, corner, mirrored: true };
  });
  const whole = joined([...there, ...back]);
  if (firstCrossing(flattenContour(whole.contour)) !== null) return null;
  return { whole, fold: [line.x0, line.y0, line.x1, line.y1], mirror };
}

/** One outline of the edges, without corners where two straight edges run on in line. */
function joined(all: readonly SeamEdge[]): Seamed {
  const kept = all.filter(({ edge, allowance, hem }, i) => {
    const before = all.at(i - 1)!;
    const b = before.edge;
    const cross = (b.x1 - b.x0) * (edge.y1 - edge.y0) - (b.y1 - b.y0) * (edge.x1 - edge.x0);
    const size = Math.hypot(b.x1 - b.x0, b.y1 - b.y0) * Math.hypot(edge.x1 - edge.x0, edge.y1 - edge.y0);
    const runsOn = b.bulge === 0 && edge.bulge === 0 && Math.abs(cross) < STRAIGHT * size;
    return !(runsOn && allowance === before.allowance && hem === before.hem);
  });
  return {
    contour: {
      vertices: Float64Array.from(kept.flatMap(({ edge }) => [edge.x0, edge.y0, edge.bulge])),
      closed: true,
    },
    allowances: kept.map(({ allowance }) => allowance),
    hems: kept.map(({ hem }) => hem),
    corners: kept.map(({ corner }) => corner),
    mirrored: kept.map(({ mirrored }) => mirrored),
  };
}
