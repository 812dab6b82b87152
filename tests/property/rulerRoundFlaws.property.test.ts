import fc from "fast-check";
import { expect, test } from "vitest";
import { ringBox } from "../../src/core/geometry/box.ts";
import { type Ring, rectangleRing, solid } from "../../src/core/geometry/ring.ts";
import { rulerCuts } from "../../src/core/lay/alternatives/layFigures.ts";
import { checkPlan } from "../../src/core/lay/check/checkPlan.ts";
import { chooseEngines } from "../../src/core/lay/engines/chooseEngines.ts";
import type { LayPiece, LayPlan, LayProblem, Stock } from "../../src/core/lay/problem/layProblem.ts";
import { arrange } from "../../src/core/lay/search/arrange/arrange.ts";
import { seedOf } from "../tools/seeded.ts";
import { canBeCut, placedBoxes, QUARTER_TURNS, rectanglePieces } from "./straightCuts.ts";

function laid(problem: LayProblem, mode: "ruler" | "few-stages", evaluations: number): LayPlan {
  const search = arrange(problem, (job) => chooseEngines(job, mode), { evaluations }, 1);
  for (let turn = search.next(); ; turn = search.next()) if (turn.done) return turn.value;
}

const pieces = fc
  .array(
    fc.record({
      along: fc.integer({ min: 40, max: 300 }),
      across: fc.integer({ min: 30, max: 150 }),
      count: fc.integer({ min: 1, max: 5 }),
      both: fc.boolean(),
    }),
    { minLength: 1, maxLength: 5 },
  )
  .map(rectanglePieces);
const flaws = fc
  .array(
    fc.record({
      x: fc.integer({ min: 0, max: 700 }),
      y: fc.integer({ min: 0, max: 380 }),
      dx: fc.integer({ min: 1, max: 120 }),
      dy: fc.integer({ min: 1, max: 80 }),
    }),
    { maxLength: 3 },
  )
  .map((list) => list.map(({ x, y, dx, dy }) => solid(rectangleRing(x, y, dx, dy))));

/** An egg-shaped skin with a bite out of one side. */
const skin: Ring = Float64Array.from(
  Array.from({ length: 24 }, (_, i) => {
    const t = (2 * Math.PI * i) / 24;
    const r = i === 6 ? 180 : 300;
    return [450 + 1.5 * r * Math.cos(t), 300 + r * Math.sin(t)];
  }).flat(),
);

const stocks = fc.oneof(
  fc
    .record({ length: fc.constantFrom(null, 900) })
    .map(({ length }): Stock => ({ kind: "roll", id: "roll", width: 450, length, flaws: [] })),
  fc.constant<Stock>({ kind: "remnant", id: "skin", outline: solid(skin), flaws: [] }),
);

const problems = fc
  .record({
    pieces,
    stock: stocks,
    flaws,
    gap: fc.constantFrom(0, 3),
    margin: fc.constantFrom(0, 5),
    pins: fc.boolean(),
  })
  .map(({ pieces: kinds, stock, flaws: marks, gap, margin, pins }): LayProblem => {
    const free = marks.filter(({ outer }) => ringBox(outer).minX > 330 || ringBox(outer).minY > 180);
    const pinned =
      pins && stock.kind === "roll"
        ? [{ pieceId: "p0", copy: 0, stockId: "roll", x: 12, y: 11, turnDeg: 0, mirrored: false }]
        : [];
    return {
      materialId: "m",
      pieces: kinds,
      stocks: [{ ...stock, flaws: pinned.length > 0 ? free : marks }],
      gap,
      margin,
      pinned,
    };
  });

test("round flaws, pins and missing cloth: plans pass the checker and straight cuts part them", () => {
  fc.assert(
    fc.property(problems, fc.constantFrom("ruler" as const, "few-stages" as const), (problem, mode) => {
      const plan = laid(problem, mode, 60_000);
      expect(checkPlan(problem, plan)).toEqual([]);
      expect(canBeCut(placedBoxes(problem.pieces, plan.placements))).toBe(true);
      expect(rulerCuts(problem, plan)).not.toBeNull();
      if (problem.stocks[0]!.kind === "roll" && problem.stocks[0]!.length === null) {
        const narrow = problem.pieces.some(({ outline }) => ringBox(outline.outer).maxY > 440);
        if (!narrow) expect(plan.unplaced).toEqual([]);
      }
    }),
    { numRuns: 25, seed: seedOf(3) },
  );
});

test("a strip beside a flaw is used: straps need no cloth behind a small flaw at the selvedge", () => {
  const strap: LayPiece = {
    id: "strap",
    outline: solid(rectangleRing(0, 0, 600, 100)),
    count: 4,
    orientations: QUARTER_TURNS.slice(0, 1),
    freeTurn: false,
  };
  const flaw = solid(rectangleRing(250, 0, 20, 20));
  const problem: LayProblem = {
    materialId: "m",
    pieces: [strap],
    stocks: [{ kind: "roll", id: "roll", width: 450, length: null, flaws: [flaw] }],
    gap: 0,
    margin: 0,
    pinned: [],
  };
  const plan = laid(problem, "ruler", 200_000);
  expect(checkPlan(problem, plan)).toEqual([]);
  expect(plan.uses[0]!.usedLength).toBe(600);
  const cuts = rulerCuts(problem, plan)![0]!;
  expect(cuts.sequence.steps.filter(({ off }) => off?.kind === "piece").length).toBeGreaterThanOrEqual(3);
});

test("the largest rectangle of a skin is laid first: an inscribed square's worth of pieces fits", () => {
  const square: LayPiece = {
    id: "sq",
    outline: solid(rectangleRing(0, 0, 100, 100)),
    count: 40,
    orientations: QUARTER_TURNS,
    freeTurn: false,
  };
  const problem: LayProblem = {
    materialId: "m",
    pieces: [square],
    stocks: [{ kind: "remnant", id: "skin", outline: solid(skin), flaws: [] }],
    gap: 0,
    margin: 0,
    pinned: [],
  };
  const plan = laid(problem, "ruler", 200_000);
  expect(checkPlan(problem, plan)).toEqual([]);
  expect(canBeCut(placedBoxes(problem.pieces, plan.placements))).toBe(true);
  // An ellipse 900 × 600 with a bite has 0.4 m²; own arithmetic: its inscribed rectangle alone takes 6 × 4 squares.
  expect(plan.placements.length).toBeGreaterThanOrEqual(20);
});
