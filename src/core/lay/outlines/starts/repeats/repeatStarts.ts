import { type Band, bandOf, bandsOf, fullness, type Stack, stacksOf } from "./bands.ts";
import { type Cluster, densePairs, type Member, type NoFit, type RepeatVariant } from "./clusters.ts";
import { clearShift, columnMembers, type Pattern, patternsOf, single } from "./columns.ts";

/** Copies of one shape from which repeats are worth looking for. */
const FEWEST_COPIES = 4;
/** Shapes that are looked at: those that cover most of the cloth. */
const MOST_SHAPES = 10;
/** Shapes whose mixed pairs are looked at. */
const MOST_MIXED = 3;
const PAIRS_KEPT = 5;
const PATTERNS_KEPT = 3;
const BANDS_KEPT = 14;
const STACKS_TRIED = 24;
/** Columns laid between two pauses. */
const COLUMNS_PER_TURN = 6;
/** Slices spent on all bands: a second or two; few shapes need a fraction of it. */
const MOST_SLICES = 800_000;

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

/** A pattern being laid: its two columns in turn, the lowest point of the band, what the next column must clear. */
interface Row {
  readonly columns: readonly (readonly Member[])[];
  turn: number;
  behind: Member[];
  end: number;
  isOver: boolean;
}

function rowOf({ first, second, rise }: Pattern, y: number, behind: Member[]): Row {
  const base = first.cluster.minY - second.cluster.minY;
  const lift = Math.max(0, base - rise);
  const raised = (members: readonly Member[], up: number): Member[] => members.map((m) => ({ ...m, y: m.y + up }));
  const columns = [raised(columnMembers(first), y + lift), raised(columnMembers(second), y + lift + rise - base)];
  return { columns, turn: 0, behind, end: 0, isOver: false };
}

/** Pushes the row's next column against what lies before it; ends the row when copies have run out. */
function layColumn(row: Row, job: RepeatJob, noFit: NoFit, placed: Member[], left: number[]): void {
  const members = row.columns[row.turn]!;
  const need = new Map<number, number>();
  for (const { variant } of members) {
    const shape = job.variants[variant]!.shape;
    need.set(shape, (need.get(shape) ?? 0) + 1);
  }
  if ([...need].some(([shape, count]) => left[shape]! < count)) {
    row.isOver = true;
    return;
  }
  const shift = clearShift(row.behind, members, noFit);
  const laid = members.map((m) => ({ ...m, x: m.x + shift }));
  for (const m of laid) {
    placed.push(m);
    row.end = Math.max(row.end, m.x + job.variants[m.variant]!.maxX);
  }
  for (const [shape, count] of need) left[shape]! -= count;
  row.behind = [...row.behind, ...laid].slice(-3 * Math.max(members.length, 40));
  row.turn = 1 - row.turn;
}

/**
 * Lays a stack of bands side by side, the one that is furthest behind first, until one of them runs out of
 * copies: what is left then deserves a stack of its own.
 */
function* layStack(
  stack: Stack,
  job: RepeatJob,
  noFit: NoFit,
  placed: Member[],
  left: number[],
): Generator<void, void> {
  const before = placed.slice(-120);
  let laid = 0;
  let y = 0;
  const rows = stack.map(({ pattern, height }) => {
    const row = rowOf(pattern, y, before);
    y += height;
    return row;
  });
  for (;;) {
    let next = rows[0]!;
    for (const row of rows) if (row.end < next.end) next = row;
    layColumn(next, job, noFit, placed, left);
    if (next.isOver) return;
    if (++laid % COLUMNS_PER_TURN === 0) yield;
  }
}

/** One start: the stack, then the best stacks for what is left, while they hold anything. */
function* startOf(
  first: Stack,
  bands: readonly Band[],
  job: RepeatJob,
  noFit: NoFit,
): Generator<void, RepeatStart> {
  const placed: Member[] = [];
  const left = [...job.counts];
  yield* layStack(first, job, noFit, placed, left);
  for (let before = -1; before < placed.length; ) {
    before = placed.length;
    const [next] = yield* stacksOf(
      bands.filter((band) => fits(band.pattern, job, left)),
      job.width,
      areasOf(job, left),
      1,
    );
    if (next !== undefined) yield* layStack(next, job, noFit, placed, left);
  }
  let length = 0;
  for (const { variant, x } of placed) length = Math.max(length, x + job.variants[variant]!.maxX);
  return { placed, left, length };
}

/** Length a start will need once the remaining copies are in, taking them at a fair density. */
function promise(start: RepeatStart, job: RepeatJob): number {
  const leftArea = areasOf(job, start.left).reduce((sum, area) => sum + area, 0);
  return start.length + leftArea / (0.75 * job.width);
}

