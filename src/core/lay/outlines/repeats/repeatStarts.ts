import { densePairs, type Member, type NoFit, type RepeatVariant } from "./clusters.ts";
import { clearShift, columnMembers, type Pattern, patternsOf, single } from "./columns.ts";

/** Copies of one shape from which repeats are worth looking for. */
const FEWEST_COPIES = 4;
/** Shapes that are looked at: those that cover most of the cloth. */
const MOST_SHAPES = 6;
/** Shapes whose mixed pairs are looked at. */
const MOST_MIXED = 3;
const PAIRS_KEPT = 5;
const PATTERNS_KEPT = 3;

/** What the repeat search reads of a job, on the grid. The roll is 0 … width across and open along x. */
export interface RepeatJob {
  readonly width: number;
  readonly variants: readonly RepeatVariant[];
  /** Variants of each shape. */
  readonly variantsOf: readonly (readonly number[])[];
  /** Copies of each shape to lay. */
  readonly counts: readonly number[];
}

/** Pieces laid in repeats; what is left over is for the caller to fill in. */
export interface RepeatStart {
  readonly placed: readonly Member[];
  /** Copies of each shape not placed. */
  readonly left: readonly number[];
  /** Length covered, grid units. */
  readonly length: number;
}

/** Pieces of each shape in one turn of a pattern (both columns). */
function shapesIn(pattern: Pattern, job: RepeatJob): Map<number, number> {
  const need = new Map<number, number>();
  for (const column of [pattern.first, pattern.second])
    for (const member of column.cluster.members) {
      const shape = job.variants[member.variant]!.shape;
      need.set(shape, (need.get(shape) ?? 0) + column.copies);
    }
  return need;
}

/** Columns of `pattern`, first and second in turn, each pushed against what lies before it, while copies last. */
function layColumns(pattern: Pattern, job: RepeatJob, noFit: NoFit, placed: Member[], left: number[]): void {
  const { first, second, rise } = pattern;
  const base = first.cluster.minY - second.cluster.minY;
  const lift = Math.max(0, base - rise);
  const rows = [
    { members: columnMembers(first), up: lift },
    { members: columnMembers(second), up: lift + rise - base },
  ];
  let behind: Member[] = placed.slice(-120);
  for (let turn = 0; ; turn = 1 - turn) {
    const row = rows[turn]!;
    const need = new Map<number, number>();
    for (const { variant } of row.members) {
      const shape = job.variants[variant]!.shape;
      need.set(shape, (need.get(shape) ?? 0) + 1);
    }
    if ([...need].some(([shape, count]) => left[shape]! < count)) return;
    const lifted = row.members.map((m) => ({ ...m, y: m.y + row.up }));
    const shift = clearShift(behind, lifted, noFit);
    const laid = lifted.map((m) => ({ ...m, x: m.x + shift }));
    for (const m of laid) placed.push(m);
    for (const [shape, count] of need) left[shape]! -= count;
    behind = [...behind, ...laid].slice(-3 * Math.max(row.members.length, 40));
  }
}

/** One start: the patterns one after the other. */
function startOf(patterns: readonly Pattern[], job: RepeatJob, noFit: NoFit): RepeatStart {
  const placed: Member[] = [];
  const left = [...job.counts];
  for (const pattern of patterns) layColumns(pattern, job, noFit, placed, left);
  let length = 0;
  for (const { variant, x } of placed) length = Math.max(length, x + job.variants[variant]!.maxX);
  return { placed, left, length };
}

/** Length a start will need once the leftovers are in, taking them at a fair density. */
function promise(start: RepeatStart, job: RepeatJob): number {
  const leftArea = start.left.reduce(
    (sum, count, shape) => sum + count * job.variants[job.variantsOf[shape]![0]!]!.area,
    0,
  );
  return start.length + leftArea / (0.75 * job.width);
}

/**
 * Starts made of repeats: dense pairs and single pieces stacked into columns, columns repeated along the roll,
 * pieces of one shape by themselves or two shapes mixed. Most promising first.
 *
 * Yields now and then so that a host can pause. Cost: some 10⁵ slices for two shapes with four variants each.
 * Source: lattice packings after Mount 1991 (densest packing of a polygon by translation) and Milenkovic 2002
 * (Comput. Geom. 22, 205–222), with the roll's edges as a side condition.
 */
export function* repeatStarts(job: RepeatJob, noFit: NoFit, most: number): Generator<void, RepeatStart[]> {
  const areaOf = (shape: number): number => job.counts[shape]! * job.variants[job.variantsOf[shape]![0]!]!.area;
  const shapes = job.counts
    .map((_, shape) => shape)
    .filter((shape) => job.counts[shape]! >= FEWEST_COPIES)
    .sort((a, b) => areaOf(b) - areaOf(a))
    .slice(0, MOST_SHAPES);
  const own = new Map<number, Pattern[]>();
  for (const shape of shapes) own.set(shape, yield* patternsFor(job, [shape, shape], noFit));
  const alone = shapes.flatMap((shape) => own.get(shape)!.slice(0, 1));
  const starts: RepeatStart[] = [];
  for (const shape of shapes.slice(0, 2))
    for (const pattern of own.get(shape)!)
      starts.push(startOf([pattern, ...alone.filter((p) => !shapesIn(p, job).has(shape))], job, noFit));
  const mixed = shapes.slice(0, MOST_MIXED);
  for (let i = 0; i < mixed.length; i++)
    for (let j = i + 1; j < mixed.length; j++) {
      for (const pattern of yield* patternsFor(job, [mixed[i]!, mixed[j]!], noFit))
        starts.push(startOf([pattern, ...alone], job, noFit));
      yield;
    }
  const complete = starts.filter((start) => start.placed.length > 0);
  return complete.sort((a, b) => promise(a, job) - promise(b, job)).slice(0, most);
}

/** Best patterns of pairs of two shapes (or of one shape, then also of single pieces), densest first. */
function* patternsFor(job: RepeatJob, [a, b]: readonly [number, number], noFit: NoFit): Generator<void, Pattern[]> {
  const found: Pattern[] = [];
  const take = (patterns: readonly Pattern[]): void => {
    for (const p of patterns) if (fits(p, job)) found.push(p);
  };
  if (a === b)
    for (const variant of job.variantsOf[a]!) {
      take(patternsOf(single(variant, job.variants), job.width, job.variants, noFit, PATTERNS_KEPT));
      yield;
    }
  for (const u of job.variantsOf[a]!)
    for (const v of job.variantsOf[b]!) {
      if (a === b && v <= u) continue;
      for (const pair of densePairs(u, v, job.variants, noFit, PAIRS_KEPT)) {
        take(patternsOf(pair, job.width, job.variants, noFit, PATTERNS_KEPT));
        yield;
      }
    }
  return found.sort((p, q) => q.density - p.density).slice(0, PATTERNS_KEPT);
}

/** Whether the job holds at least one column of the pattern. */
function fits(pattern: Pattern, job: RepeatJob): boolean {
  const need = new Map<number, number>();
  for (const { variant } of columnMembers(pattern.first)) {
    const shape = job.variants[variant]!.shape;
    need.set(shape, (need.get(shape) ?? 0) + 1);
  }
  return [...need].every(([shape, count]) => job.counts[shape]! >= count);
}
