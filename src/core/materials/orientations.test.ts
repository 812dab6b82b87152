import { expect, test } from "vitest";
import type { PieceGrain } from "./cutPiece.ts";
import { allowedTurns, grainOn } from "./orientations.ts";

const turns = (wish: PieceGrain, rule: PieceGrain, oneWay = false, facesAlike = false) =>
  allowedTurns(wish, { grain: rule, oneWay, facesAlike });
const degrees = (...args: Parameters<typeof turns>) =>
  turns(...args)?.orientations.map(({ turnDeg, mirrored }) => (mirrored ? -turnDeg : turnDeg));

// Common practice, no source: nap one way {0}, either way {0, 180}, both straight grains {0, 90, 180, 270}.
test("turns by grain and nap", () => {
  expect(degrees("lengthwise", "either")).toEqual([0, 180]);
  expect(degrees("crosswise", "either")).toEqual([90, 270]);
  expect(degrees("either", "either")).toEqual([0, 90, 180, 270]);
  expect(degrees("either", "lengthwise")).toEqual([0, 180]);
  expect(degrees("lengthwise", "either", true)).toEqual([0]);
  expect(degrees("either", "either", true)).toEqual([0]);
  expect(degrees("crosswise", "either", true)).toEqual([90]);
});

test("a mirrored turn only where both faces are alike", () => {
  expect(degrees("lengthwise", "free", false, true)).toEqual([0, 180, -0, -180]);
});

test("any turn only where neither piece, cloth nor nap forbids it", () => {
  expect(turns("free", "free")?.freeTurn).toBe(true);
  expect(turns("free", "free", true)?.freeTurn).toBe(false);
  expect(turns("either", "free")?.freeTurn).toBe(false);
  expect(turns("free", "either")?.freeTurn).toBe(false);
});

test("a crosswise piece has no place on a material used lengthwise only", () => {
  expect(grainOn("crosswise", "lengthwise")).toBeNull();
  expect(turns("lengthwise", "crosswise")).toBeNull();
});
