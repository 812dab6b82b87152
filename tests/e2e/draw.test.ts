// An outline drawn on the page: arcs, sizes, snapping, a mirrored half, undo, by mouse, keys and finger.
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { AxeResults } from "axe-core";
import type { Locator, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { demoText, goTo, kept, openFile, openPage, openStage, type Stage } from "./browser.ts";

const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
let stage: Stage;
beforeAll(async () => {
  stage = await openStage();
});
afterAll(() => stage.close());

const OUTLINE = "panels[0].shape.contour";
const plain = (text: string | null) => (text ?? "").replaceAll("\u00a0", " ");

/** A new panel of 350 by 400 mm (14 by 16 in), drawn as an outline. */
async function panelOnDesk(options = {}, inches = false): Promise<{ page: Page; close: () => Promise<void> }> {
  const context = await stage.person(options);
  const page = await openPage(context, stage.url);
  if (inches) await page.click(".headline .tools button:has-text('mm')");
  await page.click('.card-add button:has-text("Panel")');
  await page.selectOption('[data-path="panels[0].shape.kind"]', "outline");
  await page.waitForSelector(".desk-board");
  await page.locator(".desk-board").scrollIntoViewIfNeeded();
  return { page, close: () => context.close() };
}

const corner = (page: Page, along: string, across: string) =>
  page.locator(
    `.corner[aria-label*=", ${along.replaceAll(" ", "\u00a0")} along, ${across.replaceAll(" ", "\u00a0")} across"]`,
  );

async function middleOf(handle: Locator): Promise<readonly [number, number]> {
  const box = (await handle.boundingBox())!;
  return [box.x + box.width / 2, box.y + box.height / 2];
}

/** Drags what lies under a handle by px; `before` is asked while it is held. */
async function drag(page: Page, handle: Locator, dx: number, dy: number, before = async () => {}): Promise<void> {
  const [x, y] = await middleOf(handle);
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x + dx / 2, y + dy / 2, { steps: 3 });
  await page.mouse.move(x + dx, y + dy, { steps: 3 });
  await before();
  await page.mouse.up();
}

/** Every corner as the screen reader hears it. */
const heard = (page: Page) =>
  page.$$eval(".corner", (corners) =>
    corners.map((one) =>
      one
        .getAttribute("aria-label")!
        .replaceAll("\u00a0", " ")
        .replace(/^Corner \d+, /u, ""),
    ),
  );

/** px for a mm on the desk. */
async function scaleOf(page: Page): Promise<number> {
  const [x0] = await middleOf(page.locator(".corner").nth(0));
  const [x1] = await middleOf(page.locator(".corner").nth(1));
  return (x1 - x0) / 350;
}

async function type(page: Page, field: string, text: string): Promise<void> {
  await page.fill(`[data-path="${OUTLINE}.edge.${field}"]`, text);
  await page.press(`[data-path="${OUTLINE}.edge.${field}"]`, "Enter");
}

const field = async (page: Page, name: string) =>
  plain(await page.inputValue(`[data-path="${OUTLINE}.edge.${name}"]`));

test("an edge is pulled into an arc; rise, radius and length are typed; straight again", async () => {
  const { page, close } = await panelOnDesk();
  const top = page.locator(".edge-middle").nth(2);
  await drag(page, top, 2, -40, async () => {
    // What is pulled says how far it rises while it is pulled.
    expect(plain(await page.textContent(".edge-size"))).toMatch(/rises \d+ mm, radius [\d.]+ mm/u);
    expect(await page.locator(".desk-board.is-held").count()).toBe(1);
  });
  expect(await page.inputValue(`[data-path="${OUTLINE}.edge.way"]`)).toBe("out");
  await type(page, "rise", "50 mm");
  // Euclid III.35, closed formula: r = (c²/4 + h²) / 2h = (350²/4 + 50²) / 100.
  expect(await field(page, "radius")).toBe("331.3 mm");
  await type(page, "radius", "175 mm");
  expect(await field(page, "rise")).toBe("175 mm");
  await page.waitForSelector('.shelf .card:has-text("350 × 575")'.replaceAll(" × ", "\u00a0×\u00a0"));
  await page.selectOption(`[data-path="${OUTLINE}.edge.way"]`, "in");
  expect(await field(page, "rise")).toBe("175 mm");
  await page.selectOption(`[data-path="${OUTLINE}.edge.way"]`, "straight");
  expect(await page.locator(`[data-path="${OUTLINE}.edge.rise"]`).count()).toBe(0);
  // A rectangle whose edge is set to a length stays one.
  await type(page, "length", "32 cm");
  expect(await heard(page)).toEqual(
    expect.arrayContaining(["30 mm along, 0 mm across", "350 mm along, 0 mm across", "30 mm along, 400 mm across"]),
  );
  await close();
});

