import { expect, test } from "vitest";
import { ringBox } from "../../../geometry/box.ts";
import { sharedArea } from "../../../geometry/clipper.ts";
import { posePolygon } from "../../../geometry/pose.ts";
import { type Ring, signedArea, solid } from "../../../geometry/ring.ts";
import type { RegionJob } from "../../problem/region.ts";
import { BREATH } from "../../search/breath.ts";
import { seededRng } from "../../search/rng.ts";
import { compileJob } from "../compile/compileJob.ts";
import { planOf } from "../judge/planOf.ts";
import { WorkLayout } from "../layout/workLayout.ts";
import { NoFitStore } from "../noFit/noFitStore.ts";
import { sumWork } from "../noFit/sumOutline.kernel.ts";
import { OUTLINE_TUNING, outlineEngineWith } from "../outlineEngine.ts";
import { SEPARATION_TUNING, Separator } from "../search/separate.ts";
import { layRows, mayLieInRows } from "./layRows.ts";
import { rowSteps } from "./rowSteps.ts";

const ANGLE = Float64Array.of(0, 0, 140, 0, 140, 10, 10, 10, 10, 110, 0, 110);

/** A band of 20 mm bent to an arc, of 62 corners. */
function arc(): Ring {
  const points: number[] = [];
  for (const [radius, way] of [
    [220, 1],
    [200, -1],
  ] as const)
    for (let k = 0; k <= 30; k++) {
      const turn = way * (k / 30 - 0.5) * 0.7;
      points.push(radius * Math.sin(-turn), radius * Math.cos(turn));
    }
  return Float64Array.from(points);
}

const JOB: RegionJob = {
  region: { width: 300, length: null, outline: null, flaws: [] },
  pieces: [ANGLE, arc()].map((ring, i) => ({
    id: `${i}`,
    outline: solid(ring),
    count: 12,
    orientations: [0, 90, 180, 270].map((turnDeg) => ({ turnDeg, mirrored: false })),
    freeTurn: false,
  })),
  gap: 2,
  margin: 5,
  pinned: [],
  goal: "shortest",
};

test("angles follow each other by their own thickness in both directions", () => {
  const [step] = rowSteps(ANGLE, 140, sumWork());
  expect(step!.x).toBeCloseTo(10, 1);
  expect(step!.y).toBeCloseTo(10, 1);
  // Plane geometry: (10, 10) by the angle's spread of 250 across it is a band of 2,500 mm² a copy; the angle has 2,400.
  expect(step!.fullness).toBeCloseTo(2400 / 2500, 2);
});

test("layouts of rows have every copy, a gap apart and within the margin, and each is shorter than the one before", () => {
  const compiled = compileJob(JOB);
  expect(compiled.isDetailed).toBe(true);
  const state = new WorkLayout(compiled, new NoFitStore(compiled));
  expect(mayLieInRows(state)).toBe(true);
  const outlines = new Map(JOB.pieces.map(({ id, outline }) => [id, outline]));
  let last = Infinity;
  let layouts = 0;
  for (const found of layRows(state, seededRng(1), OUTLINE_TUNING, 1_000_000)) {
    if (found === undefined || found === BREATH) continue;
    // Each of the six choices has 120,000 evaluations here; the first layout is told long before one is through.
    if (layouts++ === 0) expect(state.evaluations).toBeLessThan(100_000);
    expect(found.maxX).toBeLessThan(last);
    last = found.maxX;
    state.spots.variant.set(found.variant);
    state.spots.x.set(found.x);
    state.spots.y.set(found.y);
    state.maxX = found.maxX;
    const separator = new Separator(state, seededRng(1), SEPARATION_TUNING);
    for (const _ of separator.measureAll());
    expect(separator.total()).toBe(0);
    const plan = planOf(compiled, found);
    expect(plan.left).toEqual([0, 0]);
    const laid = plan.placements.map((place) => posePolygon(outlines.get(place.pieceId)!, place));
    for (const [i, a] of laid.entries()) {
      const { minX, minY, maxY } = ringBox(a.outer);
      expect(Math.min(minX, minY)).toBeGreaterThan(5 - 1e-6);
      expect(maxY).toBeLessThan(295 + 1e-6);
      for (const b of laid.slice(0, i)) expect(sharedArea(a, b)).toBeLessThan(1e-6 * signedArea(a.outer));
    }
  }
  expect(layouts).toBeGreaterThan(0);
}, 60_000);

test("the engine looks at rows where it may look for repeats", () => {
  const length = (repeats: boolean): number => {
    const search = outlineEngineWith({ ...OUTLINE_TUNING, repeats }).search(JOB, { evaluations: 400_000 }, 1);
    for (let step = search.next(); ; step = search.next()) if (step.done) return step.value.length;
  };
  const area = 12 * JOB.pieces.reduce((sum, { outline }) => sum + signedArea(outline.outer), 0);
  const [withRows, without] = [length(true), length(false)];
  expect(withRows).not.toBe(without);
  for (const found of [withRows, without]) expect(found).toBeGreaterThan(area / JOB.region.width);
}, 60_000);
