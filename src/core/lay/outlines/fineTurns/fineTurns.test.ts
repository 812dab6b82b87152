import fc from "fast-check";
import { expect, test } from "vitest";
import { solid } from "../../../geometry/ring.ts";
import { checkPlan } from "../../check/checkPlan.ts";
import type { LayPiece, LayPlan, LayProblem } from "../../problem/layProblem.ts";
import type { RegionJob, RegionPlan } from "../../problem/region.ts";
import { outlineEngine } from "../outlineEngine.ts";
import { fineTurnJob } from "./fineTurnJob.ts";

const HALF_TURNS = [0, 180].map((turnDeg) => ({ turnDeg, mirrored: false }));

/** A bar drawn so many degrees off the grain. */
function bar(offDeg: number, along: number, across: number, more: Partial<LayPiece>): LayPiece {
  const [c, s] = [Math.cos((offDeg * Math.PI) / 180), Math.sin((offDeg * Math.PI) / 180)];
  const corners = [
    [0, 0],
    [along, 0],
    [along, across],
    [0, across],
  ];
  const outline = solid(Float64Array.from(corners.flatMap(([x, y]) => [x! * c - y! * s, x! * s + y! * c])));
  return { id: "bar", outline, count: 4, orientations: HALF_TURNS, freeTurn: false, ...more };
}

function jobOf(width: number, pieces: readonly LayPiece[]): RegionJob {
  const region = { width, length: null, outline: null, flaws: [] };
  return { region, pieces, gap: 0, margin: 0, pinned: [], goal: "shortest" };
}

function solve(job: RegionJob, evaluations: number): RegionPlan {
  const search = outlineEngine.search(job, { evaluations }, 1);
  for (let step = search.next(); ; step = search.next()) if (step.done) return step.value;
}

function findings(job: RegionJob, plan: RegionPlan) {
  const problem: LayProblem = {
    materialId: "m",
    pieces: job.pieces,
    stocks: [{ kind: "roll", id: "s", width: job.region.width, length: null, flaws: [] }],
    gap: 0,
    margin: 0,
    pinned: [],
  };
  const placements = plan.placements.map((place) => ({ ...place, stockId: "s" }));
  const uses = [{ stockId: "s", usedLength: plan.length, bound: null }];
  return checkPlan(problem, {
    materialId: "m",
    placements,
    unplaced: [],
    uses,
    evaluations: 0,
    seed: 1,
  } satisfies LayPlan);
}

test("turns between those that are tried are found: a bar half a degree off comes to lie true", () => {
  // 0° and ±1° are tried: half a degree off, a bar upright takes its 60 and 200 · sin 0.5° = 1.7 besides.
  const job = jobOf(203, [bar(89.5, 200, 60, { tilt: 1, count: 1 })]);
  const plan = solve(job, 600_000);
  expect(findings(job, plan)).toEqual([]);
  expect(plan.length).toBeLessThan(60.05);
});

test("a copy keeps within what its piece may lean, and goes back to its own name", () => {
  const job = jobOf(300, [
    bar(0, 90, 40, { id: "leans", tilt: 2 }),
    bar(0, 80, 30, { id: "stands" }),
    bar(0, 70, 20, { id: "turns", freeTurn: true }),
  ]);
  const place = (pieceId: string, copy: number, turnDeg: number) => {
    return { pieceId, copy, turnDeg, mirrored: false, x: 0, y: 100 * copy };
  };
  const placements = [place("leans", 2, 182), place("leans", 0, 0), place("stands", 1, 180), place("turns", 0, 33)];
  const plan = { placements, left: [0, 0, 0], length: 500 };
  const near = fineTurnJob(job, plan, 1.5);
  const turns = near.job.pieces.map(({ orientations }) => orientations.map(({ turnDeg }) => turnDeg));
  expect(turns).toEqual([
    [182, 180.5],
    [0, 1.5, -1.5],
    [0, 180],
    [33, 34.5, 31.5],
  ]);
  expect(near.back(near.start)).toEqual(plan);
});

test("whatever may lean or turn, the checker passes what comes out", () => {
  const side = fc.integer({ min: 30, max: 150 });
  const play = fc.oneof(
    fc.constant({ freeTurn: true }),
    fc.integer({ min: 1, max: 5 }).map((tilt) => ({ tilt })),
  );
  const piece = fc.record({ off: fc.integer({ min: -4, max: 4 }), along: side, across: side, play });
  fc.assert(
    fc.property(fc.array(piece, { minLength: 1, maxLength: 3 }), (drawn) => {
      const pieces = drawn.map(({ off, along, across, play: more }, i) =>
        bar(off, along, across, { id: `p${i}`, ...more }),
      );
      const job = jobOf(330, pieces);
      const plan = solve(job, 150_000);
      expect(plan.left.every((count) => count === 0)).toBe(true);
      expect(findings(job, plan)).toEqual([]);
    }),
    { numRuns: 8 },
  );
});

test("what is matched stays on the pattern while others are turned finely", () => {
  const match = { group: "g", x: 0, y: 0, senseX: 1, senseY: 1, along: true, across: false } as const;
  const pattern = { along: 33, across: null, firstAlong: 0, firstAcross: 0, halfDrop: false, symmetric: true };
  const job: RegionJob = {
    ...jobOf(203, [
      bar(0, 120, 60, { id: "matched", count: 2, match, orientations: HALF_TURNS.slice(0, 1) }),
      bar(0.5, 90, 40, { id: "leans", tilt: 2 }),
    ]),
    pattern: { ...pattern, tolerance: 1 },
    phases: { g: { along: 10, across: null } },
  };
  const plan = solve(job, 20_000);
  const off = plan.placements.filter(({ pieceId }) => pieceId === "matched").map(({ x }) => (x - 10) / 33);
  expect(off).toHaveLength(2);
  for (const at of off) expect(Math.abs(at - Math.round(at))).toBeLessThan(0.05);
});
