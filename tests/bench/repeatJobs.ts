import { type Ring, solid } from "../../src/core/geometry/ring.ts";
import type { LayPiece } from "../../src/core/lay/problem/layProblem.ts";
import type { RegionJob } from "../../src/core/lay/problem/region.ts";
import { seededRng } from "../../src/core/lay/search/rng.ts";

const EITHER_WAY = [0, 180].map((turnDeg) => ({ turnDeg, mirrored: false }));

function lShape(width: number, height: number, foot: number, stem: number): Ring {
  return Float64Array.of(0, 0, width, 0, width, foot, stem, foot, stem, height, 0, height);
}

function halfRound(width: number, height: number): Ring {
  const points: number[] = [];
  const arcs = 24;
  for (let i = 0; i <= arcs; i++) {
    const angle = (Math.PI * i) / arcs;
    points.push((width / 2) * (1 + Math.cos(angle)), height * Math.sin(angle));
  }
  return Float64Array.from(points);
}

/**
 * A repeats job: 60 copies of an L-shaped and 60 of a half-round panel, grain either way up, on a roll of 110,
 * 137 or 150 cm. Sizes in mm, in steps of 5 mm. Made up.
 */
export function repeatJob(seed: number): RegionJob {
  const rng = seededRng(seed ^ 0x3ea7);
  const between = (from: number, to: number): number => from + 5 * rng.below((to - from) / 5 + 1);
  const width = [1100, 1370, 1500][rng.below(3)]!;
  const l = lShape(between(200, 340), between(180, 300), between(70, 120), between(80, 140));
  const round = halfRound(between(180, 320), between(120, 220));
  const piece = (id: string, outline: Ring): LayPiece => ({
    id,
    outline: solid(outline),
    count: 60,
    orientations: EITHER_WAY,
    freeTurn: false,
  });
  return {
    region: { width, length: null, outline: null, flaws: [] },
    pieces: [piece("L", l), piece("half-round", round)],
    gap: 0,
    margin: 0,
    pinned: [],
    goal: "shortest",
  };
}

/** Outlines of eight panels of a bag, in a box of w × h: front, side, bottom, flap, gusset, pocket, strap end, tab. */
const BAG_PANELS: readonly ((w: number, h: number) => Ring)[] = [
  (w, h) => Float64Array.of(0, 0, w, 0, 0.85 * w, h, 0.15 * w, h),
  (w, h) => Float64Array.of(0.2 * w, 0, 0.8 * w, 0, w, h, 0, h),
  (w, h) =>
    Float64Array.of(0, 0.3 * h, 0.2 * w, 0, 0.8 * w, 0, w, 0.3 * h, w, 0.7 * h, 0.8 * w, h, 0.2 * w, h, 0, 0.7 * h),
  (w, h) => halfRound(w, h),
  (w, h) => Float64Array.of(0, 0, w, 0, 0.6 * w, h, 0.4 * w, h),
  (w, h) => lShape(w, h, 0.5 * h, 0.5 * w),
  (w, h) => Float64Array.of(0, 0, 0.8 * w, 0, w, 0.5 * h, 0.8 * w, h, 0, h),
  (w, h) => Float64Array.of(0, 0, w, 0, w, 0.3 * h, 0.5 * w, h, 0, 0.6 * h),
];

/** A run of bags: 15 copies of each of eight panels, grain either way up, on a roll of 110, 137 or 150 cm. Made up. */
export function bagRunJob(seed: number): RegionJob {
  const rng = seededRng(seed ^ 0x8ba6);
  const between = (from: number, to: number): number => from + 5 * rng.below((to - from) / 5 + 1);
  const width = [1100, 1370, 1500][rng.below(3)]!;
  const pieces = BAG_PANELS.map(
    (panel, i): LayPiece => ({
      id: `panel ${i + 1}`,
      outline: solid(panel(between(100, 320), between(80, 260))),
      count: 15,
      orientations: EITHER_WAY,
      freeTurn: false,
    }),
  );
  return {
    region: { width, length: null, outline: null, flaws: [] },
    pieces,
    gap: 0,
    margin: 0,
    pinned: [],
    goal: "shortest",
  };
}
