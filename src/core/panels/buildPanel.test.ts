import { expect, test } from "vitest";
import { isRectangle } from "../geometry/box.ts";
import { contourBox } from "../geometry/contourArcs.ts";
import { straightContour } from "../geometry/contourShapes.ts";
import { polygonArea } from "../geometry/ring.ts";
import { buildPanel } from "./buildPanel.ts";
import type { Panel } from "./panel.ts";
import { sizePanels } from "./sizePanels.ts";

const panel: Panel = {
  id: "body",
  name: "Body",
  materialId: "cloth",
  count: 2,
  mirroredCount: 1,
  shape: { kind: "measured", shape: "rectangle", sizes: { along: 300, across: 200 } },
  seamAllowance: 10,
  foldEdge: null,
  grain: "lengthwise",
  notches: [],
  interfacing: null,
};

const pieces = (more: Partial<Panel>) => {
  const result = built({ ...panel, ...more });
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
};

function built(wish: Panel) {
  const sized = sizePanels([wish], [], () => "panels[0].");
  return sized.ok ? buildPanel(sized.value[0]!, "panels[0].") : sized;
}

test("seam allowance goes round the stitch line, which is drawn; counts are kept", () => {
  const [piece] = pieces({});
  expect(isRectangle(piece!.outline.outer)).toBe(true);
  expect(contourBox(piece!.contour)).toEqual({ minX: 0, minY: 0, maxX: 320, maxY: 220 });
  expect(contourBox(piece!.lines[0]!.contour)).toEqual({ minX: 10, minY: 10, maxX: 310, maxY: 210 });
  expect(piece).toMatchObject({ count: 2, mirroredCount: 1, kind: "panel", grain: "lengthwise" });
});

// Common practice, no source: woven fusible full size; foam and fleece without the seam allowance.
test("interfacing in full or without the seam allowance", () => {
  const area = (cut: "full" | "net") =>
    polygonArea(pieces({ interfacing: { materialId: "fusible", cut } })[1]!.outline);
  expect(area("full")).toBe(320 * 220);
  expect(area("net")).toBe(300 * 200);
});

test("a piece on the fold is opened out, still a rectangle, with the fold drawn in its middle", () => {
  const [piece] = pieces({ foldEdge: 0, notches: [{ edge: 1, at: 50 }] });
  expect(isRectangle(piece!.outline.outer)).toBe(true);
  expect(contourBox(piece!.contour)).toEqual({ minX: 0, minY: 0, maxX: 320, maxY: 420 });
  const fold = piece!.lines.find((line) => line.role === "fold")!;
  expect([...fold.contour.vertices]).toEqual([10, 210, 0, 310, 210, 0]);
  const notches = piece!.lines.filter((line) => line.role === "mark").map((line) => [...line.contour.vertices]);
  expect(notches).toEqual([
    [320, 260, 0, 315, 260, 0],
    [320, 160, 0, 315, 160, 0],
  ]);
});

test("a slanted fold opens into a kite", () => {
  const contour = straightContour([0, 0, 100, 100, 0, 100], true);
  const [piece] = pieces({ shape: { kind: "outline", contour }, foldEdge: 0, seamAllowance: 0 });
  expect(polygonArea(piece!.outline)).toBeCloseTo(10_000, 6);
  expect(isRectangle(piece!.outline.outer, 1e-6)).toBe(true);
});

test("a shape that meets its fold again beside the fold edge is refused at its place", () => {
  const contour = straightContour([0, 0, 40, 0, 60, 20, 80, 0, 100, 50, 0, 50], true);
  const result = built({ ...panel, shape: { kind: "outline", contour }, foldEdge: 0 });
  expect(result).toMatchObject({ problems: [{ code: "fold-edge-not-straight", path: "panels[0].fold" }] });
});

test("a notch on an arc points along its radius", () => {
  const sizes = { along: 100, across: 100, radius: 50 };
  const shape = { kind: "measured", shape: "rounded", sizes } as const;
  // A quarter of a circle of 50 mm is 78.54 mm long; half way lies at 45°.
  const [piece] = pieces({ shape, notches: [{ edge: 0, at: 39.2699 }] });
  const mark = piece!.lines.find((line) => line.role === "mark")!.contour.vertices;
  expect(mark[0]! - 60).toBeCloseTo(60 * Math.SQRT1_2, 3);
  expect(mark[1]! - 60).toBeCloseTo(-60 * Math.SQRT1_2, 3);
});
