import { expect, test } from "vitest";
import { drawText } from "../../core/drawing/list/items.ts";
import { type Block, flowPages } from "./flow.ts";

const PAPER = { width: 100, height: 100, margin: 10 };
const block = (text: string, height: number, keepWithNext = false): Block => ({
  height,
  keepWithNext,
  draw: (left, top) => ({ items: [drawText(text, left, top, 3)] }),
});
const pagesOf = (blocks: readonly Block[]): string[][] =>
  flowPages(blocks, PAPER, "foot", (page, of) => `${page}/${of}`).map(({ parts }) =>
    parts.flatMap(({ items }) => items.flatMap((item) => (item.kind === "text" ? [item.text] : []))).slice(0, -2),
  );

// A page has 72 mm: 100 less margins of 10 and a foot of 8.
test("a head goes overleaf with its lines when fewer than two of them would stay with it", () => {
  const lines = [block("one", 5), block("two", 5), block("three", 5)];
  expect(pagesOf([block("body", 50), block("head", 10, true), ...lines])).toEqual([
    ["body", "head", "one", "two"],
    ["three"],
  ]);
  expect(pagesOf([block("body", 53), block("head", 10, true), ...lines])).toEqual([
    ["body"],
    ["head", "one", "two", "three"],
  ]);
});

test("a head with one line keeps that line and not the next head", () => {
  const blocks = [
    block("body", 55),
    block("head", 10, true),
    block("one", 5),
    block("next", 10, true),
    block("b", 5),
  ];
  expect(pagesOf(blocks)).toEqual([
    ["body", "head", "one"],
    ["next", "b"],
  ]);
});
