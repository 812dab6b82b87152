// A whole job, from an empty project to pages, by keyboard alone and by touch alone: two cloths, eight parts, a leftover
// with two flaws, a pin, the pages.
import { readFileSync } from "node:fs";
import { PDFDocument } from "pdf-lib";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { openPage, openStage, type Stage } from "./browser.ts";

let stage: Stage;
beforeAll(async () => {
  stage = await openStage();
});
afterAll(() => stage.close());

/** One way to work the page. */
interface Hand {
  press(selector: string): Promise<void>;
  write(selector: string, text: string): Promise<void>;
  /** Takes the last choice of a list. */
  chooseLast(selector: string): Promise<void>;
  /** Pins the first piece of the plan. */
  pinPiece(): Promise<void>;
}

/** Most presses of Tab from one thing to any other on a page. */
const FAR = 400;

/** Nothing but keys: Tab and Shift+Tab to a thing, Enter, arrows, letters. */
function keyboard(page: Page): Hand {
  const tabTo = async (selector: string) => {
    const target = page.locator(selector).first();
    await target.waitFor();
    const where = () =>
      target.evaluate((element) => {
        const { activeElement } = document;
        if (activeElement === element) return "here";
        const isBefore = activeElement !== null && activeElement !== document.body;
        const position = isBefore ? activeElement.compareDocumentPosition(element) : 4;
        return (position & Node.DOCUMENT_POSITION_PRECEDING) !== 0 ? "before" : "after";
      });
    for (let i = 0; i < FAR; i++) {
      const way = await where();
      if (way === "here") return;
      await page.keyboard.press(way === "after" ? "Tab" : "Shift+Tab");
    }
    throw new Error(`${selector} is not reached by Tab`);
  };
  return {
    press: async (selector) => {
      await tabTo(selector);
      await page.keyboard.press("Enter");
    },
    write: async (selector, text) => {
      await tabTo(selector);
      await page.keyboard.press("Control+a");
      await page.keyboard.type(text);
      await page.keyboard.press("Enter");
    },
    chooseLast: async (selector) => {
      await tabTo(selector);
      await page.keyboard.press("End");
    },
    pinPiece: async () => {
      await tabTo(".lay-view");
      await page.keyboard.press("Enter");
      await page.waitForSelector(".selected-piece");
      await page.keyboard.press("p");
    },
  };
}

/** Nothing but taps; text comes from the keyboard that a phone shows, a list from the phone's own. */
function touch(page: Page): Hand {
  const tap = async (selector: string) => {
    const target = page.locator(selector).first();
    await target.scrollIntoViewIfNeeded();
    await target.tap();
  };
  return {
    press: tap,
    write: async (selector, text) => {
      await tap(selector);
      await page.locator(selector).first().fill(text);
      await page.keyboard.press("Enter");
    },
    chooseLast: async (selector) => {
      const target = page.locator(selector).first();
      await target.scrollIntoViewIfNeeded();
      await target.selectOption({ index: (await target.locator("option").count()) - 1 });
    },
    pinPiece: async () => {
      await tap(".piece");
      await tap(".selected-piece button:has-text('Pin')");
    },
  };
}

interface Doc {
  readonly panels: readonly { readonly materialId: string }[];
  readonly straps: readonly { readonly length: { readonly mm: number } }[];
  readonly materials: readonly {
    readonly id: string;
    readonly stock: readonly { readonly flaws: readonly { readonly x: number; readonly y: number }[] }[];
  }[];
  readonly pins: readonly { readonly materialId: string }[];
}

/** The open project as it is kept. */
function project(page: Page): Promise<Doc> {
  return page.evaluate(() => {
    type Held = { history: { steps: { value: Doc }[]; at: number } };
    const { laywright } = window as unknown as { laywright: { session: { state: { get(): Held } } } };
    const { history } = laywright.session.state.get();
    return history.steps[history.at]!.value;
  });
}

