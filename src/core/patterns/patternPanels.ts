import type { Contour } from "../geometry/contour.ts";
import { type ContourEdge, contourEdges, poseContour } from "../geometry/contourArcs.ts";
import { isInsideRing } from "../geometry/inside.ts";
import { pointOnContour } from "../geometry/pointOnContour.ts";
import type { PieceLine } from "../materials/cutPiece.ts";
import type { DrillPoint, Notch, Panel, PanelText } from "../panels/panel.ts";
import { flattenCurve } from "./measureCurve.ts";
import { distanceToRing } from "./nesting.ts";
import type { PatternMark } from "./patternDrawing.ts";
import type { PatternOutline, UnderstoodPattern } from "./patternOutline.ts";

/** A panel made of an outline and what lies in it; `seamAllowance` null where the pattern does not say. */
export interface PatternPanel {
  readonly name: string;
  readonly drawn: "cut" | "stitch";
  readonly contour: Contour;
  readonly seamAllowance: number | null;
  readonly foldEdge: number | null;
  readonly grainArrow: readonly [number, number, number, number] | null;
  readonly notches: readonly Notch[];
  readonly drills: readonly DrillPoint[];
  readonly texts: readonly PanelText[];
  readonly lines: readonly PieceLine[];
}

/** A stitch line keeps its distance from the cut line within this, mm. */
const EVEN = 0.25;
/** A line lies on an edge when it is this near, mm. */
const ON = 0.5;
const MOST_TEXTS = 20;

/**
 * The panels of a pattern: each closed cut line, or stitch line with no cut line round it, that lies in no other, with
 * its notches, drill holes, grain arrow, fold and inner lines, all from the lower-left corner of its box.
 */
export function patternPanels(pattern: UnderstoodPattern): readonly PatternPanel[] {
  const { outlines, marks } = pattern;
  const isPiece = ({ closed, role }: PatternOutline): boolean => closed && (role === "cut" || role === "stitch");
  const isOuter = (outline: PatternOutline): boolean =>
    isPiece(outline) && !homesOf(outline, outlines).some(isPiece);
  return outlines.filter(isOuter).map((outline) => {
    const inner = outlines.filter((one) => homesOf(one, outlines).includes(outline));
    return panelOf(outline, inner, marks);
  });
}

/** What holds an outline, from the inside out. */
function homesOf(outline: PatternOutline, all: readonly PatternOutline[]): readonly PatternOutline[] {
  const homes: PatternOutline[] = [];
  for (let at = outline.inside; at !== null && homes.length < 50; at = all[at]!.inside) homes.push(all[at]!);
  return homes;
}

function panelOf(
  outline: PatternOutline,
  inner: readonly PatternOutline[],
  marks: readonly PatternMark[],
): PatternPanel {
  const { minX, minY } = outline.box;
  const home = { x: -minX, y: -minY, turnDeg: 0, mirrored: false };
  const contour = poseContour(outline.contour, home);
  const ring = Float64Array.from(flattenCurve(outline.curve, 0.01));
  const seam = outline.role === "cut" ? evenSeam(ring, inner) : null;
  const fold = inner.find(({ role, closed }) => role === "fold" && !closed);
  const foldEdge = fold ? edgeUnder(fold, outline.contour) : null;
  // A single point on the outline is a notch, drawn as some programs draw them; a hole there would cut the edge away.
  const single = marks.filter(({ kind }) => kind === "point");
  const onEdge = new Map(single.map((mark) => [mark, pointOnContour(outline.contour, mark.x, mark.y)]));
  const isOnEdge = (mark: PatternMark): boolean => onEdge.get(mark)!.distance <= ON;
  const notches = [
    ...inner.filter(({ role }) => role === "notch").flatMap((one) => notchOn(one, outline.contour)),
    ...single.filter(isOnEdge).map((mark): Notch => {
      const { edge, at } = onEdge.get(mark)!;
      return { edge, at };
    }),
  ];
  const drills = inner.filter(({ role }) => role === "drill");
  const points = single.filter((mark) => !isOnEdge(mark) && isInsideRing(ring, mark.x, mark.y));
  const texts = marks.filter((mark) => mark.kind === "text" && isInsideRing(ring, mark.x, mark.y));
  const kept = inner.filter((one) => one !== seam?.line && !(one === fold && foldEdge !== null));
  return {
    name: nameOf(outline, texts),
    drawn: outline.role === "stitch" ? "stitch" : "cut",
    contour,
    seamAllowance: seam?.width ?? null,
    foldEdge,
    grainArrow: grainOf(inner, minX, minY),
    notches,
    drills: [
      ...drills.map(({ box }) => ({ x: (box.minX + box.maxX) / 2 - minX, y: (box.minY + box.maxY) / 2 - minY })),
      ...points.map(({ x, y }) => ({ x: x - minX, y: y - minY })),
    ],
    texts: texts
      .slice(0, MOST_TEXTS)
      .map(({ x, y, text }) => ({ x: x - minX, y: y - minY, text: text.slice(0, 200) })),
    lines: kept.flatMap((one): PieceLine[] => {
      const role = LINE_ROLES[one.role];
      return role ? [{ role, contour: poseContour(one.contour, home) }] : [];
    }),
  };
}

