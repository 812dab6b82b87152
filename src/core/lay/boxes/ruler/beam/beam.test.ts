import { expect, test } from "vitest";
import { type Child, GUIDE, SlowBeam, type Space, type State } from "../../../../../../tests/tools/slowBeam.ts";
import { type SearchTables, searchTables } from "../../../problem/rectangles/searchTables.ts";
import { seededRng } from "../../../search/rng.ts";
import { ANY_STRIP } from "../splits/splitDecode.kernel.ts";
import { type BeamRun, scoreChildren } from "./beam.kernel.ts";
import { type BeamStates, beamChildren, beamStates, beamWorld, FREE_SIZE, MOST_FREE } from "./beamState.ts";
import { writeChild } from "./beamWrite.kernel.ts";
import { reachTable } from "./reachTable.ts";

function load(state: State, into: BeamStates): void {
  into.left.set(state.left);
  state.spaces.forEach(({ w, h, x, y, level }, k) => {
    into.free.set([w, h, x, y, level], k * FREE_SIZE);
  });
  into.freeCount[0] = state.spaces.length;
  into.placedArea[0] = state.area;
  into.placed[0] = state.placed;
  into.waste[0] = state.waste;
}

function loaded(states: BeamStates, tables: SearchTables): State {
  const spaces = Array.from({ length: states.freeCount[0]! }, (_, k): Space => {
    const [w, h, x, y, level] = states.free.subarray(k * FREE_SIZE, (k + 1) * FREE_SIZE);
    return { w: w!, h: h!, x: x!, y: y!, level: level! };
  });
  const left = [...states.left.subarray(0, tables.sizes)];
  return { left, spaces, area: states.placedArea[0]!, placed: states.placed[0]!, waste: states.waste[0]! };
}

function runOf(slow: SlowBeam, most: number): BeamRun {
  const { tables, stages, height, budget, strips } = slow;
  const isAny = strips.least === 0;
  return {
    world: beamWorld(tables, stages, strips),
    guide: GUIDE,
    rng: seededRng(1),
    budget,
    area: tables.width * height,
    height,
    reachAcross: isAny ? reachTable(tables, tables.wayAcross, tables.sizeCount, tables.width) : new Int32Array(0),
    reachAlong: isAny ? reachTable(tables, tables.wayAlong, tables.sizeCount, height) : new Int32Array(0),
    children: beamChildren(most),
    most,
    tally: new Float64Array(2),
  };
}

function kept({ children, tally }: BeamRun): Child[] {
  return Array.from({ length: tally[0]! }, (_, k) => {
    const slot = children.slot[k]!;
    return {
      way: children.way[slot]!,
      nx: children.timesAcross[slot]!,
      ny: children.timesAlong[slot]!,
      split: children.split[slot]!,
      score: children.score[k]!,
    };
  });
}

const told = ({ way, nx, ny, split, score }: Child): string => `${way} ${nx}x${ny} ${split} ${score.toFixed(9)}`;

test("the ruler beam scores and makes children as its slow twin does", () => {
  const ends = { done: 0, dead: 0 };
  for (let seed = 1; seed <= 150; seed++) {
    const rng = seededRng(seed);
    const width = 8 + rng.below(12);
    const sizes = Array.from({ length: 1 + rng.below(4) }, () => {
      const [a, b] = [1 + rng.below(width - 1), 1 + rng.below(9)];
      const turns = b <= width && a !== b && rng.below(2) === 0;
      return { count: 1 + rng.below(5), ways: turns ? [[a, b] as const, [b, a] as const] : [[a, b] as const] };
    });
    const tables = searchTables(width, sizes, []);
    const slack = 1.05 + 0.4 * rng.below(3) * rng.unit();
    const height = Math.max(...tables.wayAlong, Math.ceil((tables.area / width) * slack));
    const loose = { sideLoose: seed % 2 === 0, endLoose: seed % 4 < 2 };
    const strips = seed % 3 === 0 ? { least: 1 + (seed % 5), ...loose } : ANY_STRIP;
    const slow = new SlowBeam(tables, [3, Infinity, 2][rng.below(3)]!, height, strips);
    let state = slow.start();
    for (;;) {
      const children = slow.children(state);
      const from = beamStates(tables.sizes, 1);
      load(state, from);
      const all = runOf(slow, 5000);
      scoreChildren(all, from, 0);
      expect(kept(all).map(told).sort(), `seed ${seed}`).toEqual(children.map(told).sort());
      const few = runOf(slow, 3);
      scoreChildren(few, from, 0);
      const byScore = (a: number, b: number): number => a - b;
      const scores = children.map(({ score }) => score).sort(byScore);
      const best = kept(few).map(({ score }) => score);
      expect(best.length).toBe(Math.min(3, scores.length));
      best.sort(byScore).forEach((score, k) => {
        expect(score).toBeCloseTo(scores[k]!, 12);
      });
      if (children.length === 0) break;
      const pick = kept(all)[rng.below(children.length)]!;
      const slot = [...all.children.slot.subarray(0, children.length)].find((s) => {
        const { way, timesAcross, timesAlong, split } = all.children;
        return (
          way[s] === pick.way && timesAcross[s] === pick.nx && timesAlong[s] === pick.ny && split[s] === pick.split
        );
      })!;
      const into = beamStates(tables.sizes, 1);
      const hash = writeChild(all, from, slot, into, 0);
      const next = slow.after(state, pick);
      if (next?.placed === tables.pieces) {
        expect(into.placed[0]).toBe(tables.pieces);
        ends.done++;
        break;
      }
      if (state.spaces.length + 2 >= MOST_FREE) break;
      expect(hash < 0, `seed ${seed}`).toBe(next === null);
      if (next === null) {
        ends.dead++;
        break;
      }
      expect(loaded(into, tables), `seed ${seed}`).toEqual(next);
      state = next;
    }
  }
  expect(Math.min(ends.done, ends.dead), JSON.stringify(ends)).toBeGreaterThan(4);
});
