// What the table shows is what it saves: the saved pages are read back by a program we did not write (PDFium).
import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { pdfWords } from "../tools/pdfReaders.ts";
import { passingFile } from "../tools/programs.ts";
import { demoText, goTo, openFile, openPage, openStage, type Stage } from "./browser.ts";

let stage: Stage;
beforeAll(async () => {
  stage = await openStage();
});
afterAll(() => stage.close());

/** The words of a PDF that a press on a button saves, without what line breaks do to them. */
async function savedWords(page: Page, button: string, name: string): Promise<string> {
  const [download] = await Promise.all([
    page.waitForEvent("download", { timeout: 90_000 }),
    page.click(`button:has-text("${button}")`),
  ]);
  return squeezed(await pdfWords(passingFile(name, readFileSync(await download.path()))));
}

function squeezed(text: string): string {
  return text.replace(/\s+/gu, "");
}

for (const [locale, button] of [
  ["en-GB", "Save the cut sheet"],
  ["de-DE", "Zuschnittblatt sichern"],
] as const)
  test(`the cut sheet on the page says what the saved one says, ${locale}`, async () => {
    const context = await stage.person({ acceptDownloads: true, locale });
    const page = await openPage(context, stage.url);
    await openFile(page, "demo.json", demoText());
    await page.waitForSelector(".card-name:has-text('Gusset')");
    await goTo(page, "#/table/sheet");
    const shown = async (selector: string) =>
      (await page.locator(`.cut-sheet ${selector}`).allTextContents()).map(squeezed);
    await page.waitForSelector(".cut-sheet .cautions");
    // Five materials: their plans come one after the other, and the sheet with them.
    await expect.poll(() => page.locator(".cut-sheet .lay-words").count(), { timeout: 60_000 }).toBe(5);
    await page.waitForSelector('.cut-sheet[aria-busy="false"]');
    const lists = [".lay-words li", ".amounts dt", ".amounts dd", ".work-steps li", ".cautions li", "h2"];
    const sentences = (await Promise.all(lists.map(shown))).flat();
    expect(sentences.length).toBeGreaterThan(60);
    const saved = await savedWords(page, button, `sheet-${locale}.pdf`);
    const missing = sentences.filter((sentence) => !saved.includes(sentence));
    // A sentence that runs over two pages has the foot of the page in it.
    expect(missing.length, missing.join("\n")).toBeLessThan(3);
    await context.close();
  });

test("a plan for the ruler is compared, laid and saved, and one undo brings the other plan back", async () => {
  const context = await stage.person({ acceptDownloads: true });
  const page = await openPage(context, stage.url);
  await openFile(page, "demo.json", demoText());
  await page.waitForSelector(".card-name:has-text('Gusset')");
  await goTo(page, "#/table/ruler");
  const lay = page.locator('button:has-text("Lay it for the ruler")');
  await lay.waitFor({ timeout: 60_000 });
  // What the ruler costs: the table says cloth, purchase, cuts and settings of both plans.
  expect(await page.locator(".compared tbody tr").count()).toBe(4);
  const settings = async () =>
    Number((await page.locator(".lay-length").first().textContent())?.match(/set (\d+) times/)?.[1]);
  const offered = await settings();
  expect(offered).toBeGreaterThan(1);
  const early = await savedWords(page, "Save the ruler cuts", "ruler-early.pdf");
  await lay.click();
  await page.waitForSelector("text=The plan on the table can be cut with the ruler.", { timeout: 60_000 });
  expect(await settings()).toBe(offered);
  const late = await savedWords(page, "Save the ruler cuts", "ruler-late.pdf");
  expect(late).toBe(early);
  expect(late).toContain(`${offered}`);
  await page.click('button[aria-label^="Undo"]');
  await lay.waitFor({ timeout: 60_000 });
  await context.close();
});

