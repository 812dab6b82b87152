import { ringBox } from "../../geometry/box.ts";
import { poseRing } from "../../geometry/pose.ts";
import {
  isLoose,
  type LayPiece,
  type LayPlan,
  type LayProblem,
  type RollStock,
} from "../../lay/problem/layProblem.ts";
import { isRectangleJob } from "../../lay/problem/rectangles/prepare.ts";
import { stockRegion } from "../../lay/problem/stockRegion.ts";

/** More copies than this are left to the search. */
const MOST_COPIES = 7;
/** Places tried for one load before it is left to the search. */
const MOST_PLACES = 60_000;
/** Lengths and places that differ by less are the same, mm. */
const SAME = 1e-6;

interface Way {
  readonly turnDeg: number;
  readonly mirrored: boolean;
  /** Size with the gap on one side of it. */
  readonly along: number;
  readonly across: number;
  /** From the piece's own corner to where its frame begins. */
  readonly dx: number;
  readonly dy: number;
}

interface Laid {
  readonly copy: number;
  readonly way: Way;
  readonly x: number;
  readonly y: number;
}

/**
 * A few rectangles on one roll without flaws, as short as can be where it is not taken whole anyway: every length that sizes add up to is tried, the
 * shortest first, and on each every place where a piece can lie pushed towards the corner. Null when not even the whole
 * length takes them; undefined when there are too many, or they are no plain rectangles.
 *
 * Source: normal patterns, Herz 1972 and Christofides and Whitlock 1977: some best plan has every edge at a sum of sizes.
 * Cost: at most 60,000 places; exponential in the copies, of which there are 7 at most.
 */
export function fewRectangles(
  problem: LayProblem,
  stock: RollStock,
  isPaidWhole: boolean,
): LayPlan | null | undefined {
  const { pieces, gap, margin } = problem;
  const copies = pieces.flatMap((piece) => Array.from({ length: piece.count }, (_, copy) => ({ piece, copy })));
  if (copies.length > MOST_COPIES || stock.flaws.length > 0 || !arePlain(problem, stock)) return undefined;
  const ways = copies.map(({ piece }) => waysOf(piece, gap));
  const room = stock.width - 2 * margin + gap;
  const longest = stock.length === null ? Infinity : stock.length - 2 * margin + gap;
  const alongs = ways.map((all) => [...new Set(all.map(({ along }) => along))]);
  const acrosses = ways.map((all) => [...new Set(all.map(({ across }) => across))]);
  const xs = sumsOf(alongs, Math.min(longest, total(alongs)));
  const ys = sumsOf(acrosses, room);
  const area = ways.reduce((sum, [way]) => sum + way!.along * way!.across, 0);
  const lengths = isPaidWhole ? [longest] : xs;
  // The largest first: what goes wrong goes wrong soon. Copies of one piece stay beside each other.
  const order = copies.map((_, i) => i).sort((a, b) => areaOf(ways[b]!) - areaOf(ways[a]!) || a - b);
  const budget = { places: MOST_PLACES };
  for (const length of lengths) {
    if (length * room < area - SAME) continue;
    const laid = place(order, 0, [], { ways, copies, xs, ys, length, room }, budget);
    if (budget.places <= 0) return undefined;
    if (laid !== null) return planOf(problem, stock, copies, laid);
  }
  return null;
}

function areaOf([way]: readonly Way[]): number {
  return way!.along * way!.across;
}

function arePlain(problem: LayProblem, stock: RollStock): boolean {
  const { region } = stockRegion(stock);
  const { pieces, gap, margin } = problem;
  const looseEdges = { side: true, end: true };
  const goal = region.length === null ? "shortest" : "most";
  return (
    isRectangleJob({ region, pieces, gap, margin, leastStrip: undefined, looseEdges, pinned: [], goal }) &&
    pieces.every((piece) => !isLoose(piece) && piece.orientations.every(({ turnDeg }) => turnDeg % 90 === 0))
  );
}

