import { turnCosSin } from "../../../geometry/pose.ts";
import { solid } from "../../../geometry/ring.ts";
import type { RegionJob } from "../../problem/region.ts";
import type { CompiledJob } from "../compile/compileJob.ts";
import { orientationKey } from "../compile/compileJob.ts";
import type { Spots } from "../layout/workLayout.ts";
import type { RowBlock } from "./rowBlocks.ts";

/** So many of a row. */
export interface RowCount {
  readonly block: RowBlock;
  readonly count: number;
}

/** A job of rows in place of the copies of the job given: their outlines are grown by half the gap already. */
export function rowJobOf({ job, variants }: CompiledJob, rows: readonly RowCount[]): RegionJob {
  return {
    region: job.region,
    pieces: rows.map(({ block, count }, i) => ({
      id: `${i}`,
      outline: solid(block.ring),
      count,
      orientations: variants
        .filter(({ shape }) => shape === block.shape)
        .map(({ turnDeg, mirrored }) => ({ turnDeg, mirrored })),
      freeTurn: false,
    })),
    gap: 0,
    margin: job.margin - job.gap / 2,
    pinned: [],
    goal: "shortest",
  };
}

/** Puts the copies of a job where its rows lie: `from`, a layout of the job of rows, compiled as `inner`. */
export function spotsOfRows(
  compiled: CompiledJob,
  rows: readonly RowCount[],
  inner: CompiledJob,
  from: Spots,
  into: Spots,
): void {
  const { unitsPerMm, items, variants, variantFor, window } = compiled;
  const free = compiled.shapes.map((): number[] => []);
  for (const [i, { shape }] of items.entries()) free[shape]!.push(i);
  into.variant.fill(-1);
  into.maxX = window.minX;
  for (const [i, { piece }] of inner.items.entries()) {
    const { turnDeg, mirrored } = inner.variants[from.variant[i]!]!;
    const { shape, places } = rows[piece]!.block;
    const [cx, cy] = inner.centres[piece]!;
    const [cos, sin] = turnCosSin(turnDeg);
    const flip = mirrored ? -1 : 1;
    const variant = variantFor.get(orientationKey(shape, { turnDeg, mirrored }))!;
    for (const [px, py] of places) {
      const item = free[shape]!.pop()!;
      const dx = flip * (px - cx);
      const dy = py - cy;
      into.variant[item] = variant;
      into.x[item] = (from.x[i]! / inner.unitsPerMm + cos * dx - sin * dy) * unitsPerMm;
      into.y[item] = (from.y[i]! / inner.unitsPerMm + sin * dx + cos * dy) * unitsPerMm;
      into.maxX = Math.max(into.maxX, into.x[item]! + variants[variant]!.maxX);
    }
  }
}
