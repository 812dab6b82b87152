// A maker's own pattern brought in by the page: what is wrong with it is told and mended, and its panel is one step.
import { PDFDocument } from "pdf-lib";
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
