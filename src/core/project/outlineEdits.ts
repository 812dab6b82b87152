import type { Box } from "../geometry/box.ts";
import type { Contour } from "../geometry/contour.ts";
import { contourBox, contourEdges, poseContour } from "../geometry/contourArcs.ts";
import { edgePoint } from "../geometry/contourEdits.ts";
import { halfContour } from "../geometry/halfContour.ts";
import { carriedOver, edgesNow, type OutlineChange } from "../panels/carryOver.ts";
import { foldOut } from "../panels/foldOut.ts";
import type { Measure } from "../panels/measure.ts";
import type { Panel } from "../panels/panel.ts";
import { mapMeasures } from "../panels/panelMeasures.ts";
import type { SeamEdge } from "../panels/seams.ts";
import { withPanel } from "./edits.ts";
import type { Project } from "./project.ts";
import { sizedPanelOf } from "./sizedPanels.ts";

/** The half of an outline that is drawn; the other one follows. */
export const HALF_SIDES = ["right", "left", "upper", "lower"] as const;
export type HalfSide = (typeof HALF_SIDES)[number];

/** How far to turn the outline for its half to lie above, degrees. */
const TURN: Readonly<Record<HalfSide, number>> = { upper: 0, left: -90, lower: 180, right: 90 };

type Point = readonly [number, number];

/**
 * The project with a panel's outline drawn anew. Where corners were added or taken away, everything that names the
 * panel's edges by number (allowances, corners, notches, fold, seams, what other panels follow) names the same ones.
 */
export function withOutline(project: Project, id: string, contour: Contour): Project {
  const panel = project.panels.find((one) => one.id === id);
  const before = outlineNow(project, id);
  if (panel === undefined || before === null) return project;
  const { shape } = panel;
  if (contour.vertices.length === before.contour.vertices.length)
    return withPanel(project, id, {
      shape: shape.kind === "outline" ? { ...shape, contour } : named(contour, before.edges),
    });
  const same = (x: number, y: number): Point => [x, y];
  const change: OutlineChange = { before, after: contour, toBefore: same, toAfter: (x, y) => [[x, y]] };
  const { foldEdge } = panel;
  const fold = typeof foldEdge === "number" ? (edgesNow(change)(foldEdge)[0] ?? null) : foldEdge;
  return withChange(project, id, change, { ...carriedOver(panel, change), foldEdge: fold });
}

/**
 * The project with a panel cut through its middle: one half stays and is mirrored over the cut. What stands on the
 * other half goes over to this one. Null when the middle does not part the outline in two.
 */
export function withHalf(project: Project, id: string, side: HalfSide): Project | null {
  const panel = project.panels.find((one) => one.id === id);
  const before = outlineNow(project, id);
  if (panel === undefined || before === null || panel.foldEdge !== null) return null;
  const turned = poseContour(before.contour, { x: 0, y: 0, turnDeg: TURN[side], mirrored: false });
  const { minY, maxY } = contourBox(turned);
  const half = halfContour(turned, (minY + maxY) / 2);
  if (half === null) return null;
  const after = poseContour(half, { x: 0, y: 0, turnDeg: -TURN[side], mirrored: false });
  const fold = after.vertices.length / 3 - 1;
  const { mirror, isBeyond } = acrossEdge(after, fold);
  const change: OutlineChange = {
    before,
    after,
    fold,
    toBefore: (x, y) => [x, y],
    toAfter: (x, y) => [isBeyond(x, y) ? mirror(x, y) : [x, y]],
  };
  return withChange(project, id, change, { ...carriedOver(panel, change), foldEdge: fold });
}

/** The project with a half panel drawn as a whole again, opened out over its fold; null when it has none. */
export function withWhole(project: Project, id: string): Project | null {
  const panel = project.panels.find((one) => one.id === id);
  const sized = sizedPanelOf(project, id);
  if (panel === undefined || sized === null || sized.foldEdge === null) return null;
  const { outline, allowances, hems, corners, foldEdge } = sized;
  const seamed = { contour: outline.contour, allowances, hems, corners, mirrored: corners.map(() => false) };
  const opened = foldOut(seamed, foldEdge);
  if (opened === null) return null;
  const { mirror, isBeyond } = acrossEdge(outline.contour, foldEdge);
  const change: OutlineChange = {
    before: outline,
    after: opened.whole.contour,
    toBefore: (x, y) => (isBeyond(x, y) ? mirror(x, y) : [x, y]),
    toAfter: (x, y) => [[x, y], mirror(x, y)],
  };
  return withChange(project, id, change, { ...carriedOver(panel, change), foldEdge: null });
}

