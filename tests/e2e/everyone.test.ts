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
  ["#/table/sheet", "table"],
] as const;

for (const colorScheme of ["light", "dark"] as const)
  test(`no place has a violation, ${colorScheme}`, async () => {
    const context = await stage.person({ colorScheme });
    const page = await openPage(context, stage.url);
    await openFile(page, "demo.json", demoText());
    await page.waitForSelector(".card-name:has-text('Gusset')");
    await page.evaluate(axe);
    for (const [hash, sign] of PLACES) {
      await goTo(page, hash);
      await page.waitForSelector(sign);
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
      expect(violations, hash).toEqual([]);
    }
    await context.close();
  });

test("no place is wider than a small phone, and what is pressed is as large as a fingertip", async () => {
  const context = await stage.person({ viewport: { width: 320, height: 640 } });
  const page = await openPage(context, stage.url);
  await openFile(page, "demo.json", demoText());
  await page.waitForSelector(".card-name:has-text('Gusset')");
  for (const [hash, sign] of PLACES) {
    await goTo(page, hash);
    await page.waitForSelector(sign);
    expect(await page.evaluate(() => document.documentElement.scrollWidth), hash).toBeLessThanOrEqual(320);
    const small = await page.evaluate(() =>
      [
        ...document.querySelectorAll<HTMLElement>(
          "button.press, a.press, .places a, input:not([hidden]):not([type=checkbox]), select",
        ),
      ]
        .filter((element) => element.offsetParent !== null && element.getBoundingClientRect().height < 43.5)
        .map((element) => element.outerHTML.slice(0, 80)),
    );
    expect(small, hash).toEqual([]);
  }
  await context.close();
});
