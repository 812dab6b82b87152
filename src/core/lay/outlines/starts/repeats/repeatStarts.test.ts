import { expect, test } from "vitest";
import { ringBox } from "../../../../geometry/box.ts";
import { sharedArea } from "../../../../geometry/clipper.ts";
import { poseRing } from "../../../../geometry/pose.ts";
import { type Ring, signedArea, solid } from "../../../../geometry/ring.ts";
import type { RegionJob } from "../../../problem/region.ts";
import { compileJob } from "../../compile/compileJob.ts";
import { turnedOnGrid } from "../../compile/gridTools.ts";
import { repeatJobOf } from "./repeatJob.ts";
import { type RepeatStart, repeatStarts } from "./repeatStarts.ts";

const EITHER_WAY = [0, 180].map((turnDeg) => ({ turnDeg, mirrored: false }));

function jobOf(rings: readonly Ring[], count: number, width: number): RegionJob {
  const pieces = rings.map((ring, i) => ({
    id: `piece ${i}`,
    outline: solid(ring),
    count,
    orientations: EITHER_WAY,
    freeTurn: false,
  }));
  const region = { width, length: null, outline: null, flaws: [] };
  return { region, pieces, gap: 0, margin: 0, pinned: [], goal: "shortest" };
}

/** Best start, its outlines on the grid, its density, and the slices it took. */
function bestStart(job: RegionJob): {
  start: RepeatStart;
  outlines: Ring[];
  density: number;
  width: number;
  slices: number;
} {
  const compiled = compileJob(job);
  const { job: repeatJob, noFit } = repeatJobOf(compiled);
  let slices = 0;
  const counted: typeof noFit = (a, b) => {
    slices++;
    return noFit(a, b);
  };
  const search = repeatStarts(repeatJob, counted, 4);
  let step = search.next();
  while (!step.done) step = search.next();
  const start = step.value[0]!;
  const outlines = start.placed.map(({ variant, x, y }) => {
    const v = compiled.variants[variant]!;
    const ring = turnedOnGrid(compiled.shapes[v.shape]!.grid.outer, v.cos, v.sin, v.flip);
    return poseRing(ring, { x, y, turnDeg: 0, mirrored: false });
  });
  const area = outlines.reduce((sum, ring) => sum + signedArea(ring), 0);
  const { width } = repeatJob;
  return { start, outlines, density: area / (width * start.length), width, slices };
}

function expectClear(outlines: readonly Ring[], width: number): void {
  for (let i = 0; i < outlines.length; i++) {
    const box = ringBox(outlines[i]!);
    expect(box.minX).toBeGreaterThanOrEqual(0);
    expect(box.minY).toBeGreaterThanOrEqual(0);
    expect(box.maxY).toBeLessThanOrEqual(width);
    for (let j = 0; j < i; j++) {
      const shared = sharedArea(solid(outlines[i]!), solid(outlines[j]!));
      expect(shared / signedArea(outlines[j]!)).toBeLessThan(1e-6);
    }
  }
}

test("any triangle and its half turn tile the plane, so a row of them wastes only the ends", () => {
  // Plane geometry: two copies make a parallelogram.
  const { outlines, density, width, start } = bestStart(jobOf([Float64Array.of(0, 0, 60, 0, 20, 50)], 40, 150));
  expectClear(outlines, width);
  expect(start.left[0]).toBeLessThan(4);
  expect(density).toBeGreaterThan(0.9);
});

test("an L and its half turn close up to a rectangle", () => {
  // Two L trominoes make a 2 × 3 rectangle (polyomino tilings, Golomb 1994), so density 1 is possible.
  const tromino = Float64Array.of(0, 0, 20, 0, 20, 10, 10, 10, 10, 20, 0, 20);
  const { outlines, density, width } = bestStart(jobOf([tromino], 24, 60));
  expectClear(outlines, width);
  expect(density).toBeCloseTo(1, 6);
});

test("two shapes are mixed where that is denser than each by itself", () => {
  const notch = Float64Array.of(0, 0, 30, 0, 30, 10, 10, 10, 10, 20, 30, 20, 30, 30, 0, 30);
  const key = Float64Array.of(0, 0, 20, 0, 20, 9.9, 0, 9.9);
  const { outlines, density, width } = bestStart(jobOf([notch, key], 12, 90));
  expectClear(outlines, width);
  // The key fills all but 2 mm² of the notch: each pair covers 898 of a square of 900.
  expect(density).toBeCloseTo(898 / 900, 3);
});

test("eight shapes of many copies: repeats of several of them, and an end to the looking", () => {
  const triangles = [0, 1, 2, 3, 4, 5, 6, 7].map((i) =>
    Float64Array.of(0, 0, 60 + 7 * i, 0, 20 + 3 * i, 50 + 5 * i),
  );
  const job = jobOf(triangles, 15, 300);
  const turns = [0, 90, 180, 270].map((turnDeg) => ({ turnDeg, mirrored: false }));
  const turning = { ...job, pieces: job.pieces.map((piece) => ({ ...piece, orientations: turns })) };
  const { outlines, density, width, start, slices } = bestStart(turning);
  expectClear(outlines, width);
  // By themselves the triangles of each shape tile a row but for its ends (plane geometry).
  expect(density).toBeGreaterThan(0.75);
  const left = start.left.reduce((sum, count) => sum + count, 0);
  expect(left).toBeLessThan(30);
  expect(slices).toBeLessThan(2e6);
}, 60_000);
