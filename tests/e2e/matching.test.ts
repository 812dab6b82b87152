// What is to meet on a cloth's pattern, chosen on the page and seen in the lay.
import { afterAll, beforeAll, expect, test } from "vitest";
import { goTo, openFile, openPage, openStage, type Stage } from "./browser.ts";

let stage: Stage;
beforeAll(async () => {
  stage = await openStage();
});
afterAll(() => stage.close());

const panel = (id: string, name: string, along: number, across: number) => ({
  ...{ id, name, material: "canvas", count: 2, seamAllowance: "1 cm" },
  shape: { kind: "rectangle", along, across },
});
const project = JSON.stringify({
  ...{ laywright: 1, name: "Striped bag" },
  materials: [
    {
      ...{ id: "canvas", name: "Canvas", kind: "woven", thickness: "0.6 mm", grain: "lengthwise" },
      stock: [{ kind: "roll", id: "roll-1", width: "110 cm" }],
    },
  ],
  panels: [panel("front", "Front", 300, 260), panel("gusset", "Gusset", 300, 90)],
});

test("a repeat and two edges are chosen in the cloth's form, and lie over the plan until they are taken out", async () => {
  const page = await openPage(await stage.person(), stage.url);
  await openFile(page, "striped.json", project);
  await page.waitForSelector(".card-name:has-text('Front')");
  await goTo(page, "#/cloth/canvas");
  await page.click("summary:has-text('Coating, repeat')");
  await page.fill("[data-path$='repeat']", "6 cm");
  await page.keyboard.press("Tab");
  await page.click("summary:has-text('Pattern and what is to meet')");
  await page.check("label:has-text('Looks the same turned by half') input");
  await page.click("button:has-text('Two edges that meet')");
  await page.selectOption("select[data-path='matches[0].first.edge']", { index: 0 });
  await page.selectOption("select[data-path='matches[0].second.edge']", { index: 2 });
  await page.click("button:has-text('A part with its place')");
  await page.selectOption("select[data-path='centred[0].on']", "between");
  await goTo(page, "#/lay");
  await page.waitForSelector(".lay-view .piece");
  await page.waitForSelector(".lay-view .cloth-pattern path", { state: "attached" });
  const marks = (await page.getAttribute(".lay-view .cloth-pattern path", "d"))!;
  // Stripes of 18 mm every 60 mm, over a roll longer than a piece.
  expect(marks.split("M").length).toBeGreaterThan(5);
  // What it costs is said once it is weighed.
  await page.waitForSelector(".lay-details li:has-text('Matching Front to Gusset')");
  await goTo(page, "#/cloth/canvas");
  await page.click("button[aria-label='Remove match 1']");
  await page.click("button[aria-label='Remove place 1']");
  await page.waitForSelector("select[data-path='matches[0].first.edge']", { state: "detached" });
  await goTo(page, "#/lay");
  await page.waitForSelector(".lay-view .piece");
  await page.waitForSelector(".lay-view .cloth-pattern path", { state: "detached" });
});
