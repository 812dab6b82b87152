import type { Orientation } from "../../../geometry/pose.ts";
import type { LayPiece, Placement } from "../../problem/layProblem.ts";
import type { RegionJob, RegionPlan } from "../../problem/region.ts";

/** A job in which every loose copy of a plan may only lie near the turn it has there. */
export interface FineTurnJob {
  readonly job: RegionJob;
  /** The plan as one of this job. */
  readonly start: RegionPlan;
  /** A plan of this job as one of the job it came from. */
  back(plan: RegionPlan): RegionPlan;
}

/** Degrees that a sum of turns may be off by rounding. */
const ROUNDING = 1e-9;

/**
 * The job near a plan that lays everything: copies of a piece that lie at one turn are one kind, which may keep that
 * turn or lie `step` degrees off it either way, as far as the piece may. O(copies).
 */
export function fineTurnJob(job: RegionJob, plan: RegionPlan, step: number): FineTurnJob {
  const kinds = new Map<string, { piece: LayPiece; turn: Orientation; places: Placement[] }>();
  const pieceOf = new Map(job.pieces.map((piece) => [piece.id, piece]));
  for (const place of plan.placements) {
    const piece = pieceOf.get(place.pieceId)!;
    const key = `${place.pieceId} ${place.turnDeg} ${place.mirrored}`;
    const kind = kinds.get(key) ?? { piece, turn: place, places: [] };
    kind.places.push(place);
    kinds.set(key, kind);
  }
  const origin = new Map<string, Placement>();
  const placements: Placement[] = [];
  const pieces = [...kinds.values()].map(({ piece, turn, places }, k): LayPiece => {
    for (const [copy, place] of places.entries()) {
      origin.set(`${k} ${copy}`, place);
      placements.push({ ...place, pieceId: `${k}`, copy });
    }
    const orientations = turnsNear(piece, turn, step);
    // All else holds as before: what is matched stays on the pattern.
    const { tilt: _, ...own } = piece;
    return { ...own, id: `${k}`, count: places.length, orientations, freeTurn: false };
  });
  return {
    job: { ...job, pieces },
    start: { placements, left: pieces.map(() => 0), length: plan.length },
    back: ({ placements: found, length }) => ({
      placements: found.map((place) => {
        const { pieceId, copy } = origin.get(`${place.pieceId} ${place.copy}`)!;
        return { ...place, pieceId, copy };
      }),
      left: plan.left,
      length,
    }),
  };
}

function turnsNear(piece: LayPiece, turn: Orientation, step: number): Orientation[] {
  const { freeTurn, tilt = 0, orientations } = piece;
  const { turnDeg, mirrored } = turn;
  const own = [0, step, -step].map((off) => ({ turnDeg: turnDeg + off, mirrored }));
  if (freeTurn) return own;
  const isAllowed = (candidate: Orientation): boolean =>
    orientations.some((allowed) => {
      if (allowed.mirrored !== mirrored) return false;
      const apart = Math.abs(allowed.turnDeg - candidate.turnDeg) % 360;
      return Math.min(apart, 360 - apart) <= tilt + ROUNDING;
    });
  // What may not lean keeps its other ways to lie.
  return tilt > 0 ? own.filter(isAllowed) : [...orientations];
}
