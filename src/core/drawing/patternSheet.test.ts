import { expect, test } from "vitest";
import { straightContour } from "../geometry/contourShapes.ts";
import { ringBox, solid } from "../geometry/ring.ts";
import { paperNamed } from "../project/papers.ts";
import { type Pattern, patternSheet } from "./patternSheet.ts";
import type { TilingOptions } from "./tiling.ts";

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

test("no pattern, no sheet", () => {
  expect(patternSheet([], paper)).toBeNull();
});
