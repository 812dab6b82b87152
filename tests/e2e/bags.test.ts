// A bag in each body, made from its measures in the page: its pieces, and what follows when a measure is changed.
import { afterAll, beforeAll, expect, test } from "vitest";
import { BAG_BODIES } from "../../src/core/bags/bagWish.ts";
import { kept, openPage, openStage, type Stage } from "./browser.ts";

let stage: Stage;
beforeAll(async () => {
  stage = await openStage();
});
afterAll(() => stage.close());

test.each(BAG_BODIES)("a bag from its measures: %s", async (body) => {
  const context = await stage.person();
  const page = await openPage(context, stage.url);
  await page.selectOption('[data-path="bag.body"]', body);
  await page.fill('[data-path="bag.width"]', "32 cm");
  await page.press('[data-path="bag.width"]', "Enter");
  await page.fill('[data-path="bag.height"]', "24 cm");
  await page.press('[data-path="bag.height"]', "Enter");
  await page.click('button:has-text("Make the bag")');
  await page.waitForSelector('[data-path="measures[0].length"]');
  const sizes = () => page.$$eval(".shelf .card", (cards) => cards.map((card) => card.textContent ?? ""));
  const before = await sizes();
  expect(before.length).toBeGreaterThan(3);
  await page.fill('[data-path="measures[0].length"]', "40 cm");
  await page.press('[data-path="measures[0].length"]', "Enter");
  await page.waitForFunction(
    (old) => [...document.querySelectorAll(".shelf .card")].some((card, i) => card.textContent !== old[i]),
    before,
  );
  const after = await sizes();
  // Everything of the body is wider; straps keep their size.
  const changed = after.filter((text, i) => text !== before[i]);
  expect(changed.length).toBeGreaterThanOrEqual(body === "wrap" ? 2 : 3);
  await kept(page);
  await context.close();
});
