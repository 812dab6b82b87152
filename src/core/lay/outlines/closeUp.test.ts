import { expect, test } from "vitest";
import { rectangleRing, solid } from "../../geometry/ring.ts";
import { seededRng } from "../rng.ts";
import type { LayPiece, RegionJob } from "../types.ts";
import { CloseUp } from "./closeUp.ts";
import { compileJob } from "./compileJob.ts";
import { LayState } from "./layState.ts";
import { NoFitStore } from "./noFitStore.ts";
import { SEPARATION_TUNING, Separator } from "./separate.ts";

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

/** The layout closed up from centres in mm: its length in mm, and the overlap left. */
function closed(job: RegionJob, centres: readonly (readonly [number, number])[]) {
  const compiled = compileJob(job);
  const state = new LayState(compiled, new NoFitStore(compiled));
  const scale = compiled.unitsPerMm;
  for (const [i, [x, y]] of centres.entries()) {
    state.spots.variant[i] = compiled.variantsOf[compiled.items[i]!.shape]![0]!;
    state.spots.x[i] = x * scale;
    state.spots.y[i] = y * scale;
  }
  const rng = seededRng(1);
  const run = new CloseUp(state, rng).run(state.leastEnd());
  let step = run.next();
  while (!step.done) step = run.next();
  const separator = new Separator(state, rng, SEPARATION_TUNING);
  for (const _ of separator.measureAll());
  return { done: step.value, length: state.end() / scale, overlap: separator.total() };
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
