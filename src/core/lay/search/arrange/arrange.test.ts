import { expect, test } from "vitest";
import { rectangleRing, solid } from "../../../geometry/ring.ts";
import { checkPlan } from "../../check/checkPlan.ts";
import { chooseEngines } from "../../engines/chooseEngines.ts";
import type { LayPiece, LayPlan, LayProblem, Stock } from "../../problem/layProblem.ts";
import { BREATH } from "../breath.ts";
import { isBetterPlan } from "../comparePlans.ts";
import type { Engine } from "../engine.ts";
import { arrange, isSettled } from "./arrange.ts";

const lengthwise = [
  { turnDeg: 0, mirrored: false },
  { turnDeg: 180, mirrored: false },
];
const strip = (id: string, along: number, across: number, count: number): LayPiece => ({
  id,
  outline: solid(rectangleRing(0, 0, along, across)),
  count,
  orientations: lengthwise,
  freeTurn: false,
});
const disc = (id: string, radius: number, count: number): LayPiece => {
  const ring = Float64Array.from({ length: 48 }, (_, i) => {
    const angle = (Math.PI * (i >> 1)) / 12;
    return radius * (i % 2 === 0 ? Math.cos(angle) : Math.sin(angle));
  });
  return { id, outline: solid(ring), count, orientations: lengthwise, freeTurn: false };
};
const roll = (id: string, width: number, length: number | null): Stock => ({
  kind: "roll",
  id,
  width,
  length,
  flaws: [],
});
const problemOf = (pieces: LayPiece[], stocks: Stock[], more: Partial<LayProblem> = {}): LayProblem => {
  return { materialId: "canvas", pieces, stocks, gap: 0, margin: 0, pinned: [], ...more };
};

function laid(problem: LayProblem, evaluations: number, seed = 1): LayPlan {
  const search = arrange(problem, (job) => chooseEngines(job, "free"), { evaluations }, seed);
  for (let turn = search.next(); ; turn = search.next()) if (turn.done) return turn.value;
}

test("leftovers are filled before the open roll is touched", () => {
  const remnant: Stock = {
    kind: "remnant",
    id: "leftover",
    outline: solid(rectangleRing(100, 50, 400, 100)),
    flaws: [],
  };
  const problem = problemOf([strip("strap", 400, 50, 5)], [remnant, roll("bolt", 100, null)]);
  const plan = laid(problem, 1_000_000);
  expect(checkPlan(problem, plan)).toEqual([]);
  expect(plan.uses).toEqual([
    { stockId: "leftover", usedLength: 400, bound: null },
    { stockId: "bolt", usedLength: 800, bound: 800 },
  ]);
  expect(plan.unplaced).toEqual([]);
});

test("a piece that only the first leftover has room for is not left out because others fill it better", () => {
  // Two long ones fill the first to the last millimetre; the second is too narrow for the wide ones.
  const pieces = [strip("wide", 30, 100, 3), strip("long", 100, 55, 2)];
  const problem = problemOf(pieces, [roll("first", 110, 100), roll("second", 55, 200)]);
  const plan = laid(problem, 1_000_000);
  expect(checkPlan(problem, plan)).toEqual([]);
  expect(plan.unplaced).toEqual([]);
  const onSecond = plan.placements.filter(({ stockId }) => stockId === "second");
  expect(onSecond.map(({ pieceId }) => pieceId)).toEqual(["long", "long"]);
});

test("an open roll named first is still used last", () => {
  const problem = problemOf([strip("strap", 400, 50, 2)], [roll("bolt", 100, null), roll("end", 100, 500)]);
  const plan = laid(problem, 300_000);
  expect(plan.uses.map((use) => use.usedLength)).toEqual([0, 400]);
});

test("pieces that cannot be laid are left out with the reason", () => {
  const pieces = [strip("fits", 300, 50, 3), strip("wide", 100, 120, 2), strip("long", 900, 20, 1)];
  const plan = laid(problemOf(pieces, [roll("end", 100, 500)]), 300_000);
  expect(plan.unplaced).toEqual([
    { pieceId: "fits", count: 1, reason: "stock-used-up" },
    { pieceId: "wide", count: 2, reason: "too-long-for-width" },
    { pieceId: "long", count: 1, reason: "too-large-for-stock" },
  ]);
  expect(checkPlan(problemOf(pieces, [roll("end", 100, 500)]), plan)).toEqual([]);
  expect(laid(problemOf(pieces, []), 1000).unplaced.map(({ reason }) => reason)).toEqual(Array(3).fill("no-stock"));
});

