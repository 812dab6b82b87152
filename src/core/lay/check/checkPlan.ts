import type { LayFinding } from "../../problems/layProblems.ts";
import type { LayPiece, LayPlan, LayProblem, StockPlacement, StockUse } from "../problem/layProblem.ts";
import { checkCounts } from "./checkCounts.ts";
import { checkPairs } from "./checkPairs.ts";
import { checkPattern } from "./checkPattern.ts";
import { checkOneWay, checkShade } from "./checkShade.ts";
import { checkFold, checkYields } from "./checkSpread.ts";
import { checkStock, measuredLength } from "./checkStock.ts";
import { type CheckedCopy, laidOutline } from "./laidOutline.ts";

/** Turns that differ by less are the same turn, in degrees. */
const SAME_TURN = 1e-9;
/** Share by which a told length may differ from the measured one. */
const SAME_LENGTH = 1e-6;

/**
 * Every fault of a plan, found from the problem and the placements alone.
 *
 * Independent: shares nothing with the search or its geometry, not even how a piece is turned. Looks at the count
 * of every piece, allowed turns (grain, one-way, mirroring), overlaps, the gap as the true distance between
 * outlines, the stock's edge and margin, flaws, pins, the cloth's pattern under what is matched, the way that all lie, the band of each bag, what comes of several
 * layers that are cut at once and what lies on the fold, and whether the told lengths and bounds agree with what lies
 * there. Tolerances are tied to the smaller piece: a millionth of its area, a millionth of its diagonal.
 *
 * Cost: near linear: a sweep along the cloth compares each copy with those beside it only. Processor time measured on
 * one core: 0.02 to 0.08 ms a copy for 1,000 and 10,000 copies that touch, boxes and 60-point rounds alike.
 */
export function checkPlan(problem: LayProblem, plan: LayPlan): LayFinding[] {
  const findings = [...checkCounts(problem, plan), ...checkYields(problem, plan)];
  const copies: CheckedCopy[] = [];
  const halves = new Set(problem.pieces.flatMap(({ id, gives }) => (gives?.onFold === true ? [id] : [])));
  const pieces = new Map(problem.pieces.map((piece) => [piece.id, piece]));
  const stocks = new Map(problem.stocks.map((stock) => [stock.id, stock]));
  for (const [index, placement] of plan.placements.entries()) {
    const path = `placements[${index}]`;
    const { pieceId, copy, stockId, turnDeg, mirrored } = placement;
    const piece = pieces.get(pieceId);
    const stock = stocks.get(stockId);
    if (!stock) findings.push({ code: "plan-unknown-stock", path, stockId });
    if (!piece) continue;
    if (![placement.x, placement.y, turnDeg].every(Number.isFinite)) {
      findings.push({ code: "plan-pose-unreadable", path, pieceId, copy });
      continue;
    }
    if (!turnAllowed(piece, placement))
      findings.push({ code: "plan-turn-not-allowed", path, pieceId, copy, turnDeg, mirrored });
    if (stock) copies.push({ path, placement, stock, outline: laidOutline(piece.outline, placement) });
  }
  for (const stock of problem.stocks) {
    const here = copies.filter((copy) => copy.stock === stock);
    findings.push(
      ...checkPairs(here, problem.gap),
      ...checkStock(stock, here, problem.gap, problem.margin, halves),
    );
    const measured = measuredLength(stock, here, problem.margin);
    for (const [index, use] of plan.uses.entries())
      if (use.stockId === stock.id) findings.push(...checkUse(use, `uses[${index}]`, measured));
  }
  findings.push(...checkPattern(problem, copies));
  findings.push(...checkOneWay(problem, copies), ...checkShade(problem, copies));
  findings.push(...checkFold(problem, copies));
  for (const [index, { stockId }] of plan.uses.entries())
    if (!stocks.has(stockId)) findings.push({ code: "plan-unknown-stock", path: `uses[${index}]`, stockId });
  return findings;
}

function turnAllowed(piece: LayPiece, placement: StockPlacement): boolean {
  return piece.orientations.some(({ turnDeg, mirrored }) => {
    if (mirrored !== placement.mirrored) return false;
    const apart = Math.abs(turnDeg - placement.turnDeg) % 360;
    return piece.freeTurn || Math.min(apart, 360 - apart) <= (piece.tilt ?? 0) + SAME_TURN;
  });
}

function checkUse(use: StockUse, path: string, measuredMm: number): LayFinding[] {
  const { stockId, usedLength, bound } = use;
  const slack = SAME_LENGTH * Math.max(1, measuredMm);
  const findings: LayFinding[] = [];
  if (!(Math.abs(usedLength - measuredMm) <= slack))
    findings.push({ code: "plan-length-untrue", path, stockId, toldMm: usedLength, measuredMm });
  if (bound !== null && !(bound <= measuredMm + slack))
    findings.push({ code: "plan-bound-untrue", path, stockId, boundMm: bound, measuredMm });
  return findings;
}
