import { expect, test } from "vitest";
import { linesOf, wordsOn } from "../../../../tests/tools/writtenWords.ts";
import { segmentContour, straightContour } from "../../geometry/contourShapes.ts";
import { drawLine } from "../list/items.ts";
import { checkSquareItems, checkSquareSpot, flatLines } from "./checkSquare.ts";
import type { Tile } from "./tiling.ts";

const TILE: Tile = {
  ...{ row: 0, column: 0, name: "A1", left: null, right: null, above: null, below: null, pieces: [] },
  window: { minX: 0, minY: 0, maxX: 190, maxY: 277 },
};
const window = { minX: 100, minY: 200, maxX: 290, maxY: 477 };
const spotWith = (...lines: readonly (readonly [number, number, number, number])[]) => {
  const items = lines.map((at) => drawLine("cut", segmentContour(...at)));
  return checkSquareSpot({ ...TILE, window }, 10, flatLines({ box: window, items }));
};

test("the check square goes to the first corner that no line runs through: lower left, lower right, upper left, upper right", () => {
  // 15 mm from the window's edges: 10 of overlap and 5 off the joint; the square is 20 mm.
  expect(spotWith()).toEqual({ x: 15, y: 15 });
  expect(spotWith([120, 0, 120, 400])).toEqual({ x: 155, y: 15 });
  expect(spotWith([0, 220, 400, 220])).toEqual({ x: 15, y: 242 });
  expect(spotWith([0, 220, 400, 220], [120, 230, 120, 470])).toEqual({ x: 155, y: 242 });
  expect(spotWith([120, 0, 120, 500], [270, 0, 270, 500])).toEqual({ x: 15, y: 15 });
  // A line passes 1 mm beside it at least.
  expect(spotWith([113.9, 0, 113.9, 500])).toEqual({ x: 15, y: 15 });
  expect(spotWith([114.1, 0, 114.1, 500])).toEqual({ x: 155, y: 15 });
  expect(spotWith([136.1, 0, 136.1, 250])).toEqual({ x: 15, y: 15 });
  expect(spotWith([135.9, 0, 135.9, 250])).toEqual({ x: 155, y: 15 });
  expect(spotWith([0, 236.1, 300, 236.1])).toEqual({ x: 15, y: 15 });
  expect(spotWith([0, 235.9, 300, 235.9])).toEqual({ x: 15, y: 242 });
  expect(spotWith([0, 213.9, 300, 213.9])).toEqual({ x: 15, y: 15 });
  expect(spotWith([0, 214.1, 300, 214.1])).toEqual({ x: 15, y: 242 });
});

test("the edge that closes an outline is in the way like any other", () => {
  // From (145, 240) back to (105, 195): through the square at the lower left; the other two pass below and beside it.
  const triangle = drawLine("cut", straightContour([105, 195, 500, 100, 145, 240], true));
  const lines = flatLines({ box: window, items: [triangle] });
  expect(checkSquareSpot({ ...TILE, window }, 10, lines)).toEqual({ x: 155, y: 15 });
});

test("a sheet too small for a square between its joints has none", () => {
  const small = (wide: number, high: number, overlap: number) =>
    checkSquareSpot({ ...TILE, window: { minX: 0, minY: 0, maxX: wide, maxY: high } }, overlap, []);
  expect(small(50, 50, 10)).toEqual({ x: 15, y: 15 });
  expect(small(49.9, 80, 10)).toBeNull();
  expect(small(80, 49.9, 10)).toBeNull();
  // Butted sheets have rings half of which is on each: 3 mm are kept for them.
  expect(small(36, 36, 0)).toEqual({ x: 8, y: 8 });
  expect(small(35.9, 80, 0)).toBeNull();
});

test("the square has its size in its middle", () => {
  const items = checkSquareItems(30, 40);
  expect(linesOf(items, "sheet")).toEqual(["30 40, 50 40, 50 60, 30 60"]);
  const [word] = wordsOn({
    name: "",
    width: 0,
    height: 0,
    parts: [{ items, x: 0, y: 0, scaleX: 1, scaleY: 1, clip: null }],
  });
  expect([word!.text, word!.size]).toEqual(["2 cm", 2.6]);
  expect((word!.minX + word!.maxX) / 2).toBeCloseTo(40, 0);
  expect((word!.minY + word!.maxY) / 2).toBeCloseTo(50, 0);
});