test("the narrowest strip of ruler plans is said on the table, and its cuts leave no sliver of the gap", async () => {
  const context = await stage.person();
  const page = await openPage(context, stage.url);
  const panel = { id: "body", name: "Body", material: "canvas", count: 6 };
  const materials = [
    {
      ...{ id: "canvas", name: "Canvas", kind: "woven", thickness: 0.6 },
      stock: [{ kind: "roll", id: "roll", width: 1000 }],
    },
  ];
  const panels = [{ ...panel, shape: { kind: "rectangle", along: 300, across: 200 } }];
  const project = { laywright: 1, name: "Gap", gap: 2, margin: 5, materials, panels };
  await openFile(page, "gap.json", JSON.stringify(project));
  await page.waitForSelector(".card-name:has-text('Body')");
  await goTo(page, "#/table/ruler");
  await page.waitForSelector(".cut-steps li");
  expect(await page.inputValue('[data-path="leastStrip"]')).toMatch(/^10/u);
  // Every ruler setting is a side of the piece: no cut at 2 mm takes a gap off.
  const told = (await page.locator(".cut-steps").textContent()) ?? "";
  const settings = [...told.matchAll(/at (\d+(?:\.\d+)?)/gu)].map(([, mm]) => Number(mm));
  expect(settings.length).toBeGreaterThan(1);
  expect(settings.filter((mm) => mm !== 300 && mm !== 200)).toEqual([]);
  await page.fill('[data-path="leastStrip"]', "25");
  await page.press('[data-path="leastStrip"]', "Enter");
  await page.waitForSelector('[data-keeping="kept"]', { state: "attached" });
  await page.reload();
  await expect.poll(() => page.inputValue('[data-path="leastStrip"]')).toMatch(/^25/u);
  await context.close();
});

test("on cloth with a pattern, too, what Table offers for the ruler has no cut under the narrowest strip, and its pages can be saved", async () => {
  const context = await stage.person({ acceptDownloads: true });
  const page = await openPage(context, stage.url);
  await openFile(page, "demo.json", demoText());
  await page.waitForSelector(".card-name:has-text('Lining body')");
  await goTo(page, "#/table/ruler");
  // Printed with waves at which its parts have to begin.
  await page.click('.lay-materials button:has-text("Wave-print lining")', { timeout: 120_000 });
  await page.waitForSelector('section[aria-label="Wave-print lining"][aria-busy="false"]', { timeout: 120_000 });
  await page.waitForSelector(".cut-steps li", { timeout: 120_000 });
  const told = (await page.locator(".cut-steps").textContent()) ?? "";
  const settings = [...told.matchAll(/at (\d+(?:\.\d+)?)/gu)].map(([, mm]) => Number(mm));
  expect(settings.length).toBeGreaterThan(5);
  expect(Math.min(...settings)).toBeGreaterThanOrEqual(10);
  const words = await savedWords(page, "Save the ruler cuts", "lining-ruler.pdf");
  expect(words).toContain(squeezed("Lining body"));
  await context.close();
});

test("sizes of the cut sheet stand in inches on the page only where they are asked for; pages have a key of their lines", async () => {
  const context = await stage.person();
  const page = await openPage(context, stage.url);
  await openFile(page, "demo.json", demoText());
  await page.waitForSelector(".card-name:has-text('Gusset')");
  await goTo(page, "#/table/paper");
  await page.waitForSelector(".page-miniature");
  // Every kind of line that is drawn has its word.
  const key = (await page.locator(".line-key li").allTextContents()).map((text) => text.trim());
  expect(key.length).toBeGreaterThan(2);
  expect(key.every((word) => word.length > 2)).toBe(true);
  const kinds = await page.evaluate(() =>
    ["cut", "fold", "stitch", "grain"].map((role) => [
      document.querySelectorAll(`.page-miniature path.ink-${role}`).length > 0,
      document.querySelectorAll(`.line-key path.ink-${role}`).length > 0,
    ]),
  );
  for (const [isDrawn, isTold] of kinds) expect(isTold).toBe(isDrawn);
  const inches = async () =>
    (await page.locator(".cut-sheet table td.number").allTextContents()).filter((text) => /\bin\b/u.test(text));
  await goTo(page, "#/table/sheet");
  await page.waitForSelector(".cut-sheet table");
  expect(await inches()).toEqual([]);
  await page.click(".headline .tools button:has-text('mm')");
  await expect.poll(async () => (await inches()).length).toBeGreaterThan(5);
  await context.close();
});

