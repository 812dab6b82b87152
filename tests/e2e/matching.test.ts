// What is to meet on a cloth's pattern, chosen on the page and seen in the lay.

import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { goTo, openFile, openPage, openStage, type Stage, savedText } from "./browser.ts";

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

test("two edges are matched by pressing them in the pictures, by pointer and by keys; what cannot meet is told beside", async () => {
  const page = await openPage(await stage.person(), stage.url);
  const striped = JSON.parse(project);
  striped.materials[0].repeat = { along: "6 cm", symmetric: true };
  await openFile(page, "striped.json", JSON.stringify(striped));
  await page.waitForSelector(".card-name:has-text('Front')");
  await goTo(page, "#/cloth/canvas");
  await page.click("summary:has-text('Pattern and what is to meet')");
  const edge = (panel: string, n: number) => `.edge-board li:has-text('${panel}') .edge-button >> nth=${n}`;
  // A straight line has no area that could be clicked by name: it is pressed in its middle, as a hand would.
  const pressLine = async (at: string) => {
    await page.locator(at).evaluate((element) => element.scrollIntoView({ block: "center" }));
    const middle = await page.locator(at).evaluate((element) => {
      const { x, y, width, height } = element.querySelector(".edge-line")!.getBoundingClientRect();
      return { x: x + width / 2, y: y + height / 2 };
    });
    await page.mouse.click(middle.x, middle.y);
  };
  await page.waitForSelector(edge("Front", 0), { state: "attached" });
  await pressLine(edge("Front", 0));
  expect(await page.getAttribute(edge("Front", 0), "aria-pressed")).toBe("true");
  await pressLine(edge("Gusset", 2));
  await page.waitForSelector("select[data-path='matches[0].first.edge']");
  expect(await page.getAttribute(edge("Gusset", 2), "aria-label")).toMatch(/^Gusset, .*M1$/u);
  // Escape lets the first edge go; Tab and Enter press like the pointer.
  await page.focus(edge("Front", 1));
  await page.keyboard.press("Enter");
  expect(await page.getAttribute(edge("Front", 1), "aria-pressed")).toBe("true");
  await page.keyboard.press("Escape");
  expect(await page.getAttribute(edge("Front", 1), "aria-pressed")).toBe("false");
  await page.focus(edge("Front", 2));
  await page.keyboard.press("Enter");
  await page.focus(edge("Gusset", 2));
  await page.keyboard.press("Space");
  await page.waitForSelector("select[data-path='matches[1].second.edge']");
  // The gusset's edge is in both matches.
  expect(await page.locator(".edge-board .is-matched").count()).toBe(3);
  // On cloth that lies in layers nothing is matched, and a match says so where it stands.
  striped.matches = [{ first: { panel: "front", edge: 0 }, second: { panel: "gusset", edge: 9 } }];
  await openFile(page, "striped.json", JSON.stringify(striped));
  await goTo(page, "#/cloth/canvas");
  await page.waitForSelector("li.sentence:has(select[data-path='matches[0].first.edge']) .refusal");
});

/** What is weighed beside the search comes late where many others work on the machine. */
const WEIGHED = { timeout: 150_000 };

/** Which way the arrows of all pieces of the plan point along the roll: 1 up, -1 down, both where they differ. */
async function waysOfPieces(page: Page): Promise<number[]> {
  const turns = await page.$$eval(".lay-view .piece", (pieces) =>
    pieces.map((piece) => Math.sign((piece as SVGGElement).transform.baseVal.consolidate()!.matrix.a)),
  );
  return [...new Set(turns)].sort();
}

const napped = JSON.stringify({
  ...{ laywright: 1, name: "Velvet bag", bags: 3 },
  materials: [
    {
      ...{ id: "canvas", name: "Velvet", kind: "woven", thickness: "0.6 mm", grain: "lengthwise" },
      stock: [{ kind: "roll", id: "roll-1", width: "110 cm" }],
    },
  ],
  panels: [panel("front", "Front", 300, 260), panel("gusset", "Gusset", 300, 90)],
});

test("nap and one way are chosen by mouse and by keys: up, down, free, both; the plan lies so and says what it costs", async () => {
  const page = await openPage(await stage.person(), stage.url);
  await openFile(page, "velvet.json", napped);
  await page.waitForSelector(".card-name:has-text('Front')");
  const way = "select[data-path$='oneWay']";
  const onCloth = async () => {
    await goTo(page, "#/cloth/canvas");
    await page.waitForSelector(way, { state: "attached" });
    if (!(await page.isVisible(way))) await page.click(`summary:near(${way})`);
  };
  const onLay = async (ways: readonly number[]) => {
    await goTo(page, "#/lay");
    await page.waitForSelector(".lay-view .piece");
    await expect.poll(() => waysOfPieces(page)).toEqual(ways);
  };
  const costs = ".lay-details li:has-text('All pieces one way')";
  await onCloth();
  expect(await page.inputValue(way)).toBe("both");
  await page.selectOption(way, "up");
  await onLay([1]);
  await page.waitForSelector(costs, WEIGHED);
  // By keys alone: the field is entered, and an arrow goes on to the next choice.
  await onCloth();
  await page.focus(way);
  await page.keyboard.press("ArrowDown");
  await expect.poll(() => page.inputValue(way)).toBe("down");
  await onLay([-1]);
  await onCloth();
  await page.focus(way);
  await page.keyboard.press("ArrowDown");
  await expect.poll(() => page.inputValue(way)).toBe("free");
  await goTo(page, "#/lay");
  await page.waitForSelector(".lay-details p:has-text('All pieces lie one way, with their arrows')");
  await page.waitForSelector(costs, WEIGHED);
  expect(await waysOfPieces(page)).toHaveLength(1);
  expect(JSON.parse(await savedText(page)).materials[0].oneWay).toBe("free");
  // Back to both ways: the rule and its cost are gone.
  await onCloth();
  await page.focus(way);
  await page.keyboard.press("Home");
  await expect.poll(() => page.inputValue(way)).toBe("both");
  await goTo(page, "#/lay");
  await page.waitForSelector(".lay-view .piece");
  await page.waitForSelector(costs, { state: "detached" });
}, 400_000);

