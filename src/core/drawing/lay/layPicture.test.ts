import { expect, test } from "vitest";
import { sampleSheet } from "../../../../tests/tools/samplePlan.ts";
import { areasOf, runTogether, wordsOf } from "../../../../tests/tools/writtenWords.ts";
import { contourBox } from "../../geometry/contourArcs.ts";
import { circleContour, segmentContour } from "../../geometry/contourShapes.ts";
import { rectangleRing, solid } from "../../geometry/ring.ts";
import { drawArea, drawLine } from "../list/items.ts";
import { layPicture } from "./layPicture.ts";

const sheet = sampleSheet();
const NUMBERS = new Map([
  ["strap", "1"],
  ["body", "2"],
  ["flap", "3"],
  ["tab", "4"],
]);
const pictureIn = (width: number, height: number, of = sheet) => layPicture(of, NUMBERS, { width, height });

// The lay is 630 × 480 mm; 7 mm are left above it and 5 below.
test("a lay is made small by the least whole number with which it fits its room", () => {
  expect(pictureIn(180, 90).scale).toBe(7);
  expect(pictureIn(180, 480 / 7 + 12).scale).toBe(7);
  expect(pictureIn(180, 480 / 7 + 11.9).scale).toBe(8);
  expect(pictureIn(90, 400).scale).toBe(7);
  expect(pictureIn(89.9, 400).scale).toBe(8);
  expect(pictureIn(2000, 2000).scale).toBe(1);
  const { drawing } = pictureIn(180, 90);
  expect(drawing.box).toEqual({ minX: 0, minY: -5, maxX: 90, maxY: 480 / 7 + 7 });
});

test("areas and the lines that can be told apart are where they were, smaller, arcs still arcs; all else is left out", () => {
  const fold = drawLine("fold", segmentContour(0, 0, 630, 0));
  const disc = drawArea("pattern", [circleContour(70, 70, 35)]);
  const more = { ...sheet, drawing: { ...sheet.drawing, items: [...sheet.drawing.items, fold, disc] } };
  const { drawing } = pictureIn(180, 90, more);
  const roles = new Set(drawing.items.flatMap((item) => (item.kind === "line" ? [item.role] : [])));
  expect([...roles].sort()).toEqual(["cloth", "cut", "fold"]);
  // Folds of pieces are left out, the cloth's own is not.
  expect(drawing.items.filter((item) => item.kind === "line" && item.role === "fold")).toHaveLength(1);
  const cuts = (items: typeof drawing.items) =>
    items.flatMap((item) => (item.kind === "line" && item.role === "cut" ? [contourBox(item.contour)] : []));
  const [small, large] = [cuts(drawing.items), cuts(sheet.drawing.items)];
  expect(small).toHaveLength(5);
  for (const [i, box] of small.entries())
    for (const side of ["minX", "maxX", "minY", "maxY"] as const)
      expect(box[side] * 7).toBeCloseTo(large[i]![side], 6);
  expect(areasOf(drawing.items, "pattern")).toEqual(["5 10, 15 10"]);
});

test("each piece has its number in it, as large as it has room for, centred", () => {
  const { drawing } = pictureIn(180, 90);
  const words = wordsOf(drawing);
  expect(words.map(({ text }) => text)).toEqual(["1", "1", "2", "3", "4"]);
  expect(runTogether(words)).toEqual([]);
  for (const [i, { outline }] of sheet.copies.entries()) {
    const xs = outline.outer.filter((_, k) => k % 2 === 0);
    const ys = outline.outer.filter((_, k) => k % 2 === 1);
    const { minX, maxX, minY, maxY, bold, size } = words[i]!;
    expect(bold).toBe(true);
    expect(size).toBe(3.2);
    expect(Math.abs((minX + maxX) / 2 - (Math.min(...xs) + Math.max(...xs)) / 14)).toBeLessThan(0.3);
    expect(Math.abs((minY + maxY) / 2 - (Math.min(...ys) + Math.max(...ys)) / 14)).toBeLessThan(0.2);
  }
  const low = (height: number) => {
    const copy = { ...sheet.copies[0]!, outline: solid(rectangleRing(0, 0, 600, height)) };
    return wordsOf(pictureIn(90, 400, { ...sheet, copies: [copy] }).drawing).map(({ size }) => size);
  };
  // A number takes its height and a fifth of a millimetre, at 1 : 7.
  expect([low(7 * 3.41), low(7 * 3.39), low(7 * 2.59), low(7 * 1.99)]).toEqual([[3.2], [2.4], [1.8], []]);
});

test("a number wider than its piece, or more than a hair of room beside it, is written smaller; a piece without number has none", () => {
  const copy = { ...sheet.copies[0]!, outline: solid(rectangleRing(0, 0, 7 * 2.8, 600)) };
  const sizes = wordsOf(pictureIn(90, 400, { ...sheet, copies: [copy] }).drawing).map(({ size }) => size);
  // A bold 1 is 0.64 of its height wide, and 0.6 mm are left beside it.
  expect(sizes).toEqual([3.2]);
  const narrow = { ...copy, outline: solid(rectangleRing(0, 0, 7 * 2.3, 600)) };
  expect(wordsOf(pictureIn(90, 400, { ...sheet, copies: [narrow] }).drawing).map(({ size }) => size)).toEqual([
    2.4,
  ]);
  const other = { ...copy, pieceId: "unknown" };
  expect(wordsOf(pictureIn(90, 400, { ...sheet, copies: [other] }).drawing)).toEqual([]);
});
