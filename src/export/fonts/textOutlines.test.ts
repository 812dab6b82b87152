import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import fontkit from "@pdf-lib/fontkit";
import { expect, test } from "vitest";
import { drawText } from "../../core/drawing/list/items.ts";
import { signedArea } from "../../core/geometry/ring.ts";
import { openFaces } from "./faces.ts";
import { letterRings, textOutlines } from "./textOutlines.ts";

const file = (path: string) => new Uint8Array(readFileSync(createRequire(import.meta.url).resolve(path)));
const fonts = {
  regular: file("dejavu-fonts-ttf/ttf/DejaVuSansCondensed.ttf"),
  bold: file("dejavu-fonts-ttf/ttf/DejaVuSansCondensed-Bold.ttf"),
  fallbacks: [async () => file("@fontsource/noto-emoji/files/noto-emoji-emoji-400-normal.woff")],
};

async function outline(text: string, turnDeg: number) {
  const strokes = textOutlines(
    drawText(text, 100, 50, 10, { anchor: "middle", turnDeg }),
    await openFaces(fonts, [text]),
  );
  const points = strokes.flatMap((stroke) => stroke.points);
  return {
    strokes,
    xs: points.filter((_, i) => i % 2 === 0),
    ys: points.filter((_, i) => i % 2 === 1),
  };
}

test("turned text runs along its baseline, centred, and stands to the left of it", async () => {
  const { strokes, xs, ys } = await outline("Hand strap", 90);
  expect(strokes[0]!.kind).toBe("M");
  expect((Math.min(...ys) + Math.max(...ys)) / 2).toBeCloseTo(50, 0);
  expect(Math.max(...ys) - Math.min(...ys)).toBeGreaterThan(30);
  // Capitals are about 0.73 of the em square; the tail of the p is about 0.24 below the baseline.
  expect(Math.min(...xs)).toBeGreaterThan(100 - 8);
  expect(Math.max(...xs)).toBeLessThan(100 + 2.6);
});

test("a text in two fonts is one line, centred as a whole", async () => {
  const { xs } = await outline("Bag 👜", 0);
  expect(Math.max(...xs) - Math.min(...xs)).toBeGreaterThan(25);
  expect((Math.max(...xs) + Math.min(...xs)) / 2).toBeCloseTo(100, 0);
});

test("rings of letters: an o is an outside and an inside, wound against each other", async () => {
  const rings = letterRings((await outline("o", 0)).strokes);
  const areas = rings.map((ring) => signedArea(Float64Array.from(ring)));
  expect(areas).toHaveLength(2);
  expect(Math.sign(areas[0]!)).toBe(-Math.sign(areas[1]!));
});

test("a text begins, is centred or ends where it is anchored, by its advance in the font (read by fontkit)", async () => {
  const font = fontkit.create(fonts.regular);
  const faces = await openFaces(fonts, []);
  for (const [text, size] of [
    ["Hand strap", 10],
    ["ÄÖ g8", 3],
  ] as const) {
    const { advanceWidth, bbox } = font.layout(text);
    const scale = size / font.unitsPerEm;
    for (const [anchor, back] of [
      ["start", 0],
      ["middle", 0.5],
      ["end", 1],
    ] as const) {
      const points = textOutlines(drawText(text, 100, 50, size, { anchor }), faces).flatMap(
        (stroke) => stroke.points,
      );
      const [xs, ys] = [0, 1].map((way) => points.filter((_, i) => i % 2 === way)) as [number[], number[]];
      expect(Math.min(...xs)).toBeCloseTo(100 + (bbox.minX - back * advanceWidth) * scale, 1);
      expect(Math.max(...xs)).toBeCloseTo(100 + (bbox.maxX - back * advanceWidth) * scale, 1);
      expect(Math.min(...ys)).toBeCloseTo(50 + bbox.minY * scale, 1);
      expect(Math.max(...ys)).toBeCloseTo(50 + bbox.maxY * scale, 1);
    }
  }
});

test("a bold text is in the bold font, and wider", async () => {
  const faces = await openFaces(fonts, []);
  const wide = (bold: boolean) =>
    Math.max(
      ...textOutlines(drawText("Strap", 0, 0, 10, { bold }), faces).flatMap(({ points }) =>
        points.filter((_, i) => i % 2 === 0),
      ),
    );
  expect(wide(true) / wide(false)).toBeGreaterThan(1.05);
});

// A quadratic curve (1 − t)² a + 2 t (1 − t) b + t² c and a cubic one, at sixths.
test("curves come as six chords, on the curve, ending where it ends; rings of fewer than three corners are left out", () => {
  const bezier = (t: number, ...at: number[]): number =>
    at.length === 1 ? at[0]! : (1 - t) * bezier(t, ...at.slice(0, -1)) + t * bezier(t, ...at.slice(1));
  const sixths = [1, 2, 3, 4, 5, 6].map((k) => k / 6);
  const [quadratic, cubic] = letterRings([
    { kind: "M", points: [0, 0] },
    { kind: "Q", points: [10, 20, 30, 0] },
    { kind: "L", points: [30, -5] },
    { kind: "Z", points: [] },
    { kind: "M", points: [1, 1] },
    { kind: "C", points: [4, 9, 8, 9, 12, 1] },
    { kind: "Z", points: [] },
    { kind: "M", points: [7, 7] },
    { kind: "L", points: [8, 8] },
    { kind: "Z", points: [] },
  ]);
  const near = (points: number[]) => points.map((mm) => expect.closeTo(mm, 9));
  expect(quadratic).toEqual(
    near([0, 0, ...sixths.flatMap((t) => [bezier(t, 0, 10, 30), bezier(t, 0, 20, 0)]), 30, -5]),
  );
  expect(cubic).toEqual(near([1, 1, ...sixths.flatMap((t) => [bezier(t, 1, 4, 8, 12), bezier(t, 1, 9, 9, 1)])]));
  expect(
    letterRings([
      { kind: "M", points: [7, 7] },
      { kind: "L", points: [8, 8] },
      { kind: "L", points: [9, 7] },
    ]),
  ).toHaveLength(1);
});
