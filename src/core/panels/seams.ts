import { contourEdges, edgeDirection } from "../geometry/contourArcs.ts";
import { nearestWord } from "../problems/nearestWord.ts";
import { failed, ok, type Problem, type Result } from "../problems/problem.ts";
import { type EdgeRun, edgeRun, placeOnRun, runLength } from "./edgeRun.ts";
import type { EdgeRef } from "./panel.ts";
import type { SizedNotch, SizedPanel } from "./sizedPanel.ts";

/** One edge of one panel. */
export interface SeamEdge {
  readonly panel: string;
  readonly edge: EdgeRef;
}

/**
 * Two runs of edges that are sewn together. Each run is in order, counter-clockwise round its panels; lying face to
 * face, the second is met backwards.
 */
export interface Seam {
  readonly first: readonly SeamEdge[];
  readonly second: readonly SeamEdge[];
  /** How much longer the first is meant to be, mm: what is eased in. */
  readonly ease?: number | undefined;
}

/** A seam with its lengths along the lines as drawn, mm. */
export interface SeamLengths {
  readonly seam: Seam;
  /** Each edge's length, in order. */
  readonly first: readonly number[];
  readonly second: readonly number[];
  /** How much longer the first is than it is meant to be. */
  readonly over: number;
}

/** A mark nearer to an end or to another mark than this is left out, mm. */
const NO_MARK = 1;

/**
 * How long the two sides of every seam are.
 *
 * Errors: panels and edges that are not there, at `seams[i].first[k]`.
 */
export function seamLengths(panels: readonly SizedPanel[], seams: readonly Seam[]): Result<readonly SeamLengths[]> {
  const problems: Problem[] = [];
  const measured = seams.map((seam, i): SeamLengths => {
    const side = (edges: readonly SeamEdge[], key: string): number[] =>
      edges.map((edge, k) => {
        const found = edgeOf(panels, edge, `seams[${i}].${key}[${k}]`);
        if ("code" in found) {
          problems.push(found);
          return 0;
        }
        return runLength(found.panel.outline.contour, found.run);
      });
    const first = side(seam.first, "first");
    const second = side(seam.second, "second");
    return { seam, first, second, over: sumOf(first) - sumOf(second) - (seam.ease ?? 0) };
  });
  return problems.length > 0 ? failed(...problems) : ok(measured);
}

/**
 * The panels with match marks where a corner of one side meets the middle of the other's edge, and in the middle of
 * seams of one edge each. Marks are lettered by seam: what meets has one name.
 */
export function withSeamMarks(panels: readonly SizedPanel[], seams: readonly SeamLengths[]): readonly SizedPanel[] {
  const added = new Map<string, SizedNotch[]>();
  for (const [i, { seam, first, second }] of seams.entries()) {
    const total = sumOf(first);
    const places = marksOf(first, second, total);
    for (const [k, at] of places.entries()) {
      const mark = places.length === 1 ? seamLetter(i) : `${seamLetter(i)}${k + 1}`;
      put(added, panels, seam.first, first, at, mark);
      put(added, panels, seam.second, second, (1 - at / total) * sumOf(second), mark);
    }
  }
  return panels.map((panel) => {
    const marks = added.get(panel.panel.id);
    return marks === undefined ? panel : { ...panel, notches: [...panel.notches, ...marks] };
  });
}

/** Where marks go along the first side, mm: at the corners of either side, or in the middle when there are none. */
function marksOf(first: readonly number[], second: readonly number[], total: number): number[] {
  const other = sumOf(second);
  const corners = [...inner(first), ...inner(second).map((at) => (1 - at / other) * total)].sort((a, b) => a - b);
  const apart = corners.filter((at, i) => i === 0 || at - corners[i - 1]! > NO_MARK);
  return apart.length > 0 ? apart : [total / 2];
}

/** Distances from the start at which one edge ends and the next begins. */
function inner(lengths: readonly number[]): number[] {
  let at = 0;
  return lengths.slice(0, -1).map((length) => {
    at += length;
    return at;
  });
}

function put(
  added: Map<string, SizedNotch[]>,
  panels: readonly SizedPanel[],
  edges: readonly SeamEdge[],
  lengths: readonly number[],
  at: number,
  mark: string,
): void {
  let rest = at;
  for (const [k, edge] of edges.entries()) {
    const length = lengths[k]!;
    if (rest > length + NO_MARK && k < edges.length - 1) {
      rest -= length;
      continue;
    }
    const found = edgeOf(panels, edge, "");
    if (!("code" in found) && !(edges.length > 1 && isAtCorner(found.panel, found.run, rest, length))) {
      const place = placeOnRun(found.panel.outline.contour, found.run, rest);
      const list = added.get(edge.panel) ?? [];
      added.set(edge.panel, [...list, { ...place, cut: "slit", mark }]);
    }
    return;
  }
}

/** Whether a place is at a corner that marks it by itself: an end of the run where the outline turns. */
function isAtCorner({ outline }: SizedPanel, { first, count }: EdgeRun, at: number, length: number): boolean {
  if (at >= NO_MARK && at <= length - NO_MARK) return false;
  const edges = contourEdges(outline.contour);
  const after = at < NO_MARK ? first : (first + count) % edges.length;
  const [x0, y0] = edgeDirection(edges.at(after - 1)!, 1);
  const [x1, y1] = edgeDirection(edges[after]!, 0);
  return Math.abs(x0 * y1 - y0 * x1) > SMOOTH;
}

/** Edges that turn by less (sine) run on into each other. */
const SMOOTH = 0.2;

/** A panel and the run of edges named, or why there is none. */
export function edgeOf(
  panels: readonly SizedPanel[],
  { panel: id, edge }: SeamEdge,
  path: string,
): { readonly panel: SizedPanel; readonly run: EdgeRun } | Problem {
  const panel = panels.find((one) => one.panel.id === id);
  if (panel === undefined) {
    const known = panels.map((one) => one.panel.id);
    return { code: "unknown-panel", path: `${path}.panel`, id, nearest: nearestWord(id, known), known };
  }
  const run = edgeRun(panel.outline, edge);
  if (run !== null) return { panel, run };
  const known = panel.outline.edges.map(({ name }) => name);
  if (typeof edge === "number")
    return { code: "no-such-edge", path: `${path}.edge`, edge, edges: panel.outline.contour.vertices.length / 3 };
  return { code: "no-such-edge-name", path: `${path}.edge`, name: edge, nearest: nearestWord(edge, known), known };
}

/** A, B … Z, AA, AB … */
function seamLetter(i: number): string {
  const letter = String.fromCharCode(65 + (i % 26));
  return i < 26 ? letter : seamLetter(Math.floor(i / 26) - 1) + letter;
}

function sumOf(lengths: readonly number[]): number {
  return lengths.reduce((sum, length) => sum + length, 0);
}
