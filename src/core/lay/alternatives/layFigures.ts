import { isRectangle, ringBox } from "../../geometry/box.ts";
import { poseRing } from "../../geometry/pose.ts";
import { closeTree, closeWhereFree } from "../boxes/cuts/closeTree.ts";
import { type CutSequence, cutSequence } from "../boxes/cuts/cutSequence.ts";
import { type CutBox, type CutTree, cutTreeOf, stageCount } from "../boxes/cuts/cutTree.ts";
import { largestFreeBox } from "../boxes/cuts/largestFreeBox.ts";
import { narrowStrips } from "../boxes/cuts/narrowStrips.ts";
import { tidyTree } from "../boxes/cuts/tidyTree.ts";
import { outsideBoxes } from "../boxes/ruler/parted/outsideBoxes.ts";
import { apartOn, isMatched } from "../problem/lattice.ts";
import type { LayMatch, LayPlan, LayProblem, Stock, StockPlacement } from "../problem/layProblem.ts";
import { lengthUsed } from "../problem/planSums.ts";

/** mm within which an edge counts as cut through, and within which a place on the pattern is the same. */
const TOLERANCE = 1e-3;
const ROUNDING = 1e-5;

/** A strip narrower than this is no useful offcut, mm: less than a narrow strap's strip. */
export const LEAST_OFFCUT = 60;

/** How one stock is cut with a ruler. */
export interface RulerCuts {
  readonly stockId: string;
  /** Edge that is cut off first at the end and along one side, mm. */
  readonly margin: number;
  /** The cloth has no straight edge to measure from. */
  readonly bare: boolean;
  readonly tree: CutTree;
  readonly sequence: CutSequence;
  /** Strips narrower than the problem's least that the cuts take off. */
  readonly narrow: readonly CutBox[];
  /** What each number in the tree stands for. */
  readonly placements: readonly StockPlacement[];
}

/** What a maker weighs one plan against another by. */
export interface LayFigures {
  /** Cloth used of all stocks, mm. */
  readonly length: number;
  /** Null when straight cuts from edge to edge do not part the pieces. */
  readonly ruler: {
    readonly cuts: number;
    readonly settings: number;
    /** Most turns between crosscuts and rips. */
    readonly stages: number;
    /** Strips narrower than the problem's least that the cuts take off. */
    readonly narrow: number;
  } | null;
  /** Largest useful rectangle left on the cloth used. */
  readonly offcut: { readonly stockId: string; readonly box: CutBox } | null;
}

/** Figures of a plan; pieces with curved edges count as their boxes. */
export function layFigures(problem: LayProblem, plan: LayPlan): LayFigures {
  const cuts = rulerCuts(problem, plan);
  return {
    length: lengthUsed(plan),
    ruler: cuts && {
      cuts: cuts.reduce((sum, { sequence }) => sum + sequence.cuts, 0),
      settings: cuts.reduce((sum, { sequence }) => sum + sequence.settings, 0),
      stages: cuts.reduce((most, { tree }) => Math.max(most, stageCount(tree)), 0),
      narrow: cuts.reduce((sum, { narrow }) => sum + narrow.length, 0),
    },
    offcut: largestOffcut(problem, plan),
  };
}

/**
 * The ruler cuts of every stock a plan touches; null when one of them cannot be cut edge to edge.
 *
 * A ruler cut takes no cloth away, so the cutting gap is not cut out: pieces are measured from fresh edge to fresh
 * edge and what the gaps came to is left at the end. The tree's boxes say where pieces come to lie then. It starts
 * inside the edge margin.
 */
export function rulerCuts(problem: LayProblem, plan: LayPlan): readonly RulerCuts[] | null {
  const all: RulerCuts[] = [];
  const { margin } = problem;
  for (const stock of problem.stocks) {
    const placements = plan.placements.filter(({ stockId }) => stockId === stock.id);
    if (placements.length === 0) continue;
    const used = usedBox(stock, plan);
    // Pieces must not come to lie on a flaw, beside cloth that is missing, off their pins or off the pattern. Pins in every piece keep
    // a whole plan that was taken: its pieces close up as they would have before it was.
    const pins = problem.pinned.filter(({ stockId }) => stockId === stock.id).length;
    const isHeld = isMatched(problem) && placements.some(({ pieceId }) => matchOf(problem, pieceId) !== undefined);
    // Halves begin at the fold itself, all else keeps the margin from it.
    const hasHalves = placements.some(({ pieceId }) => isHalf(problem, pieceId));
    const stays =
      stock.flaws.length > 0 || !isStraight(stock) || (pins > 0 && pins < placements.length) || isHeld || hasHalves;
    const free = pins === placements.length ? { ...problem, pinned: [] } : problem;
    const isRoll = stock.kind === "roll";
    const goesOn = isRoll && (stock.length === null || stock.length > used.dx - margin + TOLERANCE);
    const beyond = goesOn ? 2 * margin : margin;
    const inset = hasHalves ? 0 : margin;
    const box = { x: used.x + margin, y: used.y + inset, dx: used.dx - beyond, dy: used.dy - inset };
    const laid = boxesOf(problem, placements);
    const tree = cutTreeOf(box, laid, TOLERANCE);
    if (tree === null) return null;
    const isOpenTo = mayLieOn(stock, free, placements);
    const mayLie = (piece: number, at: CutBox): boolean =>
      isOpenTo(piece, at) &&
      keepsPattern(problem, placements[piece]!, laid[piece]!, at) &&
      (!hasHalves || keepsFold(problem, placements[piece]!, at));
    const tidy = stays
      ? closeWhereFree(tree, goesOn, TOLERANCE, mayLie)
      : closeTree(tidyTree(tree, TOLERANCE), goesOn, TOLERANCE);
    all.push({
      stockId: stock.id,
      margin,
      bare: !isStraight(stock),
      tree: tidy,
      sequence: cutSequence(tidy, goesOn),
      narrow: narrowStrips(tidy, problem.leastStrip ?? 0, { side: isRoll, end: isRoll }, TOLERANCE),
      placements,
    });
  }
  return all;
}

