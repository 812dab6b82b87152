import { expect, test } from "vitest";
import { rectangleRing, solid } from "../../../geometry/ring.ts";
import type { LayPiece } from "../../problem/layProblem.ts";
import type { RegionJob } from "../../problem/region.ts";
import { seededRng } from "../../search/rng.ts";
import { compileJob } from "../compile/compileJob.ts";
import { WorkLayout } from "../layout/workLayout.ts";
import { NoFitStore } from "../noFit/noFitStore.ts";
import { SEPARATION_TUNING, Separator } from "../search/separate.ts";
import { CloseUp } from "./closeUp.ts";

const AS_IS = [{ turnDeg: 0, mirrored: false }];

function jobOf(width: number, pieces: LayPiece[]): RegionJob {
  return {
    region: { width, length: null, outline: null, flaws: [] },
    pieces,
    gap: 0,
    margin: 0,
    pinned: [],
    goal: "shortest",
  };
}

function piece(id: string, ring: Float64Array, count: number): LayPiece {
  return { id, outline: solid(ring), count, orientations: AS_IS, freeTurn: false };
}

/** Copies laid at centres in mm; those after the last are missing. */
function laid(job: RegionJob, centres: readonly (readonly [number, number])[]) {
  const compiled = compileJob(job);
  const state = new WorkLayout(compiled, new NoFitStore(compiled));
  const scale = compiled.unitsPerMm;
  for (const [i, [x, y]] of centres.entries()) {
    state.spots.variant[i] = compiled.variantsOf[compiled.items[i]!.shape]![0]!;
    state.spots.x[i] = x * scale;
    state.spots.y[i] = y * scale;
  }
  return { state, scale };
}

/** Runs to the end; whether that succeeded, and the overlap left. */
function outcome(state: WorkLayout, run: Generator<unknown, boolean>) {
  let step = run.next();
  while (!step.done) step = run.next();
  const separator = new Separator(state, seededRng(1), SEPARATION_TUNING);
  for (const _ of separator.measureAll());
  return { done: step.value, overlap: separator.total() };
}

/** The layout closed up from centres in mm: its length in mm, and the overlap left. */
function closed(job: RegionJob, centres: readonly (readonly [number, number])[]) {
  const { state, scale } = laid(job, centres);
  const found = outcome(state, new CloseUp(state, seededRng(1)).run(state.leastEnd()));
  return { ...found, length: state.end() / scale };
}

test("a loose row of squares closes up to touch exactly", () => {
  const squares = piece("square", rectangleRing(0, 0, 100, 100), 4);
  const { done, length, overlap } = closed(jobOf(100, [squares]), [
    [52, 50],
    [157, 50],
    [261, 50],
    [368, 50],
  ]);
  expect(done).toBe(true);
  expect(length).toBeCloseTo(400, 6);
  expect(overlap).toBe(0);
});

test("triangles leaning on each other slide along their slopes: two right triangles make their rectangle", () => {
  const low = piece("low", Float64Array.from([0, 0, 100, 0, 0, 60]), 1);
  const high = piece("high", Float64Array.from([100, 0, 100, 60, 0, 60]), 1);
  const { length, overlap } = closed(jobOf(60, [low, high]), [
    [50, 30],
    [58, 30],
  ]);
  expect(length).toBeCloseTo(100, 6);
  expect(overlap).toBe(0);
});

test("a shallow overlap is undone, all copies giving way together", () => {
  const squares = piece("square", rectangleRing(0, 0, 100, 100), 3);
  const { done, length, overlap } = closed(jobOf(100, [squares]), [
    [50, 50],
    [147, 50],
    [244, 50],
  ]);
  expect(done).toBe(true);
  expect(length).toBeCloseTo(300, 6);
  expect(overlap).toBe(0);
});