const pins = async (page: Page) => (await project(page)).pins.length;

async function wholeJob(page: Page, hand: Hand): Promise<void> {
  const cards = page.locator(".shelf .card");
  const place = (name: string) => hand.press(`.places a:has-text("${name}")`);
  for (let parts = 1; parts <= 8; parts++) {
    await hand.press(`.card-add button:has-text("${parts <= 6 ? "Panel" : "Strap"}")`);
    await expect.poll(() => cards.count()).toBe(parts);
  }
  await hand.write('[data-path="straps[1].length.mm"]', "60 cm");
  await place("Cloth");
  await hand.press('.card-add button:has-text("Material")');
  await expect.poll(() => cards.count()).toBe(2);
  await hand.press('section[aria-label="What there is of it"] button:has-text("Remnant")');
  const leftover = ".stock-list > .stock:last-child";
  await hand.press(`${leftover} summary:has-text("No flaws")`);
  await hand.press(`${leftover} button:has-text("Flaw")`);
  await page.waitForSelector(`${leftover} summary:has-text("1 flaw")`);
  await hand.press(`${leftover} button:has-text("Flaw")`);
  await page.waitForSelector(`${leftover} summary:has-text("2 flaws")`);
  await hand.write(`${leftover} [data-path$="flaws[1].x"]`, "6 cm");
  await hand.write(`${leftover} [data-path$="flaws[1].y"]`, "7 cm");
  await place("Bag");
  for (const nth of [4, 5]) {
    await hand.press(`.shelf li:nth-child(${nth}) .card`);
    await hand.chooseLast('.spread [data-path$=".materialId"]');
  }
  await place("Lay");
  await hand.press(".lay-materials a:last-child");
  await page.waitForSelector('.lay-materials a:last-child[aria-current="true"]');
  await page.waitForSelector(".piece");
  await hand.pinPiece();
  await expect.poll(() => pins(page)).toBe(1);
  // What she said is what there is: of the second cloth two panels, a leftover with two flaws, the second where she said.
  const doc = await project(page);
  expect(doc.panels.length + doc.straps.length).toBe(8);
  expect(doc.materials.length).toBe(2);
  const second = doc.materials[1]!;
  expect(doc.panels.filter(({ materialId }) => materialId === second.id).length).toBe(2);
  expect(doc.straps[1]!.length.mm).toBe(600);
  const flaws = second.stock.at(-1)!.flaws;
  expect(flaws.length).toBe(2);
  expect([flaws[1]!.x, flaws[1]!.y].map((mm) => mm > 30 && mm < 80)).toEqual([true, true]);
  expect(doc.pins[0]!.materialId).toBe(second.id);
  await place("Table");
  await page.waitForSelector(".page-miniature");
  const [download] = await Promise.all([
    page.waitForEvent("download", { timeout: 90_000 }),
    hand.press('button:has-text("Save the pages")'),
  ]);
  // A page for each that was shown, and the map before them.
  const pages = (await PDFDocument.load(readFileSync(await download.path()))).getPageCount();
  const told = (await page.textContent("strong.lay-length"))!;
  expect(pages).toBeGreaterThanOrEqual(Number(/\d+/u.exec(told)![0]));
}

test("two cloths, eight parts, a leftover with two flaws, a pin and the pages, by keyboard alone", async () => {
  const context = await stage.person({ acceptDownloads: true });
  const page = await openPage(context, stage.url);
  await wholeJob(page, keyboard(page));
  await context.close();
  // Some hundreds of presses, one after the other.
}, 300_000);

test("the same by touch alone, on a phone", async () => {
  const phone = { viewport: { width: 390, height: 760 }, hasTouch: true, isMobile: true };
  const context = await stage.person({ acceptDownloads: true, ...phone });
  const page = await openPage(context, stage.url);
  await wholeJob(page, touch(page));
  await context.close();
}, 300_000);
