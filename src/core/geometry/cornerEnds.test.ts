import { expect, test } from "vitest";
import { contourArea } from "./contourEdgeLengths.ts";
import { straightContour } from "./contourShapes.ts";
import type { CornerEnd } from "./cornerEnds.ts";
import { offsetEdges } from "./offsetEdges.ts";

const plain: CornerEnd = { kind: "mitred" };
const square = straightContour([0, 0, 100, 0, 100, 80, 0, 80], true);
/** Its lower-right corner turns by 135°: interior 45°. */
const sharp = straightContour([0, 0, 100, 0, 0, 100], true);

const corners = (contour: typeof square, widths: number[], ends: CornerEnd[]): [number, number][] => {
  const { vertices } = offsetEdges(contour, widths, ends)!.contour;
  return Array.from({ length: vertices.length / 3 }, (_, i) => [vertices[3 * i]!, vertices[3 * i + 1]!]);
};

test("each edge of a rectangle is moved by its own width", () => {
  expect(corners(square, [10, 5, 30, 0], [])).toEqual([
    [0, -10],
    [105, -10],
    [105, 110],
    [0, 110],
  ]);
});

test("mitred, square and blunted tips of a sharp corner, by hand", () => {
  const widths = [10, 10, 10];
  // The mitre lies where y = −10 meets the hypotenuse moved out by 10: x = 100 + 10 (1 + √2).
  const tip = 100 + 10 * (1 + Math.SQRT2);
  expect(corners(sharp, widths, [])[1]![0]).toBeCloseTo(tip, 9);
  const cut = corners(sharp, widths, [plain, { kind: "square", to: "before" }, plain]);
  expect(cut[1]).toEqual([110, -10]);
  expect(cut[2]![0]).toBeCloseTo(110, 9);
  // On the moved hypotenuse x + y = 100 + 10 √2.
  expect(cut[2]![0] + cut[2]![1]).toBeCloseTo(100 + 10 * Math.SQRT2, 9);
  const other = corners(sharp, widths, [plain, { kind: "square", to: "after" }, plain]);
  // Square to the hypotenuse, 10 beyond the corner along it.
  expect(other[2]![0]! - other[2]![1]!).toBeCloseTo(100 + 10 * Math.SQRT2, 9);
  const blunt = corners(sharp, widths, [plain, { kind: "blunted" }, plain]);
  const middle = [Math.cos(-Math.PI / 8), Math.sin(-Math.PI / 8)] as const;
  for (const [x, y] of [blunt[1]!, blunt[2]!]) expect((x - 100) * middle[0] + y * middle[1]).toBeCloseTo(10, 9);
});

test("a right corner is the same mitred, square or folded back", () => {
  const kinds: CornerEnd[] = [plain, { kind: "square", to: "before" }, { kind: "folded", over: "before" }];
  for (const end of kinds) expect(corners(square, [10, 10, 10, 10], [end, end, end, end])).toHaveLength(4);
});

test("a folded hem lies on the panel once it is turned in", () => {
  // Sides slant outward to the top: the hem is cut wider than the top edge, and mirrors the sides.
  const panel = straightContour([20, 0, 80, 0, 100, 80, 0, 80], true);
  const fold: CornerEnd = { kind: "folded", over: "before" };
  const over: CornerEnd = { kind: "folded", over: "after" };
  const points = corners(panel, [8, 8, 30, 8], [plain, plain, over, fold]);
  expect(points).toHaveLength(6);
  const hem = points.filter(([, y]) => Math.abs(y - 110) < 1e-9);
  expect(hem).toHaveLength(2);
  // Mirrored across the top edge (y = 80), the hem's ends lie on the cut lines of the sides.
  const side = Math.hypot(20, 80);
  for (const [x, y] of hem) {
    const folded = 160 - y;
    const off = x > 50 ? (80 * (x - 80) - 20 * folded) / side : (-80 * (x - 20) - 20 * folded) / side;
    expect(off).toBeCloseTo(8, 9);
  }
});

test("an arc that runs straight on into an edge of another width steps out square", () => {
  const half = { vertices: Float64Array.of(0, 0, 0, 100, 0, 0, 100, 50, 1, 0, 50, 0), closed: true };
  const { contour, starts } = offsetEdges(half, [10, 10, 4, 10])!;
  expect(starts).not.toBeNull();
  // Body 100 × 50 with 10 at the bottom and sides, and a half ring of 4 round the half circle of 50.
  const wanted = 120 * 60 + (Math.PI / 2) * 54 * 54;
  expect(contourArea(contour)).toBeCloseTo(wanted, 6);
});
