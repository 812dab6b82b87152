import { expect, test } from "vitest";
import { rectangleContour } from "../../geometry/contourShapes.ts";
import type { MaterialStock } from "../../materials/stock.ts";
import { cutLength } from "../../units/cutLength.ts";
import { stockName } from "./stockName.ts";

const write = (mm: number) => cutLength(mm, "mm");
const roll: MaterialStock = {
  kind: "roll",
  id: "roll",
  width: 1400,
  selvedge: 10,
  length: null,
  squaring: 0,
  flaws: [],
};
const rest = (id: string, along: number, count = 1): MaterialStock => ({
  kind: "remnant",
  id,
  shape: { kind: "rectangle", along, across: 400 },
  flaws: [],
  count,
});

test("a roll or leftover that is alone of its kind is named by kind and size", () => {
  const stock = [rest("remnant", 600), roll];
  expect(stockName(stock, "remnant", write, "en")).toBe("remnant, 600 mm × 400 mm");
  expect(stockName(stock, "remnant", write, "de")).toBe("Rest, 600 mm × 400 mm");
  expect(stockName(stock, "roll", write, "en")).toBe("roll, 1400 mm wide");
});

test("a leftover drawn away from its corner is as large as it is, not as far as it reaches", () => {
  const drawn = {
    ...rest("r", 600),
    shape: { kind: "outline", contour: rectangleContour(50, 20, 300, 200) },
  } as MaterialStock;
  expect(stockName([drawn], "r", write, "en")).toBe("remnant, 300 mm × 200 mm");
});

test("of several, each has its number in the list, and equal ones are counted", () => {
  const stock = [rest("a", 600), rest("b", 300, 2), roll];
  expect(stockName(stock, "a", write, "en")).toBe("remnant 1, 600 mm × 400 mm");
  expect(stockName(stock, "b (2)", write, "en")).toBe("remnant 2, 300 mm × 400 mm, 2 of 2");
  expect(stockName(stock, "b", write, "de")).toBe("Rest 2, 300 mm × 400 mm, 1 von 2");
});

test("what is not there is named as it was asked for", () => {
  expect(stockName([roll], "elsewhere", write, "en")).toBe("elsewhere");
});

test("a piece with a label is called by it, for whoever looks for it on the shelf", () => {
  const stock = [
    { ...rest("a", 600), label: "K7M2P" },
    { ...roll, label: "R1" },
  ];
  expect(stockName(stock, "a", write, "en")).toBe("K7M2P: remnant, 600 mm × 400 mm");
  expect(stockName(stock, "roll", write, "de")).toBe("R1: Rolle, 1400 mm breit");
});

test("a panel that the shop cuts to size is no remnant, and is counted among its like", () => {
  const stock = [rest("own", 600), { ...rest("q", 460), toBuy: true } as MaterialStock, roll];
  expect(stockName(stock, "own", write, "en")).toBe("remnant, 600 mm × 400 mm");
  expect(stockName(stock, "q", write, "en")).toBe("cut to size, 460 mm × 400 mm");
  expect(stockName(stock, "q", write, "de")).toBe("Zuschnitt, 460 mm × 400 mm");
});
