import { expect, test } from "vitest";
import { ringBox } from "../../src/core/geometry/box.ts";
import { poseRing } from "../../src/core/geometry/pose.ts";
import { rectangleRing, solid } from "../../src/core/geometry/ring.ts";
import { checkPlan } from "../../src/core/lay/check/checkPlan.ts";
import { chooseEngines } from "../../src/core/lay/engines/chooseEngines.ts";
import type { LayPiece, LayPlan, LayProblem, Stock } from "../../src/core/lay/problem/layProblem.ts";
import { arrange } from "../../src/core/lay/search/arrange/arrange.ts";
import { inOneGo } from "../../src/core/lay/search/breath.ts";
import { seededRng } from "../../src/core/lay/search/rng.ts";

const laid = (problem: LayProblem): LayPlan =>
  inOneGo(arrange(problem, (job) => chooseEngines(job, "free"), { evaluations: 1 }, 1));

const codes = (problem: LayProblem, plan: LayPlan): string[] => checkPlan(problem, plan).map(({ code }) => code);

/** Made up: two to four bags of up to four kinds of piece, on rolls and leftovers, with flaws and patterns at times. */
function randomProblem(seed: number, rules: "way" | "band" | "both"): LayProblem {
  const rng = seededRng(9000 + seed);
  const whole = (low: number, high: number): number => low + rng.below(high - low + 1);
  const bags = whole(2, 4);
  const isBoxes = rng.unit() < 0.5;
  const isPatterned = rng.unit() < 0.3;
  const turns = (rules === "band" ? [0] : [0, 180]).map((turnDeg) => ({ turnDeg, mirrored: false }));
  const pieces = Array.from({ length: whole(1, 4) }, (_, i): LayPiece => {
    const [dx, dy] = [whole(40, 120), whole(40, 120)];
    const cut = Float64Array.of(0, 0, dx, 0, dx, dy / 2, dx / 3, dy, 0, dy);
    const match = { group: "g", x: 0, y: dy / 2, senseX: 1, senseY: 1, along: true, across: false } as const;
    return {
      ...{ id: `p${i}`, count: whole(1, 2) * bags, orientations: turns, freeTurn: false },
      outline: solid(isBoxes ? rectangleRing(0, 0, dx, dy) : cut),
      ...(isPatterned && i === 0 ? { match } : {}),
    };
  });
  const flaw = solid(rectangleRing(150, 60, 190, 110));
  const stocks: Stock[] = [
    { kind: "roll", id: "roll", width: 300, length: null, flaws: rng.unit() < 0.4 ? [flaw] : [] },
  ];
  if (rng.unit() < 0.3) stocks.unshift({ kind: "roll", id: "rest of a roll", width: 300, length: 420, flaws: [] });
  if (rng.unit() < 0.3)
    stocks.unshift({
      ...{ kind: "remnant", id: "leftover", outline: solid(rectangleRing(0, 0, 260, 300)), flaws: [] },
      firstLine: [5, 0],
    });
  const repeat = { along: 45, across: null, firstAlong: 12, firstAcross: 0, halfDrop: false, symmetric: false };
  return {
    ...{ materialId: "velvet", pieces, stocks, gap: 2, margin: 3, pinned: [] },
    ...(isPatterned ? { pattern: { ...repeat, tolerance: 1 } } : {}),
    ...(rules === "band" ? {} : { sameWay: true }),
    ...(rules === "way" ? {} : { shade: { bags, band: whole(300, 500) } }),
  };
}

const CASES = Array.from(
  { length: 36 },
  (_, seed) => [seed, (["way", "band", "both"] as const)[seed % 3]!] as const,
);
const plans = new Map<number, LayPlan>();
const planOf = (seed: number, rules: "way" | "band" | "both"): LayPlan => {
  const plan = plans.get(seed) ?? laid(randomProblem(seed, rules));
  plans.set(seed, plan);
  return plan;
};

test.each(CASES)("plan %d with a rule of %s is whole and keeps to it, the checker says", (seed, rules) => {
  const problem = randomProblem(seed, rules);
  const plan = planOf(seed, rules);
  expect(checkPlan(problem, plan)).toEqual([]);
  expect(plan.unplaced).toEqual([]);
});

