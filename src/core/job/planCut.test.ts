import { expect, test } from "vitest";
import { rectangleRing } from "../geometry/ring.ts";
import type { LayPlan, LayProblem, StockPlacement } from "../lay/problem/layProblem.ts";
import { planCut } from "./planCut.ts";

type Box = readonly [x: number, y: number, dx: number, dy: number];

/** Rectangles as they lie on a roll 100 mm wide, each a piece of its own. */
function laid(boxes: readonly Box[], change: Partial<LayProblem> = {}): [LayProblem, LayPlan] {
  const turns = [{ turnDeg: 0, mirrored: false }];
  const problem: LayProblem = {
    materialId: "canvas",
    pieces: boxes.map(([, , dx, dy], i) => {
      const outline = { outer: rectangleRing(0, 0, dx, dy), holes: [] };
      return { id: `p${i}`, outline, count: 1, orientations: turns, freeTurn: false };
    }),
    stocks: [{ kind: "roll", id: "roll", width: 100, length: null, flaws: [] }],
    gap: 0,
    margin: 0,
    pinned: [],
    ...change,
  };
  const placements = boxes.map(
    ([x, y], i): StockPlacement => ({
      ...{ pieceId: `p${i}`, copy: 0, stockId: "roll", x, y, turnDeg: 0, mirrored: false },
    }),
  );
  const usedLength = Math.max(0, ...boxes.map(([x, , dx]) => x + dx));
  const uses = [{ stockId: "roll", usedLength, bound: null }];
  return [problem, { materialId: "canvas", placements, unplaced: [], uses, evaluations: 0, seed: 1 }];
}

const ROW: readonly Box[] = [
  [0, 0, 40, 100],
  [40, 0, 60, 100],
];
/** Four boxes round a fifth: no straight cut from edge to edge is clear of them all. */
const PINWHEEL: readonly Box[] = [
  [0, 0, 60, 40],
  [60, 0, 40, 60],
  [40, 60, 60, 40],
  [0, 40, 40, 60],
  [40, 40, 20, 20],
];

test("a plan that straight cuts part is as asked", () => {
  expect(planCut(...laid(ROW), "ruler")).toMatchObject({ asked: "ruler", laid: "ruler", reason: null });
  expect(planCut(...laid(ROW), "few-stages")).toMatchObject({ laid: "ruler", stages: 1, reason: null });
  expect(planCut(...laid(ROW), "free")).toMatchObject({ asked: "free", laid: "ruler", reason: null });
});

test("a plan that they do not part says why", () => {
  const free = { laid: "free", stages: null, narrowStrips: null };
  expect(planCut(...laid(PINWHEEL), "free")).toEqual({ asked: "free", ...free, reason: null });
  expect(planCut(...laid(PINWHEEL), "ruler")).toEqual({ asked: "ruler", ...free, reason: "cramped" });
  const [problem, plan] = laid(PINWHEEL);
  const pinned = { ...problem, pinned: plan.placements.slice(0, 2) };
  expect(planCut(pinned, plan, "ruler").reason).toBe("pinned");
  const orientations = [{ turnDeg: 45, mirrored: false }];
  const aslant = { ...problem, pieces: problem.pieces.map((piece) => ({ ...piece, orientations })) };
  expect(planCut(aslant, plan, "ruler").reason).toBe("aslant");
  const match = { group: "a", x: 0, y: 0, senseX: 1, senseY: 1, along: true, across: false } as const;
  const [first, ...others] = problem.pieces;
  const pattern = { along: 20, across: null, firstAlong: 0, firstAcross: 0 };
  const matched = {
    ...problem,
    pieces: [{ ...first!, match }, ...others],
    pattern: { ...pattern, halfDrop: false, symmetric: false, tolerance: 1 },
  };
  expect(planCut(matched, plan, "ruler").reason).toBe("matched");
  expect(planCut({ ...matched, pinned: plan.placements.slice(0, 2) }, plan, "ruler").reason).toBe("pinned");
});

test("more turns than few are told; nothing laid is no way of cutting", () => {
  // Each box is half of what the one before left, cut across and along by turns.
  const boxes: Box[] = [];
  let [x, y, dx, dy] = [0, 0, 128, 100];
  for (let i = 0; i < 6; i++) {
    if (i % 2 === 0) {
      boxes.push([x, y, dx / 2, dy]);
      [x, dx] = [x + dx / 2, dx / 2];
    } else {
      boxes.push([x, y, dx, dy / 2]);
      [y, dy] = [y + dy / 2, dy / 2];
    }
  }
  boxes.push([x, y, dx, dy]);
  const cut = planCut(...laid(boxes), "few-stages");
  expect(cut).toMatchObject({ laid: "ruler", reason: "more-stages" });
  expect(cut.stages).toBeGreaterThan(4);
  expect(planCut(...laid(boxes), "ruler").reason).toBeNull();
  const [four, three] = [boxes.slice(0, 4), boxes.slice(0, 3)];
  expect(planCut(...laid(four), "few-stages").reason).toBeNull();
  expect(planCut(...laid(four), "two-stages").reason).toBe("more-stages");
  expect(planCut(...laid(three), "two-stages").reason).toBeNull();
  expect(planCut(...laid([]), "ruler")).toEqual({
    asked: "ruler",
    laid: null,
    stages: null,
    narrowStrips: null,
    reason: null,
  });
});
