import { expect, test } from "vitest";
import { ringBox } from "../../src/core/geometry/box.ts";
import { poseRing } from "../../src/core/geometry/pose.ts";
import { rectangleRing, solid } from "../../src/core/geometry/ring.ts";
import { planCut } from "../../src/core/job/planCut.ts";
import { rulerCuts } from "../../src/core/lay/alternatives/layFigures.ts";
import { piecesOf } from "../../src/core/lay/boxes/cuts/tidyTree.ts";
import { checkPlan } from "../../src/core/lay/check/checkPlan.ts";
import { chooseEngines } from "../../src/core/lay/engines/chooseEngines.ts";
import type {
  LayPattern,
  LayPiece,
  LayPlan,
  LayProblem,
  Stock,
  StockPlacement,
} from "../../src/core/lay/problem/layProblem.ts";
import { arrange } from "../../src/core/lay/search/arrange/arrange.ts";
import { inOneGo } from "../../src/core/lay/search/breath.ts";
import type { CutMode } from "../../src/core/lay/search/engine.ts";
import { seededRng } from "../../src/core/lay/search/rng.ts";
import { seedOf } from "../tools/seeded.ts";
import { canBeCut, placedBoxes } from "./straightCuts.ts";

type RulerMode = Exclude<CutMode, "free">;

const laid = (problem: LayProblem, mode: RulerMode, evaluations: number): LayPlan =>
  inOneGo(arrange(problem, (job) => chooseEngines(job, mode), { evaluations }, 1));

/** Made up: up to five kinds of boxes or of pieces with a corner off, most of them matched; some cloth has a flaw. */
function randomProblem(seed: number): LayProblem {
  const rng = seededRng(500 + seed);
  const whole = (low: number, high: number): number => low + rng.below(high - low + 1);
  const pattern: { -readonly [Key in keyof LayPattern]: LayPattern[Key] } = {
    along: rng.unit() < 0.8 ? whole(15, 70) : null,
    across: rng.unit() < 0.5 ? whole(15, 50) : null,
    firstAlong: whole(0, 20),
    firstAcross: whole(0, 20),
    halfDrop: false,
    symmetric: rng.unit() < 0.6,
    tolerance: 1,
  };
  if (pattern.along !== null && pattern.across !== null) pattern.halfDrop = rng.unit() < 0.4;
  const isBoxes = rng.unit() < 0.6;
  const pieces = Array.from({ length: whole(2, 5) }, (_, i): LayPiece => {
    const [dx, dy] = [whole(30, 120), whole(30, 120)];
    const cut = Float64Array.of(0, 0, dx, 0, dx, dy / 2, dx / 2, dy, 0, dy);
    const turns = pattern.symmetric ? [0, 180] : [0];
    const match = { group: `g${rng.below(2)}`, x: whole(0, dx), y: whole(0, dy), senseX: 1, senseY: 1 } as const;
    const isMatched = i === 0 || rng.unit() < 0.7;
    return {
      id: `p${i}`,
      outline: solid(isBoxes ? rectangleRing(0, 0, dx, dy) : cut),
      count: whole(1, 4),
      orientations: turns.map((turnDeg) => ({ turnDeg, mirrored: false })),
      freeTurn: false,
      ...(isMatched ? { match: { ...match, along: true, across: pattern.halfDrop || rng.unit() < 0.7 } } : {}),
    };
  });
  const flaws = rng.unit() < 0.25 ? [solid(rectangleRing(whole(40, 120), whole(20, 100), 25, 20))] : [];
  const stocks: Stock[] = [{ kind: "roll", id: "roll", width: whole(200, 320), length: null, flaws }];
  if (rng.unit() < 0.3)
    stocks.unshift({
      ...{ kind: "remnant", id: "rest", outline: solid(rectangleRing(40, 30, 200, 150)), flaws: [] },
      ...(rng.unit() < 0.5 ? { firstLine: [47, 33] as const } : {}),
    });
  const phases = rng.unit() < 0.4 ? { g0: { along: 3, across: rng.unit() < 0.5 ? 5 : null } } : undefined;
  return {
    ...{ materialId: "canvas", pieces, stocks, gap: whole(0, 2), margin: whole(0, 4), pinned: [], pattern },
    ...(phases ? { phases } : {}),
  };
}

