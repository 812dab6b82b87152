// `npm run bench:web`: how fast the page is in Chromium on this machine. Prints one JSON document.
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { gzipSync } from "node:zlib";
import type { Page } from "playwright-core";
import { buildPage, demoText, goTo, openFile, openPage, openStage } from "../e2e/browser.ts";

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

/** Frames a second while a piece is dragged to and fro for two seconds. */
async function dragFrames(page: Page, count: number): Promise<number> {
  await goTo(page, "#/bag");
  await openFile(page, "many.json", manyPieces(count));
  await page.waitForSelector(".card-name:has-text('d')");
  await goTo(page, "#/lay");
  await page.waitForFunction((wanted) => document.querySelectorAll(".piece").length === wanted, count);
  await page.click('button:has-text("Good enough")').catch(() => undefined);
  return page.evaluate(async () => {
    const piece = [...document.querySelectorAll<SVGElement>(".piece")].at(-1)!;
    const view = document.querySelector<HTMLElement>(".lay-view")!;
    const box = piece.getBoundingClientRect();
    const at = (dx: number) => ({
      bubbles: true,
      pointerId: 1,
      isPrimary: true,
      button: 0,
      clientX: box.x + box.width / 2 + dx,
      clientY: box.y + box.height / 2,
    });
    view.setPointerCapture = () => undefined;
    piece.dispatchEvent(new PointerEvent("pointerdown", at(0)));
    let frames = 0;
    const start = performance.now();
    while (performance.now() - start < 2000) {
      view.dispatchEvent(new PointerEvent("pointermove", at(80 * Math.sin(frames / 10))));
      await new Promise(requestAnimationFrame);
      frames++;
    }
    const seconds = (performance.now() - start) / 1000;
    view.dispatchEvent(new PointerEvent("pointercancel", at(0)));
    return frames / seconds;
  });
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

const stage = await openStage();
const context = await stage.person();
// The loader names functions with a helper that the page does not have.
await context.addInitScript("globalThis.__name = (each) => each");
const page = await openPage(context, stage.url);
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
const drag200 = await dragFrames(page, 200);
const drag1000 = await dragFrames(page, 1000);
await stage.close();
console.log(
  JSON.stringify(
    {
      gzipKb: Object.fromEntries(Object.entries(scriptSize()).map(([name, kb]) => [name, Math.round(kb)])),
      load,
      firstPlanMs: firstPlan,
      dragFramesPerSecond: { pieces200: Math.round(drag200), pieces1000: Math.round(drag1000) },
      longTasksWhileSearchingMs: longTasks.map(Math.round),
    },
    null,
    2,
  ),
);
