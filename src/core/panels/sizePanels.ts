import { contourEdges } from "../geometry/contourArcs.ts";
import { nearestWord } from "../problems/nearestWord.ts";
import { failed, ok, type Result } from "../problems/problem.ts";
import { type EdgeRun, edgeRun, placeOnRun, runLength } from "./edgeRun.ts";
import type { BagMeasure, Measure } from "./measure.ts";
import type { CornerStyle, EdgeRef, FollowingPiece, Notch, Panel, PanelPlace } from "./panel.ts";
import type { ShapeOutline } from "./shapes/shapeRecord.ts";
import type { SizedNotch, SizedPanel, SizedPlace } from "./sizedPanel.ts";
import { Sizing } from "./sizing.ts";

/** A place this much past the end of its edge is at the end, mm: what rounding leaves. */
const AT_END = 1e-9;

/**
 * Every panel with its measures worked out, whatever they follow.
 *
 * Units:  mm.
 * Errors: everything that does not fit, at its place: measures that follow nothing or each other, sizes that do not go
 *         together, edges that are not there. `pathOf` says where a panel stands.
 */
export function sizePanels(
  panels: readonly Panel[],
  measures: readonly BagMeasure[] = [],
  pathOf: (panel: number) => string = (i) => `panels[${i}].`,
): Result<readonly SizedPanel[]> {
  const sizing = new Sizing(panels, measures, pathOf);
  const sized = panels.map((panel, i) => sizedPanel(panel, pathOf(i), sizing));
  const whole = sized.filter((panel): panel is SizedPanel => panel !== null);
  if (sizing.problems.length > 0) return failed(...sizing.problems);
  if (whole.length < sized.length) throw new RangeError("sizePanels: a panel has no size, and nothing says why");
  return ok(whole);
}

function sizedPanel(panel: Panel, path: string, sizing: Sizing): SizedPanel | null {
  const outline = sizing.outlineOf(panel);
  if (outline === null) return null;
  const before = sizing.problems.length;
  const length = (measure: Measure, at: string): number => sizing.lengthOf(measure, `${path}${at}`) ?? 0;
  const notches = panel.notches.map((notch, i) => sizedNotch(notch, outline, `${path}notches[${i}]`, sizing));
  const foldEdge = panel.foldEdge === null ? null : foldOf(panel.foldEdge, outline, `${path}fold`, sizing);
  const { allowances, hems } = edgeWidths(panel, outline, path, sizing, foldEdge);
  const inset = (piece: FollowingPiece | null | undefined, at: string): number =>
    piece?.cut === "inset" ? length(piece.inset ?? 0, at) : 0;
  const places = (
    list: readonly (PanelPlace & { readonly text?: string | undefined })[],
    at: string,
  ): SizedPlace[] =>
    list.map(({ x, y, text }, i) => ({
      x: length(x, `${at}[${i}].x`),
      y: length(y, `${at}[${i}].y`),
      text: text ?? "",
    }));
  const sized: SizedPanel = {
    panel,
    outline,
    allowances,
    hems,
    corners: cornersOf(panel, outline, path, sizing),
    foldEdge,
    notches: notches.filter((notch) => notch !== null),
    drills: places(panel.drills ?? [], "drills"),
    texts: places(panel.texts ?? [], "texts"),
    interfacingInset: inset(panel.interfacing, "interfacing.inset"),
    liningInset: inset(panel.lining, "lining.inset"),
  };
  return sizing.problems.length > before ? null : sized;
}

function runOf(ref: EdgeRef, outline: ShapeOutline, path: string, sizing: Sizing): EdgeRun | null {
  const run = edgeRun(outline, ref);
  if (run !== null) return run;
  const known = outline.edges.map(({ name }) => name);
  if (typeof ref === "string")
    sizing.problems.push({ code: "no-such-edge-name", path, name: ref, nearest: nearestWord(ref, known), known });
  else sizing.problems.push({ code: "no-such-edge", path, edge: ref, edges: outline.contour.vertices.length / 3 });
  return null;
}

function sizedNotch(notch: Notch, outline: ShapeOutline, path: string, sizing: Sizing): SizedNotch | null {
  const run = runOf(notch.edge, outline, path, sizing);
  if (run === null) return null;
  const edgeMm = runLength(outline.contour, run);
  const at =
    typeof notch.at === "object" && "share" in notch.at
      ? notch.at.share * edgeMm
      : sizing.lengthOf(notch.at, `${path}.at`);
  if (at === null) return null;
  if (at < 0 || at > edgeMm + AT_END) {
    sizing.problems.push({ code: "notch-off-edge", path: `${path}.at`, atMm: at, edgeMm });
    return null;
  }
  return { ...placeOnRun(outline.contour, run, at), cut: notch.cut ?? "slit", mark: notch.mark ?? null };
}

function foldOf(ref: EdgeRef, outline: ShapeOutline, path: string, sizing: Sizing): number | null {
  const run = runOf(ref, outline, path, sizing);
  if (run === null) return null;
  const edges = contourEdges(outline.contour);
  const line = edges[run.first]!;
  const side = (x: number, y: number): number =>
    (line.x1 - line.x0) * (y - line.y0) - (line.y1 - line.y0) * (x - line.x0);
  const beyond = edges.some(({ x0, y0 }) => side(x0, y0) < -1e-6);
  if (run.count > 1 || line.bulge !== 0 || beyond)
    sizing.problems.push({ code: "fold-edge-not-straight", path, edge: ref });
  return run.first;
}

function edgeWidths(
  panel: Panel,
  outline: ShapeOutline,
  path: string,
  sizing: Sizing,
  foldEdge: number | null,
): { readonly allowances: number[]; readonly hems: boolean[] } {
  const total = outline.contour.vertices.length / 3;
  const width = (measure: Measure, at: string): number => {
    const mm = sizing.lengthOf(measure, `${path}${at}`) ?? 0;
    if (mm >= 0 && mm <= MOST_ALLOWANCE) return mm;
    sizing.problems.push({
      code: "length-out-of-range",
      path: `${path}${at}`,
      mm,
      minMm: 0,
      maxMm: MOST_ALLOWANCE,
    });
    return 0;
  };
  const usual = width(panel.seamAllowance, "seamAllowance");
  const allowances = Array.from({ length: total }, () => usual);
  const hems = Array.from({ length: total }, () => false);
  for (const [i, wish] of (panel.edges ?? []).entries()) {
    const run = runOf(wish.edge, outline, `${path}edges[${i}].edge`, sizing);
    if (run === null) continue;
    const own = wish.allowance === undefined ? usual : width(wish.allowance, `edges[${i}].allowance`);
    for (let k = 0; k < run.count; k++) {
      allowances[(run.first + k) % total] = own;
      hems[(run.first + k) % total] = wish.hem ?? false;
    }
  }
  if (foldEdge !== null) {
    allowances[foldEdge] = 0;
    hems[foldEdge] = false;
  }
  return { allowances, hems };
}

/** Half an inch or so is usual; a strip wider than this is no seam allowance or hem, mm. */
export const MOST_ALLOWANCE = 200;

function cornersOf(panel: Panel, outline: ShapeOutline, path: string, sizing: Sizing): CornerStyle[] {
  const total = outline.contour.vertices.length / 3;
  const styles = Array.from({ length: total }, (): CornerStyle => panel.cornerStyle ?? "mitred");
  for (const [i, { corner, style }] of (panel.corners ?? []).entries()) {
    const run = runOf(corner, outline, `${path}corners[${i}].corner`, sizing);
    if (run !== null) styles[run.first] = style;
  }
  return styles;
}
