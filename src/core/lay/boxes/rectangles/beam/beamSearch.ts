import type { PlacedRectangle } from "../../../problem/rectangles/rectangleJob.ts";
import type { SearchTables } from "../../../problem/rectangles/searchTables.ts";
import { power, type Rng } from "../../../search/rng.ts";
import { sortCandidates } from "./beamCandidates.kernel.ts";
import { expandStates } from "./beamExpand.kernel.ts";
import { makeChildren } from "./beamMake.kernel.ts";
import { type BeamMemory, type Guide, startBeam } from "./beamMemory.ts";

/** A beam over partial skyline plans for one cap on the length, run in slices. */
export interface BeamSearch {
  /**
   * Goes on for about `looks` children. "found": `rectangles()` holds a plan within the cap; "breath": not there yet,
   * to be called again with the same looks.
   */
  advance(looks: number): "found" | "more" | "over" | "breath";
  spent(): number;
  rectangles(): PlacedRectangle[];
  /** Whether no state was ever dropped for want of room: with hollows, "over" then proves there is no plan. */
  isExhausted(): boolean;
}

/** What judging and making a child cost, in looks of the order search, so that budgets mean the same for both. */
const JUDGING = 2;
const MAKING = 14;

/** Looks between two breaths: memory touched for the first time takes ten times as long. */
const LOOKS_PER_BREATH = 30_000;

/** Wider beams would take longer than 20 ms between yields to sort their candidates. */
const WIDEST = 16_384;

/** Nodes of history that a beam may fill, each 20 bytes. */
const MOST_NODES = 3_000_000;

/** Widest beam that the job allows in memory. */
export function widestBeam(tables: SearchTables): number {
  return Math.max(16, Math.min(WIDEST, Math.floor(MOST_NODES / (tables.pieces + 2))));
}

/** A beam of `beamWidth` states for plans that end at `cap` or before. */
export function beamSearch(tables: SearchTables, guide: Guide, cap: number, memory: BeamMemory): BeamSearch {
  const budget = cap * tables.width - tables.area + 1e-6 * tables.area * 1e-6;
  let { now, coming: then } = memory;
  let at = 0;
  let making = -1;
  let spent = 0;
  let until = 0;
  let dropped = false;
  let finished = -1;
  startBeam(tables, memory);

  const view = (): BeamMemory => ({ ...memory, now, coming: then });
  let current = view();

  const advance = (looks: number): "found" | "more" | "over" | "breath" => {
    if (budget < 0) return "over";
    if (spent >= until) until = spent + looks;
    const soon = spent + LOOKS_PER_BREATH;
    while (spent < until) {
      if (spent >= soon) return "breath";
      if (making < 0) {
        const to = Math.min(now.size[0]!, at + 64);
        spent += JUDGING * (expandStates(tables, current, guide, cap, budget, at, to) + to - at);
        at = to;
        if (at < now.size[0]!) continue;
        const count = memory.candidates.state[0]!;
        if (count === 0) return "over";
        sortCandidates(memory.candidates, count);
        memory.table.fill(0);
        then.size[0] = 0;
        making = 0;
        continue;
      }
      const count = memory.candidates.state[0]!;
      const to = Math.min(count, making + 256);
      finished = makeChildren(tables, current, cap, budget, making, to);
      spent += MAKING * (to - making);
      if (finished >= 0) return "found";
      making = to;
      const full = then.size[0]! >= memory.beamWidth;
      if (making < count && !full) continue;
      // Not quite exact when the last candidate fills the beam, but on the safe side.
      if (full) dropped = true;
      [now, then] = [then, now];
      current = view();
      making = -1;
      at = 0;
      memory.candidates.state[0] = 0;
      memory.candidates.state[1] = -1;
      if (now.size[0] === 0 || memory.history.size[0]! + memory.beamWidth >= memory.history.parent.length)
        return "over";
    }
    return "more";
  };
  return {
    advance,
    spent: () => spent,
    rectangles: () => historyRectangles(tables, memory, finished),
    isExhausted: () => finished < 0 && !dropped && memory.candidates.state[2] === 0,
  };
}

function historyRectangles(tables: SearchTables, memory: BeamMemory, last: number): PlacedRectangle[] {
  const { history } = memory;
  const placed: PlacedRectangle[] = [];
  for (let node = last; node > 0; node = history.parent[node]!) {
    const way = history.way[node]!;
    const nx = history.block[node]! >> 16;
    const ny = history.block[node]! & 65535;
    for (let i = 0; i < nx; i++) {
      for (let j = 0; j < ny; j++) {
        placed.push({
          size: tables.waySize[way]!,
          way: tables.wayIndex[way]!,
          across: history.across[node]! + i * tables.wayAcross[way]!,
          along: history.along[node]! + j * tables.wayAlong[way]!,
        });
      }
    }
  }
  return placed.reverse();
}

/**
 * A guide drawn at random around values that did well alone; no one guide is best on all jobs, and the best of
 * several is clearly better than each. `blocks` and `hollows` as in `Guide`.
 */
export function guideOf(run: number, rng: Rng, blocks: boolean, hollows: Int32Array | null): Guide {
  const plain = run === 0;
  return {
    wasteFloor: plain ? 0.02 : 0.005 * power(10, rng.unit()),
    mismatch: plain ? 1.05 : 1.01 + 0.1 * rng.unit(),
    perSegment: plain || rng.below(2) === 0 ? 0 : 0.06 * rng.unit(),
    blocks,
    hollows,
  };
}
