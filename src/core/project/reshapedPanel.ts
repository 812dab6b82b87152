import type { Contour } from "../geometry/contour.ts";
import { edgeRun } from "../panels/edgeRun.ts";
import type { EdgeRef, Panel, PanelShape } from "../panels/panel.ts";
import type { SeamEdge } from "../panels/seams.ts";
import type { NamedEdge, ShapeOutline } from "../panels/shapes/shapeRecord.ts";
import { Sizing } from "../panels/sizing.ts";
import type { Project } from "./project.ts";

/** Where an edge of the old outline is in the new one; null when it is gone. */
type EdgeMap = (ref: EdgeRef) => EdgeRef | null;

/**
 * The project with a panel in another shape. What the maker said of its edges (allowances, corners, fold, notches,
 * seams, matches) stays with them: by name, and in an outline with its corners when some come or go. What stands on
 * an edge that is there no more goes with it.
 */
export function withPanelShape(project: Project, id: string, shape: PanelShape): Project {
  const panel = project.panels.find((one) => one.id === id);
  if (panel === undefined) return project;
  const before = outlineOf(project, panel);
  const named = namedShape(panel.shape, shape, before);
  const next: Panel = { ...panel, shape: named };
  const swapped: Project = { ...project, panels: project.panels.map((one) => (one === panel ? next : one)) };
  const after = outlineOf(swapped, next);
  if (before === null || after === null) return swapped;
  const map = edgeMap(panel.shape, named, before, after);
  return {
    ...swapped,
    panels: swapped.panels.map((one) => (one === next ? withEdges(next, map) : one)),
    ...(project.seams && {
      seams: project.seams
        .map((seam) => ({ ...seam, first: mapSide(seam.first, id, map), second: mapSide(seam.second, id, map) }))
        .filter(({ first, second }) => first.length > 0 && second.length > 0),
    }),
    ...(project.matches && {
      matches: project.matches.flatMap((match) => {
        const [first] = mapSide([match.first], id, map);
        const [second] = mapSide([match.second], id, map);
        return first === undefined || second === undefined ? [] : [{ ...match, first, second }];
      }),
    }),
  };
}

function outlineOf({ panels, measures }: Project, panel: Panel): ShapeOutline | null {
  return new Sizing(panels, measures ?? [], () => "").outlineOf(panel);
}

/** An outline keeps the names that the edges had. */
function namedShape(old: PanelShape, shape: PanelShape, before: ShapeOutline | null): PanelShape {
  if (shape.kind !== "outline" || shape.edges !== undefined || before === null) return shape;
  const corners = old.kind === "outline" ? cornerMap(old.contour, shape.contour) : (i: number) => i;
  const edges = before.edges.flatMap(({ name, start }): NamedEdge[] => {
    const at = corners(start);
    return at === null ? [] : [{ name, start: at }];
  });
  return edges.length === 0 ? shape : { ...shape, edges };
}

function edgeMap(old: PanelShape, shape: PanelShape, before: ShapeOutline, after: ShapeOutline): EdgeMap {
  const isAlike = old.kind === "measured" && shape.kind === "measured" && old.shape === shape.shape;
  const numbers =
    shape.kind === "measured" ? (i: number) => (isAlike ? i : null) : cornerMap(before.contour, after.contour);
  return (ref) => {
    const mapped = typeof ref === "number" ? numbers(ref) : ref;
    return mapped === null || edgeRun(after, mapped) === null ? null : mapped;
  };
}

/** Corners by number as long as there are as many, else by their place. */
function cornerMap(before: Contour, after: Contour): (corner: number) => number | null {
  if (before.vertices.length === after.vertices.length) return (corner) => corner;
  const placeOf = ({ vertices }: Contour, i: number): string => `${vertices[3 * i]} ${vertices[3 * i + 1]}`;
  const places = new Map(Array.from({ length: after.vertices.length / 3 }, (_, i) => [placeOf(after, i), i]));
  return (corner) => places.get(placeOf(before, corner)) ?? null;
}

function withEdges(panel: Panel, map: EdgeMap): Panel {
  const { edges, corners, notches, foldEdge } = panel;
  return {
    ...panel,
    foldEdge: foldEdge === null ? null : map(foldEdge),
    notches: mapped(notches, "edge", map),
    ...(edges && { edges: mapped(edges, "edge", map) }),
    ...(corners && { corners: mapped(corners, "corner", map) }),
  };
}

function mapped<K extends string, T extends Readonly<Record<K, EdgeRef>>>(
  list: readonly T[],
  key: K,
  map: EdgeMap,
): T[] {
  return list.flatMap((one) => {
    const ref = map(one[key]);
    return ref === null ? [] : [{ ...one, [key]: ref }];
  });
}

function mapSide(side: readonly SeamEdge[], id: string, map: EdgeMap): SeamEdge[] {
  return side.flatMap((one) => {
    const edge = one.panel === id ? map(one.edge) : one.edge;
    return edge === null ? [] : [{ ...one, edge }];
  });
}
