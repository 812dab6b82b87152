import type { Answered, Answers, Ask, Asked } from "./protocol.ts";

const waiting = new Map<number, { resolve: (value: never) => void; reject: (reason: Error) => void }>();
let worker: Worker | null = null;
let asked = 0;

/** Asks the export worker; it and all export code are loaded with the first question. Rejects on a fault of ours. */
export function askExport<A extends Ask>(ask: A): Promise<Answers[A["kind"]]> {
  worker ??= openWorker();
  const id = ++asked;
  return new Promise((resolve, reject) => {
    waiting.set(id, { resolve, reject });
    worker?.postMessage({ id, ask } satisfies Asked);
  });
}

function openWorker(): Worker {
  const fresh = new Worker(new URL("./exportWorker.ts", import.meta.url), { type: "module" });
  fresh.onmessage = (event: MessageEvent<Answered>) => {
    const { data } = event;
    const waiter = waiting.get(data.id);
    waiting.delete(data.id);
    if (data.ok) waiter?.resolve(data.value as never);
    else waiter?.reject(new Error(data.reason));
  };
  fresh.onerror = (event) => {
    for (const { reject } of waiting.values()) reject(new Error(event.message));
    waiting.clear();
    worker = null;
  };
  return fresh;
}
