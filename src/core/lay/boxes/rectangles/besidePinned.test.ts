import { expect, test } from "vitest";
import { checkPlan } from "../../check/checkPlan.ts";
import type { LayProblem } from "../../problem/layProblem.ts";
import { arrange } from "../../search/arrange/arrange.ts";
import { inOneGo } from "../../search/breath.ts";
import { besidePinnedEngine } from "./besidePinned.ts";

const rectangle = (id: string, along: number, across: number, count: number) => ({
  ...{ id, count, freeTurn: false, orientations: [{ turnDeg: 0, mirrored: false }] },
  outline: { outer: Float64Array.of(0, 0, along, 0, along, across, 0, across), holes: [] },
});

test("pieces go round and over what is pinned, where each ends soonest", () => {
  // By hand: two of 40 × 40 over a pinned 60 × 20 reach 80, two of 30 × 30 on one another follow: 110.
  const problem: LayProblem = {
    materialId: "cloth",
    pieces: [rectangle("pinned", 60, 20, 1), rectangle("small", 30, 30, 2), rectangle("large", 40, 40, 2)],
    stocks: [{ kind: "roll", id: "roll", width: 70, length: null, squaring: 0, flaws: [] } as never],
    gap: 0,
    margin: 0,
    leastStrip: 0,
    pinned: [{ pieceId: "pinned", copy: 0, stockId: "roll", x: 0, y: 0, turnDeg: 0, mirrored: false }],
  };
  const plan = inOneGo(arrange(problem, () => [besidePinnedEngine], { evaluations: 1e6 }, 1));
  expect(checkPlan(problem, plan)).toEqual([]);
  expect(plan.unplaced).toEqual([]);
  expect(plan.uses[0]!.usedLength).toBeLessThanOrEqual(110);
});
