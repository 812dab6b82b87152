import { expect, test } from "vitest";
import { homographyOf, inverseOf, mapByHomography } from "./homography.ts";
import { straightened } from "./straighten.ts";

/** A slanted view of the table: its corners in the picture, 400 by 300 px. */
const slant = homographyOf([
  { from: [60, 250], to: [0, 0] },
  { from: [360, 270], to: [200, 0] },
  { from: [310, 40], to: [200, 150] },
  { from: [90, 30], to: [0, 150] },
])!;

test("the map turned round takes every place back", () => {
  const back = inverseOf(slant)!;
  for (const [x, y] of [
    [0, 0],
    [57, 140],
    [200, 75],
  ] as const) {
    const [px, py] = mapByHomography(back, x, y);
    expect(mapByHomography(slant, px, py)).toEqual([expect.closeTo(x, 8), expect.closeTo(y, 8)]);
  }
  expect(inverseOf([1, 2, 0, 2, 4, 0, 0, 0, 1])).toBeNull();
});

test("a rectangle on the table is a rectangle in the straightened picture, within a pixel", () => {
  // Drawn by the map itself: dark where the pixel looks at x 50 to 150, y 40 to 100.
  const values = new Uint8Array(400 * 300);
  for (let py = 0; py < 300; py++)
    for (let px = 0; px < 400; px++) {
      const [x, y] = mapByHomography(slant, px, py);
      values[py * 400 + px] = x > 50 && x < 150 && y > 40 && y < 100 ? 0 : 230;
    }
  const box = { minX: 20, minY: 20, maxX: 180, maxY: 120 };
  const picture = straightened({ width: 400, height: 300, values }, slant, box, 0.5)!;
  const { width, height, gray } = picture;
  expect([width, height]).toEqual([320, 200]);
  const dark = [...gray].flatMap((value, i) => (value < 115 ? [[i % width, Math.floor(i / width)] as const] : []));
  const left = box.minX + Math.min(...dark.map(([column]) => column)) / 2;
  const right = box.minX + (Math.max(...dark.map(([column]) => column)) + 1) / 2;
  const top = box.maxY - Math.min(...dark.map(([, row]) => row)) / 2;
  const bottom = box.maxY - (Math.max(...dark.map(([, row]) => row)) + 1) / 2;
  // A pixel of the slanted picture is up to 1 mm of this table.
  for (const [found, true_] of [
    [left, 50],
    [right, 150],
    [top, 100],
    [bottom, 40],
  ] as const)
    expect(Math.abs(found - true_)).toBeLessThan(1);
  expect(dark.length * 0.25).toBeGreaterThan(5800);
  expect(dark.length * 0.25).toBeLessThan(6200);
});

test("beyond the picture's rim the table is white", () => {
  const values = new Uint8Array(400 * 300);
  const far = { minX: -4000, minY: -4000, maxX: -3900, maxY: -3900 };
  expect(
    straightened({ width: 400, height: 300, values }, slant, far, 1)!.gray.every((value) => value === 255),
  ).toBe(true);
});
