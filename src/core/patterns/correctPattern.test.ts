import { expect, test } from "vitest";
import type { Box } from "../geometry/box.ts";
import type { Contour } from "../geometry/contour.ts";
import { contourArea, contourLength } from "../geometry/contourEdgeLengths.ts";
import { bowEdge, moveCorner } from "../geometry/contourEdits.ts";
import { carriedOver, correctedPattern, curveOf, lineKey, linesNow } from "./correctPattern.ts";
import { curveArea, curveBox, flattenCurve } from "./measureCurve.ts";
import { patternPanels } from "./patternPanels.ts";
import { FIT_TOLERANCE, understandPattern } from "./understandPattern.ts";

const corners = [
  [10, 10],
  [210, 10],
  [210, 130],
  [10, 130],
] as const;

function understood(shift = 0) {
  const [[x, y], ...rest] = corners.map(([cx, cy]) => [cx + shift, cy] as const) as [
    readonly [number, number],
    ...(readonly [number, number])[],
  ];
  const parts = rest.map(([px, py]) => ({ kind: "straight" as const, x: px, y: py }));
  const curve = { x, y, parts, closed: true };
  const line = { name: "Front", layer: "", names: ["Front"], color: null, dash: [], curve };
  const drawing = { kind: "image" as const, unit: { name: "mm", ofMm: 1 }, lines: [line], marks: [], problems: [] };
  return understandPattern(drawing, { tolerance: FIT_TOLERANCE, mend: new Set(), roles: new Map() });
}

test("a line put right by hand is the panel's outline, with its size and area", () => {
  const pattern = understood();
  const [front] = pattern.outlines;
  const fixed = bowEdge(moveCorner(front!.contour, 2, 220, 130), 0, 20);
  const after = correctedPattern(pattern, new Map([[lineKey(front!), fixed]]));
  expect(after.outlines[0]!.box).toMatchObject({ minX: 10, maxX: 220, maxY: 130 });
  expect(after.outlines[0]!.areaMm2).toBeCloseTo(contourArea(fixed), 9);
  const [panel] = patternPanels(after);
  expect(contourArea(panel!.contour)).toBeCloseTo(contourArea(fixed), 6);
  expect(contourLength(panel!.contour)).toBeCloseTo(contourLength(fixed), 6);
});

test("a correction is not laid over a line that came out otherwise", () => {
  const key = lineKey(understood().outlines[0]!);
  const other = understood(5);
  const fixed = moveCorner(other.outlines[0]!.contour, 2, 300, 130);
  expect(correctedPattern(other, new Map([[key, fixed]])).outlines).toEqual(other.outlines);
  expect(correctedPattern(other, new Map())).toBe(other);
});

test("a contour as a drawn line keeps its arcs: box and area are those of the contour", () => {
  const contour = bowEdge(understood().outlines[0]!.contour, 1, 60);
  const curve = curveOf(contour);
  expect(curveBox(curve).maxX).toBeCloseTo(270, 9);
  expect(Math.abs(curveArea(curve))).toBeCloseTo(contourArea(contour), 6);
  expect(flattenCurve(curve, 0.01).length).toBeGreaterThan(40);
});

test("a line that is mended or read in another unit keeps what was put right of it, at its size", () => {
  const [front] = understood().outlines;
  const fixed = bowEdge(moveCorner(front!.contour, 2, 220, 130), 0, 20);
  const corrections = new Map([[lineKey(front!), fixed]]);
  // Read in inches instead of millimetres: everything is 25.4 times as large.
  const large = { ...front!, contour: scaled(front!.contour, 25.4), box: scaledBox(front!.box, 25.4) };
  const inInches = carriedOver(corrections, linesNow([front!], [large]));
  expect(contourArea(inInches.get(lineKey(large))!)).toBeCloseTo(contourArea(fixed) * 25.4 ** 2, 3);
  // Taken back, it is as it was.
  expect(inInches.get(lineKey(front!))).toBe(fixed);
  // A corner fewer, nearly the same box: the same line, mended.
  const vertices = Float64Array.from([...front!.contour.vertices.slice(0, 6), 205, 130, 0, 10, 130, 0]);
  const mended = { ...front!, contour: { vertices, closed: true }, box: { ...front!.box, maxX: 208 } };
  expect(carriedOver(corrections, linesNow([front!], [mended])).get(lineKey(mended))).toEqual(fixed);
  // A line elsewhere is another line, and an open one is none to cut.
  const elsewhere = understood(150).outlines[0]!;
  const away = { ...elsewhere, name: "Back" };
  expect(linesNow([front!], [away]).size).toBe(0);
  expect(linesNow([front!], [{ ...mended, closed: false }]).size).toBe(0);
  expect(carriedOver(corrections, new Map())).toBe(corrections);
});

function scaled({ vertices, closed }: Contour, by: number): Contour {
  return { vertices: vertices.map((value, i) => (i % 3 === 2 ? value : value * by)), closed };
}

function scaledBox({ minX, minY, maxX, maxY }: Box, by: number): Box {
  return { minX: minX * by, minY: minY * by, maxX: maxX * by, maxY: maxY * by };
}