/**
 * Starts made of repeats: dense pairs and single pieces stacked into columns, columns repeated along the roll
 * over its whole width or as bands side by side, of one shape by itself or two mixed. Most promising first.
 *
 * Yields now and then so that a host can pause. Cost: some 10⁵ slices for two shapes with four variants each, at most
 * `MOST_SLICES` and a little for any number.
 * Source: lattice packings after Mount 1991 (densest packing of a polygon by translation) and Milenkovic 2002
 * (Comput. Geom. 22, 205–222), both from memory, with the roll's edges as a side condition.
 */
export function* repeatStarts(job: RepeatJob, noFit: NoFit, most: number): Generator<void, RepeatStart[]> {
  const areas = areasOf(job, job.counts);
  const shapes = job.counts
    .map((_, shape) => shape)
    .filter((shape) => job.counts[shape]! >= FEWEST_COPIES)
    .sort((a, b) => areas[b]! - areas[a]!)
    .slice(0, MOST_SHAPES);
  const mixed = shapes.slice(0, MOST_MIXED);
  const makeUps = [
    ...shapes.map((shape) => [shape, shape] as const),
    ...mixed.flatMap((a, i) => mixed.slice(i + 1).map((b) => [a, b] as const)),
  ];
  let slices = 0;
  const counted: NoFit = (a, b) => {
    slices++;
    return noFit(a, b);
  };
  const found: Band[] = [];
  for (const [k, makeUp] of makeUps.entries()) {
    // Each make-up may use its share of what is left, so that none starves the ones after it.
    const limit = slices + (MOST_SLICES - slices) / (makeUps.length - k);
    found.push(...(yield* bandsFor(job, makeUp, counted, () => slices > limit)));
  }
  const bands = found.filter((band) => fits(band.pattern, job, job.counts));
  const full = bands.filter((band) => band.height === job.width).map((band) => [band]);
  const stacks = [...full, ...(yield* stacksOf(bands, job.width, areas, STACKS_TRIED))];
  // Starts of equal length are mostly the same one found twice.
  const starts = new Map<number, RepeatStart>();
  for (const stack of stacks) {
    const start = yield* startOf(stack, bands, job, noFit);
    starts.set(start.length, start);
    yield;
  }
  return [...starts.values()].sort((a, b) => promise(a, job) - promise(b, job)).slice(0, most);
}

/**
 * Bands of pairs of two shapes (or of one shape, then also of single pieces), fullest first, full-width ones too;
 * no more pairs are looked at once `isSpent`.
 */
function* bandsFor(
  job: RepeatJob,
  [a, b]: readonly [number, number],
  noFit: NoFit,
  isSpent: () => boolean,
): Generator<void, Band[]> {
  const { width, variants, counts } = job;
  const patterns: Pattern[] = [];
  const bands: Band[] = [];
  function* look(cluster: Cluster, clusters: number): Generator<void, void> {
    patterns.push(...(yield* patternsOf(cluster, width, variants, clusters, noFit, PATTERNS_KEPT)));
    bands.push(...(yield* bandsOf(cluster, width, variants, noFit)));
  }
  if (a === b)
    for (const variant of job.variantsOf[a]!) {
      yield* look(single(variant, variants), counts[a]!);
      yield;
    }
  const pairs = a === b ? counts[a]! / 2 : Math.min(counts[a]!, counts[b]!);
  for (const u of job.variantsOf[a]!)
    for (const v of job.variantsOf[b]!) {
      if ((a === b && v <= u) || isSpent()) continue;
      const dense = densePairs(u, v, variants, noFit, PAIRS_KEPT);
      yield;
      for (const pair of dense) {
        if (isSpent()) break;
        yield* look(pair, pairs);
        yield;
      }
    }
  patterns.sort((p, q) => q.density - p.density);
  bands.sort((p, q) => fullness(q) - fullness(p));
  const full = patterns.slice(0, PATTERNS_KEPT).map((pattern) => bandOf(pattern, width, variants));
  return [...full, ...bands.slice(0, BANDS_KEPT)];
}

/** Area of each shape in so many copies. */
function areasOf(job: RepeatJob, copies: readonly number[]): number[] {
  return copies.map((count, shape) => count * job.variants[job.variantsOf[shape]![0]!]!.area);
}

/** Whether `left` copies hold at least one column of the pattern. */
function fits(pattern: Pattern, job: RepeatJob, left: readonly number[]): boolean {
  const need = new Map<number, number>();
  for (const { variant } of columnMembers(pattern.first)) {
    const shape = job.variants[variant]!.shape;
    need.set(shape, (need.get(shape) ?? 0) + 1);
  }
  return [...need].every(([shape, count]) => left[shape]! >= count);
}
