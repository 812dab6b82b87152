import { useLayoutEffect, useRef, useState } from "preact/hooks";
import type { Box } from "../../../core/geometry/box.ts";
import type { ContourEdge } from "../../../core/geometry/contourArcs.ts";
import { type Corner, edgePoint } from "../../../core/geometry/contourEdits.ts";

/** How mm lie on the screen: px from the left and from the top. */
export interface DeskView {
  readonly width: number;
  readonly height: number;
  /** px for a mm. */
  readonly scale: number;
  /** mm at the upper left corner. */
  readonly left: number;
  readonly top: number;
}

/** Room round the outline for its whole size, px. */
const ROOM = 58;
/** An outline that fills less than this share of the room is shown larger. */
const TOO_SMALL = 0.55;

/** The view of a box in the middle of a desk. */
function viewOfBox(box: Box, width: number, height: number): DeskView {
  const along = Math.max(box.maxX - box.minX, 1);
  const across = Math.max(box.maxY - box.minY, 1);
  const scale = Math.max(0.01, Math.min((width - 2 * ROOM) / along, (height - 2 * ROOM) / across));
  return {
    width,
    height,
    scale,
    left: (box.minX + box.maxX) / 2 - width / 2 / scale,
    top: (box.minY + box.maxY) / 2 + height / 2 / scale,
  };
}

/** Whether a view still shows a box whole and large enough. */
function stillShows(view: DeskView, box: Box): boolean {
  const [x0, y1] = toScreen(view, box.minX, box.minY);
  const [x1, y0] = toScreen(view, box.maxX, box.maxY);
  const least = ROOM - 16;
  const isWhole = x0 >= least && y0 >= least && x1 <= view.width - least && y1 <= view.height - least;
  const filled = Math.max((x1 - x0) / (view.width - 2 * ROOM), (y1 - y0) / (view.height - 2 * ROOM));
  return isWhole && filled >= TOO_SMALL;
}

export function toScreen({ scale, left, top }: DeskView, x: number, y: number): readonly [number, number] {
  return [(x - left) * scale, (top - y) * scale];
}

export function toTable({ scale, left, top }: DeskView, px: number, py: number): readonly [number, number] {
  return [left + px / scale, top - py / scale];
}

/** What lies under a finger on the desk. */
export type Target =
  | { readonly kind: "corner"; readonly index: number }
  | { readonly kind: "edge"; readonly index: number; readonly share: number };

/** A fingertip reaches so far, px: targets are 44 px wide. */
export const REACH = 22;
/** So near an edge it is meant, px. */
const ON_EDGE = 11;

/**
 * The corner or middle of an edge within reach that is nearest, else the edge that is pressed on, else nothing.
 * `hasHandle` says which edges have a handle in their middle.
 */
export function targetAt(
  view: DeskView,
  corners: readonly Corner[],
  edges: readonly ContourEdge[],
  hasHandle: (edge: number) => boolean,
  at: readonly [number, number],
): Target | null {
  const apart = (x: number, y: number) => {
    const [px, py] = toScreen(view, x, y);
    return Math.hypot(px - at[0], py - at[1]);
  };
  let best: Target | null = null;
  let far = REACH;
  for (const [index, { x, y }] of corners.entries())
    if (apart(x, y) < far) {
      far = apart(x, y);
      best = { kind: "corner", index };
    }
  for (const [index, edge] of edges.entries())
    if (hasHandle(index) && apart(...edgePoint(edge, 0.5)) < far) {
      far = apart(...edgePoint(edge, 0.5));
      best = { kind: "edge", index, share: 0.5 };
    }
  if (best !== null) return best;
  far = ON_EDGE;
  for (const [index, edge] of edges.entries())
    for (let share = 0.02; share < 1; share += 0.02)
      if (apart(...edgePoint(edge, share)) < far) {
        far = apart(...edgePoint(edge, share));
        best = { kind: "edge", index, share };
      }
  return best;
}

/** A view that stays as it is while what it shows fits: nothing moves by itself. `isHeld` keeps it whatever comes. */
export function useSteadyView(box: Box, isHeld: boolean) {
  const desk = useRef<SVGSVGElement>(null);
  const [width, setWidth] = useState(560);
  const kept = useRef<DeskView | null>(null);
  useLayoutEffect(() => {
    const own = desk.current;
    if (own === null) return;
    const measure = () => setWidth(Math.max(200, own.getBoundingClientRect().width));
    measure();
    const watch = new ResizeObserver(measure);
    watch.observe(own);
    return () => watch.disconnect();
  }, []);
  const height = Math.round(Math.min(460, Math.max(300, width * 0.7)));
  const { current } = kept;
  const isFit = current !== null && current.width === width && (isHeld || stillShows(current, box));
  if (!isFit) kept.current = viewOfBox(box, width, height);
  return { desk, view: kept.current! };
}
