// A maker's own pattern brought in by the page: what is wrong with it is told and mended, and its panel is one step.
import { PDFDocument } from "pdf-lib";
import type { Page } from "playwright-core";
import { PNG } from "pngjs";
import { afterAll, beforeAll, expect, test } from "vitest";
import { kept, openFile, openPage, openStage, type Stage } from "./browser.ts";

let stage: Stage;
beforeAll(async () => {
  stage = await openStage();
});
afterAll(() => stage.close());

/** A front whose last corner stays open by 0.8 mm, and a line to sew along. */
const GAPPED = `<svg xmlns="http://www.w3.org/2000/svg" width="200mm" height="140mm" viewBox="0 0 200 140">
  <path id="Front" d="M20 10H170V110H20V10.8" fill="none" stroke="#000"/>
  <path id="Pocket seam" d="M40 60H150" fill="none" stroke="#00f"/>
</svg>`;

const asFile = (name: string, buffer: Buffer, mimeType = "image/svg+xml") => ({ name, mimeType, buffer });

test("a drawing with a gap is mended with one press and becomes a panel in one step", async () => {
  const context = await stage.person();
  const page = await openPage(context, stage.url);
  await page.setInputFiles("input[data-picker=pattern]", asFile("front.svg", Buffer.from(GAPPED)));
  // The gap is told, and with it nothing can be cut yet.
  const gap = await page.waitForSelector("[data-mend=gaps]");
  expect((await gap.textContent())?.replaceAll("\u00a0", " ")).toContain("open by 0.8 mm");
  await page.waitForSelector("text=There is no panel in it yet");
  await page.click("[data-mend=gaps] button");
  await page.waitForSelector('button:has-text("Add the panel")');
  // The change is shown before it is accepted: the closed outline thick, the open one dashed over it.
  expect(await page.locator(".mend-picture .mend-new").getAttribute("d")).toMatch(/Z$/u);
  expect(await page.locator(".mend-picture .mend-gone").getAttribute("d")).toMatch(/[^Z]$/u);
  const front = await page.textContent(".found-line:has-text('Front')");
  expect(front?.replaceAll("\u00a0", " ")).toContain("150 × 100 mm, closed");
  expect(await page.inputValue('[data-path="pattern.roles.Front"]')).toBe("cut");
  // The seam's name says what it is for; the maker says otherwise.
  expect(await page.inputValue('[data-path="pattern.roles.Pocket seam"]')).toBe("stitch");
  await page.selectOption('[data-path="pattern.roles.Pocket seam"]', "mark");
  await page.waitForSelector('section[aria-busy=false] button:has-text("Add the panel")');
  await page.click('button:has-text("Add the panel")');
  const cards = () => page.$$eval(".shelf .card-name", (names) => names.map((name) => name.textContent));
  await page.waitForSelector(".shelf .card-name:has-text('Front')");
  expect(await cards()).toEqual(["Front"]);
  expect(await page.locator("input[data-picker=pattern]").count()).toBe(1);
  await kept(page);
  await page.keyboard.press("Control+z");
  await page.waitForSelector(".empty");
  expect(await cards()).toEqual([]);
  await context.close();
});

/** A front with a part of its lower edge drawn once more. */
const DOUBLED = `<svg xmlns="http://www.w3.org/2000/svg" width="200mm" height="140mm" viewBox="0 0 200 140">
  <path id="Front" d="M20 10H170V110H20Z" fill="none" stroke="#000"/>
  <path id="Again" d="M60 110H120L130 100" fill="none" stroke="#000"/>
</svg>`;

test("a line that lies on part of another is told in the project's unit and cut back with one press, and back", async () => {
  const context = await stage.person();
  const page = await openPage(context, stage.url);
  const materials = [{ id: "c", kind: "woven", thickness: "0.5 mm" }];
  await openFile(page, "inches.json", JSON.stringify({ laywright: 1, name: "Quay", unit: "in", materials }));
  await page.waitForSelector('.headline .project:has-text("Quay")');
  await page.setInputFiles("input[data-picker=pattern]", asFile("front.svg", Buffer.from(DOUBLED)));
  const told = await page.waitForSelector("[data-mend=doubles]");
  // 60 mm are 2.36 in, on the ruler 2 3/8 in.
  expect((await told.textContent())?.replaceAll("\u00a0", " ")).toContain("≈2 3/8 in of it lie on a part of");
  await page.click("[data-mend=doubles] button");
  await page.waitForSelector(".mend-picture");
  expect(await page.locator(".mend-picture .mend-gone").count()).toBe(1);
  expect(await page.locator(".mend-picture .mend-new").count()).toBe(1);
  expect(await page.locator(".found-line").count()).toBe(2);
  await page.click('[data-mend=doubles] button:has-text("Leave it as drawn")');
  await page.waitForSelector(".mend-picture", { state: "detached" });
  await context.close();
});

