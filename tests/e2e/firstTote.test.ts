// A maker's script: the steps of docs/how-to/first-tote.md are done on the page as they stand there.
import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { openPage, openStage, type Stage } from "./browser.ts";

const script = readFileSync(new URL("../../docs/how-to/first-tote.md", import.meta.url), "utf8");
let stage: Stage;
beforeAll(async () => {
  stage = await openStage();
});
afterAll(() => stage.close());

/** Numbered steps: the verb and its bold words. */
const steps = [...script.matchAll(/^\d+\. (Go to|Choose|Write|Press|See) (.*(?:\n {4}.*)*)/gmu)].map(
  ([, verb, rest]) => ({
    verb: verb!,
    said: [...rest!.split(". ")[0]!.matchAll(/\*\*([^*]+)\*\*/gu)].map(([, word]) => word!),
  }),
);

async function doStep(page: Page, verb: string, [first = "", second = ""]: readonly string[]): Promise<void> {
  const field = page.getByLabel(second, { exact: true }).first();
  switch (verb) {
    case "Go to":
      return page.click(`.places a:has-text("${first}")`);
    case "Choose":
      await field.selectOption({ label: first });
      return;
    case "Write":
      await field.fill(first);
      return field.press("Enter");
    case "Press":
      return page.locator("main button, main a, .cutting button", { hasText: first }).first().click();
    default:
      await page.getByText(first).first().waitFor();
  }
}

test("from a tote's measures to the first cut, step by step as the how-to says", async () => {
  expect(steps.length).toBe([...script.matchAll(/^\d+\. /gmu)].length);
  const context = await stage.person();
  const page = await openPage(context, stage.url);
  for (const [i, { verb, said }] of steps.entries()) {
    expect(said.length, `step ${i + 1}`).toBe(verb === "Choose" || verb === "Write" ? 2 : 1);
    await doStep(page, verb, said).catch((error: unknown) => {
      throw new Error(`step ${i + 1}, ${verb} ${said.join(", ")}: ${error}`);
    });
  }
  const state = await page.evaluate(() => {
    type Held = { history: { steps: { value: { panels: unknown[]; straps: unknown[] } }[]; at: number } };
    const { laywright } = window as unknown as { laywright: { session: { state: { get(): Held } } } };
    const { history } = laywright.session.state.get();
    const { panels, straps } = history.steps[history.at]!.value;
    return { panels: panels.length, straps: straps.length };
  });
  expect(state.panels).toBeGreaterThan(1);
  expect(state.straps).toBeGreaterThan(0);
  expect(await page.textContent(".cutting-count")).toMatch(/^2 of \d+$/u);
  await context.close();
});
