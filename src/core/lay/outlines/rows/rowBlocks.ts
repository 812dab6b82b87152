import { type Box, ringBox } from "../../../geometry/box.ts";
import { offsetOf, unionOf } from "../../../geometry/clipper.ts";
import { poseRing } from "../../../geometry/pose.ts";
import { type Ring, signedArea } from "../../../geometry/ring.ts";
import { coarsened } from "../compile/coarsen.ts";
import type { CompiledJob } from "../compile/compileJob.ts";
import { boxExtent } from "../compile/gridTools.ts";
import { sumWork } from "../noFit/sumOutline.kernel.ts";
import { type RowStep, rowSteps } from "./rowSteps.ts";

/** Copies of one shape that keep their places to each other and are laid as one. */
export interface RowBlock {
  readonly shape: number;
  /** Where the copies lie, mm: x, y of the centre of each one's box. */
  readonly places: readonly (readonly [number, number])[];
  /** An outline that holds them, mm, counter-clockwise. */
  readonly ring: Ring;
}

/** Copies in a row. */
const LENGTHS = [2, 3, 4, 5, 6, 8];
/** Rows that waste more of the cloth between their copies are no better than what the search finds. */
const LEAST_FULLNESS = 0.9;
/** A row is no longer than this many widths of the roll. */
const MOST_EXTENT = 1.5;
/** Outlines for sums are grown and shaken, each job's in its own way: so many grid units keep the rows clear in both. */
const SPARE = 2_000;
/** Clefts narrower than twice this share of a row's size are closed; corners that add less than the other are left out. */
const CLEFT = 0.004;
const SHARE = 0.001;

/** One copy of every shape, in order of shapes; mm. */
export function singlesOf({ shapes, unitsPerMm }: CompiledJob): RowBlock[] {
  return shapes.map(({ grid }, shape) => {
    const ring = grid.outer.map((value) => value / unitsPerMm);
    const grown = offsetOf([ring], SPARE / unitsPerMm, { kind: "miter", limit: 3 });
    return { shape, places: [[0, 0]], ring: grown[0]!.outer };
  });
}

/** So many copies in a row, with an outline round them; null when they do not hang together. */
function rowOf({ shape, ring }: RowBlock, step: RowStep, length: number): RowBlock | null {
  const places = Array.from({ length }, (_, k): [number, number] => [k * step.x, k * step.y]);
  const rings = places.map(([x, y]) => poseRing(ring, { turnDeg: 0, mirrored: false, x, y }));
  const reach = CLEFT * Math.sqrt(length * signedArea(ring));
  const join = { kind: "round", tolerance: reach / 20 } as const;
  const outers = (polygons: readonly { outer: Ring }[]): Ring[] => polygons.map(({ outer }) => outer);
  const shut = offsetOf(outers(offsetOf(rings, reach, join)), -reach, join);
  const whole = unionOf([...outers(shut), ...rings]);
  return whole.length === 1 ? { shape, places, ring: coarsened(whole[0]!.outer, SHARE) } : null;
}

/**
 * Rows of copies that fill nine tenths or more of the band they lie in: arcs, angles and the like in each other. Yields
 * after each row. Cost: one no-fit polygon a shape, three unions a row.
 */
export function* rowBlocks(
  compiled: CompiledJob,
  singles: readonly RowBlock[],
  counts: readonly number[],
): Generator<undefined, RowBlock[]> {
  const widest = (compiled.window.maxY - compiled.window.minY) / compiled.unitsPerMm;
  const fits = ({ minX, minY, maxX, maxY }: Box): boolean =>
    Math.max(maxX - minX, maxY - minY) <= MOST_EXTENT * widest && Math.min(maxX - minX, maxY - minY) <= widest;
  const extent = Math.max(...singles.map(({ ring }) => boxExtent(ring)));
  const work = sumWork();
  const out: RowBlock[] = [];
  for (const single of singles) {
    const steps = rowSteps(single.ring, extent, work).filter(({ fullness }) => fullness >= LEAST_FULLNESS);
    for (const step of steps)
      for (const length of LENGTHS) {
        if (length > counts[single.shape]!) break;
        const row = rowOf(single, step, length);
        if (row !== null && fits(ringBox(row.ring))) out.push(row);
        yield;
      }
  }
  return out;
}
