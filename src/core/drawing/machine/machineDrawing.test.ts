import { expect, test } from "vitest";
import type { Contour } from "../../geometry/contour.ts";
import { contourBox } from "../../geometry/contourArcs.ts";
import { circleContour, rectangleContour, straightContour } from "../../geometry/contourShapes.ts";
import { drawLine, drawText } from "../list/items.ts";
import { bladePath } from "./bladePath.ts";
import { cutPaths, type MachineWish, machineDrawing } from "./machineDrawing.ts";
import { overcutPath } from "./overcut.ts";

const wish: MachineWish = {
  bedWidth: 300,
  bedHeight: 300,
  grip: 6,
  kerf: 0,
  bladeOffset: 0,
  overcut: 0,
  sharedOnce: false,
  order: "nearest",
};

/** A mat with one rectangle on it, and where its check square is. */
function squareOn(bed: number, ...cuts: readonly (readonly [number, number, number, number])[]) {
  const items = cuts.map((at) => drawLine("cut", rectangleContour(...at)));
  const box = { minX: 0, minY: 0, maxX: bed, maxY: bed };
  const drawing = machineDrawing(
    { stockId: "m", drawing: { box, items }, copies: [], usedLength: 0 },
    { ...wish, bedWidth: bed, bedHeight: bed },
  );
  const [square, word] = drawing.items;
  const { minX, minY, maxX } = contourBox((square as { contour: Contour }).contour);
  return { at: [minX, minY, maxX - minX], word };
}

test("the check square is 10 cm in the far corner, moved off the pieces by 5 mm at a time, smaller where it must be", () => {
  expect(squareOn(300).at).toEqual([194, 194, 100]);
  expect(squareOn(300).word).toMatchObject({
    kind: "text",
    x: 197,
    y: 197,
    size: 4,
    role: "sheet",
    text: "100 mm each way: do not cut",
  });
  // Pieces are moved in by the grip of 6 mm; 2 mm are kept from them.
  expect(squareOn(300, [0, 180, 288, 108]).at).toEqual([194, 84, 100]);
  expect(squareOn(300, [0, 182, 288, 106]).at).toEqual([194, 84, 100]);
  expect(squareOn(300, [0, 186, 288, 102]).at).toEqual([194, 89, 100]);
  expect(squareOn(300, [180, 0, 108, 288]).at).toEqual([84, 194, 100]);
  expect(squareOn(300, [0, 0, 200, 288]).at).toEqual([214, 214, 80]);
  expect(squareOn(300, [0, 0, 220, 288]).at).toEqual([234, 234, 60]);
  expect(squareOn(300, [0, 0, 234, 288]).at).toEqual([244, 244, 50]);
  expect(squareOn(300, [0, 0, 245, 288]).at).toEqual([254, 254, 40]);
  // Room to the hair on either side: the gap of 2 mm is enough, a hair less is not.
  expect(squareOn(300, [0, 0, 186, 288]).at).toEqual([194, 194, 100]);
  expect(squareOn(300, [0, 0, 186.01, 288]).at).toEqual([214, 214, 80]);
  expect(squareOn(300, [0, 0, 288, 186]).at).toEqual([194, 194, 100]);
  expect(squareOn(300, [0, 0, 288, 186.01]).at).toEqual([214, 214, 80]);
  expect(squareOn(300, [100, 0, 188, 288]).at).toEqual([24, 214, 80]);
  expect(squareOn(300, [99.99, 0, 188, 288]).at).toEqual([19, 214, 80]);
  expect(squareOn(300, [0, 100, 288, 188]).at).toEqual([214, 24, 80]);
  expect(squareOn(300, [0, 99.99, 288, 188]).at).toEqual([214, 19, 80]);
  // No room at all: in the near corner.
  expect(squareOn(300, [0, 0, 288, 288]).at).toEqual([6, 6, 100]);
  // A bed smaller than the square has one as large as its grip leaves.
  expect(squareOn(92).at).toEqual([6, 6, 80]);
  for (const [bedWidth, bedHeight] of [
    [92, 300],
    [300, 92],
  ] as const) {
    const empty = { box: { minX: 0, minY: 0, maxX: bedWidth, maxY: bedHeight }, items: [] };
    const sheet = { stockId: "m", drawing: empty, copies: [], usedLength: 0 };
    const [square] = machineDrawing(sheet, { ...wish, bedWidth, bedHeight }).items;
    const { minX, minY, maxX, maxY } = contourBox((square as { contour: Contour }).contour);
    expect([maxX - minX, maxY - minY, minX, minY]).toEqual([80, 80, bedWidth - 86, bedHeight - 86]);
  }
});

test("what is not cut is drawn besides, its own role kept, cloth and flaws left out", () => {
  const items = [
    drawLine("cloth", rectangleContour(0, 0, 90, 90)),
    drawLine("flaw", rectangleContour(5, 5, 9, 9)),
    drawLine("fold", straightContour([0, 5, 10, 5]), "p#0"),
    drawLine("cut", rectangleContour(0, 0, 10, 10), "p#0"),
    drawText("Tab", 3, 4, 2),
  ];
  const drawing = { box: { minX: 0, minY: 0, maxX: 90, maxY: 90 }, items };
  const made = machineDrawing({ stockId: "m", drawing, copies: [], usedLength: 0 }, wish).items.slice(2);
  expect(made.map((item) => (item.kind === "area" ? "area" : `${item.kind} ${item.role}`))).toEqual([
    "line fold",
    "text label",
    "line cut",
  ]);
  expect(made[0]).toMatchObject({ contour: { vertices: Float64Array.of(6, 11, 0, 16, 11, 0) } });
  expect(made[1]).toMatchObject({ x: 9, y: 10 });
});

