import type { SearchTables } from "../../../problem/rectangles/searchTables.ts";

/** One generation of partial plans, as arrays over states. */
export interface Generation {
  /** [number of states]. */
  readonly size: Int32Array;
  readonly segments: Int32Array;
  /** Row per state, `mostSegments` + 1 wide. */
  readonly segAcross: Int32Array;
  readonly segAlong: Int32Array;
  /** Row per state, `sizeStride` wide: copies left of each size. */
  readonly left: Uint16Array;
  readonly leftHash: Int32Array;
  /** Of skyline and copies left. */
  readonly hash: Int32Array;
  readonly piecesLeft: Int32Array;
  /** Pieces or blocks placed. */
  readonly moves: Int32Array;
  readonly waste: Float64Array;
  readonly placed: Float64Array;
  /** Positions in `narrowestFirst` and `shortestFirst` before which no copies are left. */
  readonly narrow: Int32Array;
  readonly short: Int32Array;
  /** Index into the history. */
  readonly node: Int32Array;
}

/** Children judged but not made yet, and the radix sorter's memory. */
export interface Candidates {
  /** [count, threshold key bits, 1 once any child within the budget was dropped]. */
  readonly state: Int32Array;
  readonly key: Uint32Array;
  readonly parent: Int32Array;
  /** Way; −1 gives the segment up, −2 only its first `block` units. */
  readonly move: Int32Array;
  /** Copies across · 65536 + copies along. */
  readonly block: Int32Array;
  readonly order: Int32Array;
  readonly spare: Int32Array;
  readonly counts: Int32Array;
  readonly floatKey: Float32Array;
}

/** What every node placed, to read a plan back. */
export interface History {
  /** [nodes]. */
  readonly size: Int32Array;
  readonly parent: Int32Array;
  readonly way: Int32Array;
  readonly block: Int32Array;
  readonly across: Int32Array;
  readonly along: Int32Array;
}

/** How states are ranked; see `expandStates`. */
export interface Guide {
  /** Added to the share of waste, so that size counts even without waste. */
  readonly wasteFloor: number;
  /** Factor on a child that neither fills the width nor is level with a wall. */
  readonly mismatch: number;
  /** Added factor per skyline segment. */
  readonly perSegment: number;
  /** Whether equal pieces may be put down as one block. */
  readonly blocks: boolean;
  /**
   * Extents across that a hollow beside a taller left neighbour may have (ascending), or null. With them every
   * plan pushed to the cut end and the lower selvedge can be reached, so an exhausted beam is a proof.
   */
  readonly hollows: Int32Array | null;
}

/** Working memory for beams up to `width` states wide. */
export interface BeamMemory {
  readonly beamWidth: number;
  readonly mostSegments: number;
  readonly sizeStride: number;
  readonly now: Generation;
  readonly coming: Generation;
  readonly candidates: Candidates;
  readonly history: History;
  readonly table: Int32Array;
  readonly sizeHash: Int32Array;
}

const MOST_SEGMENTS = 120;

/** Allocates for a beam of `beamWidth` states on the tables. About 40 bytes a state, segment and size. */
export function beamMemory(tables: SearchTables, beamWidth: number): BeamMemory {
  const mostSegments = Math.min(MOST_SEGMENTS, tables.pieces + 1);
  const sizeStride = (tables.sizes + 1) & ~1;
  const room = 6 * beamWidth + 100 * tables.ways + 4096;
  let hashSize = 1024;
  while (hashSize < 4 * beamWidth) hashSize *= 2;
  const sizeHash = new Int32Array(tables.sizes);
  let mixed = 0x2545f491;
  for (let size = 0; size < tables.sizes; size++) {
    mixed = Math.imul(mixed ^ (mixed >>> 15), 0x2c1b3c6d) + 0x7ed55d16;
    sizeHash[size] = mixed | 1;
  }
  // Giving segments up adds generations; a beam that outgrows this ends.
  const nodes = beamWidth * (tables.pieces + 2) * 1.5 + 2 * beamWidth + 16;
  return {
    beamWidth,
    mostSegments,
    sizeStride,
    now: generation(beamWidth, mostSegments, sizeStride),
    coming: generation(beamWidth, mostSegments, sizeStride),
    candidates: {
      state: new Int32Array(3),
      key: new Uint32Array(room),
      parent: new Int32Array(room),
      move: new Int32Array(room),
      block: new Int32Array(room),
      order: new Int32Array(room),
      spare: new Int32Array(room),
      counts: new Int32Array(2048),
      floatKey: new Float32Array(1),
    },
    history: {
      size: new Int32Array(1),
      parent: new Int32Array(nodes),
      way: new Int32Array(nodes),
      block: new Int32Array(nodes),
      across: new Int32Array(nodes),
      along: new Int32Array(nodes),
    },
    table: new Int32Array(hashSize),
    sizeHash,
  };
}

function generation(states: number, mostSegments: number, sizeStride: number): Generation {
  return {
    size: new Int32Array(1),
    segments: new Int32Array(states),
    segAcross: new Int32Array(states * (mostSegments + 1)),
    segAlong: new Int32Array(states * (mostSegments + 1)),
    left: new Uint16Array(states * sizeStride),
    leftHash: new Int32Array(states),
    hash: new Int32Array(states),
    piecesLeft: new Int32Array(states),
    moves: new Int32Array(states),
    waste: new Float64Array(states),
    placed: new Float64Array(states),
    narrow: new Int32Array(states),
    short: new Int32Array(states),
    node: new Int32Array(states),
  };
}

/** Makes `now` the one empty plan. */
export function startBeam(tables: SearchTables, memory: BeamMemory): void {
  const { now, history } = memory;
  now.size[0] = 1;
  now.segments[0] = 1;
  now.segAcross[0] = 0;
  now.segAcross[1] = tables.width;
  now.segAlong[0] = 0;
  for (let size = 0; size < tables.sizes; size++) now.left[size] = tables.sizeCount[size]!;
  now.leftHash[0] = 0;
  now.piecesLeft[0] = tables.pieces;
  now.moves[0] = 0;
  now.waste[0] = 0;
  now.placed[0] = 0;
  now.narrow[0] = 0;
  now.short[0] = 0;
  now.node[0] = 0;
  history.size[0] = 1;
  history.parent[0] = -1;
  memory.candidates.state[0] = 0;
  memory.candidates.state[1] = -1;
  memory.candidates.state[2] = 0;
}
