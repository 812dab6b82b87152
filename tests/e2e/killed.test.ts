// What a device does to a page: killed, full, its clock put back, its storage from an earlier version.
import { readFileSync } from "node:fs";
import { afterAll, beforeAll, expect, test } from "vitest";
import { runCases } from "../harden/kind.ts";
import { pageKills } from "../harden/pageKills.ts";
import { kept, openPage, openStage, type Stage } from "./browser.ts";

let stage: Stage;
beforeAll(async () => {
  stage = await openStage();
});
afterAll(() => stage.close());

/** Even, so that the last of two fields is the second. */
const EDITS = Number(process.env["EDITS"] ?? 800);
const BAGS = '[data-path="bags"]';

test("tab, threads and browser killed in the middle of edits: what was told as kept is there again", async () => {
  const kills = pageKills();
  const tally = await runCases(kills, 3, 0, 4);
  await kills.end!();
  expect(tally.faults).toEqual([]);
  // All three ways are among the four.
  expect(new Set([...tally.outcomes.keys()].map((outcome) => outcome.split(",")[0])).size).toBe(3);
}, 600_000);

test("a device without room says so, and keeps the work once there is some", async () => {
  const context = await stage.person();
  const page = await context.newPage();
  const session = await context.newCDPSession(page);
  const origin = new URL(stage.url).origin;
  // Before the first save: the browser remembers for a while how much room there was.
  await session.send("Storage.overrideQuotaForOrigin", { origin, quotaSize: 1 });
  await page.goto(stage.url);
  await page.click('button:has-text("Strap")');
  await page.fill(BAGS, "4");
  await page.press(BAGS, "Enter");
  await page.waitForSelector("text=/no room left/");
  await session.send("Storage.overrideQuotaForOrigin", { origin });
  await page.click('.told button:has-text("Try again")');
  await kept(page);
  await page.reload();
  await page.waitForSelector(".card-name:has-text('Shoulder strap')");
  expect(await page.inputValue(BAGS)).toBe("4");
  await context.close();
});

test("with the clock put back two years the newest change is still the newest", async () => {
  const context = await stage.person();
  const page = await openPage(context, stage.url);
  await page.click('button:has-text("Strap")');
  await page.fill(BAGS, "2");
  await page.press(BAGS, "Enter");
  await kept(page);
  await page.clock.setFixedTime(Date.now() - 2 * 365 * 86_400_000);
  await page.reload();
  await page.waitForSelector(".card");
  await page.click('button:has-text("Panel")');
  await expect.poll(() => page.locator(".shelf .card").count()).toBe(2);
  await kept(page);
  await page.reload();
  await expect.poll(() => page.locator(".shelf .card").count()).toBe(2);
  expect(await page.inputValue(BAGS)).toBe("2");
  await page.click('button[aria-label^="Undo"]');
  await expect.poll(() => page.locator(".shelf .card").count()).toBe(1);
  await context.close();
});

test("what the first version of the page kept on the device is opened, with its steps", async () => {
  const stored = JSON.parse(
    readFileSync(new URL("../../fixtures/kept-by-first-version.json", import.meta.url), "utf8"),
  );
  const context = await stage.person();
  // A page without a script of ours on the same origin.
  const before = await context.newPage();
  await before.goto(`${stage.url}icon.svg`);
  await before.evaluate(
    ({ database, version, project, steps }) =>
      new Promise<void>((resolve, reject) => {
        const open = indexedDB.open(database, version);
        open.onupgradeneeded = () => {
          open.result.createObjectStore("projects", { keyPath: "id" });
          open.result.createObjectStore("steps");
        };
        open.onerror = () => reject(open.error);
        open.onsuccess = () => {
          const all = open.result.transaction(["projects", "steps"], "readwrite");
          all.objectStore("projects").put(project);
          for (const [i, step] of steps.entries()) all.objectStore("steps").put(step, [project.id, i]);
          all.oncomplete = () => {
            open.result.close();
            resolve();
          };
        };
      }),
    stored,
  );
  await before.close();
  const page = await openPage(context, stage.url);
  await page.waitForSelector(".card");
  expect(await page.inputValue(BAGS)).toBe("5");
  expect(await page.locator(".told").count()).toBe(0);
  const first = JSON.parse(stored.steps[0].text);
  await page.click('button[aria-label^="Undo"]');
  await expect.poll(() => page.inputValue(BAGS)).toBe(String(first.bags));
  const names = await page.locator(".shelf .card-name").allTextContents();
  expect(names.length).toBe(first.straps.length + first.panels.length);
  await context.close();
});

test("hundreds of edits leave the page's memory where it was", async () => {
  const context = await stage.person();
  const page = await openPage(context, stage.url);
  const session = await context.newCDPSession(page);
  await page.click('button:has-text("Strap")');
  const NAME = '[data-path="straps[0].name"]';
  /** Two fields in turn: what is typed into one field again and again is one step. */
  const edit = (from: number, to: number): Promise<void> =>
    page.evaluate(
      async ([fields, first, end]) => {
        const drawn = (): Promise<unknown> => new Promise(requestAnimationFrame);
        for (let i = first; i < end; i++) {
          const input = document.querySelector<HTMLInputElement>(fields[i % 2]!)!;
          input.focus();
          input.value = String(1000 + i);
          input.dispatchEvent(new Event("input", { bubbles: true }));
          await drawn();
          input.dispatchEvent(new KeyboardEvent("keydown", { key: "Enter", bubbles: true }));
          await drawn();
        }
      },
      [[BAGS, NAME], from, to] as const,
    );
  const heap = async (): Promise<number> => {
    await kept(page);
    await session.send("HeapProfiler.collectGarbage");
    return (await session.send("Runtime.getHeapUsage")).usedSize / 2 ** 20;
  };
  // The steps that undo keeps are filled first: 300 of them.
  await edit(0, 340);
  const before = await heap();
  await edit(340, EDITS);
  const after = await heap();
  expect(await page.inputValue(NAME)).toBe(String(1000 + EDITS - 1));
  expect(await page.inputValue(BAGS)).toBe(String(1000 + EDITS - 2));
  console.log(`memory after 340 edits ${before.toFixed(1)} MiB, after ${EDITS} ${after.toFixed(1)} MiB`);
  expect(after).toBeLessThan(before + 4);
  await context.close();
}, 1_200_000);
