import { expect, test } from "vitest";
import { rectangleRing, solid } from "../../geometry/ring.ts";
import { checkPlan } from "../check/checkPlan.ts";
import { chooseEngines } from "../engines/chooseEngines.ts";
import type { LayPlan, LayProblem } from "../problem/layProblem.ts";
import { arrange } from "../search/arrange/arrange.ts";
import { BREATH } from "../search/breath.ts";
import { layFigures } from "./layFigures.ts";
import { offcutSearch } from "./offcutSearch.ts";

/** Panels of 200 × 150, 320 × 90 … mm without turns on a roll of 1 m. */
const problem: LayProblem = {
  materialId: "canvas",
  pieces: [
    [200, 150, 6],
    [320, 90, 5],
    [140, 110, 7],
    [260, 240, 3],
    [75, 60, 9],
  ].map(([along, across, count], i) => ({
    id: `p${i}`,
    outline: solid(rectangleRing(0, 0, along!, across!)),
    count: count!,
    orientations: [{ turnDeg: 0, mirrored: false }],
    freeTurn: false,
  })),
  stocks: [{ kind: "roll", id: "bolt", width: 1000, length: null, flaws: [] }],
  gap: 0,
  margin: 0,
  pinned: [],
};

function shortest(): LayPlan {
  const search = arrange(problem, (job) => chooseEngines(job, "free"), { evaluations: 200_000 }, 1);
  for (let step = search.next(); ; step = search.next()) if (step.done) return step.value;
}

/** Plans that a search for offcuts finds from the shortest plan, the gain going up with each. */
function found(of: LayProblem, plan: LayPlan): LayPlan[] {
  const { length } = layFigures(of, plan);
  const gainOf = (one: LayPlan): number => {
    const { offcut, length: used } = layFigures(of, one);
    return (offcut === null ? 0 : offcut.box.dx * offcut.box.dy) - (used - length) * 1000;
  };
  let best = plan;
  const plans: LayPlan[] = [];
  for (const step of offcutSearch(of, () => ({ plan: best, length, gain: gainOf(best) }), 4_000_000, 1)) {
    if (step === BREATH || step.plan === null) continue;
    expect(gainOf(step.plan)).toBeGreaterThan(gainOf(best) - 1e-3);
    best = step.plan;
    plans.push(step.plan);
  }
  return plans;
}

test("a larger rectangle is kept free at the end, with the same pieces and the same bound", () => {
  const start = shortest();
  const plans = found(problem, start);
  expect(plans.length).toBeGreaterThan(0);
  for (const plan of plans) {
    expect(checkPlan(problem, plan)).toEqual([]);
    expect(plan.uses[0]!.bound).toBe(start.uses[0]!.bound);
  }
  expect(found(problem, start)).toEqual(plans);
});

test("cloth with pinned pieces is left as it is", () => {
  const start = shortest();
  expect(found({ ...problem, pinned: [start.placements[0]!] }, start)).toEqual([]);
});
