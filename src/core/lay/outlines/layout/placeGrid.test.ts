import { expect, test } from "vitest";
import { ringBox } from "../../../geometry/box.ts";
import { type Ring, rectangleRing, solid } from "../../../geometry/ring.ts";
import type { RegionJob } from "../../problem/region.ts";
import { seededRng } from "../../search/rng.ts";
import { compileJob } from "../compile/compileJob.ts";
import { NoFitStore } from "../noFit/noFitStore.ts";
import { Nearby } from "./nearby.ts";
import { WorkLayout } from "./workLayout.ts";

/** `count` triangles from 3 mm to 1 m on a roll with flaws. */
function scatteredState(count: number): WorkLayout {
  const rng = seededRng(count);
  const job: RegionJob = {
    region: {
      width: 1200,
      length: null,
      outline: null,
      flaws: Array.from({ length: 9 }, (_, k) => solid(rectangleRing(60 + 300 * k, 100 * k, 40, 60))),
    },
    pieces: Array.from({ length: count }, (_, i) => {
      const size = 3 * 333 ** rng.unit();
      const ring: Ring = Float64Array.from([0, 0, size, 0, size * rng.unit(), size]);
      const orientations = [0, 90].map((turnDeg) => ({ turnDeg, mirrored: false }));
      return { id: `p${i}`, outline: solid(ring), count: 1, orientations, freeTurn: false };
    }),
    gap: 0,
    margin: 0,
    pinned: [],
    goal: "shortest",
  };
  const compiled = compileJob(job);
  const state = new WorkLayout(compiled, new NoFitStore(compiled));
  state.maxX = 3000 * compiled.unitsPerMm;
  for (let i = 0; i < count; i++) if (i % 9 !== 4) toss(state, i, rng.unit(), rng.unit());
  return state;
}

function toss(state: WorkLayout, item: number, u: number, v: number): void {
  const variants = state.job.variantsOf[state.job.items[item]!.shape]!;
  const variant = variants[Math.floor(u * 1e6) % variants.length]!;
  const x = state.lowX(variant) + u * (state.highX(variant) - state.lowX(variant));
  const y = state.lowY(variant) + v * (state.highY(variant) - state.lowY(variant));
  state.placeWithin(item, variant, x, y);
}

/** Columns within `margin` of a copy at (x, y), asked one by one. */
function metOneByOne(
  state: WorkLayout,
  item: number,
  variant: number,
  x: number,
  y: number,
  margin: number,
): number[] {
  const own = state.job.variants[variant]!;
  return [...state.order].filter((j) => {
    if (j === item) return false;
    if (j < state.count && state.spots.variant[j]! < 0) return false;
    const { obstacles, variants } = state.job;
    const other =
      j < state.count ? variants[state.spots.variant[j]!]! : ringBox(obstacles[j - state.count]!.grid.outer);
    const { x: ox, y: oy } =
      j < state.count ? { x: state.spots.x[j]!, y: state.spots.y[j]! } : obstacles[j - state.count]!;
    return (
      x + own.maxX + margin > ox + other.minX &&
      x + own.minX - margin < ox + other.maxX &&
      y + own.maxY + margin > oy + other.minY &&
      y + own.minY - margin < oy + other.maxY
    );
  });
}

test.each([7, 40, 130])("what is near a place is found as by asking all %i copies", (count) => {
  const state = scatteredState(count);
  const rng = seededRng(3);
  const near = new Nearby(state);
  state.places.rebuild(state.maxX);
  let met = 0;
  for (let round = 0; round < 120; round++) {
    const item = rng.below(count);
    if (state.spots.variant[item]! < 0) continue;
    toss(state, item, rng.unit(), rng.unit());
    state.places.move(item);
    const variant = state.spots.variant[item]!;
    const x = state.lowX(variant) + rng.unit() * (state.highX(variant) - state.lowX(variant));
    const y = state.lowY(variant) + rng.unit() * (state.highY(variant) - state.lowY(variant));
    const margin = 0.03 * state.job.shapes[state.job.items[item]!.shape]!.extent * rng.below(2);
    near.open(item, variant);
    const found = near.gather(x, y, margin);
    const wanted = metOneByOne(state, item, variant, x, y, margin);
    expect([...near.pick.subarray(0, found)]).toEqual(wanted);
    met += wanted.length;
    let sum = 0;
    for (let p = 0; p < found; p++) sum += near.depthOf(p, x, y);
    // Anew, so that rows are written while they are asked.
    near.open(item, variant);
    const whole = near.depthAt(x, y, Infinity);
    expect(whole).toBeCloseTo(sum, 6);
    expect(near.depthAt(x, y, Infinity)).toBe(whole);
    near.open(item, variant);
    if (whole > 0) expect(near.depthAt(x, y, whole / 2)).toBeGreaterThanOrEqual(whole / 2);
    near.open(item, variant);
    expect(near.depthAt(x, y, whole + 1)).toBe(whole);
  }
  expect(met).toBeGreaterThan(50);
});
