import { expect, test } from "vitest";
import { build, type Wish } from "../../../../tests/tools/makersStraps.ts";
import { unionArea } from "../../../../tests/tools/unionArea.ts";
import { wordsOf } from "../../../../tests/tools/writtenWords.ts";
import { contourBox, flattenContour } from "../../geometry/contourArcs.ts";
import { isInsideRing } from "../../geometry/inside.ts";
import { type Ring, signedArea } from "../../geometry/ring.ts";
import { STRAP_WORDS } from "../../words/words.ts";
import type { Drawing, DrawnArea, DrawnLine } from "../list/drawing.ts";
import { threadingPicture } from "./threadingPicture.ts";

const hardware = (...kinds: ("ring" | "clasp" | "slider")[]): Wish["hardware"] =>
  kinds.map((kind) => ({ kind, innerWidth: 39, ...(kind === "slider" ? { opening: 30 } : { length: 20 }) }));
const straps = [
  build("fourfold", "canvas", { adjustment: "one-piece", hardware: hardware("ring", "slider") }),
  build("three-raw", "vinyl", { adjustment: "two-part", hardware: hardware("clasp", "slider") }),
];
const threadings = () =>
  straps.map((strap, i) => ({ strap, drawing: threadingPicture(strap, STRAP_WORDS[i === 0 ? "en" : "de"], 180)! }));
const areas = ({ items }: Drawing, tone: string): DrawnArea[] =>
  items.filter((item): item is DrawnArea => item.kind === "area" && item.tone === tone);
const lines = ({ items }: Drawing, role: string): DrawnLine[] =>
  items.filter((item): item is DrawnLine => item.kind === "line" && item.role === role);

// Judged by polyclip-ts, a general polygon clipping library.
test("threaded, the strap crosses neither itself nor a bar, lies close to those that it goes round, and is as thick everywhere", () => {
  expect(threadings()).toHaveLength(2);
  for (const { drawing, strap } of threadings()) {
    const bands = areas(drawing, "face").map(({ contours }) => flattenContour(contours[0]!));
    const bars = areas(drawing, "ink").map(({ contours }) => contourBox(contours[0]!));
    const twoPart = strap.wish.adjustment === "two-part";
    // Four steps; a two-part strap's short half is in three of them.
    expect(bands).toHaveLength(twoPart ? 7 : 4);
    // Three bars of the slider a step, the ring's two in three of them, its own hardware in the last, the short half's
    // beside the ring.
    expect(bars).toHaveLength(4 * 3 + 3 * 2 + 1 + (twoPart ? 3 : 0));
    for (const bar of bars)
      expect([bar.maxX - bar.minX, bar.maxY - bar.minY].map((mm) => Math.round(mm * 10))).toEqual([24, 24]);
    for (const ring of bands) {
      const own = Math.abs(signedArea(ring));
      const half = ring.length / 4;
      let long = 0;
      for (let i = 0; i + 1 < half; i++) {
        // Point i of one side is across from the last but i of the other.
        const middle = (k: number) => [
          (ring[2 * k]! + ring[ring.length - 2 - 2 * k]!) / 2,
          (ring[2 * k + 1]! + ring[ring.length - 1 - 2 * k]!) / 2,
        ];
        const [[ax, ay], [bx, by]] = [middle(i), middle(i + 1)] as [[number, number], [number, number]];
        long += Math.hypot(bx - ax, by - ay);
        const across = Math.hypot(
          ring[2 * i]! - ring[ring.length - 2 - 2 * i]!,
          ring[2 * i + 1]! - ring[ring.length - 1 - 2 * i]!,
        );
        expect(across).toBeCloseTo(1.3, 6);
      }
      expect(own / (1.3 * long), "thickness").toBeGreaterThan(0.97);
      expect(own / (1.3 * long), "thickness").toBeLessThan(1.01);
      expect(unionArea(ring) / own, "crosses itself").toBeGreaterThan(0.995);
    }
    let near = 0;
    for (const bar of bars) {
      const [x, y] = [(bar.minX + bar.maxX) / 2, (bar.minY + bar.maxY) / 2];
      const away = Math.min(...bands.map((ring) => distance(ring, x, y)));
      // A bar is 1.2 mm thick from its middle: nothing runs through it.
      expect(away).toBeGreaterThan(1.2);
      if (away < 1.2 + 0.5) near++;
    }
    // It lies on the slider's middle bar first, then on the ring's, on the slider's outer two, and on its own hardware's;
    // a short half on the ring's other bar and its own, three times.
    expect(near).toBe(1 + 2 + 4 + 5 + (twoPart ? 6 : 0));
  }
});

