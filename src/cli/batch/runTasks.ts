import { existsSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { doLayTask, type LaidTask, type LayTask } from "./layTask.ts";

/** The compiled entry of a worker thread, beside this file. */
const ENTRY = new URL("./batchWorkerEntry.js", import.meta.url);

/** What came of a task: the lay, or why there is none (a bug of ours). */
export type TaskResult = { readonly laid: LaidTask } | { readonly bug: string };

/** Tasks under way. */
export interface RunningTasks {
  /** When all are done, or those under way when it was stopped. */
  readonly ended: Promise<void>;
  /** Hands out no more tasks. */
  stop(): void;
}

/**
 * Does tasks on so many threads, handing each thread one at a time, so that ten thousand of them need no more room than
 * a few. One thread is the process's own, as it is where the sources run uncompiled.
 */
export function runTasks(
  tasks: Iterable<LayTask>,
  out: string,
  threads: number,
  onEnd: (task: LayTask, result: TaskResult) => void,
  entry: URL = ENTRY,
): RunningTasks {
  let isStopped = false;
  const ended = (async () => {
    const crew = threads > 1 && existsSync(entry) ? await poolOf(threads, entry) : ownThread();
    const waiting = tasks[Symbol.iterator]();
    const lane = async (): Promise<void> => {
      while (!isStopped) {
        const next = waiting.next();
        if (next.done) return;
        onEnd(next.value, await resultOf(crew.run(next.value, out)));
      }
    };
    try {
      await Promise.all(Array.from({ length: crew.threads }, lane));
    } finally {
      await crew.close();
    }
  })();
  return {
    ended,
    stop: () => {
      isStopped = true;
    },
  };
}

interface Crew {
  readonly threads: number;
  run(task: LayTask, out: string): Promise<LaidTask>;
  close(): Promise<void>;
}

function ownThread(): Crew {
  return { threads: 1, run: doLayTask, close: async () => {} };
}

async function poolOf(threads: number, entry: URL): Promise<Crew> {
  const { Tinypool } = await import("tinypool");
  const filename = fileURLToPath(entry);
  const pool = new Tinypool({ filename, minThreads: threads, maxThreads: threads });
  return {
    threads,
    run: (task, out) => pool.run({ task, out }),
    close: () => pool.destroy(),
  };
}

async function resultOf(running: Promise<LaidTask>): Promise<TaskResult> {
  try {
    return { laid: await running };
  } catch (error) {
    return { bug: error instanceof Error ? `${error.stack ?? error.message}` : String(error) };
  }
}
