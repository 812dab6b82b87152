import type { Pause } from "../../../search/breath.ts";
import { copySpots, emptySpots, type Spots, type WorkLayout } from "../../layout/workLayout.ts";
import { bottomLeft, byFallingArea } from "../bottomLeft.ts";
import { repeatJobOf } from "./repeatJob.ts";
import { type RepeatStart, repeatStarts } from "./repeatStarts.ts";

/** Starts that are completed and compared. */
const STARTS_TRIED = 5;
/** Repeats are looked for when copies of shapes that come often make up at least this share of all copies. */
const LEAST_SHARE = 0.5;
const OFTEN = 12;
/** … and when they are so few that their pairings can be gone through in a second or two. */
const MOST_KINDS = 10;

/** Whether the job is of the kind that repeats help: an open roll without flaws, mostly many copies of few shapes. */
export function hasRepeats(state: WorkLayout): boolean {
  const { job } = state;
  if (job.window.maxX !== Infinity || job.obstacles.length > 0) return false;
  const counts = job.shapes.map(() => 0);
  for (const item of job.items) counts[item.shape]!++;
  const often = counts.filter((count) => count >= OFTEN);
  if (often.length > MOST_KINDS) return false;
  return often.reduce((sum, count) => sum + count, 0) >= LEAST_SHARE * job.items.length;
}

/** Puts the start's pieces down, copies of a shape in order; everything else is not laid. */
function putDown(state: WorkLayout, start: RepeatStart): number[] {
  const { job, spots } = state;
  const free = job.shapes.map((): number[] => []);
  for (const item of byFallingArea(state).reverse()) free[job.items[item]!.shape]!.push(item);
  spots.variant.fill(-1);
  const originY = Math.ceil(job.window.minY);
  const originX = Math.ceil(job.window.minX);
  for (const { variant, x, y } of start.placed) {
    const item = free[job.variants[variant]!.shape]!.pop()!;
    spots.variant[item] = variant;
    spots.x[item] = x + originX;
    spots.y[item] = y + originY;
  }
  const rest = new Set(free.flat());
  return byFallingArea(state).filter((item) => rest.has(item));
}

/** Right end of what is laid; Infinity when a copy is missing. */
function endOf(state: WorkLayout, spots: Spots): number {
  let end = state.job.window.minX;
  for (let i = 0; i < state.count; i++) {
    const variant = spots.variant[i]!;
    if (variant < 0) return Infinity;
    end = Math.max(end, spots.x[i]! + state.job.variants[variant]!.maxX);
  }
  return end;
}

/**
 * Tries starts made of repeats and leaves the shortest complete layout in the state: one of them, filled up
 * bottom-left, or the one the state came with. Yields often. Slices count as evaluations; no new start is begun past `limit`.
 */
export function* layRepeats(state: WorkLayout, limit: number): Generator<Pause, void> {
  const { job, noFit } = repeatJobOf(state.job);
  const best = emptySpots(state.count);
  copySpots(state.spots, best);
  let bestEnd = endOf(state, best);
  const search = repeatStarts(
    job,
    (a, b) => {
      state.evaluations++;
      return noFit(a, b);
    },
    STARTS_TRIED,
  );
  let step = search.next();
  while (!step.done) {
    if (state.evaluations > limit) return;
    yield;
    step = search.next();
  }
  for (const start of step.value) {
    if (state.evaluations > limit) break;
    yield* bottomLeft(state, putDown(state, start));
    const end = endOf(state, state.spots);
    state.spots.maxX = end;
    if (end >= bestEnd) continue;
    bestEnd = end;
    copySpots(state.spots, best);
  }
  copySpots(best, state.spots);
}
