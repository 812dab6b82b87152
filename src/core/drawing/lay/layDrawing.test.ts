import { expect, test } from "vitest";
import { PLAN, STOCK, sampleSheet } from "../../../../tests/tools/samplePlan.ts";
import { areasOf, linesOf, wordsOf } from "../../../../tests/tools/writtenWords.ts";
import { boxesOverlap } from "../../geometry/box.ts";
import { rectangleContour, segmentContour } from "../../geometry/contourShapes.ts";
import { isInsideRing } from "../../geometry/inside.ts";
import { rectangleRing, reversedRing, solid } from "../../geometry/ring.ts";
import type { Stock } from "../../lay/problem/layProblem.ts";
import type { PieceLine } from "../../materials/cutPiece.ts";
import type { DrawnText } from "../list/drawing.ts";
import { segmentMeetsBox } from "../list/labelSpot.ts";
import type { GrainArrow } from "./labelBlock.ts";
import { layDrawing, type PieceArt } from "./layDrawing.ts";

const plan = (more: Partial<(typeof PLAN)["placements"][0]> = {}, stockId = "roll", usedLength = 200) => ({
  ...PLAN,
  placements: [{ pieceId: "p", copy: 0, stockId, x: 0, y: 0, turnDeg: 0, mirrored: false, ...more }],
  uses: [{ stockId, usedLength, bound: null }],
});
const art = (along: number, across: number, more: Partial<PieceArt> = {}): PieceArt => ({
  name: "Body",
  detail: "",
  contour: rectangleContour(0, 0, along, across),
  outline: solid(rectangleRing(0, 0, along, across)),
  lines: [],
  count: 1,
  ...more,
});
const drawn = (
  piece: PieceArt,
  grain: GrainArrow = "none",
  more: Partial<(typeof PLAN)["placements"][0]> = {},
  seams: Parameters<typeof layDrawing>[5] = [],
) => layDrawing(STOCK, plan(more), new Map([["p", piece]]), grain, "en", seams);
const texts = (sheet: { drawing: { items: readonly { kind: string }[] } }) =>
  sheet.drawing.items.filter((item): item is DrawnText => item.kind === "text");
const sizes = (piece: PieceArt, grain: GrainArrow = "none") =>
  texts(drawn(piece, grain)).map(({ text, size, turnDeg }) => `${text} ${Math.round(size * 10) / 10} ${turnDeg}`);

test("the cloth is as long as what is used of it, flaws with their holes and their outlines lie on it", () => {
  const flaw = { outer: rectangleRing(20, 30, 10, 10), holes: [reversedRing(rectangleRing(22, 32, 4, 4))] };
  const sheet = layDrawing({ ...STOCK, flaws: [flaw] } as Stock, plan(), new Map([["p", art(50, 40)]]), "none");
  expect(sheet.drawing.box).toEqual({ minX: 0, minY: 0, maxX: 200, maxY: 480 });
  expect(areasOf(sheet.drawing.items, "cloth")).toEqual(["0 0, 200 0, 200 480, 0 480"]);
  expect(linesOf(sheet.drawing.items, "cloth")).toEqual(["0 0, 200 0, 200 480, 0 480"]);
  expect(linesOf(sheet.drawing.items, "flaw")).toHaveLength(2);
  expect(areasOf(sheet.drawing.items, "flaw")).toHaveLength(2);
  expect([sheet.stockId, sheet.usedLength]).toEqual(["roll", 200]);
  // Without a use nothing is used; what lies on other cloth is not on this.
  const none = layDrawing(STOCK, { ...plan(), uses: [] }, new Map([["p", art(50, 40)]]), "none");
  expect(none.usedLength).toBe(0);
  expect(layDrawing(STOCK, plan({}, "other"), new Map([["p", art(50, 40)]]), "none").copies).toEqual([]);
  expect(() => layDrawing(STOCK, plan(), new Map(), "none")).toThrow(/piece p/u);
});

