// A day of making bags: what once stopped a maker stays mended.
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { demoText, goTo, openFile, openPage, openStage, type Stage } from "./browser.ts";

let stage: Stage;
beforeAll(async () => {
  stage = await openStage();
});
afterAll(() => stage.close());

/** A project that needs no file: two bodies and two handles on one cloth. */
function smallProject(part: object = {}): string {
  return JSON.stringify({
    laywright: 1,
    name: "Small bag",
    materials: [
      {
        id: "canvas",
        name: "Canvas",
        kind: "woven",
        thickness: "0.6 mm",
        stock: [{ kind: "roll", id: "roll-1", width: "140 cm" }],
      },
    ],
    straps: [
      {
        id: "strap-1",
        name: "Handle",
        construction: "fourfold",
        count: 2,
        width: "25 mm",
        length: "60 cm",
        materials: { outer: "canvas" },
      },
    ],
    panels: [
      {
        id: "panel-1",
        name: "Body",
        material: "canvas",
        count: 2,
        shape: { kind: "rectangle", along: 350, across: 400 },
      },
    ],
    ...part,
  });
}

async function openSmall(page: Page, part: object = {}): Promise<void> {
  await openFile(page, "small.json", smallProject(part));
  await page.waitForSelector(".card-name:has-text('Body')");
}

const middle = async (page: Page, selector: string) => {
  const box = await page.locator(selector).first().boundingBox();
  if (box === null) throw new Error(`${selector} is not on the page`);
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
};

test("a second and a third cloth, roll, remnant and skin are added in a new project and in the example", async () => {
  const context = await stage.person();
  const page = await openPage(context, stage.url);
  await goTo(page, "#/cloth");
  const cards = page.locator(".shelf .card");
  for (const wanted of [2, 3]) {
    await page.click('.card-add button:has-text("Material")');
    await expect.poll(() => cards.count()).toBe(wanted);
  }
  expect(await page.locator(".told").count()).toBe(0);
  // Names differ too: two cards called the same could not be told apart.
  expect(new Set(await page.locator(".card-name").allTextContents()).size).toBe(3);
  await openFile(page, "demo.json", demoText());
  await goTo(page, "#/cloth/sailcloth");
  await page.waitForSelector(".stock-list");
  const stocks = page.locator(".stock-list > .stock");
  let count = await stocks.count();
  for (const kind of ["Roll", "Remnant", "Skin", "Roll", "Remnant"]) {
    await page.click(`section[aria-label="What there is of it"] button:has-text("${kind}")`);
    await expect.poll(() => stocks.count()).toBe(++count);
  }
  expect(await page.locator(".told").count()).toBe(0);
  await context.close();
});

test("a piece put where it may not lie is told of by the names that the maker gave", async () => {
  const context = await stage.person();
  const page = await openPage(context, stage.url);
  await openSmall(page);
  await goTo(page, "#/lay");
  await expect.poll(() => page.locator(".piece").count()).toBe(4);
  await page.click('button:has-text("Good enough")').catch(() => undefined);
  const from = await middle(page, '[data-key^="strap-1"][data-key$="#1"]');
  const onto = await middle(page, '[data-key="panel-1#0"]');
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move(onto.x, onto.y, { steps: 6 });
  await page.waitForSelector(".piece.wrong");
  await page.mouse.up();
  const told = (await page.textContent(".selected-piece")) ?? "";
  expect(told).toMatch(/Handle[^.]* 2 lies on Body 1/u);
  expect(told).not.toMatch(/strap-1|panel-1|roll-1/u);
  await context.close();
});
