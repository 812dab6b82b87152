import { expect, test } from "vitest";
import { contourArea, contourLength } from "../geometry/contourEdgeLengths.ts";
import { bowEdge, moveCorner } from "../geometry/contourEdits.ts";
import { correctedPattern, curveOf, lineKey } from "./correctPattern.ts";
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
