import type { LayPlan } from "../../core/lay/problem/layProblem.ts";
import { programVersion } from "../command.ts";
import {
  doLayTask,
  drawLayTask,
  type LaidTask,
  type LayTask,
  type Refused,
  refusalOfPlans,
  type SearchTold,
  searchLayTask,
} from "./layTask.ts";
import { PlanFolder } from "./planFolder.ts";

/** What a thread of a batch is given: a whole lay; the search of one; or plans of somebody else to check and to draw. */
export type ThreadTask =
  | { readonly kind: "lay"; readonly task: LayTask; readonly out: string; readonly plans?: string | null }
  | { readonly kind: "search"; readonly task: LayTask; readonly plans?: string | null }
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
  if (given.kind !== "draw" && typeof given.plans === "string") return withFolder(given, given.plans, told);
  if (given.kind === "lay") return doLayTask(given.task, given.out, told);
  if (given.kind === "search") return searchLayTask(given.task, told);
  return drawLayTask(given.task, given.plans, given.out);
}

/** Takes the plans out of the folder where they are kept there and pass the checker, else searches and keeps them. */
async function withFolder(
  given: Extract<ThreadTask, { readonly kind: "lay" | "search" }>,
  folder: string,
  told?: (news: SearchTold) => void,
): Promise<LaidTask | readonly LayPlan[]> {
  const { task } = given;
  const plans = new PlanFolder(folder, programVersion());
  const kept = plans.find(task);
  if (given.kind === "search") {
    if (kept !== null && (await refusalOfPlans(task, kept)).length === 0) return kept;
  } else if (kept !== null) {
    const drawn = await drawLayTask(task, kept, given.out);
    if (!("refused" in drawn)) return drawn;
  }
  const found = await searchLayTask(task, told);
  plans.keep(task, found);
  if (given.kind === "search") return found;
  const drawn = await drawLayTask(task, found, given.out);
  if ("refused" in drawn) throw new Error(drawn.refused.join("\n"));
  return drawn;
}
