import type { SearchTables } from "../../../problem/rectangles/searchTables.ts";
import type { Rng } from "../../../search/rng.ts";
import { ANY_STRIP, type NarrowRule } from "../splits/splitDecode.kernel.ts";
import { type BeamRun, fitsAny, reach, scoreChildren } from "./beam.kernel.ts";
import {
  type BeamGuide,
  beamChildren,
  beamStates,
  beamWorld,
  CLOTH,
  FREE_SIZE,
  MOST_FREE,
  TRAIL_SIZE,
} from "./beamState.ts";
import { writeChild } from "./beamWrite.kernel.ts";
import { reachTable } from "./reachTable.ts";

/** A rectangle laid by a search: way in the tables, near corner in units. */
export interface LaidWay {
  readonly way: number;
  readonly across: number;
  readonly along: number;
}

/** What one beam is to fill. */
export interface BeamTask {
  /** Pieces of each size. */
  readonly counts: ArrayLike<number>;
  /** Extent along to fill. */
  readonly height: number;
  /** States kept per level. */
  readonly breadth: number;
  readonly guide: BeamGuide;
}

/** Beam search for edge-to-edge plans of a given height; one task at a time. */
export interface RulerBeam {
  begin(task: BeamTask, rng: Rng): void;
  /** Goes on for about `evaluations` scored children. */
  advance(evaluations: number): "found" | "more" | "over";
  /** The plan after "found". */
  plan(): LaidWay[];
  /** Children scored since the beam was made. */
  spent(): number;
}

/** Every extent is usable. */
const WHOLE = new Int32Array(0);
/** Children looked at per state kept. */
const CHILDREN_PER_STATE = 2;
/** Longest trail of blocks before a beam is given up. */
const MOST_TRAIL = 1 << 20;

/** A beam for the pieces of `tables`, at most `mostBreadth` states wide; `stages` is 2, 3 or Infinity. */
export function rulerBeam(
  tables: SearchTables,
  stages: number,
  mostBreadth: number,
  strips: NarrowRule = ANY_STRIP,
): RulerBeam {
  const world = beamWorld(tables, stages, strips);
  const children = beamChildren(CHILDREN_PER_STATE * mostBreadth + 1);
  let from = beamStates(tables.sizes, mostBreadth + 1);
  let into = beamStates(tables.sizes, mostBreadth + 1);
  let trail = new Int32Array(1024 * TRAIL_SIZE);
  let trailCount = 0;
  let found = -1;
  let states = 0;
  let cursor = 0;
  let breadth = 1;
  let goal = 0;
  let run: BeamRun | null = null;
  let spent = 0;
  const seen = new Set<number>();

  const begin = (task: BeamTask, rng: Rng): void => {
    const { counts, height, guide } = task;
    breadth = Math.min(task.breadth, mostBreadth);
    let area = 0;
    goal = 0;
    for (let size = 0; size < tables.sizes; size++) {
      from.left[size] = counts[size]!;
      area += counts[size]! * tables.sizeArea[size]!;
      goal += counts[size]!;
    }
    // Where narrow strips count, cloth that no piece reaches is not cut off unseen.
    const isAny = strips.least === 0;
    const reachAcross = isAny ? reachTable(tables, tables.wayAcross, counts, tables.width) : WHOLE;
    const reachAlong = isAny ? reachTable(tables, tables.wayAlong, counts, Math.max(0, height)) : WHOLE;
    run = {
      world: { ...world, tables: { ...tables, pieces: goal } },
      guide,
      rng,
      budget: tables.width * height - area,
      area: tables.width * height,
      height,
      reachAcross,
      reachAlong,
      children,
      most: CHILDREN_PER_STATE * breadth,
      tally: new Float64Array(2),
    };
    const w = reach(reachAcross, tables.width);
    const h = reach(reachAlong, Math.max(0, height));
    from.free.set([w, h, 0, 0, CLOTH], 0);
    from.freeCount[0] = 1;
    from.placedArea[0] = 0;
    from.waste[0] = run.area - w * h;
    from.placed[0] = 0;
    from.trail[0] = -1;
    trailCount = 0;
    found = -1;
    cursor = 0;
    states = run.budget >= from.waste[0]! && fitsAny(world, from.left, 0, w, h, -1) ? 1 : 0;
  };

  const record = (slot: number): number => {
    if ((trailCount + 1) * TRAIL_SIZE > trail.length) {
      const longer = new Int32Array(2 * trail.length);
      longer.set(trail);
      trail = longer;
    }
    const parent = children.parent[slot]!;
    const top = (parent * MOST_FREE + from.freeCount[parent]! - 1) * FREE_SIZE;
    const k = trailCount * TRAIL_SIZE;
    trail[k] = from.trail[parent]!;
    trail[k + 1] = children.way[slot]!;
    trail[k + 2] = from.free[top + 2]!;
    trail[k + 3] = from.free[top + 3]!;
    trail[k + 4] = children.timesAcross[slot]!;
    trail[k + 5] = children.timesAlong[slot]!;
    return trailCount++;
  };

  /** Turns the children in the heap into the next level. */
  const nextLevel = (current: BeamRun): boolean => {
    const order = Array.from({ length: current.tally[0]! }, (_, k) => k);
    order.sort((a, b) => children.score[a]! - children.score[b]! || children.slot[a]! - children.slot[b]!);
    seen.clear();
    let count = 0;
    for (const k of order) {
      if (count >= breadth) break;
      const slot = children.slot[k]!;
      const hash = writeChild(current, from, slot, into, count);
      if (hash < 0) continue;
      if (into.placed[count] === goal) {
        found = record(slot);
        return true;
      }
      if (seen.has(hash)) continue;
      seen.add(hash);
      into.trail[count] = children.way[slot]! >= 0 ? record(slot) : from.trail[children.parent[slot]!]!;
      count++;
    }
    [from, into] = [into, from];
    states = trailCount > MOST_TRAIL ? 0 : count;
    cursor = 0;
    current.tally[0] = 0;
    return false;
  };

  const advance = (evaluations: number): "found" | "more" | "over" => {
    if (run === null) throw new RangeError("rulerBeam: advance before begin");
    const until = run.tally[1]! + evaluations;
    const start = run.tally[1]!;
    let state: "found" | "more" | "over" = "over";
    while (states > 0) {
      while (cursor < states && run.tally[1]! < until) scoreChildren(run, from, cursor++);
      if (cursor < states) {
        state = "more";
        break;
      }
      if (nextLevel(run)) {
        state = "found";
        break;
      }
    }
    spent += run.tally[1]! - start;
    return state;
  };

  const plan = (): LaidWay[] => {
    const laid: LaidWay[] = [];
    for (let b = found; b >= 0; b = trail[b * TRAIL_SIZE]!) {
      const [, way, across, along, nx, ny] = trail.subarray(b * TRAIL_SIZE, (b + 1) * TRAIL_SIZE);
      for (let i = 0; i < nx!; i++) {
        for (let j = 0; j < ny!; j++) {
          laid.push({
            way: way!,
            across: across! + i * tables.wayAcross[way!]!,
            along: along! + j * tables.wayAlong[way!]!,
          });
        }
      }
    }
    return laid;
  };
  return { begin, advance, plan, spent: () => spent };
}
