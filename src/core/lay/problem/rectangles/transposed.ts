import { type SearchTables, searchTables } from "./searchTables.ts";

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
