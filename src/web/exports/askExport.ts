import { askWorker } from "../asking/askWorker.ts";
import type { Answers, Ask } from "./protocol.ts";

const asks = askWorker<Ask>(() => new Worker(new URL("./exportWorker.ts", import.meta.url), { type: "module" }));

/** Asks the export worker; it and all export code are loaded with the first question. Rejects on a fault of ours. */
export function askExport<A extends Ask>(ask: A): Promise<Answers[A["kind"]]> {
  return asks(ask) as Promise<Answers[A["kind"]]>;
}
