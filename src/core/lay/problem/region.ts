import type { Polygon } from "../../geometry/ring.ts";
import type { LayPattern, LayPhase, LayPiece, Placement } from "./layProblem.ts";

/** One region of cloth: the box 0…length × 0…width, an outline inside it when it is no rectangle, and flaws. */
export interface Region {
  readonly width: number;
  /** null when open. */
  readonly length: number | null;
  readonly outline: Polygon | null;
  readonly flaws: readonly Polygon[];
}

/** What an engine works on: one region. */
export interface RegionJob {
  readonly region: Region;
  readonly pieces: readonly LayPiece[];
  readonly gap: number;
  readonly margin: number;
  readonly pinned: readonly Placement[];
  /** Ruler plans leave no strip narrower than this where little more cloth spares it, mm; any will do when absent. */
  readonly leastStrip?: number | undefined;
  /** Whether what is left along the far side, and at the far end, goes with a selvedge or stays on a roll. */
  readonly looseEdges?: { readonly side: boolean; readonly end: boolean } | undefined;
  /**
   * `shortest`: all pieces on an open region, least length.
   * `most`: as much piece area as fits in a closed region (then, at equal area, least length).
   */
  readonly goal: "shortest" | "most";
  /** The pattern as it lies in the region, and the phases of the groups matched on it. */
  readonly pattern?: LayPattern | undefined;
  readonly phases?: Readonly<Record<string, LayPhase>> | undefined;
}

/** A plan for one region. Complete when `left` is all zero. */
export interface RegionPlan {
  readonly placements: readonly Placement[];
  /** Copies of each piece (by index in the job) that were not placed. */
  readonly left: readonly number[];
  /** Far side of the furthest piece plus the margin, mm. */
  readonly length: number;
  /** What it counts as longer where it is weighed against others, for narrow strips that its cuts take off, mm. */
  readonly toll?: number;
}
