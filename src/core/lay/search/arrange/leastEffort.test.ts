import { expect, test } from "vitest";
import { rectangleRing, solid } from "../../../geometry/ring.ts";
import type { LayProblem } from "../../problem/layProblem.ts";
import { leastEffort } from "./layingDesk.ts";

const problem = (count: number, more: Partial<LayProblem> = {}): LayProblem => ({
  ...{ materialId: "m", stocks: [], gap: 0, margin: 0, pinned: [] },
  pieces: [{ id: "p", outline: solid(rectangleRing(0, 0, 10, 10)), count, orientations: [], freeTurn: false }],
  ...more,
});

test("the least effort grows with the copies, up to the first round; matched cloth has all of that", () => {
  expect([1, 5, 100, 1000].map((count) => leastEffort(problem(count)))).toEqual([2000, 10_000, 200_000, 200_000]);
  const repeats = { along: 40, across: null, firstAlong: 0, firstAcross: 0 };
  const pattern = { ...repeats, halfDrop: false, symmetric: true, tolerance: 1 };
  const match = { group: "p", x: 0, y: 0, along: true, across: false, senseX: 1, senseY: 1 } as const;
  const pieces = problem(1).pieces.map((piece) => ({ ...piece, match }));
  expect(leastEffort(problem(1, { pattern, pieces }))).toBe(200_000);
  // A pattern that repeats neither way holds nothing, nor does one that nothing is matched on.
  expect(leastEffort(problem(1, { pattern: { ...pattern, along: null }, pieces }))).toBe(2000);
  expect(leastEffort(problem(1, { pattern }))).toBe(2000);
});
