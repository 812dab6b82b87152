// axe-core (rules of WCAG 2.2 A and AA and its best practices) in every place, light and dark.
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { AxeResults } from "axe-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { demoText, goTo, openFile, openPage, openStage, type Stage } from "./browser.ts";

const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
let stage: Stage;
beforeAll(async () => {
  stage = await openStage();
});
afterAll(() => stage.close());

const PLACES = [
  ["#/bag", ".card"],
  ["#/bag/shoulder", ".spread"],
  ["#/bag/flap", ".outline-desk"],
  ["#/cloth/sailcloth", ".stock"],
  ["#/lay/sailcloth", ".piece"],
  ["#/table/paper", ".page-miniature"],
  ["#/table/machine", ".caution"],
  ["#/table/ruler", ".cut-steps"],
  ["#/table/cutting", ".cutting-heading"],
  ["#/table/sheet", "table"],
  ["#/table/shopping", ".shopping-list h2"],
] as const;

/** Every language, and both looks; what colours there are does not depend on the language. */
const LOOKS = [
  ["en", "light"],
  ["en", "dark"],
  ["de", "dark"],
  ["fr", "light"],
] as const;

for (const [language, colorScheme] of LOOKS)
  test(`no place and no dialog has a violation, nor what is folded away in it, ${language}, ${colorScheme}`, async () => {
    const context = await stage.person({ colorScheme });
    await context.addInitScript((chosen) => {
      if (localStorage.getItem("laywright") === null)
        localStorage.setItem("laywright", JSON.stringify({ language: chosen }));
    }, language);
    const page = await openPage(context, stage.url);
    await page.evaluate(axe);
    const isClean = async (where: string) => {
      const violations = await page.evaluate(async () => {
        const run = (window as unknown as { axe: { run(): Promise<AxeResults> } }).axe.run;
        const { violations } = await run();
        return violations.map(
          ({ id, nodes }) =>
            `${id}: ${nodes
              .map(({ target }) => target.join(" "))
              .slice(0, 3)
              .join(" | ")}`,
        );
      });
      expect(violations, where).toEqual([]);
    };
    expect(await page.getAttribute("html", "lang")).toBe(language);
    // From nothing: the places of an empty project, a bag by its measures and the bags to begin from among them.
    await page.waitForSelector(".empty .starters");
    await isClean("an empty bag");
    await goTo(page, "#/lay");
    await page.waitForSelector(".empty h2");
    await isClean("an empty lay");
    await openFile(page, "demo.json", demoText());
    await goTo(page, "#/bag");
    await page.waitForSelector(".card-name:has-text('Gusset')");
    for (const [hash, sign] of PLACES) {
      await goTo(page, hash);
      await page.waitForSelector(sign);
      await isClean(hash);
      const folded = await page.evaluate(() => {
        const closed = [...document.querySelectorAll<HTMLDetailsElement>("main details:not([open])")];
        for (const more of closed) more.open = true;
        return closed.length;
      });
      if (folded > 0) await isClean(`${hash}, all of it`);
    }
    // A plan that is kept, a leftover in the cupboard, a pattern that is brought in, one of its lines on the desk.
    await goTo(page, "#/lay/sailcloth");
    await page.waitForSelector(".piece");
    await page.click('[data-part="kept"] button');
    await page.waitForSelector(".kept-plans li");
    await isClean("plans that are kept");
    await page.locator(".lay-view").focus();
    await page.keyboard.press("Enter");
    await page.waitForSelector(".selected-piece");
    await isClean("a piece that is chosen");
    await goTo(page, "#/bag");
    await page.setInputFiles("input[data-picker=pattern]", {
      name: "front.svg",
      mimeType: "image/svg+xml",
      buffer: Buffer.from(
        '<svg xmlns="http://www.w3.org/2000/svg" width="200mm" height="100mm" viewBox="0 0 200 100">' +
          '<path id="Front" fill="none" stroke="#000" d="M10 10H190V90H10Z"/></svg>',
      ),
    });
    await page.waitForSelector(".found-line");
    await isClean("a pattern that is brought in");
    await page.locator(".found-line button").first().click();
    await page.waitForSelector(".corrected-line .outline-desk");
    await isClean("a line on the desk");
    for (const opener of await page.locator(".headline .project > button, .headline .tools button").all()) {
      if (await opener.isDisabled()) continue;
      await opener.click();
      // Some open nothing; what does open is there once the page has drawn, which takes as long as it takes.
      const dialog = page.locator("dialog[open]");
      await dialog.waitFor({ timeout: 1000 }).catch(() => undefined);
      if ((await dialog.count()) === 0) continue;
      await isClean((await page.textContent("dialog[open] h2")) ?? "a dialog");
      await page.keyboard.press("Escape");
      await dialog.waitFor({ state: "detached" });
    }
    await context.close();
    // Every place and dialog is looked at as a whole: long where many things run at once.
  }, 600_000);

