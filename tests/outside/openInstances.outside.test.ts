// Open strip-packing instances: Hopper & Turton 2001 (C1-P1 … C7-P3), Fujita et al. 1993 (fu), Dowsland et al. 1998
// (shirts), as published; every placement judged from the raw outlines, shared areas by polyclip-ts.
import { existsSync, readFileSync } from "node:fs";
import { intersection } from "polyclip-ts";
import { expect, test } from "vitest";
import { benchProblem } from "../../src/cli/bench/benchProblem.ts";
import { type Instance, readDataset } from "../../src/cli/bench/dataset.ts";
import { poseRing } from "../../src/core/geometry/pose.ts";
import { type Ring, ringBox, signedArea } from "../../src/core/geometry/ring.ts";
import { chooseEngines } from "../../src/core/lay/engines/chooseEngines.ts";
import type { LayPlan, LayProblem } from "../../src/core/lay/problem/layProblem.ts";
import { arrange } from "../../src/core/lay/search/arrange/arrange.ts";

const folder = new URL("../../../shared/benchmarks/", import.meta.url);
const absent = !existsSync(folder);
if (absent)
  console.warn("SKIPPED: the open instances are not beside the project, so no plan of theirs was judged.");

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

function points(ring: Ring): [number, number][] {
  return Array.from({ length: ring.length / 2 }, (_, i) => [ring[2 * i]!, ring[2 * i + 1]!]);
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

test.skipIf(absent)(
  "Hopper & Turton C: 21 plans, all sound, mean gap over the constructed optimum at most 5 %",
  () => {
    const file = "rect/hopper-turton-c.json";
    const optima: { optimum: number }[] = JSON.parse(readFileSync(new URL(file, folder), "utf8"));
    const gaps = instancesOf(file).map((instance, i) => {
      const problem = benchProblem(instance, false);
      const plan = planFor(problem, 12_000_000);
      expectApart(laidOutlines(problem, plan, instance.stripWidth));
      return plan.uses[0]!.usedLength / optima[i]!.optimum - 1;
    });
    expect(gaps.length).toBe(21);
    expect(Math.min(...gaps)).toBeGreaterThanOrEqual(-1e-9);
    expect(gaps.reduce((sum, gap) => sum + gap, 0) / 21).toBeLessThanOrEqual(0.05);
  },
);

test.skipIf(absent)("fu and shirts: sound plans of at least 78 % density", () => {
  for (const file of ["irregular/fu.json", "irregular/shirts.json"]) {
    const [instance] = instancesOf(file);
    const problem = benchProblem(instance!, false);
    const plan = planFor(problem, 8_000_000);
    const outlines = laidOutlines(problem, plan, instance!.stripWidth);
    expectApart(outlines);
    const area = outlines.reduce((sum, ring) => sum + signedArea(ring), 0);
    expect(area / (instance!.stripWidth * plan.uses[0]!.usedLength), file).toBeGreaterThanOrEqual(0.78);
  }
});
