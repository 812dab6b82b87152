import { expect, test } from "vitest";
import { textWidth, wrapText } from "./textWidth.ts";

const SIZE = 3;
const wide = (text: string) => textWidth(text, SIZE) + 0.01;

test("lines end between words, and no line ends inside a size", () => {
  const text = "Useful offcuts: 85 mm × 415 mm and 3 smaller.";
  expect(wrapText(text, SIZE, wide("Useful offcuts: 85 mm × 4"))).toEqual([
    "Useful offcuts:",
    "85 mm × 415 mm and 3",
    "smaller.",
  ]);
});

test("a size wider than the line breaks at its blanks, a word at any letter", () => {
  expect(wrapText("85 mm × 415 mm", SIZE, wide("85 mm ×"))).toEqual(["85 mm ×", "415 mm"]);
  expect(wrapText("waxed sailcloth", SIZE, wide("sailc"))).toEqual(["wax", "ed", "sailc", "loth"]);
});

test("blanks are single and plain", () => {
  expect(wrapText("  cut\n 30   mm ", SIZE, 1000)).toEqual(["cut 30 mm"]);
  expect(wrapText("", SIZE, 10)).toEqual([]);
});
