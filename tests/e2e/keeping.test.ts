// Nothing is lost: undo over a restart, two windows, no storage, broken and newer files.
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { demoText, goTo, kept, openFile, openPage, openStage, type Stage } from "./browser.ts";

let stage: Stage;
beforeAll(async () => {
  stage = await openStage();
});
afterAll(() => stage.close());

const BAGS = '[data-path="bags"]';

test("edit, undo, redo, reload: everything is still there, undo too", async () => {
  const context = await stage.person();
  const page = await openPage(context, stage.url);
  await page.click('button:has-text("Strap")');
  await page.fill(BAGS, "7");
  await page.press(BAGS, "Enter");
  await page.fill('[data-path="straps[0].name"]', "Carry strap");
  await page.press('[data-path="straps[0].name"]', "Enter");
  await page.click('button[aria-label^="Undo"]');
  await page.waitForSelector(".card-name:has-text('Shoulder strap')");
  await page.click('button[aria-label^="Redo"]');
  await page.waitForSelector(".card-name:has-text('Carry strap')");
  await kept(page);
  await page.waitForTimeout(300);
  await page.reload();
  await page.waitForSelector(".card-name:has-text('Carry strap')");
  expect(await page.inputValue(BAGS)).toBe("7");
  await page.click('button[aria-label^="Undo"]');
  await page.click('button[aria-label^="Undo"]');
  await expect.poll(() => page.inputValue(BAGS)).toBe("1");
  await context.close();
});

test("a value that cannot be read stays in its field with the reason, and changes nothing", async () => {
  const context = await stage.person();
  const page = await openPage(context, stage.url);
  await page.click('button:has-text("Strap")');
  const field = '[data-path="straps[0].width.mm"]';
  await page.fill(field, "wide");
  await page.press(field, "Enter");
  await page.waitForSelector(`${field}[aria-invalid="true"]`);
  const reason = await page.getAttribute(field, "aria-describedby");
  expect(await page.textContent(`[id="${reason}"]`)).toContain("wide");
  await page.press(field, "Escape");
  expect(await page.inputValue(field)).toMatch(/^25/);
  await context.close();
});

test("an outline that would cross itself is refused beside the corner, and the one before is kept", async () => {
  const context = await stage.person();
  const page = await openPage(context, stage.url);
  await page.click('.card-add button:has-text("Panel")');
  await page.selectOption('[data-path="panels[0].shape.kind"]', "outline");
  await page.click(".outline-desk summary");
  const field = '[data-path="panels[0].shape.contour[0].y"]';
  const before = await page.inputValue(field);
  await page.fill(field, "5 m");
  await page.press(field, "Enter");
  await page.waitForSelector(`${field}[aria-invalid="true"]`);
  const reason = await page.getAttribute(field, "aria-describedby");
  expect(await page.textContent(`[id="${reason}"]`)).toMatch(/cross/u);
  expect(await page.locator(".told").count()).toBe(0);
  await kept(page);
  await page.reload();
  await page.click(".card-name");
  await page.click(".outline-desk summary");
  expect(await page.inputValue(field)).toBe(before);
  await context.close();
});

test("a corner moved by keys across its outline keeps the keyboard, though its number changes", async () => {
  const context = await stage.person();
  const page = await openPage(context, stage.url);
  const project = JSON.parse(demoText());
  const points = [
    [0, 0],
    [100, 0],
    [50, 12],
  ];
  const panel = { id: "kite", name: "Kite", material: "sailcloth", shape: { kind: "outline", points } };
  await openFile(page, "kite.json", JSON.stringify({ ...project, straps: [], panels: [panel] }));
  await page.waitForSelector(".card-name:has-text('Kite')");
  await goTo(page, "#/bag/kite");
  await page.focus('.corner[aria-label*="50\u00a0mm"][aria-label*="12\u00a0mm"]');
  for (const y of [7, 2, -3, -8]) {
    await page.keyboard.press("ArrowDown");
    await page.waitForFunction(
      (end) => document.activeElement?.getAttribute("aria-label")?.includes(end),
      `, ${y}\u00a0mm`,
    );
  }
  await context.close();
});

test("units switch without changing what is stored", async () => {
  const context = await stage.person();
  const page = await openPage(context, stage.url);
  await page.click('button:has-text("Strap")');
  const field = '[data-path="straps[0].width.mm"]';
  expect(await page.inputValue(field)).toBe("25 mm");
  await page.click(".headline .tools button:has-text('mm')");
  expect(await page.inputValue(field)).toMatch(/^≈?(1|63\/64|31\/32) in$/);
  await page.click(".headline .tools button:has-text('in')");
  expect(await page.inputValue(field)).toBe("25 mm");
  await context.close();
});

test("two windows on one project do not destroy each other's work", async () => {
  const context = await stage.person();
  const one = await openPage(context, stage.url);
  await one.click('button:has-text("Strap")');
  await kept(one);
  await one.waitForTimeout(300);
  const two = await openPage(context, stage.url);
  await two.waitForSelector(".card");
  await one.fill(BAGS, "3");
  await one.press(BAGS, "Enter");
  // The other window follows, and says so.
  await expect.poll(() => two.inputValue(BAGS)).toBe("3");
  await two.waitForSelector("text=/changed in another window/");
  await two.click('button:has-text("Panel")');
  await expect.poll(() => one.locator(".shelf .card").count()).toBe(2);
  await context.close();
});

