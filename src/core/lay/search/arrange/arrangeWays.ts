import type { LayPiece, LayPlan, LayProblem } from "../../problem/layProblem.ts";
import { nextTurn } from "../breath.ts";
import { isBetterPlan } from "../comparePlans.ts";
import type { SearchBudget } from "../engine.ts";
import type { Arrangement, Arranger } from "./layingDesk.ts";

/** The ways that all pieces can lie, arrows up the roll or down. */
type Way = "up" | "down";

/**
 * Lays a problem whose pieces all have to lie the same way, whichever. Plain rolls are the same seen from their other
 * end, so one way is tried; where flaws, leftovers, a pattern or pieces laid by hand make the ways differ, both are, with
 * half the effort each. The bounds told hold for both.
 */
export function* arrangeWays(problem: LayProblem, budget: SearchBudget, arranger: Arranger): Arrangement {
  const { sameWay: _, ...plain } = problem;
  const inWay = (way: Way): LayProblem => ({ ...plain, pieces: plain.pieces.map((piece) => pieceIn(piece, way)) });
  const pinnedWays = new Set(problem.pinned.map(wayOf));
  const isPossible = (way: Way): boolean =>
    inWay(way).pieces.every(({ orientations }) => orientations.length > 0) &&
    (pinnedWays.size === 0 || pinnedWays.has(way));
  const ways = (["up", "down"] as const).filter(isPossible);
  if (ways.length === 0) return yield* arranger(inWay("up"), budget);
  if (ways.length === 1 || isAlikeFromBothEnds(problem)) return yield* arranger(inWay(ways[0]!), budget);
  const runs = ways.map((way) => ({
    way,
    search: arranger(inWay(way), { evaluations: budget.evaluations / 2 }),
    evaluations: 0,
    bounds: null as readonly (number | null)[] | null,
    isDone: false,
  }));
  let best: LayPlan | null = null;
  let told: LayPlan | undefined;
  const spent = (): number => runs.reduce((sum, { evaluations }) => sum + evaluations, 0);
  /** A bound of one way says nothing of the other. */
  const bounded = (plan: LayPlan): LayPlan => ({
    ...plan,
    evaluations: spent(),
    uses: plan.uses.map((use, i) => {
      const all = runs.map(({ bounds }) => bounds?.[i] ?? null);
      return { ...use, bound: all.some((bound) => bound === null) ? null : Math.min(...(all as number[])) };
    }),
  });
  while (runs.some(({ isDone }) => !isDone)) {
    for (const run of runs) {
      if (run.isDone) continue;
      const isOwn: boolean = told?.placements.every((one) => wayOf(one) === run.way) === true;
      const step = yield* nextTurn(run.search, isOwn ? told : undefined);
      if (step.done) run.isDone = true;
      else run.evaluations = step.value.evaluations;
      const plan: LayPlan | null = step.done ? step.value : step.value.plan;
      if (plan !== null) run.bounds = plan.uses.map(({ bound }) => bound);
      const isBetter: boolean = plan !== null && isBetterPlan(problem, plan, best);
      if (isBetter) best = plan;
      told = yield { evaluations: spent(), plan: isBetter ? bounded(best!) : null };
      if (told && isBetterPlan(problem, told, best)) best = told;
    }
  }
  return bounded(best!);
}

/** The way a placement lies: turned over, a piece's arrow is reversed before it is turned. */
function wayOf({ turnDeg, mirrored }: { readonly turnDeg: number; readonly mirrored: boolean }): Way {
  const arrow = (((turnDeg + (mirrored ? 180 : 0)) % 360) + 360) % 360;
  return arrow < 135 || arrow > 315 ? "up" : "down";
}

function pieceIn(piece: LayPiece, way: Way): LayPiece {
  return { ...piece, orientations: piece.orientations.filter((turn) => wayOf(turn) === way) };
}

function isAlikeFromBothEnds({ stocks, pinned, pattern }: LayProblem): boolean {
  const isPlain = stocks.every((stock) => stock.kind === "roll" && stock.flaws.length === 0);
  return isPlain && pinned.length === 0 && pattern === undefined;
}