/** Whether a piece may come to lie in a box of a stock: clear of flaws and missing cloth; a pinned one stays. */
function mayLieOn(
  stock: Stock,
  { gap, margin, pinned }: LayProblem,
  placements: readonly StockPlacement[],
): (piece: number, box: CutBox) => boolean {
  const flaws = stock.flaws.map(({ outer }) => [boxOf(ringBox(outer)), gap] as const);
  const missing =
    stock.kind === "roll" || isStraight(stock)
      ? []
      : outsideBoxes(stock.outline).map((box) => [box, margin] as const);
  const isPinned = ({ pieceId, copy }: StockPlacement): boolean =>
    pinned.some((pin) => pin.pieceId === pieceId && pin.copy === copy);
  return (piece, box) =>
    !isPinned(placements[piece]!) && [...flaws, ...missing].every(([other, apart]) => isApart(box, other, apart));
}

function isHalf({ pieces }: Pick<LayProblem, "pieces">, pieceId: string): boolean {
  return pieces.find(({ id }) => id === pieceId)!.gives?.onFold === true;
}

/** Whether a half lies on the fold of its cloth, and any other piece clear of it. */
function keepsFold(problem: LayProblem, { pieceId }: StockPlacement, { y }: CutBox): boolean {
  return isHalf(problem, pieceId) ? Math.abs(y) <= TOLERANCE : y >= problem.margin - TOLERANCE;
}

/** Whether a piece that is moved lies on the pattern as it did: whole repeats away, in dropped rows half of one besides. */
function keepsPattern(
  { pieces, pattern }: LayProblem,
  { pieceId }: StockPlacement,
  was: CutBox,
  is: CutBox,
): boolean {
  const match = matchOf({ pieces }, pieceId);
  if (match === undefined || pattern === undefined) return true;
  const { along, across, halfDrop } = pattern;
  const isOff = (moved: number, period: number): boolean => apartOn(moved, 0, period) > ROUNDING;
  if (match.across && across !== null && isOff(is.y - was.y, across)) return false;
  if (!match.along || along === null) return true;
  const rows = halfDrop && across !== null ? Math.round((is.y - was.y) / across) : 0;
  return !isOff(is.x - was.x - (rows * along) / 2, along);
}

function matchOf({ pieces }: Pick<LayProblem, "pieces">, pieceId: string): LayMatch | undefined {
  return pieces.find(({ id }) => id === pieceId)!.match;
}

function isApart(a: CutBox, b: CutBox, by: number): boolean {
  const apart = by - TOLERANCE;
  const clear = (from: number, size: number, other: number, otherSize: number): boolean =>
    from >= other + otherSize + apart || other >= from + size + apart;
  return clear(a.x, a.dx, b.x, b.dx) || clear(a.y, a.dy, b.y, b.dy);
}

function largestOffcut(problem: LayProblem, plan: LayPlan): LayFigures["offcut"] {
  let best: LayFigures["offcut"] = null;
  for (const stock of problem.stocks) {
    const box = usedBox(stock, plan);
    if (box.dx <= 0 || !isStraight(stock)) continue;
    const laid = plan.placements.filter(({ stockId }) => stockId === stock.id);
    const flaws = stock.flaws.map(({ outer }) => boxOf(ringBox(outer)));
    const free = largestFreeBox(box, [...boxesOf(problem, laid), ...flaws], LEAST_OFFCUT);
    if (free !== null && (best === null || free.dx * free.dy > best.box.dx * best.box.dy))
      best = { stockId: stock.id, box: free };
  }
  return best;
}

/** The rectangle of a stock that a plan uses up: the length of a roll, the box round any other cloth. */
function usedBox(stock: Stock, plan: LayPlan): CutBox {
  if (stock.kind === "roll") {
    const used = plan.uses.find(({ stockId }) => stockId === stock.id)?.usedLength ?? 0;
    return { x: 0, y: 0, dx: used, dy: stock.width };
  }
  return boxOf(ringBox(stock.outline.outer));
}

/** Whether a stock is a whole rectangle. */
function isStraight(stock: Stock): boolean {
  if (stock.kind === "roll") return true;
  return stock.outline.holes.length === 0 && isRectangle(stock.outline.outer, TOLERANCE);
}

function boxesOf(problem: LayProblem, placements: readonly StockPlacement[]): CutBox[] {
  const outlines = new Map(problem.pieces.map(({ id, outline }) => [id, outline.outer]));
  return placements.map((placement) => boxOf(ringBox(poseRing(outlines.get(placement.pieceId)!, placement))));
}

function boxOf(box: ReturnType<typeof ringBox>): CutBox {
  return { x: box.minX, y: box.minY, dx: box.maxX - box.minX, dy: box.maxY - box.minY };
}
