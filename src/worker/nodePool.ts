import { existsSync } from "node:fs";
import { availableParallelism } from "node:os";
import { Worker } from "node:worker_threads";
import { loopback } from "./loopback.ts";
import type { WorkerLine } from "./protocol.ts";
import { type SearchPool, searchPool } from "./searchPool.ts";

/** The compiled entry of a worker thread, beside this file. */
const ENTRY = new URL("./nodeWorkerEntry.js", import.meta.url);

/**
 * Threads that a search uses unless told: the machine's cores, all but one where there are more than two. One where
 * the sources run uncompiled, for which there is no entry.
 */
export function threadsHere(cores: number = availableParallelism(), entry: URL = ENTRY): number {
  if (!existsSync(entry)) return 1;
  return cores > 2 ? cores - 1 : cores;
}

/** Threads of a Node process that search together; one thread is the process's own. */
export function nodePool(threads: number, entry: URL = ENTRY): SearchPool {
  if (threads === 1) return searchPool([loopback(setImmediate)]);
  return searchPool(Array.from({ length: threads }, () => threadLine(entry)));
}

function threadLine(entry: URL): WorkerLine {
  const worker = new Worker(entry);
  return {
    send: (message) => worker.postMessage(message),
    listen: (hear) => {
      worker.on("message", hear);
      worker.on("error", (error) => hear({ kind: "failed", order: Number.NaN, reason: `${error.stack}` }));
    },
    close: () => void worker.terminate(),
  };
}
