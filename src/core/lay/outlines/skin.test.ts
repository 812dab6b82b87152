import { expect, test } from "vitest";
import { ringBox } from "../../geometry/box.ts";
import { poseRing } from "../../geometry/pose.ts";
import { type Polygon, type Ring, rectangleRing, solid } from "../../geometry/ring.ts";
import { checkPlan } from "../check/checkPlan.ts";
import type { LayPiece, LayProblem, Placement } from "../problem/layProblem.ts";
import type { RegionJob, RegionPlan } from "../problem/region.ts";
import { BREATH } from "../search/breath.ts";
import { seededRng } from "../search/rng.ts";
import { outlineEngine } from "./outlineEngine.ts";

/** Two metres long, so that the search's grid is coarse against a tab; it starts at x = 0 at a slant. */
const SKIN = solid(
  Float64Array.of(
    0,
    500,
    250,
    120,
    700,
    200,
    1300,
    60,
    1900,
    300,
    2000,
    700,
    1700,
    1200,
    1000,
    1050,
    300,
    1250,
    60,
    900,
  ),
);
const SCAR = solid(Float64Array.of(900, 600, 990, 580, 1040, 650, 980, 720, 910, 690));

function piece(id: string, count: number, outline: Ring, more: Partial<LayPiece> = {}): LayPiece {
  return {
    id,
    outline: solid(outline),
    count,
    orientations: [{ turnDeg: 0, mirrored: false }],
    freeTurn: false,
    ...more,
  };
}

const PANEL = Float64Array.of(0, 0, 320, 0, 320, 180, 200, 260, 0, 200);
const TAB = Float64Array.of(0, 0, 14, 0, 14, 9, 4, 9);

function solve(job: RegionJob, evaluations: number): RegionPlan {
  const search = outlineEngine.search(job, { evaluations }, 5);
  for (;;) {
    const step = search.next();
    if (step.done) return step.value;
  }
}

/** Far side of what is laid plus the margin; the search's own length counts the outlines as it grew them. */
function usedLength(job: RegionJob, plan: RegionPlan): number {
  const ends = plan.placements.map((place) => {
    const { outer } = job.pieces.find(({ id }) => id === place.pieceId)!.outline;
    return ringBox(poseRing(outer, place)).maxX;
  });
  return Math.max(...ends) + job.margin;
}

function findings(job: RegionJob, plan: RegionPlan): unknown[] {
  const problem: LayProblem = {
    materialId: "leather",
    pieces: job.pieces,
    stocks: [{ kind: "remnant", id: "skin", outline: job.region.outline!, flaws: job.region.flaws }],
    gap: job.gap,
    margin: job.margin,
    pinned: job.pinned.map((pin) => ({ ...pin, stockId: "skin" })),
  };
  const unplaced = plan.left.flatMap((count, i) =>
    count > 0 ? [{ pieceId: job.pieces[i]!.id, count, reason: "stock-used-up" as const }] : [],
  );
  return checkPlan(problem, {
    materialId: "leather",
    placements: plan.placements.map((place) => ({ ...place, stockId: "skin" })),
    unplaced,
    uses: [{ stockId: "skin", usedLength: usedLength(job, plan), bound: null }],
    evaluations: 0,
    seed: 5,
  });
}

/** 13 cm long; four corners jut in, and a slit of less than a gap is cut into it. */
const JUTTING: Polygon = {
  outer: Float64Array.of(0, 0, 70, 6, 130, 0, 120, 50, 133, 90, 60, 82, 8, 99, 16, 40),
  holes: [Float64Array.of(40, 30, 40.5, 70, 41, 30)],
};

function skinJob(pieces: LayPiece[], gap: number, margin: number, pinned: Placement[] = []): RegionJob {
  const region = { width: 1300, length: 2000, outline: SKIN, flaws: [SCAR] };
  return { region, pieces, gap, margin, pinned, goal: "most" };
}

