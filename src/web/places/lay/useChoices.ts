import { useEffect, useRef } from "preact/hooks";
import type { LayChoice } from "../../../core/lay/alternatives/searchChoices.ts";
import type { LayPlan, LayProblem } from "../../../core/lay/problem/layProblem.ts";
import type { LayState } from "../../state/layBoard.ts";
import { useWorkbench } from "../../state/workbench.ts";
import { useWeighed } from "../../weigh/useWeighed.ts";

/** Plans to choose from, with the problem that they were found for and the plan that lay on the table then. */
export interface Choices {
  readonly shown: {
    readonly choices: readonly LayChoice[];
    readonly problem: LayProblem;
    readonly plan: LayPlan | null;
  } | null;
  /** They are of an older problem: they stay in their place, greyed, while new ones are weighed. */
  readonly isOld: boolean;
  readonly isFailed: boolean;
}

/** Weighs other plans for a lay. One that beats the plan on the table is laid: a better plan is taken wherever it turns up. */
export function useChoices(lay: LayState): Choices {
  const { board } = useWorkbench();
  const { problem } = lay.job;
  const isEmpty = lay.plan?.placements.length === 0;
  const asked = lay.plan === null || isEmpty ? null : ({ kind: "choices", problem } as const);
  const { state, value } = useWeighed(asked, asked === null ? null : lay.signature);
  const last = useRef<Choices["shown"]>(null);
  if (state === "ready" && last.current?.choices !== value)
    last.current = { choices: value, problem, plan: lay.plan };
  else if (state === "ready" && last.current !== null) last.current = { ...last.current, plan: lay.plan };
  useEffect(() => {
    if (state === "ready") for (const { plan } of value) board.offer(problem, plan);
  }, [state, value]);
  return { shown: last.current, isOld: state !== "ready", isFailed: state === "failed" };
}
