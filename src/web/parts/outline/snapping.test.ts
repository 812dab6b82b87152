import { expect, test } from "vitest";
import { heldToFold, isFoldEnd, type Snapping, snapCorner, snapRise } from "./snapping.ts";

const house = { closed: true, vertices: Float64Array.of(0, 0, 0, 203, 0, 0, 203, 150, 0, 101, 222, 0, 0, 150, 0) };
const metric: Snapping = { step: 5, reach: 4, finest: 0.1 };

test("a corner comes to the grid, and to the level of other corners before it", () => {
  expect(snapCorner(house, 3, 118.2, 201.4, metric)).toEqual({ x: 120, y: 200, guides: [] });
  // Level with corner 2 to its right, off the grid along: 203 is nearer than 200 or 205 by its preference.
  expect(snapCorner(house, 1, 50.9, 151, metric)).toMatchObject({ x: 50, y: 150 });
  expect(snapCorner(house, 2, 202, 148, metric)).toMatchObject({ x: 203, y: 150 });
  expect(snapCorner(house, 2, 202, 148, metric).guides).toEqual([
    { x: 203, y: 0 },
    { x: 0, y: 150 },
  ]);
  // Out of reach of the corner the grid counts.
  expect(snapCorner(house, 2, 196, 30, metric)).toMatchObject({ x: 195, y: 30, guides: [] });
});

test("let go of, a place is only rounded; quarter inches come out exact", () => {
  const free: Snapping = { step: 0, reach: 0, finest: 0.1 };
  expect(snapCorner(house, 2, 202.04, 149.77, free)).toEqual({ x: 202, y: 149.8, guides: [] });
  const inches: Snapping = { step: 6.35, reach: 3, finest: 25.4 / 32 };
  expect(snapCorner(house, 3, 127.9, 63, inches)).toMatchObject({ x: 127, y: 63.5 });
});

test("of a half, the ends of the fold slide along it and no corner goes beyond", () => {
  // The right half of a panel: its fold is the edge from (0, 200) down to (0, 0).
  const half = { closed: true, vertices: Float64Array.of(0, 0, 0, 150, 0, 0, 150, 200, 0, 0, 200, 0) };
  expect(isFoldEnd(half, 3, 3) && isFoldEnd(half, 3, 0)).toBe(true);
  expect(isFoldEnd(half, 3, 1)).toBe(false);
  expect(heldToFold(half, 3, 3, { x: 30, y: 220 })).toEqual({ x: 0, y: 220 });
  expect(heldToFold(half, 3, 2, { x: -20, y: 220 })).toEqual({ x: 0, y: 220 });
  expect(heldToFold(half, 3, 2, { x: 20, y: 220 })).toEqual({ x: 20, y: 220 });
  expect(heldToFold(half, null, 2, { x: -20, y: 220 })).toEqual({ x: -20, y: 220 });
});

test("a pulled edge is straight near its chord, half a circle at most, else in whole millimetres", () => {
  expect(snapRise(100, 2, 1, 3)).toBe(0);
  expect(snapRise(100, -22.3, 1, 3)).toBe(-22);
  expect(snapRise(100, 48, 1, 3)).toBe(50);
  expect(snapRise(100, -400, 1, 3)).toBe(-50);
});
