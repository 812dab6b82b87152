import { expect, test } from "vitest";
import { contourBox } from "../../geometry/contourArcs.ts";
import { type Ring, rectangleRing, reversedRing, signedArea, solid } from "../../geometry/ring.ts";
import type { LayPattern, Stock } from "../../lay/problem/layProblem.ts";
import { patternArt } from "./patternArt.ts";

const ROLL: Stock = { kind: "roll", id: "r", width: 200, length: null, flaws: [] };
const stripes = (more: Partial<LayPattern>): LayPattern => ({
  along: null,
  across: null,
  firstAlong: 0,
  firstAcross: 0,
  halfDrop: false,
  symmetric: true,
  tolerance: 1,
  ...more,
});
const art = (pattern: LayPattern, stock: Stock = ROLL, used = 300) =>
  patternArt(pattern, stock, used)
    .map((contours) => {
      const { minX, maxX, minY, maxY } = contourBox(contours[0]!);
      const ring: Ring = contours[0]!.vertices.filter((_, i) => i % 3 !== 2);
      return { minX, maxX, minY, maxY, area: Math.abs(signedArea(ring)) };
    })
    .sort((a, b) => a.minX - b.minX || a.minY - b.minY);
const rounded = (...mm: number[]) => mm.map((value) => Math.round(value * 100) / 100 + 0);

test("stripes across the cloth stand with their middle on each line, three tenths of the repeat wide, cut at the cloth's ends", () => {
  const found = art(stripes({ along: 50, firstAlong: 20 }));
  // Lines at 20, 70 … 270, and the half of one that begins before the end of the cloth belongs to the line at 320: none.
  expect(found.map(({ minX, maxX }) => rounded(minX, maxX))).toEqual(
    [20, 70, 120, 170, 220, 270].map((line) => [line - 7.5, line + 7.5]),
  );
  for (const { minY, maxY } of found) expect(rounded(minY, maxY)).toEqual([0, 200]);
  // A line on the very edge is seen by half, at either end.
  const edge = art(stripes({ along: 50 }));
  expect(edge.map(({ minX, maxX }) => rounded(minX, maxX))).toEqual([
    [0, 7.5],
    ...[50, 100, 150, 200, 250].map((line) => [line - 7.5, line + 7.5]),
    [292.5, 300],
  ]);
});

test("stripes along the cloth run its whole used length", () => {
  const found = art(stripes({ across: 80, firstAcross: 30 }));
  expect(found.map(({ minY, maxY }) => rounded(minY, maxY))).toEqual([
    [18, 42],
    [98, 122],
    [178, 200],
  ]);
  for (const { minX, maxX } of found) expect(rounded(minX, maxX)).toEqual([0, 300]);
});

test("stripes with a top have a thin line after each, on the same side of every one", () => {
  const found = art(stripes({ along: 100, firstAlong: 50, symmetric: false }));
  expect(found.map(({ minX, maxX }) => rounded(minX, maxX))).toEqual([
    [35, 65],
    [77, 84],
    [135, 165],
    [177, 184],
    [235, 265],
    [277, 284],
  ]);
});

test("motifs lie where two lines meet; those with a top point along the cloth", () => {
  const found = art(stripes({ along: 100, across: 60, firstAlong: 50, firstAcross: 40 }));
  const places = [50, 150, 250].flatMap((x) => [40, 100, 160].map((y) => [x - 12, x + 12, y - 12, y + 12]));
  expect(found.map(({ minX, maxX, minY, maxY }) => rounded(minX, maxX, minY, maxY))).toEqual(places);
  // A diamond is half of its box.
  for (const { area } of found) expect(area).toBeCloseTo(288, 1);
  const pointing = art(stripes({ along: 100, across: 60, firstAlong: 50, firstAcross: 40, symmetric: false }));
  expect(rounded(pointing[0]!.minX, pointing[0]!.maxX)).toEqual([38, 71.6]);
  expect(pointing[0]!.area).toBeCloseTo((33.6 * 24) / 2, 1);
});

test("in a half drop every second row is moved on by half a repeat, counted from the first", () => {
  const found = art(stripes({ along: 100, across: 60, firstAlong: 50, firstAcross: 40, halfDrop: true }));
  const middles = (row: number) =>
    found.filter(({ minY, maxY }) => Math.abs((minY + maxY) / 2 - row) < 0.1).map(({ minX }) => rounded(minX)[0]);
  expect(middles(40)).toEqual([38, 138, 238]);
  expect(middles(160)).toEqual([38, 138, 238]);
  // The row between begins with a motif cut by the cloth's end.
  expect(middles(100)).toEqual([0, 88, 188, 288]);
});

test("a leftover has its own first line, and its pattern is cut to its outline and not into its holes", () => {
  const outline = { outer: rectangleRing(10, 20, 100, 60), holes: [reversedRing(rectangleRing(40, 30, 40, 40))] };
  const leftover: Stock = { kind: "remnant", id: "x", outline, flaws: [], firstLine: [60, 0] };
  const found = art(stripes({ along: 50, firstAlong: 999 }), leftover);
  expect(found.map(({ minX, maxX, minY, maxY }) => rounded(minX, maxX, minY, maxY))).toEqual([
    [10, 17.5, 20, 80],
    [52.5, 67.5, 20, 30],
    [52.5, 67.5, 70, 80],
    [102.5, 110, 20, 80],
  ]);
  const whole: Stock = { kind: "remnant", id: "x", outline: solid(rectangleRing(10, 20, 100, 60)), flaws: [] };
  expect(art(stripes({ along: 50, firstAlong: 60 }), whole)).toHaveLength(3);
});

test("a pattern finer than can be seen is not drawn; nor is one without a repeat", () => {
  expect(art(stripes({ along: 300 / 3900 }))).not.toEqual([]);
  expect(art(stripes({ along: 300 / 4100 }))).toEqual([]);
  expect(art(stripes({ along: 3, across: 2 }))).toEqual([]);
  // 3,997 repeats and three more are 4,000 stripes: the most that are drawn.
  expect(art(stripes({ along: 0.125 }), ROLL, 3997 * 0.125)).not.toEqual([]);
  expect(art(stripes({ along: 0.125 }), ROLL, 3998 * 0.125)).toEqual([]);
  // With a line beside each stripe half as many are as many marks.
  expect(art(stripes({ along: 300 / 2100 }))).not.toEqual([]);
  expect(art(stripes({ along: 300 / 2100, symmetric: false }))).toEqual([]);
  expect(art(stripes({ along: 300 / 1900, symmetric: false }))).not.toEqual([]);
  expect(art(stripes({}))).toEqual([]);
});
