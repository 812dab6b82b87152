// A strap from nothing to pages in the hand, measured by programs we did not write (PDFium, and poppler where it is).
import { readFileSync } from "node:fs";
import { afterAll, beforeAll, expect, test } from "vitest";
import { type PagePicture, PDF_DRAWERS, pageSizes } from "../tools/pdfReaders.ts";
import { lineCentre, passingFile } from "../tools/programs.ts";
import { goTo, kept, openPage, openStage, type Stage } from "./browser.ts";

let stage: Stage;
beforeAll(async () => {
  stage = await openStage();
});
afterAll(() => stage.close());

const DPI = 200;

/** Distance in mm between the two upright lines of the large square that a row of the page crosses. */
function squareWidth(picture: PagePicture, atY: number): number {
  const px = picture.perMm.x;
  const dark: number[] = [];
  const row = Math.round(atY * px);
  for (let x = 0; x < picture.width; x++) if (picture.data[row * picture.width + x]! < 128) dark.push(x);
  const left = dark[0]!;
  const right = dark.filter((x) => x < left + 102 * px).at(-1)!;
  const centre = (x: number) => lineCentre(picture, "x", x - 3, x + 3, row);
  return (centre(right) - centre(left)) / px;
}

test("a new strap becomes pages whose test square measures true", async () => {
  const context = await stage.person({ acceptDownloads: true });
  const page = await openPage(context, stage.url);
  await page.click('button:has-text("Strap")');
  await page.fill('[data-path="straps[0].width.mm"]', "1 1/4 in");
  await page.fill('[data-path="straps[0].length.mm"]', "45 cm");
  await page.press('[data-path="straps[0].length.mm"]', "Enter");
  await page.waitForSelector("text=/cut 12\\d.*mm/");
  await goTo(page, "#/lay");
  await page.waitForSelector(".piece");
  await page.waitForSelector("text=/of Canvas is used/");
  await goTo(page, "#/table/paper");
  await page.waitForSelector(".page-miniature");
  const [download] = await Promise.all([
    page.waitForEvent("download", { timeout: 60_000 }),
    page.click('button:has-text("Save the pages")'),
  ]);
  expect(download.suggestedFilename()).toMatch(/canvas.*-a4\.pdf$/);
  const file = passingFile("pages.pdf", readFileSync(await download.path()));
  const [size] = await pageSizes(file);
  // ISO 216: A4 is 210 × 297 mm.
  expect(size!.width).toBeCloseTo((210 * 72) / 25.4, 1);
  expect(size!.height).toBeCloseTo((297 * 72) / 25.4, 1);
  // The large square stands on the map page, between 3 and 13 cm from its top whatever the heading says.
  for (const drawer of PDF_DRAWERS) {
    const picture = await drawer.draw(file, 1, DPI);
    for (const y of [70, 90]) expect(Math.abs(squareWidth(picture, y) - 100)).toBeLessThan(0.15);
  }
  await kept(page);
  await context.close();
});
