import { type Crew, crewOf } from "./crew.ts";
import type { LaidTask, LayTask } from "./layTask.ts";

/** What came of a task: the lay; or why there is none, a bug of ours, or what went wrong on every machine it was on. */
export type TaskResult =
  | { readonly laid: LaidTask }
  | { readonly bug: string }
  | { readonly givenUp: readonly string[] };

/** Tasks under way. */
export interface RunningTasks {
  /** When all are done, or those under way when it was stopped. */
  readonly ended: Promise<void>;
  /** Hands out no more tasks. */
  stop(): void;
}

/** Where and on how many threads tasks are done. */
export interface TasksWish {
  readonly out: string;
  readonly threads: number;
  /** Folder of plans, or null. */
  readonly plans: string | null;
  readonly entry?: URL | undefined;
}

/**
 * Does tasks on so many threads, handing each thread one at a time, so that ten thousand of them need no more room than
 * a few.
 */
export function runTasks(
  tasks: Iterable<LayTask>,
  { out, threads, plans, entry }: TasksWish,
  onEnd: (task: LayTask, result: TaskResult) => void,
): RunningTasks {
  let isStopped = false;
  const ended = (async () => {
    const crew: Crew = await crewOf(threads, entry);
    const waiting = tasks[Symbol.iterator]();
    const lane = async (): Promise<void> => {
      while (!isStopped) {
        const next = waiting.next();
        if (next.done) return;
        onEnd(next.value, await resultOf(crew.run({ kind: "lay", task: next.value, out, plans })));
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

async function resultOf(running: Promise<LaidTask>): Promise<TaskResult> {
  try {
    return { laid: await running };
  } catch (error) {
    return { bug: bugText(error) };
  }
}

/** Where a bug of ours is, to be sent in. */
export function bugText(error: unknown): string {
  return error instanceof Error ? `${error.stack ?? error.message}` : String(error);
}