test("the band for each bag is typed by mouse and keys, refused where it is no length, kept by the plan, and its cost told", async () => {
  const page = await openPage(await stage.person(), stage.url);
  await openFile(page, "velvet.json", napped);
  await page.waitForSelector(".card-name:has-text('Front')");
  const band = "input[data-path$='shadeBand']";
  const onCloth = async () => {
    await goTo(page, "#/cloth/canvas");
    await page.waitForSelector(band, { state: "attached" });
  };
  await onCloth();
  expect(await page.inputValue(band)).toBe("anywhere");
  await page.click(band);
  await page.keyboard.type("34 cm");
  await page.keyboard.press("Enter");
  await goTo(page, "#/lay");
  await page.waitForSelector(".lay-view .piece");
  await page.waitForSelector(".lay-details p:has-text('The parts of each bag lie within 340 mm of the roll')");
  await page.waitForSelector(".lay-details li:has-text('from one stretch of the roll')", WEIGHED);
  // By keys: what is no length is refused beside the field, and a length shorter than any part leaves them out, told why.
  await onCloth();
  await page.focus(band);
  await page.keyboard.press("ControlOrMeta+a");
  await page.keyboard.type("a yard or so");
  await page.keyboard.press("Tab");
  await page.waitForSelector(`span:has(> ${band}) .refusal, ${band}[aria-invalid=true]`);
  await page.focus(band);
  await page.keyboard.press("ControlOrMeta+a");
  await page.keyboard.type("20 cm");
  await page.keyboard.press("Tab");
  await goTo(page, "#/lay");
  await page.waitForSelector(".lay-details .unplaced .refusal");
  // Emptied, the parts may lie anywhere again.
  await onCloth();
  await page.focus(band);
  await page.keyboard.press("ControlOrMeta+a");
  await page.keyboard.press("Delete");
  await page.keyboard.press("Tab");
  await expect.poll(() => page.inputValue(band)).toBe("anywhere");
  await goTo(page, "#/lay");
  await page.waitForSelector(".lay-view .piece");
  await page.waitForSelector(".lay-details p:has-text('The parts of each bag')", { state: "detached" });
  expect(JSON.parse(await savedText(page)).materials[0].shadeBand).toBeUndefined();
}, 400_000);

test("on cloth in layers the band is kept layer by layer, or the lay says why it is not", async () => {
  const page = await openPage(await stage.person(), stage.url);
  const layered = JSON.parse(napped);
  Object.assign(layered.materials[0], { shadeBand: "70 cm", spread: { layers: 3, faces: "up" } });
  await openFile(page, "velvet.json", JSON.stringify(layered));
  await goTo(page, "#/lay");
  await page.waitForSelector(".lay-details p:has-text('In each layer the parts of each bag lie within 700 mm')");
  layered.bags = 2;
  await openFile(page, "velvet.json", JSON.stringify(layered));
  await goTo(page, "#/lay");
  await page.waitForSelector(".lay-details p:has-text('3 layers give 3 bags at a time')");
});

test("edges without a name are counted from 1 wherever she reads them; the file keeps its own numbers", async () => {
  const page = await openPage(await stage.person(), stage.url);
  const points = [
    ["0 mm", "0 mm"],
    ["30 cm", "0 mm"],
    ["30 cm", "20 cm"],
    ["0 mm", "20 cm"],
  ];
  const own = { ...panel("side", "Side", 0, 0), shape: { kind: "outline", points } };
  await openFile(
    page,
    "side.json",
    JSON.stringify({ ...JSON.parse(project), panels: [own], matches: [], centred: [] }),
  );
  await page.click(".card:has-text('Side')");
  await page.waitForSelector(".desk-board");
  const onDesk = await page.$$eval(".edge-middle", (all) =>
    all.map((one) => /^Edge (\d+)/u.exec(one.getAttribute("aria-label")!)![1]),
  );
  expect(onDesk).toEqual(["1", "2", "3", "4"]);
  await page.click("summary:has-text('Edges, corners and hems')");
  const rows = await page.$$eval(".edge-list strong", (all) => all.map((one) => one.textContent));
  expect(rows).toEqual(["edge 1", "edge 2", "edge 3", "edge 4"]);
  const folds = page.locator('[data-path="panels[0].fold"]');
  expect(await folds.locator("option").allTextContents()).toEqual(["no edge", ...rows]);
  await folds.selectOption({ label: "edge 2" });
  const file = JSON.parse(await savedText(page));
  expect(file.panels[0].fold).toBe(1);
});
