import { expect, test } from "vitest";
import { rectangleRing, solid } from "../../geometry/ring.ts";
import type { CutBox } from "../boxes/cuts/cutTree.ts";
import { largestFreeBox } from "../boxes/cuts/largestFreeBox.ts";
import { checkPlan } from "../check/checkPlan.ts";
import type { LayPiece, LayProblem } from "../problem/layProblem.ts";
import { BREATH } from "../search/breath.ts";
import { seededRng } from "../search/rng.ts";
import { type LayChoice, searchChoices } from "./searchChoices.ts";

/** Tries every box between edges: slow and obvious. */
function slowLargest(box: CutBox, taken: readonly CutBox[], leastSide: number): number {
  const xs = [0, box.dx, ...taken.flatMap(({ x, dx }) => [x, x + dx])];
  const ys = [0, box.dy, ...taken.flatMap(({ y, dy }) => [y, y + dy])];
  let best = 0;
  for (const x1 of xs)
    for (const x2 of xs)
      for (const y1 of ys)
        for (const y2 of ys) {
          if (x2 - x1 < leastSide || y2 - y1 < leastSide || (x2 - x1) * (y2 - y1) <= best) continue;
          const free = taken.every(({ x, y, dx, dy }) => x >= x2 || x + dx <= x1 || y >= y2 || y + dy <= y1);
          if (free) best = (x2 - x1) * (y2 - y1);
        }
  return best;
}

test("largest free rectangle equals a search of all", () => {
  const rng = seededRng(4);
  const box = { x: 0, y: 0, dx: 40, dy: 30 };
  for (let round = 0; round < 60; round++) {
    const taken = Array.from({ length: 1 + rng.below(6) }, () => {
      const [x, y] = [rng.below(30), rng.below(20)];
      return { x, y, dx: 1 + rng.below(40 - x), dy: 1 + rng.below(30 - y) };
    });
    for (const leastSide of [1, 6]) {
      const found = largestFreeBox(box, taken, leastSide);
      expect(found === null ? 0 : found.dx * found.dy).toBe(slowLargest(box, taken, leastSide));
    }
  }
  expect(largestFreeBox(box, [box], 1)).toBeNull();
});

const turns = [0, 90].map((turnDeg) => ({ turnDeg, mirrored: false }));
const sizes = [
  [200, 150, 6],
  [320, 90, 5],
  [140, 110, 7],
  [260, 240, 3],
  [75, 60, 9],
] as const;
const problem: LayProblem = {
  materialId: "canvas",
  pieces: sizes.map(
    ([along, across, count], i): LayPiece => ({
      id: `p${i}`,
      outline: solid(rectangleRing(0, 0, along, across)),
      count,
      orientations: turns,
      freeTurn: false,
    }),
  ),
  stocks: [{ kind: "roll", id: "bolt", width: 1070, length: null, flaws: [] }],
  gap: 0,
  margin: 0,
  pinned: [],
};

function choicesOf(evaluations: number): readonly LayChoice[] {
  const search = searchChoices(problem, { evaluations }, 1);
  for (;;) {
    const step = search.next();
    if (step.done) return step.value;
  }
}

test("three choices: valid plans, each the best of the three at what it is chosen for, with its price", () => {
  const choices = choicesOf(240_000);
  const by = (what: LayChoice["best"][number]): LayChoice => choices.find(({ best }) => best.includes(what))!;
  for (const { plan } of choices) expect(checkPlan(problem, plan)).toEqual([]);
  expect(by("shortest").extraLength).toBe(0);
  for (const choice of choices) {
    expect(choice.extraLength).toBeCloseTo(choice.figures.length - by("shortest").figures.length, 6);
    expect(choice.extraLength).toBeLessThanOrEqual(0.03 * by("shortest").figures.length);
  }
  expect(by("easiest").figures.ruler).not.toBeNull();
  const { settings } = by("easiest").figures.ruler!;
  for (const { figures } of choices)
    if (figures.ruler) expect(figures.ruler.settings).toBeGreaterThanOrEqual(settings);
  const gain = ({ figures, extraLength }: LayChoice): number =>
    (figures.offcut?.box.dx ?? 0) * (figures.offcut?.box.dy ?? 0) - 1070 * extraLength;
  for (const choice of choices) expect(gain(by("offcut"))).toBeGreaterThanOrEqual(gain(choice) - 1e-3);
  expect(choicesOf(240_000)).toEqual(choices);
});

test("no choice leaves pieces out that an open roll takes, however early it is told", () => {
  const flaws = [solid(rectangleRing(300, 100, 40, 40))];
  const stocks = [{ kind: "roll" as const, id: "bolt", width: 1070, length: null, flaws }];
  let told = 0;
  for (const step of searchChoices({ ...problem, stocks }, { evaluations: 100_000 }, 1)) {
    if (step === BREATH) continue;
    for (const { plan } of step.choices ?? []) {
      told++;
      expect(plan.unplaced).toEqual([]);
    }
  }
  expect(told).toBeGreaterThan(0);
});
