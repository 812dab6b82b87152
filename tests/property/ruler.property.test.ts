import fc from "fast-check";
import { expect, test } from "vitest";
import {
  type CutBox,
  type CutTree,
  cutCount,
  cutTreeOf,
  offcutsOf,
} from "../../src/core/lay/boxes/cuts/cutTree.ts";
import { piecesOf, tidyTree } from "../../src/core/lay/boxes/cuts/tidyTree.ts";
import { fewStagesEngine, rulerEngine, twoStagesEngine } from "../../src/core/lay/boxes/ruler/rulerEngine.ts";
import { checkPlan } from "../../src/core/lay/check/checkPlan.ts";
import type { LayProblem } from "../../src/core/lay/problem/layProblem.ts";
import type { RegionJob, RegionPlan } from "../../src/core/lay/problem/region.ts";
import { inOneGo, nextTurn } from "../../src/core/lay/search/breath.ts";
import type { Engine } from "../../src/core/lay/search/engine.ts";
import { seedOf } from "../tools/seeded.ts";
import { canBeCut, placedBoxes, rectanglePieces } from "./straightCuts.ts";

const jobs = fc
  .record({
    sizes: fc.array(
      fc.record({
        along: fc.integer({ min: 3, max: 30 }),
        across: fc.integer({ min: 3, max: 20 }),
        count: fc.integer({ min: 1, max: 6 }),
        both: fc.boolean(),
      }),
      { minLength: 1, maxLength: 7 },
    ),
    width: fc.integer({ min: 30, max: 60 }),
    length: fc.option(fc.integer({ min: 20, max: 120 })),
    gap: fc.constantFrom(0, 0, 1.5),
    margin: fc.constantFrom(0, 4),
  })
  .map(({ sizes, width, length, gap, margin }): RegionJob => {
    const region = { width, length, outline: null, flaws: [] };
    return {
      region,
      pieces: rectanglePieces(sizes),
      gap,
      margin,
      pinned: [],
      goal: length === null ? "shortest" : "most",
    };
  });

function laid(engine: Engine, job: RegionJob, evaluations: number): { plan: RegionPlan; bound: number } {
  const search = engine.search(job, { evaluations }, 3);
  let bound = 0;
  for (;;) {
    const { done, value } = inOneGo(nextTurn(search));
    if (done) return { plan: value, bound };
    bound = value.bound ?? bound;
  }
}

const boxesOf = (job: RegionJob, plan: RegionPlan): CutBox[] => placedBoxes(job.pieces, plan.placements);

function expectValid(job: RegionJob, plan: RegionPlan): void {
  const { region, pieces, gap, margin, pinned } = job;
  const stock = { kind: "roll" as const, id: "roll", width: region.width, length: region.length, flaws: [] };
  const problem: LayProblem = { materialId: "canvas", pieces, stocks: [stock], gap, margin, pinned: [] };
  const placements = plan.placements.map((placement) => ({ ...placement, stockId: "roll" }));
  const unplaced = pieces.flatMap(({ id }, i) =>
    plan.left[i]! > 0 ? [{ pieceId: id, count: plan.left[i]!, reason: "stock-used-up" as const }] : [],
  );
  const uses = [{ stockId: "roll", usedLength: plan.length, bound: null }];
  expect(pinned).toEqual([]);
  expect(checkPlan(problem, { materialId: "canvas", placements, unplaced, uses, evaluations: 0, seed: 3 })).toEqual(
    [],
  );
}

function expectStages(most: number, tree: CutTree, stage: number): void {
  if (tree.kind !== "parts") return;
  expect(tree.direction).toBe(stage % 2 === 0 ? "crosscut" : "rip");
  // After the last stage only a trim is left: one piece and what falls off.
  if (stage === most) expect(tree.parts.map((part) => part.kind)).toEqual(["piece", "offcut"]);
  expect(stage).toBeLessThanOrEqual(most);
  for (const part of tree.parts) expectStages(most, part, stage + 1);
}

