// `npm run bench:web`: how fast the page is in Chromium on this machine. Prints one JSON document.
// `npm run bench:web -- --plans FOLDER [--seconds 20]`: instead, what its plans of the demo and of open instances come to
// beside the command line's with two threads.
import { execFileSync } from "node:child_process";
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { parseArgs } from "node:util";
import { gzipSync } from "node:zlib";
import type { Page } from "playwright-core";
import { buildPage, demoText, goTo, openFile, openPage, openStage } from "../e2e/browser.ts";
import { editStrap, heldKilobytes } from "../e2e/heap.ts";
import { handCosts } from "./pageHands.ts";
import { plansOnPage } from "./plansOnPage.ts";

/** Kilobytes of the page's own script as a server sends it; workers and export code are loaded on demand. */
function scriptSize(): { page: number; searchWorker: number; exportWorker: number } {
  const folder = join(buildPage(), "assets");
  const size = (stem: string) =>
    readdirSync(folder)
      .filter((name) => name.startsWith(stem) && name.endsWith(".js"))
      .reduce((sum, name) => sum + gzipSync(readFileSync(join(folder, name))).length / 1000, 0);
  return { page: size("index"), searchWorker: size("browserWorkerEntry"), exportWorker: size("exportWorker") };
}

function manyPieces(count: number): string {
  const panel = (id: string, along: number, across: number) => ({
    id,
    name: id,
    material: "canvas",
    count: count / 4,
    shape: { kind: "rectangle", along, across },
  });
  return JSON.stringify({
    laywright: 1,
    name: "Many pieces",
    materials: [
      {
        id: "canvas",
        name: "Canvas",
        kind: "woven",
        thickness: 0.6,
        stock: [{ kind: "roll", id: "roll", width: 1500 }],
      },
    ],
    panels: [panel("a", 200, 130), panel("b", 170, 90), panel("c", 300, 60), panel("d", 80, 80)],
  });
}

/** Opens a project of so many pieces and waits until all of them lie and the search was told to rest. */
async function openMany(page: Page, count: number): Promise<void> {
  await goTo(page, "#/bag");
  await openFile(page, "many.json", manyPieces(count));
  await page.waitForSelector(".card-name:has-text('d')");
  await goTo(page, "#/lay");
  await page.waitForFunction((wanted) => document.querySelectorAll(".piece").length === wanted, count);
  await page.click('button:has-text("Good enough")', { timeout: 5000 }).catch(() => undefined);
  await page.waitForTimeout(3000);
}

/** Kilobytes that the page itself holds after every hundred of five hundred edits, and the browser's whole heap. */
async function heapOverEdits(page: Page): Promise<{ held: number[]; whole: number[] }> {
  const protocol = await page.context().newCDPSession(page);
  const [held, whole]: [number[], number[]] = [[], []];
  for (let hundred = 0; hundred < 5; hundred++) {
    await editStrap(page, hundred * 100, 100);
    await page.waitForTimeout(1000);
    held.push(Math.round(await heldKilobytes(protocol)));
    whole.push(Math.round((await protocol.send("Runtime.getHeapUsage")).usedSize / 1000));
  }
  return { held, whole };
}

/** How much of the screen moved by itself while a scripted maker went through the four places (0 is still). */
async function shiftOfSession(page: Page): Promise<number> {
  await page.evaluate(() => {
    const shifts: { value: number }[] = [];
    Object.assign(window, { shifts });
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries() as (PerformanceEntry & { value: number; hadRecentInput: boolean })[])
        if (!entry.hadRecentInput) shifts.push({ value: entry.value });
    }).observe({ type: "layout-shift" });
  });
  for (const hash of [
    "#/bag/shoulder",
    "#/cloth/sailcloth",
    "#/lay/sailcloth",
    "#/table/ruler",
    "#/lay/sailcloth",
  ]) {
    await goTo(page, hash);
    await page.waitForTimeout(4000);
  }
  return page.evaluate(() =>
    (window as unknown as { shifts: { value: number }[] }).shifts.reduce((sum, { value }) => sum + value, 0),
  );
}

/** Length of the roll that the page has after so many seconds of looking, mm. */
async function lengthAfter(page: Page, seconds: number): Promise<number> {
  await goTo(page, "#/lay/sailcloth");
  await page.waitForTimeout(seconds * 1000);
  return page.evaluate(() => {
    type Laid = { plan: { uses: { usedLength: number }[] } };
    type Board = { lays: { get(): Map<string, Laid> } };
    const { board } = (window as unknown as { laywright: { board: Board } }).laywright;
    const uses = board.lays.get().get("sailcloth")?.plan.uses ?? [];
    return Math.max(0, ...uses.map(({ usedLength }) => usedLength));
  });
}

/** Length of the same roll by the command line in as many seconds for the whole demo, mm. */
function lengthByCommand(seconds: number): number {
  const args = ["dist/cli/main.js", "lay", "fixtures/harbour-bags.json", "--seconds", String(seconds), "--json"];
  const plan = JSON.parse(execFileSync("node", args, { stdio: ["ignore", "pipe", "ignore"] }).toString());
  type Laid = { materialId: string; stock: { kind: string; lengthUsed: number }[] };
  const laid = (plan.materials as Laid[]).find(({ materialId }) => materialId === "sailcloth");
  return laid?.stock.find(({ kind }) => kind === "roll")?.lengthUsed ?? Number.NaN;
}