function distance(ring: Ring, x: number, y: number): number {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < ring.length; i += 2) {
    const j = (i + 2) % ring.length;
    const [ax, ay, bx, by] = [ring[i]!, ring[i + 1]!, ring[j]!, ring[j + 1]!];
    const long = (bx - ax) ** 2 + (by - ay) ** 2;
    const t = long === 0 ? 0 : Math.min(1, Math.max(0, ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / long));
    least = Math.min(least, Math.hypot(x - ax - t * (bx - ax), y - ay - t * (by - ay)));
  }
  return least;
}

test("the steps of threading are numbered from the top, each above its words; what a strap is worn at stands below all", () => {
  for (const { drawing, strap } of threadings()) {
    const words = wordsOf(drawing).toSorted((a, b) => b.y - a.y);
    const numbered = words.filter(({ text }) => /^\d\. /u.test(text));
    expect(numbered.map(({ text }) => text[0])).toEqual(["1", "2", "3", "4"]);
    const bands = areas(drawing, "face").map(({ contours }) => contourBox(contours[0]!));
    for (const [i, { y }] of numbered.entries()) {
      const above = bands.filter(({ minY }) => minY > y && minY < (numbered[i - 1]?.y ?? Number.POSITIVE_INFINITY));
      expect(above.length).toBeGreaterThanOrEqual(1);
      for (const { minY, maxY } of above) {
        // Words keep off the picture below and above them.
        expect(minY - y).toBeGreaterThan(4);
        expect(maxY).toBeLessThan(numbered[i - 1]?.minY ?? drawing.box.maxY - 9);
      }
    }
    expect(words.at(-1)!.y).toBe(6);
    // Stitches are pairs 2 mm apart, across the strap that they hold.
    const rings = areas(drawing, "face").map(({ contours }) => flattenContour(contours[0]!));
    const stitches = lines(drawing, "stitch").map(({ contour }) => contour.vertices);
    const twoPart = strap.wish.adjustment === "two-part";
    expect(stitches).toHaveLength(4 * 2 + 2 + (twoPart ? 3 * 4 : 0));
    for (const [i, [x0, y0, , x1, y1]] of stitches.entries()) {
      expect(x0).toBe(x1);
      expect([4, 6]).toContain(Math.round((y1! - y0!) * 1e6) / 1e6);
      if (i % 2 === 1) expect(x0! - stitches[i - 1]![0]!).toBeCloseTo(2, 9);
      const crossed = Array.from({ length: 41 }, (_, k) => y0! + ((y1! - y0!) * k) / 40);
      expect(crossed.some((y) => rings.some((ring) => isInsideRing(ring, x0!, y)))).toBe(true);
    }
    // Names stand over their bars: the slider's 9 mm, the others 8.
    const bars = areas(drawing, "ink")
      .map(({ contours }) => contourBox(contours[0]!))
      .filter(({ minX, maxX }) => maxX - minX > 2);
    for (const { text, y } of words) {
      const above = Object.entries(STRAP_WORDS).flatMap(([, { picture }]) =>
        picture.threading.slider === text
          ? [9]
          : picture.threading.ring === text || picture.threading.clasp === text
            ? [8]
            : [],
      );
      if (above.length > 0)
        expect(
          bars.some(({ minY, maxY }) => Math.abs(y - (minY + maxY) / 2 - above[0]!) < 1e-6),
          text,
        ).toBe(true);
    }
    const short = words.filter(
      ({ text }) => text === STRAP_WORDS.en.parts.shortPart || text === STRAP_WORDS.de.parts.shortPart,
    );
    expect(short).toHaveLength(twoPart ? 3 : 0);
    expect(words.at(-1)!.text).not.toMatch(/^\d\./u);
  }
});