/** Mirroring across an edge, and what lies to its right, where the outline is not. */
export function acrossEdge(
  contour: Contour,
  edge: number,
): { mirror(x: number, y: number): Point; isBeyond(x: number, y: number): boolean } {
  const { x0, y0, x1, y1 } = contourEdges(contour)[edge]!;
  const length = Math.hypot(x1 - x0, y1 - y0);
  const [ux, uy] = [(x1 - x0) / length, (y1 - y0) / length];
  const left = (x: number, y: number) => (y - y0) * ux - (x - x0) * uy;
  return {
    mirror: (x, y) => [x + 2 * left(x, y) * uy, y - 2 * left(x, y) * ux],
    isBeyond: (x, y) => left(x, y) < -1e-6,
  };
}

/** The mirror image of an outline over one of its edges. */
export function mirroredOver(contour: Contour, edge: number): Contour {
  const { mirror } = acrossEdge(contour, edge);
  const vertices = contour.vertices.slice();
  for (let i = 0; i < vertices.length; i += 3) {
    const [x, y] = mirror(vertices[i]!, vertices[i + 1]!);
    vertices[i] = x;
    vertices[i + 1] = y;
    vertices[i + 2] = -vertices[i + 2]!;
  }
  return { ...contour, vertices };
}

/** The box of an outline, with its mirror image where an edge lies on the fold. */
export function wholeBox(contour: Contour, fold: number | null): Box {
  const box = contourBox(contour);
  if (fold === null) return box;
  const other = contourBox(mirroredOver(contour, fold));
  return {
    minX: Math.min(box.minX, other.minX),
    minY: Math.min(box.minY, other.minY),
    maxX: Math.max(box.maxX, other.maxX),
    maxY: Math.max(box.maxY, other.maxY),
  };
}

function outlineNow(project: Project, id: string): OutlineChange["before"] | null {
  const shape = project.panels.find((one) => one.id === id)?.shape;
  if (shape?.kind === "outline") return { contour: shape.contour, edges: shape.edges ?? [] };
  return sizedPanelOf(project, id)?.outline ?? null;
}

function named(contour: Contour, edges: OutlineChange["before"]["edges"]): Panel["shape"] {
  return { kind: "outline", contour, ...(edges.length > 0 ? { edges } : {}) };
}

/** The panel put in place of the one before, and what names its edges by number elsewhere. */
function withChange(project: Project, id: string, change: OutlineChange, panel: Panel): Project {
  const now = edgesNow(change);
  const middles = contourEdges(change.after).map((edge) => edgePoint(edge, 0.5));
  /** On the half that was drawn: a seam keeps its length. */
  const isOwn = (edge: number): boolean => {
    const [x, y] = middles[edge]!;
    const [bx, by] = change.toBefore(x, y);
    return x === bx && y === by;
  };
  const run = (edges: readonly SeamEdge[]): SeamEdge[] =>
    edges
      .flatMap((one): SeamEdge[] =>
        one.panel !== id || typeof one.edge !== "number"
          ? [one]
          : now(one.edge)
              .filter(isOwn)
              .map((edge) => ({ ...one, edge })),
      )
      .filter((one, i, all) => i === 0 || one.panel !== id || one.edge !== all[i - 1]!.edge);
  const one = (edge: SeamEdge): SeamEdge => run([edge])[0] ?? edge;
  const follow = (measure: Measure): Measure =>
    typeof measure === "number"
      ? measure
      : measure.flatMap((term) => {
          if (typeof term === "number" || term.of !== id || !/^\d{1,4}$/u.test(term.measure)) return [term];
          return now(Number(term.measure))
            .filter(isOwn)
            .map((edge) => ({ ...term, measure: String(edge) }));
        });
  return {
    ...project,
    panels: project.panels.map((other) => mapMeasures(other.id === id ? panel : other, follow)),
    ...(project.seams && {
      seams: project.seams.map((seam) => ({ ...seam, first: run(seam.first), second: run(seam.second) })),
    }),
    ...(project.matches && {
      matches: project.matches.map((match) => ({ ...match, first: one(match.first), second: one(match.second) })),
    }),
  };
}
