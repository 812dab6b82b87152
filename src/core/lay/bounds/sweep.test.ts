import { expect, test } from "vitest";
import { type SearchTables, searchTables } from "../problem/rectangles/searchTables.ts";
import { seededRng } from "../search/rng.ts";
import { resumeState, SWEEP_PAUSES, sweepState } from "./sweep.kernel.ts";
import { type SweepMemory, type SweepTask, sweepMemory } from "./sweepMemory.ts";
import { sweepProof } from "./sweepProof.ts";

/** Whether pieces can be begun so that what is used at a time never exceeds the capacity: every begin is tried. */
function canBeScheduled(
  pieces: readonly (readonly (readonly [need: number, last: number])[])[],
  capacity: number,
  horizon: number,
): boolean {
  const used = new Array<number>(horizon).fill(0);
  const place = (at: number): boolean => {
    if (at === pieces.length) return true;
    for (const [need, last] of pieces[at]!) {
      for (let begin = 0; begin + last <= horizon; begin++) {
        const span = used.slice(begin, begin + last);
        if (span.some((value) => value + need > capacity)) continue;
        for (let i = begin; i < begin + last; i++) used[i]! += need;
        if (place(at + 1)) return true;
        for (let i = begin; i < begin + last; i++) used[i]! -= need;
      }
    }
    return false;
  };
  return place(0);
}

/** The slow twin: both directions by trying everything. */
function slowVerdict(tables: SearchTables, length: number): "open" | "impossible" {
  const pieces = Array.from({ length: tables.sizes }, (_, size) =>
    new Array<number[]>(tables.sizeCount[size]!).fill(
      [tables.sizeFirstWay[size]!, tables.sizeSecondWay[size]!].filter((way) => way >= 0),
    ),
  ).flat();
  const seen = (need: Int32Array, last: Int32Array) =>
    pieces.map((ways) =>
      ways.filter((way) => tables.wayAlong[way]! <= length).map((way) => [need[way]!, last[way]!] as const),
    );
  const along = canBeScheduled(seen(tables.wayAcross, tables.wayAlong), tables.width, length);
  const across = canBeScheduled(seen(tables.wayAlong, tables.wayAcross), length, tables.width);
  return along && across ? "open" : "impossible";
}

test("a sweep rules out what trying every schedule rules out, and nothing else", () => {
  const seen = { open: 0, impossible: 0 };
  for (let seed = 1; seed <= 120; seed++) {
    const rng = seededRng(seed);
    const width = 4 + rng.below(5);
    const sizes = Array.from({ length: 1 + rng.below(3) }, () => {
      const [a, b] = [1 + rng.below(width), 1 + rng.below(5)];
      const turns = a !== b && b <= width && rng.below(3) > 0;
      return { count: 1 + rng.below(2), ways: turns ? [[a, b] as const, [b, a] as const] : [[a, b] as const] };
    });
    const tables = searchTables(width, sizes, []);
    const least = Math.max(Math.ceil(tables.area / width), ...tables.sizeLeastAlong);
    const length = least + rng.below(2);
    const proof = sweepProof(tables, length, 20_000);
    let step = proof.next();
    while (!step.done) step = proof.next();
    const expected = slowVerdict(tables, length);
    expect(step.value, `seed ${seed}`).toBe(expected);
    seen[expected]++;
  }
  // Both answers must have come up, or half of this says nothing.
  expect(Math.min(seen.open, seen.impossible)).toBeGreaterThan(20);
});

test("a sweep gives up when it may keep few states", () => {
  const straps = [
    [3, 28],
    [2, 28],
    [3, 15],
    [4, 11],
  ].map(([a, b]) => {
    return { count: 12, ways: [[a!, b!] as const, [b!, a!] as const] };
  });
  const tables = searchTables(54, straps, []);
  const proof = sweepProof(tables, Math.ceil(tables.area / 54), 50);
  let step = proof.next();
  while (!step.done) step = proof.next();
  expect(step.value).toBe("too much");
});

/** Sweeps a task from end to end with a pause after so many choices; the memory it leaves and the pauses made. */
function sweptWith(task: SweepTask, patience: number): { memory: SweepMemory; pauses: number } {
  const memory = sweepMemory(task, 5_000);
  let pauses = 0;
  for (let time = 0; time < task.horizon; time++) {
    for (let state = memory.head[time]!; state >= 0; state = memory.next[state]!) {
      let verdict = sweepState(task, memory, state, patience);
      for (; verdict === SWEEP_PAUSES; pauses++) verdict = resumeState(task, memory, state, patience);
    }
  }
  return { memory, pauses };
}

test("a state broken off in the middle of its choices is gone on with as if nothing had been", () => {
  const [capacity, horizon] = [10, 14];
  const [need, last, count] = [Int32Array.of(4, 3, 2), Int32Array.of(5, 4, 3), Int32Array.of(3, 3, 3)];
  const whole = capacity * horizon;
  const area = need.reduce((sum, n, k) => sum + n * last[k]! * count[k]!, 0);
  const prices = {
    sets: 1,
    worth: Float64Array.from(need, (n) => n / whole),
    dearer: new Float64Array(3),
    richest: Float64Array.of(1 / whole, 1 / whole, 1 / whole, 0),
    capacity: Float64Array.of(1 / horizon),
    slack: Float64Array.of(1 - area / whole),
  };
  const task = { kinds: 3, sizes: 3, need, last, size: Int32Array.of(0, 1, 2), count, capacity, horizon, prices };
  const plain = sweptWith(task, Infinity);
  const broken = sweptWith(task, 1);
  expect(plain.pauses).toBe(0);
  expect(broken.pauses).toBeGreaterThan(100);
  expect(broken.memory.tally).toEqual(plain.memory.tally);
  expect(broken.memory.ints).toEqual(plain.memory.ints);
  expect(broken.memory.slack).toEqual(plain.memory.slack);
});