const SEEDS = Array.from({ length: 24 }, (_, i) => seedOf(i));

const plans = new Map<string, LayPlan>();
const planOf = (seed: number, mode: RulerMode): LayPlan => {
  const plan = plans.get(`${mode} ${seed}`) ?? laid(randomProblem(seed), mode, 30_000);
  plans.set(`${mode} ${seed}`, plan);
  return plan;
};

/** Boxes of the placements on one stock. */
const boxesOn = (problem: LayProblem, placements: readonly StockPlacement[], stockId: string) =>
  placedBoxes(
    problem.pieces,
    placements.filter((place) => place.stockId === stockId),
  );

/** The plan with its pieces where the ruler's cuts have them: measured from fresh edge to fresh edge. */
function asCut(problem: LayProblem, plan: LayPlan): LayPlan {
  const outlines = new Map(problem.pieces.map(({ id, outline }) => [id, outline.outer]));
  const placements = rulerCuts(problem, plan)!.flatMap(({ tree, placements: own }) =>
    [...piecesOf(tree)].map(([piece, at]): StockPlacement => {
      const place = own[piece]!;
      const { minX, minY } = ringBox(poseRing(outlines.get(place.pieceId)!, place));
      return { ...place, x: place.x + at.x - minX, y: place.y + at.y - minY };
    }),
  );
  return { ...plan, placements };
}

test.each(["ruler", "few-stages", "two-stages"] as const)(
  "%s plans of matched pieces are cut apart and keep the pattern",
  (mode) => {
    let [moved, onRest, withFlaw] = [0, 0, 0];
    for (const seed of SEEDS) {
      const problem = randomProblem(seed);
      const plan = planOf(seed, mode);
      expect(checkPlan(problem, plan), `job ${seed}`).toEqual([]);
      expect(plan.unplaced, `job ${seed}`).toEqual([]);
      for (const { id } of problem.stocks)
        expect(canBeCut(boxesOn(problem, plan.placements, id)), `job ${seed} on ${id}`).toBe(true);
      expect(planCut(problem, plan, "ruler")).toMatchObject({ laid: "ruler", reason: null });
      const isClear = problem.stocks.every(({ kind, flaws }) => kind === "roll" && flaws.length === 0);
      if (isClear) expect(planCut(problem, plan, mode).reason, `job ${seed}`).toBeNull();
      const cut = asCut({ ...problem, gap: 0 }, plan);
      expect(cut.placements.length).toBe(plan.placements.length);
      expect(checkPlan({ ...problem, gap: 0 }, { ...cut, uses: [] }).map(({ code }) => code)).not.toContain(
        "plan-off-pattern",
      );
      for (const { id } of problem.stocks) expect(canBeCut(boxesOn(problem, cut.placements, id))).toBe(true);
      const wasAt = new Map(plan.placements.map(({ pieceId, copy, x, y }) => [`${pieceId} ${copy}`, [x, y]]));
      if (cut.placements.some(({ pieceId, copy, x }) => Math.abs(wasAt.get(`${pieceId} ${copy}`)![0]! - x) > 1))
        moved++;
      if (plan.placements.some(({ stockId }) => stockId === "rest")) onRest++;
      if (problem.stocks.some(({ flaws }) => flaws.length > 0)) withFlaw++;
    }
    // Each kind of job was met: some whose pieces close up, some with leftovers, some with a flaw.
    expect(moved).toBeGreaterThan(0);
    expect(onRest).toBeGreaterThan(0);
    expect(withFlaw).toBeGreaterThan(0);
  },
);

test("what closes up without heeding the pattern would leave it: the check above can fail", () => {
  let off = 0;
  for (const seed of SEEDS) {
    const { pattern, ...plain } = randomProblem(seed);
    const plan = planOf(seed, "ruler");
    const cut = asCut({ ...plain, gap: 0 }, plan);
    const codes = checkPlan({ ...plain, gap: 0, pattern: pattern! }, { ...cut, uses: [] }).map(({ code }) => code);
    if (codes.includes("plan-off-pattern")) off++;
  }
  expect(off).toBeGreaterThan(SEEDS.length / 4);
});
