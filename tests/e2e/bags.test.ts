// A bag in each body, made from its measures in the page: its pieces, and what follows when a measure is changed.
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { BAG_BODIES } from "../../src/core/bags/bagWish.ts";
import { goTo, kept, openFile, openPage, openStage, type Stage, savedText } from "./browser.ts";

let stage: Stage;
beforeAll(async () => {
  stage = await openStage();
});
afterAll(() => stage.close());

interface SeamFile {
  readonly first: readonly { readonly panel: string; readonly edge: string | number }[];
  readonly second: SeamFile["first"];
  readonly ease?: number;
}

/** Length of an edge as the browser itself measures the line that the page draws of it, mm. */
async function drawnLength(page: Page, index: number, edge: string | number): Promise<number> {
  await page.focus(`[data-path="panels[${index}].corners.${edge}"]`);
  await page.focus(`[data-path="panels[${index}].edges.${edge}.allowance"]`);
  return await page.$eval(".marked-edge", (path) => (path as SVGPathElement).getTotalLength());
}

/**
 * Every seam of the bag with both its sides measured in the page by the browser's own path measure, which shares no
 * code with ours. mm.
 */
async function seamsOnPage(page: Page): Promise<{ readonly name: string; readonly over: number }[]> {
  const { panels, seams } = JSON.parse(await savedText(page)) as {
    readonly panels: readonly { readonly id: string }[];
    readonly seams: readonly SeamFile[];
  };
  const lengths = new Map<string, number>();
  for (const [index, { id }] of panels.entries()) {
    const edges = seams.flatMap(({ first, second }) => [...first, ...second]).filter(({ panel }) => panel === id);
    if (edges.length === 0) continue;
    await goTo(page, `#/bag/${id}`);
    await page.click(`.spread:has([data-path="panels[${index}].name"]) details[data-part=edges] summary`);
    for (const { edge } of edges) lengths.set(`${id} ${edge}`, await drawnLength(page, index, edge));
  }
  const sum = (side: SeamFile["first"]) =>
    side.reduce((total, { panel, edge }) => total + lengths.get(`${panel} ${edge}`)!, 0);
  return seams.map(({ first, second, ease }) => ({
    name: JSON.stringify([first, second]),
    over: sum(first) - sum(second) - (ease ?? 0),
  }));
}

test.each(BAG_BODIES)("a bag from its measures: %s", async (body) => {
  const context = await stage.person();
  const page = await openPage(context, stage.url);
  const begun = performance.now();
  await page.selectOption('[data-path="bag.body"]', body);
  await page.fill('[data-path="bag.width"]', "32 cm");
  await page.press('[data-path="bag.width"]', "Enter");
  await page.fill('[data-path="bag.height"]', "24 cm");
  await page.press('[data-path="bag.height"]', "Enter");
  await page.click('button:has-text("Make the bag")');
  await page.waitForSelector('[data-path="measures[0].length"]');
  console.info(`${body}: made from its measures in ${((performance.now() - begun) / 1000).toFixed(1)} s`);
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
  // Sewn together on paper, after the change too: every pair of edges that meets is of one length.
  const seams = await seamsOnPage(page);
  expect(seams.length).toBeGreaterThanOrEqual(2);
  for (const { name, over } of seams) expect(Math.abs(over), name).toBeLessThan(0.05);
  expect(await page.locator('section[aria-label="Seams whose sides differ"]').count()).toBe(0);
  await kept(page);
  await context.close();
});

test("a size can be that of another panel; it changes with it, and two that follow each other are refused", async () => {
  const page = await openPage(await stage.person(), stage.url);
  const cloth = { kind: "roll", id: "roll", width: "1400 mm" };
  const rectangle = { kind: "rectangle", along: "300 mm", across: "200 mm" };
  const project = {
    ...{ laywright: 1, name: "Two", materials: [{ id: "c", kind: "woven", thickness: "0.5 mm", stock: [cloth] }] },
    panels: [
      { id: "front", name: "Front", material: "c", shape: rectangle },
      { id: "pocket", name: "Pocket", material: "c", shape: { ...rectangle, across: "120 mm" } },
    ],
  };
  await openFile(page, "two.json", JSON.stringify(project));
  await page.click(".card-name:has-text('Pocket')");
  const follow = "summary:has-text('Sizes that follow another panel')";
  await page.click(follow);
  const choice = '[data-path="panels[1].shape.across.of"]';
  await page.selectOption(choice, { label: "Front: across the grain" });
  await expect.poll(() => page.inputValue('[data-path="panels[1].shape.across"]')).toContain("200");
  await page.click(".card-name:has-text('Front')");
  await page.fill('[data-path="panels[0].shape.across"]', "260 mm");
  await page.press('[data-path="panels[0].shape.across"]', "Enter");
  await page.click(follow);
  await page.selectOption('[data-path="panels[0].shape.across.of"]', { label: "Pocket: across the grain" });
  await page.waitForSelector("[data-path='panels[0].shape.across.of'][aria-invalid=true]");
  await page.click(".card-name:has-text('Pocket')");
  await expect.poll(() => page.inputValue('[data-path="panels[1].shape.across"]')).toContain("260");
  await page.click(follow);
  await page.selectOption(choice, "");
  await expect.poll(() => page.inputValue(choice)).toBe("");
  expect(await page.inputValue('[data-path="panels[1].shape.across"]')).toContain("260");
});
