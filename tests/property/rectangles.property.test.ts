import fc from "fast-check";
import { expect, test } from "vitest";
import { rectangleRing, solid } from "../../src/core/geometry/ring.ts";
import { rectangleEngine } from "../../src/core/lay/boxes/rectangles/rectangleEngine.ts";
import { checkPlan } from "../../src/core/lay/check/checkPlan.ts";
import type { LayPiece, LayProblem } from "../../src/core/lay/problem/layProblem.ts";
import type { RegionJob, RegionPlan } from "../../src/core/lay/problem/region.ts";
import { inOneGo, nextTurn } from "../../src/core/lay/search/breath.ts";
import { seedOf } from "../tools/seeded.ts";

const upright = { turnDeg: 0, mirrored: false };
const turned = { turnDeg: 90, mirrored: false };

const pieces = fc
  .array(
    fc.record({
      along: fc.integer({ min: 4, max: 120 }),
      across: fc.integer({ min: 4, max: 60 }),
      count: fc.integer({ min: 1, max: 5 }),
      orientations: fc.constantFrom(
        [upright],
        [turned],
        [upright, turned],
        [upright, { turnDeg: 180, mirrored: false }],
      ),
    }),
    { minLength: 1, maxLength: 6 },
  )
  .map((list): LayPiece[] =>
    list.map(({ along, across, count, orientations }, i) => ({
      id: `piece-${i}`,
      outline: solid(rectangleRing(0, 0, along * 2.54, across * 2.54)),
      count,
      orientations,
      freeTurn: false,
    })),
  );

function lastPlan(job: RegionJob, evaluations: number, seed: number): { plan: RegionPlan; bound: number } {
  const search = rectangleEngine.search(job, { evaluations }, seed);
  let bound = 0;
  for (;;) {
    const step = inOneGo(nextTurn(search));
    if (step.done) return { plan: step.value, bound };
    bound = Math.max(bound, step.value.bound ?? 0);
  }
}

function faults(job: RegionJob, plan: RegionPlan, bound: number | null): unknown[] {
  const problem: LayProblem = {
    materialId: "m",
    pieces: job.pieces,
    stocks: [
      { kind: "roll", id: "roll", width: job.region.width, length: job.region.length, flaws: job.region.flaws },
    ],
    gap: job.gap,
    margin: job.margin,
    pinned: job.pinned.map((pin) => ({ ...pin, stockId: "roll" })),
  };
  return checkPlan(problem, {
    materialId: "m",
    placements: plan.placements.map((placement) => ({ ...placement, stockId: "roll" })),
    unplaced: job.pieces.flatMap((piece, i) =>
      plan.left[i]! > 0
        ? [{ pieceId: piece.id, count: plan.left[i]!, reason: "too-large-for-stock" as const }]
        : [],
    ),
    uses: [{ stockId: "roll", usedLength: plan.length, bound }],
    evaluations: 0,
    seed: 1,
  });
}

test("plans pass the independent checker, hold every piece, and are never shorter than the bound", () => {
  fc.assert(
    fc.property(
      pieces,
      fc.constantFrom(0, 1, 3),
      fc.constantFrom(0, 5),
      fc.integer({ min: 1, max: 9 }),
      (list, gap, margin, seed) => {
        const region = { width: 400, length: null, outline: null, flaws: [] };
        const job: RegionJob = { region, pieces: list, gap, margin, pinned: [], goal: "shortest" };
        const { plan, bound } = lastPlan(job, 3_500_000, seed);
        expect(plan.left.every((count) => count === 0)).toBe(true);
        expect(bound).toBeGreaterThan(0);
        expect(bound).toBeLessThanOrEqual(plan.length + 1e-6);
        expect(faults(job, plan, bound)).toEqual([]);
      },
    ),
    { numRuns: 40, seed: seedOf(11) },
  );
});

test("flaws and pinned pieces are kept clear, and a closed length is kept", () => {
  fc.assert(
    fc.property(pieces, fc.constantFrom(0, 2), fc.constantFrom(null, 700), (list, gap, length) => {
      const flaws = [solid(rectangleRing(150, 100, 60, 80)), solid(rectangleRing(400, 300, 30, 100))];
      const pinned = [{ pieceId: "pinned", copy: 0, x: 20, y: 20, ...upright }];
      const held: LayPiece = {
        id: "pinned",
        outline: solid(rectangleRing(0, 0, 100, 50)),
        count: 2,
        orientations: [upright],
        freeTurn: false,
      };
      const region = { width: 420, length, outline: null, flaws };
      const goal = length === null ? "shortest" : "most";
      const job: RegionJob = { region, pieces: [held, ...list], gap, margin: 0, pinned, goal };
      const { plan } = lastPlan(job, 300_000, 1);
      if (length === null) expect(plan.left.every((count) => count === 0)).toBe(true);
      else expect(plan.length).toBeLessThanOrEqual(length + 1e-6);
      expect(faults(job, plan, null)).toEqual([]);
    }),
    { numRuns: 40, seed: seedOf(12) },
  );
});

test("the same job, seed and evaluations give the same plan", () => {
  const [list] = fc.sample(pieces, { numRuns: 1, seed: seedOf(5) });
  const region = { width: 300, length: null, outline: null, flaws: [] };
  const job: RegionJob = { region, pieces: list!, gap: 0, margin: 0, pinned: [], goal: "shortest" };
  expect(lastPlan(job, 2_000_000, 7)).toEqual(lastPlan(job, 2_000_000, 7));
});
