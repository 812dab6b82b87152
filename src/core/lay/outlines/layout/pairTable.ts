const FIRST_ROOM = 8;

/**
 * How much each pair of copies (or copy and obstacle) overlaps, and the weights that guide the search. Only pairs that
 * overlap or have a weight are kept, in a row for each copy, sorted by column: columns are copies, then obstacles. So
 * memory and time grow with the copies, not with their square. A pair of copies stands in both rows.
 */
export class PairTable {
  private readonly items: number;
  private readonly used: Int32Array;
  private readonly column: Int32Array[];
  private readonly overlap: Float32Array[];
  private readonly weight: Float32Array[];
  /** Weights of the copy laid open, by column; 1 elsewhere. */
  private readonly open: Float32Array;

  constructor(items: number, columns: number) {
    this.items = items;
    this.used = new Int32Array(items);
    // Rows get room when first used: arrays for thousands of copies would take a turn by themselves.
    this.column = new Array<Int32Array>(items).fill(new Int32Array(0));
    this.overlap = new Array<Float32Array>(items).fill(new Float32Array(0));
    this.weight = new Array<Float32Array>(items).fill(new Float32Array(0));
    this.open = new Float32Array(columns).fill(1);
  }

  /** Lays open the weights of a copy, by column, for many questions; `close` when done. */
  openWeights(item: number): Float32Array {
    const { used, column, weight, open } = this;
    for (let k = 0; k < used[item]!; k++) open[column[item]![k]!] = weight[item]![k]!;
    return open;
  }

  closeWeights(item: number): void {
    for (let k = 0; k < this.used[item]!; k++) this.open[this.column[item]![k]!] = 1;
  }

  /** Sets the overlap of a copy and a column. */
  setOverlap(item: number, column: number, overlap: number): void {
    this.put(item, column, overlap);
    if (column < this.items) this.put(column, item, overlap);
  }

  private put(item: number, column: number, overlap: number): void {
    let columns = this.column[item]!;
    const count = this.used[item]!;
    let at = count;
    while (at > 0 && columns[at - 1]! >= column) at--;
    if (at === count || columns[at] !== column) {
      if (count === columns.length) this.grow(item);
      columns = this.column[item]!;
      columns.copyWithin(at + 1, at, count);
      this.overlap[item]!.copyWithin(at + 1, at, count);
      this.weight[item]!.copyWithin(at + 1, at, count);
      columns[at] = column;
      this.weight[item]![at] = 1;
      this.used[item] = count + 1;
    }
    this.overlap[item]![at] = overlap;
  }

  private grow(item: number): void {
    const room = Math.max(FIRST_ROOM, 2 * this.column[item]!.length);
    const columns = new Int32Array(room);
    columns.set(this.column[item]!);
    this.column[item] = columns;
    for (const values of [this.overlap, this.weight]) {
      const bigger = new Float32Array(room);
      bigger.set(values[item]!);
      values[item] = bigger;
    }
  }

  /** No overlap of this copy any more; weights stay. */
  clearOverlaps(item: number): void {
    const columns = this.column[item]!;
    const overlaps = this.overlap[item]!;
    for (let k = 0; k < this.used[item]!; k++) {
      if (overlaps[k] === 0) continue;
      overlaps[k] = 0;
      if (columns[k]! < this.items) this.put(columns[k]!, item, 0);
    }
  }

  overlapsAny(item: number): boolean {
    const overlaps = this.overlap[item]!;
    for (let k = 0; k < this.used[item]!; k++) if (overlaps[k]! > 0) return true;
    return false;
  }

  /** Sum of a copy's overlaps, each times its weight. */
  weightedSum(item: number): number {
    const overlaps = this.overlap[item]!;
    const weights = this.weight[item]!;
    let sum = 0;
    for (let k = 0; k < this.used[item]!; k++) sum += overlaps[k]! * weights[k]!;
    return sum;
  }

  /** Sum of overlaps over all pairs. */
  total(): number {
    let sum = 0;
    for (let i = 0; i < this.items; i++) {
      const columns = this.column[i]!;
      const overlaps = this.overlap[i]!;
      for (let k = 0; k < this.used[i]!; k++) if (columns[k]! < i || columns[k]! >= this.items) sum += overlaps[k]!;
    }
    return sum;
  }

  /** Weighs every pair by 1 again. */
  resetWeights(): void {
    for (let i = 0; i < this.items; i++) this.weight[i]!.fill(1);
  }

  /**
   * Weights of pairs that overlap grow by `least` to `most` times, by overlap, those of others shrink by `decay` back
   * to 1. Pairs with neither overlap nor weight are forgotten.
   */
  growWeights(least: number, most: number, decay: number): void {
    let deepest = 0;
    for (let i = 0; i < this.items; i++) {
      const overlaps = this.overlap[i]!;
      for (let k = 0; k < this.used[i]!; k++) if (overlaps[k]! > deepest) deepest = overlaps[k]!;
    }
    if (deepest === 0) return;
    for (let i = 0; i < this.items; i++) {
      const columns = this.column[i]!;
      const overlaps = this.overlap[i]!;
      const weights = this.weight[i]!;
      let kept = 0;
      for (let k = 0; k < this.used[i]!; k++) {
        const overlap = overlaps[k]!;
        const before = weights[k]!;
        if (overlap === 0 && before === 1) continue;
        columns[kept] = columns[k]!;
        overlaps[kept] = overlap;
        weights[kept++] =
          overlap > 0 ? before * (least + ((most - least) * overlap) / deepest) : Math.max(1, before * decay);
      }
      this.used[i] = kept;
    }
  }
}
