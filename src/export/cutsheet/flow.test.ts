import { expect, test } from "vitest";
import { drawText } from "../../core/drawing/list/items.ts";
import { textWidth } from "../../core/drawing/list/textWidth.ts";
import { type Block, flowPages, roomOn } from "./flow.ts";

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

/** Blocks as drawn: text and where its top is, page by page. */
const placed = (blocks: readonly Block[], paper = PAPER) =>
  flowPages(blocks, paper, "foot", (page, of) => `${page}/${of}`).map(({ parts }) =>
    parts[0]!.items.flatMap((item) => (item.kind === "text" ? [`${item.text} ${item.x} ${item.y}`] : [])),
  );

test("blocks follow each other from the upper margin, each page has its line, its foot and its number below", () => {
  const pages = flowPages(
    [block("one", 30), block("two", 42), block("three", 1)],
    PAPER,
    "foot",
    (page, of) => `${page}/${of}`,
  );
  expect(placed([block("one", 30), block("two", 42), block("three", 1)])).toEqual([
    ["one 10 90", "two 10 60", "foot 10 10", "1/2 90 10"],
    ["three 10 90", "foot 10 10", "2/2 90 10"],
  ]);
  expect(pages.map(({ name, width, height }) => [name, width, height])).toEqual([
    ["1", 100, 100],
    ["2", 100, 100],
  ]);
  const [line, foot, number] = pages[1]!.parts[0]!.items.slice(-3);
  expect(line).toMatchObject({
    kind: "line",
    role: "sheet",
    contour: { vertices: Float64Array.of(10, 14.5, 0, 90, 14.5, 0) },
  });
  expect(foot).toMatchObject({ size: 2.6, role: "sheet", anchor: "start" });
  expect(number).toMatchObject({ size: 2.6, role: "sheet", anchor: "end" });
  const [long] = flowPages(
    [block("one", 5)],
    PAPER,
    "a foot that is longer than its room ".repeat(9),
    () => "1",
  ).map(({ parts }) => parts[0]!.items.at(-2)!);
  // 25 mm are kept for the number.
  expect(long!.kind === "text" && long.text.endsWith("…")).toBe(true);
  expect(long!.kind === "text" && textWidth(long.text, 2.6)).toBeLessThanOrEqual(55);
  expect(long!.kind === "text" && textWidth(long.text, 2.6)).toBeGreaterThan(52);
});

test("a block that fills the rest of a page exactly stays on it; one higher than a page has a page to itself", () => {
  expect(placed([block("one", 30), block("two", 42)])).toHaveLength(1);
  expect(placed([block("one", 30), block("two", 42.01)])).toHaveLength(2);
  expect(placed([block("one", 30), block("high", 500), block("three", 1)]).map(([first]) => first)).toEqual([
    "one 10 90",
    "high 10 90",
    "three 10 90",
  ]);
  expect(placed([])).toEqual([]);
  // A head and a block that never go on one page together are no reason for an empty one.
  expect(placed([block("head", 10, true), block("high", 500)])).toHaveLength(2);
});

test("two heads one under the other keep their lines as well", () => {
  const heads = [block("head", 10, true), block("columns", 5, true), block("one", 5), block("two", 5)];
  expect(pagesOf([block("body", 48), ...heads])).toEqual([["body"], ["head", "columns", "one", "two"]]);
  expect(pagesOf([block("body", 47), ...heads])).toEqual([["body", "head", "columns", "one", "two"]]);
});

test("pictures of a block come after all words of its page", () => {
  const part = { items: [], x: 1, y: 2, scaleX: 1, scaleY: 1, clip: null };
  const picture: Block = { height: 10, keepWithNext: false, draw: () => ({ items: [], parts: [part] }) };
  const [page] = flowPages([picture, block("one", 5)], PAPER, "", () => "");
  expect(page!.parts).toHaveLength(2);
  expect(page!.parts[1]).toEqual(part);
});

test("the room of a cut sheet is what its margins of 15 mm leave", () => {
  expect(roomOn({ width: 210 })).toBe(180);
});
