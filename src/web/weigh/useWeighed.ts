import { askWorker } from "../asking/askWorker.ts";
import { type Answer, useAsked } from "../asking/useAsked.ts";
import type { Weighed, Weighing } from "./protocol.ts";

/** Weighing waits until the hand rests and a first plan is there, ms. */
const PATIENCE = 900;

const asks = askWorker<Weighing>(
  () => new Worker(new URL("./weighWorker.ts", import.meta.url), { type: "module" }),
);

/** The weighing worker's answer, asked again whenever `key` changes; none while `ask` is null. */
export function useWeighed<A extends Weighing>(ask: A | null, key: unknown): Answer<Weighed[A["kind"]]> {
  return useAsked(ask === null ? null : () => asks(ask) as Promise<Weighed[A["kind"]]>, key, PATIENCE);
}
