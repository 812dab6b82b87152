// Plans that stay: a still screen, plans that are kept and held, and labels that are true of limited cloth.
import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { goTo, openFile, openPage, openStage, type Stage } from "./browser.ts";

let stage: Stage;
beforeAll(async () => {
  stage = await openStage();
});
afterAll(() => stage.close());

/** Bodies, sides and straps on one roll. */
function project(roll: object = {}): string {
  const panel = (id: string, name: string, along: number, across: number, count: number) => ({
    ...{ id, name, material: "canvas", count },
    shape: { kind: "rectangle", along, across },
  });
  const stock = [{ kind: "roll", id: "roll-1", width: 1400, ...roll }];
  return JSON.stringify({
    ...{ laywright: 1, name: "Day bags", bags: 2 },
    materials: [{ id: "canvas", name: "Canvas", kind: "woven", thickness: 0.6, stock }],
    straps: [
      {
        ...{ id: "handle", name: "Handle", construction: "fourfold", count: 2, width: "25 mm", length: "60 cm" },
        materials: { outer: "canvas" },
      },
    ],
    panels: [
      panel("body", "Body", 340, 390, 2),
      panel("side", "Side", 330, 120, 2),
      panel("base", "Base", 300, 120, 1),
    ],
  });
}

async function openLay(page: Page, text = project()): Promise<void> {
  await openFile(page, "day.json", text);
  await page.waitForSelector(".card-name:has-text('Base')");
  await goTo(page, "#/lay");
  await expect.poll(() => page.locator(".piece").count()).toBe(14);
}

const top = (page: Page, selector: string) =>
  page.evaluate((what) => document.querySelector(what)?.getBoundingClientRect().top ?? Number.NaN, selector);

test("picking up a piece scrolls nothing, and a change that is pressed leaves everything where it was", async () => {
  const context = await stage.person({ viewport: { width: 1280, height: 700 } });
  const page = await openPage(context, stage.url);
  await openLay(page);
  await page.waitForSelector(".way:not([disabled])");
  // A quick machine may be done before the button is reached.
  await page.click('button:has-text("Good enough")', { timeout: 2000 }).catch(() => undefined);
  await page.evaluate(() => scrollTo(0, 250));
  const box = await page.locator(".piece").last().boundingBox();
  if (box === null) throw new Error("no piece is on the page");
  const at = [box.x + box.width / 2, Math.max(4, box.y + box.height - 4)] as const;
  await page.mouse.move(...at);
  await page.mouse.down();
  await page.mouse.move(at[0] + 30, at[1], { steps: 4 });
  await page.mouse.up();
  await page.waitForSelector(".selected-piece");
  expect(await page.evaluate(() => scrollY)).toBe(250);
  await page.keyboard.press("Escape");
  // The table of what could be changed stays while new figures are worked out.
  // Places on the page, not in the window: a driver may scroll to what it presses.
  await page.evaluate(() => document.querySelector("#lay-options")?.scrollIntoView({ block: "start" }));
  const scrolled = () => page.evaluate(() => scrollY);
  const before = (await top(page, "#lay-options")) + (await scrolled());
  const ways = await page.locator(".way").count();
  expect(ways).toBeGreaterThan(0);
  const moved = page.evaluate(async () => {
    const start = scrollY + (document.querySelector("#lay-options")?.getBoundingClientRect().top ?? 0);
    let most = 0;
    let least = Number.POSITIVE_INFINITY;
    for (let i = 0; i < 40; i++) {
      await new Promise(requestAnimationFrame);
      const now = scrollY + (document.querySelector("#lay-options")?.getBoundingClientRect().top ?? Number.NaN);
      most = Math.max(most, Math.abs(now - start));
      least = Math.min(least, document.querySelectorAll(".way").length);
    }
    return { most, least };
  });
  await page.locator(".way:not([disabled])").first().click();
  expect((await moved).most).toBeLessThan(30);
  expect((await moved).least).toBeGreaterThan(0);
  expect(Math.abs((await top(page, "#lay-options")) + (await scrolled()) - before)).toBeLessThan(30);
  await context.close();
});

