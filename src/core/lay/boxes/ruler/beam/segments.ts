import type { SearchTables } from "../../../problem/rectangles/searchTables.ts";
import type { LaidWay } from "./rulerBeam.ts";

/** A full-width length of a plan that crosscuts part from the rest, and what lies on it. */
export interface Segment {
  /** Extent along, units. */
  readonly height: number;
  /** `along` counts from the segment's own near edge. */
  readonly laid: readonly LaidWay[];
}

/** Parts a plan at every full-width crosscut that meets no piece, gaps closed up. O(n log n). */
export function segmentsOf(tables: SearchTables, plan: readonly LaidWay[]): Segment[] {
  const order = [...plan].sort((a, b) => a.along - b.along || a.across - b.across);
  const segments: Segment[] = [];
  let laid: LaidWay[] = [];
  let start = 0;
  let end = 0;
  for (const rectangle of order) {
    if (laid.length > 0 && rectangle.along >= end) {
      segments.push({ height: end - start, laid });
      laid = [];
    }
    if (laid.length === 0) start = rectangle.along;
    laid.push({ ...rectangle, along: rectangle.along - start });
    end = Math.max(end, rectangle.along + tables.wayAlong[rectangle.way]!);
  }
  if (laid.length > 0) segments.push({ height: end - start, laid });
  return segments;
}

/** The segments one after another. */
export function joinSegments(segments: readonly Segment[]): LaidWay[] {
  const plan: LaidWay[] = [];
  let start = 0;
  for (const segment of segments) {
    for (const laid of segment.laid) plan.push({ ...laid, along: laid.along + start });
    start += segment.height;
  }
  return plan;
}

/** Furthest end of a plan, units. */
export function planEnd(tables: SearchTables, plan: readonly LaidWay[]): number {
  return plan.reduce((end, { way, along }) => Math.max(end, along + tables.wayAlong[way]!), 0);
}
