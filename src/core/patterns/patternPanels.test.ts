import { expect, test } from "vitest";
import type { PatternDrawing, PatternMark } from "./patternDrawing.ts";
import { patternPanels } from "./patternPanels.ts";
import { understandPattern } from "./understandPattern.ts";

const point = (x: number, y: number): PatternMark => ({ kind: "point", x, y, text: "", layer: "" });

// Notches as single points on the boundary: sewn-product patterns in DXF have them so (ASTM D6673, from memory).
test("a single point on the cut line is a notch there; one inside is a drill hole", () => {
  const corners = [
    [200, 10],
    [200, 110],
    [10, 110],
  ] as const;
  const parts = corners.map(([x, y]) => ({ kind: "straight" as const, x, y }));
  const look = { name: "Front", layer: "", names: ["Front"], color: "#000000", dash: [] };
  const drawing: PatternDrawing = {
    kind: "dxf",
    unit: { name: "mm", ofMm: 1 },
    lines: [{ ...look, curve: { x: 10, y: 10, parts, closed: true } }],
    marks: [point(80, 10), point(200.2, 60), point(100, 50), point(400, 400)],
    problems: [],
  };
  const read = understandPattern(drawing, { tolerance: 0.05, mend: new Set(), roles: new Map() });
  const [front] = patternPanels(read);
  expect(front!.drills).toEqual([{ x: 90, y: 40 }]);
  expect(front!.notches).toHaveLength(2);
  expect(front!.notches[0]).toEqual({ edge: 0, at: 70 });
  expect(front!.notches[1]).toMatchObject({ edge: 1, at: 50 });
});
