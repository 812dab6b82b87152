import { polygonArea } from "../../geometry/ring.ts";
import type { LayPiece, LayPlan, LayProblem } from "../problem/layProblem.ts";
import { copiesLeftOut } from "../problem/planSums.ts";
import type { RegionPlan } from "../problem/region.ts";

/** What a plan is chosen for. */
export const CHOICES = ["shortest", "easiest", "offcut"] as const;

export type ChoiceFor = (typeof CHOICES)[number];

/** Shares of area or length that differ by less are the same. */
const SAME = 1e-9;

/** Area of the copies a plan leaves out, mm²; `left` by piece index. */
function areaLeft(pieces: readonly LayPiece[], left: readonly number[]): number {
  return pieces.reduce((sum, piece, i) => sum + (left[i] ? left[i]! * polygonArea(piece.outline) : 0), 0);
}

/** Area of the pieces that a plan leaves out, mm². */
export function areaLeftOut({ pieces }: LayProblem, plan: LayPlan): number {
  return areaLeft(
    pieces,
    pieces.map(({ id }) => copiesLeftOut(plan, id)),
  );
}

/** Whether a region plan is better: less area left out, then shorter with its toll. Any plan is better than none. */
export function isBetterRegionPlan(
  pieces: readonly LayPiece[],
  candidate: RegionPlan,
  best: RegionPlan | null,
): boolean {
  if (best === null) return true;
  const [mine, theirs] = [areaLeft(pieces, candidate.left), areaLeft(pieces, best.left)];
  if (differs(mine, theirs)) return mine < theirs;
  const [long, other] = [candidate.length + (candidate.toll ?? 0), best.length + (best.toll ?? 0)];
  return differs(long, other) && long < other;
}

/**
 * Whether a plan is better: less area left out, then less bought from open rolls, then less of the last stock that
 * is touched, tolls counted as length, then the better bound. Any plan is better than none.
 */
export function isBetterPlan(problem: LayProblem, candidate: LayPlan, best: LayPlan | null): boolean {
  if (best === null) return true;
  const mine = scoreOf(problem, candidate);
  const theirs = scoreOf(problem, best);
  const at = mine.findIndex((value, i) => differs(value, theirs[i]!));
  return at >= 0 && mine[at]! < theirs[at]!;
}

function scoreOf(problem: LayProblem, plan: LayPlan): readonly number[] {
  const used = problem.stocks.map(({ id }) => {
    const use = plan.uses.find(({ stockId }) => stockId === id);
    return use === undefined ? 0 : use.usedLength + (use.toll ?? 0);
  });
  const bought = problem.stocks.reduce(
    (sum, stock, i) => sum + (stock.kind === "roll" && stock.length === null ? used[i]! : 0),
    0,
  );
  const last = used.findLastIndex((length) => length > 0);
  const bound = plan.uses.reduce((sum, use) => sum + (use.bound ?? 0), 0);
  return [areaLeftOut(problem, plan), bought, last, last < 0 ? 0 : used[last]!, -bound];
}

function differs(a: number, b: number): boolean {
  return Math.abs(a - b) > SAME * Math.max(1, Math.abs(a), Math.abs(b));
}
