import { askWorker, openWeighing } from "../asking/askWorker.ts";
import { type Answer, useAsked } from "../asking/useAsked.ts";
import type { Rest, Weighed, Weighing } from "./protocol.ts";

/** Weighing waits until the hand rests and a first plan is there, ms; what is left of a plan is told sooner. */
const PATIENCE = { offcuts: 250, other: 900 };

const asks = askWorker<Weighing | Rest>(openWeighing);

/** The weighing worker's answer, asked again whenever `key` changes; none while `ask` is null. */
export function useWeighed<A extends Weighing>(ask: A | null, key: unknown): Answer<Weighed[A["kind"]]> {
  const patience = ask?.kind === "offcuts" ? PATIENCE.offcuts : PATIENCE.other;
  return useAsked(ask === null ? null : () => asks(ask) as Promise<Weighed[A["kind"]]>, key, patience);
}

/** Lets the weighing worker rest, or go on where it left off. */
export function restWeighing(isResting: boolean): void {
  asks({ kind: "rest", isResting }).catch(console.error);
}
