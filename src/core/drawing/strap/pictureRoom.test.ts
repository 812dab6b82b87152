import { expect, test } from "vitest";
import { build, type Wish } from "../../../../tests/tools/makersStraps.ts";
import { linesOf, runTogether, standOut, wordsOf } from "../../../../tests/tools/writtenWords.ts";
import { contourBox } from "../../geometry/contourArcs.ts";
import type { ConstructionId } from "../../straps/wish/strapWish.ts";
import { STRAP_WORDS } from "../../words/words.ts";
import type { Drawing } from "../list/drawing.ts";
import { itemBox } from "../list/itemBox.ts";
import { textWidth } from "../list/textWidth.ts";
import { foldPicture, strapSectionArt } from "./foldPicture.ts";
import { strapPictures } from "./strapPictures.ts";

const SLIDER = (...kinds: ("ring" | "clasp" | "slider")[]): Wish["hardware"] =>
  kinds.map((kind) => ({ kind, innerWidth: 39, ...(kind === "slider" ? { opening: 30 } : { length: 20 }) }));
const STRAPS: readonly (readonly [ConstructionId, string, Wish])[] = [
  ["fourfold", "canvas", { adjustment: "one-piece", hardware: SLIDER("ring", "slider") }],
  ["three-raw", "vinyl", { width: 20, adjustment: "two-part", hardware: SLIDER("clasp", "slider") }],
  ["three-hemmed", "canvas", { width: 30, materials: { outer: "canvas", padding: "foam" } }],
  ["two-layer", "vinyl", { width: 12, materials: { outer: "vinyl", facing: "canvas" } }],
  ["corded", "4 oz leather", { width: null, core: { cordDiameter: 10 } }],
];
const straps = STRAPS.map(([construction, outer, more]) => build(construction, outer, more));
const MARGIN = 6;
const numbers = (line: string): number[] => line.split(/,? /u).map(Number);

/** All pictures of all straps on papers down to one narrower than any picture can be, in one language each. */
const shown = (rooms: readonly number[]) =>
  rooms.flatMap((room, r) =>
    straps.flatMap((strap, i) => {
      const language = (["en", "de", "fr"] as const)[(i + r) % 3]!;
      return strapPictures(strap, STRAP_WORDS[language], room).map((picture) => ({
        ...picture,
        ...{
          room,
          strap,
          words: STRAP_WORDS[language],
          where: `${strap.wish.construction} ${picture.stem} ${language} ${room}`,
        },
      }));
    }),
  );

/** Lines of words, the upper first, that stand at the left margin under each other: a text that was wrapped. */
function wrapped(drawing: Drawing): { text: string; size: number; bold: boolean; y: number }[][] {
  const blocks: { text: string; size: number; bold: boolean; y: number }[][] = [];
  const lines = wordsOf(drawing).filter(({ x }) => Math.abs(x - MARGIN) < 1e-6);
  for (const line of lines.toSorted((a, b) => b.y - a.y)) {
    const last = blocks.at(-1)?.at(-1);
    const isNext =
      last !== undefined && last.size === line.size && last.bold === line.bold && last.y - line.y < 5 + 1e-6;
    if (isNext) blocks.at(-1)!.push(line);
    else blocks.push([line]);
  }
  return blocks;
}

/** What a picture needs without the words that can be wrapped: its drawn things and what stands beside them. */
function needed(drawing: Drawing): number {
  const beside = wordsOf(drawing).filter(({ x, size }) => x > MARGIN + 1 && size !== 2.8);
  const drawn = drawing.items.flatMap((item) => (item.kind === "text" ? [] : [itemBox(item).maxX]));
  return Math.max(...beside.map(({ x, text, size }) => x + textWidth(text, size)), ...drawn) + MARGIN;
}

