// Open strip-packing instances (fixtures/open, CC0 1.0, sources there), as published; every placement is judged from the
// raw outlines, shared areas by polyclip-ts. Budgets are evaluations, so that no clock decides.
import { readdirSync, readFileSync } from "node:fs";
import { intersection } from "polyclip-ts";
import { expect, test } from "vitest";
import { benchProblem } from "../../src/cli/bench/benchProblem.ts";
import { type Instance, readDataset } from "../../src/cli/bench/dataset.ts";
import { PUBLISHED } from "../../src/cli/bench/published.ts";
import { ringBox } from "../../src/core/geometry/box.ts";
import { poseRing } from "../../src/core/geometry/pose.ts";
import { type Ring, signedArea } from "../../src/core/geometry/ring.ts";
import { chooseEngines } from "../../src/core/lay/engines/chooseEngines.ts";
import type { LayPlan, LayProblem } from "../../src/core/lay/problem/layProblem.ts";
import { arrange } from "../../src/core/lay/search/arrange/arrange.ts";

const folder = new URL("../../fixtures/open/", import.meta.url);
const EVALUATIONS = 2_000_000;

function instancesOf(file: string): Instance[] {
  const { instances, problems } = readDataset(JSON.parse(readFileSync(new URL(file, folder), "utf8")), file);
  expect(problems).toEqual([]);
  return instances;
}

function planFor(problem: LayProblem, evaluations: number): LayPlan {
  const search = arrange(problem, (job) => chooseEngines(job, "free"), { evaluations }, 1);
  let step = search.next();
  while (!step.done) step = search.next();
  return step.value;
}

/** Corners, rounded to a billionth: the reference library gives up on edges that miss each other by the last bit of a double. */
function points(ring: Ring): [number, number][] {
  const rounded = (value: number): number => Math.round(value * 1e9) / 1e9;
  return Array.from({ length: ring.length / 2 }, (_, i) => [rounded(ring[2 * i]!), rounded(ring[2 * i + 1]!)]);
}

/** Outlines as they lie, after a check that each is wanted and lies on the strip. */
function laidOutlines(problem: LayProblem, plan: LayPlan, width: number): Ring[] {
  const outlines = plan.placements.map((placement) => {
    const piece = problem.pieces.find(({ id }) => id === placement.pieceId)!;
    const allowed = piece.orientations.some(({ turnDeg }) => turnDeg === placement.turnDeg);
    expect(allowed && !placement.mirrored).toBe(true);
    return poseRing(piece.outline.outer, placement);
  });
  for (const piece of problem.pieces)
    expect(plan.placements.filter(({ pieceId }) => pieceId === piece.id).length).toBe(piece.count);
  const slack = 1e-6 * width;
  for (const box of outlines.map(ringBox)) {
    expect(Math.min(box.minX, box.minY)).toBeGreaterThanOrEqual(-slack);
    expect(box.maxY).toBeLessThanOrEqual(width + slack);
    expect(box.maxX).toBeLessThanOrEqual(plan.uses[0]!.usedLength + slack);
  }
  return outlines;
}

function expectApart(outlines: readonly Ring[]): void {
  const boxes = outlines.map(ringBox);
  for (let i = 0; i < outlines.length; i++)
    for (let j = 0; j < i; j++) {
      const [a, b] = [boxes[i]!, boxes[j]!];
      if (a.maxX <= b.minX || b.maxX <= a.minX || a.maxY <= b.minY || b.maxY <= a.minY) continue;
      const shared = intersection([points(outlines[i]!)], [points(outlines[j]!)]);
      const area = shared
        .flat()
        .reduce((sum, ring) => sum + Math.abs(signedArea(Float64Array.from(ring.slice(0, -1).flat()))), 0);
      const smaller = Math.min(signedArea(outlines[i]!), signedArea(outlines[j]!));
      expect(area / smaller, `pieces ${j} and ${i}`).toBeLessThan(1e-6);
    }
}

/** Lays an instance and judges the plan; its length, proven bound and density. */
function judged(instance: Instance, evaluations: number) {
  const problem = benchProblem(instance, false);
  const plan = planFor(problem, evaluations);
  const outlines = laidOutlines(problem, plan, instance.stripWidth);
  expectApart(outlines);
  const area = outlines.reduce((sum, ring) => sum + signedArea(ring), 0);
  const { usedLength, bound } = plan.uses[0]!;
  return { length: usedLength, bound, density: (100 * area) / (instance.stripWidth * usedLength) };
}

