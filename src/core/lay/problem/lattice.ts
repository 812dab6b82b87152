import { type Orientation, turnCosSin } from "../../geometry/pose.ts";
import type { LayMatch, LayPattern, LayPhase, LayPiece, Placement } from "./layProblem.ts";

/** Positions along one axis: `offset` and every whole number of periods from there. */
export interface Rungs {
  readonly period: number;
  /** 0 … period. */
  readonly offset: number;
}

/** Where a matched piece may lie in one orientation. */
export interface Lattice {
  readonly x: Rungs | null;
  readonly y: Rungs | null;
  /** Every second row across is moved along by half the period of x. */
  readonly halfDrop: boolean;
}

/** A group whose phase nobody has fixed. */
export const FREE_PHASE: LayPhase = { along: null, across: null };

const TINY = 1e-9;

/** The value brought into 0 … period; what lies a rounding below the period counts as 0. */
export function wrapped(value: number, period: number): number {
  const rest = value - period * Math.floor(value / period);
  return rest > period - TINY ? 0 : Math.max(0, rest);
}

/** Distance of two values modulo a period: 0 … period / 2. */
export function apartOn(a: number, b: number, period: number): number {
  const rest = wrapped(a - b, period);
  return Math.min(rest, period - rest);
}

/** The matched place in the cloth's directions for a piece at the origin, and whether it is read with the cloth. */
export function placeOf(
  match: LayMatch,
  { turnDeg, mirrored }: Orientation,
): { readonly x: number; readonly y: number; readonly signX: number; readonly signY: number } {
  const [c, s] = turnCosSin(turnDeg);
  const flip = mirrored ? -1 : 1;
  const isUpright = Math.abs(c) > Math.abs(s);
  return {
    x: c * flip * match.x - s * match.y,
    y: s * flip * match.x + c * match.y,
    signX: Math.sign(isUpright ? c * flip * match.senseX : -s * match.senseY),
    signY: Math.sign(isUpright ? c * match.senseY : s * flip * match.senseX),
  };
}

/** Where a piece may lie in an orientation; null when it is not matched. Phases that are still free give no rungs. */
export function latticeOf(
  piece: LayPiece,
  orientation: Orientation,
  pattern: LayPattern | undefined,
  phases: Readonly<Record<string, LayPhase>> | undefined,
): Lattice | null {
  const { match } = piece;
  if (match === undefined || pattern === undefined) return null;
  const phase = phases?.[match.group] ?? FREE_PHASE;
  const { x, y, signX, signY } = placeOf(match, orientation);
  const alongAt = match.along ? phase.along : null;
  const acrossAt = match.across ? phase.across : null;
  const baseX = pattern.along === null || alongAt === null ? null : pattern.firstAlong + signX * alongAt - x;
  const baseY = pattern.across === null || acrossAt === null ? null : pattern.firstAcross + signY * acrossAt - y;
  if (baseX === null && baseY === null) return null;
  const halfDrop = pattern.halfDrop && baseX !== null && baseY !== null;
  // Going down some rows of dropped motifs, the first of all moves along with them.
  const rows = halfDrop ? rowsDown(baseY, pattern.across!) : 0;
  return {
    x: baseX === null ? null : rungsAt(baseX - (rows * pattern.along!) / 2, pattern.along!),
    y: baseY === null ? null : rungsAt(baseY, pattern.across!),
    halfDrop,
  };
}

function rungsAt(value: number, period: number): Rungs {
  return { period, offset: wrapped(value, period) };
}

/** Whole periods in a value, a rounding forgiven: `wrapped` is what is left. */
function rowsDown(value: number, period: number): number {
  return Math.round((value - wrapped(value, period)) / period);
}

/** The phases with those of groups still free that matched pieces already laid have settled. */
export function settledPhases(
  pieces: readonly LayPiece[],
  pattern: LayPattern | undefined,
  phases: Readonly<Record<string, LayPhase>> | undefined,
  placements: readonly Placement[],
): Readonly<Record<string, LayPhase>> | undefined {
  if (pattern === undefined) return phases;
  const matches = new Map(pieces.flatMap(({ id, match }) => (match === undefined ? [] : [[id, match] as const])));
  if (matches.size === 0) return phases;
  const known: Record<string, LayPhase> = { ...phases };
  for (const placement of placements) {
    const match = matches.get(placement.pieceId);
    if (match === undefined) continue;
    const { x, y, signX, signY } = placeOf(match, placement);
    const v = signY * (placement.y + y - pattern.firstAcross);
    const rows = pattern.halfDrop && pattern.across !== null ? rowsDown(v, pattern.across) : 0;
    const u = signX * (placement.x + x - pattern.firstAlong) - (rows * (pattern.along ?? 0)) / 2;
    const now = known[match.group] ?? FREE_PHASE;
    known[match.group] = {
      along: now.along ?? (match.along && pattern.along !== null ? wrapped(u, pattern.along) : null),
      across: now.across ?? (match.across && pattern.across !== null ? wrapped(v, pattern.across) : null),
    };
  }
  return known;
}

/** Groups of matched pieces whose phase is still open, by the axes that are. */
export function freePhases(
  pieces: readonly LayPiece[],
  pattern: LayPattern | undefined,
  phases: Readonly<Record<string, LayPhase>> | undefined,
): { readonly group: string; readonly along: boolean; readonly across: boolean }[] {
  if (pattern === undefined) return [];
  const found = new Map<string, { group: string; along: boolean; across: boolean }>();
  for (const { match } of pieces) {
    if (match === undefined) continue;
    const phase = phases?.[match.group] ?? FREE_PHASE;
    const along = match.along && pattern.along !== null && phase.along === null;
    const across = match.across && pattern.across !== null && phase.across === null;
    const before = found.get(match.group);
    if (along || across || before)
      found.set(match.group, {
        group: match.group,
        along: along || (before?.along ?? false),
        across: across || (before?.across ?? false),
      });
  }
  return [...found.values()];
}

/** Whether any piece of a job is held to the pattern. A pattern that repeats neither way holds nothing. */
export function isMatched({
  pieces,
  pattern,
}: {
  readonly pieces: readonly LayPiece[];
  readonly pattern?: LayPattern | undefined;
}): boolean {
  if (pattern === undefined) return false;
  const { along, across } = pattern;
  return pieces.some(
    ({ match }) => match && ((match.along && along !== null) || (match.across && across !== null)),
  );
}
