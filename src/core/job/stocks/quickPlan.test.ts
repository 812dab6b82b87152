import { expect, test } from "vitest";
import { rectangleRing, solid } from "../../geometry/ring.ts";
import { checkPlan } from "../../lay/check/checkPlan.ts";
import type { LayPiece, LayPlan, LayProblem, Stock } from "../../lay/problem/layProblem.ts";
import { seededRng } from "../../lay/search/rng.ts";
import { quickPlan } from "./quickPlan.ts";

function quick(problem: LayProblem, evaluations: number): LayPlan {
  const search = quickPlan(problem, { mode: "free", evaluations, seed: 1 });
  for (let turn = search.next(); ; turn = search.next()) if (turn.done) return turn.value;
}

/** Closed cloth and two to five rectangles that were cut out of it, each then made up to 12 mm smaller. */
function cutUp(seed: number): LayProblem {
  const rng = seededRng(seed);
  const whole = (low: number, high: number): number => low + rng.below(high - low + 1);
  const [length, width] = [whole(300, 900), whole(200, 500)];
  const boxes: (readonly [number, number])[] = [[length, width]];
  for (let cuts = whole(1, 4); cuts > 0; cuts--) {
    const i = rng.below(boxes.length);
    const [along, across] = boxes[i]!;
    const share = 0.25 + 0.5 * rng.unit();
    const [x, y] = [Math.floor(along * share), Math.floor(across * share)];
    const parts: (readonly [number, number])[] =
      rng.unit() < 0.5
        ? [
            [x, across],
            [along - x, across],
          ]
        : [
            [along, y],
            [along, across - y],
          ];
    boxes.splice(i, 1, ...parts);
  }
  const orientations = [0, 90].map((turnDeg) => ({ turnDeg, mirrored: false }));
  const pieces = boxes.map(([along, across], i): LayPiece => {
    const outline = solid(
      rectangleRing(0, 0, Math.max(5, along - whole(0, 12)), Math.max(5, across - whole(0, 12))),
    );
    return { id: `p${i}`, outline, count: 1, orientations, freeTurn: false };
  });
  const stock: Stock =
    seed % 2 === 0
      ? { kind: "roll", id: "end", width, length, flaws: [] }
      : { kind: "remnant", id: "end", outline: solid(rectangleRing(0, 0, length, width)), flaws: [] };
  return { materialId: "canvas", pieces, stocks: [stock], gap: 0, margin: 0, pinned: [] };
}

test("a few rectangles that were cut out of closed cloth are laid on it whole, however short the search", () => {
  for (let seed = 1; seed <= 60; seed++) {
    const problem = cutUp(seed);
    const plan = quick(problem, 3000);
    expect(checkPlan(problem, plan), `job ${seed}`).toEqual([]);
    expect(plan.unplaced, `job ${seed}`).toEqual([]);
  }
});

test("what cloth cannot take is not waited for", () => {
  const problem = cutUp(2);
  const double = { ...problem, pieces: problem.pieces.map((piece) => ({ ...piece, count: 2 })) };
  const plan = quick(double, 3000);
  expect(checkPlan(double, plan)).toEqual([]);
  expect(plan.unplaced.length).toBeGreaterThan(0);
  expect(plan.evaluations).toBeLessThan(150_000);
});
