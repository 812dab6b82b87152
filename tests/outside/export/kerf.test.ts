// Kerf: area of the moved outline against an independent offset library (clipper2-ts, a port of Clipper2).
import { EndType, inflatePathsD, JoinType } from "clipper2-ts";
import { expect, test } from "vitest";
import { drawLine } from "../../../src/core/drawing/list/items.ts";
import { cutPaths, type MachineWish } from "../../../src/core/drawing/machine/machineDrawing.ts";
import { flattenContour } from "../../../src/core/geometry/contourArcs.ts";
import { rectangleContour, straightContour } from "../../../src/core/geometry/contourShapes.ts";
import { signedArea } from "../../../src/core/geometry/ring.ts";
import { roundedContour } from "../../tools/samplePlan.ts";

const wish: MachineWish = {
  bedWidth: 600,
  bedHeight: 600,
  grip: 0,
  kerf: 0.2,
  bladeOffset: 0,
  overcut: 0,
  sharedOnce: false,
  order: "nearest",
};

function areaOfReference(points: Float64Array, distance: number): number {
  const path = Array.from({ length: points.length / 2 }, (_, i) => ({ x: points[2 * i]!, y: points[2 * i + 1]! }));
  const moved = inflatePathsD([path], distance, JoinType.Miter, EndType.Polygon, 4, 6);
  return moved.reduce((sum, ring) => sum + signedArea(Float64Array.from(ring.flatMap(({ x, y }) => [x, y]))), 0);
}

test("outlines moved out by half the kerf have the area that an independent library finds", () => {
  const shapes = [
    rectangleContour(0, 0, 101.6, 50.8),
    roundedContour(300, 240, 45),
    straightContour([0, 0, 200, 0, 200, 120, 120, 120, 120, 40, 80, 40, 80, 120, 0, 120], true),
    straightContour([0, 0, 180, 20, 150, 140, 40, 100], true),
  ];
  for (const shape of shapes) {
    for (const kerf of [0.08, 0.2, 0.45]) {
      const [cut] = cutPaths([drawLine("cut", shape, "p#0")], { ...wish, kerf });
      const area = Math.abs(signedArea(flattenContour(cut!.contour, 0.0005)));
      const reference = areaOfReference(flattenContour(shape, 0.0005), kerf / 2);
      expect(Math.abs(area - reference) / reference).toBeLessThan(1e-5);
    }
  }
});