test("on any paper all that is drawn and said stays 6 mm off a picture's right edge, and no words meet", () => {
  for (const { drawing, where } of shown([60, 95, 118, 180, 260])) {
    const right = drawing.box.maxX - MARGIN;
    const out = drawing.items.filter((item) => item.kind !== "text" && itemBox(item).maxX > right + 1e-6);
    expect(out, where).toEqual([]);
    // Widths of a few signs (≈, ß) and of bold letters are reckoned by a share.
    for (const bold of [false, true]) {
      const most = { minX: 5.5, minY: 5, maxX: right + (bold ? 2 : 0.7), maxY: drawing.box.maxY - 5 };
      const words = wordsOf(drawing).filter((word) => word.bold === bold);
      expect(standOut(words, most), where).toEqual([]);
    }
    expect(runTogether(wordsOf(drawing)), where).toEqual([]);
  }
});

test("a picture is wider than its paper only where what is drawn is; then its words use that width, and no line ends early", () => {
  let ends = 0;
  for (const { drawing, room, stem, where, words } of shown([60, 95, 118])) {
    const [ofEnds] = words.picture.endMarks([]).split(" ");
    const width = Math.max(room, stem === "threading" ? 176 : needed(drawing));
    expect(drawing.box.maxX, where).toBeLessThan(width + 0.6);
    for (const block of wrapped(drawing))
      for (const [i, { text, size, bold }] of block.entries()) {
        expect(textWidth(text, size, bold), where).toBeLessThanOrEqual(width - 2 * MARGIN + 0.6);
        const [next] = block[i + 1]?.text.split(" ") ?? [];
        // Sizes stay whole, and a new sentence or step begins a line of its own.
        if (next === undefined || next === ofEnds || /[\d(]/u.test(next) || /[.:]$/u.test(text)) continue;
        expect(textWidth(`${text} ${next}`, size, bold), `${where}: ${text} / ${next}`).toBeGreaterThan(
          width - 2 * MARGIN - 0.6,
        );
        ends++;
      }
  }
  expect(ends).toBeGreaterThan(20);
});

test("a strap without stitches has none explained", () => {
  const { picture } = STRAP_WORDS.en;
  const said = (rows: (typeof straps)[0]["rows"]) =>
    wordsOf(foldPicture({ ...straps[0]!, rows }, "Strap", STRAP_WORDS.en, 180)).map(({ text }) => text);
  expect(said(straps[0]!.rows)).toContain(picture.stitch);
  expect(said([])).not.toContain(picture.stitch);
  expect(said([])).toContain(picture.rawEdge);
});

// From the page up: 6 mm of margin, rows of what colours mean 5 mm each, 5 mm to the dimension, 7 mm to the strap.
test("what colours and lines mean stands in rows under the strap, each begun only when the one below it is full", () => {
  let rows = 0;
  for (const { drawing, stem, strap, where } of shown([60, 95, 180])) {
    if (stem !== "section") continue;
    const art = strapSectionArt(strap);
    const marks = drawing.items.flatMap((item) => {
      if (item.kind === "text") return [];
      const box = item.kind === "area" ? contourBox(item.contours[0]!) : contourBox(item.contour);
      const isSquare = item.kind === "area" && Math.abs(box.maxX - box.minX - 4) < 1e-9;
      const isLine = item.kind === "line" && item.role !== "mark" && item.role !== "label" && box.minY === box.maxY;
      return isSquare || isLine ? [{ ...box, room: isSquare ? 5.5 : box.maxX - box.minX + 1.5 }] : [];
    });
    const legend = wordsOf(drawing)
      .filter(({ size, x }) => size === 2.8 && x > MARGIN + 1)
      .flatMap((word) => {
        const mark = marks.find(({ minX, minY, room }) => {
          const low = word.y - 0.2;
          return Math.abs(minX + room - word.x) < 1e-6 && minY >= low - 1e-6 && minY < low + 2;
        });
        return mark === undefined ? [] : [{ ...word, mark }];
      });
    const count = art.layers.length + (art.rawEdges.length > 0 ? 1 : 0) + (art.stitches.length > 0 ? 1 : 0);
    expect(legend, where).toHaveLength(count);
    const heights = [...new Set(legend.map(({ y }) => Math.round(1e6 * (y - 0.2)) / 1e6))].sort((a, b) => b - a);
    expect(heights).toEqual(heights.map((_, i) => MARGIN + 5 * (heights.length - 1 - i)));
    for (const [i, height] of heights.entries()) {
      const row = legend.filter(({ y }) => Math.abs(y - 0.2 - height) < 1e-6);
      expect(row[0]!.mark.minX).toBeCloseTo(MARGIN, 9);
      for (const [k, { x, text, mark }] of row.entries())
        if (k > 0)
          expect(mark.minX - row[k - 1]!.x - textWidth(row[k - 1]!.text, 2.8), `${x} ${text}`).toBeCloseTo(5, 6);
      const after = legend.find(({ y }) => Math.abs(y - 0.2 - (heights[i + 1] ?? -1)) < 1e-6);
      if (after === undefined) continue;
      const end = row.at(-1)!.x + textWidth(row.at(-1)!.text, 2.8) + 5;
      const takes = after.mark.room + textWidth(after.text, 2.8) + 5;
      expect(end + takes, where).toBeGreaterThan(drawing.box.maxX - MARGIN - 0.01);
      rows++;
    }
    const label = linesOf(drawing.items, "label").map(numbers);
    const level = label.find(
      ([x0, y0, x1, y1]) => y0 === y1 && x0 === MARGIN && x1! - x0! > art.width - 0.1 && y0! < 40,
    )!;
    expect(level[1], where).toBeCloseTo(MARGIN + 5 * heights.length + 5, 6);
    expect(label).toContainEqual([MARGIN, level[1]! + 6, MARGIN, level[1]! - 1].map((mm) => expect.closeTo(mm, 2)));
  }
  expect(rows).toBeGreaterThan(5);
});

// The edge that shows is dimensioned where it lies half a millimetre and more from the side in the picture.
test("how far the visible edge is from the side stands over the strap where it can be seen", () => {
  const drawn = (setback: number) => {
    const strap = { ...straps[1]!, setback };
    const drawing = foldPicture(strap, "Strap", STRAP_WORDS.en, 180);
    const art = strapSectionArt(strap);
    const box = contourBox(drawing.items.flatMap((item) => (item.kind === "area" ? item.contours : []))[0]!);
    const scale = (box.maxX - box.minX) / art.width;
    const top = box.minY + art.height * scale;
    const label = linesOf(drawing.items, "label").map(numbers);
    const shaft = label.find(([x0, y0, , y1]) => y0 === y1 && y0! > top && x0! <= MARGIN)!;
    const title = wordsOf(drawing).find(({ text }) => text === "Strap")!;
    return { scale, top, shaft, title, label, words: wordsOf(drawing) };
  };
  const wide = drawn(3);
  expect(wide.scale).toBeGreaterThan(2);
  expect(wide.shaft).toEqual(
    [MARGIN, wide.top + 4, MARGIN + 3 * wide.scale, wide.top + 4].map((mm) => expect.closeTo(mm, 1)),
  );
  for (const x of [MARGIN, MARGIN + 3 * wide.scale])
    expect(wide.label).toContainEqual([x, wide.top + 1, x, wide.top + 5].map((mm) => expect.closeTo(mm, 1)));
  expect(
    wide.words.filter(({ text, size, y }) => text.startsWith("3 mm") && size === 2.8 && y > wide.top),
  ).toHaveLength(1);
  const least = 0.5 / wide.scale;
  expect(drawn(least * 1.02).shaft).toBeDefined();
  expect(drawn(least * 0.98).shaft).toBeUndefined();
  // Words over the strap make room for it.
  expect(wide.title.y - wide.top - (drawn(least * 0.98).title.y - drawn(0.01).top)).toBeCloseTo(6, 1);
});
