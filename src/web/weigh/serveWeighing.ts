/// <reference lib="webworker" />
import type { Answered, Asked } from "../asking/askWorker.ts";
import type { Rest, Weighing } from "./protocol.ts";
import { weigh } from "./weigh.ts";

const worker = globalThis as unknown as DedicatedWorkerGlobalScope;
/** Between two looks at what was asked meanwhile, ms. */
const SPELL = 30;

const newest = new Map<Weighing["kind"], number>();
let queue: Promise<void> = Promise.resolve();
/** Kept once the worker may work. */
let rested: Promise<void> = Promise.resolve();
let wake = () => {};

/** Weighs other plans and other ways beside the search, a little at a time; a newer question of a kind ends the older. */
export function serveWeighing(): void {
  worker.onmessage = (event: MessageEvent<Asked<Weighing | Rest>>) => {
    const { id, ask } = event.data;
    if (ask.kind === "rest") {
      wake();
      if (ask.isResting)
        rested = new Promise((resolve) => {
          wake = resolve;
        });
      worker.postMessage({ id, ok: true, value: null } satisfies Answered);
      return;
    }
    newest.set(ask.kind, id);
    // A look at what is left is short: it does not wait for the end of a weighing.
    if (ask.kind === "offcuts") void take(id, ask);
    else queue = queue.then(() => take(id, ask));
  };
}

async function take(id: number, ask: Weighing): Promise<void> {
  const isStale = () => newest.get(ask.kind) !== id;
  try {
    await rested;
    const weighing = weigh(ask);
    for (let until = performance.now() + SPELL; ; ) {
      if (isStale()) return;
      const step = weighing.next();
      if (step.done === true) {
        worker.postMessage({ id, ok: true, value: step.value } satisfies Answered);
        return;
      }
      if (performance.now() < until) continue;
      await new Promise((resolve) => setTimeout(resolve));
      await rested;
      until = performance.now() + SPELL;
    }
  } catch (error) {
    const reason = error instanceof Error ? `${error.stack}` : String(error);
    worker.postMessage({ id, ok: false, reason } satisfies Answered);
  }
}
