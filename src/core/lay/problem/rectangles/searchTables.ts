import type { Blocked, RectangleJob } from "./rectangleJob.ts";

/** A rectangle job as typed arrays, for the kernels. A way belongs to one size; a size has one or two ways. */
export interface SearchTables {
  readonly width: number;
  /** Number of rectangles. */
  readonly pieces: number;
  readonly sizes: number;
  readonly ways: number;
  readonly wayAcross: Int32Array;
  readonly wayAlong: Int32Array;
  readonly waySize: Int32Array;
  /** Position of the way within its size (0 or 1). */
  readonly wayIndex: Int32Array;
  readonly sizeFirstWay: Int32Array;
  /** −1 when the size may lie in one way only. */
  readonly sizeSecondWay: Int32Array;
  readonly sizeCount: Int32Array;
  readonly sizeArea: Float64Array;
  /** Least extent across over the ways. */
  readonly sizeLeastAcross: Int32Array;
  readonly sizeLeastAlong: Int32Array;
  /** Sizes by `sizeLeastAcross`, narrowest first. */
  readonly narrowestFirst: Int32Array;
  /** Sizes by `sizeLeastAlong`, shortest first. */
  readonly shortestFirst: Int32Array;
  /** Ways by `wayAcross`, narrowest first; and their extents. */
  readonly waysByAcross: Int32Array;
  readonly acrossSorted: Int32Array;
  /** Ways by `wayAlong`, shortest first; and their extents. */
  readonly waysByAlong: Int32Array;
  readonly alongSorted: Int32Array;
  readonly area: number;
  /** Blocked boxes by where they begin along, four numbers each: from along, to along, from across, to across. */
  readonly blocked: Int32Array;
}

/** What a table needs of a size: its count and its ways as [across, along]. */
export interface TableSize {
  readonly count: number;
  readonly ways: readonly (readonly [across: number, along: number])[];
}

/** Tables of a prepared job. O(sizes log sizes). */
export function searchTablesOf(prepared: RectangleJob): SearchTables {
  const sizes = prepared.sizes.map((size) => ({
    count: size.copies.length,
    ways: size.ways.map((way) => [way.across, way.along] as const),
  }));
  return searchTables(prepared.width, sizes, prepared.blocked);
}

/** Tables from plain numbers. Throws RangeError for a size without ways. */
export function searchTables(width: number, list: readonly TableSize[], blocked: readonly Blocked[]): SearchTables {
  const sizes = list.length;
  const flat = list.flatMap((size, index) => size.ways.map((way, at) => ({ way, index, at })));
  const sizeFirstWay = new Int32Array(sizes).fill(-1);
  const sizeSecondWay = new Int32Array(sizes).fill(-1);
  flat.forEach(({ index, at }, way) => {
    (at === 0 ? sizeFirstWay : sizeSecondWay)[index] = way;
  });
  if (sizeFirstWay.includes(-1)) throw new RangeError("searchTables: every size needs a way to lie");
  const sizeCount = Int32Array.from(list, (size) => size.count);
  const sizeArea = Float64Array.from(list, ({ ways }) => ways[0]![0] * ways[0]![1]);
  const sizeLeastAcross = Int32Array.from(list, ({ ways }) => Math.min(...ways.map((way) => way[0])));
  const sizeLeastAlong = Int32Array.from(list, ({ ways }) => Math.min(...ways.map((way) => way[1])));
  const sorted = (by: Int32Array): Int32Array =>
    Int32Array.from(list, (_, index) => index).sort((a, b) => by[a]! - by[b]! || a - b);
  const wayAcross = Int32Array.from(flat, ({ way }) => way[0]);
  const wayAlong = Int32Array.from(flat, ({ way }) => way[1]);
  const sortedWays = (by: Int32Array): Int32Array =>
    Int32Array.from(flat, (_, way) => way).sort((a, b) => by[a]! - by[b]! || a - b);
  const waysByAcross = sortedWays(wayAcross);
  const waysByAlong = sortedWays(wayAlong);
  return {
    width,
    pieces: sizeCount.reduce((sum, count) => sum + count, 0),
    sizes,
    ways: flat.length,
    wayAcross,
    wayAlong,
    waysByAcross,
    acrossSorted: waysByAcross.map((way) => wayAcross[way]!),
    waysByAlong,
    alongSorted: waysByAlong.map((way) => wayAlong[way]!),
    waySize: Int32Array.from(flat, ({ index }) => index),
    wayIndex: Int32Array.from(flat, ({ at }) => at),
    sizeFirstWay,
    sizeSecondWay,
    sizeCount,
    sizeArea,
    sizeLeastAcross,
    sizeLeastAlong,
    narrowestFirst: sorted(sizeLeastAcross),
    shortestFirst: sorted(sizeLeastAlong),
    area: sizeArea.reduce((sum, area, index) => sum + area * sizeCount[index]!, 0),
    blocked: Int32Array.from(
      [...blocked]
        .sort((a, b) => a.fromAlong - b.fromAlong)
        .flatMap((b) => [b.fromAlong, b.toAlong, b.fromAcross, b.toAcross]),
    ),
  };
}

/**
 * The job seen from the side: the cap becomes the width, and a plan no wider than the old width is wanted. Sizes
 * and ways keep their numbers. Blocked boxes must not be there.
 */
export function transposedTables(tables: SearchTables, cap: number): SearchTables {
  const list = Array.from({ length: tables.sizes }, (_, size) => {
    const ways = [tables.sizeFirstWay[size]!, tables.sizeSecondWay[size]!].filter((way) => way >= 0);
    return {
      count: tables.sizeCount[size]!,
      ways: ways.map((way) => [tables.wayAlong[way]!, tables.wayAcross[way]!] as const),
    };
  });
  return searchTables(cap, list, []);
}
