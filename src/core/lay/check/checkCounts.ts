import type { LayFinding } from "../../problems/layProblems.ts";
import type { LayPiece, LayPlan, LayProblem } from "../problem/layProblem.ts";

/** Copies laid twice or never asked for, pieces whose placed and left-out copies do not add up, and moved pins. */
export function checkCounts(problem: LayProblem, plan: LayPlan): LayFinding[] {
  const pieces = new Map(problem.pieces.map((piece) => [piece.id, piece]));
  return [...checkCopies(pieces, plan), ...checkSums(problem, plan), ...checkPins(problem, plan)];
}

function checkCopies(pieces: ReadonlyMap<string, LayPiece>, plan: LayPlan): LayFinding[] {
  const findings: LayFinding[] = [];
  const seen = new Map<string, Set<number>>();
  for (const [index, { pieceId, copy }] of plan.placements.entries()) {
    const path = `placements[${index}]`;
    const piece = pieces.get(pieceId);
    if (!piece) {
      findings.push({ code: "plan-unknown-piece", path, pieceId });
      continue;
    }
    if (!Number.isInteger(copy) || copy < 0 || copy >= piece.count)
      findings.push({ code: "plan-copy-unknown", path, pieceId, copy, count: piece.count });
    const copies = seen.get(pieceId) ?? new Set();
    if (copies.has(copy)) findings.push({ code: "plan-copy-twice", path, pieceId, copy });
    seen.set(pieceId, copies.add(copy));
  }
  for (const [index, { pieceId }] of plan.unplaced.entries())
    if (!pieces.has(pieceId)) findings.push({ code: "plan-unknown-piece", path: `unplaced[${index}]`, pieceId });
  return findings;
}

function checkSums(problem: LayProblem, plan: LayPlan): LayFinding[] {
  const placed = new Map<string, number>();
  const unplaced = new Map<string, number>();
  for (const { pieceId } of plan.placements) placed.set(pieceId, (placed.get(pieceId) ?? 0) + 1);
  for (const { pieceId, count } of plan.unplaced) unplaced.set(pieceId, (unplaced.get(pieceId) ?? 0) + count);
  return problem.pieces.flatMap((piece, index): LayFinding[] => {
    const counts = { placed: placed.get(piece.id) ?? 0, unplaced: unplaced.get(piece.id) ?? 0 };
    const told = plan.unplaced.filter(({ pieceId }) => pieceId === piece.id);
    const whole = told.every(({ count }) => Number.isInteger(count) && count >= 0);
    return whole && counts.placed + counts.unplaced === piece.count
      ? []
      : [{ code: "plan-miscounted", path: `pieces[${index}]`, pieceId: piece.id, wanted: piece.count, ...counts }];
  });
}

function checkPins(problem: LayProblem, plan: LayPlan): LayFinding[] {
  const laid = new Map(plan.placements.map((placement) => [`${placement.copy} ${placement.pieceId}`, placement]));
  return problem.pinned.flatMap((pin, index): LayFinding[] => {
    const { pieceId, copy } = pin;
    const now = laid.get(`${copy} ${pieceId}`);
    const kept =
      now !== undefined &&
      now.stockId === pin.stockId &&
      now.mirrored === pin.mirrored &&
      now.x === pin.x &&
      now.y === pin.y &&
      (now.turnDeg - pin.turnDeg) % 360 === 0;
    return kept ? [] : [{ code: "plan-pin-moved", path: `pinned[${index}]`, pieceId, copy }];
  });
}
