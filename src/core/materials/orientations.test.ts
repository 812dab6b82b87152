import { expect, test } from "vitest";
import { poseContour } from "../geometry/contourArcs.ts";
import { segmentContour } from "../geometry/contourShapes.ts";
import type { Orientation } from "../geometry/pose.ts";
import type { PieceGrain } from "./cutPiece.ts";
import type { OneWay } from "./material.ts";
import { allowedTurns, grainOn } from "./orientations.ts";

const turns = (wish: PieceGrain, rule: PieceGrain, oneWay: OneWay | false = false, facesAlike = false) =>
  allowedTurns(wish, { grain: rule, oneWay, facesAlike });
const degrees = (...args: Parameters<typeof turns>) =>
  turns(...args)?.orientations.map(({ turnDeg, mirrored }) => (mirrored ? -turnDeg : turnDeg));

// Common practice, no source: nap one way {0}, either way {0, 180}, both straight grains {0, 90, 180, 270}.
test("turns by grain and nap", () => {
  expect(degrees("lengthwise", "either")).toEqual([0, 180]);
  expect(degrees("crosswise", "either")).toEqual([90, 270]);
  expect(degrees("either", "either")).toEqual([0, 90, 180, 270]);
  expect(degrees("either", "lengthwise")).toEqual([0, 180]);
  expect(degrees("lengthwise", "either", "up")).toEqual([0]);
  expect(degrees("either", "either", "up")).toEqual([0]);
  expect(degrees("crosswise", "either", "up")).toEqual([90]);
  expect(degrees("lengthwise", "either", "down")).toEqual([180]);
  expect(degrees("crosswise", "either", "down")).toEqual([270]);
  expect(degrees("either", "either", "free")).toEqual([0, 180]);
});

test("a mirrored turn only where both faces are alike", () => {
  expect(degrees("lengthwise", "free", false, true)).toEqual([0, 180, -180, -0]);
});

test("turned over on a one-way cloth, a piece keeps its arrow's way", () => {
  for (const wish of ["lengthwise", "crosswise"] as const) {
    const [plain, over] = allowedTurns(wish, { grain: "either", oneWay: "up", facesAlike: true })!.orientations;
    // A segment along the arrow, mirrored and turned: a reflection, then a rotation.
    const arrow = (pose: Orientation) => [
      ...poseContour(segmentContour(0, 0, 1, 0), { ...pose, x: 0, y: 0 }).vertices,
    ];
    expect(over!.mirrored).toBe(true);
    expect(arrow(over!)[3]).toBe(arrow(plain!)[3]);
    expect(arrow(over!)[4]).toBe(arrow(plain!)[4]);
  }
});

test("any turn only where neither piece, cloth nor nap forbids it", () => {
  expect(turns("free", "free")?.freeTurn).toBe(true);
  expect(turns("free", "free", "up")?.freeTurn).toBe(false);
  expect(turns("either", "free")?.freeTurn).toBe(false);
  expect(turns("free", "either")?.freeTurn).toBe(false);
});

test("a crosswise piece has no place on a material used lengthwise only", () => {
  expect(grainOn("crosswise", "lengthwise")).toBeNull();
  expect(turns("lengthwise", "crosswise")).toBeNull();
});
