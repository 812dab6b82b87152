// A worker in a process of its own: `tsx tests/tools/queueWorker.ts URL VERSION hang|lay CLOCK_MS`. Its clock is so far off; with
// `hang` it takes a lay, says so, and never ends it; else the first try of every lay fails.
const [, , url, version, what, off] = process.argv as unknown as [string, string, string, string, string, string];
const now = Date.now;
Date.now = () => now() + Number(off);

const { searchLayTask } = await import("../../src/cli/batch/layTask.ts");
const { connectQueue } = await import("../../src/cli/queue/connect.ts");
const { takeLays } = await import("../../src/cli/queue/takeLays.ts");

const seen = new Set<string>();
const store = await connectQueue(url, version);
takeLays(store, {
  threads: 1,
  silentMs: 10_000,
  search: async (task) => {
    console.log(`taken ${task.folder}`);
    if (what === "hang") await new Promise(() => {});
    if (!seen.has(task.folder)) {
      seen.add(task.folder);
      throw new Error("the first try fails");
    }
    return searchLayTask(task);
  },
  told: () => {},
});
console.log("ready");

export {};
