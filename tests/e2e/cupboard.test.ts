// Leftovers kept in the browser: after a plan, in the next project, in two windows, over a restart, to and from a file.
import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { PNG } from "pngjs";
import { afterAll, beforeAll, expect, test } from "vitest";
import { readCupboard } from "../../src/core/cupboard/cupboardFile.ts";
import { seededRng } from "../../src/core/lay/search/rng.ts";
import { goTo, openFile, openPage, openStage, type Stage } from "./browser.ts";

let stage: Stage;
beforeAll(async () => {
  stage = await openStage();
});
afterAll(() => stage.close());

function project(name: string): string {
  const front = {
    id: "front",
    material: "canvas",
    shape: { kind: "rectangle", along: 300, across: 400 },
    count: 1,
  };
  const canvas = { id: "canvas", name: "Canvas", kind: "woven", thickness: 0.5, grain: "lengthwise" };
  const roll = { kind: "roll", id: "roll", width: 1000, squaring: 0 };
  return JSON.stringify({
    laywright: 1,
    name,
    unit: "mm",
    materials: [{ ...canvas, stock: [roll] }],
    panels: [front],
  });
}

/** Opens a project of one panel at its cloth. */
async function openAtCloth(page: Page, name: string): Promise<void> {
  await openFile(page, `${name}.json`, project(name));
  await page.waitForSelector(`.headline .project:has-text("${name}")`);
  await goTo(page, "#/cloth/canvas");
}

/** Opens a project of one panel at its cloth and keeps what its plan leaves; the code of the piece. */
async function keep(page: Page, name: string): Promise<string> {
  await openAtCloth(page, name);
  const offers = page.locator('[data-part="cupboard-offers"]');
  await offers.locator("summary:has-text('After cutting')").click();
  await page.fill('[data-path="cupboard.canvas.shade"]', "rust");
  await page.press('[data-path="cupboard.canvas.shade"]', "Enter");
  await offers.locator('button:has-text("Keep the leftovers")').click();
  const told = offers.locator('p[role="status"]');
  await expect.poll(() => told.textContent()).toMatch(/^Kept: \w{5}\./u);
  return /Kept: (\w{5})/u.exec((await told.textContent())!)![1]!;
}

const offered = (page: Page, code: string) => page.locator(`[data-part="cupboard-offers"] [data-code="${code}"]`);
const stockNamed = (page: Page, code: string) => page.locator(`.stock-name:has-text("${code}")`);

test("kept after one project, used first in the next, given back, undone; all of it over a restart", async () => {
  const context = await stage.person();
  const page = await openPage(context, stage.url);
  const code = await keep(page, "First");
  // The same plan is not kept twice without a word.
  await page.click('button:has-text("Keep the leftovers")');
  await page.waitForSelector("text=/Once is enough/");

  await openAtCloth(page, "Next");
  await page.reload();
  await offered(page, code).waitFor();
  expect(await offered(page, code).textContent()).toMatch(/Canvas · rust · rectangle\s300\s×\s600/u);
  await page.click(`button:has-text("Use ${code} first")`);
  await stockNamed(page, code).waitFor();
  await expect.poll(() => offered(page, code).count()).toBe(0);
  // The plan lies on it, and nothing is bought.
  await goTo(page, "#/lay/canvas");
  await page.waitForFunction((stockId) => {
    type Bench = {
      board: { lays: { get(): Map<string, { plan: { placements: { stockId: string }[] } | null }> } };
    };
    const { laywright } = globalThis as unknown as { laywright: Bench };
    const plan = laywright.board.lays.get().get("canvas")?.plan;
    return plan?.placements.length === 1 && plan.placements[0]!.stockId === stockId;
  }, code);

  await goTo(page, "#/cloth/canvas");
  const shelf = page.locator('[data-part="cupboard"]');
  await shelf.locator("summary").click();
  expect(await shelf.locator("summary").textContent()).toBe("Cupboard: 0 pieces, 1 out");
  await shelf.locator(`button:has-text("Give ${code} back")`).click();
  await offered(page, code).waitFor();
  await expect.poll(() => stockNamed(page, code).count()).toBe(0);
  // Undone, it is out for this project again, and in its stock.
  await shelf.locator('button:has-text("Undo giving back")').click();
  await stockNamed(page, code).waitFor();
  await shelf.locator('button:has-text("Undo taking out")').click();
  await offered(page, code).waitFor();
  await expect.poll(() => stockNamed(page, code).count()).toBe(0);
  await context.close();
});

