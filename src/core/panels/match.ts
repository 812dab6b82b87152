import type { SeamEdge } from "./seams.ts";

/** Which repeats of the cloth are meant: those along the roll, those across it, or both. */
export const MATCH_AXES = ["along", "across", "both"] as const;

export type MatchAxes = (typeof MATCH_AXES)[number];

/** Where along the first edge the pattern meets; on the second it is as far from the other end. */
export const MATCH_POINTS = ["start", "middle", "end"] as const;

type MatchPoint = (typeof MATCH_POINTS)[number];

/** A seam over which the cloth's pattern runs on: two edges that meet, on every bag. */
export interface Match {
  readonly first: SeamEdge;
  readonly second: SeamEdge;
  /** The middle where nothing is said. */
  readonly at?: MatchPoint | undefined;
  /** The repeat that runs along the seam where nothing is said. */
  readonly axes?: MatchAxes | undefined;
}

/** Where the middle of a part lies: on a line or motif, midway between two, or anywhere, but alike on every bag. */
export const CENTRED_ON = ["line", "between", "same-place"] as const;

export type CentredOn = (typeof CENTRED_ON)[number];

/** A panel or strap whose middle has its place on the pattern. */
export interface Centred {
  readonly part: string;
  readonly on: CentredOn;
  /** Every repeat the cloth has where nothing is said. */
  readonly axes?: MatchAxes | undefined;
}
