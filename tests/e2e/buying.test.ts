// With money in her hand: the shopping list and the labels of leftovers from the page, byte for byte those of the command.
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { runCli } from "../tools/runCli.ts";
import { goTo, openFile, openPage, openStage, type Stage } from "./browser.ts";

const folder = mkdtempSync(join(tmpdir(), "buying-e2e-"));
let stage: Stage;
beforeAll(async () => {
  stage = await openStage();
});
afterAll(async () => {
  await stage.close();
  rmSync(folder, { recursive: true, force: true });
});

/** Two cloths of two shops, one without a price, a strap with rings, and zips: few pieces, so that every plan is the shortest. */
const SATCHEL = JSON.stringify({
  ...{ laywright: 1, name: "Quay satchel", unit: "mm", bags: 2, currency: "EUR" },
  materials: [
    {
      ...{ id: "canvas", name: "Canvas", kind: "woven", thickness: 0.5, source: "Quay market" },
      price: { amount: 12, per: "m", step: "10 cm" },
      stock: [{ kind: "roll", id: "roll", width: 1000, squaring: 0 }],
    },
    {
      ...{ id: "lining", name: "Lining", kind: "woven", thickness: 0.2 },
      stock: [{ kind: "roll", id: "lining roll", width: 1400, squaring: 0 }],
    },
  ],
  straps: [
    {
      ...{ id: "strap", name: "Strap", construction: "fourfold", width: 25, length: 400, count: 1 },
      ...{ materials: { outer: "canvas" }, hardware: [{ kind: "ring", innerWidth: 26 }] },
    },
  ],
  panels: [
    { id: "front", material: "canvas", shape: { kind: "rectangle", along: 300, across: 400 }, count: 1 },
    { id: "inside", material: "lining", shape: { kind: "rectangle", along: 300, across: 400 }, count: 1 },
  ],
  supplies: [{ id: "zip", name: "Zip", perBag: 1, price: 2.5, pack: 5 }],
});

async function open(page: Page, text: string, hash: string): Promise<void> {
  await openFile(page, "satchel.json", text);
  await page.waitForSelector(`.headline .project:has-text("${JSON.parse(text).name}")`);
  await goTo(page, hash);
}

/** What a button hands to the browser's downloads. */
async function saved(page: Page, button: string): Promise<Buffer> {
  const [download] = await Promise.all([page.waitForEvent("download"), page.click(button)]);
  return readFileSync(await download.path());
}

/** Waits until nothing better is looked for: two runs then have plans of the same length. */
async function searched(page: Page): Promise<void> {
  await page.waitForFunction(() => {
    type Bench = { board: { lays: { get(): Map<string, { finding: string }> } } };
    const { laywright } = globalThis as unknown as { laywright: Bench };
    const lays = [...laywright.board.lays.get().values()];
    return lays.length > 0 && lays.every(({ finding }) => finding === "proven" || finding === "rested");
  });
}

test("the shopping list is on the page, and its files are those of the command", { timeout: 240_000 }, async () => {
  const project = join(folder, "satchel.json");
  writeFileSync(project, SATCHEL);
  const [csv, pdf] = ["list.csv", "list.pdf"].map((name) => join(folder, name)) as [string, string];
  const told = await runCli("shopping", project, "--csv", csv, "--pdf", pdf);
  expect(told.code).toBe(0);

  const page = await openPage(await stage.person(), stage.url);
  await open(page, SATCHEL, "#/lay/canvas");
  await searched(page);
  await page.click(".lay-line a:has-text('Shopping list')");
  await page.waitForSelector(".shopping-list h2");
  const text = (await page.locator(".shopping-list").textContent())!.replaceAll("\u00a0", " ");
  for (const words of ["Cloth, Quay market", "Canvas, 1000 mm wide", "Lining, 1400 mm wide", "no price", "Zip"])
    expect(text).toContain(words);
  expect(text).toContain("1 pack of 5€2.50");
  // A price is missing, so no sum is made up.
  expect(text).toContain("Some prices in EUR are missing, so there is no sum.");
  const files = [
    await saved(page, ".shopping-list button:has-text('Save as text')"),
    await saved(page, ".shopping-list button:has-text('spreadsheet')"),
    await saved(page, ".shopping-list button:has-text('Save to print')"),
  ];
  expect(files[0]!.toString("utf8")).toBe(told.out);
  expect(files[1]!.toString("utf8")).toBe(readFileSync(csv, "utf8"));
  expect(files[2]!.equals(readFileSync(pdf))).toBe(true);
});

