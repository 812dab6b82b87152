import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { expect, test } from "vitest";
import { drawText } from "../../core/drawing/items.ts";
import { turnedText } from "./turnedText.ts";

const file = (name: string) =>
  new Uint8Array(readFileSync(createRequire(import.meta.url).resolve(`dejavu-fonts-ttf/ttf/${name}.ttf`)));
const outline = turnedText({
  regular: file("DejaVuSansCondensed"),
  bold: file("DejaVuSansCondensed-Bold"),
  fallbacks: [],
});

function box(text: string, turnDeg: number) {
  const points: [number, number][] = [];
  const data = outline(drawText(text, 100, 50, 10, { anchor: "middle", turnDeg }), (x, y) => {
    points.push([x, y]);
    return `${x} ${y}`;
  });
  return { data, xs: points.map(([x]) => x), ys: points.map(([, y]) => y) };
}

test("turned text runs along its baseline, centred, and stands to the left of it", () => {
  const { data, xs, ys } = box("Hand strap", 90);
  expect(data).toMatch(/^M/u);
  expect((Math.min(...ys) + Math.max(...ys)) / 2).toBeCloseTo(50, 0);
  expect(Math.max(...ys) - Math.min(...ys)).toBeGreaterThan(30);
  // Capitals are about 0.73 of the em square; the tail of the p is about 0.24 below the baseline.
  expect(Math.min(...xs)).toBeGreaterThan(100 - 8);
  expect(Math.max(...xs)).toBeLessThan(100 + 2.6);
});

test("level text and letters the font lacks are left to others", () => {
  expect(box("Hand strap", 0).data).toBeNull();
  expect(box("日本", 90).data).toBeNull();
});
