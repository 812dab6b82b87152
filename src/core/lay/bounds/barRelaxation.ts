import type { SearchTables } from "../problem/rectangles/searchTables.ts";
import { barSimplex, bestPattern, enterColumn, type KnapsackMemory, knapsackMemory } from "./barSimplex.kernel.ts";

/** Capacities above this are coarsened (extents rounded down, which keeps the bound valid). */
const MOST_CAPACITY = 2048;

/** What came of a relaxation. */
export interface BarSolution {
  /** Whether the trial length stays possible. */
  readonly possible: boolean;
  /** How many pieces lie in each way, not always whole. */
  readonly lying: Float64Array;
  /**
   * Dual prices, complete only after `priced`: of a piece of each way per unit along (a unit of a cross bar), then
   * per unit across (of a lengthwise bar), then of a whole cross bar and of a whole lengthwise bar.
   */
  readonly prices: Float64Array;
}

/** The bar relaxation of one trial length. */
export interface BarRelaxation {
  /**
   * Solves it with at least `least[way]` pieces lying in each way, until the length is decided or, when `priced`,
   * until the prices are best. Yields the work of each pivot.
   */
  solve(least: Float64Array, priced?: boolean): Generator<number, BarSolution, void>;
}

/** Demands are relaxed by this share, which keeps the simplex from cycling; the bound stays valid. */
const RELAXED = 1e-8;
/** How much more than all the room a relaxation must need before a length counts as ruled out. */
const PROOF_MARGIN = 1e-6;

/**
 * Cuts a plan of length `length` into bars: at every place along the roll the pieces met across it form a
 * pattern that fits the width, and at every place across it a pattern along that fits the length. Each piece of
 * way k supplies `along` cross bars and `across` lengthwise bars, the same number of pieces in both. With
 *   cross patterns p:      Σ p_k x_p ≥ along_k  u_k,  Σ x_p ≤ z · length
 *   lengthwise patterns q: Σ q_k y_q ≥ across_k u_k,  Σ y_q ≤ z · width
 *   Σ u_k over the ways of a size ≥ its count
 * a least z above 1 proves that no plan ends at `length`. Columns by bounded knapsacks. After Gilmore & Gomory
 * 1961 (Oper. Res. 9:849–859) for the columns and Belov, Kartak, Rohling & Scheithauer 2009 (Int. Trans. Oper.
 * Res. 16:745–766) for bars; both directions tied by u. `ways` are the ways no longer than `length`.
 */
