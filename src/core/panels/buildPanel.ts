import type { Contour } from "../geometry/contour.ts";
import {
  type ContourEdge,
  contourBox,
  contourEdges,
  edgeCircle,
  flattenContour,
  poseContour,
} from "../geometry/contourArcs.ts";
import { segmentContour } from "../geometry/contourShapes.ts";
import { offsetContour } from "../geometry/offsetContour.ts";
import { solid } from "../geometry/ring.ts";
import { shapeContour } from "../geometry/shape.ts";
import type { CutPiece, PieceLine } from "../materials/cutPiece.ts";
import { failed, ok, type Result } from "../problems/problem.ts";
import { type FoldedOut, foldOut } from "./foldOut.ts";
import type { Notch, Panel } from "./panel.ts";

/** A notch reaches this far into the piece at most, mm, and never past half of the seam allowance. */
const NOTCH = 5;
/** On a piece without seam allowance a notch is only a nick, mm. */
const NICK = 3;

/**
 * The pieces of one panel of one bag: the panel itself opened out over its fold, seam allowance added, notches and
 * lines drawn, and its interfacing. Counts are those of one bag.
 *
 * Units:  mm; outlines within 0.01 mm of the arcs.
 * Errors: a fold whose halves meet beside it, at `path`.
 */
export function buildPanel(panel: Panel, path = "", interfacingName = "interfacing"): Result<readonly CutPiece[]> {
  const shape = shapeContour(panel.shape);
  const opened = panel.foldEdge === null ? null : foldOut(shape, panel.foldEdge);
  if (panel.foldEdge !== null && opened === null)
    return failed({ code: "fold-edge-not-straight", path: `${path}fold`, edge: panel.foldEdge });
  const stitch = opened?.contour ?? shape;
  const cut = offsetContour(stitch, panel.seamAllowance);
  const lines: PieceLine[] = [
    ...(panel.seamAllowance > 0 ? [{ role: "stitch", contour: stitch } as const] : []),
    ...(opened ? [{ role: "fold", contour: segmentContour(...opened.fold), note: "fold" } as const] : []),
    ...notchLines(panel, shape, opened),
  ];
  const piece = pieceOf(panel, panel.id, panel.name, panel.materialId, cut, lines);
  return ok([piece, ...interfacingOf(panel, stitch, cut, interfacingName)]);
}

function interfacingOf(panel: Panel, stitch: Contour, cut: Contour, name: string): CutPiece[] {
  const { interfacing } = panel;
  if (interfacing === null) return [];
  const contour = interfacing.cut === "full" ? cut : stitch;
  return [pieceOf(panel, `${panel.id}-interfacing`, `${panel.name}, ${name}`, interfacing.materialId, contour, [])];
}

/** The piece with the lower-left corner of its box at the origin. */
function pieceOf(
  panel: Panel,
  id: string,
  name: string,
  materialId: string,
  contour: Contour,
  lines: readonly PieceLine[],
): CutPiece {
  const box = contourBox(contour);
  const pose = { x: -box.minX, y: -box.minY, turnDeg: 0, mirrored: false };
  const placed = poseContour(contour, pose);
  return {
    id,
    name,
    partId: panel.id,
    materialId,
    kind: "panel",
    contour: placed,
    outline: solid(flattenContour(placed)),
    lines: lines.map((line) => ({ ...line, contour: poseContour(line.contour, pose) })),
    count: panel.count,
    mirroredCount: panel.mirroredCount,
    grain: panel.grain,
  };
}

function notchLines(panel: Panel, shape: Contour, opened: FoldedOut | null): PieceLine[] {
  const edges = contourEdges(shape);
  return panel.notches.flatMap((notch): PieceLine[] => {
    const [x0, y0, x1, y1] = notchSegment(notch, edges[notch.edge]!, panel.seamAllowance);
    const here: PieceLine = { role: "mark", contour: segmentContour(x0, y0, x1, y1), note: "notch" };
    if (opened === null || notch.edge === panel.foldEdge) return [here];
    const there = segmentContour(...opened.mirror(x0, y0), ...opened.mirror(x1, y1));
    return [here, { ...here, contour: there }];
  });
}

/** From the cut line towards the stitch line, square to it. */
function notchSegment(
  { at }: Notch,
  edge: ContourEdge,
  allowance: number,
): readonly [number, number, number, number] {
  const [x, y, nx, ny] = pointAlong(edge, at);
  const depth = allowance > 0 ? Math.min(NOTCH, allowance / 2) : NICK;
  const inner = allowance - depth;
  return [x + nx * allowance, y + ny * allowance, x + nx * inner, y + ny * inner];
}

/** Point `at` mm along an edge, and the outward direction there (to the right, the shape lying on the left). */
function pointAlong(edge: ContourEdge, at: number): readonly [number, number, number, number] {
  if (edge.bulge === 0) {
    const length = Math.hypot(edge.x1 - edge.x0, edge.y1 - edge.y0);
    const ux = (edge.x1 - edge.x0) / length;
    const uy = (edge.y1 - edge.y0) / length;
    return [edge.x0 + ux * at, edge.y0 + uy * at, uy, -ux];
  }
  const { x, y, radius, start, sweep } = edgeCircle(edge);
  const side = Math.sign(sweep);
  const angle = start + (side * at) / radius;
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  return [x + radius * c, y + radius * s, side * c, side * s];
}
