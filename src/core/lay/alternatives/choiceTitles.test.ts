import { expect, test } from "vitest";
import { rectangleRing, solid } from "../../geometry/ring.ts";
import type { LayPlan, LayProblem, StockUse } from "../problem/layProblem.ts";
import { choiceTitles } from "./choiceTitles.ts";

const outline = solid(rectangleRing(0, 0, 100, 50));
const problem: LayProblem = {
  materialId: "canvas",
  pieces: [{ id: "flap", outline, count: 4, orientations: [{ turnDeg: 0, mirrored: false }], freeTurn: false }],
  stocks: [
    { kind: "remnant", id: "rest", outline: solid(rectangleRing(0, 0, 300, 200)), flaws: [] },
    { kind: "roll", id: "bolt", width: 1000, length: 200, flaws: [] },
  ],
  gap: 0,
  margin: 0,
  pinned: [],
};

/** A plan of `length` mm off the roll that leaves so many flaps out. */
function planOf(length: number, out = 0): LayPlan {
  const uses: StockUse[] = [
    { stockId: "rest", usedLength: 300, bound: null },
    { stockId: "bolt", usedLength: length, bound: null },
  ];
  const unplaced = out === 0 ? [] : [{ pieceId: "flap", count: out, reason: "stock-used-up" } as const];
  return { materialId: "canvas", placements: [], unplaced, uses, evaluations: 0, seed: 1 };
}

const titles = (plan: LayPlan, beside: LayPlan | null = null) =>
  choiceTitles(problem, { best: ["shortest", "easiest"], plan }, beside);

test("a whole plan off a roll is the shortest; with pieces left out it lays most; on leftovers it is on what there is", () => {
  expect(titles(planOf(100))).toEqual(["shortest", "easiest"]);
  expect(titles(planOf(100, 1))).toEqual(["most", "easiest"]);
  expect(titles(planOf(0))).toEqual(["leftovers", "easiest"]);
  expect(titles(planOf(0, 1))).toEqual(["most", "easiest"]);
});

test("no title is left that the plan beside it contradicts", () => {
  expect(titles(planOf(100), planOf(99))).toEqual(["easiest"]);
  expect(titles(planOf(100), planOf(99.9))).toEqual(["shortest", "easiest"]);
  expect(titles(planOf(100, 2), planOf(150, 1))).toEqual(["easiest"]);
  expect(titles(planOf(100, 1), planOf(50, 2))).toEqual(["most", "easiest"]);
  // All pieces have a place, at the price of more cloth than a plan that leaves one out.
  expect(titles(planOf(100), planOf(50, 1))).toEqual(["shortest", "easiest"]);
});