test.each([
  [0, 0],
  [2, 0],
  [0, 8],
  [3, 5],
])("small tabs among large panels on a skin pass the checker (gap %d, margin %d)", (gap, margin) => {
  const job = skinJob([piece("panel", 34, PANEL), piece("tab", 24, TAB)], gap, margin);
  const plan = solve(job, 200_000);
  expect(findings(job, plan)).toEqual([]);
  expect(plan.left[1]).toBe(0);
  expect(plan.left[0]).toBeLessThan(24);
});

test.each([
  [2, 0],
  [2, 0.5],
  [2, 1],
])("what juts into a small skin is kept clear up to its tip (gap %d, margin %d)", (gap, margin) => {
  const region = { width: 100, length: 134, outline: JUTTING, flaws: [] };
  const quarters = [0, 90, 180, 270].map((turnDeg) => ({ turnDeg, mirrored: false }));
  const tab = (id: string, count: number, along: number, across: number): LayPiece =>
    piece(id, count, rectangleRing(0, 0, along, across), { orientations: quarters });
  const pieces = [tab("body", 6, 30, 20), tab("tab", 12, 10, 20), tab("square", 12, 10, 10), tab("dot", 20, 1, 1)];
  const job: RegionJob = { region, pieces, gap, margin, pinned: [], goal: "most" };
  const plan = solve(job, 300_000);
  expect(findings(job, plan)).toEqual([]);
  expect(plan.left[3]).toBe(0);
  expect(plan.placements.length).toBeGreaterThan(35);
});

test("any turn, mirror images and a pinned piece on a skin pass the checker", () => {
  const pinned: Placement[] = [{ pieceId: "panel", copy: 3, turnDeg: 37, mirrored: false, x: 1300, y: 500 }];
  const faces = [false, true].map((mirrored) => ({ turnDeg: 0, mirrored }));
  const job = skinJob(
    [piece("panel", 20, PANEL, { freeTurn: true }), piece("wing", 14, PANEL, { orientations: faces })],
    2,
    4,
    pinned,
  );
  const plan = solve(job, 200_000);
  expect(findings(job, plan)).toEqual([]);
  expect(plan.placements).toContainEqual(pinned[0]);
  const wings = plan.placements.filter(({ pieceId }) => pieceId === "wing");
  expect(wings.some(({ mirrored }) => mirrored)).toBe(true);
  expect(wings.every(({ turnDeg }) => turnDeg === 0)).toBe(true);
  const panels = plan.placements.filter(({ pieceId }) => pieceId === "panel");
  expect(panels.every(({ mirrored }) => !mirrored)).toBe(true);
  expect(new Set(panels.map(({ turnDeg }) => turnDeg)).size).toBeGreaterThan(4);
});

test("three hundred holes: a first plan and a better one within few evaluations, both clear of every hole", () => {
  const rng = seededRng(3);
  const flaws = Array.from({ length: 300 }, () => {
    const [x, y, r] = [2000 * rng.unit(), 1300 * rng.unit(), 2 + 6 * rng.unit()];
    return solid(Float64Array.of(x - r, y, x, y - r, x + r, y, x, y + r));
  });
  const job = skinJob(
    [
      piece(
        "panel",
        60,
        PANEL.map((at) => at / 2),
      ),
      piece("tab", 40, TAB),
    ],
    2,
    0,
  );
  const holed = { ...job, region: { ...job.region, flaws } };
  const search = outlineEngine.search(holed, { evaluations: 60_000 }, 5);
  const plans: RegionPlan[] = [];
  let before = Infinity;
  for (let step = search.next(); ; step = search.next()) {
    if (step.done) {
      plans.push(step.value);
      break;
    }
    if (step.value === BREATH || step.value.plan === null) continue;
    if (plans.length === 0) before = step.value.evaluations;
    plans.push(step.value.plan);
  }
  expect(before).toBeLessThan(20_000);
  expect(plans.at(-1)!.placements.length).toBeGreaterThan(plans[0]!.placements.length);
  expect(findings(holed, plans[0]!)).toEqual([]);
  expect(findings(holed, plans.at(-1)!)).toEqual([]);
});
