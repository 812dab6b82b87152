// Photographs: a swatch that looks like the cloth, and a leftover drawn over a picture of it.
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { encode } from "fast-png";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { demoText, goTo, kept, openFile, openPage, openStage, type Stage } from "./browser.ts";

let stage: Stage;
beforeAll(async () => {
  stage = await openStage();
});
afterAll(() => stage.close());

/** A picture twice as wide as high, one colour. */
function plainPicture([red, green, blue]: readonly [number, number, number]): Buffer {
  const [width, height] = [200, 100];
  const data = new Uint8Array(width * height * 3);
  for (let i = 0; i < data.length; i += 3) data.set([red, green, blue], i);
  return Buffer.from(encode({ width, height, data, channels: 3, depth: 8 }));
}

const picture = (name: string, buffer: Buffer) => ({ name, mimeType: "image/png", buffer });
const addRemnant = 'section[aria-label="What there is of it"] button:has-text("Remnant")';

/** Colour at the middle of the first swatch's photograph. */
function swatchColour(page: Page): Promise<number[]> {
  return page.evaluate(async () => {
    const shown = document.querySelector(".shelf .swatch image")!.getAttribute("href")!;
    // The page may show pictures of its own and fetch nothing.
    const photo = new Image();
    photo.src = shown;
    await photo.decode();
    const pen = new OffscreenCanvas(1, 1).getContext("2d")!;
    pen.drawImage(photo, photo.naturalWidth / 2, photo.naturalHeight / 2, 1, 1, 0, 0, 1, 1);
    return [...pen.getImageData(0, 0, 1, 1).data.slice(0, 3)];
  });
}

test("a photograph becomes the swatch, in other projects too, and is taken away again", async () => {
  const context = await stage.person();
  const page = await openPage(context, stage.url);
  await openFile(page, "demo.json", demoText());
  await page.waitForSelector(".card-name:has-text('Gusset')");
  await goTo(page, "#/cloth/sailcloth");
  await page.waitForSelector("input[data-picker=swatch]", { state: "attached" });
  await page.setInputFiles("input[data-picker=swatch]", picture("notes.png", Buffer.from("no picture")));
  await page.waitForSelector('.refusal:has-text("notes.png")');
  await page.setInputFiles("input[data-picker=swatch]", picture("sail.png", plainPicture([180, 90, 30])));
  await page.waitForSelector(".shelf .swatch image");
  const colour = await swatchColour(page);
  for (const [i, value] of [180, 90, 30].entries()) expect(Math.abs(colour[i]! - value)).toBeLessThan(12);
  await kept(page);
  await page.waitForTimeout(300);
  await page.reload();
  await page.waitForSelector(".shelf .swatch image");
  // Named otherwise, it is the same cloth.
  await page.fill('[data-path="materials[0].name"]', "Tan sailcloth");
  await page.waitForTimeout(1200);
  expect(await page.locator(".shelf .swatch image").count()).toBe(1);
  await page.click('button:has-text("Take the photograph away")');
  await expect.poll(() => page.locator(".shelf .swatch image").count()).toBe(0);
  await context.close();
});

test("a leftover is drawn over its photograph: to scale by the photo sheet, or by the width that she types", async () => {
  const context = await stage.person();
  const page = await openPage(context, stage.url);
  await goTo(page, "#/cloth");
  await page.click(".shelf .card");
  await page.click(addRemnant);
  const desk = ".stock-list .outline-desk";
  await page.waitForSelector(desk);
  await page.setInputFiles("input[data-picker=leftover]", picture("plain.png", plainPicture([90, 90, 90])));
  const wide = ".stock-list input[data-path$='shape.photo']";
  await page.waitForSelector(wide, { timeout: 60_000 });
  expect(await page.inputValue(wide)).toMatch(/^600/u);
  await page.fill(wide, "1 m");
  await page.press(wide, "Enter");
  const size = () =>
    page.evaluate((where) => {
      const image = document.querySelector(`${where} image`);
      return [image?.getAttribute("width"), image?.getAttribute("height")].map(Number);
    }, desk);
  await expect.poll(size).toEqual([1000, 500]);
  // Our paper pattern with the sheet beside it: 240 × 180 mm, as it was drawn before it was photographed.
  const photo = fileURLToPath(new URL("../../fixtures/paper-pattern.jpg", import.meta.url));
  await page.setInputFiles("input[data-picker=leftover]", {
    name: "leftover.jpg",
    mimeType: "image/jpeg",
    buffer: readFileSync(photo),
  });
  await page.click('button:has-text("Take the outline that was found")', { timeout: 60_000 });
  await page.waitForSelector(".stock-name:has-text('remnant')");
  const name = async () => ((await page.textContent(".stock-name")) ?? "").replaceAll("\u00a0", " ");
  await expect.poll(name).toMatch(/240(\.\d)? mm × 180(\.\d)? mm/u);
  expect(await page.locator(`${desk} image`).count()).toBe(1);
  await page.keyboard.press("Control+z");
  await expect.poll(name).toMatch(/600 mm × 400 mm/u);
  await context.close();
});