test("a project that was changed in two windows at once goes on as two, each under a name of its own, once each", async () => {
  const context = await stage.person();
  const one = await openPage(context, stage.url);
  await one.click('button:has-text("Strap")');
  await kept(one);
  // A window that hears nothing of the other one, as when both save in the same moment.
  const two = await context.newPage();
  await two.addInitScript(() => {
    Object.defineProperty(BroadcastChannel.prototype, "onmessage", { set: () => undefined });
  });
  await two.goto(stage.url);
  await two.waitForSelector(".shelf .card");
  await one.click('button:has-text("Panel")');
  await expect.poll(() => one.locator(".shelf .card").count()).toBe(2);
  await kept(one);
  await two.fill(BAGS, "7");
  await two.press(BAGS, "Enter");
  await two.waitForSelector("text=/changed in two windows at once/");
  await kept(two);
  // Each has its own work and not the other's.
  expect([await one.locator(".shelf .card").count(), await one.inputValue(BAGS)]).toEqual([2, "1"]);
  expect([await two.locator(".shelf .card").count(), await two.inputValue(BAGS)]).toEqual([1, "7"]);
  const names = async (page: Page) => {
    // A window behind another one draws nothing.
    await page.bringToFront();
    await page.click(".headline .project > button");
    await page.waitForSelector("dialog[open] .shelf-list li");
    const all = await page.$$eval("dialog[open] .shelf-list li strong", (rows) =>
      rows.map((row) => row.textContent!.trim()),
    );
    await page.keyboard.press("Escape");
    return all.sort();
  };
  const listed = await names(two);
  expect(listed.length).toBe(2);
  expect(new Set(listed).size).toBe(2);
  expect(await names(one)).toEqual(listed);
  await two.bringToFront();
  // Parts that are added in both are new in each.
  await two.click('button:has-text("Panel")');
  await expect.poll(() => two.locator(".shelf .card").count()).toBe(2);
  await kept(two);
  const ids = await two.$$eval(".shelf .card", (all) => all.map((card) => card.getAttribute("data-part")));
  expect(new Set(ids).size).toBe(2);
  await two.reload();
  await two.waitForSelector(".shelf .card");
  expect([await two.locator(".shelf .card").count(), await two.inputValue(BAGS)]).toEqual([2, "7"]);
  await context.close();
});

test("a broken file and one of a newer version are refused with the reason; the open project stays", async () => {
  const context = await stage.person();
  const page = await openPage(context, stage.url);
  await page.click('button:has-text("Strap")');
  await openFile(page, "broken.json", '{"laywright": 1, "name": ');
  await page.waitForSelector('.told:has-text("broken.json")');
  expect(await page.textContent(".told")).toMatch(/line 1/i);
  await page.click('.told button:has-text("Understood")');
  await openFile(page, "place.json", demoText().replace('"width": "30 mm"', '"width": "one inch"'));
  await page.waitForSelector('.told code:has-text("straps[0].width")');
  await page.click('.told button:has-text("Understood")');
  await openFile(page, "newer.json", demoText().replace('"laywright": 1', '"laywright": 99'));
  await page.waitForSelector('.told:has-text("newer.json")');
  expect(await page.textContent(".told")).toMatch(/99/);
  expect(await page.locator(".shelf .card-name").allTextContents()).toEqual(["Shoulder strap"]);
  await context.close();
});

test("a file dragged onto the page is opened", async () => {
  const context = await stage.person();
  const page = await openPage(context, stage.url);
  const transfer = await page.evaluateHandle((text) => {
    const data = new DataTransfer();
    data.items.add(new File([text], "harbour.json", { type: "application/json" }));
    return data;
  }, demoText());
  await page.dispatchEvent("body", "dragover", { dataTransfer: transfer });
  await page.dispatchEvent("body", "drop", { dataTransfer: transfer });
  await page.waitForSelector(".card-name:has-text('Gusset')");
  await context.close();
});

test("refused storage is told, and the page works all the same", async () => {
  const context = await stage.person();
  await context.addInitScript(() => {
    indexedDB.open = () => {
      throw new DOMException("refused", "SecurityError");
    };
  });
  const page = await openPage(context, stage.url);
  await page.waitForSelector("text=/does not keep projects/");
  await page.click('button:has-text("Strap")');
  await page.waitForSelector(".card");
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    (async () => {
      await page.evaluate(() => Reflect.deleteProperty(window, "showSaveFilePicker"));
      await page.click('.told button:has-text("Save to a file")');
    })(),
  ]);
  expect(download.suggestedFilename()).toMatch(/\.laywright\.json$/);
  await context.close();
});

test("full storage is told, and the work is kept once there is room", async () => {
  const context = await stage.person();
  await context.addInitScript(() => {
    const put = IDBObjectStore.prototype.put;
    IDBObjectStore.prototype.put = function (...args) {
      if ((window as unknown as { full?: boolean }).full) throw new DOMException("full", "QuotaExceededError");
      return put.apply(this, args);
    };
  });
  const page = await openPage(context, stage.url);
  await page.evaluate(() => Object.assign(window, { full: true }));
  await page.click('button:has-text("Strap")');
  await page.waitForSelector("text=/no room left/");
  await page.evaluate(() => Object.assign(window, { full: false }));
  await page.click('.told button:has-text("Try again")');
  await kept(page);
  await page.waitForTimeout(300);
  await page.reload();
  await page.waitForSelector(".card-name:has-text('Shoulder strap')");
  await context.close();
});