/** What the browser itself says of loading the page, ms, and how much of the screen moved unasked (0 is still). */
async function loadFigures(page: Page): Promise<Record<string, number>> {
  return page.evaluate(async () => {
    const seen = async (type: string): Promise<PerformanceEntry[]> =>
      new Promise((resolve) => {
        const entries: PerformanceEntry[] = [];
        new PerformanceObserver((list) => entries.push(...list.getEntries())).observe({ type, buffered: true });
        setTimeout(() => resolve(entries), 500);
      });
    const [paints, largest, shifts] = await Promise.all(
      ["paint", "largest-contentful-paint", "layout-shift"].map(seen),
    );
    const [load] = performance.getEntriesByType("navigation") as PerformanceNavigationTiming[];
    const moved = (shifts as (PerformanceEntry & { value: number; hadRecentInput: boolean })[])
      .filter(({ hadRecentInput }) => !hadRecentInput)
      .reduce((sum, { value }) => sum + value, 0);
    return {
      firstContentfulPaintMs: Math.round(paints!.find(({ name }) => name === "first-contentful-paint")!.startTime),
      largestContentfulPaintMs: Math.round(largest!.at(-1)!.startTime),
      interactiveDocumentMs: Math.round(load!.domInteractive),
      layoutShift: Math.round(moved * 1000) / 1000,
    };
  });
}

const { values } = parseArgs({
  options: { plans: { type: "string" }, seconds: { type: "string", default: "20" } },
});
const stage = await openStage();
const context = await stage.person();
// The loader names functions with a helper that the page does not have.
await context.addInitScript("globalThis.__name = (each) => each");
const page = await openPage(context, stage.url);
if (values.plans !== undefined) {
  const plans = await plansOnPage(page, values.plans, Number(values.seconds));
  await stage.close();
  console.log(JSON.stringify(plans, null, 2));
  process.exit();
}
await page.evaluate(() => {
  const tasks: number[] = [];
  Object.assign(window, { tasks });
  new PerformanceObserver((list) => tasks.push(...list.getEntries().map(({ duration }) => duration))).observe({
    type: "longtask",
  });
});
const load = await loadFigures(page);
await openFile(page, "demo.json", demoText());
await page.waitForSelector(".card-name:has-text('Gusset')");
const after20s = await lengthAfter(page, 20);
const shift = await shiftOfSession(page);
await goTo(page, "#/lay/sailcloth");
await page.waitForSelector(".piece");
await page.waitForTimeout(6000);
const longTasks = await page.evaluate(async () => {
  const { tasks } = window as unknown as { tasks: number[] };
  tasks.length = 0;
  await new Promise((resolve) => setTimeout(resolve, 8000));
  return tasks;
});
// An edit of the demo: one bag more. The old plan is gone at once, so the next one drawn is the first of the new.
const firstPlan: number[] = [];
for (let bags = 4; bags < 9; bags++) {
  await goTo(page, "#/bag");
  await page.focus('[data-path="bags"]');
  const ms = await page.evaluate(async (text) => {
    const { board } = (
      window as unknown as { laywright: { board: { lays: { get(): Map<string, { plan: unknown }> } } } }
    ).laywright;
    const field = document.querySelector<HTMLInputElement>('[data-path="bags"]')!;
    field.value = text;
    const start = performance.now();
    field.dispatchEvent(new InputEvent("input", { bubbles: true }));
    while (!board.lays.get().get("sailcloth")?.plan) await new Promise((resolve) => setTimeout(resolve, 2));
    return performance.now() - start;
  }, String(bags));
  firstPlan.push(Math.round(ms));
  await page.waitForTimeout(1500);
}
const hands: Awaited<ReturnType<typeof handCosts>>[] = [];
for (const count of [200, 1000]) {
  await openMany(page, count);
  hands.push(await handCosts(page));
}
await goTo(page, "#/bag");
await openFile(page, "demo.json", demoText());
await page.waitForSelector(".card-name:has-text('Gusset')");
const heaps = await heapOverEdits(page);
await stage.close();
const byCommand = lengthByCommand(20);
console.log(
  JSON.stringify(
    {
      gzipKb: Object.fromEntries(Object.entries(scriptSize()).map(([name, kb]) => [name, Math.round(kb)])),
      load,
      firstPlanMs: firstPlan,
      // Processor time of the page's own thread, ms; a frame of the screen has 16.
      hands,
      heapKbAfterHundredsOfEdits: heaps,
      layoutShiftOfASession: Math.round(shift * 1000) / 1000,
      demoSailclothAfter20sMm: {
        page: Math.round(after20s * 10) / 10,
        commandLine: Math.round(byCommand * 10) / 10,
      },
      longTasksWhileSearchingMs: longTasks.map(Math.round),
    },
    null,
    2,
  ),
);
