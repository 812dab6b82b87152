import { expect, test } from "vitest";
import { type Polygon, rectangleRing, reversedRing, solid } from "../../geometry/ring.ts";
import { checkPlan } from "../check/checkPlan.ts";
import type { LayPiece, Placement } from "../problem/layProblem.ts";
import type { RegionJob, RegionPlan } from "../problem/region.ts";
import { inOneGo, nextTurn } from "../search/breath.ts";
import type { SearchStep } from "../search/engine.ts";
import { outlineEngine } from "./outlineEngine.ts";

const HALF_TURNS = [
  { turnDeg: 0, mirrored: false },
  { turnDeg: 180, mirrored: false },
];

function piece(id: string, ring: readonly number[], count: number, more: Partial<LayPiece> = {}): LayPiece {
  const outline = solid(Float64Array.from(ring));
  return { id, outline, count, orientations: HALF_TURNS, freeTurn: false, ...more };
}

const flap = piece("flap", [0, 0, 90, 0, 90, 40, 70, 60, 20, 60, 0, 40], 5);
const gusset = piece("gusset", [0, 0, 120, 0, 120, 30, 75, 20, 45, 20, 0, 30], 4);
const tab = piece("tab", [0, 0, 40, 0, 40, 25, 0, 25], 6);

function region(
  width: number,
  length: number | null,
  outline: Polygon | null,
  flaws: Polygon[],
): RegionJob["region"] {
  return { width, length, outline, flaws };
}

const base: RegionJob = {
  region: region(300, null, null, []),
  pieces: [flap, gusset, tab],
  gap: 0,
  margin: 0,
  pinned: [],
  goal: "shortest",
};

function solve(job: RegionJob, evaluations: number, seed = 1): RegionPlan {
  const search = outlineEngine.search(job, { evaluations }, seed);
  for (;;) {
    const step = search.next();
    if (step.done) return step.value;
  }
}

/** Judged by the independent checker, as one stock of a lay problem. */
function findings(job: RegionJob, plan: RegionPlan): unknown[] {
  const { width, length, outline, flaws } = job.region;
  const stock =
    outline === null
      ? ({ kind: "roll", id: "s", width, length, flaws } as const)
      : ({ kind: "remnant", id: "s", outline, flaws } as const);
  const problem = {
    materialId: "m",
    pieces: job.pieces,
    stocks: [stock],
    gap: job.gap,
    margin: job.margin,
    pinned: job.pinned.map((pin) => ({ ...pin, stockId: "s" })),
  };
  const unplaced = plan.left.flatMap((count, i) =>
    count > 0 ? [{ pieceId: job.pieces[i]!.id, count, reason: "stock-used-up" as const }] : [],
  );
  return checkPlan(problem, {
    materialId: "m",
    placements: plan.placements.map((place) => ({ ...place, stockId: "s" })),
    unplaced,
    uses: [{ stockId: "s", usedLength: plan.length, bound: null }],
    evaluations: 0,
    seed: 1,
  });
}

test("an open roll: everything laid, within gap and margin", () => {
  for (const [gap, margin] of [
    [0, 0],
    [3, 0],
    [3, 10],
    [0, 5],
  ] as const) {
    const job = { ...base, gap, margin };
    const plan = solve(job, 120_000);
    expect(plan.left).toEqual([0, 0, 0]);
    expect(findings(job, plan)).toEqual([]);
  }
});

test("the same seed and budget give the same plan; a longer search is never worse", () => {
  const first = solve(base, 100_000, 7);
  expect(solve(base, 100_000, 7)).toEqual(first);
  expect(solve(base, 400_000, 7).length).toBeLessThanOrEqual(first.length);
});

test("flaws on a roll are left out", () => {
  const flaws = [solid(rectangleRing(60, 100, 50, 80)), solid(Float64Array.of(150, 0, 210, 0, 180, 60))];
  const job = { ...base, region: region(300, null, null, flaws), gap: 2, margin: 4 };
  const plan = solve(job, 150_000);
  expect(plan.left).toEqual([0, 0, 0]);
  expect(findings(job, plan)).toEqual([]);
});

