import { type LayFigures, layFigures } from "../lay/alternatives/layFigures.ts";
import { checkPlan } from "../lay/check/checkPlan.ts";
import { chooseEngines } from "../lay/engines/chooseEngines.ts";
import { isMatched } from "../lay/problem/lattice.ts";
import type { LayPlan, LayProblem } from "../lay/problem/layProblem.ts";
import { clothUsed, copiesLeftOut } from "../lay/problem/planSums.ts";
import { arrange } from "../lay/search/arrange/arrange.ts";
import { inOneGo } from "../lay/search/breath.ts";

/** The plan for the ruler beside the plan on the table. */
export interface RulerJob {
  readonly plan: LayPlan;
  /** The plan on the table is the plan for the ruler: no better one was found. */
  readonly isOnTable: boolean;
  /** Ruler cuts of the plan on the table; null when straight cuts do not part its pieces. */
  readonly onTable: Cuts;
  readonly found: Cuts;
}

type Cuts = LayFigures["ruler"];

/**
 * Evaluations for a plan that a ruler can cut: a second or two, and the same plan every time. On a pattern one is a place
 * looked at, not a plan.
 */
const EFFORT = 40_000;
const MATCHED_EFFORT = 1_500_000;

/** The best plan of edge-to-edge cuts for a problem, checked; the one on the table unless another is better. */
export function rulerJobOf(problem: LayProblem, table: LayPlan): RulerJob {
  const onTable = layFigures(problem, table).ruler;
  const isKept = table.placements.length > 0 && problem.pinned.length === table.placements.length;
  const found = onTable !== null && isKept ? table : searchedPlan(problem);
  const figures = layFigures(problem, found).ruler;
  const isOnTable = found === table || (onTable !== null && !isEasier(problem, found, figures, table, onTable));
  const plan = isOnTable ? table : found;
  if (!isOnTable) {
    const faults = checkPlan(problem, plan);
    if (faults.length > 0) throw new Error(`rulerJobOf: the checker refused a ruler plan: ${faults[0]!.code}`);
  }
  return { plan, isOnTable, onTable, found: isOnTable ? onTable : figures };
}

function searchedPlan(problem: LayProblem): LayPlan {
  const evaluations = isMatched(problem) ? MATCHED_EFFORT : EFFORT;
  return inOneGo(arrange(problem, (job) => chooseEngines(job, "ruler"), { evaluations }, 1));
}

/**
 * Whether a plan leaves out fewer pieces than the one on the table, else cuts off fewer strips too narrow for a ruler
 * (a plan laid freely can be full of them), else takes less cloth, else fewer settings.
 */
function isEasier(problem: LayProblem, plan: LayPlan, figures: Cuts, table: LayPlan, onTable: Cuts): boolean {
  if (figures === null || onTable === null) return figures !== null;
  const weighed = (one: LayPlan, { settings, narrow }: NonNullable<Cuts>) => [
    copiesLeftOut(one),
    narrow,
    Math.round(clothUsed(problem, one)),
    settings,
  ];
  const [mine, theirs] = [weighed(plan, figures), weighed(table, onTable)];
  const at = mine.findIndex((value, i) => value !== theirs[i]);
  return at >= 0 && mine[at]! < theirs[at]!;
}
