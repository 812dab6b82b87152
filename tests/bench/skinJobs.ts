import { polygonArea, type Ring, solid } from "../../src/core/geometry/ring.ts";
import type { LayPiece } from "../../src/core/lay/problem/layProblem.ts";
import type { RegionJob } from "../../src/core/lay/problem/region.ts";
import { type Rng, seededRng } from "../../src/core/lay/search/rng.ts";

const FLAWS = 5;
const KINDS = 8;
const COPIES = 5;
/** Half width of a skin at stations along its back, mm: neck, forelegs, flank, hind legs, rump. */
const HALF_WIDTHS = [180, 300, 420, 610, 660, 590, 520, 500, 520, 560, 640, 690, 560, 400, 260];
const STATION = 130;

function skinOutline(rng: Rng): Ring {
  const points: number[] = [];
  const side = (sign: number): number[] =>
    HALF_WIDTHS.flatMap((half, i) => [i * STATION, 700 + sign * (half + 30 * rng.unit() - 15)]);
  points.push(...side(-1));
  const upper = side(1);
  for (let i = upper.length - 2; i >= 0; i -= 2) points.push(upper[i]!, upper[i + 1]!);
  return Float64Array.from(points);
}

/** A scar or brand: a lopsided ring of eight corners, usually 40–140 mm across. */
function flaw(rng: Rng, x: number, y: number, size: number = 20 + 50 * rng.unit()): Ring {
  return Float64Array.from(
    Array.from({ length: 8 }, (_, i) => (2 * Math.PI * i) / 8).flatMap((turn) => {
      const radius = size * (0.6 + 0.4 * rng.unit());
      return [x + radius * Math.cos(turn), y + radius * Math.sin(turn)];
    }),
  );
}

function arc(cx: number, cy: number, rx: number, ry: number, from: number, to: number, steps: number): number[] {
  return Array.from({ length: steps + 1 }, (_, i) => from + ((to - from) * i) / steps).flatMap((turn) => [
    cx + rx * Math.cos(turn),
    cy + ry * Math.sin(turn),
  ]);
}

/** Outlines of a bag's panels in a box of w × h. */
const SHAPES: readonly ((w: number, h: number) => number[])[] = [
  (w, h) => [0, 0, w, 0, 0.85 * w, h, 0.15 * w, h],
  (w, h) => [0, 0, w, 0, w, 0.4 * h, ...arc(w / 2, 0.4 * h, w / 2, 0.6 * h, 0, Math.PI, 16)],
  (w, h) => [0, 0, w, 0, w, 0.45 * h, 0.45 * w, 0.45 * h, 0.45 * w, h, 0, h],
  (w, h) => [0.2 * w, 0, 0.8 * w, 0, w, h, 0.5 * w, 0.8 * h, 0, h],
  (w, h) => arc(w / 2, 0, w / 2, h, 0, Math.PI, 18),
  (w, h) => [0, 0, w, 0, w, h, 0, h],
  (w, h) => [0, 0.3 * h, 0.3 * w, 0, 0.7 * w, 0, w, 0.3 * h, w, 0.7 * h, 0.7 * w, h, 0.3 * w, h, 0, 0.7 * h],
  (w, h) => arc(w / 2, h / 2, w / 2, h / 2, 0, 2 * Math.PI, 24).slice(0, -2),
];

function panels(rng: Rng, total: number): LayPiece[] {
  const orientations = [0, 90, 180, 270].map((turnDeg) => ({ turnDeg, mirrored: false }));
  const rough = Array.from({ length: KINDS }, (_, i) => {
    const size = (): number => 60 + 140 * rng.unit();
    return SHAPES[i]!(size(), size());
  });
  const area = rough.reduce((sum, ring) => sum + COPIES * polygonArea(solid(Float64Array.from(ring))), 0);
  const scale = Math.sqrt(total / area);
  return rough.map((ring, i) => ({
    id: `panel ${i + 1}`,
    outline: solid(Float64Array.from(ring, (value) => value * scale)),
    count: COPIES,
    orientations,
    freeTurn: false,
  }));
}

/** A skin with five flaws and a roll of the same usable area; the same 40 panels, as large together, for both. */
export interface SkinJobs {
  readonly skin: RegionJob;
  readonly roll: RegionJob;
  /** Usable area of each, mm². */
  readonly area: number;
}

/** Made up. The panels cover as much as the skin, so neither takes all and the search must choose. */
export function skinJobs(seed: number): SkinJobs {
  const rng = seededRng(seed ^ 0x51c1);
  const outline = solid(skinOutline(rng));
  const length = (HALF_WIDTHS.length - 1) * STATION;
  const width = 1400;
  const flaws = Array.from({ length: FLAWS }, (_, i) =>
    solid(flaw(rng, length * (0.15 + 0.17 * i), 700 + 700 * (rng.unit() - 0.5))),
  );
  const area = polygonArea(outline) - flaws.reduce((sum, ring) => sum + polygonArea(ring), 0);
  const base = { pieces: panels(rng, area), gap: 0, margin: 0, pinned: [], goal: "most" as const };
  return {
    skin: { ...base, region: { width, length, outline, flaws } },
    roll: { ...base, region: { width, length: area / width, outline: null, flaws: [] } },
    area,
  };
}

/** The first skin with so many flaws of 4 to 16 mm drawn anywhere instead of its own, and a gap of 2 mm. Made up. */
export function flawedSkin(count: number): RegionJob {
  const rng = seededRng(count);
  const { skin } = skinJobs(1);
  const { width, length } = skin.region;
  const flaws = Array.from({ length: count }, () =>
    solid(flaw(rng, length! * rng.unit(), width * rng.unit(), 2 + 6 * rng.unit())),
  );
  return { ...skin, gap: 2, region: { ...skin.region, flaws } };
}
