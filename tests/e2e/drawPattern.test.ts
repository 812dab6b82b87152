// A pattern brought in is put right by hand on the drawing desk before its panels are added.
import { afterAll, beforeAll, expect, test } from "vitest";
import { kept, openPage, openStage, type Stage } from "./browser.ts";

let stage: Stage;
beforeAll(async () => {
  stage = await openStage();
});
afterAll(() => stage.close());

const plain = (text: string | null) => (text ?? "").replaceAll("\u00a0", " ");

const DRAWN = `<svg xmlns="http://www.w3.org/2000/svg" width="220mm" height="160mm" viewBox="0 0 220 160">
  <path id="Front" d="M20 20H170V120H20Z" fill="none" stroke="#000"/>
</svg>`;

test("the outline of a photograph is put right over the straightened photograph, step by step", async () => {
  const context = await stage.person();
  const page = await openPage(context, stage.url);
  await page.setInputFiles("input[data-picker=pattern]", "fixtures/paper-pattern.jpg");
  await page.waitForSelector('button:has-text("Add the panel")');
  const card = async () => plain(await page.textContent(".found-line"));
  expect(await card()).toContain("240.3 × 180.3 mm");
  await page.click('.found-line button:has-text("Put right by hand")');
  await page.locator(".desk-board").scrollIntoViewIfNeeded();
  // The photograph lies under the line: as dark inside the drawn edge as paper and as its ground are, not one colour.
  const href = await page.getAttribute(".desk-board image", "href");
  const shades = await page.evaluate(async (url) => {
    const picture = new Image();
    picture.src = url!;
    await picture.decode();
    const canvas = new OffscreenCanvas(picture.width, picture.height);
    const pen = canvas.getContext("2d")!;
    pen.drawImage(picture, 0, 0);
    const at = (x: number, y: number) => pen.getImageData(x * picture.width, y * picture.height, 1, 1).data[0]!;
    return { middle: at(0.5, 0.5), rim: at(0.02, 0.5), ratio: picture.width / picture.height };
  }, href);
  expect(Math.abs(shades.middle - shades.rim)).toBeGreaterThan(40);
  // 240.3 × 180.3 mm with 25 mm round them.
  expect(shades.ratio).toBeCloseTo(290.3 / 230.3, 1);
  // By keys: a corner to the left by 5 mm.
  const places = () =>
    page.$$eval(".corner", (all) =>
      all.map((one) =>
        /([\d.−-]+)\s*mm along, ([\d.−-]+)/u.exec(one.getAttribute("aria-label")!)!.slice(1).map(Number),
      ),
    );
  const before = await places();
  const rightmost = before.reduce((best, place, i) => (place[0]! > before[best]![0]! ? i : best), 0);
  await page.locator(".corner").nth(rightmost).focus();
  await page.keyboard.press("ArrowRight");
  await expect.poll(card).toContain("put right by hand");
  expect((await places())[rightmost]![0]).toBeCloseTo(before[rightmost]![0]! + 5, 1);
  const wider = Number(/([\d.]+) × /u.exec(await card())![1]);
  expect(wider).toBeGreaterThan(244);
  await page.keyboard.press("Control+z");
  await expect.poll(card).toContain("240.3 × 180.3 mm");
  await page.keyboard.press("Control+Shift+z");
  await expect.poll(card).toContain(`${wider} × `);
  await page.click('.corrected-line button:has-text("Done")');
  await page.click('button:has-text("Add the panel")');
  await page.waitForSelector(`.shelf .card:has-text("${wider}")`);
  await kept(page);
  await context.close();
});

test("a drawn outline too: a corner more, an arc, one less; what crosses itself is refused; as it was read", async () => {
  const context = await stage.person();
  const page = await openPage(context, stage.url);
  await page.setInputFiles("input[data-picker=pattern]", {
    name: "front.svg",
    mimeType: "image/svg+xml",
    buffer: Buffer.from(DRAWN),
  });
  await page.click('.found-line button:has-text("Put right by hand")');
  const corners = () => page.locator(".corner").count();
  expect(await corners()).toBe(4);
  await page.focus('.edge-middle[aria-label$="150\u00a0mm"]');
  await page.keyboard.press("Enter");
  await expect.poll(corners).toBe(5);
  await page.click('.desk-words button:has-text("Take it away")');
  await expect.poll(corners).toBe(4);
  await page.focus('.edge-middle[aria-label$="150\u00a0mm"]');
  for (let i = 0; i < 4; i++) await page.keyboard.press("ArrowUp");
  const card = async () => plain(await page.textContent(".found-line"));
  await expect.poll(card).toContain("150 × 120 mm");
  // A corner put across the far edge: told, and the outline stays.
  await page.click(".corrected-line summary");
  const field = page.locator('.corner-list [data-path$="[0].y"]');
  const value = await field.inputValue();
  await field.fill("5 m");
  await field.press("Enter");
  await page.waitForSelector(".corner-list .refusal");
  expect(plain(await page.textContent(".corner-list .refusal"))).toMatch(/cross/u);
  await field.press("Escape");
  expect(await field.inputValue()).toBe(value);
  await page.click('button:has-text("Add the panel")');
  await page.waitForSelector('.shelf .card:has-text("150\u00a0×\u00a0120")');
  await page.keyboard.press("Control+z");
  await page.waitForSelector(".empty");
  await page.setInputFiles("input[data-picker=pattern]", {
    name: "front.svg",
    mimeType: "image/svg+xml",
    buffer: Buffer.from(DRAWN),
  });
  await page.click('.found-line button:has-text("Put right by hand")');
  await page.focus('.edge-middle[aria-label$="150\u00a0mm"]');
  await page.keyboard.press("ArrowUp");
  await expect.poll(card).toContain("150 × 105 mm");
  await page.click('button:has-text("As it was read")');
  await expect.poll(card).toContain("150 × 100 mm");
  await context.close();
});

test("what was put right of a line stays when the file is read in another unit, and when the line is opened again", async () => {
  const context = await stage.person();
  const page = await openPage(context, stage.url);
  await page.setInputFiles("input[data-picker=pattern]", {
    name: "front.svg",
    mimeType: "image/svg+xml",
    buffer: Buffer.from(DRAWN),
  });
  await page.click('.found-line button:has-text("Put right by hand")');
  await page.focus('.edge-middle[aria-label$="150\u00a0mm"]');
  for (let i = 0; i < 4; i++) await page.keyboard.press("ArrowUp");
  const card = async () => plain(await page.textContent(".found-line"));
  await expect.poll(card).toContain("150 × 120 mm");
  await page.click('.corrected-line button:has-text("Done")');
  await page.waitForSelector(".corrected-line", { state: "detached" });
  await page.click('.found-line button:has-text("Put right by hand")');
  await page.waitForSelector('.edge-middle[aria-label$="150\u00a0mm"]');
  expect(await card()).toContain("put right by hand");
  // 150 mm are 566.93 px (CSS: 96 to the inch); read as so many centimetres, the bow with it, the line still on the desk.
  await page.selectOption('[data-path="pattern.unit"]', "cm");
  await expect.poll(card).toContain("5669.3 × 4535.4 mm");
  expect(await card()).toContain("put right by hand");
  expect(await page.locator(".corrected-line").count()).toBe(1);
  await page.selectOption('[data-path="pattern.unit"]', "");
  await expect.poll(card).toContain("150 × 120 mm");
  await context.close();
});
