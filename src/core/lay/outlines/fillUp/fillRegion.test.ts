import { expect, test } from "vitest";
import { type Ring, solid } from "../../../geometry/ring.ts";
import type { LayPiece } from "../../problem/layProblem.ts";
import type { RegionJob } from "../../problem/region.ts";
import { seededRng } from "../../search/rng.ts";
import { compileJob } from "../compile/compileJob.ts";
import { copySpots, emptySpots, type Spots, WorkLayout } from "../layout/workLayout.ts";
import { NoFitStore } from "../noFit/noFitStore.ts";
import { SEPARATION_TUNING, Separator } from "../search/separate.ts";
import { FILL_TUNING, RegionFiller } from "./fillRegion.ts";

function piece(id: string, outline: Ring): LayPiece {
  const orientations = [0, 90, 180, 270].map((turnDeg) => ({ turnDeg, mirrored: false }));
  return { id, outline: solid(outline), count: 8, orientations, freeTurn: false };
}

/** More than the cloth takes. */
const job: RegionJob = {
  region: { width: 400, length: 420, outline: null, flaws: [] },
  pieces: [
    piece("flap", Float64Array.of(0, 0, 130, 0, 100, 90, 20, 90)),
    piece("gusset", Float64Array.of(0, 0, 150, 0, 150, 40, 60, 40, 60, 110, 0, 110)),
    piece("tab", Float64Array.of(0, 0, 70, 0, 90, 35, 70, 70, 0, 70)),
  ],
  gap: 0,
  margin: 0,
  pinned: [],
  goal: "most",
};

function filler(seed: number): { readonly state: WorkLayout; readonly fill: RegionFiller } {
  const compiled = compileJob(job);
  const state = new WorkLayout(compiled, new NoFitStore(compiled));
  const rng = seededRng(seed);
  return { state, fill: new RegionFiller(state, new Separator(state, rng, SEPARATION_TUNING), rng, FILL_TUNING) };
}

/** Runs a filler, tells it `told` at its hundredth pause, and returns the area of its best layout at every pause. */
function areas(seed: number, evaluations: number, told: Spots | null): { last: Spots; areas: number[] } {
  const { state, fill } = filler(seed);
  const all: number[] = [];
  for (const _ of fill.run()) {
    if (all.length === 100 && told !== null) fill.offer(told);
    all.push(state.laidArea(fill.best));
    if (state.evaluations > evaluations) break;
  }
  const last = emptySpots(state.count);
  copySpots(fill.best, last);
  return { last, areas: all };
}

test("the best layout never gets worse, though the search steps aside, nor when a better one is told during an attempt", () => {
  const far = areas(1, 400_000, null);
  const near = areas(2, 100_000, far.last);
  for (const { areas: all } of [far, near]) {
    for (let i = 1; i < all.length; i++) expect(all[i]).toBeGreaterThanOrEqual(all[i - 1]!);
    expect(all.at(-1)).toBeGreaterThan(all[0]!);
  }
  expect(near.areas[100]).toBe(far.areas.at(-1));
  expect(near.areas[99]).toBeLessThan(near.areas[100]!);
});
