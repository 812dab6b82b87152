import type { LeftOut } from "../../../problems/layProblems.ts";
import { piecesOf } from "../../problem/layerSums.ts";
import type { LayPiece, LayPlan, LayProblem, RollStock, Unplaced } from "../../problem/layProblem.ts";
import { widthOnPattern } from "../../problem/patternRoom.ts";
import { fitsBox, pieceExtents } from "../../problem/pieceExtent.ts";
import { inOneGo } from "../breath.ts";
import { arrange } from "./arrange.ts";
import type { ChooseEngines } from "./layingDesk.ts";

/** Evaluations spent on how much more roll the left-out pieces need. */
const EFFORT = 200_000;

/**
 * What was left out of a plan, why, and what would help: a wider roll, the other straight way, more of the roll.
 * Lays the left-out pieces on an open roll for that; some tens of milliseconds.
 */
export function whyUnplaced(problem: LayProblem, plan: LayPlan, engines: ChooseEngines): LeftOut[] {
  const isTooShort = plan.unplaced.some(({ reason }) => reason === "band-too-short");
  const more = isTooShort ? bandOfOneBag(problem, plan, engines) : moreLength(problem, plan, engines);
  return plan.unplaced.map((left) => leftOut(problem, left, more));
}

function leftOut(problem: LayProblem, { pieceId, count, reason }: Unplaced, more: number | null): LeftOut {
  const index = problem.pieces.findIndex((piece) => piece.id === pieceId);
  const piece = problem.pieces[index]!;
  // Of several layers, what is told is how many pieces are missing, not how many copies.
  const common = { path: `pieces.${pieceId}`, pieceId, count: piecesOf(problem, pieceId, count) };
  const extents = pieceExtents(piece);
  const narrowest = extents.reduce((least, extent) => (extent.across < least.across ? extent : least));
  if (reason === "no-stock") return { code: "piece-no-stock", ...common };
  if (reason === "band-too-short")
    return { code: "piece-band-too-short", ...common, bandMm: problem.shade!.band, neededMm: more };
  if (reason === "stock-used-up") return { code: "piece-stock-used-up", ...common, moreLengthMm: more };
  if (reason === "too-large-for-stock")
    return { code: "piece-too-large-for-stock", ...common, alongMm: narrowest.along, acrossMm: narrowest.across };
  if (reason === "no-room-on-pattern") {
    const widths = rollsOf(problem).map((roll) => widthOnPattern(piece, roll, problem) ?? 0);
    return {
      code: "piece-no-room-on-pattern",
      ...common,
      neededWidthMm: Math.min(...widths),
      widestMm: widestOf(problem),
    };
  }
  return {
    code: "piece-too-long-for-width",
    ...common,
    neededWidthMm: narrowest.across + 2 * problem.margin,
    widestMm: widestOf(problem),
    fitsTurned: problem.stocks.some((stock) => fitsBox(pieceExtents(turnedToo(piece)), stock, problem.margin)),
  };
}

/** The piece as if it might also lie the other straight way. */
function turnedToo(piece: LayPiece): LayPiece {
  const turned = piece.orientations.map(({ turnDeg, mirrored }) => ({ turnDeg: (turnDeg + 90) % 360, mirrored }));
  return { ...piece, orientations: [...piece.orientations, ...turned] };
}

/** Length of the last roll on which the parts of one bag have been laid, edge margins left out; null without a roll. */
function bandOfOneBag({ shade, ...problem }: LayProblem, { seed }: LayPlan, engines: ChooseEngines): number | null {
  const last = rollsOf(problem).at(-1);
  if (!last || shade === undefined) return null;
  const pieces = problem.pieces.map((piece) => ({ ...piece, count: piece.count / shade.bags }));
  const stock: RollStock = { ...last, length: null, flaws: [] };
  const one: LayProblem = { ...problem, pieces, stocks: [stock], pinned: [] };
  const { unplaced, uses } = inOneGo(arrange(one, engines, { evaluations: EFFORT }, seed));
  return unplaced.length === 0 ? uses[0]!.usedLength - 2 * problem.margin : null;
}

/** Length of the last roll's width that takes every piece that was left out for want of room; null without a roll. */
function moreLength(problem: LayProblem, plan: LayPlan, engines: ChooseEngines): number | null {
  const last = rollsOf(problem).at(-1);
  const wanted = new Map(
    plan.unplaced.filter(({ reason }) => reason === "stock-used-up").map(({ pieceId, count }) => [pieceId, count]),
  );
  if (!last || wanted.size === 0) return null;
  const stock: RollStock = { ...last, length: null, flaws: [] };
  const pieces = problem.pieces.flatMap((piece) => {
    const count = wanted.get(piece.id);
    return count === undefined ? [] : [{ ...piece, count }];
  });
  const rest: LayProblem = { ...problem, pieces, stocks: [stock], pinned: [], shade: undefined };
  const { unplaced, uses } = inOneGo(arrange(rest, engines, { evaluations: EFFORT }, plan.seed));
  return unplaced.length === 0 ? uses[0]!.usedLength : null;
}

function rollsOf(problem: LayProblem): RollStock[] {
  return problem.stocks.filter((stock): stock is RollStock => stock.kind === "roll");
}

function widestOf(problem: LayProblem): number {
  return Math.max(...rollsOf(problem).map((roll) => roll.width));
}
