import { existsSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { MessageChannel } from "node:worker_threads";
import type { SearchTold } from "./layTask.ts";
import type { ThreadResult, ThreadTask } from "./threadTask.ts";

/** The compiled entry of a worker thread, beside this file. */
const ENTRY = new URL("./batchWorkerEntry.js", import.meta.url);

/** What may happen to a task under way. */
export interface CrewWish {
  /** Ends the task, with the thread that it is on. */
  readonly signal?: AbortSignal;
  /** Hears of every better plan. */
  told?(news: SearchTold): void;
}

/** Threads that lay. */
export interface Crew {
  /** So many tasks at a time are worth giving it. */
  readonly threads: number;
  run<T extends ThreadTask>(task: T, wish?: CrewWish): Promise<ThreadResult<T>>;
  close(): Promise<void>;
}

/**
 * So many threads beside the process's own; for a single task at a time the process's own will do (`least` 2), as it
 * must where the sources run uncompiled: there nothing ends a task before its time.
 */
export async function crewOf(threads: number, entry: URL = ENTRY, least = 2): Promise<Crew> {
  if (threads < least || !existsSync(entry)) {
    // Engines and drawings are read where they run: beside threads of its own this one has no use for them.
    const { doThreadTask } = await import("./threadTask.ts");
    return { threads: 1, run: (task, wish) => doThreadTask(task, wish?.told), close: async () => {} };
  }
  const { Tinypool } = await import("tinypool");
  const pool = new Tinypool({ filename: fileURLToPath(entry), minThreads: threads, maxThreads: threads });
  return {
    threads,
    run: async (task, { signal, told } = {}) => {
      const ends = signal === undefined ? {} : { signal };
      if (told === undefined) return pool.run({ task }, ends);
      const { port1, port2 } = new MessageChannel();
      port1.on("message", told);
      try {
        return await pool.run({ task, port: port2 }, { ...ends, transferList: [port2] });
      } finally {
        port1.close();
      }
    },
    close: () => pool.destroy(),
  };
}
