import { expect, test } from "vitest";
import { type Polygon, rectangleRing, solid } from "../../src/core/geometry/ring.ts";
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
import { seededRng } from "../../src/core/lay/search/rng.ts";
import { seedOf } from "../tools/seeded.ts";

const laid = (problem: LayProblem, evaluations: number): LayPlan =>
  inOneGo(arrange(problem, (job) => chooseEngines(job, "free"), { evaluations }, 1));

/** Made up: up to seven pieces, boxes or cut-off corners, most of them matched, on cloth of some pattern. */
function randomProblem(seed: number): LayProblem {
  const rng = seededRng(seed);
  const whole = (low: number, high: number): number => low + rng.below(high - low + 1);
  const isBoxes = rng.unit() < 0.5;
  const pattern: { -readonly [Key in keyof LayPattern]: LayPattern[Key] } = {
    along: rng.unit() < 0.8 ? whole(15, 80) : null,
    across: rng.unit() < 0.5 ? whole(15, 60) : null,
    firstAlong: whole(0, 20),
    firstAcross: whole(0, 20),
    halfDrop: false,
    symmetric: rng.unit() < 0.6,
    tolerance: 1,
  };
  if (pattern.along !== null && pattern.across !== null) pattern.halfDrop = rng.unit() < 0.4;
  const sign = (): 1 | -1 => (rng.unit() < 0.3 && pattern.symmetric ? -1 : 1);
  const pieces = Array.from({ length: whole(1, 5) }, (_, i): LayPiece => {
    const [dx, dy] = [whole(30, 120), whole(30, 120)];
    const cut = Float64Array.of(0, 0, dx, 0, dx, dy / 2, dx / 2, dy, 0, dy);
    const outline: Polygon = solid(isBoxes ? rectangleRing(0, 0, dx, dy) : cut);
    const turns = pattern.symmetric ? [0, 180] : [0];
    const match = { group: `g${rng.below(2)}`, x: whole(0, dx), y: whole(0, dy), senseX: sign(), senseY: sign() };
    return {
      id: `p${i}`,
      outline,
      count: whole(1, 2),
      orientations: turns.map((turnDeg) => ({ turnDeg, mirrored: false })),
      freeTurn: false,
      ...(rng.unit() < 0.8
        ? { match: { ...match, along: true, across: pattern.halfDrop || rng.unit() < 0.7 } }
        : {}),
    };
  });
  const stocks: Stock[] = [{ kind: "roll", id: "roll", width: whole(180, 300), length: null, flaws: [] }];
  if (rng.unit() < 0.3)
    stocks.unshift({
      ...{ kind: "remnant", id: "rest", outline: solid(rectangleRing(40, 30, 200, 150)), flaws: [] },
      ...(rng.unit() < 0.5 ? { firstLine: [7, 3] as const } : {}),
    });
  const phases = rng.unit() < 0.4 ? { g0: { along: 3, across: rng.unit() < 0.5 ? 5 : null } } : undefined;
  return {
    ...{ materialId: "canvas", pieces, stocks, gap: whole(0, 2), margin: whole(0, 4), pinned: [], pattern },
    ...(phases ? { phases } : {}),
  };
}

const SEEDS = Array.from({ length: 30 }, (_, i) => seedOf(i));
const plans = new Map<number, LayPlan>();
const planOf = (seed: number): LayPlan => {
  const plan = plans.get(seed) ?? laid(randomProblem(seed), 60_000);
  plans.set(seed, plan);
  return plan;
};

test.each(SEEDS)("plan %d lies on its pattern, the checker says", (seed) => {
  const plan = planOf(seed);
  expect(checkPlan(randomProblem(seed), plan)).toEqual([]);
  expect(plan.unplaced).toEqual([]);
});

/** What the checker says of a plan with its placements changed. */
const codesAfter = (
  problem: LayProblem,
  plan: LayPlan,
  change: (place: StockPlacement, index: number) => StockPlacement,
): Set<string> =>
  new Set(checkPlan(problem, { ...plan, placements: plan.placements.map(change) }).map(({ code }) => code));

test("every matched piece moved off the pattern is found, each way, by a hair more than the tolerance", () => {
  let [alone, among] = [0, 0];
  for (const seed of SEEDS) {
    const problem = randomProblem(seed);
    const pattern = problem.pattern!;
    const plan = planOf(seed);
    for (const [index, place] of plan.placements.entries()) {
      const { match } = problem.pieces.find(({ id }) => id === place.pieceId)!;
      if (match === undefined) continue;
      for (const axis of ["along", "across"] as const) {
        if (pattern[axis] === null || !match[axis]) continue;
        const fixed = problem.phases?.[match.group]?.[axis] ?? null;
        const others = plan.placements.filter(
          ({ pieceId }, i) =>
            i !== index && problem.pieces.find(({ id }) => id === pieceId)!.match?.group === match.group,
        );
        const isHeld =
          fixed !== null ||
          others.some(({ pieceId }) => problem.pieces.find(({ id }) => id === pieceId)!.match![axis]);
        for (const by of [pattern.tolerance + 0.01, -pattern.tolerance - 0.01]) {
          const moved = codesAfter(problem, plan, (one, i) =>
            i === index ? { ...one, ...(axis === "along" ? { x: one.x + by } : { y: one.y + by }) } : one,
          );
          expect(moved.has("plan-off-pattern"), `plan ${seed} ${place.pieceId} ${axis}`).toBe(isHeld);
          if (isHeld) among++;
          else alone++;
          const little = codesAfter(problem, plan, (one, i) =>
            i === index
              ? { ...one, ...(axis === "along" ? { x: one.x + by * 0.98 } : { y: one.y + by * 0.98 }) }
              : one,
          );
          expect(little.has("plan-off-pattern")).toBe(false);
        }
      }
    }
  }
  // Both kinds were met.
  expect(among).toBeGreaterThan(100);
  expect(alone).toBeGreaterThan(0);
});