test("folded cloth shows its fold along the lower edge, its name off the cloth below it", () => {
  const sheet = layDrawing({ ...STOCK, folded: true } as Stock, plan(), new Map([["p", art(50, 40)]]), "none");
  expect(linesOf(sheet.drawing.items, "fold")).toEqual(["0 0, 200 0"]);
  const [words] = wordsOf(sheet.drawing);
  expect([words!.text, words!.size, words!.x]).toEqual(["Fold: do not cut", 6, 6]);
  expect(words!.maxY).toBeLessThan(-2);
  expect(words!.minY).toBeGreaterThan(sheet.drawing.box.minY);
  expect(sheet.drawing.box.minY).toBe(-12);
  const outline = solid(rectangleRing(0, 0, 100, 90));
  const leftover = layDrawing(
    { kind: "remnant", id: "roll", outline, flaws: [] },
    plan(),
    new Map([["p", art(50, 40)]]),
    "none",
  );
  expect(leftover.drawing.box).toEqual({ minX: 0, minY: 0, maxX: 100, maxY: 90 });
  expect(linesOf(leftover.drawing.items, "fold")).toEqual([]);
});

test("a piece lies where it is placed: turned, mirrored and shifted, its lines with it, its cut line last", () => {
  const lines: PieceLine[] = [{ role: "fold", contour: segmentContour(10, 0, 10, 40), text: "notch A" }];
  const sheet = drawn(art(50, 40, { lines }), "none", { turnDeg: 90, x: 100, y: 7 });
  expect(linesOf(sheet.drawing.items, "cut")).toEqual(["100 7, 100 57, 60 57, 60 7"]);
  expect(areasOf(sheet.drawing.items, "piece")).toEqual(["100 7, 100 57, 60 57, 60 7"]);
  expect(linesOf(sheet.drawing.items, "fold")).toEqual(["100 17, 60 17"]);
  const notch = texts(sheet).find(({ text }) => text === "notch A")!;
  expect([notch.x, notch.y, notch.size, notch.anchor]).toEqual([61, 16, 3.5, "start"]);
  const mirrored = drawn(art(50, 40), "none", { mirrored: true, x: 100, y: 0, copy: 3 });
  expect(linesOf(mirrored.drawing.items, "cut")).toEqual(["100 0, 50 0, 50 40, 100 40"]);
  expect(mirrored.copies).toMatchObject([{ key: "p#3", pieceId: "p", copy: 3, name: "Body" }]);
  for (const { owner } of mirrored.drawing.items.slice(2)) expect(owner).toBe("p#3");
  // The edge on the fold is not cut, holes are.
  const half = drawn(
    art(50, 40, {
      cutLine: { ...rectangleContour(0, 0, 50, 40), closed: false },
      outline: { outer: rectangleRing(0, 0, 50, 40), holes: [reversedRing(rectangleRing(20, 10, 5, 5))] },
    }),
  );
  const cuts = half.drawing.items.filter((item) => item.kind === "line" && item.role === "cut");
  expect(cuts.map((item) => item.kind === "line" && item.contour.closed)).toEqual([true, false]);
  expect(areasOf(half.drawing.items, "piece")).toHaveLength(2);
});

// Heights of letters, largest first: 8, 6, 5, 4, 3, 2.4, 1.8 mm. A name takes 1.3 of its height and half of it to spare.
test("a name is as large as its piece has room for, up to 8 mm", () => {
  expect(sizes(art(400, 400))).toEqual(["Body 8 0"]);
  expect(sizes(art(400, 14.41))).toEqual(["Body 8 0"]);
  expect(sizes(art(400, 14.39))).toEqual(["Body 6 0"]);
  expect(sizes(art(400, 10.79))).toEqual(["Body 5 0"]);
  expect(sizes(art(400, 8.99))).toEqual(["Body 4 0"]);
  expect(sizes(art(400, 7.19))).toEqual(["Body 3 0"]);
  expect(sizes(art(400, 5.39))).toEqual(["Body 2.4 0"]);
  expect(sizes(art(400, 4.31))).toEqual(["Body 1.8 0"]);
  expect(sizes(art(400, 3.2))).toEqual([]);
  // A grain arrow takes one height more.
  expect(sizes(art(400, 22.41), "both")).toEqual(["Body 8 0"]);
  expect(sizes(art(400, 22.39), "both")).toEqual(["Body 6 0"]);
});