test("while a corner is dragged its edges and the whole size are written; a drag is one step back and forth", async () => {
  const { page, close } = await panelOnDesk();
  const scale = await scaleOf(page);
  const before = await heard(page);
  const upper = corner(page, "350 mm", "400 mm");
  await drag(page, upper, -50 * scale, 0, async () => {
    const sizes = (await page.$$eval(".edge-size", (all) => all.map((one) => one.textContent))).map(plain);
    // Upper edge from 350 to 300; the right one is the root of 400² + 50².
    expect(sizes.sort()).toEqual(["300 mm", "403.1 mm"]);
    expect((await page.$$eval(".whole-size text", (all) => all.map((one) => one.textContent))).map(plain)).toEqual([
      "350 mm",
      "400 mm",
    ]);
  });
  const after = await heard(page);
  expect(after).toContain("300 mm along, 400 mm across");
  await drag(page, corner(page, "300 mm", "400 mm"), 0, 60 * scale);
  await page.keyboard.press("Control+z");
  await expect.poll(() => heard(page)).toEqual(after);
  await page.keyboard.press("Control+z");
  await expect.poll(() => heard(page)).toEqual(before);
  await page.keyboard.press("Control+Shift+z");
  await expect.poll(() => heard(page)).toEqual(after);
  // Where it would cross itself the corner stays behind, and Escape gives up the whole drag.
  const [x, y] = await middleOf(corner(page, "300 mm", "400 mm"));
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x, y + 200 * scale, { steps: 4 });
  await page.mouse.move(x - 200 * scale, y + 420 * scale, { steps: 4 });
  await page.waitForSelector(".desk-board.is-stopped");
  await page.keyboard.press("Escape");
  await page.mouse.up();
  expect(await heard(page)).toEqual(after);
  await kept(page);
  await close();
});

test("corners snap to the grid and to the level of others; Shift lets go; arrows move by the grid", async () => {
  const { page, close } = await panelOnDesk();
  const scale = await scaleOf(page);
  await drag(page, corner(page, "350 mm", "400 mm"), -31.7 * scale, -42.2 * scale);
  expect(await heard(page)).toContain("320 mm along, 440 mm across");
  // Near the level of the corner to its left it is taken there, and a chalk line says so.
  await page.selectOption(`[data-path="${OUTLINE}.grid"]`, "10");
  await page.focus('.corner[aria-label*="320\u00a0mm"]');
  await page.keyboard.press("Shift+ArrowUp");
  expect(await heard(page)).toContain("320 mm along, 441 mm across");
  await page.keyboard.press("ArrowUp");
  expect(await heard(page)).toContain("320 mm along, 451 mm across");
  await drag(page, corner(page, "320 mm", "451 mm"), 1 * scale, 48.8 * scale, async () => {
    expect(await page.locator(".desk-guide").count()).toBe(1);
  });
  expect(await heard(page)).toContain("320 mm along, 400 mm across");
  const now = await scaleOf(page);
  const [x, y] = await middleOf(corner(page, "320 mm", "400 mm"));
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.keyboard.down("Shift");
  await page.mouse.move(x - 23 * now, y - 17 * now, { steps: 4 });
  await page.mouse.up();
  await page.keyboard.up("Shift");
  const place = (await heard(page)).find((one) => one.startsWith("29"))!;
  const [along, across] = [...place.matchAll(/[\d.]+/gu)].map(([number]) => Number(number));
  expect(Math.abs(along! - 297)).toBeLessThan(2);
  expect(Math.abs(across! - 417)).toBeLessThan(2);
  await page.selectOption(`[data-path="${OUTLINE}.grid"]`, "5");
  await close();
});

