// What stays and what goes on: nothing moves while the page loads, a search is taken up again, pins of a file are judged.
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { demoText, goTo, kept, openFile, openPage, openStage, type Stage } from "./browser.ts";

let stage: Stage;
beforeAll(async () => {
  stage = await openStage();
});
afterAll(() => stage.close());

interface Looked {
  readonly finding: string;
  readonly evaluations: number;
  readonly used: number;
}

/** How far the search for a cloth is. */
function looked(page: Page, id: string): Promise<Looked | null> {
  return page.evaluate((cloth) => {
    type State = { finding: string; evaluations: number; plan: { uses: { usedLength: number }[] } | null };
    const { laywright } = window as unknown as {
      laywright: { board: { lays: { get(): Map<string, State> } } };
    };
    const state = laywright.board.lays.get().get(cloth);
    if (state === undefined || state.plan === null) return null;
    const used = state.plan.uses.reduce((sum, { usedLength }) => sum + usedLength, 0);
    return { finding: state.finding, evaluations: state.evaluations, used };
  }, id);
}

test("nothing moves by itself while the page loads and while a maker goes through its places", async () => {
  const context = await stage.person();
  // Layout Instability API (W3C community group): the share of the screen that moved, each time without a hand.
  await context.addInitScript(() => {
    const shifts: number[] = [];
    Object.assign(window, { shifts });
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries() as (PerformanceEntry & { value: number; hadRecentInput: boolean })[])
        if (!entry.hadRecentInput) shifts.push(entry.value);
    }).observe({ type: "layout-shift", buffered: true });
  });
  const page = await openPage(context, stage.url);
  const moved = async () => {
    await page.waitForTimeout(1000);
    return page.evaluate(() =>
      (window as unknown as { shifts: number[] }).shifts.splice(0).reduce((sum, value) => sum + value, 0),
    );
  };
  expect(await moved(), "an empty page").toBeLessThan(0.05);
  await openFile(page, "demo.json", demoText());
  await page.waitForSelector(".card-name:has-text('Gusset')");
  await kept(page);
  await moved();
  const places = [
    ["#/bag/shoulder", ".spread"],
    ["#/cloth/sailcloth", ".stock"],
    ["#/lay/sailcloth", ".piece"],
    ["#/table/ruler", ".cut-steps"],
    ["#/lay/sailcloth", ".piece"],
  ] as const;
  for (const [hash, sign] of places) {
    await goTo(page, hash);
    await page.waitForSelector(sign);
  }
  expect(await moved(), "a session").toBeLessThan(0.05);
  await page.reload();
  await page.waitForSelector(".piece");
  expect(await moved(), "the plan, loaded again").toBeLessThan(0.05);
  await context.close();
});

test("a cloth is taken up again where its search stopped: when it is looked at, and tomorrow", async () => {
  const context = await stage.person();
  const page = await openPage(context, stage.url);
  await openFile(page, "demo.json", demoText());
  await page.waitForSelector(".card-name:has-text('Gusset')");
  await goTo(page, "#/lay/sailcloth");
  const finding = async (id: string) => (await looked(page, id))?.finding;
  const effort = async (id: string) => (await looked(page, id))?.evaluations ?? 0;
  await expect.poll(() => effort("sailcloth"), { timeout: 60_000 }).toBeGreaterThan(20_000);
  // Another cloth is looked at: it is searched, and the first one keeps what was spent on it.
  await goTo(page, "#/lay/faux");
  await expect.poll(() => finding("faux"), { timeout: 60_000 }).toMatch(/finding|proven/u);
  const spent = await effort("sailcloth");
  expect(spent).toBeGreaterThan(20_000);
  await goTo(page, "#/lay/sailcloth");
  await expect.poll(() => finding("sailcloth"), { timeout: 60_000 }).toBe("finding");
  await expect.poll(() => effort("sailcloth"), { timeout: 60_000 }).toBeGreaterThan(spent);
  // Told to rest it rests; told to look on it goes on from there.
  await page.click('button:has-text("Good enough")');
  await expect.poll(() => finding("sailcloth")).toBe("paused");
  await page.click('button:has-text("Keep looking")');
  await expect.poll(() => finding("sailcloth"), { timeout: 60_000 }).toBe("finding");
  await kept(page);
  await page.waitForTimeout(1500);
  const today = (await looked(page, "sailcloth"))!;
  await page.reload();
  await page.waitForSelector(".piece");
  const tomorrow = (await looked(page, "sailcloth"))!;
  expect(tomorrow.evaluations).toBeGreaterThan(20_000);
  expect(tomorrow.used).toBeLessThanOrEqual(today.used + 0.01);
  await context.close();
});

test("pieces that a file pins where they cannot lie are told when it is read, and one press takes the pins out", async () => {
  const context = await stage.person();
  const page = await openPage(context, stage.url);
  const pin = (copy: number, x: number) => ({ material: "canvas", stock: "roll", piece: "body", copy, x, y: 0 });
  const project = {
    ...{ laywright: 1, name: "Pinned", margin: 0 },
    materials: [
      {
        ...{ id: "canvas", name: "Canvas", kind: "woven", thickness: 0.6 },
        stock: [{ kind: "roll", id: "roll", width: 1000 }],
      },
    ],
    panels: [
      {
        ...{ id: "body", name: "Body", material: "canvas", count: 3 },
        shape: { kind: "rectangle", along: 300, across: 200 },
      },
    ],
    // The second lies on the first; the third lies where it may.
    pins: [pin(0, 0), pin(1, 100), pin(2, 600)],
  };
  await openFile(page, "pinned.json", JSON.stringify(project));
  await page.waitForSelector('.pin-troubles:has-text("Body 1"):has-text("Body 2")');
  expect(await page.textContent(".pin-troubles")).not.toMatch(/Body 3|pins\[|panel-/u);
  await goTo(page, "#/lay");
  await page.waitForSelector(".pin-troubles");
  await page.click(".pin-troubles button");
  await expect.poll(() => page.locator(".pin-troubles").count()).toBe(0);
  await expect.poll(() => page.locator(".piece").count()).toBe(3);
  // No more is taken out than has to be, and one undo brings it back.
  await expect.poll(() => page.locator(".piece.pinned").count()).toBe(2);
  await page.keyboard.press("Control+z");
  await page.waitForSelector(".pin-troubles");
  await context.close();
});