test("the size stands below the name, four fifths as high, where both are read; copies are counted where there are several", () => {
  expect(sizes(art(400, 400, { detail: "40 cm × 40 cm" }))).toEqual(["Body 8 0", "40 cm × 40 cm 6.4 0"]);
  expect(sizes(art(400, 400, { count: 4 }))).toEqual(["Body · 1 of 4 8 0"]);
  // Where a level name has room only below 3 mm high, one that reads upward is larger.
  expect([9, 7.21, 7.19, 5.41].map((along) => sizes(art(along, 200))[0])).toEqual([
    "Body 2.4 0",
    "Body 4 90",
    "Body 3 90",
    "Body 3 90",
  ]);
  expect(sizes(art(200, 7.5, { detail: "20 cm × 7.5 mm" }))).toEqual(["Body 2.4 0", "20 cm × 7.5 mm 1.9 0"]);
});

test("names lie in their pieces and clear of their lines; where lines are everywhere, over them", () => {
  const fold = (y: number): PieceLine => ({ role: "fold", contour: segmentContour(0, y, 300, y) });
  const clear = drawn(art(300, 60, { lines: [fold(30)], detail: "30 cm × 6 cm" }), "both");
  for (const word of wordsOf(clear.drawing)) expect(word.minY > 30 || word.maxY < 30, word.text).toBe(true);
  const every = drawn(art(300, 60, { lines: Array.from({ length: 29 }, (_, i) => fold(2 * i + 2)) }));
  const [crossed] = texts(every);
  expect(crossed!.size).toBeGreaterThanOrEqual(3);
  const sheet = sampleSheet();
  for (const { key, outline } of sheet.copies) {
    const own = sheet.drawing.items.filter((item) => item.owner === key);
    const lines = own.flatMap((item) =>
      item.kind === "line" && item.role === "fold" ? [item.contour.vertices] : [],
    );
    for (const word of wordsOf({ ...sheet.drawing, items: own })) {
      for (const x of [word.minX, word.maxX])
        for (const y of [word.minY, word.maxY]) expect(isInsideRing(outline.outer, x, y), word.text).toBe(true);
      for (const [x0, y0, , x1, y1] of lines) expect(segmentMeetsBox(x0!, y0!, x1!, y1!, word)).toBe(false);
    }
  }
});

test("names keep off seams where their piece has room beside them, and are on them where it has not", () => {
  const seam = { minX: 90, maxX: 110, minY: -10, maxY: 500 };
  const level = { minX: -10, maxX: 500, minY: 20, maxY: 30 };
  for (const seams of [[seam], [level], [seam, level]]) {
    const words = wordsOf(drawn(art(200, 50, { detail: "200 mm × 50 mm" }), "none", {}, seams).drawing);
    expect(words).toHaveLength(2);
    for (const word of words) expect(seams.some((one) => boxesOverlap(one, word))).toBe(false);
  }
  const all = { minX: -10, maxX: 500, minY: -10, maxY: 500 };
  expect(texts(drawn(art(200, 50), "none", {}, [all]))).toHaveLength(1);
  // A tall piece over a seam reads upward beside it.
  const [tall] = texts(drawn(art(7, 200), "none", {}, [{ minX: -5, maxX: 50, minY: 90, maxY: 110 }]));
  expect(tall!.turnDeg).toBe(90);
  const [word] = wordsOf({ box: all, items: [tall!] });
  expect(word!.maxY < 90 || word!.minY > 110).toBe(true);
});

test("the cloth's pattern lies over all areas and under all lines", () => {
  const pattern = {
    along: 40,
    across: null,
    firstAlong: 20,
    firstAcross: 0,
    halfDrop: false,
    symmetric: true,
    tolerance: 1,
  };
  const { items } = layDrawing(STOCK, plan(), new Map([["p", art(50, 40)]]), "none", "en", [], pattern).drawing;
  const kinds = items.map((item) => (item.kind === "area" ? item.tone : item.kind));
  expect(kinds.lastIndexOf("piece")).toBeLessThan(kinds.indexOf("pattern"));
  expect(kinds.lastIndexOf("pattern")).toBeLessThan(kinds.indexOf("line"));
  expect(kinds.filter((kind) => kind === "pattern")).toHaveLength(5);
});
