import { expect, test } from "vitest";
import { solid } from "../../../geometry/ring.ts";
import type { LayPiece } from "../../problem/layProblem.ts";
import type { RegionJob } from "../../problem/region.ts";
import { seededRng } from "../../search/rng.ts";
import { compileJob } from "../compile/compileJob.ts";
import { Nearby } from "../layout/nearby.ts";
import { WorkLayout } from "../layout/workLayout.ts";
import { NoFitStore } from "../noFit/noFitStore.ts";
import { StepScan, stepOf } from "./stepScan.ts";

const TURNS = [0, 90, 180, 270].map((turnDeg) => ({ turnDeg, mirrored: false }));

function piece(id: string, corners: readonly number[], count = 1): LayPiece {
  return { id, outline: solid(Float64Array.from(corners)), count, orientations: TURNS, freeTurn: false };
}

/** An angle, a wedge and a cross, all corners on whole centimetres. */
const PIECES = [
  piece("angle", [0, 0, 40, 0, 40, 20, 10, 20, 10, 50, 0, 50], 6),
  piece("wedge", [0, 0, 60, 0, 20, 30], 5),
  piece("cross", [10, 0, 20, 0, 20, 10, 30, 10, 30, 20, 20, 20, 20, 30, 10, 30, 10, 20, 0, 20, 0, 10, 10, 10]),
];

const JOB: RegionJob = {
  region: { width: 95, length: null, outline: null, flaws: [] },
  pieces: PIECES,
  gap: 0,
  margin: 5,
  pinned: [],
  goal: "shortest",
};

function layoutOf(job: RegionJob): WorkLayout {
  const compiled = compileJob(job);
  return new WorkLayout(compiled, new NoFitStore(compiled));
}

test("the step is the largest of which all corners are whole multiples apart", () => {
  const stepMm = (pieces: readonly LayPiece[], more: Partial<RegionJob> = {}): number => {
    const { job } = layoutOf({ ...JOB, pieces, ...more });
    return stepOf(job) / job.unitsPerMm;
  };
  expect(stepMm(PIECES)).toBeCloseTo(10, 9);
  expect(stepMm([...PIECES, piece("strip", [0, 0, 55, 0, 55, 20, 30, 30, 0, 20])])).toBeCloseTo(5, 9);
  // Half an inch and three quarters: a quarter.
  expect(stepMm([piece("inches", [0, 0, 38.1, 0, 38.1, 19.05, 12.7, 31.75, 0, 19.05])])).toBeCloseTo(6.35, 9);
});

test("jobs with no such steps, or with places that are held to something else, are not scanned", () => {
  const scanOf = (job: RegionJob): StepScan | null => StepScan.of(layoutOf(job), seededRng(1));
  expect(scanOf(JOB)).not.toBeNull();
  expect(scanOf({ ...JOB, pieces: [...PIECES, piece("odd", [0, 0, 61.37, 0, 20.011, 33.33])] })).toBeNull();
  expect(scanOf({ ...JOB, pieces: PIECES.map((one) => ({ ...one, freeTurn: true })) })).toBeNull();
  const flaw = solid(Float64Array.of(20, 20, 30, 20, 25, 31));
  expect(scanOf({ ...JOB, region: { ...JOB.region, flaws: [flaw] } })).toBeNull();
});

test("a piece exactly as high as its room keeps to it, in any unit", () => {
  for (const unit of [1, 2.54, 0.1, 0.635, 3.3, 7.7]) {
    const pieces = PIECES.map((one) => ({
      ...one,
      outline: solid(one.outline.outer.map((value) => value * unit)),
      orientations: TURNS.slice(0, 1),
    }));
    const state = layoutOf({ ...JOB, pieces, region: { ...JOB.region, width: 50 * unit + 2 * JOB.margin } });
    const scan = StepScan.of(state, seededRng(1))!;
    const { job } = state;
    state.maxX = scan.endAtMost(job.window.minX + 600 * unit * job.unitsPerMm);
    for (let i = 0; i < state.count; i++) state.placeWithin(i, job.variantsOf[job.items[i]!.shape]![0]!, 1e9, 1e9);
    scan.align();
    state.places.rebuild(state.maxX);
    const item = job.items.findIndex(({ piece }) => piece === 0);
    scan.run(item);
    expect(scan.value).toBe(0);
    for (const y of [state.spots.y[item]!, scan.y]) {
      expect(y).toBeGreaterThanOrEqual(state.lowY(scan.variant) - 1);
      expect(y).toBeLessThanOrEqual(state.highY(scan.variant) + 1);
    }
  }
});

test("a scan finds the least of all places on whole steps, whatever lies there and however it is weighed", () => {
  const rng = seededRng(3);
  const state = layoutOf(JOB);
  const { job } = state;
  const step = 10 * job.unitsPerMm;
  const scan = StepScan.of(state, rng)!;
  const near = new Nearby(state);
  state.maxX = scan.endAtMost(job.window.minX + 12.7 * step);
  expect(state.maxX).toBeCloseTo(job.window.minX + 12 * step, 6);
  state.spots.maxX = state.maxX;
  let [free, covered] = [0, 0];
  for (let round = 0; round < 60; round++) {
    if (round % 2 === 0) state.setGravity(round % 4 === 0 ? 0 : 0.25);
    for (let i = 0; i < state.count; i++) {
      const variant =
        job.variantsOf[job.items[i]!.shape]![rng.below(4)] ?? job.variantsOf[job.items[i]!.shape]![0]!;
      // In a third of the rounds they crowd together.
      const span = round % 3 === 0 ? 0.3 : 1;
      const x = state.lowX(variant) + span * rng.unit() * (state.highX(variant) - state.lowX(variant));
      state.placeWithin(
        i,
        variant,
        x,
        state.lowY(variant) + rng.unit() * (state.highY(variant) - state.lowY(variant)),
      );
    }
    scan.align();
    state.places.rebuild(state.maxX);
    for (let i = 0; i < state.count; i++) for (let j = 0; j < i; j++) state.pairs.setOverlap(i, j, rng.unit());
    state.pairs.growWeights(1.2, 3, 0.95);
    const item = rng.below(state.count);
    const weights = Float32Array.from(state.pairs.openWeights(item));
    state.pairs.closeWeights(item);
    let least = Infinity;
    for (const variant of job.variantsOf[job.items[item]!.shape]!) {
      near.open(item, variant, weights);
      for (let x = state.lowX(variant); x <= state.highX(variant) + 1; x += step)
        for (let y = state.lowY(variant); y <= state.highY(variant) + 1; y += step)
          least = Math.min(least, near.depthAt(x, y, Infinity));
    }
    scan.run(item);
    // Sums of single precision.
    expect(Math.abs(scan.value - least)).toBeLessThanOrEqual(1e-5 * least);
    near.open(item, scan.variant, weights);
    expect(Math.abs(near.depthAt(scan.x, scan.y, Infinity) - least)).toBeLessThanOrEqual(1e-5 * least);
    expect(scan.x).toBeGreaterThanOrEqual(state.lowX(scan.variant) - 1);
    expect(scan.x).toBeLessThanOrEqual(state.highX(scan.variant) + 1);
    expect(scan.y).toBeLessThanOrEqual(state.highY(scan.variant) + 1);
    if (least === 0) free++;
    else covered++;
  }
  expect(free).toBeGreaterThan(5);
  expect(covered).toBeGreaterThan(5);
});
