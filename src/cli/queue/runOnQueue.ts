import { type Crew, crewOf } from "../batch/crew.ts";
import type { LayTask } from "../batch/layTask.ts";
import type { PlanFolder } from "../batch/planFolder.ts";
import type { RunningTasks, TaskResult } from "../batch/runTasks.ts";
import type { Io } from "../command.ts";
import { QUEUE_TEXTS } from "../words/queueTexts.ts";
import type { QueueStore } from "./connect.ts";
import { announce, present, strangers } from "./presence.ts";
import { sendLays } from "./sendLays.ts";
import { workerName } from "./takeLays.ts";

/** What of a batch the queue needs to know. */
export interface QueuedBatch {
  readonly out: string;
  /** Lays drawn at a time. */
  readonly threads: number;
  /** Where plans are kept that go from machine to machine, or null where all go through the store. */
  readonly plans: PlanFolder | null;
  /** Of a lay that was given out, by its folder: what it is kept under, and its turn, from 1. */
  sent(folder: string): { readonly key: string; readonly rank: number };
}

/** Looks for workers so often while there is none, ms. */
const LOOK_MS = 3000;

/** Has the lays of a batch searched by the workers of a queue; they are checked and drawn here. */
export function runOnQueue(
  tasks: Iterable<LayTask>,
  store: QueueStore,
  { out, threads, plans, sent }: QueuedBatch,
  onEnd: (task: LayTask, result: TaskResult) => void,
  io: Io,
): RunningTasks {
  const texts = QUEUE_TEXTS[io.language];
  let running: RunningTasks | null = null;
  let isStopped = false;
  const ended = (async () => {
    const crew: Crew = await crewOf(threads);
    const forget = announce(store, "batches", workerName(), threads);
    const silence = tellConnection(store, io);
    const timer = setInterval(() => void tellWorkers(store, io).catch(() => {}), LOOK_MS);
    try {
      if (isStopped) return;
      running = sendLays(
        tasks,
        store,
        {
          keyOf: ({ folder }) => sent(folder).key,
          priorityOf: ({ folder }) => sent(folder).rank,
          draw: (task, found) => crew.run({ kind: "draw", task, plans: found, out }),
          kept: plans === null ? undefined : (task) => plans.find(task),
          // One more than there are threads: it waits, so that no thread stands idle between two.
          atOnce: crew.threads + 1,
          texts,
        },
        onEnd,
      );
      await running.ended;
    } finally {
      clearInterval(timer);
      silence();
      forget();
      await crew.close();
    }
  })();
  return {
    ended,
    stop: () => {
      isStopped = true;
      running?.stop();
    },
  };
}

/** Says once when the store does not answer, and when it does again. */
export function tellConnection({ redis, place }: QueueStore, io: Io): () => void {
  const texts = QUEUE_TEXTS[io.language];
  let isAway = false;
  const away = (): void => {
    if (!isAway) io.err(`${texts.away(place)}\n`);
    isAway = true;
  };
  const back = (): void => {
    if (isAway) io.err(`${texts.back(place)}\n`);
    isAway = false;
  };
  redis.on("reconnecting", away);
  redis.on("ready", back);
  return () => {
    redis.off("reconnecting", away);
    redis.off("ready", back);
  };
}

const told = new WeakMap<QueueStore, string>();

/** Says, once, that nobody of this version takes lays. */
async function tellWorkers(store: QueueStore, io: Io): Promise<void> {
  const texts = QUEUE_TEXTS[io.language];
  const others = await strangers(store, "workers");
  const isAlone = others.length === 0 && (await present(store, "workers")).length === 0;
  const line =
    others.length > 0 ? texts.otherWorkers(others.join(", "), store.version) : isAlone ? texts.noWorker : "";
  if (line !== "" && told.get(store) !== line) io.err(`${line}\n`);
  told.set(store, line);
}
