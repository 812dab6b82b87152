import { type Box, ringBox } from "../../../geometry/box.ts";
import { type Orientation, poseRing } from "../../../geometry/pose.ts";
import { freePhases, type Lattice, latticeOf, placeOf, type Rungs } from "../../problem/lattice.ts";
import type { LayPattern, LayPiece, Placement } from "../../problem/layProblem.ts";
import type { RegionJob, RegionPlan } from "../../problem/region.ts";

/** What rounding may add up to, mm. */
export const ROUNDING = 1e-7;

/** Rungs before the phase is known: at `base + sign · phase` and every period from there. */
export interface Hold {
  readonly period: number;
  readonly base: number;
  readonly sign: number;
}

/** A box to lay in one of its turns, gap included. mm. */
export interface MatchedWay {
  readonly along: number;
  readonly across: number;
  /** Where its lower left corner may lie; null for anywhere. Phases still free give no rungs. */
  readonly lattice: Lattice | null;
  /** What makes its rungs of any phase; null along an axis where it may lie anywhere. */
  readonly holdX: Hold | null;
  readonly holdY: Hold | null;
  readonly halfDrop: boolean;
  /** The group it is matched in; null when it may lie anywhere. */
  readonly group: string | null;
  readonly turnDeg: number;
  readonly mirrored: boolean;
  /** From the piece's origin to that corner. */
  readonly cornerX: number;
  readonly cornerY: number;
}

/** Copies that are alike in everything. */
interface MatchedKind {
  readonly piece: number;
  readonly copies: readonly number[];
  readonly ways: readonly MatchedWay[];
  readonly area: number;
}

/** Boxes on a rectangle of cloth of which boxes are missing, each held to the pattern or free. mm. */
export interface MatchedJob {
  readonly job: RegionJob;
  /** Room for the boxes with their gaps. `toX` is Infinity on open cloth. */
  readonly fromX: number;
  readonly fromY: number;
  readonly toX: number;
  readonly toY: number;
  readonly kinds: readonly MatchedKind[];
  readonly blocked: readonly Box[];
}

/** A box laid: lower left corner, kind and way. */
export interface LaidBox {
  readonly kind: number;
  readonly way: number;
  readonly x: number;
  readonly y: number;
}

/** Makes the job of a region in which every piece is a box and may lie square. */
export function matchedJobOf(job: RegionJob): MatchedJob {
  const { region, gap, margin } = job;
  const cloth = region.outline === null ? null : ringBox(region.outline.outer);
  const [minX, minY] = cloth === null ? [0, 0] : [cloth.minX, cloth.minY];
  const maxX = cloth === null ? (region.length ?? Infinity) : cloth.maxX;
  const maxY = cloth === null ? region.width : cloth.maxY;
  const [fromX, fromY, toX, toY] = [minX + margin, minY + margin, maxX - margin + gap, maxY - margin + gap];
  const pinnedCopies = new Map<string, Set<number>>();
  const pinned = job.pinned.map((pin) => {
    pinnedCopies.set(pin.pieceId, (pinnedCopies.get(pin.pieceId) ?? new Set()).add(pin.copy));
    return ringBox(poseRing(job.pieces.find(({ id }) => id === pin.pieceId)!.outline.outer, pin));
  });
  const withGap = ({ minX: x, minY: y, maxX: farX, maxY: farY }: Box): Box => {
    return { minX: x, minY: y, maxX: farX + gap, maxY: farY + gap };
  };
  const kinds = job.pieces.flatMap((piece, index): MatchedKind[] => {
    const down = pinnedCopies.get(piece.id);
    const copies = Array.from({ length: piece.count }, (_, copy) => copy).filter((copy) => !down?.has(copy));
    if (copies.length === 0) return [];
    const ways = waysOf(job, index).filter(({ along, across, lattice }) => {
      const y = rungUp(lattice?.y ?? null, fromY);
      return y + across <= toY + ROUNDING && fromX + along <= toX + ROUNDING;
    });
    const { along, across } = waysOf(job, index)[0]!;
    return [{ piece: index, copies, ways, area: (along - gap) * (across - gap) }];
  });
  const blocked = [...region.flaws.map(({ outer }) => ringBox(outer)), ...pinned].map(withGap);
  return { job, fromX, fromY, toX, toY, kinds, blocked };
}