test("in German too, every price as the language writes it", { timeout: 120_000 }, async () => {
  const page = await openPage(await stage.person({ locale: "de-DE" }), stage.url);
  await open(page, SATCHEL, "#/table/shopping");
  await page.waitForSelector(".shopping-list h2");
  const text = (await page.locator(".shopping-list").textContent())!.replaceAll("\u00a0", " ");
  for (const words of ["Einzukaufen für Quay satchel", "Beschläge", "1 Packung zu 5", "2,50 €", "kein Preis"])
    expect(text).toContain(words);
});

test("labels of leftovers, byte for byte those of the command", { timeout: 240_000 }, async () => {
  const page = await openPage(await stage.person(), stage.url);
  await open(page, SATCHEL, "#/cloth/canvas");
  const offers = page.locator('[data-part="cupboard-offers"]');
  await offers.locator("summary:has-text('After cutting')").click();
  await offers.locator('button:has-text("Keep the leftovers")').click();
  const first = '[data-part="cupboard-offers"] button:has-text("Print")';
  await page.waitForSelector(first);
  const fresh = await saved(page, first);
  await page.locator('[data-part="cupboard"] summary').click();
  const file = join(folder, "cupboard.json");
  writeFileSync(file, await saved(page, '[data-part="cupboard"] button:has-text("Save the cupboard")'));
  const labels = await saved(page, '[data-part="cupboard"] button:has-text("Print")');
  const out = join(folder, "labels.pdf");
  expect((await runCli("cupboard", "labels", file, "--lengths", "mm", "--out", out)).code).toBe(0);
  const told = readFileSync(out);
  expect(labels.equals(told)).toBe(true);
  expect(fresh.equals(told)).toBe(true);
});

/** A panel of 300 × 400 and a strap of 400 × 100, as they are cut, nothing between them. */
const SQUARE = JSON.stringify({
  ...{ laywright: 1, name: "Pier pouch", unit: "mm", bags: 1, gap: 0, margin: 0 },
  materials: [
    {
      ...{ id: "canvas", name: "Canvas", kind: "woven", thickness: 0.5, grain: "either" },
      stock: [
        { kind: "remnant", id: "rest", shape: { kind: "rectangle", along: 900, across: 400 } },
        { kind: "roll", id: "roll", width: 1500 },
      ],
    },
  ],
  straps: [
    {
      ...{ id: "strap", name: "Handle", construction: "fourfold", width: { cut: 100 }, length: { cut: 400 } },
      materials: { outer: "canvas" },
    },
  ],
  panels: [
    {
      ...{ id: "front", material: "canvas", seamAllowance: 0, grain: "either" },
      shape: { kind: "rectangle", along: 300, across: 400 },
    },
  ],
});

// Exact arithmetic on areas: 900 × 400 is 3 panels or 9 straps; two bags take 8 ninths of it, and one strap is left room for.
test("what a piece makes: bags, straps beside them, straps alone, each with its plan", {
  timeout: 240_000,
}, async () => {
  const page = await openPage(await stage.person(), stage.url);
  await open(page, SQUARE, "#/cloth/canvas");
  const part = page.locator(".from-this-piece");
  // The maker's own remnant is there to begin with.
  expect(await page.inputValue('[data-path="piece.canvas.along"]')).toMatch(/^900/u);
  await part.locator("button:has-text('Look what it makes')").click();
  await page.waitForSelector(".made li", { timeout: 120_000 });
  const said = await part.locator(".made li strong").allTextContents();
  expect(said).toEqual(["It makes 2 bags.", "Beside the bags: 1 more of “Handle”.", "Nothing but “Handle”: 9."]);
  // Every plan is drawn: two panels and three straps, then nine straps.
  const names = async (row: number) => {
    await part.locator(".made summary").nth(row).click();
    return part.locator(".made li").nth(row).locator("svg text").allTextContents();
  };
  expect((await names(1)).filter((text) => text.startsWith("Handle"))).toHaveLength(3);
  expect((await names(2)).filter((text) => text.startsWith("Handle"))).toHaveLength(9);
  // Half of it makes one bag, and is said in whole sentences.
  await page.fill('[data-path="piece.canvas.along"]', "450");
  await page.press('[data-path="piece.canvas.along"]', "Enter");
  await part.locator("button:has-text('Look what it makes')").click();
  await expect
    .poll(() => part.locator(".made li strong").allTextContents(), { timeout: 120_000 })
    .toEqual([
      "It makes 1 bag.",
      "Beside the bag there is no room for one more of “Handle”.",
      "Nothing but “Handle”: 4.",
    ]);
});
