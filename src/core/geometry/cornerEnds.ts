/** A corner sharper than this multiple of the wider allowance is blunted. */
const MITRE_LIMIT = 3;
/** Edges whose directions differ by less than this (sine) run on without a corner. */
const STRAIGHT_ON = 1e-4;
/** Lengths nearer to each other than this are one, mm. */
const SAME = 1e-9;

export type Vector = readonly [number, number];

/** How the allowances of two edges meet beyond their corner. */
export type CornerEnd =
  | { readonly kind: "mitred" }
  /** Cut off square to one of the edges, as far beyond the corner as the other's allowance is wide. */
  | { readonly kind: "square"; readonly to: "before" | "after" }
  /** Cut off square to the corner's middle: `reach` beyond the corner, the wider allowance when not said. */
  | { readonly kind: "blunted"; readonly reach?: number }
  /** The end mirrors the other edge's cut line across the edge that is folded. */
  | { readonly kind: "folded"; readonly over: "before" | "after" };

/** A corner of an outline, and how far the edges before and after it are moved to their right. */
export interface MovedCorner {
  readonly at: Vector;
  /** Unit directions in which the outline comes and goes. */
  readonly from: Vector;
  readonly to: Vector;
  readonly before: number;
  readonly after: number;
  /** Whether the edges are arcs: their ends stay where they are, and straight lines run on from them. */
  readonly bentBefore: boolean;
  readonly bentAfter: boolean;
}

/**
 * Points of the moved outline round one corner, in order: the first ends the edge before, the last starts the edge
 * after. Null when the moved edges would have to be cut back and one of them is an arc.
 */
export function cornerEnds(corner: MovedCorner, end: CornerEnd): Vector[] | null {
  const { from, to, before, after, bentBefore, bentAfter } = corner;
  const cross = from[0] * to[1] - from[1] * to[0];
  const dot = from[0] * to[0] + from[1] * to[1];
  const first = beside(corner.at, from, before);
  const last = beside(corner.at, to, after);
  if (Math.abs(cross) < STRAIGHT_ON && dot > 0) return Math.abs(before - after) < SAME ? [last] : [first, last];
  const opens = cross * (before + after) > 0;
  if (!opens && (bentBefore || bentAfter)) return before === 0 && after === 0 ? [last] : null;
  const points = opens && before + after > 0 ? openEnds(corner, end, cross, dot) : [mitre(corner, cross, dot)];
  return withArcEnds(points, corner, first, last, dot);
}

/** Where both moved edges, run on as straight lines, meet. */
function mitre({ at, from, before, after }: MovedCorner, cross: number, dot: number): Vector {
  return along(beside(at, from, before), from, (after - before * dot) / cross);
}

function openEnds(corner: MovedCorner, end: CornerEnd, cross: number, dot: number): Vector[] {
  const { at, before, after } = corner;
  const tip = mitre(corner, cross, dot);
  const reach = Math.hypot(tip[0] - at[0], tip[1] - at[1]);
  const widest = Math.max(before, after);
  const cut = end.kind === "blunted" ? (end.reach ?? widest) : null;
  if (end.kind === "folded") {
    const folded = foldedEnds(corner, end.over, cross, dot);
    if (folded !== null) return folded;
  }
  if (end.kind === "square") {
    const square = squareEnds(corner, end.to, cross, dot);
    if (square !== null) return square;
  }
  if (cut !== null && cut < reach - SAME) return bluntEnds(corner, tip, reach, cut) ?? [tip];
  if (reach > MITRE_LIMIT * widest + SAME) return bluntEnds(corner, tip, reach, widest) ?? [tip];
  return [tip];
}

