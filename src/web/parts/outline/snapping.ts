import type { Contour } from "../../../core/geometry/contour.ts";
import { type Corner, cornersOf } from "../../../core/geometry/contourEdits.ts";
import { acrossEdge } from "../../../core/project/outlineEdits.ts";

/** What a dragged corner is drawn to; mm. */
export interface Snapping {
  /** Lines of the grid; 0 for none. */
  readonly step: number;
  /** So near to the level of another corner it is taken there; 0 for never. */
  readonly reach: number;
  /** Places are written no finer than this. */
  readonly finest: number;
}

/** Where a corner comes to lie, and the corners it lies level or plumb with. */
export interface SnappedCorner extends Corner {
  readonly guides: readonly Corner[];
}

/** A corner's own level counts as nearer than a line of the grid by this share of its step. */
const PREFERRED = 0.25;

/**
 * A place for corner `index` near (x, y), each way for itself: level with another corner within reach, its neighbours
 * before the others, else on the grid.
 */
export function snapCorner(
  contour: Contour,
  index: number,
  x: number,
  y: number,
  snapping: Snapping,
): SnappedCorner {
  const corners = cornersOf(contour);
  const n = corners.length;
  // Neighbours last: of two that are as near, the later one wins.
  const order = corners.map((_, i) => i).filter((i) => i !== index);
  const isNeighbour = (i: number) => i === (index + 1) % n || i === (index + n - 1) % n;
  const others = [...order.filter((i) => !isNeighbour(i)), ...order.filter(isNeighbour)].map((i) => corners[i]!);
  const level = (wanted: number, of: (corner: Corner) => number) => {
    const { step, reach, finest } = snapping;
    const grid = step > 0 ? Math.round(wanted / step) * step : Math.round(wanted / finest) * finest;
    let best: { mm: number; guide: Corner | null; far: number } = {
      mm: grid,
      guide: null,
      far: step > 0 ? Math.abs(grid - wanted) : Infinity,
    };
    for (const corner of others) {
      const apart = Math.abs(of(corner) - wanted);
      const far = apart - PREFERRED * step;
      if (apart <= reach && far <= best.far) best = { mm: of(corner), guide: corner, far };
    }
    return best;
  };
  const along = level(x, (corner) => corner.x);
  const across = level(y, (corner) => corner.y);
  const guides = [along.guide, across.guide].filter((guide) => guide !== null);
  return { x: neat(along.mm), y: neat(across.mm), guides: [...new Set(guides)] };
}

/** Without what binary fractions leave behind. */
function neat(mm: number): number {
  return Math.round(mm * 1e6) / 1e6 || 0;
}

/** A place for a corner of a half: its two ends on the fold stay on that line, the others on this side of it. */
export function heldToFold(contour: Contour, fold: number | null, index: number, place: Corner): Corner {
  if (fold === null) return place;
  const { mirror, isBeyond } = acrossEdge(contour, fold);
  if (!isFoldEnd(contour, fold, index) && !isBeyond(place.x, place.y)) return place;
  const [x, y] = mirror(place.x, place.y);
  return { x: neat((place.x + x) / 2), y: neat((place.y + y) / 2) };
}

/** Whether a corner is an end of the fold. */
export function isFoldEnd({ vertices }: Contour, fold: number | null, index: number): boolean {
  return fold !== null && (index === fold || index === (fold + 1) % (vertices.length / 3));
}

/** A rise near `rise`: straight and half a circle within reach, else in fine steps; mm. */
export function snapRise(chord: number, rise: number, fine: number, reach: number): number {
  const most = chord / 2;
  const held = Math.max(-most, Math.min(most, rise));
  if (Math.abs(held) <= reach) return 0;
  if (most - Math.abs(held) <= reach) return Math.sign(held) * most;
  return neat(Math.round(held / fine) * fine);
}
