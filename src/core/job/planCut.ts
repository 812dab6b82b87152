import { type RulerCuts, rulerCuts } from "../lay/alternatives/layFigures.ts";
import { stageCount } from "../lay/boxes/cuts/cutTree.ts";
import { checkCuts } from "../lay/check/checkCuts.ts";
import { isMatched } from "../lay/problem/lattice.ts";
import type { LayPlan, LayProblem } from "../lay/problem/layProblem.ts";
import type { CutMode } from "../lay/search/engine.ts";

/**
 * Why a plan does not keep the way of cutting that was asked for. `matched`: no plan for straight cuts was found that
 * keeps the cloth's pattern; `pinned`: straight cuts do not part the pieces put down by hand; `aslant`: some pieces may
 * only lie at a slant; `cramped`: with straight cuts alone not every piece has a place; `more-stages`: it is for the
 * ruler, but in more turns than few.
 */
export const CUT_REASONS = ["matched", "pinned", "aslant", "cramped", "more-stages"] as const;

export type CutReason = (typeof CUT_REASONS)[number];

/** How a plan was to be cut and how it can be. */
export interface PlanCut {
  readonly asked: CutMode;
  /** Whether straight cuts from edge to edge part the pieces; null where none are laid. */
  readonly laid: "free" | "ruler" | null;
  /** Most turns between cuts across and along; null unless laid for the ruler. */
  readonly stages: number | null;
  /** Strips narrower than the project's least that the ruler's cuts take off; null unless laid for the ruler. */
  readonly narrowStrips: number | null;
  /** Null when the plan keeps what was asked for. */
  readonly reason: CutReason | null;
}

/** Most stages of a way of cutting, the trim counted. */
const MOST_STAGES: Partial<Record<CutMode, number>> = { "few-stages": 4, "two-stages": 3 };

/** How a plan can be cut, beside what was asked for. */
export function planCut(problem: LayProblem, plan: LayPlan, asked: CutMode): PlanCut {
  if (plan.placements.length === 0) return { asked, laid: null, stages: null, narrowStrips: null, reason: null };
  const cuts = checkedCuts(problem, plan);
  if (cuts === null)
    return {
      asked,
      laid: "free",
      stages: null,
      narrowStrips: null,
      reason: asked === "free" ? null : whyFree(problem),
    };
  const stages = cuts.reduce((most, { tree }) => Math.max(most, stageCount(tree)), 0);
  const isMore = stages > (MOST_STAGES[asked] ?? Infinity);
  const narrowStrips = cuts.reduce((sum, { narrow }) => sum + narrow.length, 0);
  return { asked, laid: "ruler", stages, narrowStrips, reason: isMore ? "more-stages" : null };
}

function whyFree(problem: LayProblem): CutReason {
  const { pinned, pieces } = problem;
  if (pinned.length > 0) return "pinned";
  const isAslant = pieces.some(
    ({ freeTurn, orientations }) => !freeTurn && orientations.every(({ turnDeg }) => turnDeg % 90 !== 0),
  );
  if (isAslant) return "aslant";
  return isMatched(problem) ? "matched" : "cramped";
}

/**
 * Strips too narrow for the ruler that are no maker's wish: those that cuts take off a plan that was laid freely. A plan that was
 * laid for the ruler, or that was taken and is kept by its pins, has none but what could not be spared.
 */
export function needlessStrips(
  { problem, plan, mode = "free" }: { problem: LayProblem; plan: LayPlan; mode?: CutMode },
  { narrow }: Pick<RulerCuts, "narrow">,
): number {
  const isTaken = problem.pinned.length === plan.placements.length;
  return mode === "free" && !isTaken ? narrow.length : 0;
}

/**
 * The ruler cuts of a plan as they are told and printed, or null when straight cuts do not part its pieces. The checker
 * has carried them out; throws where it finds them untrue, which is our mistake and not the maker's.
 */
export function checkedCuts(problem: LayProblem, plan: LayPlan): readonly RulerCuts[] | null {
  const all = rulerCuts(problem, plan);
  for (const cuts of all ?? []) {
    const [first] = checkCuts(problem, cuts);
    if (first !== undefined)
      throw new Error(
        `checkedCuts: the checker refused cut ${first.step}: ${first.fault}, ${first.told} told, ${first.found} found`,
      );
  }
  return all;
}
