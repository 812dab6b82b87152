/**
 * Numbers per grid in `GridArena.heads`: corner x, y, cells per unit x, y, cells a side, first cell, first edge,
 * edges, how near outside cells keep their list, 1 when all but the rings is inside.
 */
export const HEAD = 10;

/** Bytes of the arena at first, and by how many it grows at most. */
const FIRST_BYTES = 48 * (1 << 15);
const MOST_GROWTH = 32 << 20;
/** Slots in which lists are looked up that a later cell may have as well: a power of two. */
const LIST_SLOTS = 4096;

/**
 * All feature grids of one job, one after the other in one buffer that grows when full: the edges of a grid, its
 * cells (0 until filled), what each cell is deep at least; lists follow as cells are filled.
 */
export interface GridArena {
  heads: Float64Array;
  /** The buffer as cells and lists, as bytes, as edges. */
  cells: Int32Array;
  least: Uint8Array;
  edges: Float64Array;
  /** Where lists were written last, by hash. */
  readonly known: Int32Array;
  gridCount: number;
  /** Bytes in use. */
  used: number;
}

/** `bytes`: what it is sure to need. Growing copies all of it, which is a turn by itself where it is large. */
export function emptyArena(bytes = 0): GridArena {
  const buffer = new ArrayBuffer(Math.max(FIRST_BYTES, Math.ceil(bytes / 48) * 48));
  return {
    heads: new Float64Array(64 * HEAD),
    cells: new Int32Array(buffer),
    least: new Uint8Array(buffer),
    edges: new Float64Array(buffer),
    known: new Int32Array(LIST_SLOTS),
    gridCount: 0,
    used: 0,
  };
}

/** Bytes held by the arena. */
export function arenaBytes(arena: GridArena): number {
  return arena.heads.byteLength + arena.least.byteLength;
}

/** Takes so many more bytes of the arena into use, a multiple of 4 for its cells; returns where they begin. */
export function takeBytes(arena: GridArena, bytes: number): number {
  const start = arena.used;
  arena.used += bytes;
  if (arena.used > arena.least.length) {
    const more = Math.max(arena.used, Math.min(2 * arena.least.length, arena.least.length + MOST_GROWTH));
    // Rounded up to whole edges and cells.
    const bigger = new Uint8Array(Math.ceil(more / 48) * 48);
    bigger.set(arena.least);
    arena.least = bigger;
    arena.cells = new Int32Array(bigger.buffer);
    arena.edges = new Float64Array(bigger.buffer);
  }
  return start;
}

export function grownFloats(array: Float64Array, need: number): Float64Array {
  if (need <= array.length) return array;
  const bigger = new Float64Array(Math.max(need, array.length * 2));
  bigger.set(array);
  return bigger;
}
