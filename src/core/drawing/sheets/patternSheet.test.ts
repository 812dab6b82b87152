import { expect, test } from "vitest";
import { ringBox } from "../../geometry/box.ts";
import { straightContour } from "../../geometry/contourShapes.ts";
import { solid } from "../../geometry/ring.ts";
import { paperNamed } from "../../project/papers.ts";
import { textWidth } from "../list/textWidth.ts";
import { type Pattern, patternSheet } from "./patternSheet.ts";
import { seamsOf, type TilingOptions, tilePieces } from "./tiling.ts";

const paper: TilingOptions = {
  paper: paperNamed("A4")!,
  margin: 10,
  overlap: 10,
  orientation: "fewest",
  correction: { x: 1, y: 1 },
};
const triangle = (id: string, along: number, across: number, turnDeg = 0): Pattern => {
  const points = [0, 0, along, 0, 0, across];
  return {
    id,
    art: {
      name: id,
      detail: "",
      contour: straightContour(points, true),
      outline: solid(Float64Array.from(points)),
      lines: [],
      count: 1,
    },
    orientation: { turnDeg, mirrored: false },
    grain: "both",
  };
};

test("every pattern is there once, none over another, no cloth under them", () => {
  const sheet = patternSheet([triangle("a", 150, 80), triangle("b", 90, 200), triangle("c", 60, 60, 90)], paper)!;
  expect(sheet.copies.map((copy) => copy.pieceId).sort()).toEqual(["a", "b", "c"]);
  const boxes = sheet.copies.map((copy) => ringBox(copy.outline.outer));
  boxes.forEach((one, i) => {
    for (const other of boxes.slice(i + 1)) {
      const apart =
        one.maxX <= other.minX || other.maxX <= one.minX || one.maxY <= other.minY || other.maxY <= one.minY;
      expect(apart).toBe(true);
    }
  });
  expect(sheet.drawing.items.some((item) => item.kind === "line" && item.role === "cloth")).toBe(false);
});

test("patterns stand one above the other where side by side they would need more sheets, and side by side where not", () => {
  const sheetsOf = (...patterns: Pattern[]) =>
    tilePieces(patternSheet(patterns, paper)!.copies, paper).tiles.length;
  expect(sheetsOf(triangle("a", 170, 120), triangle("b", 170, 120))).toBe(1);
  expect(sheetsOf(triangle("a", 85, 240), triangle("b", 85, 240))).toBe(1);
  expect(patternSheet([triangle("a", 170, 120), triangle("b", 170, 120)], paper)!.drawing.box).toEqual({
    ...{ minX: 0, minY: 0, maxX: 170, maxY: 246 },
  });
  expect(patternSheet([triangle("a", 85, 240), triangle("b", 85, 240)], paper)!.drawing.box).toEqual({
    ...{ minX: 0, minY: 0, maxX: 176, maxY: 240 },
  });
});

test("the highest come first, so that rows are of like height", () => {
  const sheet = patternSheet(
    [triangle("low", 60, 40), triangle("high", 60, 90), triangle("mid", 60, 70, 90)],
    paper,
  )!;
  const left = new Map(sheet.copies.map(({ pieceId, outline }) => [pieceId, ringBox(outline.outer).minX]));
  expect(left.get("high")).toBe(0);
  for (const { outline } of sheet.copies) {
    const { minX, minY } = ringBox(outline.outer);
    expect(Math.min(minX, minY)).toBeGreaterThan(-1e-9);
  }
  expect(Math.min(...sheet.copies.map(({ outline }) => ringBox(outline.outer).minY))).toBeCloseTo(0, 9);
  // Turned by a quarter the third is 70 mm wide and 60 high.
  expect(left.get("mid")).toBeCloseTo(66, 9);
  expect(sheet.drawing.box.maxY === 90 ? left.get("low") : 0).toBeCloseTo(
    sheet.drawing.box.maxY === 90 ? 142 : 0,
    9,
  );
});

test("however a pattern is turned it stands in the sheet's corner, as high as it is", () => {
  for (const turnDeg of [0, 90, 180, 270]) {
    const { copies, drawing } = patternSheet([triangle("a", 150, 80, turnDeg)], paper)!;
    const { minX, minY, maxX, maxY } = ringBox(copies[0]!.outline.outer);
    expect([minX, minY]).toEqual([0, 0].map((mm) => expect.closeTo(mm, 9)));
    const size = turnDeg % 180 === 0 ? [150, 80] : [80, 150];
    expect([maxX, maxY]).toEqual(size.map((mm) => expect.closeTo(mm, 9)));
    expect([drawing.box.maxX, drawing.box.maxY]).toEqual(size.map((mm) => expect.closeTo(mm, 9)));
  }
  // A cord's cover is no higher than half a millimetre either.
  expect(patternSheet([triangle("low", 60, 0.5)], paper)!.drawing.box.maxY).toBe(0.5);
});

test("patterns that fill a row to the hair stand beside each other; one longer than any row begins in the corner", () => {
  // A sheet of A4 has 190 mm between its margins: twice 92 and 6 between them.
  expect(patternSheet([triangle("a", 92, 80), triangle("b", 92, 80)], paper)!.drawing.box).toMatchObject({
    maxX: 190,
    maxY: 80,
  });
  expect(patternSheet([triangle("long", 2500, 80)], paper)!.drawing.box).toMatchObject({ maxX: 2500, maxY: 80 });
});

test("no pattern, no sheet", () => {
  expect(patternSheet([], paper)).toBeNull();
});

test("names keep off the seams between sheets wherever their piece has room beside them", () => {
  const box = (id: string, along: number, across: number): Pattern => {
    const points = [0, 0, along, 0, along, across, 0, across];
    const outline = solid(Float64Array.from(points));
    const art = { ...triangle(id, 1, 1).art, contour: straightContour(points, true), outline, detail: "cut 2" };
    return { ...triangle(id, 1, 1), art };
  };
  // Over two sheets along, over two across, and over four with their middle on a seam.
  const patterns = [box("Long gusset", 370, 60), box("High back panel", 90, 520), box("Body", 370, 540)];
  const sheet = patternSheet(patterns, paper)!;
  const tiling = tilePieces(sheet.copies, paper);
  const seams = seamsOf(tiling);
  expect(seams.length).toBeGreaterThan(2);
  const names = sheet.drawing.items.filter((item) => item.kind === "text");
  expect(names.map(({ text }) => text).sort()).toEqual(
    ["Body", "High back panel", "Long gusset", "cut 2", "cut 2", "cut 2"].sort(),
  );
  for (const { text, x, y, size, turnDeg } of names) {
    expect(turnDeg).toBe(0);
    const half = textWidth(text, size, true) / 2;
    for (const seam of seams) {
      const meets = x + half > seam.minX && x - half < seam.maxX && y + size * 0.8 > seam.minY && y < seam.maxY;
      expect(meets, `${text} on a seam`).toBe(false);
    }
  }
});