test("on a phone the words of a piece come from below and leave the plan in sight", async () => {
  const context = await stage.person({ viewport: { width: 360, height: 740 }, hasTouch: true });
  const page = await openPage(context, stage.url);
  await openLay(page);
  await page.tap(".piece >> nth=3");
  await page.waitForSelector(".selected-piece");
  const [sheet, plan] = await Promise.all(
    [".selected-piece", ".lay-view"].map((what) => page.locator(what).boundingBox()),
  );
  if (sheet === null || sheet === undefined || plan === null || plan === undefined)
    throw new Error("not on the page");
  expect(sheet.y).toBeGreaterThan(plan.y + plan.height * 0.8);
  expect(sheet.y + sheet.height).toBeLessThanOrEqual(740.5);
  await context.close();
});

test("a limited roll is never called shortest, and what lies is the shorter of all plans that were found", async () => {
  const context = await stage.person();
  const page = await openPage(context, stage.url);
  await openLay(page, project({ length: "2 m" }));
  await page.waitForSelector(".choice");
  expect(await page.locator("text=/proven shortest|No plan can be shorter|longer than the/").count()).toBe(0);
  const used = () =>
    page.evaluate(() => {
      const { laywright } = window as unknown as {
        laywright: { board: { lays: { get(): Map<string, { plan: { uses: { usedLength: number }[] } }> } } };
      };
      return laywright.board.lays.get().get("canvas")?.plan.uses[0]?.usedLength ?? 0;
    });
  const choices = (await page.locator(".choice strong").allTextContents()).map(
    (text) => Number.parseFloat(text) * (/\sm$/u.test(text) ? 1000 : 1),
  );
  expect(choices.length).toBeGreaterThan(0);
  expect(await used()).toBeLessThanOrEqual(Math.min(...choices) + 6);
  await context.close();
});

test("the plan that pages were saved from is there tomorrow, listed by name, until it is let go", async () => {
  const context = await stage.person({ acceptDownloads: true });
  const page = await openPage(context, stage.url);
  await openLay(page);
  await goTo(page, "#/table/paper");
  await page.waitForSelector(".page-miniature");
  await Promise.all([page.waitForEvent("download"), page.click('button:has-text("Save the pages")')]);
  const placesOn = (where: Page) =>
    where.evaluate(() => {
      type Place = Record<"pieceId" | "copy" | "x" | "y" | "turnDeg", unknown>;
      const { laywright } = window as unknown as {
        laywright: { board: { lays: { get(): Map<string, { plan: { placements: Place[] } | null }> } } };
      };
      const laid = laywright.board.lays.get().get("canvas")?.plan?.placements ?? [];
      return JSON.stringify(laid.map(({ pieceId, copy, x, y, turnDeg }) => [pieceId, copy, x, y, turnDeg]));
    });
  const places = () => placesOn(page);
  await goTo(page, "#/lay");
  await page.waitForSelector(".search-word.held");
  const today = await places();
  await page.waitForSelector('[data-keeping="kept"]', { state: "attached" });
  await page.waitForTimeout(800);
  await page.reload();
  await page.waitForSelector(".search-word.held");
  expect(await places()).toBe(today);
  // The file takes the plan along: on another device it is laid, held, and listed.
  await page.evaluate(() => Object.assign(window, { showSaveFilePicker: undefined }));
  await page.click(".headline .project > button");
  const [file] = await Promise.all([
    page.waitForEvent("download"),
    page.click('button:has-text("Save to a file")'),
  ]);
  const text = readFileSync(await file.path(), "utf8");
  await page.keyboard.press("Escape");
  const elsewhere = await stage.person();
  const other = await openPage(elsewhere, stage.url);
  await openFile(other, "day.json", text);
  await other.waitForSelector(".card-name:has-text('Base')");
  await goTo(other, "#/lay");
  await other.waitForSelector(".search-word.held");
  expect(await placesOn(other)).toBe(today);
  expect(await other.locator(".kept-plans input").inputValue()).toMatch(/^Saved /u);
  await elsewhere.close();
  const name = page.locator(".kept-plans input");
  expect(await name.inputValue()).toMatch(/^Saved /u);
  // A change of the bag brings another plan; going back brings the bag and the plan of then.
  await goTo(page, "#/bag");
  await page.fill('[data-path="bags"]', "3");
  await page.press('[data-path="bags"]', "Enter");
  await goTo(page, "#/lay");
  await expect.poll(() => page.locator(".piece").count()).toBe(21);
  await page.click('button:has-text("Go back to it")');
  await expect.poll(() => page.locator(".piece").count()).toBe(14);
  await page.waitForSelector(".search-word.held");
  expect(await places()).toBe(today);
  await page.click('.kept-plans button[aria-label^="Let "]');
  await expect.poll(() => page.locator(".search-word.held, .kept-plans li").count()).toBe(0);
  await context.close();
});
