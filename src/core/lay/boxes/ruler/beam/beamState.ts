import type { SearchTables } from "../../../problem/rectangles/searchTables.ts";
import { seededRng } from "../../../search/rng.ts";
import type { NarrowRule } from "../splits/splitDecode.kernel.ts";

/** Free rectangles a state may hold; states with more are dropped. */
export const MOST_FREE = 40;
/** Numbers per free rectangle: width across, height along, near corner across and along, cutting level. */
export const FREE_SIZE = 5;

/** Cutting levels of a free rectangle. Without a limit on stages everything beyond the cloth itself is `ANY`. */
export const CLOTH = 0;
/** A full-width length of cloth: may be ripped, and in two stages a piece trimmed in length. */
export const SEGMENT = 1;
/** Ripped from a segment: may be cut across, and a piece trimmed to width. */
export const COLUMN = 2;
export const ANY = 3;

/** States of one level of the beam, structure of arrays. */
export interface BeamStates {
  /** Pieces left, `sizes` numbers per state. */
  readonly left: Int16Array;
  /** Stack of free rectangles, the next to fill last. */
  readonly free: Int32Array;
  readonly freeCount: Int32Array;
  readonly placedArea: Float64Array;
  readonly waste: Float64Array;
  readonly placed: Int32Array;
  /** Last block in the trail, −1 at the start. */
  readonly trail: Int32Array;
}

export function beamStates(sizes: number, states: number): BeamStates {
  return {
    left: new Int16Array(states * sizes),
    free: new Int32Array(states * MOST_FREE * FREE_SIZE),
    freeCount: new Int32Array(states),
    placedArea: new Float64Array(states),
    waste: new Float64Array(states),
    placed: new Int32Array(states),
    trail: new Int32Array(states),
  };
}

/** The best children of a level so far, as a heap with the worst on top. */
export interface BeamChildren {
  readonly score: Float64Array;
  readonly slot: Int32Array;
  readonly parent: Int32Array;
  /** Way of the block, −1 to give the rectangle up. */
  readonly way: Int32Array;
  readonly timesAcross: Int32Array;
  readonly timesAlong: Int32Array;
  /** Height of the segment on the cloth; in a free rectangle 0 to part the rest across, 1 along. */
  readonly split: Int32Array;
}

export function beamChildren(most: number): BeamChildren {
  return {
    score: new Float64Array(most),
    slot: new Int32Array(most),
    parent: new Int32Array(most),
    way: new Int32Array(most),
    timesAcross: new Int32Array(most),
    timesAlong: new Int32Array(most),
    split: new Int32Array(most),
  };
}

/** Numbers per block in the trail: parent, way, across, along, times across, times along. */
export const TRAIL_SIZE = 6;

/** How the search prefers one state over another; variants of it find different plans. */
export interface BeamGuide {
  /** Share of waste that counts as none. */
  readonly calm: number;
  /** Factor on blocks that fill no side of their rectangle. */
  readonly loose: number;
  /** Spread of chance on every score. */
  readonly chance: number;
  /** Whether the cloth may be ripped from end to end. */
  readonly longRips: boolean;
}

/** What stays the same for all beams of a job. */
export interface BeamWorld {
  readonly tables: SearchTables;
  /** 2: crosscut, rip (and a trim); 3: crosscut, rip, crosscut (and a trim); Infinity: any edge-to-edge cuts. */
  readonly stages: number;
  /** How narrow strips may be that are left over. */
  readonly strips: NarrowRule;
  /** Keys to tell sets of pieces left apart. */
  readonly keys: Int32Array;
}

export const KEYS_PER_SIZE = 256;

export function beamWorld(tables: SearchTables, stages: number, strips: NarrowRule): BeamWorld {
  const rng = seededRng(0x7e57);
  const keys = Int32Array.from({ length: tables.sizes * KEYS_PER_SIZE }, () => rng.below(0x7fffffff));
  return { tables, stages, strips, keys };
}
