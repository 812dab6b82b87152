// What the reading thread of a Node process runs: one file, one answer.
import { parentPort, workerData } from "node:worker_threads";
import { answerPattern } from "./patternJob.ts";
import type { ReadingReply } from "./stoppedReading.ts";

const reply = await answerPattern(workerData).then(
  (pattern): ReadingReply => ({ ok: true, pattern }),
  (error: unknown): ReadingReply => ({
    ok: false,
    stack: error instanceof Error ? (error.stack ?? error.message) : String(error),
  }),
);
parentPort!.postMessage(reply);
