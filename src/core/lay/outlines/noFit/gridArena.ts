/**
 * Numbers per grid in `GridArena.heads`: corner x, y, cells per unit x, y, cells a side, first cell, first edge,
 * edges.
 */
export const HEAD = 8;

/** Bytes of the arena at first. */
const FIRST_BYTES = 1 << 20;

/**
 * All feature grids of one job, one after the other in one buffer that doubles when full: the edges of a grid, its
 * cells, what each cell is deep at least, its lists. Side by side, since each question asks a grid of its own and few
 * of them fit the fastest memory.
 */
export interface GridArena {
  heads: Float64Array;
  /** The buffer as cells and lists, as bytes, as edges. */
  cells: Int32Array;
  least: Uint8Array;
  edges: Float64Array;
  gridCount: number;
  /** Bytes in use. */
  used: number;
}

export function emptyArena(): GridArena {
  const buffer = new ArrayBuffer(FIRST_BYTES);
  return {
    heads: new Float64Array(64 * HEAD),
    cells: new Int32Array(buffer),
    least: new Uint8Array(buffer),
    edges: new Float64Array(buffer),
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
    const bigger = new Uint8Array(2 ** Math.ceil(Math.log2(arena.used)));
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