test("an overcut is no longer than the first edge, and goes round an arc on the arc", () => {
  const ends = (contour: Contour, by: number) => [...overcutPath(contour, by).vertices].slice(-3, -1);
  expect(ends(rectangleContour(2, 3, 10, 5), 4)).toEqual([6, 3]);
  expect(ends(rectangleContour(2, 3, 10, 5), 40)).toEqual([12, 3]);
  // The way is closed first: back to where it began.
  expect([...overcutPath(rectangleContour(2, 3, 10, 5), 4).vertices].slice(-6, -4)).toEqual([2, 3]);
  const [x, y] = ends(circleContour(5, 5, 10), 5) as [number, number];
  // From the left, counter-clockwise: half a radian on.
  expect([x, y]).toEqual([expect.closeTo(5 - 10 * Math.cos(0.5), 9), expect.closeTo(5 - 10 * Math.sin(0.5), 9)]);
  const far = ends(circleContour(5, 5, 10), 500) as [number, number];
  expect([far[0], far[1]]).toEqual([expect.closeTo(15, 9), expect.closeTo(5, 9)]);
  const open = straightContour([0, 0, 10, 0]);
  expect(overcutPath(open, 1)).toBe(open);
  expect(overcutPath(circleContour(0, 0, 1), 0).closed).toBe(true);
  // From the lower right, a quarter of a turn less an eighth.
  const slanted: Contour = { vertices: Float64Array.of(6, -8, 1, -6, 8, 1), closed: true };
  const start = Math.atan2(-8, 6);
  expect(ends(slanted, 5)).toEqual(
    [10 * Math.cos(start + 0.5), 10 * Math.sin(start + 0.5)].map((mm) => expect.closeTo(mm, 9)),
  );
  const clockwise: Contour = { vertices: Float64Array.of(-10, 0, -1, 10, 0, -1), closed: true };
  const turned = overcutPath(clockwise, 5).vertices;
  expect(turned.at(-2)).toBeCloseTo(10 * Math.sin(0.5), 9);
  expect(turned.at(-4)).toBeCloseTo(-Math.tan(0.125), 9);
});

test("kerf: what is cut clockwise grows as well, open lines stay, shapes whose arcs are lost come out as lines", () => {
  const clockwise: Contour = { vertices: Float64Array.of(0, 0, 0, 0, 20, 0, 30, 20, 0, 30, 0, 0), closed: true };
  const [grown] = cutPaths([drawLine("cut", clockwise, "p#0")], { ...wish, kerf: 0.5 });
  expect(contourBox(grown!.contour)).toEqual({ minX: -0.25, minY: -0.25, maxX: 30.25, maxY: 20.25 });
  const round: Contour = { vertices: Float64Array.of(-10, 0, -1, 10, 0, -1), closed: true };
  const [disc] = cutPaths([drawLine("cut", round, "p#0")], { ...wish, kerf: 1 });
  const box = contourBox(disc!.contour);
  expect([box.minX, box.maxX, box.minY, box.maxY].map((mm) => Math.round(mm * 1e6) / 1e6)).toEqual([
    -10.5, 10.5, -10.5, 10.5,
  ]);
  // One round end: each arc stays between its own two corners when the way is turned.
  const tongue: Contour = { vertices: Float64Array.of(0, 0, 0, 0, 20, 0, 40, 20, -1, 40, 0, 0), closed: true };
  const [end] = cutPaths([drawLine("cut", tongue, "p#0")], { ...wish, kerf: 1 });
  const reach = contourBox(end!.contour);
  expect([reach.minX, reach.maxX, reach.minY, reach.maxY]).toEqual(
    [-0.5, 50.5, -0.5, 20.5].map((mm) => expect.closeTo(mm, 6)),
  );
  const open = straightContour([0, 0, 10, 0]);
  expect(cutPaths([drawLine("cut", open, "p#0")], { ...wish, kerf: 1 })[0]!.contour).toBe(open);
  // Without an owner nothing is known to be a hole.
  const pair = [rectangleContour(0, 0, 50, 50), rectangleContour(10, 10, 20, 20)].map((one) =>
    drawLine("cut", one),
  );
  const boxes = cutPaths(pair, { ...wish, kerf: 1 }).map(({ contour }) => contourBox(contour).minX);
  expect(boxes.sort((a, b) => a - b)).toEqual([-0.5, 9.5]);
});

test("edges that two pieces share are cut twice where the kerf moves them apart", () => {
  const pair = [
    drawLine("cut", rectangleContour(0, 0, 10, 10), "a#0"),
    drawLine("cut", rectangleContour(10, 0, 10, 10), "b#0"),
  ];
  const closed = cutPaths(pair, { ...wish, sharedOnce: true, kerf: 0.1 }).filter(({ contour }) => contour.closed);
  expect(closed).toHaveLength(2);
});

test("a blade's offset is 0 or more; 0 leaves the path as it is", () => {
  const shape = rectangleContour(0, 0, 10, 10);
  expect(bladePath(shape, 0)).toBe(shape);
  expect(() => bladePath(shape, -0.1)).toThrow(RangeError);
  const point: Contour = { vertices: Float64Array.of(1, 1, 0, 1, 1, 0), closed: true };
  expect(bladePath(point, 0.25)).toBe(point);
  // A closed one ends where it began.
  const closed = bladePath(shape, 0.5).vertices;
  expect([...closed.slice(-3, -1)]).toEqual([...closed.slice(0, 2)]);
  // An open line: the holder goes on by the offset past its end.
  expect([...bladePath(straightContour([0, 0, 10, 0]), 0.5).vertices]).toEqual([0.5, 0, 0, 10.5, 0, 0]);
});
