/** Opens a worker that works out what to buy. The bundler finds the entry by this very expression. */
export const openShop = (): Worker =>
  new Worker(new URL("./sideWorkerEntry.ts", import.meta.url), { type: "module", name: "shop" });

/** Opens a worker that weighs other plans and other ways. */
export const openWeighing = (): Worker =>
  new Worker(new URL("./sideWorkerEntry.ts", import.meta.url), { type: "module", name: "weigh" });
