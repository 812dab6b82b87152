import type { LayPlan } from "../../core/lay/problem/layProblem.ts";

/** The plan of a search that is run to the end of its budget. */
export function finished(search: Generator<unknown, LayPlan, LayPlan | undefined>): LayPlan {
  for (let turn = search.next(); ; turn = search.next()) if (turn.done) return turn.value;
}
