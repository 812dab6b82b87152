import { expect, test } from "vitest";
import { ringBox } from "../../geometry/box.ts";
import { rectangleRing, solid } from "../../geometry/ring.ts";
import { rulerCuts } from "../../lay/alternatives/layFigures.ts";
import type { LayPiece } from "../../lay/problem/layProblem.ts";
import type { LaySheet } from "../lay/layDrawing.ts";
import { type RulerPlan, rulerPages, rulerPlan } from "./rulerPages.ts";

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

function planOf(gap: number, margin: number): RulerPlan {
  const sheet = sheetOf(gap, margin);
  const pieces = ["Strap", "Tab"].map((id): LayPiece => {
    const own = sheet.copies.filter(({ pieceId }) => pieceId === id);
    const { minX, minY, maxX, maxY } = ringBox(own[0]!.outline.outer);
    const outline = solid(rectangleRing(0, 0, maxX - minX, maxY - minY));
    const orientations = [{ turnDeg: 0, mirrored: false }];
    return { id, outline, count: 3, orientations, freeTurn: false };
  });
  const stocks = [{ kind: "roll", id: "roll", width: 300, length: null, flaws: [] } as const];
  const placements = sheet.copies.map(({ pieceId, copy, outline }) => {
    const { minX: x, minY: y } = ringBox(outline.outer);
    return { pieceId, copy, stockId: "roll", x, y, turnDeg: 0, mirrored: false };
  });
  const uses = [{ stockId: "roll", usedLength: sheet.usedLength, bound: null }];
  const problem = { materialId: "m", pieces, stocks, gap, margin, pinned: [] };
  const plan = { materialId: "m", placements, unplaced: [], uses, evaluations: 0, seed: 1 };
  return rulerPlan(rulerCuts(problem, plan)![0]!, sheet);
}

test("pieces that touch: straighten, two lengths, their rips, the tab's crosscut is its length", () => {
  const { sequence } = planOf(0, 0);
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
  const { sequence } = planOf(2, 5);
  const settings = sequence.steps.filter(({ off }) => off?.kind === "piece").map(({ setting }) => setting);
  expect(settings).toEqual([100, 100, 40]);
  expect(sequence.steps.find(({ kind }) => kind === "crosscut")!.setting).toBe(700);
});

test("every cut has its picture, eight a page", () => {
  const plan = planOf(2, 5);
  const title = { project: "p", material: "m", stock: "", language: "en" as const };
  const pages = rulerPages(plan, { width: 210, height: 297 }, title, (mm) => `${mm} mm`);
  expect(pages).toHaveLength(Math.ceil(plan.sequence.steps.length / 8));
  const words = pages
    .flatMap((page) => page.parts.flatMap((part) => part.items))
    .flatMap((item) => (item.kind === "text" ? [item.text] : []));
  expect(words.some((text) => text.includes("Cut the cloth crosswise at 700 mm"))).toBe(true);
});
