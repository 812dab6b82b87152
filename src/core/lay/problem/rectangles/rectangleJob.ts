import type { Orientation } from "../../../geometry/pose.ts";
import type { RegionJob } from "../region.ts";

/** One way equal rectangles may lie, in units, the gap folded in. */
export interface Way {
  /** Extent across the roll (y). */
  readonly across: number;
  /** Extent along the roll (x). */
  readonly along: number;
}

/** A copy of a piece of the job, and how it is turned to lie in each way of its size. */
export interface SizeCopy {
  /** Index in `RegionJob.pieces`. */
  readonly piece: number;
  /** 0 … count − 1. */
  readonly copy: number;
  readonly orientations: readonly Orientation[];
}

/** Rectangles that are alike for the search: equal ways. */
export interface Size {
  /** One or two (lengthwise, crosswise); never empty; each fits the region. */
  readonly ways: readonly Way[];
  readonly copies: readonly SizeCopy[];
}

/** An axis-parallel box in units that pieces (with their gap) must keep out of. */
export interface Blocked {
  readonly fromAlong: number;
  readonly toAlong: number;
  readonly fromAcross: number;
  readonly toAcross: number;
}

/**
 * A region job of rectangles on whole numbers. Every piece is inflated by the gap on its far sides and the
 * region likewise, so pieces may touch here. Across and along count from the region's usable lower-left corner.
 */
export interface RectangleJob {
  readonly job: RegionJob;
  /** mm per unit. */
  readonly unit: number;
  /** Whether every piece is a whole number of units; if not, pieces were rounded up. */
  readonly exact: boolean;
  /** Usable extent across, units. */
  readonly width: number;
  /** Usable extent along, units; null when open. */
  readonly length: number | null;
  /** mm from the region's origin to unit (0, 0). */
  readonly originX: number;
  readonly originY: number;
  readonly sizes: readonly Size[];
  /** Flaws and pinned pieces. */
  readonly blocked: readonly Blocked[];
  /** Furthest end of a pinned piece, units; 0 without any. */
  readonly pinnedEnd: number;
  /** Copies by piece index that cannot lie here in any way. */
  readonly impossible: readonly number[];
}

/** A placed rectangle: near corner in units. */
export interface PlacedRectangle {
  readonly size: number;
  readonly way: number;
  readonly along: number;
  readonly across: number;
}
