import { expect, test } from "vitest";
import { areasOf, linesOf, runTogether, standOut, wordsOn } from "../../../tests/tools/writtenWords.ts";
import { boxesOverlap, boxOfAll } from "../../core/geometry/box.ts";
import { contourBox } from "../../core/geometry/contourArcs.ts";
import { scanCode } from "./scanCode.ts";
import { shelfLabelPages } from "./shelfLabelPages.ts";

const A4 = { width: 210, height: 297 };
const LINES = ["Canvas", "navy", "612 × 405 mm", "□ 500 × 400 mm", "↔ 612 × 80 mm", "2026-11-30, Tote"];
const labels = Array.from({ length: 26 }, (_, i) => ({ code: `K7M${String.fromCharCode(65 + i)}P`, lines: LINES }));

// ISO/IEC 18004: version 1 has 21 modules a side and needs 4 white ones round it; a module is 1 mm here.
test("each label of 70 × 37 mm has its code at the left with its white edge, and its words beside it", () => {
  const pages = shelfLabelPages(labels, A4);
  expect(pages.map(({ name }) => name)).toEqual(["1", "2"]);
  const words = wordsOn(pages[0]!);
  const codes = pages[0]!.parts[0]!.items.flatMap((item) =>
    item.kind === "area" && item.tone === "ink" ? [boxOfAll(item.contours.map(contourBox))] : [],
  );
  expect(codes).toHaveLength(24);
  expect(runTogether(words)).toEqual([]);
  for (const [i, code] of codes.entries()) {
    const [left, top] = [(i % 3) * 70, 297 - Math.floor(i / 3) * 37.125];
    expect(code.minX).toBeCloseTo(left + 4, 9);
    expect(code.maxX - code.minX).toBeCloseTo(21, 9);
    expect(code.maxY - code.minY).toBeCloseTo(21, 9);
    expect((code.minY + code.maxY) / 2).toBeCloseTo(top - 37.125 / 2, 9);
    const quiet = { minX: code.minX - 4, maxX: code.maxX + 4, minY: code.minY - 4, maxY: code.maxY + 4 };
    const own = words.filter(({ x, y }) => x > left && x < left + 70 && y < top && y > top - 37.125);
    expect(own.map(({ text }) => text)).toEqual([labels[i]!.code, ...LINES]);
    expect(own.some((word) => boxesOverlap(word, quiet))).toBe(false);
    expect(standOut(own, { minX: left + 28.9, maxX: left + 67.1, minY: top - 35.2, maxY: top - 4 })).toEqual([]);
    expect([own[0]!.size, own[0]!.bold]).toEqual([5.2, true]);
    for (const [k, { size, y, x }] of own.slice(1).entries()) {
      expect([size, x]).toEqual([2.9, expect.closeTo(left + 29, 6)]);
      expect(own[0]!.y - y).toBeCloseTo(2.9 * (1.35 * (k + 1) + 0.2), 6);
    }
    expect(own[0]!.y).toBeCloseTo(top - 8.6, 6);
  }
  expect(linesOf(pages[0]!.parts[0]!.items, "sheet")).toHaveLength(2 + 7);
  const second = wordsOn(pages[1]!);
  expect(second.filter(({ bold }) => bold).map(({ text }) => text)).toEqual(
    labels.slice(24).map(({ code }) => code),
  );
});

test("twenty-four labels are one page; other sheets of labels have their own margins", () => {
  expect(shelfLabelPages(labels.slice(0, 24), A4)).toHaveLength(1);
  expect(shelfLabelPages([], A4)).toEqual([]);
  const [page] = shelfLabelPages(labels.slice(0, 4), A4, { columns: 2, rows: 5, marginX: 8, marginY: 13 });
  const codes = wordsOn(page!).filter(({ bold }) => bold);
  expect(codes.map(({ x, y }) => [x, y])).toEqual(
    [
      [8 + 29, 297 - 13 - 8.6],
      [105 + 29, 297 - 13 - 8.6],
      [8 + 29, 297 - 13 - 54.2 - 8.6],
      [105 + 29, 297 - 13 - 54.2 - 8.6],
    ].map((at) => at.map((mm) => expect.closeTo(mm, 6))),
  );
});

test("what has no room below on a label is left out, what is too wide is cut", () => {
  const long = [{ code: "K7M2P", lines: [...LINES, ...LINES, "x".repeat(90)] }];
  const words = wordsOn(shelfLabelPages(long, A4)[0]!);
  expect(words.length).toBeLessThan(1 + 9);
  expect(Math.min(...words.map(({ y }) => y))).toBeGreaterThan(297 - 37.125 + 1.4);
  const wide = wordsOn(shelfLabelPages([{ code: "K7M2P", lines: ["x".repeat(90)] }], A4)[0]!);
  expect(wide[1]!.text).toMatch(/…$/u);
  expect(wide[1]!.maxX).toBeGreaterThan(64);
  expect(wide[1]!.maxX).toBeLessThanOrEqual(67.1);
});

test("dark modules of a row are one rectangle a stretch, from the lowest row up", () => {
  const { art, modules } = scanCode("K7M2P", 100, 50, 2);
  expect(modules).toBe(21);
  const boxes = art.contours.map(contourBox);
  for (const box of boxes) {
    expect(box.maxY - box.minY).toBeCloseTo(2, 9);
    expect(((box.maxX - box.minX) / 2) % 1).toBeCloseTo(0, 9);
  }
  expect(boxOfAll(boxes)).toEqual({ minX: 100, minY: 50, maxX: 142, maxY: 92 });
  // No two of a row touch.
  for (const [i, a] of boxes.entries())
    for (const b of boxes.slice(i + 1))
      if (a.minY === b.minY) expect(a.maxX < b.minX || b.maxX < a.minX).toBe(true);
  // Three corners have the large squares, seven modules wide; the lower right has none.
  const full = boxes.filter(({ minX, maxX }) => maxX - minX === 14);
  expect(full.map(({ minX, minY }) => `${minX} ${minY}`)).toEqual(
    expect.arrayContaining(["100 90", "128 90", "100 62", "100 50", "128 78", "100 78"]),
  );
  expect(areasOf([art], "ink")).toHaveLength(boxes.length);
});
