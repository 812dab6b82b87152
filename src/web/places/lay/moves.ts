import { pieceKey } from "../../../core/drawing/list/drawing.ts";
import { type Box, ringBox } from "../../../core/geometry/box.ts";
import { type Pose, poseRing } from "../../../core/geometry/pose.ts";
import { checkPlan } from "../../../core/lay/check/checkPlan.ts";
import type { LayPlan, LayProblem, Stock, StockPlacement } from "../../../core/lay/problem/layProblem.ts";
import type { LayFinding } from "../../../core/problems/layProblems.ts";

/** Findings that speak of where one piece lies; the rest speak of a whole plan. */
const ABOUT_PLACE: ReadonlySet<LayFinding["code"]> = new Set<LayFinding["code"]>([
  "plan-turn-not-allowed",
  "plan-overlap",
  "plan-too-close",
  "plan-outside-stock",
  "plan-too-near-edge",
  "plan-on-flaw",
  "plan-too-near-flaw",
]);

/** Key of a placement: `piece#copy`. */
export function keyOf({ pieceId, copy }: { readonly pieceId: string; readonly copy: number }): string {
  return pieceKey(pieceId, copy);
}

/** Box of a piece where it lies, mm. Cost O(points). */
export function placedBox(problem: LayProblem, placement: StockPlacement): Box {
  const piece = problem.pieces.find(({ id }) => id === placement.pieceId);
  return piece === undefined
    ? { minX: 0, minY: 0, maxX: 0, maxY: 0 }
    : ringBox(poseRing(piece.outline.outer, placement));
}

/**
 * Why a piece may not lie where it is: the independent checker, asked about this piece and the ones `near` it on the
 * same stock. Empty when the place is good.
 */
export function placeTroubles(
  problem: LayProblem,
  placement: StockPlacement,
  near: readonly StockPlacement[],
): readonly LayFinding[] {
  const placements = [placement, ...near];
  const ids = new Set(placements.map(({ pieceId }) => pieceId));
  const part: LayProblem = {
    ...problem,
    pieces: problem.pieces.filter(({ id }) => ids.has(id)),
    stocks: problem.stocks.filter(({ id }) => id === placement.stockId),
    pinned: [],
  };
  const plan: LayPlan = {
    materialId: problem.materialId,
    placements,
    unplaced: [],
    uses: [],
    evaluations: 0,
    seed: 0,
  };
  return checkPlan(part, plan).filter((finding) => ABOUT_PLACE.has(finding.code) && concerns(finding, placement));
}

function concerns(finding: LayFinding, { pieceId, copy }: StockPlacement): boolean {
  const names = [finding, "other" in finding ? finding.other : null];
  return names.some(
    (name) =>
      name !== null && "pieceId" in name && "copy" in name && name.pieceId === pieceId && name.copy === copy,
  );
}

/**
 * A place with its edges drawn to those of its neighbours and of the cloth, when they are within `reach` mm;
 * pieces keep the gap, and the margin from the edge.
 */
export function snapped(
  problem: LayProblem,
  stock: Stock,
  placement: StockPlacement,
  neighbours: readonly Box[],
  reach: number,
): StockPlacement {
  const box = placedBox(problem, placement);
  const { gap, margin } = problem;
  const ends =
    stock.kind === "roll"
      ? { minX: 0, minY: 0, maxX: stock.length ?? Infinity, maxY: stock.width }
      : ringBox(stock.outline.outer);
  const xs = [ends.minX + margin - box.minX, ends.maxX - margin - box.maxX];
  const ys = [ends.minY + margin - box.minY, ends.maxY - margin - box.maxY];
  for (const other of neighbours) {
    const besideX = box.minX < other.maxX + reach + gap && other.minX < box.maxX + reach + gap;
    const besideY = box.minY < other.maxY + reach + gap && other.minY < box.maxY + reach + gap;
    if (besideY)
      xs.push(
        other.maxX + gap - box.minX,
        other.minX - gap - box.maxX,
        other.minX - box.minX,
        other.maxX - box.maxX,
      );
    if (besideX)
      ys.push(
        other.maxY + gap - box.minY,
        other.minY - gap - box.maxY,
        other.minY - box.minY,
        other.maxY - box.maxY,
      );
  }
  return { ...placement, x: placement.x + nearest(xs, reach), y: placement.y + nearest(ys, reach) };
}

function nearest(shifts: readonly number[], reach: number): number {
  let best = 0;
  let least = reach;
  for (const shift of shifts) {
    if (Math.abs(shift) >= least) continue;
    least = Math.abs(shift);
    best = shift;
  }
  return best;
}

/** The piece in its next allowed orientation, turned about the middle of its box. */
export function turned(problem: LayProblem, placement: StockPlacement): StockPlacement {
  const piece = problem.pieces.find(({ id }) => id === placement.pieceId);
  if (piece === undefined || piece.orientations.length < 2) return placement;
  const now = piece.orientations.findIndex(
    ({ turnDeg, mirrored }) => turnDeg === placement.turnDeg && mirrored === placement.mirrored,
  );
  const next = piece.orientations[(now + 1) % piece.orientations.length]!;
  const before = placedBox(problem, placement);
  const pose: Pose = { ...next, x: placement.x, y: placement.y };
  const after = ringBox(poseRing(piece.outline.outer, pose));
  return {
    ...placement,
    ...next,
    x: placement.x + (before.minX + before.maxX - after.minX - after.maxX) / 2,
    y: placement.y + (before.minY + before.maxY - after.minY - after.maxY) / 2,
  };
}

/** The plan with one placement replaced (moved, turned, or taken to another stock). */
export function withPlacement(plan: LayPlan, placement: StockPlacement): LayPlan {
  const key = keyOf(placement);
  return { ...plan, placements: plan.placements.map((other) => (keyOf(other) === key ? placement : other)) };
}

/** The placed piece nearest to another in a direction on the table, or null. */
export function neighbourOf(
  key: string,
  boxes: ReadonlyMap<string, Box>,
  direction: readonly [number, number],
): string | null {
  const from = boxes.get(key);
  if (from === undefined) return boxes.keys().next().value ?? null;
  let best: string | null = null;
  let least = Infinity;
  for (const [other, box] of boxes) {
    if (other === key) continue;
    const dx = (box.minX + box.maxX - from.minX - from.maxX) / 2;
    const dy = (box.minY + box.maxY - from.minY - from.maxY) / 2;
    const ahead = dx * direction[0] + dy * direction[1];
    if (ahead <= 1e-6) continue;
    const aside = Math.abs(dx * direction[1]) + Math.abs(dy * direction[0]);
    const score = ahead + 2.5 * aside;
    if (score < least) {
      least = score;
      best = other;
    }
  }
  return best;
}

/** Keys of the pieces that the maker has pinned; halves that the fold itself holds are not among them. */
export function pinnedKeys({ pieces, pinned }: LayProblem): ReadonlySet<string> {
  const halves = new Set(pieces.flatMap(({ id, gives }) => (gives?.onFold === true ? [id] : [])));
  return new Set(pinned.filter(({ pieceId }) => !halves.has(pieceId)).map(keyOf));
}
