import { expect, test } from "vitest";
import { rectangleRing, solid } from "../../../geometry/ring.ts";
import { checkPlan } from "../../check/checkPlan.ts";
import type { LayPiece, LayProblem } from "../../problem/layProblem.ts";
import type { RegionJob, RegionPlan } from "../../problem/region.ts";
import { inOneGo, nextTurn } from "../../search/breath.ts";
import { seededRng } from "../../search/rng.ts";
import { oneStrapEngine } from "./oneStrapEngine.ts";

function strapJobOf(along: number, across: number, count: number, width: number, length: number | null): RegionJob {
  const piece: LayPiece = {
    id: "strap",
    outline: solid(rectangleRing(0, 0, along, across)),
    count,
    orientations: [0, 90].map((turnDeg) => ({ turnDeg, mirrored: false })),
    freeTurn: false,
  };
  const goal = length === null ? "shortest" : "most";
  return {
    region: { width, length, outline: null, flaws: [] },
    pieces: [piece],
    gap: 1,
    margin: 2,
    pinned: [],
    goal,
  };
}

function laid(job: RegionJob): { plan: RegionPlan; bound: number | null } {
  const search = oneStrapEngine.search(job, { evaluations: Infinity }, 1);
  let bound: number | null = null;
  for (;;) {
    const { done, value } = inOneGo(nextTurn(search));
    if (done) return { plan: value, bound };
    bound = value.bound ?? bound;
  }
}

test("plans of one strap are valid, as many as fit or as short as told, and no shorter than their bound", () => {
  const rng = seededRng(8);
  for (let round = 0; round < 25; round++) {
    const across = 20 + rng.below(60);
    const along = across + 10 + rng.below(300);
    const width = along + 10 + rng.below(400);
    const length = round % 3 === 0 ? 300 + rng.below(500) : null;
    const job = strapJobOf(along, across, 1 + rng.below(30), width, length);
    expect(oneStrapEngine.accepts(job)).toBe(true);
    const { plan, bound } = laid(job);
    const { pieces, gap, margin } = job;
    const stock = { kind: "roll" as const, id: "roll", width, length, flaws: [] };
    const problem: LayProblem = { materialId: "m", pieces, stocks: [stock], gap, margin, pinned: [] };
    const left = plan.left[0]!;
    const findings = checkPlan(problem, {
      materialId: "m",
      placements: plan.placements.map((placement) => ({ ...placement, stockId: "roll" })),
      unplaced: left > 0 ? [{ pieceId: "strap", count: left, reason: "stock-used-up" }] : [],
      uses: [{ stockId: "roll", usedLength: plan.length, bound }],
      evaluations: 0,
      seed: 1,
    });
    expect(findings).toEqual([]);
    if (length === null) {
      expect(left).toBe(0);
      expect(bound!).toBeLessThanOrEqual(plan.length + 1e-6);
    }
  }
});

test("two kinds, or one that may lie one way only, are left to other engines", () => {
  const job = strapJobOf(300, 40, 4, 500, null);
  const [piece] = job.pieces as [LayPiece];
  const fixed = { ...piece, orientations: piece.orientations.slice(0, 1) };
  expect(oneStrapEngine.accepts({ ...job, pieces: [fixed] })).toBe(false);
  expect(oneStrapEngine.accepts({ ...job, pieces: [piece, { ...fixed, id: "other" }] })).toBe(false);
});
