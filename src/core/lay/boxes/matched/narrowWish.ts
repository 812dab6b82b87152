import { closeWhereFree } from "../cuts/closeTree.ts";
import { type CutBox, cutTreeOf } from "../cuts/cutTree.ts";
import { narrowStrips } from "../cuts/narrowStrips.ts";
import type { LaidBox, MatchedJob, MatchedWay } from "./matchedJob.ts";
import { rungsAlong, rungUp } from "./matchedJob.ts";

/** mm that a ruler cannot tell from nothing, and within which a place is a rung. */
const TOLERANCE = 1e-3;
const SAME = 1e-5;
/** What a plan counts as longer for its first narrow strip, and for each more, as shares of the shortest possible. */
const FIRST = 0.3;
const MORE = 0.03;

/** Strips that ruler cuts should not take off. */
export interface NarrowWish {
  /** Narrower ones are hard to cut, mm. */
  readonly least: number;
  /** What a plan counts as longer for its first such strip, and for each more, mm. */
  readonly first: number;
  readonly more: number;
}

/** The wish of a job whose plans are at least so long, mm; null where any strip will do. */
export function narrowWishOf(
  { job: { leastStrip = 0 }, fromX, toX }: MatchedJob,
  bound: number | null,
): NarrowWish | null {
  const length = toX === Infinity ? (bound ?? 0) : toX - fromX;
  return leastStrip <= 0 ? null : { least: leastStrip, first: FIRST * length, more: MORE * length };
}

/** What a plan counts as longer, mm, when so many strips come to those it counts for already. */
export function tollWith(toll: number, strips: number, wish: NarrowWish | null): number {
  if (strips === 0 || wish === null) return toll;
  return toll === 0 ? wish.first + (strips - 1) * wish.more : toll + strips * wish.more;
}

/** How many narrow strips ruler cuts take off once every box has closed up as far as its rungs allow. Cost: O(n · depth). */
export function countNarrowStrips(
  prepared: MatchedJob,
  laid: readonly LaidBox[],
  end: number,
  least: number,
): number {
  const { job, kinds, fromX, fromY, toX, toY } = prepared;
  const { gap, looseEdges = { side: false, end: false } } = job;
  const goesOn = toX === Infinity || looseEdges.end;
  const wayOf = ({ kind, way }: LaidBox): MatchedWay => kinds[kind]!.ways[way]!;
  const boxes = laid.map((box): CutBox => {
    const { along, across } = wayOf(box);
    return { x: box.x, y: box.y, dx: along - gap, dy: across - gap };
  });
  const cloth = { x: fromX, y: fromY, dx: (goesOn ? end : toX) - gap - fromX, dy: toY - gap - fromY };
  const tree = cutTreeOf(cloth, boxes, TOLERANCE);
  if (tree === null) return 0;
  const closed = closeWhereFree(tree, goesOn, TOLERANCE, (piece, at) => isOnRungs(wayOf(laid[piece]!), at));
  return narrowStrips(closed, least, looseEdges, TOLERANCE).length;
}

function isOnRungs(way: MatchedWay, { x, y }: CutBox): boolean {
  const rungsY = way.lattice?.y ?? null;
  return (
    Math.abs(rungUp(rungsY, y - SAME) - y) <= 2 * SAME &&
    Math.abs(rungUp(rungsAlong(way, y), x - SAME) - x) <= 2 * SAME
  );
}
