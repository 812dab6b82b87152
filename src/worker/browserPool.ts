import type { WorkerLine } from "./protocol.ts";
import { type SearchPool, searchPool } from "./searchPool.ts";

/** Browser workers that search together. The bundler finds the entry by this very expression. */
export function browserPool(threads: number): SearchPool {
  return searchPool(Array.from({ length: threads }, workerLine));
}

function workerLine(): WorkerLine {
  const worker = new Worker(new URL("./browserWorkerEntry.ts", import.meta.url), { type: "module" });
  return {
    send: (message) => worker.postMessage(message),
    listen: (hear) => {
      worker.onmessage = (event) => hear(event.data);
      worker.onerror = (event) => hear({ kind: "failed", order: Number.NaN, reason: event.message });
    },
    close: () => worker.terminate(),
  };
}
