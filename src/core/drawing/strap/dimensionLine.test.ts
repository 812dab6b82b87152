import { expect, test } from "vitest";
import { areasOf, linesOf, wordsOf } from "../../../../tests/tools/writtenWords.ts";
import type { DrawingItem } from "../list/drawing.ts";
import { lengthLabel, levelDimension, thicknessLabel, uprightDimension } from "./dimensionLine.ts";

const texts = (items: readonly DrawingItem[]) => wordsOf({ box: { minX: 0, minY: 0, maxX: 0, maxY: 0 }, items });

// By hand: 38.1 mm are 1 1/2 in; a sixteenth is 1.5875 mm, so below 0.79375 mm the ruler shows none.
test("lengths stand in mm, with inches beside them where a ruler shows any", () => {
  expect(lengthLabel(38.1, null, "en")).toBe("38.1 mm");
  expect(lengthLabel(38.1, "in/16", "de")).toBe("38,1 mm (1 1/2 in)");
  expect(lengthLabel(0.7938, "in/16", "en")).toMatch(/^0\.8 mm \(/u);
  expect(lengthLabel(25.4 / 32, "in/16", "en")).toMatch(/in\)$/u);
  expect(lengthLabel(0.7937, "in/16", "en")).toBe("0.8 mm");
  expect(lengthLabel(-0.7, "in/16", "en")).not.toMatch(/in/u);
  expect(lengthLabel(0.3969, "in/32", "en")).toMatch(/in\)$/u);
  expect(lengthLabel(0.3968, "in/32", "en")).toBe("0.4 mm");
});

// By hand: 2.54 mm are 0.1 in.
test("thicknesses stand in mm, with thousandths of an inch where inches are asked for", () => {
  expect(thicknessLabel(2.54, null, "en")).toBe("2.5 mm");
  expect(thicknessLabel(2.54, "in/16", "en")).toBe("2.5 mm (0.100 in)");
  expect(thicknessLabel(1.27, "in/32", "de")).toBe("1,3 mm (0,050 in)");
});

// Technical drawing (ISO 129-1, in outline): arrows touch the extension lines from within; from without, the line run
// on beyond them, where there is no room between.
test("a level dimension: extension lines run past it, arrows point outward from within, words above its middle", () => {
  const items = levelDimension(10, 60, 20, 14, "50 mm", 3);
  expect(linesOf(items, "label")).toEqual(["10 20, 10 13", "60 20, 60 13", "10 14, 60 14"]);
  expect(areasOf(items, "ink")).toEqual(["10 14, 11.6 14.4, 11.6 13.6", "60 14, 58.4 13.6, 58.4 14.4"]);
  const [words] = texts(items);
  expect((words!.minX + words!.maxX) / 2).toBeCloseTo(35, 0);
  expect([words!.y, words!.size]).toEqual([15, 3]);
  // Above what it measures it runs the other way.
  expect(linesOf(levelDimension(10, 60, 20, 26, "50 mm", 3), "label").slice(0, 2)).toEqual([
    "10 20, 10 27",
    "60 20, 60 27",
  ]);
  expect(linesOf(levelDimension(10, 60, 20, 20, "50 mm", 3), "label")[0]).toBe("10 20, 10 21");
});

test("a dimension without room for its words has them to its right, one without room for arrows has these outside", () => {
  const narrow = levelDimension(10, 16, 20, 14, "6 mm, a lot to say", 3);
  expect(areasOf(narrow, "ink")[0]).toBe("10 14, 11.6 14.4, 11.6 13.6");
  expect(texts(narrow)[0]!.x).toBe(17);
  const thin = levelDimension(10, 12, 20, 14, "2 mm", 3);
  expect(linesOf(thin, "label").at(-1)).toBe("6.8 14, 15.2 14");
  expect(areasOf(thin, "ink")).toEqual(["10 14, 8.4 13.6, 8.4 14.4", "12 14, 13.6 14.4, 13.6 13.6"]);
  const [words] = texts(thin);
  expect(words!.x).toBeCloseTo(16.2, 9);
  // Its middle is level with the line: capitals are 0.73 of the letters' height.
  expect((words!.minY + words!.maxY) / 2).toBeCloseTo(14, 0);
});

test("an upright dimension: ticks at its ends, arrows from within or without, words to its right at half its height", () => {
  const items = uprightDimension(50, 10, 30, "20 mm", 3);
  expect(linesOf(items, "label")).toEqual(["49 10, 51 10", "49 30, 51 30", "50 10, 50 30"]);
  expect(areasOf(items, "ink")).toEqual(["50 10, 50.4 11.6, 49.6 11.6", "50 30, 49.6 28.4, 50.4 28.4"]);
  const [words] = texts(items);
  expect([words!.x, words!.size]).toEqual([52, 3]);
  expect(words!.y).toBeCloseTo(18.95, 9);
  const thin = uprightDimension(50, 10, 11, "1 mm", 3);
  expect(linesOf(thin, "label").at(-1)).toBe("50 6.8, 50 14.2");
  expect(areasOf(thin, "ink")).toEqual(["50 10, 49.6 8.4, 50.4 8.4", "50 11, 50.4 12.6, 49.6 12.6"]);
});
