import { Worker } from "node:worker_threads";
import { loopback } from "./loopback.ts";
import type { WorkerLine } from "./protocol.ts";
import { type SearchPool, searchPool } from "./searchPool.ts";

/** Threads of a Node process that search together; one thread is the process's own. */
export function nodePool(threads: number): SearchPool {
  if (threads === 1) return searchPool([loopback(setImmediate)]);
  return searchPool(Array.from({ length: threads }, threadLine));
}

function threadLine(): WorkerLine {
  // Compiled, the entry lies beside this file as JavaScript; from the sources it needs a loader.
  const compiled = import.meta.url.endsWith(".js");
  const entry = new URL(compiled ? "./nodeWorkerEntry.js" : "./nodeWorkerEntry.ts", import.meta.url);
  const worker = new Worker(entry, compiled ? {} : { execArgv: ["--import", "tsx"] });
  return {
    send: (message) => worker.postMessage(message),
    listen: (hear) => {
      worker.on("message", hear);
      worker.on("error", (error) => hear({ kind: "failed", order: Number.NaN, reason: `${error.stack}` }));
    },
    close: () => void worker.terminate(),
  };
}
