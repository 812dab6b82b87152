// With money in her hand: the shopping list and the labels of leftovers from the page, byte for byte those of the command.

import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { AxeResults } from "axe-core";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { runCli } from "../tools/runCli.ts";
import { goTo, openFile, openPage, openStage, type Stage } from "./browser.ts";

const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
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
  for (const words of ["Cloth, Quay market", "Canvas, 100 cm wide", "Lining, 140 cm wide", "no price", "Zip"])
    expect(text).toContain(words);
  expect(text).toContain("1 pack of 5€2.50");
  // A price is missing, so no sum is made up.
  expect(text).toContain("Some prices in EUR are missing, so there is no sum.");
  expect(text).toContain("What has no price here comes on top.");
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

/** Two panels of 500 × 900 off a narrow roll at 10 a metre or a wide one at 24. */
const ROLLS = JSON.stringify({
  ...{ laywright: 1, name: "Two rolls", unit: "mm", bags: 1, currency: "EUR", gap: 0, margin: 0 },
  materials: [
    {
      ...{ id: "canvas", name: "Canvas", kind: "woven", thickness: 0.5, price: { amount: 10, per: "m" } },
      stock: [
        { kind: "roll", squaring: 0, id: "narrow", width: 1000 },
        { kind: "roll", squaring: 0, id: "wide", width: 2000, price: { amount: 24, per: "m" } },
      ],
    },
  ],
  panels: [
    {
      ...{ id: "front", material: "canvas", count: 2, seamAllowance: 0, grain: "lengthwise" },
      shape: { kind: "rectangle", along: 500, across: 900 },
    },
  ],
});

const words = async (page: Page, selector: string) =>
  (await page.locator(selector).first().textContent())!.replaceAll("\u00a0", " ");

async function type(page: Page, path: string, text: string): Promise<void> {
  await page.fill(`[data-path="${path}"]`, text);
  await page.press(`[data-path="${path}"]`, "Enter");
}

// By hand: a metre of the narrow roll is 10.00, half a metre of the wide one 12.00, at 12 a metre 6.00; two panels cut to
// size at 2.50 are 5.00.
test("which roll to open and why, prices and panels to buy change it", { timeout: 240_000 }, async () => {
  const page = await openPage(await stage.person(), stage.url);
  await open(page, ROLLS, "#/lay/canvas");
  const opened = () => words(page, ".opened");
  await expect
    .poll(opened, { timeout: 60_000 })
    .toBe("Buy 1 m of roll, 1000 mm wide, €10.00. In all €10.00: no other way that was looked at costs less.");
  await page.click("summary:has-text('would cost')");
  expect(await words(page, ".lay-line details li")).toBe("roll, 2000 mm wide: €12.00");
  await goTo(page, "#/cloth/canvas");
  await type(page, "materials[0].stock[1].price.amount", "12");
  await goTo(page, "#/lay/canvas");
  await expect.poll(opened, { timeout: 60_000 }).toContain("Buy 0.5 m of roll, 2000 mm wide, €6.00.");
  await goTo(page, "#/cloth/canvas");
  await page.click("button:has-text('Panel cut to size, to buy')");
  const panel = "materials[0].stock[2]";
  await type(page, `${panel}.count`, "2");
  await type(page, `${panel}.shape.along`, "500");
  await type(page, `${panel}.shape.across`, "900");
  await type(page, `${panel}.price.amount`, "2.50");
  await goTo(page, "#/lay/canvas");
  await expect.poll(opened, { timeout: 60_000 }).toContain("Buy 2 × cut to size, 500 mm × 900 mm, €5.00.");
  // The shopping list counts them.
  await goTo(page, "#/table/shopping");
  await page.waitForSelector(".shopping-list h2");
  expect(await words(page, ".shopping-list tbody")).toContain("Canvas, 500 mm × 900 mm2€5.00");
});

// By hand: 1 m is needed; at least 2 m are cut for 20.00; from 1.5 m on all of it costs 4.00 a metre, 2 m then 8.00.
test("least lengths and cheaper prices from a length on, as the language writes them", {
  timeout: 240_000,
}, async () => {
  const page = await openPage(await stage.person({ locale: "de-DE" }), stage.url);
  const one = JSON.parse(ROLLS);
  one.name = "One roll";
  one.materials[0].stock.pop();
  await open(page, JSON.stringify(one), "#/cloth/canvas");
  await type(page, "materials[0].price.least", "2 m");
  const bought = async (said: string) => {
    await goTo(page, "#/lay/canvas");
    await expect.poll(() => words(page, ".lay-sentence strong"), { timeout: 60_000 }).toContain(said);
    await goTo(page, "#/cloth/canvas");
  };
  await bought("20,00 €");
  await page.click("button:has-text('Staffelpreis')");
  await type(page, "materials[0].price.steps[0].from", "1,5 m");
  await type(page, "materials[0].price.steps[0].amount", "4");
  await page.focus('[data-path="materials[0].price.least"]');
  const shown = await page.inputValue('[data-path="materials[0].price.steps[0].amount"]');
  expect(shown.replaceAll("\u00a0", " ")).toBe("4,00 €");
  await bought("8,00 €");
  await page.click("button[aria-label='Staffelpreis 1 entfernen']");
  await bought("20,00 €");
});

/** Goes on with the Tab key to what is called so, and presses Enter there. */
async function pressByKeys(page: Page, name: string): Promise<void> {
  for (let i = 0; i < 300; i++) {
    await page.keyboard.press("Tab");
    const at = await page.evaluate(() => {
      const { activeElement } = document;
      return activeElement?.matches("button, summary") ? (activeElement.textContent ?? "") : "";
    });
    if (!at.trim().startsWith(name)) continue;
    await page.keyboard.press("Enter");
    return;
  }
  throw new Error(`${name} is not reached by the Tab key`);
}

// axe-core (rules of WCAG 2.2 A and AA and its best practices).
test.each(["light", "dark"] as const)(
  "the cupboard and what to buy by keys alone, all of it open and clean, %s",
  { timeout: 300_000 },
  async (colorScheme) => {
    const page = await openPage(await stage.person({ colorScheme }), stage.url);
    const priced = JSON.parse(SQUARE);
    priced.materials[0].price = { amount: 12, per: "m", step: "10 cm", steps: [{ from: "5 m", amount: 10 }] };
    await open(page, JSON.stringify(priced), "#/cloth/canvas");
    await page.waitForFunction(() => document.querySelector('[data-part="cupboard-offers"] summary') !== null);
    await page.focus("body");
    await pressByKeys(page, "Cupboard");
    await pressByKeys(page, "After cutting");
    await pressByKeys(page, "Keep the leftovers");
    await page.waitForSelector('[data-part="cupboard-offers"] button:has-text("Print")');
    await pressByKeys(page, "What each width costs");
    await pressByKeys(page, "Compare widths and ways");
    await page.waitForSelector("button:has-text('Compare again')", { timeout: 120_000 });
    await pressByKeys(page, "Lay them out");
    await page.waitForSelector(".grown", { timeout: 120_000 });
    await pressByKeys(page, "Look what it makes");
    await page.waitForSelector(".made li", { timeout: 120_000 });
    await pressByKeys(page, "Its plan");
    await page.waitForSelector(".made details[open]");
    await page.evaluate(axe);
    const violations = await page.evaluate(async () => {
      const { violations } = await (window as unknown as { axe: { run(): Promise<AxeResults> } }).axe.run();
      return violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target.join(" ")).join(" | ")}`);
    });
    expect(violations).toEqual([]);
  },
);