test("a piece turned the other way is found on cloth of one way, and not where both are allowed", () => {
  let found = 0;
  for (const [seed, rules] of CASES.filter(([, rules]) => rules !== "band")) {
    const problem = randomProblem(seed, rules);
    const plan = planOf(seed, rules);
    const { sameWay: _, ...bothWays } = problem;
    for (const index of plan.placements.keys()) {
      if (plan.placements.length < 2) continue;
      const turned = {
        ...plan,
        placements: plan.placements.map((one, i) => (i === index ? { ...one, turnDeg: one.turnDeg + 180 } : one)),
      };
      expect(codes(problem, turned)).toContain("plan-two-ways");
      expect(codes(bothWays, turned)).not.toContain("plan-two-ways");
      found++;
    }
  }
  expect(found).toBeGreaterThan(50);
});

test("a bag over its band, or on two stocks, is found: by a hair, and when two bags change a part", () => {
  const seen = { hair: 0, changed: 0, apart: 0 };
  for (const [seed, rules] of CASES.filter(([, rules]) => rules !== "way")) {
    const problem = randomProblem(seed, rules);
    const plan = planOf(seed, rules);
    const { bags, band } = problem.shade!;
    const stretch = (placements: LayPlan["placements"], bag: number): number => {
      const own = placements.filter(({ pieceId, copy }) => {
        const { count } = problem.pieces.find(({ id }) => id === pieceId)!;
        return Math.floor((copy * bags) / count) === bag;
      });
      const boxes = own.map((one) =>
        ringBox(poseRing(problem.pieces.find(({ id }) => id === one.pieceId)!.outline.outer, one)),
      );
      return Math.max(...boxes.map(({ maxX }) => maxX)) - Math.min(...boxes.map(({ minX }) => minX));
    };
    // The band itself a hair shorter than the longest stretch, and as long.
    const longest = Math.max(...Array.from({ length: bags }, (_, bag) => stretch(plan.placements, bag)));
    const isOneStock = new Set(plan.placements.map(({ stockId }) => stockId)).size === 1;
    expect(longest).toBeLessThanOrEqual(band);
    expect(codes({ ...problem, shade: { bags, band: longest - 0.01 } }, plan)).toContain("plan-bag-scattered");
    expect(codes({ ...problem, shade: { bags, band: longest } }, plan)).toEqual([]);
    seen.hair++;
    // The first and the last copy of a piece change places.
    const { id, count } = problem.pieces[0]!;
    const changed = plan.placements.map((one) =>
      one.pieceId === id && (one.copy === 0 || one.copy === count - 1)
        ? { ...one, copy: count - 1 - one.copy }
        : one,
    );
    const isOver = [0, bags - 1].some((bag) => stretch(changed, bag) > band + 1e-3);
    if (isOneStock && isOver) {
      expect(codes(problem, { ...plan, placements: changed })).toContain("plan-bag-scattered");
      seen.changed++;
    }
    if (
      problem.stocks.length > 1 &&
      problem.pieces.some((piece) => piece.count > bags || problem.pieces.length > 1)
    ) {
      const other = problem.stocks.find((stock) => stock.id !== plan.placements[0]!.stockId)!;
      const moved = plan.placements.map((one, i) => (i === 0 ? { ...one, stockId: other.id } : one));
      expect(codes(problem, { ...plan, placements: moved })).toContain("plan-bag-apart");
      seen.apart++;
    }
  }
  expect(seen.hair).toBe(24);
  expect(seen.changed).toBeGreaterThan(3);
  expect(seen.apart).toBeGreaterThan(3);
});

test("a band as long as the roll is wide open costs nothing, and one too short for a bag is told with what it takes", () => {
  const problem = randomProblem(1, "band");
  const { shade: _, ...plain } = problem;
  const open = { ...problem, shade: { bags: problem.shade!.bags, band: 100_000 } };
  const used = (plan: LayPlan): number => plan.uses.reduce((sum, { usedLength }) => sum + usedLength, 0);
  expect(used(laid(open))).toBeCloseTo(used(laid(plain)), 6);
  const short = { ...problem, shade: { bags: problem.shade!.bags, band: 20 } };
  const plan = laid(short);
  expect(plan.placements).toEqual([]);
  expect(plan.unplaced.map(({ reason }) => reason)).toEqual(problem.pieces.map(() => "band-too-short"));
  expect(checkPlan(short, plan)).toEqual([]);
});
