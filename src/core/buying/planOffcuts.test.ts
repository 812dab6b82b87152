import { expect, test } from "vitest";
import { sampleMaterial } from "../../../tests/tools/sampleMaterial.ts";
import { rectangleRing, solid } from "../geometry/ring.ts";
import type { LayPlan, LayProblem } from "../lay/problem/layProblem.ts";
import { planOffcuts } from "./planOffcuts.ts";
import { purchaseOf } from "./purchase.ts";

const RULES = { currency: "EUR", tax: undefined } as const;
const roll = { kind: "roll", id: "roll", width: 1000, length: 1000, flaws: [] } as const;
const problem: LayProblem = {
  materialId: "cloth",
  pieces: [
    {
      id: "tab",
      outline: solid(rectangleRing(0, 0, 400, 1000)),
      count: 1,
      orientations: [{ turnDeg: 0, mirrored: false }],
      freeTurn: false,
    },
  ],
  stocks: [roll],
  gap: 0,
  margin: 0,
  pinned: [],
};
const plan: LayPlan = {
  materialId: "cloth",
  placements: [{ pieceId: "tab", copy: 0, stockId: "roll", x: 0, y: 0, turnDeg: 0, mirrored: false }],
  unplaced: [],
  uses: [{ stockId: "roll", usedLength: 400, bound: 400 }],
  evaluations: 0,
  seed: 1,
};

test("what is left is worked out once for a plan of a material, anew for another", () => {
  const material = sampleMaterial("cloth");
  const asked = (of: LayPlan, by = material) => planOffcuts(by, problem, of, purchaseOf(by, of, RULES));
  const first = asked(plan);
  expect(first[0]?.offcuts.map(({ along, across }) => [along, across])).toEqual([[600, 1000]]);
  expect(asked(plan)).toBe(first);
  expect(asked({ ...plan })).not.toBe(first);
  expect(asked(plan, sampleMaterial("cloth"))).not.toBe(first);
});
