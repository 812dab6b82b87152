import { expect, test } from "vitest";
import { linesOf, runTogether, wordsOf } from "../../../../tests/tools/writtenWords.ts";
import { blockHeight, type GrainArrow, labelBlock, sizeOf } from "./labelBlock.ts";

const NONE = { minX: 0, minY: 0, maxX: 0, maxY: 0 };
const WORDS = ["Shoulder strap · 1 of 2", "560 mm × 98 mm"];
const block = (grain: GrainArrow, turned = false, room = 200, text: readonly string[] = WORDS) =>
  labelBlock(text, { x: 100, y: 50 }, 5, turned, grain, "strap#0", room);

test("the block's words and arrow fill the height it is said to have, the name large and bold above the size", () => {
  for (const grain of ["both", "one-way", "none"] as const)
    for (const turned of [false, true])
      for (const text of [WORDS, [WORDS[0]!], [...WORDS, "third"]]) {
        const items = block(grain, turned, 200, text);
        const words = wordsOf({ box: NONE, items });
        expect(words.map((word) => [word.text, word.bold, word.size])).toEqual(
          text.map((line, i) => [line, i === 0, i === 0 ? 5 : 4]),
        );
        expect(runTogether(words)).toEqual([]);
        const height = blockHeight(5, text.length) + (grain === "none" ? 0 : 5);
        const across = words.flatMap(({ minX, minY, maxX, maxY }) => (turned ? [minX, maxX] : [minY, maxY]));
        const middle = turned ? 100 : 50;
        expect(Math.min(...across)).toBeGreaterThan(middle - height / 2);
        expect(Math.max(...across)).toBeLessThan(middle + height / 2);
        // Less than half a line is left at either end, the arrow's own line counted in.
        const below = grain === "none" ? 0 : 5;
        const [first, last] = turned
          ? [Math.min(...across) - (middle - height / 2), middle + height / 2 - Math.max(...across)]
          : [middle + height / 2 - Math.max(...across), Math.min(...across) - (middle - height / 2)];
        expect(first).toBeLessThan(2);
        expect(last - below).toBeLessThan(2.5);
        expect(last).toBeGreaterThan(below);
        for (const word of words) {
          const along = turned ? (word.minY + word.maxY) / 2 - 50 : (word.minX + word.maxX) / 2 - 100;
          expect(Math.abs(along)).toBeLessThan(0.5);
        }
        for (const item of items) expect(item.owner).toBe("strap#0");
        for (const item of items) if (item.kind === "text") expect(item.turnDeg).toBe(turned ? 90 : 0);
      }
});

// By hand: one line of 5 mm in a block of 6.5 has its baseline 4.75 below its top.
test("the block is centred about its place", () => {
  expect(wordsOf({ box: NONE, items: block("none", false, 200, ["A"]) })[0]!.y).toBeCloseTo(48.5, 9);
  expect(wordsOf({ box: NONE, items: block("both", false, 200, ["A"]) })[0]!.y).toBeCloseTo(51, 9);
});

test("a second line is four fifths of the first, and a block as high as its lines", () => {
  expect([sizeOf(5, 0), sizeOf(5, 1), sizeOf(5, 2)]).toEqual([5, 4, 4]);
  expect(blockHeight(5, 1)).toBe(6.5);
  expect(blockHeight(5, 2)).toBeCloseTo(11.7, 9);
  expect(blockHeight(5, 3)).toBeCloseTo(16.9, 9);
});

const numbers = (line: string): number[] => line.split(/,? /u).map(Number);

test("the grain arrow lies level below the words, six letters long or 40 mm, less where the piece is narrower", () => {
  for (const [size, room, long] of [
    [5, 200, 40],
    [8, 200, 48],
    [5, 30, 25],
  ] as const) {
    const items = labelBlock(WORDS, { x: 100, y: 50 }, size, false, "both", "k", room);
    const [shaft, right, left, ...more] = linesOf(items, "grain").map(numbers);
    expect(more).toEqual([]);
    const [x0, y0, x1, y1] = shaft!;
    expect([x0, x1]).toEqual([100 - long / 2, 100 + long / 2]);
    expect(y0).toBe(y1);
    const lowest = Math.min(...wordsOf({ box: NONE, items }).map(({ minY }) => minY));
    expect(y0!).toBeLessThan(lowest);
    expect(y0!).toBeGreaterThan(lowest - size);
    // Heads: their tips are the shaft's ends, their barbs go back along it, on both sides.
    for (const [head, end, back] of [
      [right!, x1!, -1],
      [left!, x0!, 1],
    ] as const) {
      const [ax, ay, tx, ty, bx, by] = head;
      expect([tx, ty]).toEqual([end, y0]);
      expect((ax! - end) * back).toBeCloseTo(1.6 * 0.35 * size, 2);
      expect(ax).toBe(bx);
      expect(ay! + by!).toBeCloseTo(2 * y0!, 2);
      expect(ay! - by!).toBeCloseTo(0.35 * size, 2);
    }
  }
});

test("one-way cloth has one head, at the far end; a short arrow has smaller ones; cloth without grain has no arrow", () => {
  const [shaft, head, ...more] = linesOf(block("one-way"), "grain").map(numbers);
  expect(more).toEqual([]);
  expect(head!.slice(2, 4)).toEqual(shaft!.slice(2, 4));
  expect(linesOf(block("none"), "grain")).toEqual([]);
  const short = linesOf(block("both", false, 9), "grain").map(numbers);
  expect(short[0]![2]! - short[0]![0]!).toBeCloseTo(4, 9);
  // A quarter of the length at most.
  expect(short[1]![1]! - short[1]![5]!).toBeCloseTo(1, 2);
});

test("beside words that read upward the arrow still lies along the cloth, below their beginning", () => {
  const items = block("both", true);
  const [shaft] = linesOf(items, "grain").map(numbers);
  const height = blockHeight(5, 2) + 5;
  const words = wordsOf({ box: NONE, items });
  const beginning = Math.min(...words.map(({ minY }) => minY));
  expect(shaft![1]).toBe(shaft![3]);
  expect(shaft![1]!).toBeLessThan(beginning - 3);
  expect(shaft![1]!).toBeGreaterThan(beginning - 8);
  expect([shaft![0], shaft![2]]).toEqual([
    expect.closeTo(100 - height / 2, 3),
    expect.closeTo(100 + height / 2, 3),
  ]);
  const low = labelBlock(["A"], { x: 0, y: 0 }, 1, true, "both", "k", 9);
  const [least] = linesOf(low, "grain").map(numbers);
  expect(least![2]! - least![0]!).toBe(4);
});
