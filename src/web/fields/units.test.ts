import { expect, test } from "vitest";
import { lengthWords, type Units } from "./units.ts";

const METRIC: Units = { system: "metric", unit: "mm", style: "mm", clothStyle: "m" };
const INCHES: Units = { system: "inches", unit: "in", style: "in/16", clothStyle: "yd/8" };
const plain = (text: string): string => text.replaceAll("\u00a0", " ");

test("cloth below a metre or a yard is told in the unit of sizes, so that a length and its difference have one", () => {
  const taken = (mm: number, units = METRIC) => plain(lengthWords(units, "en").taken(mm));
  expect([99.1, 400, 999.4, 999.6, 1000, 1420].map((mm) => taken(mm))).toEqual([
    "99.1 mm",
    "400 mm",
    "999.4 mm",
    "1 m",
    "1 m",
    "1.42 m",
  ]);
  expect(taken(0)).toBe("0 m");
  expect(taken(99.1, { ...METRIC, unit: "cm", style: "cm" })).toBe("9.91 cm");
  expect([50.8, 914.4, 1143].map((mm) => taken(mm, INCHES))).toEqual(["2 in", "1 yd", "1 1/4 yd"]);
});

test("a box has one unit, and no blank in it lets a line break", () => {
  expect(lengthWords(METRIC, "de").box(98.4, 700)).toBe("98,4\u00a0×\u00a0700\u00a0mm");
  expect(plain(lengthWords(INCHES, "en").box(98.425, 50.8))).toBe("3 7/8 × 2 in");
});
