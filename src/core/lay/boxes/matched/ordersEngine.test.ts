import { expect, test } from "vitest";
import { rectangleRing, solid } from "../../../geometry/ring.ts";
import type { LayPiece } from "../../problem/layProblem.ts";
import type { RegionJob } from "../../problem/region.ts";
import { inOneGo, nextTurn } from "../../search/breath.ts";
import { seededRng } from "../../search/rng.ts";
import { cutRule } from "./cutInOrder.ts";
import { leftmostRule } from "./layInOrder.ts";
import { boxesOf, type LayingRule, type Standing } from "./layingRule.ts";
import { type MatchedJob, matchedJobOf } from "./matchedJob.ts";
import { matchedFewStagesEngine, matchedRulerEngine } from "./matchedRulerEngine.ts";

/** Boxes that lie one way, matched along the roll at their start, on a repeat of 10 mm whose first line is at 3 mm. */
function jobOf(
  sizes: readonly (readonly [along: number, across: number, matched: boolean])[],
  width: number,
): RegionJob {
  const match = { group: "a", x: 0, y: 0, senseX: 1, senseY: 1, along: true, across: false } as const;
  return {
    region: { width, length: null, outline: null, flaws: [] },
    pieces: sizes.map(
      ([along, across, isMatched], i): LayPiece => ({
        ...{ id: `p${i}`, count: 1, freeTurn: false, orientations: [{ turnDeg: 0, mirrored: false }] },
        outline: solid(rectangleRing(0, 0, along, across)),
        ...(isMatched ? { match } : {}),
      }),
    ),
    ...{ gap: 0, margin: 0, pinned: [], goal: "shortest" },
    pattern: {
      ...{ along: 10, across: null, firstAlong: 3, firstAcross: 0, halfDrop: false, symmetric: false },
      tolerance: 1,
    },
    phases: { a: { along: 0, across: null } },
  };
}

/** The order 0, 1, 2 … laid by a rule. */
function laidBy<S extends Standing>(rule: LayingRule<S>, job: MatchedJob, hints: readonly number[] = []): S {
  return job.kinds.reduce((standing, _, kind) => {
    return rule.lay(job, standing, kind, -1, hints[kind] ?? 0, () => {}, null);
  }, rule.start(job));
}

const spots = (standing: Standing): number[][] => boxesOf(standing).map(({ x, y }) => [x, y]);

test("cuts across first: what lies before the rung comes off over the whole width, along first only beside the box", () => {
  const job = matchedJobOf(
    jobOf(
      [
        [20, 30, true],
        [3, 50, false],
        [20, 20, true],
      ],
      50,
    ),
  );
  // The strip of 3 mm before the first line takes the piece of 3 × 50 where the cut runs over the whole width.
  expect(spots(laidBy(cutRule(Infinity, false), job, [0, 0, 0]))).toEqual([
    [3, 0],
    [0, 0],
    [3, 30],
  ]);
  // Cut along first only 20 and 30 mm are left of it, so that piece lies behind.
  const along = laidBy(cutRule(Infinity, false), job, [1, 0, 0]);
  expect(spots(along)).toEqual([
    [3, 0],
    [3, 30],
  ]);
  expect(along.areaLeft).toBe(150);
});

test("no more turns than asked for: what would take more finds no place", () => {
  const job = matchedJobOf(
    jobOf(
      [
        [20, 30, true],
        [10, 20, false],
        [5, 10, false],
      ],
      50,
    ),
  );
  const places = (turns: number): number => boxesOf(laidBy(cutRule(turns, false), job)).length;
  expect(places(1)).toBe(0);
  expect(places(2)).toBeGreaterThan(0);
  expect(places(Infinity)).toBe(3);
});

/** Tries every whole millimetre: slow and obvious. */
function slowLeftmost(job: MatchedJob): number[][] {
  const down: { x: number; y: number; along: number; across: number }[] = [];
  for (const { ways } of job.kinds) {
    const { along, across, lattice } = ways[0]!;
    search: for (let x = 0; ; x++)
      for (let y = 0; y + across <= job.toY; y++) {
        if (lattice?.x && (x - lattice.x.offset) % lattice.x.period !== 0) break;
        const isFree = down.every(
          (b) => x >= b.x + b.along || x + along <= b.x || y >= b.y + b.across || y + across <= b.y,
        );
        if (!isFree) continue;
        down.push({ x, y, along, across });
        break search;
      }
  }
  return down.map(({ x, y }) => [x, y]);
}

test("laid leftmost on its rungs, as a search of all places says", () => {
  const rng = seededRng(8);
  for (let round = 0; round < 60; round++) {
    const sizes = Array.from(
      { length: 2 + rng.below(7) },
      () => [2 + rng.below(25), 2 + rng.below(25), rng.unit() < 0.6] as const,
    );
    const job = matchedJobOf(jobOf(sizes, 40));
    expect(spots(laidBy(leftmostRule, job))).toEqual(slowLeftmost(job));
  }
});

test("the search goes on from what orders have in common: each plan is that of its order laid from the start", () => {
  const rng = seededRng(9);
  for (let round = 0; round < 10; round++) {
    const sizes = Array.from(
      { length: 9 },
      () => [2 + rng.below(25), 2 + rng.below(25), rng.unit() < 0.6] as const,
    );
    for (const engine of [matchedRulerEngine, matchedFewStagesEngine]) {
      const search = engine.search(jobOf(sizes, 40), { evaluations: 20_000 }, 1);
      const lengths: number[] = [];
      for (let turn = inOneGo(nextTurn(search)); ; turn = inOneGo(nextTurn(search))) {
        const plan = turn.done ? turn.value : turn.value.plan;
        if (plan !== null) {
          const ends = plan.placements.map(({ pieceId, x }) => x + sizes[Number(pieceId.slice(1))]![0]);
          expect(plan.length).toBe(Math.max(...ends));
          expect(plan.left.every((count) => count === 0)).toBe(true);
          for (const { pieceId, x } of plan.placements)
            if (sizes[Number(pieceId.slice(1))]![2]) expect((x - 3) % 10).toBe(0);
          lengths.push(plan.length);
        }
        if (turn.done) break;
      }
      // Handed over only when shorter; the last is told twice.
      expect(lengths.slice(0, -1).every((length, i) => i === 0 || length < lengths[i - 1]!)).toBe(true);
    }
  }
});

test("a job that no box can be laid for comes to an end", () => {
  const job: RegionJob = { ...jobOf([[30, 10, true]], 40), goal: "most" };
  const closed = { ...job, region: { ...job.region, length: 20 } };
  const search = matchedRulerEngine.search(closed, { evaluations: 5_000 }, 1);
  let turn = inOneGo(nextTurn(search));
  for (let turns = 0; !turn.done && turns < 10_000; turns++) turn = inOneGo(nextTurn(search));
  expect(turn.done).toBe(true);
  expect(turn.done && turn.value.left).toEqual([1]);
});
