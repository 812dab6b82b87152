import fc from "fast-check";
import { expect, test } from "vitest";
import type { Drawing } from "../../src/core/drawing/list/drawing.ts";
import type { Contour } from "../../src/core/geometry/contour.ts";
import { contourBox, flattenContour } from "../../src/core/geometry/contourArcs.ts";
import { signedArea } from "../../src/core/geometry/ring.ts";
import { distanceToRing } from "../../src/core/patterns/nesting.ts";
import type { PatternDrawing } from "../../src/core/patterns/patternDrawing.ts";
import { understandPattern } from "../../src/core/patterns/understandPattern.ts";
import { dxfText } from "../../src/export/dxf/dxfText.ts";
import { svgText } from "../../src/export/svg/svgText.ts";
import { readDxf } from "../../src/reading/dxf/readDxf.ts";
import { readSvg } from "../../src/reading/svg/readSvg.ts";

/** A star-shaped outline with straight and bowed edges, so that it never crosses itself. */
const outline = fc
  .array(
    fc.record({
      radius: fc.double({ min: 60, max: 90, noNaN: true }),
      bulge: fc.double({ min: -0.08, max: 0.3, noNaN: true }),
      isArc: fc.boolean(),
    }),
    {
      minLength: 4,
      maxLength: 12,
    },
  )
  .map((corners): Contour => {
    const vertices = corners.flatMap(({ radius, bulge, isArc }, i) => {
      const turn = (2 * Math.PI * i) / corners.length;
      return [
        150 + radius * Math.cos(turn),
        120 + radius * Math.sin(turn),
        isArc && Math.abs(bulge) > 0.01 ? bulge : 0,
      ];
    });
    return { vertices: Float64Array.from(vertices), closed: true };
  });

function drawingOf(contour: Contour): Drawing {
  const item = { kind: "line", role: "cut", contour } as const;
  return { box: { minX: 0, minY: 0, maxX: 300, maxY: 240 }, items: [item] };
}

function cameBack(read: PatternDrawing, contour: Contour): void {
  const { outlines, problems } = understandPattern(read, { tolerance: 0.05, mend: new Set(), roles: new Map() });
  expect(problems).toEqual([]);
  expect(outlines.map(({ role, closed }) => ({ role, closed }))).toEqual([{ role: "cut", closed: true }]);
  const [back] = outlines;
  const MICROMETRE = 1e-3;
  // As many edges as were written: arcs came back as arcs.
  expect(back!.contour.vertices).toHaveLength(contour.vertices.length);
  const [ours, theirs] = [flattenContour(contour, 1e-5), flattenContour(back!.contour, 1e-5)];
  for (let i = 0; i < ours.length; i += 40)
    expect(distanceToRing(theirs, ours[i]!, ours[i + 1]!)).toBeLessThan(MICROMETRE);
  for (let i = 0; i < theirs.length; i += 40)
    expect(distanceToRing(ours, theirs[i]!, theirs[i + 1]!)).toBeLessThan(MICROMETRE);
  const box = contourBox(contour);
  for (const side of ["minX", "minY", "maxX", "maxY"] as const)
    expect(Math.abs(back!.box[side] - box[side])).toBeLessThan(MICROMETRE);
  expect(Math.abs(back!.areaMm2 - Math.abs(signedArea(ours)))).toBeLessThan(MICROMETRE * 600);
}

test("our own SVG comes back within a micrometre", () => {
  fc.assert(
    fc.property(outline, (contour) => cameBack(readSvg(svgText(drawingOf(contour))), contour)),
    { numRuns: 40 },
  );
});

test("our own DXF comes back within a micrometre", () => {
  fc.assert(
    fc.property(outline, (contour) => cameBack(readDxf(dxfText(drawingOf(contour))), contour)),
    { numRuns: 40 },
  );
});
