import { isRectangle, ringBox } from "../../geometry/box.ts";
import { poseRing } from "../../geometry/pose.ts";
import { polygonArea, rectangleRing, solid } from "../../geometry/ring.ts";
import { chooseEngines } from "../engines/chooseEngines.ts";
import type { LayPlan, LayProblem, RollStock, StockPlacement } from "../problem/layProblem.ts";
import { arrange } from "../search/arrange/arrange.ts";
import type { ArrangeStep } from "../search/arrange/layingDesk.ts";
import { BREATH, type Breath } from "../search/breath.ts";
import { LEAST_OFFCUT } from "./layFigures.ts";

/** What is to be beaten: the shortest plan so far that leaves most, its length, mm, and the best gain, mm² (offcut less the cloth beyond it). */
export interface OffcutGoal {
  readonly plan: LayPlan;
  readonly length: number;
  readonly gain: number;
}

/** Share of the length, from the end, whose pieces are laid anew; by turns. */
const DEPTHS = [0.35, 0.6, 1];
/** Shapes tried by turns: the offcut's share of the roll's width, and cloth beyond the shortest plan as a share. */
const SHAPES = [
  { across: 0.4, extra: 0 },
  { across: 0.2, extra: 0 },
  { across: 0.6, extra: 0 },
  { across: 0.5, extra: 0.015 },
] as const;
/** Evaluations of a first trial; doubled once no shape can be enlarged any more. */
const FIRST_TRIAL = 200_000;
/** How much of the area still to be won a trial asks for, at first and at the least. */
const FIRST_SHARE = 0.12;
const LEAST_SHARE = 0.02;
/** What setting a trial up counts, so that trials that end at once come to an end too. */
const OUTSET = 1000;
const TOLERANCE = 1e-6;

/**
 * Plans of about the shortest length with a larger rectangle left at the end of the roll: a corner of it is kept free
 * like a flaw, larger and larger, and the last pieces laid anew beside it. `goal` is asked before every trial. For rectangles on
 * one open roll without flaws or pinned pieces; else it ends at once. The first trial is finished even beyond `effort`.
 */
export function* offcutSearch(
  problem: LayProblem,
  goal: () => OffcutGoal,
  effort: number,
  seed: number,
): Generator<ArrangeStep | Breath, ArrangeStep, undefined> {
  const roll = plainRoll(problem);
  const area = problem.pieces.reduce((sum, { outline, count }) => sum + count * polygonArea(outline), 0);
  const shares = SHAPES.map(() => FIRST_SHARE);
  let evaluations = 0;
  let most = FIRST_TRIAL;
  let tried = false;
  for (let trial = 0; roll !== null && evaluations < effort; trial++) {
    const { plan: best, length, gain } = goal();
    const free = roll.width * length - area;
    if (best.unplaced.length > 0 || free - gain < LEAST_OFFCUT * LEAST_OFFCUT) break;
    const at = trial % SHAPES.length;
    const { across, extra } = SHAPES[at]!;
    const wanted = gain + shares[at]! * (free - gain) + extra * length * roll.width;
    const dy = across * roll.width;
    const corner = { dx: wanted / dy, dy };
    const end = length * (1 + extra);
    if (Math.min(corner.dx, dy) >= LEAST_OFFCUT && corner.dx < end / 2) {
      const search = arrange(
        {
          ...problem,
          stocks: [withoutCorner(roll, end, corner)],
          pinned: keptFrom(problem, best, end - Math.max(2 * corner.dx, DEPTHS[trial % DEPTHS.length]! * length)),
        },
        (job) => chooseEngines(job, "free"),
        { evaluations: most },
        seed + trial,
      );
      tried = true;
      evaluations += OUTSET;
      yield { evaluations, plan: null };
      const before = evaluations;
      let found: LayPlan | null = null;
      for (let step = search.next(); !step.done && found === null; step = search.next()) {
        if (step.value === BREATH) {
          yield BREATH;
          continue;
        }
        const { plan } = step.value;
        evaluations = before + step.value.evaluations;
        // The bound of a roll with a corner missing says nothing about the whole roll.
        if (plan !== null && plan.unplaced.length === 0) found = { ...plan, uses: boundOf(plan, best) };
        yield { evaluations, plan: found };
      }
      if (found !== null) continue;
    }
    shares[at]! /= 2;
    if (shares.some((share) => share >= LEAST_SHARE)) continue;
    shares.fill(FIRST_SHARE);
    // Shapes that are all too slim or too long would go round without end.
    if (!tried) break;
    tried = false;
    most *= 2;
  }
  return { evaluations, plan: null };
}

function plainRoll({ stocks, pieces, pinned }: LayProblem): RollStock | null {
  const [roll] = stocks;
  if (stocks.length !== 1 || roll?.kind !== "roll" || roll.length !== null || roll.flaws.length > 0) return null;
  const square = pieces.every(({ outline }) => isRectangle(outline.outer, TOLERANCE));
  return square && pinned.length === 0 ? roll : null;
}

/** The placements of a plan that end at `until` or before. */
function keptFrom({ pieces }: LayProblem, { placements }: LayPlan, until: number): readonly StockPlacement[] {
  const outlines = new Map(pieces.map(({ id, outline }) => [id, outline.outer]));
  return placements.filter(
    (placement) => ringBox(poseRing(outlines.get(placement.pieceId)!, placement)).maxX <= until,
  );
}

function withoutCorner(roll: RollStock, end: number, { dx, dy }: { dx: number; dy: number }): RollStock {
  const corner = solid(rectangleRing(end - dx, roll.width - dy, dx, dy));
  return { ...roll, length: end, flaws: [corner] };
}

function boundOf(plan: LayPlan, shortest: LayPlan): LayPlan["uses"] {
  return plan.uses.map((use, i) => ({ ...use, bound: shortest.uses[i]!.bound }));
}
