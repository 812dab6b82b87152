import { type Orientation, turnCosSin } from "../../../geometry/pose.ts";
import { latticeOf, type Rungs } from "../../problem/lattice.ts";
import type { LayPiece } from "../../problem/layProblem.ts";
import type { RegionJob } from "../../problem/region.ts";

/** A spot this far off a rung lies on it, grid units. */
const ON_RUNG = 0.01;

/** Spots that a matched shape may take in one orientation, grid units. */
export interface GridLattice {
  readonly x: Rungs | null;
  readonly y: Rungs | null;
  /** Every second rung of y has those of x moved by half their period. */
  readonly half: boolean;
}

/** Where the centre of a piece's box may lie in an orientation, or null when the piece is not matched. */
export function gridLattice(
  { pattern, phases }: RegionJob,
  piece: LayPiece,
  orientation: Orientation,
  [cx, cy]: readonly [number, number],
  scale: number,
): GridLattice | null {
  const lattice = latticeOf(piece, orientation, pattern, phases);
  if (lattice === null) return null;
  const [cos, sin] = turnCosSin(orientation.turnDeg);
  const flip = orientation.mirrored ? -1 : 1;
  const onGrid = (rungs: Rungs | null, centre: number): Rungs | null =>
    rungs && { period: rungs.period * scale, offset: (rungs.offset + centre) * scale };
  return {
    x: onGrid(lattice.x, cos * flip * cx - sin * cy),
    y: onGrid(lattice.y, sin * flip * cx + cos * cy),
    half: lattice.halfDrop,
  };
}

/** The first rung at or above a value. */
export function rungAbove({ period, offset }: Rungs, value: number): number {
  return offset + period * Math.ceil((value - offset - ON_RUNG) / period);
}

/** The last rung at or below a value. */
export function rungBelow({ period, offset }: Rungs, value: number): number {
  return offset + period * Math.floor((value - offset + ON_RUNG) / period);
}

/** The rung nearest to a value. */
export function nearestRung({ period, offset }: Rungs, value: number): number {
  return offset + period * Math.round((value - offset) / period);
}

/** The rungs of x for a spot at `y`: moved by half where the row is dropped. */
export function rungsInRow({ x, y, half }: GridLattice, at: number): Rungs | null {
  if (x === null || y === null || !half || Math.round((at - y.offset) / y.period) % 2 === 0) return x;
  return { period: x.period, offset: x.offset + x.period / 2 };
}

/** A plan in mm comes back to the grid with this much rounding, grid units. */
const BACK = 4;

/** Whether a spot lies on a lattice; anywhere will do without one. */
export function liesOnLattice(lattice: GridLattice | null, x: number, y: number): boolean {
  if (lattice === null) return true;
  const row = rungsInRow(lattice, y);
  if (lattice.y !== null && Math.abs(nearestRung(lattice.y, y) - y) > BACK) return false;
  return row === null || Math.abs(nearestRung(row, x) - x) <= BACK;
}