export function barRelaxation(tables: SearchTables, ways: readonly number[], length: number): BarRelaxation {
  const kinds = ways.length;
  const across = Int32Array.from(ways, (way) => tables.wayAcross[way]!);
  const along = Int32Array.from(ways, (way) => tables.wayAlong[way]!);
  const size = ways.map((way) => tables.waySize[way]!);
  const count = Int32Array.from(size, (s) => tables.sizeCount[s]!);
  // A size with one way left has nothing to choose: its u is its count.
  const choices = [...new Set(size)].filter((s) => size.filter((other) => other === s).length > 1);
  const demandRow = new Map(choices.map((s, i) => [s, 2 * kinds + 2 + i]));
  const rows = 2 * kinds + 2 + choices.length;
  const crossRow = 2 * kinds;
  const alongRow = crossRow + 1;
  const cross = direction(across, tables.width);
  const lengthwise = direction(along, length);
  const pool: Float64Array[] = [];

  const unit = (row: number, value: number): Float64Array => {
    const column = new Float64Array(rows);
    column[row] = value;
    return column;
  };
  const pattern = (counts: Int32Array, first: number, capacityRow: number): Float64Array => {
    const column = unit(capacityRow, -1);
    for (let k = 0; k < kinds; k++) column[first + k] = counts[k]!;
    return column;
  };
  const alone = (k: number, fits: Direction): Int32Array => {
    const counts = new Int32Array(kinds);
    counts[k] = Math.max(1, Math.min(count[k]!, Math.floor(fits.capacity / Math.max(1, fits.extents[k]!))));
    return counts;
  };
  // Fixed columns: z, a surplus per row, u per kind with a choice; then patterns of one kind alone.
  const scale = new Float64Array(rows);
  scale[crossRow] = length;
  scale[alongRow] = tables.width;
  pool.push(scale);
  for (let row = 0; row < rows; row++) pool.push(unit(row, -1));
  const lyingColumn = new Int32Array(kinds).fill(-1);
  for (let k = 0; k < kinds; k++) {
    const row = demandRow.get(size[k]!);
    if (row === undefined) continue;
    const column = unit(row, 1);
    column[k] = -along[k]!;
    column[kinds + k] = -across[k]!;
    lyingColumn[k] = pool.length;
    pool.push(column);
  }
  const aloneAt = pool.length;
  for (let k = 0; k < kinds; k++) pool.push(pattern(alone(k, cross), 0, crossRow));
  for (let k = 0; k < kinds; k++) pool.push(pattern(alone(k, lengthwise), kinds, alongRow));

  function* solve(least: Float64Array, priced = false): Generator<number, BarSolution, void> {
    const right = new Float64Array(rows);
    const price = new Float64Array(rows);
    const lying = new Float64Array(kinds);
    const firstOfSize = new Set<number>();
    const basis = new Int32Array(rows);
    const rest = new Map<number, number>();
    for (const s of choices) rest.set(s, tables.sizeCount[s]!);
    for (let k = 0; k < kinds; k++) {
      const fixed = demandRow.has(size[k]!) ? least[k]! : count[k]!;
      right[k] = along[k]! * fixed;
      right[kinds + k] = across[k]! * fixed;
      if (rest.has(size[k]!)) rest.set(size[k]!, rest.get(size[k]!)! - fixed);
    }
    for (const s of choices) right[demandRow.get(s)!] = rest.get(s)!;
    for (let row = 0; row < rows; row++) right[row]! -= RELAXED * (1 + row / rows) * (1 + right[row]!);
    // First basis: every kind with demand by patterns of itself alone, else its surplus; one u per size; z.
    for (let k = 0; k < kinds; k++) {
      const row = demandRow.get(size[k]!);
      const carries = row !== undefined && !firstOfSize.has(size[k]!) && right[row]! > 0;
      if (carries) {
        firstOfSize.add(size[k]!);
        basis[row] = lyingColumn[k]!;
      }
      basis[k] = carries || right[k]! > 0 ? aloneAt + k : 1 + k;
      basis[kinds + k] = carries || right[kinds + k]! > 0 ? aloneAt + kinds + k : 1 + kinds + k;
    }
    for (const s of choices) if (!firstOfSize.has(s)) basis[demandRow.get(s)!] = 1 + demandRow.get(s)!;
    const simplex = barSimplex(rows);
    // z carries the tighter of the two capacities, the surplus of the other one is basic.
    basis[crossRow] = 0;
    basis[alongRow] = 1 + alongRow;
    if (!loadBasis(simplex, basis, pool, right)) return { possible: true, lying, prices: price };
    if (simplex.values[alongRow]! < 0) {
      basis[crossRow] = 1 + crossRow;
      basis[alongRow] = 0;
      if (!loadBasis(simplex, basis, pool, right)) return { possible: true, lying, prices: price };
    }
    if (simplex.values.some((value) => value < -1e-7)) return { possible: true, lying, prices: price };
    yield rows * rows * 4;
    const counts = new Int32Array(kinds);
    const worth = new Float64Array(kinds);
    for (let pivots = 0; pivots < 60 * rows; pivots++) {
      const z = simplex.basis.indexOf(0);
      if (z < 0 || (!priced && simplex.values[z]! <= 1)) break;
      price.set(simplex.inverse.subarray(z * rows, (z + 1) * rows));
      let entering = cheapest(pool, price);
      let work = rows * rows * 3 + pool.length * rows;
      if (entering < 0) {
        // Nothing known improves: ask the knapsacks. Their values also bound z from below.
        for (let k = 0; k < kinds; k++) worth[k] = price[k]!;
        const crossBest = bestPattern(cross.extents, worth, count, cross.capacity, cross.memory, counts);
        const crossGain = crossBest - price[crossRow]!;
        if (crossGain > 1e-9) {
          entering = pool.length;
          pool.push(pattern(counts, 0, crossRow));
        }
        for (let k = 0; k < kinds; k++) worth[k] = price[kinds + k]!;
        const alongBest = bestPattern(
          lengthwise.extents,
          worth,
          count,
          lengthwise.capacity,
          lengthwise.memory,
          counts,
        );
        const alongGain = alongBest - price[alongRow]!;
        if (alongGain > 1e-9) {
          const column = pattern(counts, kinds, alongRow);
          if (entering < 0 || alongGain * tables.width > crossGain * length) entering = pool.length;
          pool.push(column);
        }
        work += (cross.capacity + lengthwise.capacity) * kinds * 4;
        // Scaled prices are feasible for every pattern: a valid bound on z.
        let worthAll = 0;
        for (let row = 0; row < rows; row++) worthAll += price[row]! * right[row]!;
        const needed =
          Math.max(0, crossBest, price[crossRow]!) * length +
          Math.max(0, alongBest, price[alongRow]!) * tables.width;
        yield work;
        if (worthAll > needed * (1 + PROOF_MARGIN)) return { possible: false, lying, prices: price };
        if (entering < 0) break;
      }
      if (!enterColumn(simplex, pool[entering]!, entering)) break;
      if (pivots % 8 === 7) yield work * 8;
    }
    if (priced) {
      // Even if the simplex stopped early: no pattern may be worth more than its bar.
      const dearest = (fits: Direction, first: number): number =>
        bestPattern(fits.extents, price.slice(first, first + kinds), count, fits.capacity, fits.memory, counts);
      price[crossRow] = Math.max(price[crossRow]!, dearest(cross, 0));
      price[alongRow] = Math.max(price[alongRow]!, dearest(lengthwise, kinds));
    }
    for (let k = 0; k < kinds; k++) {
      const at = lyingColumn[k]! < 0 ? -1 : simplex.basis.indexOf(lyingColumn[k]!);
      lying[k] = (demandRow.has(size[k]!) ? least[k]! : count[k]!) + (at >= 0 ? simplex.values[at]! : 0);
    }
    return { possible: true, lying, prices: price };
  }

  function direction(extents: Int32Array, capacity: number): Direction {
    const grid = Math.max(1, Math.ceil(capacity / MOST_CAPACITY));
    const coarse = Int32Array.from(extents, (extent) => Math.floor(extent / grid));
    const coarseCapacity = Math.floor(capacity / grid);
    return { extents: coarse, capacity: coarseCapacity, memory: knapsackMemory(coarseCapacity, kinds) };
  }
  return { solve };
}