test("cutting mode asks that the screen stays awake, says whether it does, and asks again when it is back in sight", async () => {
  const context = await stage.person({ viewport: { width: 390, height: 760 } });
  // Screen Wake Lock API (W3C): a browser lets go of the lock whenever the page is out of sight.
  await context.addInitScript(() => {
    let asked = 0;
    const request = async () => {
      asked++;
      const lock = new EventTarget();
      Object.assign(window, { asked, letGo: () => lock.dispatchEvent(new Event("release")) });
      return Object.assign(lock, { release: async () => undefined });
    };
    Object.defineProperty(navigator, "wakeLock", { value: { request } });
  });
  const page = await openPage(context, stage.url);
  await openFile(page, "demo.json", demoText());
  await page.waitForSelector(".card-name:has-text('Gusset')");
  await goTo(page, "#/table/cutting");
  await page.waitForSelector(".cutting-heading");
  const words = () => page.textContent(".cutting-awake");
  await expect.poll(words).toMatch(/stays on/u);
  await page.evaluate(() => (window as unknown as { letGo(): void }).letGo());
  await expect.poll(words).not.toMatch(/stays on/u);
  await page.evaluate(() => document.dispatchEvent(new Event("visibilitychange")));
  await expect.poll(words).toMatch(/stays on/u);
  expect(await page.evaluate(() => (window as unknown as { asked: number }).asked)).toBe(2);
  await context.close();
});

test("a strap takes the fewest sheets: it runs across sheets that lie as it does, or is cut by size with no sheet at all", async () => {
  const context = await stage.person();
  const page = await openPage(context, stage.url);
  // Cut 100 mm wide and 1500 mm long, lengthwise on the roll: along the page's x.
  const strap = {
    ...{ id: "strap", name: "Strap", construction: "fourfold", count: 1, materials: { outer: "cloth" } },
    ...{ width: { cut: "100 mm" }, length: { cut: "1500 mm" } },
  };
  const project = JSON.stringify({
    ...{ laywright: 1, name: "One strap", output: { paper: "A4", pageMargin: "10 mm", overlap: "10 mm" } },
    materials: [
      {
        ...{ id: "cloth", name: "Cloth", kind: "woven", thickness: "0.6 mm", grain: "lengthwise" },
        stock: [{ kind: "roll", id: "roll", width: "50 cm" }],
      },
    ],
    straps: [strap],
  });
  await openFile(page, "strap.json", project);
  await page.waitForSelector(".card-name:has-text('Strap')");
  expect(await page.locator(".shelf .refusal").count()).toBe(0);
  await goTo(page, "#/table/paper");
  const sheets = async () => Number.parseInt((await page.textContent("strong.lay-length")) ?? "", 10);
  // Own arithmetic: upright a sheet shows 190 mm, the next 180 mm more: 1 + ceil(1310 / 180) = 9; lying 277 and 267 mm:
  // 1 + ceil(1223 / 267) = 6.
  await page.waitForSelector("strong.lay-length");
  await expect.poll(sheets).toBe(6);
  await page.selectOption('[data-path="output.orientation"]', "portrait");
  await expect.poll(sheets).toBe(9);
  await page.selectOption('[data-path="output.orientation"]', "fewest");
  await expect.poll(sheets).toBe(6);
  await page.selectOption('[data-path="output.sheets"]', "curved");
  await page.waitForSelector("text=cut all of it by size, no page is needed");
  await goTo(page, "#/table/sheet");
  await page.waitForSelector(".cut-sheet table");
  expect(
    (await page.textContent(".cut-sheet td.number + td, .cut-sheet table"))!.replaceAll("\u00a0", " "),
  ).toMatch(/1500 × 100 mm/u);
  await context.close();
});
