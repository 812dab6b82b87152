import { wrapped } from "../../problem/lattice.ts";
import type { FreeAxis } from "../../search/phases/phaseChoices.ts";
import type { Hold, MatchedJob, MatchedWay } from "./matchedJob.ts";

/** Phases that differ by less are one, mm. */
const SAME = 1e-6;
/** Sums of boxes in a row looked at, and phases kept of one group. */
const MOST_SUMS = 4_000;
const MOST_VALUES = 96;

type Axis = FreeAxis["axis"];

/** A box in one of its ways, held on an axis or not. */
interface Member {
  readonly kind: number;
  readonly way: MatchedWay;
  readonly hold: Hold;
  readonly size: number;
}

/**
 * Of free groups, the phases that can matter for few boxes: as a phase is moved, the shortest laying gets shorter or longer
 * evenly until a held box touches what cannot give way, so one of the shortest has a phase at which a row of boxes fills
 * the way from a side of the cloth to a held box, from a box held by another phase to it, or, of boxes that read the
 * pattern both ways, from one of the group to another or both to the same end. Between two groups that are both free, rows of the one's phases that matter
 * by themselves are looked at, not of those that a third gives. Null where there are too many of them.
 */
export function criticalAxes(job: MatchedJob, axes: readonly FreeAxis[]): readonly FreeAxis[] | null {
  const first: FreeAxis[] = [];
  for (const free of axes) {
    const values = valuesOf(job, free, sidesOf(job, free.axis));
    if (values === null) return null;
    first.push({ ...free, values });
  }
  const all: FreeAxis[] = [];
  for (const free of first) {
    // Boxes of other groups may stand between: at each phase of theirs that matters by itself.
    const others = first.filter(({ axis, group }) => axis === free.axis && group !== free.group);
    const ends = others.flatMap(({ group, values }) =>
      membersOf(job, group, free.axis).flatMap(({ hold, size }) =>
        values.map((value) => hold.base + hold.sign * value + size),
      ),
    );
    const more = valuesOf(job, free, { low: ends, high: [] });
    if (more === null) return null;
    const values = distinct([...free.values, ...more], periodOf(job, free.axis));
    if (values.length > MOST_VALUES) return null;
    all.push({ ...free, values });
  }
  return all;
}

function periodOf({ job }: MatchedJob, axis: Axis): number {
  return job.pattern![axis]!;
}

/** Where rows of boxes can begin whatever the free phases: at a side, or after a box whose phase is fixed. */
function sidesOf(job: MatchedJob, axis: Axis): { low: readonly number[]; high: readonly number[] } {
  const fixed = job.kinds.flatMap(({ ways }) =>
    ways.flatMap((way) => {
      const hold = holdOf(way, axis);
      const phase = hold === null ? null : (job.job.phases?.[way.group!]?.[axis] ?? null);
      return hold === null || phase === null
        ? []
        : [{ at: hold.base + hold.sign * phase, size: sizeOf(way, axis) }];
    }),
  );
  const [low, high] = axis === "along" ? [job.fromX, null] : [job.fromY, job.toY];
  return {
    low: [low, ...fixed.map(({ at, size }) => at + size)],
    high: [...(high === null ? [] : [high]), ...fixed.map(({ at }) => at)],
  };
}

function valuesOf(
  job: MatchedJob,
  { group, axis }: FreeAxis,
  { low, high }: { readonly low: readonly number[]; readonly high: readonly number[] },
): number[] | null {
  const period = periodOf(job, axis);
  const sums = rowSums(job, axis);
  if (sums === null) return null;
  const members = membersOf(job, group, axis);
  const values: number[] = [];
  for (const { hold, size } of members)
    for (const sum of sums) {
      for (const side of low) values.push(hold.sign * (side + sum - hold.base));
      for (const side of high) values.push(hold.sign * (side - sum - size - hold.base));
    }
  for (const a of members)
    for (const b of members) {
      if (a.hold.sign !== 1 || b.hold.sign !== -1) continue;
      // Read both ways, the two move towards each other: they touch, or end alike, at two phases of a repeat.
      const base = b.hold.base - a.hold.base;
      for (const sum of sums)
        for (const apart of [b.size + sum, -a.size - sum, b.size - a.size + sum, b.size - a.size - sum])
          for (const turn of [0, period]) values.push((base + apart + turn) / 2);
    }
  // In dropped rows all is moved by half a repeat.
  const isDropped = axis === "along" && members.some(({ way }) => way.halfDrop);
  return distinct(isDropped ? values.flatMap((value) => [value, value + period / 2]) : values, period);
}

function membersOf({ kinds }: MatchedJob, group: string, axis: Axis): Member[] {
  return kinds.flatMap(({ ways }, kind) =>
    ways.flatMap((way): Member[] => {
      const hold = way.group === group ? holdOf(way, axis) : null;
      return hold === null ? [] : [{ kind, way, hold, size: sizeOf(way, axis) }];
    }),
  );
}

/** Lengths of rows of boxes that are not held on an axis, 0 among them; null where there are too many. */
function rowSums({ kinds }: MatchedJob, axis: Axis): number[] | null {
  let sums = [0];
  for (const { ways, copies } of kinds) {
    const sizes = [...new Set(ways.filter((way) => holdOf(way, axis) === null).map((way) => sizeOf(way, axis)))];
    for (let copy = 0; copy < copies.length && sizes.length > 0; copy++) {
      sums = [...new Set([...sums, ...sizes.flatMap((size) => sums.map((sum) => sum + size))].map(rounded))];
      if (sums.length > MOST_SUMS) return null;
    }
  }
  return sums;
}

const rounded = (value: number): number => Math.round(value / SAME) * SAME;

function distinct(values: readonly number[], period: number): number[] {
  const sorted = values.map((value) => wrapped(value, period)).sort((a, b) => a - b);
  return sorted.filter((value, i) => i === 0 || value - sorted[i - 1]! > SAME);
}

function holdOf(way: MatchedWay, axis: Axis): Hold | null {
  return axis === "along" ? way.holdX : way.holdY;
}

function sizeOf(way: MatchedWay, axis: Axis): number {
  return axis === "along" ? way.along : way.across;
}