test("what the pattern cannot say of its panels is asked: of which material, how many", async () => {
  const context = await stage.person();
  const page = await openPage(context, stage.url);
  const materials = ["Canvas", "Lining"].map((name) => ({
    id: name.toLowerCase(),
    name,
    kind: "woven",
    thickness: 0.5,
  }));
  await openFile(page, "two.json", JSON.stringify({ laywright: 1, name: "Quay", materials }));
  await page.waitForSelector('.headline .project:has-text("Quay")');
  const closed = GAPPED.replace("V10.8", "Z");
  await page.setInputFiles("input[data-picker=pattern]", asFile("front.svg", Buffer.from(closed)));
  await page.waitForSelector('section[aria-busy=false] button:has-text("Add the panel")');
  // It is cut from the first cloth unless she says otherwise.
  expect(await page.inputValue('[data-path="pattern.material"]')).toBe("canvas");
  await page.selectOption('[data-path="pattern.material"]', { label: "Lining" });
  await page.fill('[data-path="pattern.count"]', "3");
  await page.press('[data-path="pattern.count"]', "Enter");
  await page.click('button:has-text("Add the panel")');
  await page.waitForSelector(".shelf .card-name:has-text('Front')");
  expect(await page.inputValue('[data-path="panels[0].materialId"]')).toBe("lining");
  expect(await page.inputValue('[data-path="panels[0].count"]')).toBe("3");
  await context.close();
});

test("a page of a PDF is read in the browser; a picture is told by what it holds", async () => {
  const context = await stage.person();
  const page = await openPage(context, stage.url);
  const document = await PDFDocument.create();
  // 72 points are an inch: 5 by 3 in.
  document.addPage([500, 400]).drawRectangle({ x: 50, y: 50, width: 360, height: 216, borderWidth: 1 });
  await page.setInputFiles(
    "input[data-picker=pattern]",
    asFile("page.pdf", Buffer.from(await document.save()), "application/pdf"),
  );
  await page.waitForSelector('button:has-text("Add the panel")');
  expect((await page.textContent(".found-line"))?.replaceAll("\u00a0", " ")).toContain("127 × 76.2 mm, closed");
  await page.click('button:has-text("Leave it out")');
  await page.waitForSelector(".empty");
  const png = Buffer.from("89504e470d0a1a0a0000000d", "hex");
  await page.setInputFiles("input[data-picker=pattern]", asFile("photo.svg", png));
  await page.waitForSelector("text=is not a picture that can be read");
  await context.close();
});

test("a photograph with our sheet in it is read in the browser; a drawing let go over the page opens as a pattern", async () => {
  const context = await stage.person();
  const page = await openPage(context, stage.url);
  await page.setInputFiles("input[data-picker=pattern]", "fixtures/paper-pattern.jpg");
  await page.waitForSelector('button:has-text("Add the panel")');
  expect((await page.textContent(".found-line"))?.replaceAll("\u00a0", " ")).toContain("240.3 × 180.3 mm, closed");
  await page.click('button:has-text("Leave it out")');
  await page.waitForSelector(".empty");
  await page.evaluate((svg) => {
    const data = new DataTransfer();
    data.items.add(new File([svg], "front.svg", { type: "image/svg+xml" }));
    document.body.dispatchEvent(new DragEvent("drop", { dataTransfer: data, bubbles: true, cancelable: true }));
  }, GAPPED);
  await page.waitForSelector("[data-mend=gaps]");
  // What is said of a line stays when another's gap is closed, also where lines are counted anew.
  await page.selectOption('[data-path="pattern.roles.Pocket seam"]', "drill");
  await page.waitForSelector("section[aria-busy=false] [data-mend=gaps]");
  await page.click("[data-mend=gaps] button");
  await page.waitForSelector('button:has-text("Add the panel")');
  expect(await page.inputValue('[data-path="pattern.roles.Pocket seam"]')).toBe("drill");
  await context.close();
});

/** A table photographed from straight above, a pixel for each half millimetre: `light` says whether a place is light. */
function photograph(width: number, height: number, light: (x: number, y: number) => boolean): Buffer {
  const image = new PNG({ width, height });
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++)
      image.data.fill(light(x, y) ? 240 : 40, 4 * (y * width + x), 4 * (y * width + x) + 3);
  for (let i = 3; i < image.data.length; i += 4) image.data[i] = 255;
  return PNG.sync.write(image);
}
const within = (x: number, y: number, [x0, y0, x1, y1]: readonly [number, number, number, number]): boolean =>
  x >= x0 && x < x1 && y >= y0 && y < y1;
const size = async (page: Page): Promise<string> =>
  ((await page.textContent(".found-line")) ?? "").replaceAll("\u00a0", " ");

