import { type Answer, useAsked } from "../asking/useAsked.ts";
import { askExport } from "./askExport.ts";
import type { Answers, Ask } from "./protocol.ts";

/** After the plan or a setting changes, the question waits this long for the next change, ms. */
const PATIENCE = 250;

/** The export worker's answer to a question, asked again whenever `key` changes; none while `ask` is null. */
export function useAnswer<A extends Ask>(ask: A | null, key: unknown): Answer<Answers[A["kind"]]> {
  return useAsked(ask === null ? null : () => askExport(ask), key, PATIENCE);
}
