import { expect, test } from "vitest";
import { searchTables } from "../../../problem/rectangles/searchTables.ts";
import { inOneGo } from "../../../search/breath.ts";
import { seededRng } from "../../../search/rng.ts";
import { type Shelf, shelfDesk } from "./shelfDesk.ts";

// One each of six kinds: columns of different pieces lie beside each other.
const SIZES = [11, 13, 17, 19, 23, 29].map((across, i) => ({ count: 1, ways: [[across, 55 - 5 * i] as const] }));
const HEIGHT = 55;
const TABLES = searchTables(120, SIZES, []);

function shelves(seed: number | null, times: number): Shelf[] {
  const desk = shelfDesk(TABLES, HEIGHT, Infinity, seed === null ? null : seededRng(seed));
  const { sizeCount, sizeArea } = TABLES;
  return Array.from({ length: times }, () => inOneGo(desk.filled(HEIGHT, sizeCount, sizeArea)));
}

test("a shelf asked for again is another one where columns are drawn, else the same; each keeps within its bounds", () => {
  const told = (all: readonly Shelf[]): Set<string> => new Set(all.map((shelf) => JSON.stringify(shelf.laid)));
  expect(told(shelves(null, 12)).size).toBe(1);
  expect(told(shelves(1, 12)).size).toBeGreaterThan(3);
  expect(shelves(1, 12)).toEqual(shelves(1, 12));
  for (const { laid, area, height } of [...shelves(1, 12), ...shelves(2, 12)]) {
    const counts = TABLES.sizeCount.slice();
    const ends = new Map<number, number>();
    for (const { way, across, along } of laid) {
      counts[TABLES.waySize[way]!]!--;
      // Pieces of a column stand on each other.
      expect(along).toBe(ends.get(across) ?? 0);
      ends.set(across, along + TABLES.wayAlong[way]!);
      expect(across + TABLES.wayAcross[way]!).toBeLessThanOrEqual(TABLES.width);
    }
    expect(Math.min(...counts)).toBeGreaterThanOrEqual(0);
    expect(Math.max(...ends.values())).toBe(height);
    expect(height).toBeLessThanOrEqual(HEIGHT);
    expect(laid.reduce((sum, { way }) => sum + TABLES.wayAcross[way]! * TABLES.wayAlong[way]!, 0)).toBe(area);
  }
});
