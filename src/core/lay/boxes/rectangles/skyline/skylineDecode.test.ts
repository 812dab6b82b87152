import { expect, test } from "vitest";
import { randomOrder } from "../../../../../../tests/tools/randomOrder.ts";
import { type SearchTables, searchTables } from "../../../problem/rectangles/searchTables.ts";
import { seededRng } from "../../../search/rng.ts";
import { decodeBuffers, decodeOrder } from "./skylineDecode.kernel.ts";

/** The slow twin: heights of unit columns, every piece looked at in list order. Returns way, along, across of each. */
function slowDecode(tables: SearchTables, order: readonly number[], cap: number): number[][] {
  const heights = new Array<number>(tables.width).fill(0);
  const entries = order.slice();
  const out: number[][] = [];
  while (entries.length > 0) {
    const base = Math.min(...heights);
    const start = heights.indexOf(base);
    let end = start;
    while (end < tables.width && heights[end] === base) end++;
    const gap = end - start;
    const room = cap - base;
    if (room <= 0) break;
    const left = start > 0 ? heights[start - 1]! - base : room;
    const right = end < tables.width ? heights[end]! - base : room;
    const least = Math.min(...entries.map((size) => tables.sizeLeastAcross[size]!));
    let best = { score: 0, way: -1, at: -1 };
    entries.forEach((size, at) => {
      for (const way of [tables.sizeFirstWay[size]!, tables.sizeSecondWay[size]!]) {
        if (way < 0) continue;
        const across = tables.wayAcross[way]!;
        const along = tables.wayAlong[way]!;
        if (across > gap || along > room) continue;
        const [tall, low] = [Math.max(left, right), Math.min(left, right)];
        let score = along === tall ? 4 : along === low ? 3 : 2;
        if (across === gap) score = along === tall ? (along === low ? 9 : 8) : along === low ? 7 : 5;
        else if (gap - across < least) score--;
        if (score > best.score) best = { score, way, at };
      }
    });
    if (best.way < 0) {
      if (gap === tables.width) break;
      heights.fill(base + Math.min(left, right), start, end);
      continue;
    }
    const across = tables.wayAcross[best.way]!;
    const along = tables.wayAlong[best.way]!;
    const atLeft = across === gap || along === left || (along !== right && left >= right);
    const corner = atLeft ? start : end - across;
    heights.fill(base + along, corner, corner + across);
    out.push([best.way, base, corner]);
    entries.splice(best.at, 1);
  }
  return out;
}

test("the skyline decode lays pieces as its slow twin does", () => {
  for (let seed = 1; seed <= 300; seed++) {
    const rng = seededRng(seed);
    const { tables, order } = randomOrder(rng);
    const cap = rng.below(2) === 0 ? 1000 : 15;
    const buffers = decodeBuffers(tables);
    const left = decodeOrder(tables, Int32Array.from(order), cap, buffers);
    const twin = slowDecode(tables, order, cap);
    const laid = twin.map((_, i) => [buffers.outWay[i], buffers.outAlong[i], buffers.outAcross[i]]);
    expect(laid, `seed ${seed}`).toEqual(twin);
    expect(buffers.result[0]).toBe(twin.length);
    const placed = twin.reduce((sum, [way]) => sum + tables.wayAcross[way!]! * tables.wayAlong[way!]!, 0);
    expect(left).toBe(tables.area - placed);
  }
});

test("a decode told how much may stay out says the same when no more does, and otherwise that it is more", () => {
  let stopped = 0;
  for (let seed = 1; seed <= 300; seed++) {
    const rng = seededRng(seed);
    const { tables, order } = randomOrder(rng);
    const buffers = decodeBuffers(tables);
    const cap = 8 + rng.below(12);
    const whole = decodeOrder(tables, Int32Array.from(order), cap, buffers);
    const looks = buffers.result[2]!;
    const most = rng.below(2) === 0 ? whole : Math.floor(whole * rng.unit());
    const told = decodeOrder(tables, Int32Array.from(order), cap, buffers, most);
    if (whole <= most) expect(told, `seed ${seed}`).toBe(whole);
    else {
      expect(told, `seed ${seed}`).toBeGreaterThan(most);
      expect(told).toBeLessThanOrEqual(whole);
    }
    if (buffers.result[2]! < looks) stopped++;
  }
  expect(stopped).toBeGreaterThan(10);
});

test("three hundred flaws: pieces keep clear of them, and only those ahead of the front are looked at", () => {
  const rng = seededRng(9);
  const [width, cap] = [1400, 2500];
  const blocked = Array.from({ length: 300 }, () => {
    const [along, across] = [rng.below(cap), rng.below(width)];
    return { fromAlong: along, toAlong: along + 8, fromAcross: across, toAcross: across + 8 };
  });
  const sizes = Array.from({ length: 40 }, () => ({
    count: 1,
    ways: [[60 + rng.below(90), 60 + rng.below(90)] as const],
  }));
  const tables = searchTables(width, sizes, blocked);
  const buffers = decodeBuffers(tables);
  const left = decodeOrder(tables, Int32Array.from(sizes.keys()), cap, buffers);
  const [placed, , , boxes] = buffers.result;
  expect(left).toBe(0);
  expect(placed).toBe(40);
  for (let i = 0; i < placed!; i++) {
    const [way, along, across] = [buffers.outWay[i]!, buffers.outAlong[i]!, buffers.outAcross[i]!];
    const hit = blocked.filter(
      (box) =>
        box.fromAlong < along + tables.wayAlong[way]! &&
        box.toAlong > along &&
        box.fromAcross < across + tables.wayAcross[way]! &&
        box.toAcross > across,
    );
    expect(hit).toEqual([]);
  }
  // Each step of the front would look at all three hundred.
  expect(boxes).toBeLessThan((300 * placed!) / 2);
  expect(boxes).toBeGreaterThan(0);
});