test("pinned copies stay exactly where they were put", () => {
  const pinned = [
    { pieceId: "strap", copy: 2, stockId: "bolt", x: 10.25, y: 3.125, turnDeg: 0, mirrored: false },
    { pieceId: "base", copy: 0, stockId: "bolt", x: 500, y: 60, turnDeg: 180, mirrored: false },
  ];
  const pieces = [strip("strap", 200, 30, 4), disc("base", 40, 2)];
  const problem = problemOf(pieces, [roll("bolt", 150, null)], { pinned, gap: 2, margin: 3 });
  const plan = laid(problem, 400_000);
  expect(checkPlan(problem, plan)).toEqual([]);
  for (const pin of pinned) expect(plan.placements).toContainEqual(pin);
});

test("a mixed job is laid whole, and the same arguments give the same plan", () => {
  const pieces = [strip("strap", 500, 40, 6), disc("base", 60, 4), strip("side", 150, 90, 4)];
  const problem = problemOf(pieces, [roll("bolt", 300, null)], { gap: 1 });
  const plan = laid(problem, 600_000, 5);
  expect(checkPlan(problem, plan)).toEqual([]);
  expect(plan.unplaced).toEqual([]);
  expect(laid(problem, 600_000, 5)).toEqual(plan);
});

test("nothing to lay is a plan too", () => {
  expect(laid(problemOf([], [roll("bolt", 100, null)]), 100)).toMatchObject({ placements: [], unplaced: [] });
  expect(laid(problemOf([], []), 100)).toMatchObject({ placements: [], unplaced: [], uses: [] });
});

/** The engine with a breath before every step. */
function breathing(engine: Engine): Engine {
  return {
    ...engine,
    *search(job, budget, seed) {
      const search = engine.search(job, budget, seed);
      for (let turn = search.next(); ; ) {
        yield BREATH;
        if (turn.done) return turn.value;
        turn = search.next(yield turn.value);
      }
    },
  };
}

test("breaths inside the turns of a race change no plan", () => {
  const pieces = [strip("strap", 400, 40, 4), disc("base", 90, 5)];
  for (const stocks of [[roll("bolt", 500, null)], [roll("rest", 300, 500), roll("bolt", 500, null)]]) {
    const problem = problemOf(pieces, stocks);
    const search = arrange(
      problem,
      (job) => chooseEngines(job, "free").map(breathing),
      { evaluations: 300_000 },
      1,
    );
    let breaths = 0;
    let turn = search.next();
    for (; !turn.done; turn = search.next()) if (turn.value === BREATH) breaths++;
    expect(breaths).toBeGreaterThan(20);
    expect(turn.value).toEqual(laid(problem, 300_000));
  }
});

test("a plan on a limited roll is never settled: a shorter one may be found, and is taken", () => {
  const problem = problemOf([strip("strap", 450, 80, 5)], [roll("bolt", 500, 1000)]);
  const shorter = laid(problem, 100_000);
  expect(shorter.uses[0]!.usedLength).toBe(450);
  const placements = Array.from({ length: 5 }, (_, copy) => {
    const [x, y] = copy < 4 ? [0, 80 * copy] : [325, 320];
    return { pieceId: "strap", copy, stockId: "bolt", x, y, turnDeg: 0, mirrored: false };
  });
  const longer: LayPlan = { ...shorter, placements, uses: [{ stockId: "bolt", usedLength: 775, bound: null }] };
  expect(checkPlan(problem, longer)).toEqual([]);
  expect(isSettled(problem, longer)).toBe(false);
  expect(isBetterPlan(problem, shorter, longer)).toBe(true);
  expect(isBetterPlan(problem, longer, shorter)).toBe(false);
});

test("no length is told as below its bound, not even by the rounding of a grid", () => {
  // The row of tall outlines is a bound made on the grid, where the longer one ends a few millionths of a mm later.
  const [p, q] = [265.92459634254703, 118.17265015348602];
  const outlines = [
    Float64Array.of(0, 1.1102230246251565e-16, p, 0, 200.1461532287746, 169, 65.77844311377245, 169),
    Float64Array.of(0, 0, q, 0, 103.0615390423749, 136, 15.11111111111111, 136),
  ];
  const pieces = outlines.map((ring, i): LayPiece => {
    return { id: `p${i}`, outline: solid(ring), count: 1, orientations: lengthwise, freeTurn: false };
  });
  const plan = laid(problemOf(pieces, [roll("bolt", 358, null)], { margin: 3 }), 1000);
  const [{ usedLength, bound }] = plan.uses as [LayPlan["uses"][number]];
  expect(bound).toBeCloseTo(p + 6, 5);
  expect(usedLength).toBeGreaterThanOrEqual(bound!);
});