test("a hook stays in its notch: both sides of the contact are kept", () => {
  const notched = piece(
    "notched",
    Float64Array.from([0, 0, 100, 0, 100, 20, 50, 20, 50, 40, 100, 40, 100, 60, 0, 60]),
    1,
  );
  const tongue = piece("tongue", rectangleRing(0, 0, 60, 18), 1);
  const { length, overlap } = closed(jobOf(60, [notched, tongue]), [
    [50, 30],
    [84, 30.5],
  ]);
  expect(length).toBeCloseTo(110, 6);
  expect(overlap).toBe(0);
});

test("clearing a closed region undoes overlaps away from a point, without the missing copy", () => {
  const job: RegionJob = {
    ...jobOf(100, [piece("square", rectangleRing(0, 0, 100, 100), 4)]),
    region: { width: 100, length: 340, outline: null, flaws: [] },
  };
  const { state, scale } = laid(job, [
    [54, 50],
    [150, 50],
    [245, 50],
  ]);
  const { done, overlap } = outcome(state, new CloseUp(state, seededRng(1)).clear(200 * scale, 50 * scale));
  expect(done).toBe(true);
  expect(overlap).toBe(0);
  expect(state.spots.variant[3]).toBe(-1);
  expect(state.spots.x[0]! / scale).toBeCloseTo(50, 6);
  expect(state.spots.x[1]! / scale).toBeCloseTo(150, 6);
  expect(state.spots.x[2]! / scale).toBeGreaterThan(250 - 1e-6);
  expect(state.spots.x[2]! / scale).toBeLessThan(290 + 1e-6);
});

test("clearing gives up where there is no room", () => {
  const job: RegionJob = {
    ...jobOf(100, [piece("square", rectangleRing(0, 0, 100, 100), 2)]),
    region: { width: 100, length: 195, outline: null, flaws: [] },
  };
  const { state, scale } = laid(job, [
    [50, 50],
    [145, 50],
  ]);
  const run = new CloseUp(state, seededRng(1)).clear(100 * scale, 50 * scale);
  expect(outcome(state, run).done).toBe(false);
});

/** A disc of so many corners, flats at its ends rounded away. */
function disc(radius: number, corners: number): Float64Array {
  return Float64Array.from({ length: 2 * corners }, (_, i) => {
    const turn = (2 * Math.PI * (i >> 1)) / corners;
    return radius * (i % 2 === 0 ? Math.cos(turn) : Math.sin(turn));
  });
}

test("by their outlines in detail copies come nearer than by the coarser ones, and no nearer than they may", () => {
  const radius = 50;
  const job = jobOf(130, [piece("disc", disc(radius, 400), 4)]);
  const centres = [0, 1, 2, 3].map((i): [number, number] => [52 + 104 * i, i % 2 === 0 ? 51 : 79]);
  const ends = [false, true].map((byDetail) => {
    const { state, scale } = laid(job, centres);
    expect(state.job.isDetailed).toBe(true);
    outcome(state, new CloseUp(state, seededRng(1), byDetail).run(state.leastEnd()));
    const { x, y } = state.spots;
    for (let i = 1; i < 4; i++) {
      const apart = Math.hypot(x[i]! - x[i - 1]!, y[i]! - y[i - 1]!) / scale;
      expect(apart).toBeGreaterThan(2 * radius * Math.cos(Math.PI / 400) - 1e-6);
    }
    return state.end() / scale;
  });
  expect(ends[1]).toBeLessThan(ends[0]!);
});

/** A square of 100 mm with a row of teeth along its upper side: too many corners to be searched as it is. */
function toothed(): Float64Array {
  const points = [0, 0, 100, 0, 100, 100];
  for (let x = 98; x > 0; x -= 2) points.push(x + 1, 99, x, 100);
  return Float64Array.from([...points, 0, 100]);
}

test("in a job of many corners two copies whose boxes touch stay beside each other, and all close up to a row", () => {
  const job = jobOf(140, [piece("toothed", toothed(), 3)]);
  expect(compileJob(job).isDetailed).toBe(true);
  const { done, length, overlap } = closed(job, [
    [50, 50],
    [150, 60],
    [290, 55],
  ]);
  expect(done).toBe(true);
  expect(overlap).toBe(0);
  expect(length).toBeGreaterThan(299.9);
  expect(length).toBeLessThan(300.1);
});