test("ruler plans are valid, can be cut edge to edge, and keep their bound", () => {
  fc.assert(
    fc.property(jobs, (job) => {
      const { plan, bound } = laid(rulerEngine, job, 15_000);
      expectValid(job, plan);
      expect(canBeCut(boxesOf(job, plan))).toBe(true);
      if (job.goal !== "shortest") return;
      expect(plan.left.every((count) => count === 0)).toBe(true);
      expect(bound).toBeLessThanOrEqual(plan.length + 1e-6);
      expect(laid(rulerEngine, job, 15_000).plan).toEqual(plan);
    }),
    { numRuns: 40, seed: seedOf(11) },
  );
});

test.each([
  ["three", "crosscut, rip, crosscut", 3, fewStagesEngine],
  ["two", "crosscut, rip", 2, twoStagesEngine],
] as const)("plans in %s stages: %s, and a trim", (_, _cuts, stages, engine) => {
  fc.assert(
    fc.property(jobs, (anyJob) => {
      const job: RegionJob = {
        ...anyJob,
        region: { ...anyJob.region, length: null },
        goal: "shortest",
        gap: 0,
        margin: 0,
      };
      const { plan } = laid(engine, job, 15_000);
      expectValid(job, plan);
      const tree = cutTreeOf({ x: 0, y: 0, dx: plan.length, dy: job.region.width }, boxesOf(job, plan), 1e-6);
      if (tree === null) throw new Error("cannot be cut");
      // A single slab needs no crosscut, so the first cut may be a rip.
      expectStages(stages, tree, tree.kind === "parts" && tree.direction === "rip" ? 1 : 0);
    }),
    { numRuns: 30, seed: seedOf(12) },
  );
});

test("a tree holds every piece once, its leaves fill the box, and tidying keeps pieces, cuts' sum and area", () => {
  fc.assert(
    fc.property(jobs, (anyJob) => {
      const job: RegionJob = { ...anyJob, region: { ...anyJob.region, length: null }, goal: "shortest" };
      const { plan } = laid(rulerEngine, job, 4_000);
      const boxes = boxesOf(job, plan);
      const box = { x: 0, y: 0, dx: plan.length, dy: job.region.width };
      const tree = cutTreeOf(box, boxes, 1e-6);
      if (tree === null) throw new Error("cannot be cut");
      const tidy = tidyTree(tree, 1e-6);
      for (const one of [tree, tidy]) {
        const pieces = piecesOf(one);
        expect([...pieces.keys()].sort((a, b) => a - b)).toEqual(boxes.map((_, i) => i));
        for (const [i, { dx, dy }] of pieces) {
          expect(Math.abs(dx - boxes[i]!.dx) + Math.abs(dy - boxes[i]!.dy)).toBeLessThan(1e-5);
        }
        const area = [...pieces.values(), ...offcutsOf(one)].reduce((sum, { dx, dy }) => sum + dx * dy, 0);
        expect(area).toBeCloseTo(box.dx * box.dy, 3);
      }
      expect(cutCount(tidy)).toBeLessThanOrEqual(cutCount(tree));
      expect(canBeCut([...piecesOf(tidy).values()])).toBe(true);
    }),
    { numRuns: 40, seed: seedOf(13) },
  );
});

test("a pinwheel cannot be cut", () => {
  const pinwheel = [
    { x: 0, y: 0, dx: 2, dy: 1 },
    { x: 2, y: 0, dx: 1, dy: 2 },
    { x: 1, y: 2, dx: 2, dy: 1 },
    { x: 0, y: 1, dx: 1, dy: 2 },
    { x: 1, y: 1, dx: 1, dy: 1 },
  ];
  expect(canBeCut(pinwheel)).toBe(false);
  expect(cutTreeOf({ x: 0, y: 0, dx: 3, dy: 3 }, pinwheel, 1e-9)).toBeNull();
});
