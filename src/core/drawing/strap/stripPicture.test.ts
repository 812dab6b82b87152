import { expect, test } from "vitest";
import { samplePiece } from "../../../../tests/tools/samplePlan.ts";
import { linesOf, wordsOf } from "../../../../tests/tools/writtenWords.ts";
import { rectangleContour, segmentContour } from "../../geometry/contourShapes.ts";
import { STRAP_WORDS } from "../../words/words.ts";
import { textWidth } from "../list/textWidth.ts";
import { stripPicture } from "./stripPicture.ts";

const fold = (y: number) => ({ role: "fold" as const, contour: segmentContour(0, y, 300, y) });
const drawn = (across: number, heights: readonly number[], ends: readonly number[] = [], room = 180) => {
  const piece = samplePiece("Strap", rectangleContour(0, 0, 300, across), {
    kind: "strip",
    lines: heights.map(fold),
  });
  const items = [{ code: "finished", mm: 250 }, ...ends.map((mm) => ({ code: "end-seam", mm }))];
  const strap = { inches: null, lengths: { items } } as never;
  return stripPicture(piece, strap, STRAP_WORDS.en, room);
};
const numbers = (line: string): number[] => line.split(/,? /u).map(Number);
const leaders = (drawing: ReturnType<typeof drawn>) =>
  linesOf(drawing.items, "label")
    .map(numbers)
    .filter((line) => line.length === 6 && line[1] !== undefined && line[5] === line[3]);

// By hand: the strip's lower edge is 6 mm of margin and 12 for the dimension above the picture's; letters are 3 mm high,
// 4.05 mm from line to line.
test("a strip of 28 mm is drawn at its true width, its lines where they lie, labels pushed apart by as much up as down", () => {
  const drawing = drawn(28, [10, 20, 21]);
  const [outline] = linesOf(drawing.items, "cut").map(numbers);
  expect([
    Math.min(...outline!.filter((_, i) => i % 2 === 1)),
    Math.max(...outline!.filter((_, i) => i % 2 === 1)),
  ]).toEqual([18, 46]);
  expect(linesOf(drawing.items, "fold").map((line) => numbers(line)[1])).toEqual([28, 38, 39]);
  // The third would lie 3.05 mm over its line: all go down by half of that.
  expect(leaders(drawing).map((line) => line[5])).toEqual(
    [26.475, 36.475, 40.525].map((mm) => expect.closeTo(mm, 2)),
  );
  expect(leaders(drawn(28, [5, 14, 23])).map((line) => line[5])).toEqual([23, 32, 41]);
  expect(leaders(drawn(28, [10, 11, 12])).map((line) => line[5])).toEqual(
    [28, 32.05, 36.1].map((mm) => expect.closeTo(mm, 2)),
  );
  // In whatever order a piece has its lines, labels go from the lowest up.
  expect(leaders(drawn(28, [21, 10, 20]))).toEqual(leaders(drawing));
  // They begin half a millimetre beside the teeth of the break, which are 2 mm deep and as high as each other.
  const right = Math.max(...outline!.filter((_, i) => i % 2 === 0)) - 2;
  for (const [x0] of leaders(drawing)) expect(x0).toBeCloseTo(right + 2.5, 6);
  const teeth = Array.from({ length: outline!.length / 2 }, (_, i) => [outline![2 * i]!, outline![2 * i + 1]!]);
  expect(teeth.filter(([x]) => x! > right - 3).map(([x, y]) => [x! - right, y])).toEqual(
    [0, 2, -2, 2, -2, 2, 0].map((x, i) => [expect.closeTo(x, 6), expect.closeTo(18 + (28 * i) / 6, 2)]),
  );
  // What is said of the strip stands 4.5 mm over it and its labels, the name 4.5 over that.
  const over = (heights: readonly number[]) =>
    wordsOf(drawn(28, heights))
      .filter(({ x, y }) => x === 6 && y > 46)
      .map(({ y }) => y);
  expect(over([10, 20, 21])).toEqual([50.5, 55]);
  expect(over([26, 27, 28])).toEqual([44 + 8.1 + 7.5, 44 + 8.1 + 12].map((mm) => expect.closeTo(mm, 6)));
  const labels = wordsOf(drawing).filter(({ text }) => text.startsWith("fold"));
  for (const [i, { minY, maxY }] of labels.entries())
    expect(Math.abs((minY + maxY) / 2 - leaders(drawing)[i]![5]!)).toBeLessThan(0.3);
});

