// Edges, corners, marks and seams of a panel on the page: what the project file then says, by mouse and by keyboard.
import type { BrowserContext, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { goTo, openFile, openPage, openStage, type Stage, savedText } from "./browser.ts";

let stage: Stage;
beforeAll(async () => {
  stage = await openStage();
});
afterAll(() => stage.close());

const CANVAS = {
  id: "canvas",
  name: "Canvas",
  kind: "woven",
  thickness: "0.6 mm",
  stock: [{ kind: "roll", id: "roll-1", width: "140 cm" }],
};

/** A front of 300 × 200 and a gusset that is 3 mm short of its lower edge. */
const BAG = {
  laywright: 1,
  name: "Two panels",
  unit: "mm",
  materials: [CANVAS],
  panels: [
    {
      id: "front",
      name: "Front",
      material: "canvas",
      shape: { kind: "rectangle", along: 300, across: 200 },
      seamAllowance: 10,
    },
    {
      id: "gusset",
      name: "Gusset",
      material: "canvas",
      shape: { kind: "rectangle", along: 297, across: 80 },
      seamAllowance: 10,
    },
  ],
};

interface PanelFile {
  readonly [key: string]: unknown;
}

async function openFront(project: object = BAG): Promise<{ page: Page; context: BrowserContext }> {
  const context = await stage.person();
  const page = await openPage(context, stage.url);
  await openFile(page, "two.json", JSON.stringify(project));
  await page.waitForSelector(".card-name:has-text('Front')");
  await goTo(page, "#/bag/front");
  await page.waitForSelector("details[data-part=edges]");
  return { page, context };
}

/** The project as the page saves it. */
const saved = async (page: Page) =>
  JSON.parse(await savedText(page)) as { readonly panels: PanelFile[]; readonly seams?: PanelFile[] };

/** Types into the blank at a path of the first panel and leaves it. */
async function type(page: Page, field: string, words: string): Promise<void> {
  const blank = page.locator(`[data-path="panels[0].${field}"]`);
  await blank.fill(words);
  await blank.press("Enter");
}

/** The text of an element, with plain blanks. */
const text = async (page: Page, selector: string) =>
  (await page.locator(selector).textContent())?.replaceAll("\u00a0", " ") ?? "";

const choose = (page: Page, field: string, label: string) =>
  page.selectOption(`[data-path="panels[0].${field}"]`, { label });

test("each edge has its own seam allowance and hem, marked in the picture; undo brings the old one back", async () => {
  const { page, context } = await openFront();
  await page.click("details[data-part=edges] summary");
  expect(await page.locator(".marked-edge").count()).toBe(0);
  await page.focus('[data-path="panels[0].edges.top.allowance"]');
  // The thick line is the edge itself: from the upper right corner to the upper left one.
  expect(await page.locator(".marked-edge").getAttribute("d")).toBe("M300 200L0 200");
  await expect.poll(() => text(page, ".spread-picture figcaption")).toContain("top, 300");
  await type(page, "edges.top.allowance", "25");
  await page.check('[data-path="panels[0].edges.top.hem"]');
  await type(page, "edges.left.allowance", "0");
  const told = await saved(page);
  expect(told.panels[0]?.["edges"]).toEqual([
    { edge: "top", allowance: 25, hem: true },
    { edge: "left", allowance: 0 },
  ]);
  await page.click('button[aria-label="left side: seam allowance as all round"]');
  expect((await saved(page)).panels[0]?.["edges"]).toEqual([{ edge: "top", allowance: 25, hem: true }]);
  await page.keyboard.press("Control+z");
  expect((await saved(page)).panels[0]?.["edges"]).toEqual([
    { edge: "top", allowance: 25, hem: true },
    { edge: "left", allowance: 0 },
  ]);
  await context.close();
});

test("an edge on the fold has no allowance; the outline is taken as the cut line", async () => {
  const { page, context } = await openFront();
  await page.click("details[data-part=edges] summary");
  await choose(page, "fold", "left side");
  await expect.poll(() => page.locator(".edge-list li", { hasText: "lies on the fold" }).count()).toBe(1);
  expect(await page.locator('[data-path="panels[0].edges.left.allowance"]').count()).toBe(0);
  await choose(page, "drawn", "cut line");
  const [front] = (await saved(page)).panels;
  expect([front?.["fold"], front?.["drawn"]]).toEqual(["left", "cut"]);
  await context.close();
});

test("corners, all of them and one of its own", async () => {
  const { page, context } = await openFront();
  await page.click("details[data-part=edges] summary");
  await choose(page, "cornerStyle", "blunted");
  await choose(page, "corners.right", "square");
  await page.focus('[data-path="panels[0].corners.right"]');
  await expect.poll(() => text(page, ".spread-picture figcaption")).toContain("right side starts");
  const [front] = (await saved(page)).panels;
  expect([front?.["cornerStyle"], front?.["corners"]]).toEqual(["blunted", [{ corner: "right", style: "square" }]]);
  await context.close();
});

test("notches by their place on an edge, holes and words by theirs on the panel", async () => {
  const { page, context } = await openFront();
  await page.click("details[data-part=marks] summary");
  await page.click('details[data-part=marks] button:has-text("Notch")');
  await choose(page, "notches[0].edge", "top");
  await choose(page, "notches[0].from", "from where the edge starts");
  await type(page, "notches[0].at", "8 cm");
  await choose(page, "notches[0].cut", "a notch standing out");
  await type(page, "notches[0].mark", "K");
  await page.click('details[data-part=marks] button:has-text("Hole")');
  await type(page, "drills[0].x", "40");
  await type(page, "drills[0].y", "30");
  await type(page, "drills[0].text", "snap");
  await page.click('details[data-part=marks] button:has-text("Words")');
  await type(page, "texts[0].text", "Harbour side");
  const [front] = (await saved(page)).panels;
  expect(front?.["notches"]).toEqual([{ edge: "top", at: 80, cut: "out", mark: "K" }]);
  expect(front?.["drills"]).toEqual([{ x: 40, y: 30, text: "snap" }]);
  expect(front?.["texts"]).toEqual([{ x: 150, y: 100, text: "Harbour side" }]);
  // A notch beyond its edge is refused where it is typed, and the one that was stays.
  const at = page.locator('[data-path="panels[0].notches[0].at"]');
  await at.fill("400");
  await at.press("Enter");
  await expect.poll(() => page.locator(".refusal").first().textContent()).toContain("300");
  await at.press("Escape");
  expect((await saved(page)).panels[0]?.["notches"]).toEqual([{ edge: "top", at: 80, cut: "out", mark: "K" }]);
  await page.click('button[aria-label="Remove notch 1"]');
  expect((await saved(page)).panels[0]?.["notches"] ?? []).toEqual([]);
  await context.close();
});

test("the grain arrow from two points turns the piece on the cloth", async () => {
  const { page, context } = await openFront();
  await page.click("details[data-part=marks] summary");
  await choose(page, "grainArrow", "from one point to another:");
  for (const [k, mm] of ["150", "20", "150", "180"].entries()) await type(page, `grainArrow[${k}]`, mm);
  expect((await saved(page)).panels[0]?.["grainArrow"]).toEqual([
    [150, 20],
    [150, 180],
  ]);
  await page.click("details[data-part=marks] summary");
  await expect.poll(() => text(page, ".spread-picture figcaption")).toContain("220 × 320");
  await context.close();
});

test("two edges that are sewn together are measured against each other, and mended by ease or by size", async () => {
  const { page, context } = await openFront();
  await page.click("details[data-part=seams] summary");
  await page.click('details[data-part=seams] button:has-text("Seam")');
  const said = () => text(page, "details[data-part=seams] p");
  await expect
    .poll(said)
    .toBe("Front (bottom) is 3 mm longer than Gusset (bottom): ease it in, or mend one of them.");
  expect(await page.locator('section[aria-label="Seams whose sides differ"] li').count()).toBe(1);
  const ease = page.locator('[data-path="seams[0].ease"]');
  await ease.fill("3");
  await ease.press("Enter");
  await expect.poll(said).toContain("They fit with the ease");
  expect((await saved(page)).seams).toEqual([
    { first: [{ panel: "front", edge: "bottom" }], second: [{ panel: "gusset", edge: "bottom" }], ease: 3 },
  ]);
  expect(await page.locator('section[aria-label="Seams whose sides differ"]').count()).toBe(0);
  await context.close();
});

test("interfacing and lining by rule: their cloth, their size, how far inside they lie", async () => {
  const lining = { ...CANVAS, id: "lining", name: "Lining cotton", stock: [{ ...CANVAS.stock[0], id: "roll-2" }] };
  const { page, context } = await openFront({ ...BAG, materials: [CANVAS, lining] });
  await choose(page, "lining.materialId", "Lining cotton");
  await choose(page, "lining.cut", "a little inside the seam");
  await type(page, "lining.inset", "3");
  await choose(page, "interfacing.materialId", "Canvas");
  await choose(page, "interfacing.cut", "a little inside the seam");
  await type(page, "interfacing.inset", "5");
  const [front] = (await saved(page)).panels;
  expect(front?.["lining"]).toEqual({ material: "lining", cut: "inset", inset: 3 });
  expect(front?.["interfacing"]).toEqual({ material: "canvas", cut: "inset", inset: 5 });
  await choose(page, "lining.materialId", "none");
  expect((await saved(page)).panels[0]?.["lining"]).toBeUndefined();
  await context.close();
});

test("all of it by keyboard: an edge's allowance and a notch without a mouse", async () => {
  const { page, context } = await openFront();
  await page.focus("details[data-part=edges] summary");
  await page.keyboard.press("Enter");
  const active = () => page.evaluate(() => document.activeElement?.getAttribute("data-path") ?? "");
  for (let i = 0; i < 12 && !(await active()).endsWith("edges.bottom.allowance"); i++)
    await page.keyboard.press("Tab");
  expect(await active()).toBe("panels[0].edges.bottom.allowance");
  await page.keyboard.type("15");
  await page.keyboard.press("Tab");
  for (let i = 0; i < 4 && !(await active()).endsWith("edges.bottom.hem"); i++) await page.keyboard.press("Tab");
  await page.keyboard.press("Space");
  expect((await saved(page)).panels[0]?.["edges"]).toEqual([{ edge: "bottom", allowance: 15, hem: true }]);
  await context.close();
});

test("a shape turned into an outline keeps its edges' names and what they have of their own", async () => {
  const { page, context } = await openFront();
  await page.click("details[data-part=edges] summary");
  await type(page, "edges.top.allowance", "25");
  await choose(page, "shape.kind", "an outline of its own");
  await page.waitForSelector(".outline-desk");
  const [front] = (await saved(page)).panels;
  expect(front?.["edges"]).toEqual([{ edge: "top", allowance: 25 }]);
  await page.focus('[data-path="panels[0].edges.top.allowance"]');
  expect(await page.locator(".marked-edge").getAttribute("d")).toBe("M300 200L0 200");
  await context.close();
});