test("a concave remnant with a hole takes what it can, and pinned pieces stay", () => {
  const outline: Polygon = {
    outer: Float64Array.of(10, 0, 420, 20, 400, 180, 230, 200, 220, 330, 0, 300),
    holes: [reversedRing(rectangleRing(90, 90, 40, 30))],
  };
  const pin: Placement = { pieceId: "tab", copy: 2, turnDeg: 0, mirrored: false, x: 250, y: 60 };
  for (const [gap, margin] of [
    [0, 0],
    [2, 6],
  ] as const) {
    const job: RegionJob = {
      ...base,
      region: region(330, 420, outline, [solid(rectangleRing(300, 110, 25, 25))]),
      gap,
      margin,
      pinned: [pin],
      goal: "most",
    };
    const plan = solve(job, 300_000);
    expect(findings(job, plan)).toEqual([]);
    expect(plan.placements).toContainEqual(pin);
    expect(plan.placements.length).toBeGreaterThanOrEqual(7);
  }
});

test("pieces that cannot fit are left, the rest is laid", () => {
  const long = piece("long", [0, 0, 500, 0, 500, 20, 0, 20], 1);
  const job = { ...base, region: region(100, 300, null, []), pieces: [long, tab], goal: "most" as const };
  const plan = solve(job, 50_000);
  expect(plan.left).toEqual([1, 0]);
  expect(findings(job, plan)).toEqual([]);
});

test("free turns and mirrored turns keep to the outline", () => {
  const hook = piece("hook", [0, 0, 80, 0, 80, 15, 20, 15, 20, 70, 0, 70], 6, { freeTurn: true });
  const wing = piece("wing", [0, 0, 70, 0, 50, 40, 0, 50], 5, {
    orientations: [...HALF_TURNS, { turnDeg: 0, mirrored: true }, { turnDeg: 180, mirrored: true }],
  });
  const job = { ...base, pieces: [hook, wing], region: region(200, null, null, []) };
  const plan = solve(job, 150_000);
  expect(plan.left).toEqual([0, 0]);
  expect(findings(job, plan)).toEqual([]);
});

test("a panel that may lie a little off the grain fits where its box would not, and never lies further off", () => {
  // A bar 200 × 60 drawn 1.5° off: its box is 65.2 across.
  const [c, s] = [Math.cos(Math.PI / 120), Math.sin(Math.PI / 120)];
  const slope = piece("bar", [0, 0, 200 * c, -200 * s, 200 * c + 60 * s, 60 * c - 200 * s, 60 * s, 60 * c], 4);
  const roll = region(61, null, null, []);
  const stiff = solve({ ...base, pieces: [slope], region: roll }, 5_000);
  expect(stiff.left).toEqual([4]);
  const job = { ...base, pieces: [{ ...slope, tilt: 1.5 }], region: roll };
  const plan = solve(job, 50_000);
  expect(plan.left).toEqual([0]);
  expect(plan.length).toBeCloseTo(800, 3);
  expect(findings(job, plan)).toEqual([]);
  const less = { ...job, pieces: [{ ...slope, tilt: 1.4 }] };
  expect(findings(less, plan)).toContainEqual(expect.objectContaining({ code: "plan-turn-not-allowed" }));
});

test("nothing to lay, or no room at all, is a plan too", () => {
  expect(solve({ ...base, pieces: [] }, 1000).placements).toEqual([]);
  const job = { ...base, region: region(300, 200, solid(rectangleRing(0, 0, 200, 300)), []), margin: 200 };
  expect(solve({ ...job, goal: "most" }, 1000).placements).toEqual([]);
});

test("a better plan from elsewhere is taken up, also when it uses a turn that looks the same", () => {
  const squares = piece("square", [0, 0, 50, 0, 50, 50, 0, 50], 4);
  const job = { ...base, pieces: [squares, flap], region: region(100, null, null, []) };
  const best = solve(job, 200_000);
  const turned = best.placements.map((place) =>
    place.pieceId === "square" && place.turnDeg === 0
      ? { ...place, turnDeg: 180, x: place.x + 50, y: place.y + 50 }
      : place,
  );
  const search = outlineEngine.search(job, { evaluations: 40_000 }, 3);
  for (let told = false; ; ) {
    const step: IteratorResult<SearchStep, RegionPlan> = told
      ? inOneGo(nextTurn(search))
      : inOneGo(nextTurn(search, { ...best, placements: turned }));
    if (step.done) {
      expect(step.value.length).toBeLessThanOrEqual(best.length + 1e-6);
      expect(findings(job, step.value)).toEqual([]);
      return;
    }
    told = step.value.evaluations > 20_000;
  }
});