test("a long name is wrapped to the paper, or to the picture where that is wider, and lies in it with its margin", () => {
  for (const room of [60, 120, 180]) {
    const name = "Shoulder strap of the large satchel ".repeat(6).trim();
    const piece = samplePiece(name, rectangleContour(0, 0, 300, 28), { kind: "strip", lines: [fold(10)] });
    const strap = { inches: null, lengths: { items: [{ code: "finished", mm: 250 }] } } as never;
    const drawing = stripPicture(piece, strap, STRAP_WORDS.en, room);
    const words = wordsOf(drawing);
    const labels = words.filter(({ text }) => /^(fold|cut)/u.test(text));
    const width = Math.max(room, ...labels.map(({ maxX }) => maxX + 6));
    const title = words.filter(({ bold }) => bold).sort((a, b) => b.y - a.y);
    expect(title.map(({ text }) => text).join(" ")).toBe(name);
    expect(title.length).toBeGreaterThan(2);
    for (const { text, x } of title) {
      const reach = x + textWidth(text, 4, true);
      expect(reach).toBeLessThanOrEqual(width - 6 + 0.5);
      expect(drawing.box.maxX).toBeGreaterThanOrEqual(reach + 6 - 1e-9);
    }
    // The first word of a line would not have gone onto the one above it.
    for (const [i, { text }] of title.entries()) {
      const next = title[i + 1]?.text.split(" ")[0];
      if (next !== undefined) expect(6 + textWidth(`${text} ${next}`, 4, true)).toBeGreaterThan(width - 6 - 0.5);
    }
  }
});

test("a wider strip is drawn smaller and says by how much", () => {
  const drawing = drawn(112, [28]);
  expect(linesOf(drawing.items, "fold").map((line) => numbers(line)[1])).toEqual([25]);
  expect(
    wordsOf(drawing)
      .map(({ text }) => text)
      .join(" "),
  ).toContain("width drawn 25 % of true");
  expect(
    wordsOf(drawn(28, [10]))
      .map(({ text }) => text)
      .join(" "),
  ).toContain("true width");
});

test("the width has its ticks left of the strip with its words beside them, the length its dimension below", () => {
  const drawing = drawn(28, [10]);
  const [outline] = linesOf(drawing.items, "cut").map(numbers);
  const left = Math.min(...outline!.filter((_, i) => i % 2 === 0));
  const lines = linesOf(drawing.items, "label").map(numbers);
  expect(lines).toContainEqual([left - 3, 18, left - 3, 46].map((mm) => expect.closeTo(mm, 2)));
  for (const y of [18, 46])
    expect(lines).toContainEqual([left - 4, y, left - 1, y].map((mm) => expect.closeTo(mm, 2)));
  const cut = wordsOf(drawing).find(({ text }) => text === "cut width 28 mm")!;
  expect([cut.x, cut.size]).toEqual([6, 3]);
  expect((cut.minY + cut.maxY) / 2).toBeCloseTo(32, 0);
  expect(left - cut.maxX).toBeGreaterThan(6);
  expect(left - cut.maxX).toBeLessThan(8);
  const long = wordsOf(drawing).find(({ text }) => text === "cut length 300 mm")!;
  expect(long.y).toBe(11);
  expect(lines.some(([, y0, , y1]) => y0 === 10 && y1 === 10)).toBe(true);
});

test("an end is a line across, as far in as it takes, but on what is shown; both ends are told once where they are alike", () => {
  const across = (mm: number) => {
    const drawing = drawn(28, [10], [mm, mm]);
    const [outline] = linesOf(drawing.items, "cut").map(numbers);
    const left = Math.min(...outline!.filter((_, i) => i % 2 === 0));
    const line = linesOf(drawing.items, "fold")
      .map(numbers)
      .find(([x0, , x1]) => x0 === x1)!;
    return {
      in: line[0]! - left,
      from: line[1],
      to: line[3],
      said: wordsOf(drawing)
        .map(({ text }) => text)
        .join(" "),
    };
  };
  expect(across(20)).toMatchObject({ in: expect.closeTo(20, 2), from: 18, to: 46 });
  const far = across(500);
  expect(far.in).toBeGreaterThan(20);
  expect(far.in).toBeLessThan(70);
  expect(across(20).said.match(/line across/gu)).toHaveLength(1);
  expect(across(20).said).not.toContain("other end");
  expect(
    wordsOf(drawn(28, [10], [20, 30]))
      .map(({ text }) => text)
      .join(" "),
  ).toContain("other end 30 mm");
  expect(
    wordsOf(drawn(28, [10]))
      .map(({ text }) => text)
      .join(" "),
  ).not.toContain("line across");
});

test("on narrow paper letters shrink before the strip does, down to 1.8 mm", () => {
  const sizes = (room: number) =>
    wordsOf(drawn(28, [10], [], room))
      .filter(({ text }) => text.startsWith("cut"))
      .map(({ size }) => size);
  expect(sizes(180)).toEqual([3, 3].map((size) => expect.closeTo(size, 6)));
  const [some] = sizes(95);
  expect(some!).toBeLessThan(3);
  expect(some!).toBeGreaterThan(1.8);
  // What the strip, its margins and its lines leave is the words' alone.
  const words = wordsOf(drawn(28, [10], [], 95));
  const [cut, label] = [
    words.find(({ text }) => text.startsWith("cut width"))!,
    words.find(({ text }) => text.startsWith("fold"))!,
  ];
  expect(cut.maxX - cut.minX + label.maxX - label.minX).toBeGreaterThan(95 - 12 - 7 - 11 - 30 - 1.5);
  expect(cut.maxX - cut.minX + label.maxX - label.minX).toBeLessThanOrEqual(95 - 12 - 7 - 11 - 30);
  expect(sizes(40)[0]).toBeCloseTo(1.8, 9);
});
