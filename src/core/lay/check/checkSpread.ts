import type { LayFinding } from "../../problems/layProblems.ts";
import type { AskedPiece, LayPiece, LayPlan, LayProblem, LaySpread } from "../problem/layProblem.ts";
import { type CheckedCopy, copyName, type LaidOutline, laidOutline } from "./laidOutline.ts";
import { overlapArea } from "./overlapArea.ts";
import { lengthTolerance } from "./tolerance.ts";

/** Share of its area by which a piece may differ from its mirror image and still be as good either way. */
const SAME_SHARE = 2e-5;

/**
 * Whether all layers together give every piece as often and of the hand that it is asked for, with no copy laid that
 * is not needed; and whether each piece gives what that many layers can give: as many as drawn face up, half of them
 * mirrored face to face, one where it lies on the fold.
 */
export function checkYields(problem: LayProblem, plan: LayPlan): LayFinding[] {
  const { spread, pieces } = problem;
  if (spread === undefined) return [];
  const untrue = pieces.flatMap((piece, index): LayFinding[] =>
    isTrue(piece, spread) ? [] : [{ code: "plan-hands-untrue", path: `pieces[${index}]`, pieceId: piece.id }],
  );
  const counted = spread.asked.flatMap((asked, index): LayFinding[] => {
    const given = pieces
      .filter(({ gives }) => gives?.of === asked.pieceId)
      .map((piece) => ({ gives: piece.gives!, copies: copiesOf(plan, piece.id) }));
    return countFaults(asked, given, `spread.asked[${index}]`);
  });
  return [...untrue, ...counted];
}

interface Given {
  readonly gives: NonNullable<LayPiece["gives"]>;
  readonly copies: number;
}

function countFaults(asked: AskedPiece, given: readonly Given[], path: string): LayFinding[] {
  const sum = (hand: "asDrawn" | "mirrored"): number =>
    given.reduce((all, { gives, copies }) => all + copies * gives[hand], 0);
  const of = { "as-drawn": sum("asDrawn"), mirrored: sum("mirrored") };
  const wanted = { "as-drawn": asked.asDrawn, mirrored: asked.mirrored };
  const short = (["as-drawn", "mirrored"] as const).filter((hand) => of[hand] < wanted[hand]);
  const fault = (hand: "as-drawn" | "mirrored"): LayFinding => ({
    code: "plan-layers-miscounted",
    path,
    pieceId: asked.pieceId,
    hand,
    wanted: wanted[hand],
    given: of[hand],
  });
  if (short.length > 0) return short.map(fault);
  const spare = given.some(
    ({ gives, copies }) =>
      copies > 0 &&
      of["as-drawn"] - gives.asDrawn >= asked.asDrawn &&
      of.mirrored - gives.mirrored >= asked.mirrored,
  );
  return spare ? [fault(of["as-drawn"] > asked.asDrawn ? "as-drawn" : "mirrored")] : [];
}

/** Copies of a piece that the plan names, laid or left out. */
function copiesOf({ placements, unplaced }: LayPlan, pieceId: string): number {
  const laid = placements.filter((placement) => placement.pieceId === pieceId).length;
  return unplaced.reduce((sum, left) => sum + (left.pieceId === pieceId ? left.count : 0), laid);
}

function isTrue(piece: LayPiece, { layers, faces, folded, facesAlike }: LaySpread): boolean {
  const { gives } = piece;
  if (gives === undefined) return false;
  const { asDrawn, mirrored, onFold } = gives;
  if (onFold) return folded && asDrawn === 1 && mirrored === 0;
  if (faces === "up") return (asDrawn === layers && mirrored === 0) || (asDrawn === 0 && mirrored === layers);
  if (asDrawn === layers / 2 && mirrored === layers / 2) return true;
  return asDrawn === layers && mirrored === 0 && (facesAlike || isOwnMirrorImage(piece));
}

/** Whether a piece covers its own mirror image: across its arrow's line, or across the other where it may be turned. */
function isOwnMirrorImage({ outline, orientations, freeTurn }: LayPiece): boolean {
  const plain = laidOutline(outline, { x: 0, y: 0, turnDeg: 0, mirrored: false });
  const turns = orientations.map(({ turnDeg }) => turnDeg);
  const mayTurn = freeTurn || turns.some((a) => turns.some((b) => Math.abs(a - b) === 180));
  return (mayTurn ? [180, 0] : [180]).some((turnDeg) => {
    const over = laidOutline(outline, { x: 0, y: 0, turnDeg, mirrored: true });
    const pose = { x: plain.minX - over.minX, y: plain.minY - over.minY, turnDeg, mirrored: true };
    return overlapArea(plain, laidOutline(outline, pose)) >= (1 - SAME_SHARE) * plain.area;
  });
}

/** Half pieces that do not lie with their whole fold edge on the fold of a folded roll. */
export function checkFold({ pieces, spread }: LayProblem, copies: readonly CheckedCopy[]): LayFinding[] {
  if (spread === undefined) return [];
  const halves = new Map(pieces.filter(({ gives }) => gives?.onFold === true).map((piece) => [piece.id, piece]));
  return copies.flatMap((copy): LayFinding[] => {
    const half = halves.get(copy.placement.pieceId);
    if (half === undefined) return [];
    const tolerance = lengthTolerance(copy.outline);
    const own = lengthAt(laidOutline(half.outline, { x: 0, y: 0, turnDeg: 0, mirrored: false }), tolerance);
    const isRoll = copy.stock.kind === "roll" && copy.stock.folded === true;
    if (isRoll && own > 0 && lengthAt(copy.outline, tolerance) >= own - tolerance) return [];
    const distanceMm = Math.abs(copy.outline.minY);
    return [{ code: "plan-off-fold", path: copy.path, ...copyName(copy), distanceMm }];
  });
}

/** Length of the edges that run along y = 0. */
function lengthAt({ edges }: LaidOutline, tolerance: number): number {
  let length = 0;
  for (let i = 0; i < edges.length; i += 4)
    if (Math.abs(edges[i + 1]!) <= tolerance && Math.abs(edges[i + 3]!) <= tolerance)
      length += edges[i + 2]! - edges[i]!;
  return length;
}