test("a whole group moved off a phase that is fixed is found, one of a group that is free is not", () => {
  let [fixedGroups, freeGroups] = [0, 0];
  for (const seed of SEEDS) {
    const problem = randomProblem(seed);
    const plan = planOf(seed);
    if (problem.pattern!.along === null) continue;
    for (const group of ["g0", "g1"]) {
      const isIn = ({ pieceId }: StockPlacement): boolean =>
        problem.pieces.find(({ id }) => id === pieceId)!.match?.group === group;
      const members = plan.placements.filter(isIn);
      // Read both ways at once a group does not move as one.
      if (members.length < 2 || problem.pattern!.symmetric) continue;
      const codes = codesAfter(problem, plan, (one) => (isIn(one) ? { ...one, x: one.x + 5 } : one));
      const isFixed = (problem.phases?.[group]?.along ?? null) !== null;
      expect(codes.has("plan-off-pattern"), `plan ${seed} ${group}`).toBe(isFixed);
      if (isFixed) fixedGroups++;
      else freeGroups++;
    }
  }
  expect(fixedGroups).toBeGreaterThan(0);
  expect(freeGroups).toBeGreaterThan(0);
});

test("a piece turned against a pattern with a top is found", () => {
  let found = 0;
  for (const seed of SEEDS) {
    const problem = randomProblem(seed);
    const { pattern } = problem;
    if (pattern!.symmetric) continue;
    const plan = planOf(seed);
    // As if the grain allowed it: the pattern forbids it all the same.
    const pieces = problem.pieces.map((piece) => {
      return { ...piece, orientations: [...piece.orientations, { turnDeg: 180, mirrored: false }] };
    });
    for (const [index, place] of plan.placements.entries()) {
      const { match } = problem.pieces.find(({ id }) => id === place.pieceId)!;
      const others = plan.placements.some(
        ({ pieceId }, i) => i !== index && pieces.find(({ id }) => id === pieceId)!.match?.group === match?.group,
      );
      if (
        match === undefined ||
        !others ||
        (pattern!.along === null && (pattern!.across === null || !match.across))
      )
        continue;
      const codes = codesAfter({ ...problem, pieces }, plan, (one, i) =>
        i === index ? { ...one, turnDeg: 180 } : one,
      );
      expect(codes).toContain("plan-against-pattern");
      expect(codes).not.toContain("plan-turn-not-allowed");
      found++;
    }
  }
  expect(found).toBeGreaterThan(10);
});

test("a matched piece on a leftover of which nobody knows where its pattern lies is found", () => {
  const seed = SEEDS.find((one) => {
    const { stocks, pieces } = randomProblem(one);
    return stocks.some(({ firstLine }) => firstLine !== undefined) && pieces.some(({ match }) => match);
  })!;
  const problem = randomProblem(seed);
  const plan = planOf(seed);
  const piece = problem.pieces.find(({ match }) => match)!;
  const unknown = problem.stocks.map(({ firstLine: _, ...stock }) => stock as Stock);
  const codes = codesAfter({ ...problem, stocks: unknown }, plan, (one) =>
    one.pieceId === piece.id ? { ...one, stockId: "rest" } : one,
  );
  expect(codes).toContain("plan-pattern-unknown");
});

test("a pattern that repeats neither way changes nothing: the same plan as without", () => {
  for (const seed of [0, 1, 2, 3]) {
    const { pattern, ...problem } = randomProblem(seed);
    const plain = { ...problem, pieces: problem.pieces.map(({ match: _, ...piece }) => piece), phases: undefined };
    const without = laid(plain, 60_000);
    const nothing: LayPattern = { ...pattern!, along: null, across: null, halfDrop: false };
    expect(laid({ ...problem, pattern: nothing }, 60_000)).toEqual(without);
    expect(laid(problem, 60_000)).toEqual(without);
    // As a repeat shrinks to nothing it costs nothing: at most a repeat each piece in a row.
    const fine = { ...pattern!, along: 0.01, across: null, tolerance: 0.005, halfDrop: false };
    const used = ({ uses }: LayPlan): number => uses.reduce((sum, { usedLength }) => sum + usedLength, 0);
    if (problem.stocks.length === 1)
      expect(Math.abs(used(laid({ ...problem, pattern: fine }, 200_000)) - used(without))).toBeLessThan(
        0.05 * used(without),
      );
  }
});
