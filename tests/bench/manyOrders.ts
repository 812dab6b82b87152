// `npx tsx tests/bench/manyOrders.ts [ORDERS…]`: what a batch of so many small orders (1,000 and 10,000 unless told) takes
// beside laying: the table read, every order worked out once, lays handed to two threads, records and summary written.
// The laying itself is left out here, by threads that answer at once with a record of the usual size; the program has no
// such switch. Prints the largest memory of each, its processor time an order, and how many orders had been read when the
// first one was laid. From what is built.
import { spawnSync } from "node:child_process";
import { mkdtempSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { POUCH_TEMPLATE } from "../tools/pouchTemplate.ts";

const root = new URL("../../", import.meta.url);
const [, , first = "", ...rest] = process.argv;

if (first === "alone") await oneBatch(rest as [string, string, string]);
else {
  const counts = first === "" ? [1000, 10_000] : [first, ...rest].map(Number);
  for (const count of counts)
    for (const together of ["none", "all"])
      console.log(`${count} orders, together ${together}: ${measured(count, together)}`);
}

/** In a process of its own, so that the largest memory is this one's. */
function measured(count: number, together: string): string {
  const folder = mkdtempSync(join(tmpdir(), "laywright-many-"));
  try {
    writeFileSync(join(folder, "pouch.json"), JSON.stringify(POUCH_TEMPLATE));
    const rows = Array.from({ length: count }, (_, i) => `${i},${90 + (i % 97)},${12 + (i % 9)} mm`);
    writeFileSync(join(folder, "orders.csv"), ["order,height,loop.width", ...rows].join("\n"));
    const words = ["--import", "tsx", fileURLToPath(import.meta.url), "alone", folder, String(count), together];
    const { status, stdout, stderr } = spawnSync(process.execPath, words, {
      cwd: fileURLToPath(root),
      encoding: "utf8",
    });
    if (status !== 0) throw new Error(stderr);
    const records = readdirSync(join(folder, "out/records")).length;
    if (together === "none" && records !== count) throw new Error(`${records} records`);
    return stdout.trim();
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

async function oneBatch([folder, count, together]: readonly [string, string, string]): Promise<void> {
  const built = (name: string): Promise<never> =>
    import(new URL(`dist/cli/batch/${name}.js`, root).href) as Promise<never>;
  const { batchOfTable }: typeof import("../../src/cli/batch/planBatch.ts") = await built("planBatch");
  const { layBatch, readUntil }: typeof import("../../src/cli/batch/layBatch.ts") = await built("layBatch");
  const before = process.resourceUsage().maxRSS;
  const effort = { evaluations: 1, seed: 1, mode: "free" } as const;
  const wish = { together: together as "none" | "all", effort, write: undefined, language: "en" as const };
  const batch = batchOfTable(join(folder, "pouch.json"), join(folder, "orders.csv"), wish);
  let readAtFirst: number | null = null;
  const progress = (text: string): void => {
    if (/^1 of/u.test(text)) readAtFirst ??= Number(count) - batch.unread;
  };
  const io = { language: "en" as const, out: () => {}, err: () => {}, progress };
  readUntil(batch, () => batch.lays.length > 0, io);
  const entry = new URL("tests/bench/laidNothing.mjs", root);
  const { results } = await layBatch(
    batch,
    { out: join(folder, "out"), threads: 2, store: null, plans: null, entry },
    io,
  );
  const wrong = [...results.values()].find((result) => !("laid" in result));
  if (wrong !== undefined) throw new Error(JSON.stringify(wrong));
  const { maxRSS, userCPUTime, systemCPUTime } = process.resourceUsage();
  const each = (userCPUTime + systemCPUTime) / 1000 / Number(count);
  console.log(
    `${Math.round(maxRSS / 1024)} MB at most, ${Math.round(before / 1024)} MB of it the program; ` +
      `${each.toFixed(1)} ms of processor time an order; ${readAtFirst} read when the first of ${results.size} lays was done`,
  );
}
