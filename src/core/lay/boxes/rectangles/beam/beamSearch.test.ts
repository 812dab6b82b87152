import { expect, test } from "vitest";
import { reachableLengths } from "../../../bounds/reachableLengths.ts";
import { type SearchTables, searchTables, transposedTables } from "../../../problem/rectangles/searchTables.ts";
import { seededRng } from "../../../search/rng.ts";
import { beamMemory } from "./beamMemory.ts";
import { beamSearch } from "./beamSearch.ts";

/** The slow twin: every cell in turn is left empty or becomes the first corner of some piece. */
function fits(tables: SearchTables, cap: number): boolean {
  const { width, ways, wayAcross, wayAlong, waySize } = tables;
  const used = new Uint8Array(width * cap);
  const left = tables.sizeCount.slice();
  const mark = (cell: number, way: number, value: number): void => {
    for (let i = 0; i < wayAlong[way]!; i++)
      for (let j = 0; j < wayAcross[way]!; j++) used[cell + i * width + j] = value;
  };
  const isFree = (cell: number, way: number): boolean => {
    if ((cell % width) + wayAcross[way]! > width || Math.floor(cell / width) + wayAlong[way]! > cap) return false;
    for (let i = 0; i < wayAlong[way]!; i++)
      for (let j = 0; j < wayAcross[way]!; j++) if (used[cell + i * width + j] === 1) return false;
    return true;
  };
  const place = (cell: number, waste: number): boolean => {
    if (left.every((count) => count === 0)) return true;
    let at = cell;
    while (at < used.length && used[at] === 1) at++;
    if (at === used.length || waste < 0) return false;
    for (let way = 0; way < ways; way++) {
      if (left[waySize[way]!] === 0 || !isFree(at, way)) continue;
      left[waySize[way]!]!--;
      mark(at, way, 1);
      if (place(at, waste)) return true;
      mark(at, way, 0);
      left[waySize[way]!]!++;
    }
    used[at] = 1;
    const found = place(at, waste - 1);
    used[at] = 0;
    return found;
  };
  return place(0, width * cap - tables.area);
}

test("a beam that never drops a state finds a plan exactly when trying every cell does", () => {
  const seen = { found: 0, over: 0 };
  for (let seed = 1; seed <= 150; seed++) {
    const rng = seededRng(seed);
    const width = 4 + rng.below(3);
    const sizes = Array.from({ length: 2 + rng.below(2) }, () => {
      const [a, b] = [1 + rng.below(width - 1), 1 + rng.below(4)];
      const turns = a !== b && b <= width && rng.below(2) === 0;
      return { count: 1 + rng.below(3), ways: turns ? [[a, b] as const, [b, a] as const] : [[a, b] as const] };
    });
    const tables = searchTables(width, sizes, []);
    const cap = Math.max(Math.ceil(tables.area / width), ...tables.sizeLeastAlong);
    const hollows = reachableLengths(transposedTables(tables, cap), width).list(width);
    const guide = { wasteFloor: 0.02, mismatch: 1.05, perSegment: 0, blocks: false, hollows };
    const beam = beamSearch(tables, guide, cap, beamMemory(tables, 4096));
    let state = beam.advance(1e6);
    while (state === "more" || state === "breath") state = beam.advance(1e6);
    if (state !== "found" && !beam.isExhausted()) continue;
    expect(state === "found", `seed ${seed}`).toBe(fits(tables, cap));
    seen[state === "found" ? "found" : "over"]++;
    if (state !== "found") continue;
    const cells = new Set<number>();
    const left = tables.sizeCount.slice();
    for (const { size, way, along, across } of beam.rectangles()) {
      const index = way === 0 ? tables.sizeFirstWay[size]! : tables.sizeSecondWay[size]!;
      expect(along + tables.wayAlong[index]!).toBeLessThanOrEqual(cap);
      expect(across + tables.wayAcross[index]!).toBeLessThanOrEqual(width);
      for (let i = 0; i < tables.wayAlong[index]!; i++)
        for (let j = 0; j < tables.wayAcross[index]!; j++) cells.add((along + i) * width + across + j);
      left[size]!--;
    }
    expect(cells.size, `seed ${seed}: overlap`).toBe(tables.area);
    expect(left.every((count) => count === 0)).toBe(true);
  }
  expect(Math.min(seen.found, seen.over)).toBeGreaterThan(10);
});
