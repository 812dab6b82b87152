import type { LayPlan } from "../../core/lay/problem/layProblem.ts";
import {
  doLayTask,
  drawLayTask,
  type LaidTask,
  type LayTask,
  type Refused,
  type SearchTold,
  searchLayTask,
} from "./layTask.ts";

/** What a thread of a batch is given: a whole lay; the search of one; or plans of somebody else to check and to draw. */
export type ThreadTask =
  | { readonly kind: "lay"; readonly task: LayTask; readonly out: string }
  | { readonly kind: "search"; readonly task: LayTask }
  | { readonly kind: "draw"; readonly task: LayTask; readonly plans: readonly LayPlan[]; readonly out: string };

export type ThreadResult<T extends ThreadTask> = T["kind"] extends "lay"
  ? LaidTask
  : T["kind"] extends "search"
    ? readonly LayPlan[]
    : LaidTask | Refused;

/** Does it on the thread that calls; `told` hears of every better plan of a search. */
export async function doThreadTask<T extends ThreadTask>(
  given: T,
  told?: (news: SearchTold) => void,
): Promise<ThreadResult<T>> {
  return (await done(given, told)) as ThreadResult<T>;
}

async function done(
  given: ThreadTask,
  told?: (news: SearchTold) => void,
): Promise<LaidTask | readonly LayPlan[] | Refused> {
  if (given.kind === "lay") return doLayTask(given.task, given.out, told);
  if (given.kind === "search") return searchLayTask(given.task, told);
  return drawLayTask(given.task, given.plans, given.out);
}
