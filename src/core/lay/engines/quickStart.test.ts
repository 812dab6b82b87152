import { expect, test } from "vitest";
import { skinJobs } from "../../../../tests/bench/skinJobs.ts";
import { solid } from "../../geometry/ring.ts";
import { checkPlan } from "../check/checkPlan.ts";
import type { LayPlan, LayProblem } from "../problem/layProblem.ts";
import type { RegionJob } from "../problem/region.ts";
import { arrange } from "../search/arrange/arrange.ts";
import { BREATH, inOneGo, nextTurn } from "../search/breath.ts";
import { chooseEngines } from "./chooseEngines.ts";
import { quickStart } from "./quickStart.ts";

/** Made up: forty panels at any turn, a skin with five flaws; outlines keep 3 mm from each other, 8 from the edge. */
const { skin, roll } = skinJobs(2);
const job: RegionJob = {
  ...skin,
  gap: 3,
  margin: 8,
  pieces: skin.pieces.map((piece) => ({ ...piece, freeTurn: true })),
};

function problemOf({ region, pieces, gap, margin, pinned }: RegionJob): LayProblem {
  const { width, length, outline, flaws } = region;
  return {
    materialId: "leather",
    pieces,
    stocks: [
      outline === null
        ? { kind: "roll", id: "stock", width, length, flaws }
        : { kind: "remnant", id: "stock", outline, flaws },
    ],
    gap,
    margin,
    pinned: pinned.map((pin) => ({ ...pin, stockId: "stock" })),
  };
}

/** The first plan, and how many turns of the search it took. */
function firstPlan(problem: LayProblem): { plan: LayPlan; turns: number } {
  const search = arrange(problem, (each) => chooseEngines(each, "free"), { evaluations: 1e9 }, 1);
  for (let turns = 1; ; turns++) {
    const step = inOneGo(nextTurn(search));
    const plan = step.done ? step.value : step.value.plan;
    if (plan !== null) return { plan, turns };
  }
}

test("a skin has a legal plan with the first turn of the search", () => {
  const { plan, turns } = firstPlan(problemOf(job));
  expect(turns).toBe(1);
  expect(checkPlan(problemOf(job), plan)).toEqual([]);
  expect(plan.placements.length).toBeGreaterThan(20);
});

test("so have curved pieces round a pinned one and flaws on a roll; the pinned one stays", () => {
  const pin = { pieceId: "panel 2", copy: 1, x: 700, y: 20, turnDeg: 0, mirrored: false };
  const region = { width: 1400, length: null, outline: null, flaws: skin.region.flaws };
  const pieces = roll.pieces.filter(({ outline }) => outline.outer.length !== 8);
  const problem = problemOf({ ...job, region, pieces, pinned: [pin], goal: "shortest" });
  const { plan, turns } = firstPlan(problem);
  expect(turns).toBe(1);
  expect(checkPlan(problem, plan)).toEqual([]);
  expect(plan.placements).toContainEqual({ ...pin, stockId: "stock" });
  expect(plan.unplaced).toEqual([]);
});

test("where no box fits, nothing is told until a piece lies", () => {
  // A disc of cloth, and one of leather just smaller: its box reaches past the edge.
  const disc = (radius: number) =>
    solid(
      Float64Array.from({ length: 64 }, (_, i) => {
        const turn = (2 * Math.PI * Math.floor(i / 2)) / 32;
        return radius + radius * (i % 2 === 0 ? Math.cos(turn) : Math.sin(turn));
      }),
    );
  const region = { width: 400, length: 400, outline: disc(200), flaws: [] };
  const piece = { ...job.pieces[0]!, id: "disc", outline: disc(190), count: 1, freeTurn: false };
  const round: RegionJob = { ...job, region, pieces: [piece], gap: 0, margin: 0 };
  const search = quickStart.search(round, { evaluations: 1e6 }, 1);
  for (let step = search.next(); ; step = search.next()) {
    if (step.done) {
      expect(step.value).toEqual({ placements: [], left: [1], length: 0 });
      break;
    }
    if (step.value !== BREATH) expect(step.value.plan).toBeNull();
  }
  const { plan } = firstPlan(problemOf(round));
  expect(plan.placements).toHaveLength(1);
});