/** The square turns of a piece, those that come to the same left out. */
function waysOf(job: RegionJob, index: number): MatchedWay[] {
  const piece = job.pieces[index]!;
  const turns = piece.orientations.filter(({ turnDeg }) => turnDeg % 90 === 0);
  if (piece.freeTurn) turns.push({ turnDeg: 0, mirrored: false }, { turnDeg: 90, mirrored: false });
  const seen = new Set<string>();
  // What a phase still free will make of two turns is not known yet.
  const isFree = freePhases([piece], job.pattern, job.phases).length > 0;
  return turns.flatMap(({ turnDeg, mirrored }): MatchedWay[] => {
    const box = ringBox(poseRing(piece.outline.outer, { turnDeg, mirrored, x: 0, y: 0 }));
    const lattice = latticeOf(piece, { turnDeg, mirrored }, job.pattern, job.phases);
    const way: MatchedWay = {
      along: box.maxX - box.minX + job.gap,
      across: box.maxY - box.minY + job.gap,
      lattice: cornerLattice(lattice, box.minX, box.minY),
      ...holdsOf(piece, { turnDeg, mirrored }, job.pattern, box.minX, box.minY),
      turnDeg,
      mirrored,
      cornerX: box.minX,
      cornerY: box.minY,
    };
    const key = JSON.stringify([
      way.along,
      way.across,
      rest(way.lattice?.x),
      rest(way.lattice?.y),
      isFree ? turnDeg : 0,
    ]);
    if (seen.has(key)) return [];
    seen.add(key);
    return [way];
  });
}

/** The rungs of a corner that lies so far from the piece's origin, whatever the phase. */
function holdsOf(
  { match }: LayPiece,
  orientation: Orientation,
  pattern: LayPattern | undefined,
  minX: number,
  minY: number,
): Pick<MatchedWay, "holdX" | "holdY" | "halfDrop" | "group"> {
  if (match === undefined || pattern === undefined)
    return { holdX: null, holdY: null, halfDrop: false, group: null };
  const { x, y, signX, signY } = placeOf(match, orientation);
  const hold = (period: number | null, base: number, sign: number): Hold | null =>
    period === null ? null : { period, base, sign };
  const holdX = match.along ? hold(pattern.along, pattern.firstAlong - x + minX, signX) : null;
  const holdY = match.across ? hold(pattern.across, pattern.firstAcross - y + minY, signY) : null;
  return { holdX, holdY, halfDrop: pattern.halfDrop && holdX !== null && holdY !== null, group: match.group };
}

/** The lattice of a piece's origin as that of a corner so far from it. */
function cornerLattice(lattice: Lattice | null, x: number, y: number): Lattice | null {
  const moved = (rungs: Rungs | null, by: number): Rungs | null =>
    rungs && { period: rungs.period, offset: rungs.offset + by };
  return lattice && { ...lattice, x: moved(lattice.x, x), y: moved(lattice.y, y) };
}

function rest(rungs: Rungs | null | undefined): number | null {
  return rungs ? Math.round((rungs.offset - rungs.period * Math.floor(rungs.offset / rungs.period)) * 1e6) : null;
}

/** The first rung at or above a value; the value where there are none. */
export function rungUp(rungs: Rungs | null, value: number): number {
  if (rungs === null) return value;
  const { period, offset } = rungs;
  return offset + period * Math.ceil((value - offset - ROUNDING) / period);
}

/** The rungs along for a box whose lower side is at `y`. */
export function rungsAlong({ lattice }: MatchedWay, y: number): Rungs | null {
  if (lattice === null || lattice.x === null || lattice.y === null || !lattice.halfDrop) return lattice?.x ?? null;
  const row = Math.round((y - lattice.y.offset) / lattice.y.period);
  if (row % 2 === 0) return lattice.x;
  return { period: lattice.x.period, offset: lattice.x.offset + lattice.x.period / 2 };
}

/** The plan in mm, pinned pieces included. */
export function matchedPlan({ job, kinds }: MatchedJob, laid: readonly LaidBox[]): RegionPlan {
  const left = job.pieces.map(({ count }) => count);
  let end = 0;
  const placements: Placement[] = job.pinned.map((pin) => {
    const index = job.pieces.findIndex(({ id }) => id === pin.pieceId);
    left[index]!--;
    end = Math.max(end, ringBox(poseRing(job.pieces[index]!.outline.outer, pin)).maxX);
    return pin;
  });
  const next = kinds.map(() => 0);
  for (const { kind, way, x, y } of laid) {
    const { piece, copies, ways } = kinds[kind]!;
    const { along, turnDeg, mirrored, cornerX, cornerY } = ways[way]!;
    const copy = copies[next[kind]!++]!;
    placements.push({ pieceId: job.pieces[piece]!.id, copy, turnDeg, mirrored, x: x - cornerX, y: y - cornerY });
    end = Math.max(end, x + along - job.gap);
    left[piece]!--;
  }
  return { placements, left, length: placements.length === 0 ? 0 : end + job.margin };
}
