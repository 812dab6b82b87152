import { expect, test } from "vitest";
import { rectangleRing, solid } from "../geometry/ring.ts";
import type { LaySheet } from "./layDrawing.ts";
import { rulerPages, rulerPlan } from "./rulerPages.ts";

/** Two straps side by side and a tab after them, `gap` apart, `margin` from the edges of a roll. */
function sheetOf(gap: number, margin: number): LaySheet {
  const boxes: [string, number, number, number, number][] = [
    ["Strap", margin, margin, 700, 100],
    ["Strap", margin, margin + 100 + gap, 700, 100],
    ["Tab", margin + 700 + gap, margin, 60, 40],
  ];
  return {
    stockId: "roll",
    drawing: { box: { minX: 0, minY: 0, maxX: 780, maxY: 300 }, items: [] },
    copies: boxes.map(([name, x, y, w, h], copy) => ({
      key: `${name}#${copy}`,
      pieceId: name,
      copy,
      name,
      outline: solid(rectangleRing(x, y, w, h)),
    })),
    usedLength: 2 * margin + 760 + gap,
  };
}

test("pieces that touch: straighten, two lengths, their rips, the tab's crosscut is its length", () => {
  const { sequence } = rulerPlan(sheetOf(0, 0), 300, 0, 0)!;
  const said = sequence.steps.map(({ kind, setting, off }) => [kind, setting, off?.kind === "piece"]);
  expect(said).toEqual([
    ["straighten", 0, false],
    ["crosscut", 700, false],
    ["crosscut", 60, false],
    ["rip", 100, true],
    ["rip", 100, true],
    ["rip", 40, true],
  ]);
});

test("gaps are closed up: every piece is cut at its own size, not with its gap", () => {
  const { sequence } = rulerPlan(sheetOf(2, 5), 300, 2, 5)!;
  const settings = sequence.steps.filter(({ off }) => off?.kind === "piece").map(({ setting }) => setting);
  expect(settings).toEqual([100, 100, 40]);
  expect(sequence.steps.find(({ kind }) => kind === "crosscut")!.setting).toBe(700);
});

test("a lay that no ruler can part has no ruler pages", () => {
  const boxes: [number, number, number, number][] = [
    [0, 0, 20, 10],
    [20, 0, 10, 20],
    [10, 20, 20, 10],
    [0, 10, 10, 20],
    [10, 10, 10, 10],
  ];
  const copies = boxes.map(([x, y, w, h], copy) => ({
    key: `p#${copy}`,
    pieceId: "p",
    copy,
    name: "p",
    outline: solid(rectangleRing(x, y, w, h)),
  }));
  expect(rulerPlan({ ...sheetOf(0, 0), copies }, 30, 0, 0)).toBeNull();
});

test("every cut has its picture, eight a page", () => {
  const plan = rulerPlan(sheetOf(2, 5), 300, 2, 5)!;
  const title = { project: "p", material: "m", stock: "" };
  const pages = rulerPages(plan, { width: 210, height: 297 }, title, (mm) => `${mm} mm`);
  expect(pages).toHaveLength(Math.ceil(plan.sequence.steps.length / 8));
  const words = pages
    .flatMap((page) => page.parts.flatMap((part) => part.items))
    .flatMap((item) => (item.kind === "text" ? [item.text] : []));
  expect(words.some((text) => text.includes("Crosscut the cloth at 700 mm"))).toBe(true);
});