test("in inches the grid is a quarter, with Shift a sixteenth", async () => {
  const { page, close } = await panelOnDesk({}, true);
  const first = page.locator(".corner").nth(2);
  const label = async () => plain(await first.getAttribute("aria-label"));
  const before = await label();
  await first.focus();
  await page.keyboard.press("ArrowRight");
  const quarter = await label();
  await page.keyboard.press("Shift+ArrowRight");
  const sixteenth = await label();
  const along = (text: string) => {
    const [, whole = "0", top = "0", bottom = "1"] = /, (\d+)?(?: ?(\d+)\/(\d+))? in along/u.exec(text)!;
    return Number(whole) + Number(top) / Number(bottom);
  };
  expect(along(quarter) - along(before)).toBeCloseTo(1 / 4, 9);
  expect(along(sixteenth) - along(quarter)).toBeCloseTo(1 / 16, 9);
  await close();
});

test("by keys alone: an edge bows, takes a corner, which moves and goes; each visit is one step", async () => {
  const { page, close } = await panelOnDesk();
  const before = await heard(page);
  await page.locator(".edge-middle").nth(0).focus();
  for (let i = 0; i < 4; i++) await page.keyboard.press("ArrowUp");
  expect(await field(page, "rise")).toBe("20 mm");
  await page.keyboard.press("Shift+ArrowDown");
  expect(await field(page, "rise")).toBe("19 mm");
  await page.keyboard.press("Enter");
  // On the arc, in its middle.
  await expect.poll(() => heard(page)).toContain("175 mm along, -19 mm across");
  await page.locator(".corner").nth(1).focus();
  await page.keyboard.press("ArrowRight");
  expect(await heard(page)).toContain("180 mm along, -19 mm across");
  await page.keyboard.press("Delete");
  await expect.poll(() => heard(page)).toEqual(before);
  for (let i = 0; i < 4; i++) await page.keyboard.press("Control+z");
  await expect.poll(() => heard(page)).toEqual(before);
  expect(await page.locator(".headline .tools button").first().isDisabled()).toBe(false);
  await close();
});

test("one half is drawn and the other follows, in the piece that is cut; whole again it keeps both", async () => {
  const { page, close } = await panelOnDesk();
  const scale = await scaleOf(page);
  await page.selectOption(`[data-path="${OUTLINE}.half"]`, "right");
  await page.waitForSelector(".mirrored-half");
  // The whole size is that of both halves.
  expect((await page.$$eval(".whole-size text", (all) => all.map((one) => one.textContent))).map(plain)).toEqual([
    "350 mm",
    "400 mm",
  ]);
  await drag(page, corner(page, "350 mm", "400 mm"), -50 * scale, 0);
  // Cut: both halves and the allowance, mitred at the slanted sides: 350 + 2 · (10 √(1 + ⅛²) + 10 · ⅛), closed formula.
  await expect
    .poll(async () => plain(await page.textContent(".spread-picture figcaption")))
    .toContain("372.7 × 420");
  // An end of the fold slides along it, whatever the hand does.
  await drag(page, corner(page, "175 mm", "400 mm"), 30 * scale, -40 * scale);
  expect(await heard(page)).toContain("175 mm along, 440 mm across");
  await page.selectOption(`[data-path="${OUTLINE}.half"]`, "whole");
  await expect
    .poll(async () => (await heard(page)).sort())
    .toEqual(
      [
        "0 mm along, 0 mm across",
        "350 mm along, 0 mm across",
        "300 mm along, 400 mm across",
        "175 mm along, 440 mm across",
        "50 mm along, 400 mm across",
      ].sort(),
    );
  // The other way: half a panel whose edge becomes the fold.
  await page.focus('.edge-middle[aria-label$=", 350\u00a0mm"]');
  await page.click('.desk-words button:has-text("Mirror over this edge")');
  await page.waitForSelector(".mirrored-half");
  expect((await page.$$eval(".whole-size text", (all) => all.map((one) => one.textContent))).map(plain)[1]).toBe(
    "880 mm",
  );
  await page.keyboard.press("Control+z");
  await page.waitForSelector(".mirrored-half", { state: "detached" });
  await kept(page);
  await close();
});