/** The ways a rectangle may lie that differ in its size along and across. */
function waysOf({ outline, orientations }: LayPiece, gap: number): Way[] {
  const ways: Way[] = [];
  for (const { turnDeg, mirrored } of orientations) {
    const box = ringBox(poseRing(outline.outer, { turnDeg, mirrored, x: 0, y: 0 }));
    const [along, across] = [box.maxX - box.minX + gap, box.maxY - box.minY + gap];
    if (!ways.some((way) => Math.abs(way.along - along) < SAME && Math.abs(way.across - across) < SAME))
      ways.push({ turnDeg, mirrored, along, across, dx: -box.minX, dy: -box.minY });
  }
  return ways;
}

function total(sizes: readonly (readonly number[])[]): number {
  return sizes.reduce((sum, own) => sum + Math.max(...own), 0);
}

/** Sums of one size each of any of the pieces, up to `most`, ascending. */
function sumsOf(sizes: readonly (readonly number[])[], most: number): number[] {
  let sums = [0];
  for (const own of sizes)
    sums = [...sums, ...sums.flatMap((sum) => own.map((size) => sum + size)).filter((sum) => sum <= most + SAME)]
      .sort((a, b) => a - b)
      .filter((sum, i, all) => i === 0 || sum - all[i - 1]! > SAME);
  return sums;
}

interface Desk {
  readonly ways: readonly (readonly Way[])[];
  readonly copies: readonly { readonly piece: LayPiece; readonly copy: number }[];
  readonly xs: readonly number[];
  readonly ys: readonly number[];
  readonly length: number;
  readonly room: number;
}

function place(
  order: readonly number[],
  at: number,
  laid: readonly Laid[],
  desk: Desk,
  budget: { places: number },
): readonly Laid[] | null {
  if (at === order.length) return laid;
  const copy = order[at]!;
  const last = laid.at(-1);
  // Equal copies lie in the order of their places.
  const isTwin = last !== undefined && desk.copies[last.copy]!.piece === desk.copies[copy]!.piece;
  for (const way of desk.ways[copy]!)
    for (const x of desk.xs) {
      if (x + way.along > desk.length + SAME) break;
      if (isTwin && x < last.x - SAME) continue;
      for (const y of desk.ys) {
        if (y + way.across > desk.room + SAME) break;
        if (isTwin && Math.abs(x - last.x) < SAME && y < last.y) continue;
        if (--budget.places <= 0) return null;
        if (laid.some((other) => meets(other, way, x, y))) continue;
        const whole = place(order, at + 1, [...laid, { copy, way, x, y }], desk, budget);
        if (whole !== null || budget.places <= 0) return whole;
      }
    }
  return null;
}

function meets(other: Laid, way: Way, x: number, y: number): boolean {
  return (
    x < other.x + other.way.along - SAME &&
    other.x < x + way.along - SAME &&
    y < other.y + other.way.across - SAME &&
    other.y < y + way.across - SAME
  );
}

function planOf(problem: LayProblem, stock: RollStock, copies: Desk["copies"], laid: readonly Laid[]): LayPlan {
  const { gap, margin } = problem;
  const placements = laid.map(({ copy, way, x, y }) => ({
    ...{ stockId: stock.id, pieceId: copies[copy]!.piece.id, copy: copies[copy]!.copy },
    ...{ x: x + margin + way.dx, y: y + margin + way.dy, turnDeg: way.turnDeg, mirrored: way.mirrored },
  }));
  const usedLength = Math.max(...laid.map(({ x, way }) => x + way.along)) - gap + 2 * margin;
  // Every shorter length has been tried.
  const bound = stock.length === null ? usedLength : null;
  const uses = [{ stockId: stock.id, usedLength, bound }];
  return { materialId: problem.materialId, placements, unplaced: [], uses, evaluations: laid.length, seed: 1 };
}
