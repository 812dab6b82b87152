import { expect, test } from "vitest";
import { type Ring, solid } from "../../../geometry/ring.ts";
import type { RegionJob } from "../../problem/region.ts";
import { seededRng } from "../../search/rng.ts";
import { compileJob } from "../compile/compileJob.ts";
import { innerDiscs } from "../compile/innerDiscs.ts";
import { NoFitStore } from "../noFit/noFitStore.ts";
import { Nearby } from "./nearby.ts";
import { copySpots, WorkLayout } from "./workLayout.ts";

/** A wavy outline of 90 corners. */
function wavy(seed: number): Ring {
  const rng = seededRng(seed);
  const [w, h, rise, phase] = [60 + 90 * rng.unit(), 60 + 90 * rng.unit(), 0.3 * rng.unit(), 6 * rng.unit()];
  return Float64Array.from({ length: 180 }, (_, i) => {
    const turn = (2 * Math.PI * (i >> 1)) / 90;
    const reach = 1 + rise * Math.sin(4 * turn + phase);
    return i % 2 === 0 ? w * reach * Math.cos(turn) : h * reach * Math.sin(turn);
  });
}

const JOB: RegionJob = {
  region: { width: 900, length: null, outline: null, flaws: [] },
  pieces: Array.from({ length: 16 }, (_, i) => ({
    id: `${i}`,
    outline: solid(wavy(i + 1)),
    count: 1,
    orientations: [0, 90, 180, 270].map((turnDeg) => ({ turnDeg, mirrored: false })),
    freeTurn: false,
  })),
  gap: 0,
  margin: 0,
  pinned: [],
  goal: "shortest",
};

test("discs decide only what the no-fit polygon would decide the same way", () => {
  const compiled = compileJob(JOB);
  expect(compiled.isDetailed).toBe(true);
  const rng = seededRng(2);
  let early = 0;
  for (let round = 0; round < 40; round++) {
    const state = new WorkLayout(compiled, new NoFitStore(compiled));
    const reach = 2e7;
    for (let i = 0; i < state.count; i++) {
      state.spots.variant[i] = compiled.variantsOf[compiled.items[i]!.shape]![rng.below(4)]!;
      state.spots.x[i] = reach * (1 + 4 * rng.unit());
      state.spots.y[i] = reach * (1 + 3 * rng.unit());
    }
    state.maxX = 6 * reach;
    state.places.rebuild(state.maxX);
    const near = new Nearby(state);
    const item = rng.below(state.count);
    const asked = Array.from({ length: 20 }, () => {
      const [x, y] = [reach * (1 + 4 * rng.unit()), reach * (1 + 3 * rng.unit())];
      const limit = reach * rng.unit();
      near.open(item, state.spots.variant[item]!);
      const before = state.store.built;
      const isLost = near.depthAt(x, y, limit) >= limit;
      if (isLost && state.store.built === before) early++;
      return { x, y, limit, isLost };
    });
    for (const { x, y, limit, isLost } of asked) expect(near.depthAt(x, y, Infinity) >= limit).toBe(isLost);
  }
  expect(early).toBeGreaterThan(20);
});

test("discs lie inside their outline, the first nearly the largest there is", () => {
  const square = innerDiscs(Float64Array.of(0, 0, 10, 0, 10, 10, 0, 10));
  expect(square[2]).toBeGreaterThan(4.9);
  expect(square[2]).toBeLessThanOrEqual(5);
  const bar = innerDiscs(Float64Array.of(0, 0, 40, 0, 40, 4, 0, 4));
  expect(bar.length).toBe(12);
  for (let k = 0; k < bar.length; k += 3)
    expect(Math.min(bar[k + 1]!, 4 - bar[k + 1]!)).toBeCloseTo(bar[k + 2]!, 9);
});

test("rows kept from earlier searches say what rows written anew say, after moves, other weights and a new window", () => {
  const corners = [0, 0, 70, 0, 70, 30, 30, 30, 30, 60, 0, 60];
  const plain = JOB.pieces.slice(0, 6).map((piece, i) => ({
    ...piece,
    outline: solid(Float64Array.from(corners, (value) => value * (1 + i / 5))),
  }));
  const compiled = compileJob({ ...JOB, pieces: plain });
  expect(compiled.isDetailed).toBe(false);
  const store = new NoFitStore(compiled);
  const rng = seededRng(5);
  const reach = Math.max(...compiled.shapes.map(({ extent }) => extent));
  const state = new WorkLayout(compiled, store);
  const near = new Nearby(state);
  const other = new Nearby(state);
  const put = (item: number): void => {
    state.spots.variant[item] = compiled.variantsOf[compiled.items[item]!.shape]![rng.below(4)]!;
    state.spots.x[item] = reach * (1 + 2 * rng.unit());
    state.spots.y[item] = reach * (1 + 2 * rng.unit());
  };
  let met = 0;
  for (let round = 0; round < 300; round++) {
    if (round % 50 === 0) {
      state.setGravity(round % 100 === 0 ? 0 : 0.25);
      for (let i = 0; i < state.count; i++) put(i);
      state.places.rebuild(5 * reach);
    }
    const moved = rng.below(state.count);
    put(moved);
    state.places.move(moved);
    const item = rng.below(state.count);
    const variant = compiled.variantsOf[compiled.items[item]!.shape]![rng.below(4)]!;
    const weights = Float32Array.from({ length: state.columns }, () => 1 + rng.unit());
    other.open(item, variant);
    near.open(item, variant, weights);
    const anew = new WorkLayout(compiled, store);
    copySpots(state.spots, anew.spots);
    anew.gravity.set(state.gravity);
    anew.places.rebuild(5 * reach);
    const twin = new Nearby(anew);
    twin.open(item, variant, weights);
    for (let k = 0; k < 10; k++) {
      const [x, y] = [reach * (1 + 2 * rng.unit()), reach * (1 + 2 * rng.unit())];
      const depth = near.depthAt(x, y, Infinity);
      expect(depth).toBe(twin.depthAt(x, y, Infinity));
      if (depth > 0) met++;
    }
  }
  expect(met).toBeGreaterThan(1000);
});
