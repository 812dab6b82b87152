import type { Contour } from "../../../core/geometry/contour.ts";
import { contourEdges, flattenContour } from "../../../core/geometry/contourArcs.ts";
import { bowEdge, type Corner, moveCorner } from "../../../core/geometry/contourEdits.ts";
import { firstCrossing } from "../../../core/geometry/crossing.ts";
import { signedArea } from "../../../core/geometry/ring.ts";
import { heldToFold, type Snapping, snapCorner, snapRise } from "./snapping.ts";

/** A corner or the middle of an edge in the hand. */
export interface Held {
  readonly kind: "corner" | "edge";
  readonly index: number;
}

/** The outline while something of it is held. */
export interface Draft {
  readonly contour: Contour;
  readonly guides: readonly Corner[];
  /** The last place was refused: the outline would cross itself there. */
  readonly isStopped: boolean;
}

export interface Pull {
  readonly snapping: Snapping;
  /** Steps in which an edge rises, and what it is straight or half a circle within; mm. */
  readonly fine: number;
  readonly fold: number | null;
}

/** Above so many points crossings are looked for when the hand lets go, not on the way. */
const MOST_LOOKED_AT = 600;

/** The outline with what is held pulled to (x, y); as it was, and said so, where it would cross itself. */
export function pulledTo(before: Draft, { kind, index }: Held, x: number, y: number, pull: Pull): Draft {
  const { contour } = before;
  const { snapping, fine, fold } = pull;
  if (kind === "edge") {
    const { x0, y0, x1, y1 } = contourEdges(contour)[index]!;
    const chord = Math.hypot(x1 - x0, y1 - y0);
    // To the right of the way the edge runs: outward.
    const rise = ((x - x0) * (y1 - y0) - (y - y0) * (x1 - x0)) / chord;
    const snapped = snapRise(chord, rise, fine, snapping.step > 0 ? snapping.reach : 0);
    return kept(before, bowEdge(contour, index, snapped), fold, []);
  }
  const snapped = snapCorner(contour, index, x, y, snapping);
  const place = heldToFold(contour, fold, index, snapped);
  const isThere = place.x === snapped.x && place.y === snapped.y;
  return kept(before, moveCorner(contour, index, place.x, place.y), fold, isThere ? snapped.guides : []);
}

function kept(before: Draft, contour: Contour, fold: number | null, guides: readonly Corner[]): Draft {
  return isUsable(contour, fold)
    ? { contour, guides, isStopped: false }
    : { ...before, guides: [], isStopped: true };
}

/** Whether an outline crosses itself nowhere and has an area; half of one lies to the left of its fold. */
function isUsable(contour: Contour, fold: number | null): boolean {
  const ring = flattenContour(contour, 0.1);
  if (ring.length / 2 > MOST_LOOKED_AT) return true;
  const area = signedArea(ring);
  return firstCrossing(ring) === null && (fold === null ? Math.abs(area) > 1 : area > 1);
}
