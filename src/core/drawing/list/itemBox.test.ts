import { expect, test } from "vitest";
import { wordsOf } from "../../../../tests/tools/writtenWords.ts";
import { boxHolds } from "../../geometry/box.ts";
import { circleContour, rectangleContour } from "../../geometry/contourShapes.ts";
import { isInked, itemBox } from "./itemBox.ts";
import { drawArea, drawLine, drawText } from "./items.ts";
import { paperPart } from "./page.ts";

const NONE = { minX: 0, minY: 0, maxX: 0, maxY: 0 };

test("lines and areas reach a millimetre farther than their contours, all of these together", () => {
  expect(itemBox(drawLine("cut", circleContour(10, 20, 5)))).toEqual({ minX: 4, minY: 14, maxX: 16, maxY: 26 });
  const area = drawArea("piece", [rectangleContour(0, 0, 4, 4), rectangleContour(20, 30, 1, 1)]);
  expect(itemBox(area)).toEqual({ minX: -1, minY: -1, maxX: 22, maxY: 32 });
  expect(itemBox(area)).toBe(itemBox(area));
});

test("a text's box holds its ink however it is anchored and turned, with room for a sign that is written as its number", () => {
  for (const anchor of ["start", "middle", "end"] as const)
    for (const turnDeg of [0, 90]) {
      const item = drawText("Shoulder strap g8", 50, 60, 5, { anchor, turnDeg, bold: true });
      expect(boxHolds(itemBox(item), wordsOf({ box: NONE, items: [item] })[0]!, 0)).toBe(true);
    }
  const number = wordsOf({ box: NONE, items: [drawText("[U+5E03]", 50, 60, 5)] })[0]!;
  expect(boxHolds(itemBox(drawText("布", 50, 60, 5)), { ...number, maxX: 50 + 5 }, 0)).toBe(true);
  expect(itemBox(drawText("i", 50, 60, 5))).toEqual({ minX: 40, minY: 50, maxX: 60, maxY: 70 });
});

test("of areas the cloth's pattern alone is worth ink", () => {
  const tones = ["pattern", "piece", "cloth", "flaw"] as const;
  expect(tones.map((tone) => isInked(drawArea(tone, [])))).toEqual([true, false, false, false]);
  expect(isInked(drawLine("fold", circleContour(0, 0, 1)))).toBe(true);
  expect(isInked(drawText("a", 0, 0, 1))).toBe(true);
});

test("what is drawn in paper millimetres is neither moved, scaled nor clipped", () => {
  expect(paperPart([])).toEqual({ items: [], x: 0, y: 0, scaleX: 1, scaleY: 1, clip: null });
});

test("items say what they are told and nothing more", () => {
  const contour = circleContour(0, 0, 1);
  expect(drawLine("cut", contour)).toEqual({ kind: "line", role: "cut", contour });
  expect(Object.keys(drawArea("piece", [contour]))).not.toContain("owner");
  expect(drawArea("piece", [contour], "a#0").owner).toBe("a#0");
  expect(drawText("a", 1, 2, 3)).toEqual({
    ...{ kind: "text", role: "label", text: "a", x: 1, y: 2, size: 3, anchor: "start", turnDeg: 0 },
  });
  expect(drawText("a", 1, 2, 3, { bold: false, tone: "ink", owner: "k", role: "sheet" })).toMatchObject({
    ...{ bold: false, tone: "ink", owner: "k", role: "sheet" },
  });
});
