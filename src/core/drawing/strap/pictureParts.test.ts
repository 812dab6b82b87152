import { expect, test } from "vitest";
import { build, type Wish } from "../../../../tests/tools/makersStraps.ts";
import { linesOf, wordsOf } from "../../../../tests/tools/writtenWords.ts";
import { contourBox, flattenContour } from "../../geometry/contourArcs.ts";
import { isInsideRing } from "../../geometry/inside.ts";
import { STRAP_WORDS } from "../../words/words.ts";
import type { Drawing } from "../list/drawing.ts";
import { foldPicture, strapSectionArt } from "./foldPicture.ts";
import { strapPictures } from "./strapPictures.ts";
import { threadingPicture } from "./threadingPicture.ts";

const MARGIN = 6;
const words = STRAP_WORDS.en;
const numbers = (line: string): number[] => line.split(/,? /u).map(Number);
const hardware = (...kinds: ("ring" | "clasp" | "slider")[]): Wish["hardware"] =>
  kinds.map((kind) => ({ kind, innerWidth: 39, ...(kind === "slider" ? { opening: 30 } : { length: 20 }) }));
const onePart = build("fourfold", "canvas", { adjustment: "one-piece", hardware: hardware("ring", "slider") });
const twoPart = build("three-raw", "vinyl", { adjustment: "two-part", hardware: hardware("clasp", "slider") });
const cord = build("corded", "4 oz leather", { width: null, core: { cordDiameter: 10 } });

/** The section as it stands in a picture: its corner on the page and how many times it is magnified. */
function placed(drawing: Drawing, art: ReturnType<typeof strapSectionArt>) {
  const boxes = drawing.items.flatMap((item) => (item.kind === "area" ? [contourBox(item.contours[0]!)] : []));
  // The first area drawn is the section's own first.
  const own = contourBox(art.areas[0]!.contour);
  const scale = (boxes[0]!.maxX - boxes[0]!.minX) / (own.maxX - own.minX);
  return { scale, x: boxes[0]!.minX - own.minX * scale, y: boxes[0]!.minY - own.minY * scale };
}

test("in a section every stitch is where its row is, 2 mm beyond the layers that it holds", () => {
  for (const strap of [onePart, twoPart, cord]) {
    const art = strapSectionArt(strap);
    const drawing = foldPicture(strap, "Strap", words, 180);
    const { scale, x, y } = placed(drawing, art);
    expect([x, (Math.round(scale * 1e6) / 1e6) % 1]).toEqual([expect.closeTo(MARGIN, 6), 0]);
    const upright = linesOf(drawing.items, "stitch")
      .map(numbers)
      .filter(([x0, , x1]) => x0 === x1);
    expect(upright).toEqual(
      art.stitches.map(([at, low, high]) =>
        [x + at * scale, y + low * scale - 2, x + at * scale, y + high * scale + 2].map((mm) =>
          expect.closeTo(mm, 2),
        ),
      ),
    );
  }
});

// 6 mm over the strap, lines of small words 4 mm apart, then 5 mm to the title and between its own lines.
test("over a section stand its scale and what shows of it, over them the title", () => {
  for (const [strap, room] of [
    [onePart, 180],
    [cord, 180],
    [twoPart, 180],
    [onePart, 95],
  ] as const) {
    const art = strapSectionArt(strap);
    const drawing = foldPicture(
      strap,
      "A strap with a long name, longer than the paper is wide, in two lines or more",
      words,
      room,
    );
    const { scale, y } = placed(drawing, art);
    const top = y + art.height * scale;
    const said = wordsOf(drawing).filter(({ x, y: at }) => x === MARGIN && at > top);
    const about = said.filter(({ bold }) => !bold).sort((a, b) => a.y - b.y);
    const title = said.filter(({ bold }) => bold).sort((a, b) => a.y - b.y);
    const first = top + 6 + (art.setback === null ? 0 : 6);
    expect(about.map(({ y: at }) => at)).toEqual(about.map((_, i) => expect.closeTo(first + 4 * i, 6)));
    const over = about.at(-1)!.y + 5;
    expect(title.map(({ y: at }) => at)).toEqual(title.map((_, i) => expect.closeTo(over + 5 * i, 6)));
    expect(drawing.box.maxY).toBeCloseTo(title.at(-1)!.y + 10, 6);
  }
  const said = (setback: number) =>
    wordsOf(foldPicture({ ...onePart, setback }, "Strap", words, 180))
      .map(({ text }) => text)
      .join(" ");
  // However little an edge is held back, it is told; where it is not, it is not.
  expect(said(0.6)).toContain("0.6 mm");
  expect(said(0)).not.toMatch(/, 0 mm|raw edges? (held|narrower)/u);
  expect(said(0).length).toBeLessThan(said(0.6).length);
});

