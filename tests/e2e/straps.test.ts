// A strap on the page: what it has no use for, its constructions side by side, the width that the ruler has.
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { openFile, openPage, openStage, type Stage } from "./browser.ts";

let stage: Stage;
beforeAll(async () => {
  stage = await openStage();
});
afterAll(() => stage.close());

const PROJECT = {
  ...{ laywright: 1, name: "Straps", currency: "EUR" },
  materials: [
    {
      ...{ id: "vinyl", name: "Vinyl", kind: "vinyl", thickness: "1 mm", price: { amount: 20, per: "m" } },
      stock: [{ kind: "roll", id: "roll", width: "1370 mm" }],
    },
  ],
};
const STRAP = {
  ...{ id: "sling", name: "Sling", construction: "fourfold", count: 4, width: "38 mm", length: "700 mm" },
  materials: { outer: "vinyl" },
  hardware: [{ kind: "slider", innerWidth: "39 mm", opening: "14 mm" }],
};

async function openStrap(page: Page, part: object = {}): Promise<void> {
  await openFile(page, "straps.json", JSON.stringify({ ...PROJECT, straps: [{ ...STRAP, ...part }] }));
  await page.click(".card-name:has-text('Sling')");
  await page.waitForSelector("[data-path='straps[0].width.mm']");
}

test("what a construction has no use for is told on the page, and one press leaves it out", async () => {
  const page = await openPage(await stage.person(), stage.url);
  await openStrap(page, { folds: { hem: "9 mm" }, edgeFinish: "paint" });
  const told = page.locator("text=has no use for a hem");
  expect(await told.count()).toBeGreaterThan(0);
  await page.click("button:has-text('Leave out what it has no use for')");
  await expect.poll(() => told.count()).toBe(0);
  expect(await page.locator("button:has-text('Leave out what it')").count()).toBe(0);
});

test("all constructions stand on cards with metres both ways, cost and what stands against them", async () => {
  const page = await openPage(await stage.person(), stage.url);
  await openStrap(page);
  await page.click("summary:has-text('Compare')");
  const card = (name: string) => page.locator(`.constructions .card:has-text("${name}")`);
  // Four strips of 148.85 x 801.6 mm beside each other, or one under the other; the thriftier costs.
  const fourfold = ((await card("folded in four").textContent()) ?? "").replaceAll("\u00a0", " ");
  expect(fourfold).toContain("cut 148.9 mm wide");
  expect(fourfold).toContain("801.6 mm of roll lengthwise, 595.4 mm crosswise");
  expect(fourfold).toContain("€11.91 of cloth");
  expect(fourfold).toContain("too thick for the slider");
  await card("folded in three, raw edge").click();
  await expect.poll(() => card("folded in three, raw edge").getAttribute("aria-pressed")).toBe("true");
});

test("one press cuts at the division of the ruler, and the finished width follows", async () => {
  const page = await openPage(await stage.person(), stage.url);
  await openStrap(page);
  await page.click("button:has-text('Cut 149')");
  await expect.poll(() => page.inputValue("[data-path='straps[0].width.mm']")).toContain("149");
  expect(await page.locator("button:has-text('comes out')").count()).toBe(0);
});

test("a workshop opened on the page gives its machine, and projects that name it find their material", async () => {
  const page = await openPage(await stage.person(), stage.url);
  const shop = {
    ...{ laywrightWorkshop: 1, name: "Quay" },
    sewingMachine: { maxThickness: "9 mm", needles: [{ kind: "vinyl", needle: "100/16" }] },
    materials: [{ ...PROJECT.materials[0], id: "black", thickness: "0.9 mm" }],
  };
  await openStrap(page);
  await openFile(page, "quay.json", JSON.stringify(shop));
  await page.click("summary:has-text('How it is made')");
  await page.waitForSelector("li:has-text('needle 100/16')");
  await page.waitForSelector("li:has-text('4 sliders')");
  const { materials: _, ...rest } = PROJECT;
  const named = { ...rest, workshop: "quay.json", materials: [{ id: "vinyl", from: "black" }], straps: [STRAP] };
  await openFile(page, "named.json", JSON.stringify({ ...named, name: "Named" }));
  await page.click(".card-name:has-text('Sling')");
  await page.waitForSelector("text=3.6 mm thick");
});

test("folds, skived edges and ends, and the machine of all straps are set on the page", async () => {
  const page = await openPage(await stage.person(), stage.url);
  const ends = [{ style: "fold-back" }, { style: "fold-back" }];
  await openStrap(page, { construction: "two-layer", ends, hardware: [] });
  await page.click("summary:has-text('Ends, rings')");
  await page.click("summary:has-text('How it is made')");
  const write = async (path: string, text: string) => {
    await page.fill(`[data-path='${path}']`, text);
    await page.press(`[data-path='${path}']`, "Enter");
  };
  await write("straps[0].folds.turnedThickness", "0.5 mm");
  await page.waitForSelector("li:has-text('Skive the edges that are turned to 0.5 mm')");
  await write("straps[0].endThickness", "2 mm");
  await page.waitForSelector("li:has-text('so that the strap is 2')");
  await write("straps[0].folds.reveal", "5 mm");
  await page.waitForSelector("li:has-text('5 mm')");
  // Two strips of two layers each: 3 mm where the turned edges are skived, more than this machine sews.
  await write("sewingMachine.maxThickness", "2.5 mm");
  await page.waitForSelector(".caution.mind:has-text('2.5 mm')");
  await write("straps[0].folds.turnedThickness", "");
  await expect.poll(() => page.locator("li:has-text('Skive the edges')").count()).toBe(0);
});