for (const locale of ["en-GB", "de-DE"])
  test(`no place is wider than a small phone, and what is pressed is as large as a fingertip, no size breaks, ${locale}`, async () => {
    const context = await stage.person({ viewport: { width: 320, height: 640 }, locale });
    const page = await openPage(context, stage.url);
    await openFile(page, "demo.json", demoText());
    await page.waitForSelector(".card-name:has-text('Gusset')");
    const fits = async (what: string) => {
      expect(await page.evaluate(() => document.documentElement.scrollWidth), what).toBeLessThanOrEqual(320);
      const small = await page.evaluate(() =>
        [
          ...document.querySelectorAll<HTMLElement>(
            "button.press, a.press, .places a, input:not([hidden]):not([type=checkbox]), select",
          ),
        ]
          .filter((element) => element.offsetParent !== null && element.getBoundingClientRect().height < 43.5)
          .map((element) => element.outerHTML.slice(0, 80)),
      );
      expect(small, what).toEqual([]);
      // A plain blank is where a line may break.
      const broken = await page.evaluate(() => {
        const found: string[] = [];
        const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
        for (let node = walk.nextNode() as Text | null; node !== null; node = walk.nextNode() as Text | null)
          if (node.parentElement?.closest("svg, script, option") === null)
            found.push(...(node.data.match(/.*(\d × ?|× \d|\d (mm|cm|m|yd|%)\b).*/u) ?? []).slice(0, 1));
        return found;
      });
      expect(broken, what).toEqual([]);
      // Tables roll sideways where they must; on a phone none has to.
      const rolls = await page.evaluate(
        () =>
          [...document.querySelectorAll(".wide-table")].filter((table) => table.scrollWidth > table.clientWidth)
            .length,
      );
      expect(rolls, what).toBe(0);
    };
    for (const [hash, sign] of PLACES) {
      await goTo(page, hash);
      await page.waitForSelector(sign);
      await fits(hash);
      await page.evaluate(() => {
        for (const more of document.querySelectorAll("details")) more.open = true;
      });
      await fits(`${hash}, all of it`);
    }
    for (const opener of [".headline .project > button", ".headline .tools button:last-child"]) {
      await page.click(opener);
      const [words, close] = [page.locator("dialog[open]"), page.locator("dialog[open] .dialog-head button")];
      await fits(opener);
      expect(await words.evaluate((dialog) => dialog.scrollWidth - dialog.clientWidth), opener).toBe(0);
      const [heading, box] = [await words.locator("h2").boundingBox(), await close.boundingBox()];
      if (heading === null || box === null) throw new Error(`${opener}: nothing opens`);
      // Beside its heading, not under it.
      expect(box.y, opener).toBeLessThan(heading.y + 10);
      await close.click();
    }
    await goTo(page, "#/table/machine");
    await page.click(locale === "en-GB" ? "text=My machine has a mat" : "text=Meine Maschine hat eine Matte");
    for (const side of ["Width", "Height"]) await page.fill(`[data-path="output.machine.bed${side}"]`, "35 cm");
    await page.keyboard.press("Enter");
    await page.waitForSelector('[data-path="output.machine.order"]');
    await fits("a mat");
    await context.close();
  });

test("printed, the place Cloth has no hints of what to press or drag", async () => {
  const context = await stage.person();
  const page = await openPage(context, stage.url);
  await openFile(page, "demo.json", demoText());
  await page.waitForSelector(".card-name:has-text('Gusset')");
  for (const cloth of ["sailcloth", "hide"]) {
    await goTo(page, `#/cloth/${cloth}`);
    const hints = page.locator("main figcaption");
    await hints.first().waitFor();
    await page.emulateMedia({ media: "print" });
    for (const hint of await hints.all()) expect(await hint.isVisible()).toBe(false);
    await page.emulateMedia({ media: "screen" });
    expect(await hints.first().isVisible()).toBe(true);
  }
  await context.close();
});

test("printed from a wide screen, the plan fits the paper, and the view comes back after", async () => {
  const context = await stage.person({ viewport: { width: 1920, height: 900 } });
  const page = await openPage(context, stage.url);
  await openFile(page, "demo.json", demoText());
  await page.waitForSelector(".card-name:has-text('Gusset')");
  await goTo(page, "#/lay/sailcloth");
  await page.waitForSelector(".piece");
  const rightmost = (sign: string) =>
    page.evaluate((event) => {
      dispatchEvent(new Event(event));
      const left = document.querySelector(".lay-view")!.getBoundingClientRect().left;
      return Math.max(
        ...[...document.querySelectorAll(".piece")].map((p) => p.getBoundingClientRect().right - left),
      );
    }, sign);
  expect(await rightmost("beforeprint")).toBeLessThanOrEqual(640);
  expect(await rightmost("afterprint")).toBeGreaterThan(700);
  await context.close();
});