test("what stands on edges stays there when a corner is added before them", async () => {
  const context = await stage.person();
  const page = await openPage(context, stage.url);
  const points = [
    [0, 0],
    [300, 0],
    [300, 200],
    [0, 200],
  ];
  const panel = {
    id: "front",
    name: "Front",
    material: "cloth",
    seamAllowance: 10,
    shape: { kind: "outline", points },
    edges: [{ edge: 2, allowance: 30 }],
  };
  const cloth = { id: "cloth", kind: "woven", thickness: 0.5, stock: [{ kind: "roll", id: "roll", width: 1400 }] };
  const project = { laywright: 1, name: "Front", materials: [cloth], panels: [panel] };
  await openFile(page, "front.json", JSON.stringify(project));
  await page.waitForSelector(".card-name:has-text('Front')");
  await goTo(page, "#/bag/front");
  const size = async () => plain(await page.textContent(".spread-picture figcaption"));
  await expect.poll(size).toContain("320 × 240 mm");
  await page.locator(".desk-board").scrollIntoViewIfNeeded();
  const [x, y] = await middleOf(page.locator(".edge-middle").nth(0));
  await page.mouse.dblclick(x + 40, y);
  await expect.poll(() => page.locator(".corner").count()).toBe(5);
  // The hem of 30 mm is still on the upper edge: 10 + 200 + 30.
  expect(await size()).toContain("320 × 240 mm");
  await context.close();
});