test("two windows: what one takes the other does not have any more, and neither takes it twice", async () => {
  const context = await stage.person();
  const one = await openPage(context, stage.url);
  const code = await keep(one, "Window");
  await openAtCloth(one, "One");
  const two = await openPage(context, stage.url);
  await openAtCloth(two, "Two");
  await Promise.all([offered(one, code).waitFor(), offered(two, code).waitFor()]);
  // Both at once, before either has heard of the other.
  const press = (page: Page) =>
    page.evaluate((label) => {
      const buttons = [...document.querySelectorAll("button")];
      buttons.find((button) => button.textContent === label)?.click();
    }, `Use ${code} first`);
  await Promise.all([press(one), press(two)]);
  await expect
    .poll(async () => (await stockNamed(one, code).count()) + (await stockNamed(two, code).count()))
    .toBe(1);
  for (const page of [one, two]) await expect.poll(() => offered(page, code).count()).toBe(0);
  await one.waitForTimeout(500);
  expect((await stockNamed(one, code).count()) + (await stockNamed(two, code).count())).toBe(1);
  await context.close();
});

test("to a file that the command line reads, and into another browser", async () => {
  const context = await stage.person();
  const page = await openPage(context, stage.url);
  const code = await keep(page, "File");
  const shelf = page.locator('[data-part="cupboard"]');
  await shelf.locator("summary").click();
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    shelf.locator('button:has-text("Save the cupboard")').click(),
  ]);
  const text = readFileSync(await download.path(), "utf8");
  const read = readCupboard(text);
  expect(read.ok && read.value.pieces.map((piece) => [piece.code, piece.shade])).toEqual([[code, "rust"]]);
  await context.close();

  const other = await stage.person();
  const fresh = await openPage(other, stage.url, "#/cloth");
  const bring = (content: string) =>
    fresh.setInputFiles('input[data-picker="cupboard"]', {
      name: "cupboard.json",
      mimeType: "application/json",
      buffer: Buffer.from(content),
    });
  await bring(text);
  const brought = fresh.locator('[data-part="cupboard"]');
  await brought.locator(`[data-code="${code}"]`).waitFor({ state: "attached" });
  // Again brings nothing twice; a file with faults says which.
  await bring(text);
  await expect.poll(() => brought.locator("[data-code]").count()).toBe(1);
  await bring(text.replace('"material"', '"matrial"'));
  await brought.locator("text=/matrial/").waitFor({ state: "attached" });
  await expect.poll(() => brought.locator("[data-code]").count()).toBe(1);
  await other.close();
});

test("without storage the cupboard lasts as long as the page", async () => {
  const context = await stage.person();
  await context.addInitScript(() => {
    indexedDB.open = () => {
      throw new DOMException("refused", "SecurityError");
    };
  });
  const page = await openPage(context, stage.url);
  const code = await keep(page, "Nowhere");
  await offered(page, code).waitFor();
  await context.close();
});

/** A cupboard file of canvas pieces, each with its shade. */
const shelfFile = (pieces: readonly (readonly [code: string, shade: string])[]): string =>
  JSON.stringify({
    laywrightCupboard: 1,
    pieces: pieces.map(([code, shade], i) => {
      const stock = { kind: "remnant", shape: { kind: "rectangle", along: 300 + 10 * i, across: 400 } };
      return { code, material: "Canvas", shade, kept: "2027-01-04", stock };
    }),
  });

const bringIn = (page: Page, text: string) =>
  page.setInputFiles('input[data-picker="cupboard"]', {
    name: "cupboard.json",
    mimeType: "application/json",
    buffer: Buffer.from(text),
  });

test("pieces of one shade are taken together, and what is given back leaves the others in the stock", async () => {
  const context = await stage.person();
  const page = await openPage(context, stage.url);
  await openAtCloth(page, "Twins");
  await bringIn(
    page,
    shelfFile([
      ["RUST2", "rust"],
      ["NAVY2", "navy"],
      ["RUST3", "Rust"],
    ]),
  );
  await offered(page, "NAVY2").waitFor();
  // Not all at once: a bag in two shades is spoiled.
  expect(await page.locator('button:has-text("Use them all first")').count()).toBe(0);
  await page.click('button:has-text("Use all in rust first")');
  for (const code of ["RUST2", "RUST3"]) await stockNamed(page, code).waitFor();
  expect(await stockNamed(page, "NAVY2").count()).toBe(0);
  // The project knows what is out for it: more is taken without a question, and given back.
  await page.click('button:has-text("Use NAVY2 first")');
  await stockNamed(page, "NAVY2").waitFor();
  const shelf = page.locator('[data-part="cupboard"]');
  await shelf.locator("summary").click();
  await shelf.locator('button:has-text("Give NAVY2 back")').click();
  await expect.poll(() => stockNamed(page, "NAVY2").count()).toBe(0);
  for (const code of ["RUST2", "RUST3"]) expect(await stockNamed(page, code).count()).toBe(1);

  await context.close();
});

