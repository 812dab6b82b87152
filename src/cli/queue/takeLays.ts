import { hostname } from "node:os";
import type { LayPlan } from "../../core/lay/problem/layProblem.ts";
import type { LayTask } from "../batch/layTask.ts";
import { PREFIX, type QueueStore, queueName } from "./connect.ts";
import { type FoundPlans, readSentLay } from "./wire.ts";

/** How a worker takes lays. */
export interface TakeWish {
  /** So many at a time. */
  readonly threads: number;
  /** A worker that has not been heard of for so long has lost its lay, ms. */
  readonly silentMs: number;
  /** Plans that `search` finds are kept in a folder, for batches that read it as well. */
  readonly byFolder?: boolean;
  /** The search of one lay. */
  search(task: LayTask): Promise<readonly LayPlan[]>;
  /** Hears of every lay that is done, or why it was not. */
  told(folder: string, reason: string | null): void;
}

/** A worker under way. */
export interface TakingLays {
  readonly name: string;
  /** Ends after the lays under way. */
  close(): Promise<void>;
}

/** A name that no other worker has. */
export function workerName(): string {
  return `${hostname()}-${process.pid}-${Math.random().toString(36).slice(2, 6)}`;
}

/**
 * Takes lays out of the queue and puts their plans back. A lay that fails is told to whoever gave it out, who gives it
 * out again or not; one whose worker falls silent goes the same way. So no clock but the store's decides anything.
 */
export function takeLays(store: QueueStore, wish: TakeWish, name: string = workerName()): TakingLays {
  const { Worker } = store.libraries.bullmq;
  const worker = new Worker(
    queueName(store.version),
    async (job): Promise<FoundPlans> => {
      const sent = readSentLay(job.data);
      if (sent === null) throw new Error("not a lay");
      if (sent.version !== store.version)
        throw new Error(`a lay of version ${sent.version}; this worker has ${store.version}`);
      const plans = await wish.search(sent.task);
      const isKept = wish.byFolder === true && sent.byFolder === true && sent.task.island === undefined;
      return { version: store.version, worker: name, plans: isKept ? null : plans };
    },
    {
      connection: store.redis,
      prefix: PREFIX,
      concurrency: wish.threads,
      lockDuration: wish.silentMs,
      stalledInterval: wish.silentMs,
      // Whoever gave the lay out counts how often it was taken.
      maxStalledCount: 0,
      name,
    },
  );
  // The connection tells of itself; an event that nobody hears would end the process.
  worker.on("error", () => {});
  worker.on("completed", (job) => wish.told(folderOf(job.data), null));
  worker.on("failed", (job, error) => wish.told(folderOf(job?.data), error.message));
  return { name, close: () => worker.close() };
}

function folderOf(data: unknown): string {
  return readSentLay(data)?.task.folder ?? "?";
}