test("a strip with a single line along it has its picture, one with none has not", () => {
  const stems = (count: number) => {
    const pieces = onePart.pieces.map((piece) => ({ ...piece, lines: piece.lines.slice(0, count) }));
    return strapPictures({ ...onePart, pieces }, words).map(({ stem }) => stem);
  };
  expect(stems(1)).toContain("strip-outer");
  expect(stems(0)).toEqual(["section", "threading"]);
});

test("where nothing is said of the paper it is A4, 180 mm between its margins", () => {
  expect(strapPictures(twoPart)).toEqual(strapPictures(twoPart, words, 180));
  expect(strapPictures(twoPart)).not.toEqual(strapPictures(twoPart, words, 181));
});

const threadings = () =>
  [onePart, twoPart].flatMap((strap) =>
    [100, 180, 240].map((room) => ({ strap, room, drawing: threadingPicture(strap, words, room)! })),
  );
/** Heights of the lines of rest, the first step's first: those of the slider are level lines 16 mm long. */
const rests = (drawing: Drawing) =>
  linesOf(drawing.items, "mark")
    .map(numbers)
    .filter((line) => line.length === 4 && line[1] === line[3] && Math.abs(line[2]! - line[0]! - 16) < 1e-6)
    .sort((a, b) => b[1]! - a[1]!);

// A step is 34 mm high over its words: its hardware lies 16.5 mm over the first line of them, 16 below the step before.
test("steps of threading are one under the other, as far from their own words as from those above", () => {
  for (const { drawing, room } of threadings()) {
    expect(drawing.box.maxX).toBe(Math.max(room, 176));
    const found = rests(drawing);
    expect(found).toHaveLength(4);
    const said = wordsOf(drawing).filter(({ x }) => x === MARGIN);
    for (const [i, [x0, y]] of found.entries()) {
      expect(x0).toBe(58);
      const below = Math.max(...said.filter((word) => word.y < y!).map((word) => word.y));
      expect(y! - below).toBeCloseTo(16.5, 2);
      const above = Math.min(...said.filter((word) => word.y > y!).map((word) => word.y));
      expect(above - y!, `step ${i + 1}`).toBeCloseTo(16, 2);
    }
    const lines = said
      .filter(({ bold }) => !bold)
      .map(({ y }) => y)
      .sort((a, b) => a - b);
    expect(lines[0]).toBe(MARGIN);
    // Lines of one step and of what is said below all are 4.5 mm apart.
    for (const [i, y] of lines.entries())
      if (i > 0 && y - lines[i - 1]! < 16) expect(y - lines[i - 1]!).toBeCloseTo(4.5, 6);
    const [title] = said.filter(({ bold }) => bold);
    expect(drawing.box.maxY - title!.y).toBeCloseTo(9, 6);
  }
});