test("what is out for another project of the same name is not this one's: it is asked before more is taken", async () => {
  const context = await stage.person();
  const page = await openPage(context, stage.url);
  await openAtCloth(page, "Solo");
  // A cupboard that comes from another machine, with a piece out for a project of this name there.
  const shelf = JSON.parse(
    shelfFile([
      ["RUST5", "rust"],
      ["RUST6", "rust"],
    ]),
  );
  shelf.pieces[0].taken = { project: "Solo", on: "2027-01-05" };
  await bringIn(page, JSON.stringify(shelf));
  await page.click('button:has-text("Use RUST6 first")');
  await page.waitForSelector("text=/Pieces are out for a project called .Solo. already: RUST5, since 2027-01-05/");
  expect(await stockNamed(page, "RUST6").count()).toBe(0);
  await page.focus('button:has-text("They are more for this project")');
  await page.keyboard.press("Enter");
  await stockNamed(page, "RUST6").waitFor();
  // What is out for the other stays out of this one's stock, also when a step is undone.
  expect(await stockNamed(page, "RUST5").count()).toBe(0);
  const drawer = page.locator('[data-part="cupboard"]');
  await drawer.locator("summary").click();
  await drawer.locator('button:has-text("Undo taking out")').click();
  await expect.poll(() => stockNamed(page, "RUST6").count()).toBe(0);
  expect(await stockNamed(page, "RUST5").count()).toBe(0);
  await context.close();
});

test("a photo is kept with a piece, small, seen on its card after a restart and in the file; what is no picture is refused", async () => {
  const context = await stage.person();
  const page = await openPage(context, stage.url);
  await openAtCloth(page, "Photo");
  await bringIn(page, shelfFile([["RUST4", "rust"]]));
  const shelf = page.locator('[data-part="cupboard"]');
  await shelf.locator("summary").click();
  const picker = 'input[data-picker="photo-RUST4"]';
  const file = (name: string, mimeType: string, buffer: Buffer) =>
    page.setInputFiles(picker, { name, mimeType, buffer });
  await file("notes.txt", "text/plain", Buffer.from("no picture"));
  await shelf.locator("text=/notes.txt cannot be read as a picture/").waitFor();
  expect(await page.locator(".cupboard-photo").count()).toBe(0);
  // Noise of 1600 × 1200, which no program writes small: it has to be made smaller.
  const noise = new PNG({ width: 1600, height: 1200 });
  const rng = seededRng(4);
  for (let i = 0; i < noise.data.length; i++) noise.data[i] = i % 4 === 3 ? 255 : rng.below(256);
  await file("rust.png", "image/png", PNG.sync.write(noise));
  const photo = shelf.locator('[data-code="RUST4"] img.cupboard-photo');
  await photo.waitFor();
  expect(await photo.getAttribute("alt")).toBe("Photo of RUST4");
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    shelf.locator('button:has-text("Save the cupboard")').click(),
  ]);
  const read = readCupboard(readFileSync(await download.path(), "utf8"));
  const kept = read.ok ? read.value.pieces[0]!.photo! : "";
  expect(kept).toMatch(/^data:image\/jpeg;base64,/u);
  expect(kept.length).toBeLessThan(54_000);
  await page.reload();
  await page.locator('[data-part="cupboard-offers"] [data-code="RUST4"] img').waitFor();
  const seen = await page
    .locator('[data-part="cupboard-offers"] [data-code="RUST4"] img')
    .evaluate((image) => (image as HTMLImageElement).naturalWidth);
  expect(seen).toBeGreaterThan(100);
  await page.locator('[data-part="cupboard"] summary').click();
  await page.click('button:has-text("Undo the photo")');
  await expect.poll(() => page.locator(".cupboard-photo").count()).toBe(0);
  await context.close();
});
