// The shelf of the bag's parts: bags to begin from, pictures at one scale, order and copies by mouse and by keys.
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { STARTERS } from "../../src/core/bags/starters.ts";
import { kept, openPage, openStage, type Stage } from "./browser.ts";

let stage: Stage;
beforeAll(async () => {
  stage = await openStage();
});
afterAll(() => stage.close());

const names = (page: Page) => page.$$eval(".shelf .card-name", (all) => all.map((one) => one.textContent!.trim()));

/** px for a mm of each picture on the shelf. */
const frames = (page: Page) =>
  page.$$eval(".shelf-picture", (all) =>
    all.map((one) => {
      const [, , width, height] = one.getAttribute("viewBox")!.split(" ").map(Number);
      const own = one.getBoundingClientRect();
      return Math.min(own.width / width!, own.height / height!);
    }),
  );

test.each(STARTERS)("one press makes every part of a bag to begin from: %s", async (starter) => {
  const context = await stage.person();
  const page = await openPage(context, stage.url);
  expect(await page.locator(".starters .card").count()).toBe(4);
  const scales = await frames(page);
  expect(Math.max(...scales) / Math.min(...scales)).toBeLessThan(1.01);
  await page.click(`[data-starter="${starter}"]`);
  await page.waitForSelector(".shelf .card[data-part]");
  const parts = await names(page);
  // Outside, lining and a strap at the least; nothing of it cannot be worked out.
  expect(parts.filter((name) => /^Lining/u.test(name)).length).toBeGreaterThanOrEqual(2);
  expect(parts.length).toBeGreaterThanOrEqual(5);
  expect(await page.locator(".shelf .refusal").count()).toBe(0);
  const all = await frames(page);
  expect(Math.max(...all) / Math.min(...all)).toBeLessThan(1.01);
  if (starter === "crossbody") {
    // A strap of 1200 mm is longer than its card: drawn broken. The gusset, cut 70 + 20 mm wide, beside the front, cut
    // 240 + 20 mm wide.
    expect(await page.locator('.card[data-part="shoulder"] .strip-break').count()).toBe(2);
    const across = async (id: string) =>
      (await page.locator(`.card[data-part="${id}"] .ink-cut`).first().boundingBox())!.height;
    expect((await across("gusset")) / (await across("front"))).toBeCloseTo(90 / 260, 1);
  }
  // Every part follows the bag's measures.
  expect(await page.locator('[data-path="measures[0].length"]').count()).toBe(1);
  await kept(page);
  await page.keyboard.press("Control+z");
  await page.waitForSelector(".starters");
  await context.close();
});

test("parts are put in another order and copied by mouse, by keys and by the buttons of an open part", async () => {
  const context = await stage.person();
  const page = await openPage(context, stage.url);
  await page.click('[data-starter="pouch"]');
  await page.waitForSelector(".shelf .card[data-part]");
  const [strap, front, back, ...rest] = await names(page);
  await page.focus('.card[data-part="back"]');
  await page.keyboard.press("Shift+ArrowLeft");
  await expect.poll(() => names(page)).toEqual([strap, back, front, ...rest]);
  // The keyboard is still on the card that moved, also at the end of its kind.
  await expect
    .poll(() => page.evaluate(() => (document.activeElement as HTMLElement).dataset["part"]))
    .toBe("back");
  await page.keyboard.press("Shift+ArrowLeft");
  expect(await names(page)).toEqual([strap, back, front, ...rest]);
  await page.keyboard.press("d");
  await expect.poll(async () => (await names(page)).length).toBe(4 + rest.length);
  const copied = (await names(page))[2]!;
  expect(copied).not.toBe(back);
  await expect
    .poll(() => page.evaluate(() => document.activeElement?.querySelector(".card-name")?.textContent?.trim()))
    .toBe(copied);
  await page
    .locator('.shelf li:has(.card[data-part="front"])')
    .dragTo(page.locator('.shelf li:has(.card[data-part="back"])'));
  await expect.poll(() => names(page)).toEqual([strap, front, back, copied, ...rest]);
  await page.click('.card[data-part="front"]');
  await page.click('.spread button[aria-label="Later on the shelf"]');
  await expect.poll(() => names(page)).toEqual([strap, back, front, copied, ...rest]);
  for (let i = 0; i < 4; i++) await page.keyboard.press("Control+z");
  await expect.poll(() => names(page)).toEqual([strap, front, back, ...rest]);
  await context.close();
});

test("the parts of another bag are added to those that are there, by a press and from its measures, one step each", async () => {
  const context = await stage.person();
  const page = await openPage(context, stage.url);
  await page.click('[data-starter="tote"]');
  await page.waitForSelector(".shelf .card[data-part]");
  const own = await names(page);
  expect(await page.locator(".starters").count()).toBe(0);
  await page.click(".another-bag summary");
  await page.click('.another-bag [data-starter="pouch"]');
  await expect.poll(async () => (await names(page)).length).toBeGreaterThan(own.length + 4);
  const both = await names(page);
  expect(both.filter((name) => own.includes(name)).length).toBe(own.length);
  expect(new Set(both).size).toBe(both.length);
  expect(await page.locator(".shelf .refusal").count()).toBe(0);
  // Each has measures of its own, and its name behind what is called alike.
  const sizes = () => page.$$eval(".shelf .card", (all) => all.map((one) => one.textContent!));
  const before = await sizes();
  const label = (await page.locator(".bag > .sentence").nth(1).textContent()) ?? "";
  expect(label).toMatch(/\(Pouch\)|\(pouch\)/iu);
  await page.fill('[data-path="bag.width"]', "30 cm");
  await page.press('[data-path="bag.width"]', "Enter");
  await page.click('.another-bag button:has-text("Add its parts")');
  await expect.poll(async () => (await names(page)).length).toBeGreaterThan(both.length + 3);
  expect((await sizes()).filter((one) => before.includes(one)).length).toBe(before.length);
  await page.keyboard.press("Control+z");
  await expect.poll(async () => (await names(page)).length).toBe(both.length);
  await page.keyboard.press("Control+z");
  await expect.poll(() => names(page)).toEqual(own);
  await kept(page);
  await context.close();
});
