import { ringsOf } from "../../../geometry/clipper.ts";
import { type Polygon, type Ring, signedArea } from "../../../geometry/ring.ts";

/**
 * Two outlines that come apart by a shift of d have an area of at most d · P / 2 in common, P the outline's length of
 * either: what is common to both lies in the one and not in the one shifted. So a depth of 2 · share · area / P keeps
 * the common area below that share of the smaller piece's.
 */
const SHARE = 1e-6;
/** Touching may overlap by this much at most, grid units: two roundings of 0.71 units and a little. */
const MOST_UNITS = 2;
/** … and must be allowed this much, or sums of doubles would count as overlaps. */
const LEAST_UNITS = 0.05;
/** A no-fit polygon's crossings are rounded by so much at most; so is an outline's corner, once as it is and once turned. */
const ROUNDING = Math.SQRT1_2;
/** Coordinates this near to whole numbers are whole, grid units. */
const WHOLE = 0.01;

/** How near a shape may come to others on the grid. */
export interface Contact {
  /** Depth up to which the search may take an overlap for touching, grid units. */
  readonly touch: number;
  /** Grid units by which the outline is to be grown, for shapes so small that the rounding alone would be too much. */
  readonly grow: number;
}

/** Whether all corners lie on the grid whose origin is (cx, cy), to within rounding of doubles. */
export function liesOnGrid(polygon: Polygon, scale: number, cx: number, cy: number): boolean {
  return ringsOf(polygon).every((ring) =>
    ring.every((value, i) => {
      const at = (value - (i % 2 === 0 ? cx : cy)) * scale;
      return Math.abs(at - Math.round(at)) < WHOLE;
    }),
  );
}

function perimeter(ring: Ring): number {
  let sum = 0;
  for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2)
    sum += Math.hypot(ring[i]! - ring[j]!, ring[i + 1]! - ring[j + 1]!);
  return sum;
}

/**
 * The contact of a shape on the grid. `isWhole`: all outlines of the job lie on the grid in all their turns, so that
 * only crossings are rounded, and convex shapes not at all.
 */
export function contactOf(rings: readonly Ring[], isConvex: boolean, isWhole: boolean): Contact {
  let area = 0;
  let length = 0;
  for (const ring of rings) {
    area += signedArea(ring);
    length += perimeter(ring);
  }
  const allowed = (2 * SHARE * Math.abs(area)) / length;
  const rounding = isWhole ? ROUNDING : 5 * ROUNDING;
  const touch = Math.min(MOST_UNITS, Math.max(LEAST_UNITS, allowed - rounding));
  const isSafe = allowed >= rounding + LEAST_UNITS || (isWhole && isConvex);
  return { touch, grow: isSafe ? 0 : Math.ceil(rounding + 2 * LEAST_UNITS) };
}