test("a photograph without our sheet has its scale from two points, pressed or written, or from the paper it lies on", async () => {
  const context = await stage.person();
  const page = await openPage(context, stage.url);
  // A card of 200 × 150 mm on a dark table.
  const card = photograph(800, 600, (x, y) => within(x, y, [200, 150, 600, 450]));
  await page.setInputFiles("input[data-picker=pattern]", asFile("card.png", card, "image/png"));
  await page.selectOption('[data-path="pattern.scale"]', "points");
  const photo = page.locator(".photo-points img");
  await photo.waitFor();
  await expect.poll(async () => (await photo.boundingBox())?.height ?? 0).toBeGreaterThan(100);
  const box = (await photo.boundingBox())!;
  await photo.click({ position: { x: box.width * 0.25, y: box.height * 0.25 } });
  await page.waitForSelector("text=Press point 2 of 2");
  for (const [axis, pixels] of ["600", "150"].entries()) {
    await page.fill(`[data-path="pattern.spots.1.${axis}"]`, pixels);
    await page.press(`[data-path="pattern.spots.1.${axis}"]`, "Enter");
  }
  await page.fill('[data-path="pattern.apart"]', "200 mm");
  await page.press('[data-path="pattern.apart"]', "Enter");
  await expect
    .poll(() => size(page), { timeout: 30_000 })
    .toMatch(/(199|200|201)(\.\d)? × (149|150|151)(\.\d)? mm/u);
  // The table round the card is no line of the pattern.
  expect(await page.locator(".found-line").count()).toBe(1);
  await page.click('button:has-text("Leave it out")');
  // A drawn frame of 100 × 60 mm on a sheet of A5.
  const sheet = photograph(500, 640, (x, y) => {
    const isFrame = within(x, y, [150, 200, 350, 320]) && !within(x, y, [152, 202, 348, 318]);
    return within(x, y, [100, 100, 396, 520]) && !isFrame;
  });
  await page.setInputFiles("input[data-picker=pattern]", asFile("sheet.png", sheet, "image/png"));
  await page.selectOption('[data-path="pattern.scale"]', "paper");
  await page.selectOption('[data-path="pattern.paper"]', "A5");
  await expect.poll(() => size(page), { timeout: 30_000 }).toMatch(/(99|100|101)(\.\d)? × (59|60|61)(\.\d)? mm/u);
  await context.close();
});

test("sheets of a PDF that nothing joins are laid in rows by hand, less what is cut off every side", async () => {
  const context = await stage.person();
  const page = await openPage(context, stage.url);
  const mm = 72 / 25.4;
  const pdf = await PDFDocument.create();
  // The left and the right half of a frame of 150 × 60 mm, on sheets of 100 × 100 mm of which 10 mm are cut off.
  for (const [from, to] of [
    [10, 90],
    [10, 90],
  ]) {
    const sheet = pdf.addPage([100 * mm, 100 * mm]);
    const isLeft = pdf.getPageCount() === 1;
    const line = (x0: number, y0: number, x1: number, y1: number) =>
      sheet.drawLine({ start: { x: x0 * mm, y: y0 * mm }, end: { x: x1 * mm, y: y1 * mm }, thickness: 0.5 });
    line(from! + (isLeft ? 5 : 0), 20, to! - (isLeft ? 0 : 5), 20);
    line(from! + (isLeft ? 5 : 0), 80, to! - (isLeft ? 0 : 5), 80);
    line(isLeft ? 15 : 85, 20, isLeft ? 15 : 85, 80);
  }
  await page.setInputFiles(
    "input[data-picker=pattern]",
    asFile("halves.pdf", Buffer.from(await pdf.save()), "application/pdf"),
  );
  await page.selectOption('[data-path="pattern.sheets"]', "rows");
  await page.fill('[data-path="pattern.trim"]', "10 mm");
  await page.press('[data-path="pattern.trim"]', "Enter");
  await expect.poll(() => size(page), { timeout: 30_000 }).toContain("150 × 60 mm, closed");
  await context.close();
});

test("reading that takes long is stopped by a press, and the file can be chosen once more", async () => {
  const context = await stage.person();
  const page = await openPage(context, stage.url);
  // The reader never arrives: the file is read for as long as nobody stops it.
  await context.route(/patternWorker/u, () => {});
  await page.setInputFiles("input[data-picker=pattern]", asFile("front.svg", Buffer.from(GAPPED)));
  await page.click("button:has-text('Stop reading')");
  await page.waitForSelector("text=Reading front.svg was stopped");
  expect(await page.locator("button:has-text('Stop reading')").count()).toBe(0);
  await context.unroute(/patternWorker/u);
  await page.click('button:has-text("Leave it out")');
  await page.setInputFiles("input[data-picker=pattern]", asFile("front.svg", Buffer.from(GAPPED)));
  await page.waitForSelector("[data-mend=gaps]");
  await context.close();
});