/** The tip cut off across its middle, `cut` from the corner; null when the cut would not meet both edges. */
function bluntEnds(corner: MovedCorner, tip: Vector, reach: number, cut: number): Vector[] | null {
  const { at, from, to, before, after } = corner;
  const middle: Vector = [(tip[0] - at[0]) / reach, (tip[1] - at[1]) / reach];
  const first = beside(at, from, before);
  const last = beside(at, to, after);
  const ahead = dotOf(from, middle);
  const back = -dotOf(to, middle);
  if (ahead <= 0 || back <= 0) return null;
  const short = (point: Vector): number => cut - dotOf([point[0] - at[0], point[1] - at[1]], middle);
  return [along(first, from, short(first) / ahead), along(last, to, -short(last) / back)];
}

/** The tip cut off square to one edge; null where no tip lies beyond the other's allowance. */
function squareEnds(corner: MovedCorner, to: "before" | "after", cross: number, dot: number): Vector[] | null {
  // Only a corner that turns by more than a right angle has a tip beyond the other's allowance.
  if (dot >= -SAME) return null;
  const first = beside(corner.at, corner.from, corner.before);
  const last = beside(corner.at, corner.to, corner.after);
  const width = to === "before" ? corner.after : corner.before;
  const reach = (width * (cross - 1)) / dot;
  return to === "before"
    ? [along(first, corner.from, width), along(last, corner.to, -reach)]
    : [along(first, corner.from, reach), along(last, corner.to, -width)];
}

/**
 * The end of a folded allowance: beyond the fold line the cut mirrors the other edge's cut line, so that it lies on it
 * once the allowance is turned in. Null when the folded edge is an arc, or the other one has nothing to lie on.
 */
function foldedEnds(corner: MovedCorner, over: "before" | "after", cross: number, dot: number): Vector[] | null {
  const { at, from, to, before, after } = corner;
  if (over === "before" ? corner.bentBefore : corner.bentAfter) return null;
  const [width, other] = over === "before" ? [before, after] : [after, before];
  const crossing = other / cross;
  // A fold wider than its end runs back: the mirror image would meet itself.
  const atWidth = crossing + (width * dot) / cross;
  const ends =
    over === "before"
      ? [along(beside(at, from, before), from, atWidth), along(at, from, crossing)]
      : [along(at, to, -crossing), along(beside(at, to, after), to, -atWidth)];
  // At a right angle the mirror image runs straight on.
  return Math.abs(dot) < SAME ? [ends[over === "before" ? 0 : 1]!] : (ends as Vector[]);
}

/** Arcs end beside their corner, whatever follows: the straight run between starts there. */
function withArcEnds(
  points: readonly Vector[],
  corner: MovedCorner,
  first: Vector,
  last: Vector,
  dot: number,
): Vector[] | null {
  const { at, from, to, before, after, bentBefore, bentAfter } = corner;
  if (!bentBefore && !bentAfter) return [...points];
  const kept = [...points];
  if (bentBefore && isBehind(kept[0]!, first, from)) {
    // The arc ends past where the other side passes: its allowance ends square to it there.
    kept.splice(0, 1, along(at, [from[1], -from[0]], after / dot));
    if (!(after / dot < before && dot > 0)) return null;
  }
  if (bentAfter && isBehind(last, kept.at(-1)!, to)) {
    kept.splice(-1, 1, along(at, [to[1], -to[0]], before / dot));
    if (!(before / dot < after && dot > 0)) return null;
  }
  return [...(bentBefore ? [first] : []), ...kept, ...(bentAfter ? [last] : [])];
}

/** Whether a point lies behind another, seen along a direction. */
function isBehind(point: Vector, of: Vector, direction: Vector): boolean {
  return dotOf([point[0] - of[0], point[1] - of[1]], direction) < -SAME;
}

function dotOf(a: Vector, b: Vector): number {
  return a[0] * b[0] + a[1] * b[1];
}

function along([x, y]: Vector, [dx, dy]: Vector, by: number): Vector {
  return [x + dx * by, y + dy * by];
}

/** The point moved to the right of a direction. */
function beside([x, y]: Vector, [dx, dy]: Vector, by: number): Vector {
  return [x + dy * by, y - dx * by];
}
