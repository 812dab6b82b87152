/** A question to a worker, with its number. */
export interface Asked<A> {
  readonly id: number;
  readonly ask: A;
}

/** An answer, or what went wrong in our code. */
export type Answered =
  | { readonly id: number; readonly ok: true; readonly value: unknown }
  | { readonly id: number; readonly ok: false; readonly reason: string };

/**
 * Asks a worker that is opened with the first question. Rejects on a fault of ours; a question that the worker
 * dropped for a newer one is never answered.
 */
export function askWorker<A>(open: () => Worker): (ask: A) => Promise<unknown> {
  const waiting = new Map<number, { resolve: (value: unknown) => void; reject: (reason: Error) => void }>();
  let worker: Worker | null = null;
  let asked = 0;
  const opened = (): Worker => {
    const fresh = open();
    fresh.onmessage = (event: MessageEvent<Answered>) => {
      const { data } = event;
      const waiter = waiting.get(data.id);
      waiting.delete(data.id);
      if (data.ok) waiter?.resolve(data.value);
      else waiter?.reject(new Error(data.reason));
    };
    fresh.onerror = (event) => {
      for (const { reject } of waiting.values()) reject(new Error(event.message));
      waiting.clear();
      worker = null;
    };
    return fresh;
  };
  return (ask) => {
    worker ??= opened();
    const id = ++asked;
    return new Promise((resolve, reject) => {
      waiting.set(id, { resolve, reject });
      worker?.postMessage({ id, ask } satisfies Asked<A>);
    });
  };
}

/** Opens a worker that works out what to buy. The bundler finds the entry by this very expression. */
export const openShop = (): Worker =>
  new Worker(new URL("./sideWorkerEntry.ts", import.meta.url), { type: "module", name: "shop" });

/** Opens a worker that weighs other plans and other ways. */
export const openWeighing = (): Worker =>
  new Worker(new URL("./sideWorkerEntry.ts", import.meta.url), { type: "module", name: "weigh" });