for (const colorScheme of ["light", "dark"] as const)
  test(`by finger: a corner is dragged, the page stays; handles are as large as a fingertip, axe is clean, ${colorScheme}`, async () => {
    const viewport = { width: 360, height: 740 };
    const { page, close } = await panelOnDesk({
      viewport,
      hasTouch: true,
      isMobile: true,
      colorScheme,
      reducedMotion: "reduce",
    });
    const handle = corner(page, "350 mm", "400 mm");
    const reach = (await handle.locator(".reach").boundingBox())!;
    expect(Math.min(reach.width, reach.height)).toBeGreaterThanOrEqual(44);
    const scrolled = await page.evaluate(() => scrollY);
    const [x, y] = await middleOf(handle);
    const touch = await page.context().newCDPSession(page);
    const send = (type: "touchStart" | "touchMove" | "touchEnd", dy: number) =>
      touch.send("Input.dispatchTouchEvent", { type, touchPoints: type === "touchEnd" ? [] : [{ x, y: y + dy }] });
    await send("touchStart", 0);
    for (let dy = 5; dy <= 60; dy += 5) await send("touchMove", dy);
    expect(await page.evaluate(() => scrollY)).toBe(scrolled);
    await send("touchEnd", 60);
    await expect.poll(() => heard(page)).not.toContain("350 mm along, 400 mm across");
    await page.locator(".edge-middle").nth(2).focus();
    await page.keyboard.press("ArrowUp");
    await page.waitForSelector(`[data-path="${OUTLINE}.edge.radius"]`);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(360);
    await page.evaluate(axe);
    const violations = await page.evaluate(async () => {
      const { violations } = await (window as unknown as { axe: { run(): Promise<AxeResults> } }).axe.run();
      return violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target.join(" ")).join(" | ")}`);
    });
    expect(violations).toEqual([]);
    await close();
  });

test("a leftover is drawn the same way, and a press on it pushes a pin into a flaw", async () => {
  const context = await stage.person();
  const page = await openPage(context, stage.url);
  await openFile(page, "demo.json", demoText());
  await page.waitForSelector(".card-name:has-text('Gusset')");
  await goTo(page, "#/cloth/sailcloth");
  await page.waitForSelector(".desk-board");
  await page.locator(".desk-board").first().scrollIntoViewIfNeeded();
  expect(await page.locator(".stock .ink-flaw").count()).toBe(1);
  const desk = (await page.locator(".desk-board").first().boundingBox())!;
  await page.mouse.click(desk.x + desk.width / 2, desk.y + desk.height / 2);
  await expect.poll(() => page.locator(".stock .ink-flaw").count()).toBe(2);
  await drag(page, page.locator(".stock .corner").nth(2), 40, 0);
  await expect.poll(async () => plain(await page.textContent(".stock-name"))).not.toContain("620 mm × 470 mm");
  expect(await page.locator(".stock .ink-flaw").count()).toBe(2);
  await context.close();
});

/** px for a mm on the desk, by the corners of a rectangle 350 mm wide and how far apart they are. */
async function spread(page: Page): Promise<number> {
  const at = await page.$$eval(".corner", (all) =>
    all.slice(0, 2).map((one) => Number(/translate\((\S+)/u.exec(one.getAttribute("transform")!)![1])),
  );
  return (at[1]! - at[0]!) / 350;
}

test("the desk comes closer by wheel, by keys and by its buttons; what lies under the hand stays there", async () => {
  const { page, close } = await panelOnDesk();
  const whole = await spread(page);
  // Nothing of the desk is in the keyboard's hands: the wheel rolls the page.
  const board = (await page.locator(".desk-board").boundingBox())!;
  await page.mouse.move(board.x + board.width / 2, board.y + 60);
  await page.mouse.wheel(0, -240);
  await page.mouse.wheel(0, 240);
  expect(await spread(page)).toBeCloseTo(whole, 6);
  await page.locator(".corner").nth(2).focus();
  const [x, y] = await middleOf(page.locator(".corner").nth(2));
  await page.mouse.move(x, y);
  await page.mouse.wheel(0, -400);
  await expect.poll(() => spread(page)).toBeGreaterThan(whole * 1.5);
  const [nearX, nearY] = await middleOf(page.locator(".corner").nth(2));
  expect(Math.hypot(nearX - x, nearY - y)).toBeLessThan(1.5);
  // A corner is dragged as far as the hand goes: 20 px are as many millimetres fewer as the desk is closer.
  const scale = await spread(page);
  const before = await heard(page);
  await drag(page, page.locator(".corner").nth(2), -20 * scale, 0);
  expect(before).toContain("350 mm along, 400 mm across");
  expect(await heard(page)).toContain("330 mm along, 400 mm across");
  // The empty desk is moved by the mouse, and nothing of the outline with it.
  const now = await heard(page);
  const box = (await page.locator(".desk-board").boundingBox())!;
  const [fromX] = await middleOf(page.locator(".corner").nth(2));
  await page.mouse.move(box.x + 12, box.y + 12);
  await page.mouse.down();
  await page.mouse.move(box.x + 52, box.y + 12, { steps: 4 });
  await page.mouse.up();
  const [toX] = await middleOf(page.locator(".corner").nth(2));
  expect(toX - fromX).toBeCloseTo(40, 0);
  expect(await heard(page)).toEqual(now);
  await page.locator(".corner").nth(2).focus();
  await page.keyboard.press("0");
  await expect.poll(() => page.locator(".desk-board.is-closer").count()).toBe(0);
  await page.keyboard.press("+");
  await page.keyboard.press("+");
  await expect.poll(() => page.locator(".desk-board.is-closer").count()).toBe(1);
  // A corner that the keyboard goes to is brought into sight.
  for (let i = 0; i < 6; i++) await page.keyboard.press("+");
  await page.locator(".corner").nth(0).focus();
  await expect
    .poll(async () => {
      const view = (await page.locator(".desk-board").boundingBox())!;
      const [cx, cy] = await middleOf(page.locator(".corner").nth(0));
      return cx > view.x && cx < view.x + view.width && cy > view.y && cy < view.y + view.height;
    })
    .toBe(true);
  await page.click('.desk-zoom button[aria-label="Further away"]');
  await page.click('.desk-zoom button[aria-label="All of it"]');
  expect(await page.locator(".desk-board.is-closer").count()).toBe(0);
  expect(await page.locator('.desk-zoom button[aria-label="Further away"]').isDisabled()).toBe(true);
  await close();
});

test("two fingers bring the desk closer, and the page neither rolls nor grows", async () => {
  const { page, close } = await panelOnDesk({
    viewport: { width: 390, height: 800 },
    hasTouch: true,
    isMobile: true,
  });
  const protocol = await page.context().newCDPSession(page);
  const whole = await spread(page);
  const rolled = await page.evaluate(() => [scrollY, visualViewport!.scale]);
  const board = (await page.locator(".desk-board").boundingBox())!;
  const middle = { x: board.x + board.width / 2, y: board.y + board.height / 2 };
  const touch = (kind: "touchStart" | "touchMove" | "touchEnd", apart: number) =>
    protocol.send("Input.dispatchTouchEvent", {
      type: kind,
      touchPoints:
        kind === "touchEnd"
          ? []
          : [
              { x: middle.x - apart, y: middle.y, id: 1 },
              { x: middle.x + apart, y: middle.y, id: 2 },
            ],
    });
  await touch("touchStart", 30);
  for (let apart = 40; apart <= 90; apart += 10) await touch("touchMove", apart);
  await touch("touchEnd", 0);
  await expect.poll(() => spread(page)).toBeGreaterThan(whole * 2.4);
  expect(await spread(page)).toBeLessThan(whole * 3.3);
  expect(await page.evaluate(() => [scrollY, visualViewport!.scale])).toEqual(rolled);
  await close();
});
