import { expect, test } from "vitest";
import { rectangleRing, solid } from "../../geometry/ring.ts";
import { checkPlan } from "../check/checkPlan.ts";
import type { LayPlan, LayProblem } from "../problem/layProblem.ts";
import { arrange } from "../search/arrange/arrange.ts";
import { chooseEngines } from "./chooseEngines.ts";

function laid(problem: LayProblem): LayPlan {
  const search = arrange(problem, (job) => chooseEngines(job, "free"), { evaluations: 400_000 }, 1);
  for (let turn = search.next(); ; turn = search.next()) if (turn.done) return turn.value;
}

const band = {
  id: "band",
  outline: solid(rectangleRing(0, 0, 1000, 20)),
  count: 3,
  orientations: [{ turnDeg: 0, mirrored: false }],
  freeTurn: true,
};
const felt: LayProblem = {
  materialId: "felt",
  pieces: [band],
  stocks: [{ kind: "roll", id: "roll", width: 800, length: null, flaws: [] }],
  gap: 0,
  margin: 0,
  pinned: [],
};

test("bands longer than the roll is wide lie aslant where any turn is allowed, and no bound forbids it", () => {
  const plan = laid(felt);
  expect(checkPlan(felt, plan)).toEqual([]);
  // One band corner to corner: 1000 sin t + 20 cos t = 800 at t = 52.0 degrees, so 1000 cos t + 20 sin t = 631 mm.
  expect(plan.uses[0]!.usedLength).toBeLessThan(800);
  expect(plan.uses[0]!.usedLength).toBeGreaterThan(631);
  expect(plan.uses[0]!.bound).toBeCloseTo((3 * 1000 * 20) / 800, 6);
});

test("the same bands kept square to the roll are proven shortest at their own length", () => {
  const plan = laid({ ...felt, pieces: [{ ...band, freeTurn: false }] });
  expect(plan.uses[0]).toMatchObject({ usedLength: 1000, bound: 1000 });
});