/** How an inner line is drawn on the panel; a cut-out is a mark, to be cut by hand. */
const LINE_ROLES: Readonly<Partial<Record<PatternOutline["role"], PieceLine["role"]>>> = {
  cut: "mark",
  stitch: "stitch",
  fold: "fold",
  mark: "mark",
};

/** The outline's own name, or the text in it when it has only a number. */
function nameOf({ name, names }: PatternOutline, texts: readonly PatternMark[]): string {
  const isNumbered = names.length === 0 || /^(?:path|rect|polygon|g|svg|use|line)?[\d\s_-]+$/iu.test(name);
  return (isNumbered ? (texts[0]?.text ?? name) : name).slice(0, 60);
}

/** The stitch line that keeps one distance from the cut line all along. */
function evenSeam(
  cut: Float64Array,
  inner: readonly PatternOutline[],
): { readonly line: PatternOutline; readonly width: number } | null {
  for (const line of inner) {
    if (line.role !== "stitch" || !line.closed) continue;
    const points = flattenCurve(line.curve, 0.01);
    const apart: number[] = [];
    for (let i = 0; i < points.length; i += 2) apart.push(distanceToRing(cut, points[i]!, points[i + 1]!));
    const least = Math.min(...apart);
    const most = Math.max(...apart);
    if (most - least <= EVEN) return { line, width: Math.round((least + most) * 50) / 100 };
  }
  return null;
}

/** The straight edge that a fold line lies on from end to end; null when there is none. */
function edgeUnder({ curve }: PatternOutline, contour: Contour): number | null {
  const end = curve.parts.at(-1)!;
  const near = (edge: ContourEdge, x: number, y: number): boolean =>
    Math.min(Math.hypot(edge.x0 - x, edge.y0 - y), Math.hypot(edge.x1 - x, edge.y1 - y)) <= ON * 2;
  const index = contourEdges(contour).findIndex(
    (edge) => edge.bulge === 0 && near(edge, curve.x, curve.y) && near(edge, end.x, end.y),
  );
  return index < 0 ? null : index;
}

/** A notch line's place: where its end nearest to the outline stands on it. */
function notchOn({ curve }: PatternOutline, contour: Contour): Notch[] {
  const ends = [[curve.x, curve.y] as const, ...curve.parts.map(({ x, y }) => [x, y] as const)];
  const places = ends.map(([x, y]) => pointOnContour(contour, x, y));
  const nearest = places.reduce((best, place) => (place.distance < best.distance ? place : best));
  return nearest.distance <= 2 ? [{ edge: nearest.edge, at: nearest.at }] : [];
}

function grainOf(
  inner: readonly PatternOutline[],
  minX: number,
  minY: number,
): readonly [number, number, number, number] | null {
  const lines = inner.filter(({ role, curve }) => role === "grain" && curve.parts.length > 0);
  const length = ({ box }: PatternOutline): number => Math.hypot(box.maxX - box.minX, box.maxY - box.minY);
  const [longest] = [...lines].sort((a, b) => length(b) - length(a));
  if (!longest) return null;
  const { curve } = longest;
  const end = curve.parts.at(-1)!;
  if (longest.closed || Math.hypot(end.x - curve.x, end.y - curve.y) < 1) return null;
  return [curve.x - minX, curve.y - minY, end.x - minX, end.y - minY];
}

/** What a panel of the project is made of besides: what the pattern cannot say. */
export interface PanelWish {
  readonly id: string;
  readonly materialId: string;
  readonly count: number;
  /** Where the pattern gives none, mm. */
  readonly seamAllowance: number;
}

/** The panel of a project. */
export function projectPanel(found: PatternPanel, wish: PanelWish): Panel {
  const { name, drawn, contour, foldEdge, grainArrow, notches, drills, texts, lines } = found;
  return {
    ...{ id: wish.id, name, materialId: wish.materialId, count: wish.count, mirroredCount: 0, drawn, foldEdge },
    shape: { kind: "outline", contour },
    seamAllowance: found.seamAllowance ?? wish.seamAllowance,
    grain: "lengthwise",
    ...(grainArrow ? { grainArrow } : {}),
    notches,
    ...(drills.length > 0 ? { drills } : {}),
    ...(texts.length > 0 ? { texts } : {}),
    ...(lines.length > 0 ? { lines } : {}),
    interfacing: null,
  };
}
