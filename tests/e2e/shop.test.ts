// What to buy on the page: a table that fills in as rows are found, on two workers, stoppable; and one bag more.
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { demoText, goTo, openFile, openPage, openStage, type Stage } from "./browser.ts";

let stage: Stage;
beforeAll(async () => {
  stage = await openStage();
});
afterAll(() => stage.close());

async function openCloth(page: Page): Promise<void> {
  await openFile(page, "demo.json", demoText());
  await goTo(page, "#/cloth/sailcloth");
  await page.waitForSelector("h2:has-text('What to buy')");
}

const POUCH = JSON.stringify({
  ...{ laywright: 1, name: "Quay pouch", unit: "mm", bags: 4, currency: "EUR" },
  materials: [
    {
      ...{ id: "canvas", name: "Canvas", kind: "woven", thickness: 0.5, price: { amount: 12, per: "m" } },
      stock: [{ kind: "roll", id: "roll", width: 1500, squaring: 0 }],
    },
  ],
  straps: [{ id: "strap", construction: "fourfold", width: 25, length: 400, materials: { outer: "canvas" } }],
  panels: [{ id: "front", material: "canvas", shape: { kind: "rectangle", along: 300, across: 400 }, count: 2 }],
});

async function openPouch(page: Page): Promise<void> {
  await openFile(page, "pouch.json", POUCH);
  await goTo(page, "#/cloth/canvas");
  await page.waitForSelector("h2:has-text('What to buy')");
}

const plain = (text: string | null): string => (text ?? "").replaceAll("\u00a0", " ");

test("rows come one by one, the best is marked and named with its reason", { timeout: 180_000 }, async () => {
  const page = await openPage(await stage.person(), stage.url);
  await openPouch(page);
  await page.click("button:has-text('Compare widths and ways')");
  await page.waitForSelector(".shop-table tbody tr", { timeout: 60_000 });
  await page.waitForSelector("button:has-text('Compare again')", { timeout: 120_000 });
  // Seven widths, of which the project's own is one, in four ways.
  expect(await page.locator(".shop-table tbody tr").count()).toBe(28);
  expect(await page.locator(".shop-table tr.best").count()).toBe(1);
  const best = plain(await page.locator(".best-way").textContent());
  expect(best).toMatch(/^Best: \d+ (?:cm|in), .+: [\d.]+ m for €\d+\.\d\d, the least money of 28 ways\./u);
  const row = plain(await page.locator(".shop-table tr.best").textContent());
  const paid = /€\d+\.\d\d/u.exec(best)![0];
  expect(row).toContain(paid);
  const all = await page.locator(".shop-table tbody tr").allTextContents();
  const costs = all.map((text) => Number(/€(\d+\.\d\d)/u.exec(plain(text))?.[1] ?? Number.POSITIVE_INFINITY));
  expect(Number(paid.slice(1))).toBe(Math.min(...costs));
  // A width made dear is not taken.
  await page.click("summary:has-text('What each width costs')");
  expect(await page.locator(".width-prices .labelled, .width-prices label").count()).toBeGreaterThanOrEqual(7);
});

// Seven widths in four ways, each also crosswise, joined, and both.
test("the table takes straps crosswise and joined, too, where that is asked for", {
  timeout: 180_000,
}, async () => {
  const page = await openPage(await stage.person(), stage.url);
  await openPouch(page);
  await page.check("text=also with the straps cut crosswise");
  await page.check("text=also with the straps joined");
  await page.click("button:has-text('Compare widths and ways')");
  await page.waitForSelector("button:has-text('Compare again')", { timeout: 150_000 });
  const ways = (await page.locator(".shop-table tbody th").allTextContents()).map(plain);
  expect(ways.length).toBe(4 * 28);
  expect(new Set(ways.map((way) => way.replace(" · best", ""))).size).toBe(4 * 28);
  expect(ways.filter((way) => /, crosswise, joined/u.test(way)).length).toBe(28);
  const best = plain(await page.locator(".best-way").textContent());
  expect(best).toMatch(/the least money of 112 ways/u);
  await page.context().close();
});

test("told that it is enough, the rows so far stand", { timeout: 180_000 }, async () => {
  const page = await openPage(await stage.person(), stage.url);
  await openCloth(page);
  await page.click("button:has-text('Compare widths and ways')");
  await page.waitForSelector(".shop-table tbody tr", { timeout: 60_000 });
  await page.click("button:has-text('That is enough')");
  const count = await page.locator(".shop-table tbody tr").count();
  expect(count).toBeLessThan(28);
  await page.waitForTimeout(1500);
  expect(await page.locator(".shop-table tbody tr").count()).toBe(count);
  expect(await page.locator("text=Stopped after").count()).toBe(1);
});

// By hand: 60 minutes at 20.00 are 20.00 a bag; 2 rings of a pack of 10 for 5.00 are 1.00; the cloth as it is bought.
test("costs and price, line by line, follow work, supplies and the share", { timeout: 180_000 }, async () => {
  const page = await openPage(await stage.person(), stage.url);
  await openPouch(page);
  await goTo(page, "#/lay/canvas");
  await page.waitForSelector(".costs tbody tr", { timeout: 60_000 });
  await page.click("summary:has-text('Work, overhead, tax and supplies')");
  const type = async (path: string, text: string) => {
    await page.fill(`[data-path="${path}"]`, text);
    await page.press(`[data-path="${path}"]`, "Enter");
  };
  await type("pricing.minutesPerBag", "60");
  await type("pricing.hourlyRate", "20");
  await type("pricing.share", "50 %");
  await page.click(".money-sheet button:has-text('Supply')");
  await type("supplies[0].perBag", "2");
  await type("supplies[0].price", "5");
  await type("supplies[0].pack", "10");
  const line = async (what: string) =>
    plain(await page.locator(`.costs tr:has-text("${what}")`).first().textContent());
  await expect.poll(() => line("Supply, 8")).toContain("€4.00");
  expect(await line("Supply, 8")).toContain("whole packs: €5.00");
  expect(await line("Work")).toContain("€80.00");
  const cents = (text: string) => Math.round(100 * Number(/€([\d.]+)$/u.exec(text)![1]));
  const total = cents(await line("Cost of all bags"));
  expect(total).toBe(cents(await line("Canvas")) + 400 + 8000);
  expect(cents(await line("Price of one bag"))).toBe(Math.floor((total * 1.5) / 4 + 0.5));
  expect(await line("Price of one bag")).toContain("mark-up 50 %, margin 33.3 %");
});

test("one bag more: lengths, money and the bags that cost no cloth, and the curve", {
  timeout: 180_000,
}, async () => {
  const page = await openPage(await stage.person(), stage.url);
  await openPouch(page);
  await page.click("button:has-text('Lay them out')");
  await page.waitForSelector(".grown", { timeout: 120_000 });
  const said = plain(await page.locator(".grown").textContent());
  expect(said).toMatch(/^[\d.]+ m \(€\d+\.\d\d\) makes \d, [\d.]+ m \(€/u);
  expect(said).toMatch(/cost(?:s)? no cloth\.$/u);
  expect(await page.locator(".growth-curve path").count()).toBeGreaterThan(1);
});