test("stitches hold what they are to hold: the slider's loop, the turned ends of the ring's and the strap's own hardware", () => {
  for (const { drawing, strap } of threadings()) {
    const bands = drawing.items.flatMap((item) =>
      item.kind === "area" && item.tone === "face" ? [flattenContour(item.contours[0]!)] : [],
    );
    const found = linesOf(drawing.items, "stitch").map(numbers);
    for (const [x, low, , high] of found) {
      // How many layers of strap a stitch goes through from end to end.
      const steps = Array.from({ length: 201 }, (_, k) => low! + ((high! - low!) * k) / 200);
      const inside = steps.map((y) => bands.some((ring) => isInsideRing(ring, x! + 1e-6, y)));
      const layers = inside.filter((is, k) => is && !inside[k - 1]).length;
      expect(layers, `${strap.wish.adjustment} at ${x}`).toBe(2);
      expect([inside[0], inside.at(-1)]).toEqual([false, false]);
    }
    const middles = found.filter((_, i) => i % 2 === 0).map(([x]) => x! + 1);
    // Slider: 9 mm beyond its outer bar. Own ring: the middle of an end of 14 mm that begins 6 mm beside it.
    expect(middles.filter((x) => x === 83)).toHaveLength(4);
    expect(middles.filter((x) => x === 25)).toHaveLength(1);
    // The short half's ends: 10 mm inside its ring and its own hardware.
    const short = strap.wish.adjustment === "two-part" ? 3 : 0;
    expect(middles.filter((x) => x > 120)).toEqual(Array.from({ length: short }, () => [136.5, 154]).flat());
  }
});

test("each step has all of the one before and goes on from it; a free end hangs clear of all hardware", () => {
  for (const { drawing } of threadings()) {
    const bands = drawing.items.flatMap((item) =>
      item.kind === "area" && item.tone === "face" ? [contourBox(item.contours[0]!)] : [],
    );
    const heights = rests(drawing).map(([, y]) => y!);
    const main = heights.map(
      (y) => bands.filter(({ minY, maxY }) => minY < y && maxY > y).sort((a, b) => a.minX - b.minX)[0]!,
    );
    const from = main.map(({ minX }) => minX);
    // Round the slider's middle bar at 66, then on through the ring at 122, back through the slider, and to its own at 12.
    expect(from[0]).toBeGreaterThan(66 - 3.5);
    expect(from[0]).toBeLessThan(66 - 1.2);
    expect(from[1]).toBeCloseTo(from[0]!, 6);
    expect(from[2]).toBeCloseTo(42, 6);
    expect(from[3]).toBeGreaterThan(12 - 3.5);
    expect(from[3]).toBeLessThan(12 - 1.2);
    const to = main.map(({ maxX }) => maxX);
    expect(to[0]).toBeGreaterThan(66 + 8 + 13 + 1);
    expect(to[0]).toBeLessThan(117.5 - 5);
    for (const x of to.slice(1)) {
      expect(x).toBeGreaterThan(117.5 + 1.2);
      expect(x).toBeLessThan(117.5 + 3.5);
    }
  }
});

test("under the slider's middle bar the strap comes back below its own loop, 0.4 mm of paper between them", () => {
  for (const { drawing } of threadings()) {
    const bands = drawing.items.flatMap((item) =>
      item.kind === "area" && item.tone === "face" ? [flattenContour(item.contours[0]!)] : [],
    );
    for (const [i, [, y]] of rests(drawing).entries()) {
      // From the bar's lower edge, 1.2 mm under its middle, down.
      const steps = Array.from({ length: 501 }, (_, k) => y! - 1.2 - k * 0.01);
      const inside = steps.map((at) => bands.some((ring) => isInsideRing(ring, 66 + 1e-6, at)));
      const first = inside.indexOf(true);
      const gap = inside.indexOf(false, first);
      const second = inside.indexOf(true, gap);
      expect((gap - first) * 0.01).toBeCloseTo(1.3, 1);
      expect(second >= 0).toBe(i >= 2);
      if (i >= 2) expect((second - gap) * 0.01).toBeCloseTo(0.4, 1);
    }
  }
});

test("the short half is named under its own middle", () => {
  for (const { drawing, strap } of threadings()) {
    const names = wordsOf(drawing).filter(({ text }) => text === words.parts.shortPart);
    expect(names).toHaveLength(strap.wish.adjustment === "two-part" ? 3 : 0);
    // Between the ring's outer bar, 126.5, and its own hardware at 164, with the run round it.
    for (const { minX, maxX } of names) expect(Math.abs((minX + maxX) / 2 - 147)).toBeLessThan(0.8);
  }
});
