// `npm run bench:batch -- [orders]` (100 unless told): a batch of generated small orders, each laid by itself, on one
// thread and on two, from what is built. Prints orders a second by the clock, the speed-up, processor time of the whole
// process and its largest memory. Only on a machine with nothing else to do do the clock's figures say anything.
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { loadavg, tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { POUCH_TEMPLATE } from "../tools/pouchTemplate.ts";

const root = fileURLToPath(new URL("../../", import.meta.url));
/** Tells on a stream of its own, as the process ends, what it took. */
const TELLS = `data:text/javascript,${encodeURIComponent(
  'import { writeSync } from "node:fs"; import { isMainThread } from "node:worker_threads"; if (isMainThread) process.on("exit", () => writeSync(3, JSON.stringify(process.resourceUsage())));',
)}`;

const count = Number(process.argv[2] ?? 100);
const folder = mkdtempSync(join(tmpdir(), "laywright-bench-"));
try {
  const [template, table] = [join(folder, "pouch.json"), join(folder, "orders.csv")];
  writeFileSync(template, JSON.stringify(POUCH_TEMPLATE));
  const rows = Array.from({ length: count }, (_, i) => `${i},${90 + (i % 97)},${12 + (i % 9)} mm`);
  writeFileSync(table, ["order,height,loop.width", ...rows].join("\n"));
  console.log(`${count} orders; load before: ${loadavg()[0]!.toFixed(1)}`);
  let alone = 0;
  for (const threads of [1, 2]) {
    const words = ["batch", template, table, "--out", join(folder, `on-${threads}`), "--threads", String(threads)];
    const start = performance.now();
    const { status, output, stderr } = spawnSync(
      process.execPath,
      ["--import", TELLS, "dist/cli/main.js", ...words],
      { cwd: root, stdio: ["ignore", "ignore", "pipe", "pipe"], encoding: "utf8" },
    );
    const seconds = (performance.now() - start) / 1000;
    if (status !== 0) throw new Error(`ended with ${status}: ${stderr}`);
    const { userCPUTime, systemCPUTime, maxRSS } = JSON.parse(output[3]!);
    if (threads === 1) alone = seconds;
    console.log(
      `${threads} thread(s): ${(count / seconds).toFixed(2)} orders a second, speed-up ${(alone / seconds).toFixed(2)}, ` +
        `${((userCPUTime + systemCPUTime) / 1e6).toFixed(1)} s of processor time, ${Math.round(maxRSS / 1024)} MB`,
    );
  }
} finally {
  rmSync(folder, { recursive: true, force: true });
}
