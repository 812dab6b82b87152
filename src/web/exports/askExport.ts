import { askWorker } from "../asking/askWorker.ts";
import { type Answer, useAsked } from "../asking/useAsked.ts";
import type { Answers, Ask } from "./protocol.ts";

const asks = askWorker<Ask>(() => new Worker(new URL("./exportWorker.ts", import.meta.url), { type: "module" }));

/** Asks the export worker; it and all export code are loaded with the first question. Rejects on a fault of ours. */
export function askExport<A extends Ask>(ask: A): Promise<Answers[A["kind"]]> {
  return asks(ask) as Promise<Answers[A["kind"]]>;
}

/** After the plan or a setting changes, the question waits this long for the next change, ms. */
const PATIENCE = 250;

/** The export worker's answer to a question, asked again whenever `key` changes; none while `ask` is null. */
export function useAnswer<A extends Ask>(ask: A | null, key: unknown): Answer<Answers[A["kind"]]> {
  return useAsked(ask === null ? null : () => askExport(ask), key, PATIENCE);
}
