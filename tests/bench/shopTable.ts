// `npx tsx tests/bench/shopTable.ts`: the demo's table of one cloth in the page: time to the first and the last row, and
// the seconds of processor that the browser had taken by then. Prints one JSON document.
import { readdirSync, readFileSync } from "node:fs";
import { loadavg } from "node:os";
import { demoText, goTo, openFile, openPage, openStage } from "../e2e/browser.ts";

/** Clock ticks a second of the processor's times. */
const TICKS = 100;

/** Seconds of processor of a process and all below it. */
function processorSeconds(root: number): number {
  const stats = readdirSync("/proc")
    .filter((name) => /^\d+$/u.test(name))
    .flatMap((pid) => {
      try {
        const stat = readFileSync(`/proc/${pid}/stat`, "utf8");
        const fields = stat.slice(stat.lastIndexOf(")") + 2).split(" ");
        return [{ pid: Number(pid), parent: Number(fields[1]), ticks: Number(fields[11]) + Number(fields[12]) }];
      } catch {
        // A process that ended meanwhile.
        return [];
      }
    });
  const mine = new Set([root]);
  for (let grew = true; grew; ) {
    grew = false;
    for (const { pid, parent } of stats)
      if (mine.has(parent) && !mine.has(pid)) {
        mine.add(pid);
        grew = true;
      }
  }
  return stats.reduce((sum, { pid, ticks }) => (mine.has(pid) ? sum + ticks / TICKS : sum), 0);
}

const stage = await openStage();
try {
  const page = await openPage(await stage.person(), stage.url);
  await openFile(page, "demo.json", demoText());
  await goTo(page, "#/cloth/sailcloth");
  await page.waitForSelector("button:has-text('Compare widths and ways')");
  await page.waitForTimeout(4000);
  const before = processorSeconds(process.pid);
  const spent = () => Number((processorSeconds(process.pid) - before).toFixed(1));
  const start = performance.now();
  const since = () => Math.round(performance.now() - start);
  await page.click("button:has-text('Compare widths and ways')");
  await page.waitForSelector(".shop-table tbody tr", { timeout: 300_000 });
  const first = { firstMs: since(), firstProcessorSeconds: spent() };
  await page.waitForSelector("button:has-text('Compare again')", { timeout: 300_000 });
  const all = { allMs: since(), processorSeconds: spent() };
  const rows = await page.locator(".shop-table tbody tr").count();
  console.log(JSON.stringify({ ...first, ...all, rows, load: loadavg()[0] }));
} finally {
  await stage.close();
}
