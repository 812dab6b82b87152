import { Worker } from "node:worker_threads";
import type { UnderstoodPattern } from "../core/patterns/patternOutline.ts";
import type { PatternJob } from "./patternJob.ts";
import {
  kindBefore,
  MOST_MEMORY_MB,
  READING_SECONDS,
  type ReadingReply,
  stoppedReading,
} from "./stoppedReading.ts";

/** The compiled entry beside this file, also when this one runs from source. */
const ENTRY = new URL(
  import.meta.url.endsWith(".ts") ? "../../dist/reading/nodeReadingEntry.js" : "./nodeReadingEntry.js",
  import.meta.url,
);

/** How often the clock is looked at, ms. */
const LOOK_EVERY = 50;
/** On a busy machine a thread waits: it may take this many times its seconds by the wall clock. */
const PATIENCE = 6;

/**
 * Reads a pattern on a thread of its own, which is stopped when it takes more seconds of the processor or more memory
 * than it may. Anything else that goes wrong there is a fault of ours and thrown.
 */
export async function readPatternOnThread(
  job: PatternJob,
  limits: { readonly seconds?: number | undefined; readonly megabytes?: number } = {},
): Promise<UnderstoodPattern> {
  const kind = kindBefore(job.bytes);
  const { seconds = READING_SECONDS[kind], megabytes = MOST_MEMORY_MB } = limits;
  const worker = new Worker(ENTRY, {
    workerData: job,
    resourceLimits: { maxOldGenerationSizeMb: megabytes },
    // What a library says is no answer to the maker.
    stdout: true,
    stderr: true,
  });
  let timer: NodeJS.Timeout | undefined;
  try {
    return await new Promise<UnderstoodPattern>((resolve, reject) => {
      const started = process.cpuUsage();
      const latest = performance.now() + PATIENCE * seconds * 1000;
      timer = setInterval(() => {
        const { user, system } = process.cpuUsage(started);
        if ((user + system) / 1e6 > seconds || performance.now() > latest)
          resolve(stoppedReading(kind, "seconds", seconds));
      }, LOOK_EVERY);
      worker.on("message", (reply: ReadingReply) =>
        reply.ok ? resolve(reply.pattern) : reject(new Error(reply.stack)),
      );
      worker.on("error", (error: NodeJS.ErrnoException) =>
        error.code === "ERR_WORKER_OUT_OF_MEMORY"
          ? resolve(stoppedReading(kind, "memory", megabytes))
          : reject(error),
      );
    });
  } finally {
    clearInterval(timer);
    await worker.terminate();
  }
}
