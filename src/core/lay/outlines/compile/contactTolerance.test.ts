import { expect, test } from "vitest";
import { type Polygon, solid } from "../../../geometry/ring.ts";
import { checkPlan } from "../../check/checkPlan.ts";
import type { LayProblem } from "../../problem/layProblem.ts";
import type { RegionJob } from "../../problem/region.ts";
import { seededRng } from "../../search/rng.ts";
import { OUTLINE_TUNING } from "../outlineEngine.ts";
import { OutlineRun } from "../outlineRun.ts";
import { compileJob } from "./compileJob.ts";

/** A crooked polygon about as large as a box, with corners on no grid. */
function crooked(seed: number, width: number, height: number): Polygon {
  const rng = seededRng(seed);
  const corners = 4 + rng.below(5);
  const ring = new Float64Array(2 * corners);
  for (let i = 0; i < corners; i++) {
    const angle = (2 * Math.PI * (i + 0.4 * rng.unit())) / corners;
    const reach = 0.3 + 0.2 * rng.unit();
    ring[2 * i] = width * (0.5 + reach * Math.cos(angle));
    ring[2 * i + 1] = height * (0.5 + reach * Math.sin(angle));
  }
  return solid(ring);
}

/** Tabs of 3 mm and thin straps beside panels of 1 m: the search's grid is coarse against the small ones. */
function unevenJob(seed: number, turns: readonly number[]): RegionJob {
  const orientations = turns.map((turnDeg) => ({ turnDeg, mirrored: false }));
  const sizes: readonly (readonly [number, number, number])[] = [
    [1000, 640, 2],
    [700, 400, 2],
    [900, 4, 4],
    [40, 30, 6],
    [3, 3, 8],
    [3, 2, 8],
  ];
  return {
    region: { width: 1300, length: null, outline: null, flaws: [] },
    pieces: sizes.map(([width, height, count], i) => ({
      id: `p${i}`,
      outline: crooked(10 * seed + i, width, height),
      count,
      orientations,
      freeTurn: false,
    })),
    gap: 0,
    margin: 0,
    pinned: [],
    goal: "shortest",
  };
}

test.each([
  [1, [0, 180]],
  [2, [0, 180]],
  [3, [0, 90, 180, 270]],
  [4, [0, 37, 111]],
])(
  "tiny pieces beside large ones share less than a millionth of the smaller, and no plan is sent back (seed %i)",
  (seed, turns) => {
    const job = unevenJob(seed, turns);
    const run = new OutlineRun(compileJob(job), seed, OUTLINE_TUNING);
    for (const _ of run.run(Infinity)) if (run.state.evaluations > 100_000) break;
    for (const _ of run.finish());
    expect(run.judged).toBeGreaterThan(2);
    expect(run.dropped).toBe(0);
    const problem: LayProblem = {
      materialId: "m",
      pieces: job.pieces,
      stocks: [{ kind: "roll", id: "roll", width: job.region.width, length: null, flaws: [] }],
      gap: 0,
      margin: 0,
      pinned: [],
    };
    const { placements, left, length } = run.plan;
    expect(left.every((count) => count === 0)).toBe(true);
    const plan = {
      materialId: "m",
      placements: placements.map((place) => ({ ...place, stockId: "roll" })),
      unplaced: [],
      uses: [{ stockId: "roll", usedLength: length, bound: null }],
      evaluations: 0,
      seed,
    };
    expect(checkPlan(problem, plan)).toEqual([]);
  },
);
