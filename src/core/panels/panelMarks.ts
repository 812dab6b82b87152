import { contourEdges } from "../geometry/contourArcs.ts";
import { pointAlong } from "../geometry/contourEdgeLengths.ts";
import { segmentContour, straightContour } from "../geometry/contourShapes.ts";
import type { PieceLine } from "../materials/cutPiece.ts";
import type { FoldedOut } from "./foldOut.ts";
import type { NotchCut } from "./panel.ts";
import type { SizedPanel } from "./sizedPanel.ts";

/** A notch reaches this far into the piece at most, mm, and never past half of the seam allowance. */
const NOTCH = 5;
/** On a piece without seam allowance a notch is only a nick, mm. */
const NICK = 3;
/** Half of the cross that marks a hole, mm. */
const CROSS = 3;

/** A notch on the cut line: where, the outward direction there, and how far it reaches in or out. */
export interface NotchPlace {
  readonly x: number;
  readonly y: number;
  readonly out: readonly [number, number];
  readonly depth: number;
  readonly cut: NotchCut;
  readonly mark: string | null;
}

/** Every notch of a panel, those of the mirror image over the fold besides. */
export function notchPlaces(sized: SizedPanel, opened: FoldedOut | null): NotchPlace[] {
  const edges = contourEdges(sized.outline.contour);
  return sized.notches.flatMap(({ edge, at, cut, mark }): NotchPlace[] => {
    const allowance = sized.allowances[edge]!;
    const [x, y, nx, ny] = pointAlong(edges[edge]!, at);
    const beyond = sized.panel.drawn === "cut" ? 0 : allowance;
    const depth = allowance > 0 ? Math.min(NOTCH, allowance / 2) : NICK;
    const here: NotchPlace = { x: x + nx * beyond, y: y + ny * beyond, out: [nx, ny], depth, cut, mark };
    if (opened === null || edge === sized.foldEdge) return [here];
    const [mx, my] = opened.mirror(here.x, here.y);
    const [tx, ty] = opened.mirror(here.x + nx, here.y + ny);
    return [here, { ...here, x: mx, y: my, out: [tx - mx, ty - my] }];
  });
}

/** What is drawn of a notch inside the piece: a slit, or the two sides of a wedge. */
export function notchLine({ x, y, out: [nx, ny], depth, cut, mark }: NotchPlace): PieceLine {
  const named = mark === null ? {} : { text: mark };
  const tipX = x - nx * depth;
  const tipY = y - ny * depth;
  if (cut === "slit") return { role: "mark", contour: segmentContour(x, y, tipX, tipY), note: "notch", ...named };
  const half = depth / 2;
  const wedge = straightContour([x + ny * half, y - nx * half, tipX, tipY, x - ny * half, y + nx * half]);
  return { role: "mark", contour: wedge, note: "notch", ...named };
}

/** Holes to mark as crosses, on both halves of a piece on the fold; words stand once. */
export function drillLines({ drills }: SizedPanel, opened: FoldedOut | null): PieceLine[] {
  return drills.flatMap(({ x, y, text }) => [
    ...cross(x, y, text),
    ...(opened === null ? [] : cross(...opened.mirror(x, y), "")),
  ]);
}

function cross(x: number, y: number, text: string): PieceLine[] {
  return [
    { role: "mark", contour: segmentContour(x, y - CROSS, x, y + CROSS) },
    { role: "mark", contour: segmentContour(x - CROSS, y, x + CROSS, y), ...(text === "" ? {} : { text }) },
  ];
}

/** Words on the panel, each after a short stroke. */
export function textLines({ texts }: SizedPanel): PieceLine[] {
  return texts.map(({ x, y, text }) => ({ role: "mark", contour: segmentContour(x - STROKE, y, x, y), text }));
}

/** mm. */
const STROKE = 2;