interface Direction {
  readonly extents: Int32Array;
  readonly capacity: number;
  readonly memory: KnapsackMemory;
}

/** Index of the pool column of most negative reduced cost, −1 when none; only z (index 0) has a cost. */
function cheapest(pool: readonly Float64Array[], price: Float64Array): number {
  let best = 1e-9;
  let at = -1;
  for (let index = 1; index < pool.length; index++) {
    const column = pool[index]!;
    let gain = 0;
    for (let row = 0; row < price.length; row++) gain += column[row]! * price[row]!;
    if (gain > best) {
      best = gain;
      at = index;
    }
  }
  return at;
}

/** Inverts the basis by Gauss and Jordan and computes the basic values. False when singular. O(rows³). */
function loadBasis(
  simplex: ReturnType<typeof barSimplex>,
  basis: Int32Array,
  pool: readonly Float64Array[],
  right: Float64Array,
): boolean {
  const { rows, inverse, values } = simplex;
  const matrix = new Float64Array(rows * rows);
  for (let j = 0; j < rows; j++) for (let i = 0; i < rows; i++) matrix[i * rows + j] = pool[basis[j]!]![i]!;
  inverse.fill(0);
  for (let i = 0; i < rows; i++) inverse[i * rows + i] = 1;
  for (let j = 0; j < rows; j++) {
    let pivot = j;
    for (let i = j + 1; i < rows; i++) {
      if (Math.abs(matrix[i * rows + j]!) > Math.abs(matrix[pivot * rows + j]!)) pivot = i;
    }
    const by = matrix[pivot * rows + j]!;
    if (Math.abs(by) < 1e-12) return false;
    for (let c = 0; c < rows; c++) {
      for (const m of [matrix, inverse]) {
        const held = m[j * rows + c]!;
        m[j * rows + c] = m[pivot * rows + c]! / by;
        if (pivot !== j) m[pivot * rows + c] = held;
      }
    }
    for (let i = 0; i < rows; i++) {
      const factor = matrix[i * rows + j]!;
      if (i === j || factor === 0) continue;
      for (let c = 0; c < rows; c++) {
        matrix[i * rows + c]! -= factor * matrix[j * rows + c]!;
        inverse[i * rows + c]! -= factor * inverse[j * rows + c]!;
      }
    }
  }
  for (let i = 0; i < rows; i++) {
    let sum = 0;
    for (let j = 0; j < rows; j++) sum += inverse[i * rows + j]! * right[j]!;
    values[i] = sum;
  }
  simplex.basis.set(basis);
  return true;
}