test("a search is as long as it was asked for, or as its job is large", () => {
  const few = problemOf([disc("d", 31, 3), strip("s", 90, 20, 2)], [roll("bolt", 100, 400)]);
  expect(laid(few, 3_000).evaluations).toBeLessThan(30_000);
  expect(laid(few, 60_000).evaluations).toBeGreaterThanOrEqual(60_000);
});

test("bags in bands of which no piece fits the cloth come to an end", () => {
  const skin: Stock = { kind: "remnant", id: "skin", outline: solid(rectangleRing(0, 0, 170, 160)), flaws: [] };
  const problem = problemOf([strip("panel", 226, 116, 1)], [skin], { shade: { band: 1000, bags: 1 } });
  const search = arrange(problem, (job) => chooseEngines(job, "free"), { evaluations: 1000 }, 1);
  const turns = Array.from({ length: 1000 }, () => search.next());
  expect(turns.at(-1)!.done).toBe(true);
  expect(turns.find(({ done }) => done)!.value).toMatchObject({ placements: [], unplaced: [{ count: 1 }] });
});

test("round pieces laid by hand every plan that is told keeps bags within their bands, not only the last", () => {
  const pieces = [strip("body", 90, 60, 3), strip("long", 200, 30, 3), disc("base", 20, 3)];
  const pinned = [{ pieceId: "body", copy: 0, stockId: "bolt", x: 300, y: 0, turnDeg: 0, mirrored: false }];
  const problem = problemOf(pieces, [roll("bolt", 100, null)], { pinned, shade: { band: 300, bags: 3 } });
  const told: LayPlan[] = [];
  const search = arrange(problem, (job) => chooseEngines(job, "free"), { evaluations: 5000 }, 1);
  for (let step = search.next(); ; step = search.next()) {
    if (step.done) told.push(step.value);
    else if (step.value !== BREATH && step.value.plan !== null) told.push(step.value.plan);
    if (step.done) break;
  }
  expect(told.length).toBeGreaterThan(1);
  for (const plan of told) expect(checkPlan(problem, plan)).toEqual([]);
});

test("of closed cloth that takes nothing beside what is pinned on it a plan of that alone is told", () => {
  const roll: Stock = { kind: "roll", id: "roll", width: 100, length: 300, flaws: [] };
  const pin = { pieceId: "p", copy: 0, stockId: "roll", x: 20, y: 10, turnDeg: 0, mirrored: false };
  const problem = problemOf([strip("p", 260, 60, 2)], [roll], { margin: 0 });
  const search = arrange(
    { ...problem, pinned: [pin] },
    (job) => chooseEngines(job, "free"),
    { evaluations: Infinity },
    1,
  );
  let plan: LayPlan | null = null;
  for (let spent = 0; plan === null && spent < 1_000_000; ) {
    const step = search.next().value;
    if (step === BREATH) continue;
    plan = "plan" in step ? step.plan : step;
    spent = step.evaluations;
  }
  expect(plan?.placements).toEqual([pin]);
  expect(plan?.unplaced).toMatchObject([{ pieceId: "p", count: 1 }]);
  expect(checkPlan({ ...problem, pinned: [pin] }, plan!)).toEqual([]);
});

test("of closed cloth whose outline takes no piece a plan is told all the same", () => {
  const shape = Float64Array.of(0, 0, 89, 0, 61, 141, 28, 141);
  const remnant: Stock = { kind: "remnant", id: "left", outline: solid(shape), flaws: [] };
  const problem = problemOf([strip("p", 56, 85, 2)], [remnant], { margin: 3 });
  const search = arrange(problem, (job) => chooseEngines(job, "free"), { evaluations: Infinity }, 1);
  const steps = Array.from({ length: 400 }, () => search.next().value);
  const plans = steps.flatMap((step) => (step === BREATH || !("plan" in step) || !step.plan ? [] : [step.plan]));
  expect(plans.map(({ unplaced }) => unplaced[0]!.count)).toEqual([2]);
});