test("Hopper & Turton C: 21 sound plans, mean gap over the constructed optimum at most 1.4 %", () => {
  const file = "rect/hopper-turton-c.json";
  const optima: { optimum: number }[] = JSON.parse(readFileSync(new URL(file, folder), "utf8"));
  const gaps = instancesOf(file).map((instance, i) => {
    const { length, bound } = judged(instance, EVALUATIONS);
    expect(bound, instance.name).toBeLessThanOrEqual(optima[i]!.optimum);
    return length / optima[i]!.optimum - 1;
  });
  expect(gaps.length).toBe(21);
  expect(Math.min(...gaps)).toBeGreaterThanOrEqual(-1e-9);
  // Measured 1.01 %; published means of long runs lie about there too (docs/reference/benchmarks.md).
  expect(gaps.reduce((sum, gap) => sum + gap, 0) / 21).toBeLessThanOrEqual(0.014);
  expect(gaps.filter((gap) => gap < 1e-9).length).toBeGreaterThanOrEqual(7);
});

test.each([
  ["ngcut", "rect/beasley-ngcut.json", 12],
  ["cgcut", "rect/christofides-whitlock-cgcut.json", 3],
  ["gcut", "rect/beasley-gcut.json", 4],
] as const)("%s: sound plans near the best heights published, no bound above them", (family, file, known) => {
  const { heights } = PUBLISHED[family]!;
  const over = instancesOf(file).flatMap((instance) => {
    const { length, bound } = judged(instance, EVALUATIONS);
    expect(bound, instance.name).toBeLessThanOrEqual(length + 1e-9);
    const best = heights?.[instance.name];
    if (best === undefined) return [];
    expect(bound, instance.name).toBeLessThanOrEqual(best);
    return [length / best - 1];
  });
  expect(over.length).toBe(known);
  // Measured: +0.08 %, +0.10 %, −0.21 %.
  expect(over.reduce((sum, share) => sum + share, 0) / known).toBeLessThanOrEqual(0.006);
});

/** Least densities, %: a point below the worst of seeds 1 to 3 at this many evaluations. */
const LEAST: Readonly<Record<string, number>> = {
  albano: 78.3,
  dagli: 80.4,
  dighe1: 81.8,
  dighe2: 90.2,
  fu: 85.7,
  jakobs1: 82,
  jakobs2: 75.2,
  mao: 78.8,
  marques: 83.3,
  shapes0: 62,
  shapes1: 66.6,
  shapes2: 76.6,
  shirts: 84.1,
  swim: 71.4,
  trousers: 75.1,
};

test("every irregular instance that is here has a least density", () => {
  const names = readdirSync(new URL("irregular/", folder)).map((name) => name.replace(".json", ""));
  expect(names.sort()).toEqual(Object.keys(LEAST));
});

const reached: number[] = [];

test.each(Object.entries(LEAST))("%s: a sound plan of at least %s per cent density", (name, least) => {
  const [instance] = instancesOf(`irregular/${name}.json`);
  const { density } = judged(instance!, EVALUATIONS);
  reached.push(density);
  expect(density).toBeGreaterThanOrEqual(least);
  expect(density).toBeLessThanOrEqual(100 + 1e-9);
});

test("the irregular instances together: at least 79.6 % dense on average", () => {
  expect(reached.length).toBe(Object.keys(LEAST).length);
  // Measured 80.3, 80.8 and 81.0 with seeds 1 to 3.
  expect(reached.reduce((sum, density) => sum + density, 0) / reached.length).toBeGreaterThanOrEqual(79.6);
});

test("outlines of more than a hundred corners (gardeyn0): a sound plan of at least 83.5 % density", () => {
  const [instance] = instancesOf("detailed/gardeyn0.json");
  // Measured 85.4; best published 89.85 (Gardeyn, Vanden Berghe & Wauters 2025).
  expect(judged(instance!, 1_000_000).density).toBeGreaterThanOrEqual(83.5);
});
