import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
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
