import { normalPoints, pointIndexAtMost } from "./raster.ts";
import type { YieldQuestion } from "./strapProblem.ts";

/** A strap laid down: lower-left corner, and whether it lies crosswise. */
export interface StrapTile {
  readonly x: number;
  readonly y: number;
  readonly crosswise: boolean;
}

/** How a box is filled; boxes are kept with their shorter side first, so a plan may be read either way round. */
type Fill = { readonly count: number; readonly depth: number } & (
  | { readonly kind: "rows"; readonly longAlongFirst: boolean }
  | { readonly kind: "split"; readonly alongFirst: boolean; readonly at: number }
  | {
      readonly kind: "pinwheel";
      readonly u1: number;
      readonly u2: number;
      readonly v1: number;
      readonly v2: number;
    }
);

/** What the recursion found, and how many fills it tried. */
export interface BlockPlan {
  readonly count: number;
  readonly tiles: readonly StrapTile[];
  readonly tries: number;
}

/**
 * Packs a × b straps, both directions, by recursion over boxes on normal points: one-direction rows, every
 * guillotine split, and 5-block pinwheels whose corners lie at multiples of the long side, nested to `nesting`.
 *
 * Units:  those of the question (whole numbers).
 * Cost:   at most about `maxTries` fills; past that only one-direction rows are tried.
 * Source: 5-block heuristic: Bischoff & Dowsland 1982, J. Oper. Res. Soc. 33; recursive form: Morabito & Morales
 *         1998, J. Oper. Res. Soc. 49, and Birgin, Lobato & Morabito 2010, J. Oper. Res. Soc. 61.
 */
export function packByBlocks(
  question: YieldQuestion,
  target: number,
  nesting: number,
  maxTries: number,
): BlockPlan {
  const recursion = new BlockRecursion(question, maxTries, nesting);
  return recursion.run(target, nesting);
}

class BlockRecursion {
  private readonly long: number;
  private readonly short: number;
  private readonly points: Float64Array;
  private readonly multiples: Float64Array;
  private readonly memo: Map<number, Fill>[] = [];
  private readonly question: YieldQuestion;
  private readonly maxTries: number;
  /** The nesting at which splits at every normal point are tried; below it only those at multiples of the long side. */
  private readonly finest: number;
  private tries = 0;

  constructor(question: YieldQuestion, maxTries: number, finest: number) {
    this.question = question;
    this.maxTries = maxTries;
    this.finest = finest;
    this.long = Math.max(question.a, question.b);
    this.short = Math.min(question.a, question.b);
    const longest = Math.max(question.length, question.width);
    this.points = normalPoints(question.a, question.b, longest);
    this.multiples = normalPoints(this.long, longest + 1, longest);
  }

  run(target: number, nesting: number): BlockPlan {
    const i = pointIndexAtMost(this.points, this.question.length);
    const j = pointIndexAtMost(this.points, this.question.width);
    let reached = -1;
    let depth = 0;
    for (; depth <= nesting; depth++) {
      this.memo.push(new Map());
      reached = this.solve(i, j, depth);
      if (reached >= target || this.tries > this.maxTries) break;
    }
    const tiles: StrapTile[] = [];
    this.write(i, j, Math.min(depth, nesting), 0, 0, false, tiles);
    return { count: reached, tiles, tries: this.tries };
  }

  /** Most straps found in the box points[i] × points[j]. */
  private solve(i: number, j: number, depth: number): number {
    return i <= j ? this.fill(i, j, depth).count : this.fill(j, i, depth).count;
  }

  /** Fills the box with first side points[i] ≤ second side points[j]. */
  private fill(i: number, j: number, depth: number): Fill {
    const memo = this.memo[depth]!;
    this.tries++;
    const key = i * this.points.length + j;
    const known = memo.get(key);
    if (known !== undefined) return known;
    const first = this.points[i]!;
    const second = this.points[j]!;
    const most = Math.floor((first / this.long) * (second / this.short) + 1e-9);
    let best = depth > 0 ? (this.memo[depth - 1]!.get(key) ?? this.rows(first, second)) : this.rows(first, second);
    if (best.count < most && this.tries <= this.maxTries) {
      best = this.splits(i, j, depth, best, most);
      if (depth > 0 && best.count < most) best = this.pinwheels(first, second, depth, best, most);
    }
    memo.set(key, best);
    return best;
  }

  private rows(first: number, second: number): Fill {
    const longFirst = Math.floor(first / this.long) * Math.floor(second / this.short);
    const shortFirst = Math.floor(first / this.short) * Math.floor(second / this.long);
    return {
      kind: "rows",
      longAlongFirst: longFirst > shortFirst,
      count: Math.max(longFirst, shortFirst),
      depth: 0,
    };
  }

  private at(value: number): number {
    return pointIndexAtMost(this.points, value);
  }

  private splits(i: number, j: number, depth: number, start: Fill, most: number): Fill {
    let best = start;
    const { points } = this;
    const fine = depth === this.finest;
    const cuts = fine ? points : this.multiples;
    for (const alongFirst of [true, false]) {
      const side = alongFirst ? points[i]! : points[j]!;
      const limit = fine ? side / 2 : side - 1;
      for (let c = 1; c < cuts.length && cuts[c]! <= limit; c++) {
        const p = this.at(cuts[c]!);
        const rest = this.at(side - cuts[c]!);
        const count = alongFirst
          ? this.solve(p, j, depth) + this.solve(rest, j, depth)
          : this.solve(i, p, depth) + this.solve(i, rest, depth);
        if (count > best.count) best = { kind: "split", alongFirst, at: points[p]!, count, depth };
        if (best.count >= most || this.tries > this.maxTries) return best;
      }
    }
    return best;
  }

  /**
   * Five blocks around a pinwheel. Its inner lines lie at a multiple of the long side from either edge: when an
   * outer block lies one way its extent is such a multiple, and the next block round is turned.
   */
  private pinwheels(first: number, second: number, depth: number, start: Fill, most: number): Fill {
    let best = start;
    const us = this.linePairs(first);
    const vs = this.linePairs(second);
    for (const [u1, u2] of us) {
      for (const [v1, v2] of vs) {
        const count = this.pinwheelCount(first, second, u1, u2, v1, v2, depth - 1, best.count);
        if (count > best.count) best = { kind: "pinwheel", u1, u2, v1, v2, count, depth };
        if (best.count >= most || this.tries > this.maxTries) return best;
      }
    }
    return best;
  }

  private linePairs(side: number): (readonly [number, number])[] {
    const pairs: (readonly [number, number])[] = [];
    for (let p = this.long; p < side; p += this.long) {
      for (let q = this.long; q < side; q += this.long) pairs.push([Math.min(p, side - q), Math.max(p, side - q)]);
    }
    return pairs;
  }

  /** Straps in a pinwheel, or −1 as soon as it cannot beat `floor`. */
  private pinwheelCount(
    first: number,
    second: number,
    u1: number,
    u2: number,
    v1: number,
    v2: number,
    depth: number,
    floor: number,
  ): number {
    this.tries++;
    const blocks = pinwheelBlocks(first, second, u1, u2, v1, v2);
    const tile = this.long * this.short;
    let hope = 0;
    for (const block of blocks) hope += Math.floor((block.u * block.v) / tile + 1e-9);
    for (const block of blocks) {
      if (hope <= floor) return -1;
      hope += this.solve(this.at(block.u), this.at(block.v), depth) - Math.floor((block.u * block.v) / tile + 1e-9);
    }
    return hope;
  }

  /** Writes the tiles of a box; `swapped` when its first side lies across the roll. */
  private write(
    i: number,
    j: number,
    within: number,
    x: number,
    y: number,
    swapped: boolean,
    out: StrapTile[],
  ): void {
    if (i > j) {
      this.write(j, i, within, x, y, !swapped, out);
      return;
    }
    const first = this.points[i]!;
    const second = this.points[j]!;
    const fill = this.fill(i, j, within);
    const depth = fill.depth;
    if (fill.kind === "rows") {
      this.writeRows(first, second, fill.longAlongFirst, x, y, swapped, out);
      return;
    }
    if (fill.kind === "split") {
      const p = this.at(fill.at);
      const rest = this.at((fill.alongFirst ? first : second) - fill.at);
      const alongX = fill.alongFirst !== swapped;
      const [nextX, nextY] = alongX ? [x + fill.at, y] : [x, y + fill.at];
      this.write(fill.alongFirst ? p : i, fill.alongFirst ? j : p, depth, x, y, swapped, out);
      this.write(fill.alongFirst ? rest : i, fill.alongFirst ? j : rest, depth, nextX, nextY, swapped, out);
      return;
    }
    for (const block of pinwheelBlocks(first, second, fill.u1, fill.u2, fill.v1, fill.v2)) {
      const [dx, dy] = swapped ? [block.v0, block.u0] : [block.u0, block.v0];
      this.write(this.at(block.u), this.at(block.v), depth - 1, x + dx, y + dy, swapped, out);
    }
  }

  private writeRows(
    first: number,
    second: number,
    longAlongFirst: boolean,
    x: number,
    y: number,
    swapped: boolean,
    out: StrapTile[],
  ): void {
    const u = longAlongFirst ? this.long : this.short;
    const v = longAlongFirst ? this.short : this.long;
    const lengthAlongX = (longAlongFirst !== swapped) === this.question.a >= this.question.b;
    for (let m = 0; (m + 1) * u <= first; m++) {
      for (let n = 0; (n + 1) * v <= second; n++) {
        const [dx, dy] = swapped ? [n * v, m * u] : [m * u, n * v];
        out.push({ x: x + dx, y: y + dy, crosswise: !lengthAlongX });
      }
    }
  }
}

interface Block {
  readonly u0: number;
  readonly v0: number;
  readonly u: number;
  readonly v: number;
}

function pinwheelBlocks(
  first: number,
  second: number,
  u1: number,
  u2: number,
  v1: number,
  v2: number,
): readonly Block[] {
  return [
    { u0: 0, v0: 0, u: u1, v: v2 },
    { u0: 0, v0: v2, u: u2, v: second - v2 },
    { u0: u1, v0: 0, u: first - u1, v: v1 },
    { u0: u2, v0: v1, u: first - u2, v: second - v1 },
    { u0: u1, v0: v1, u: u2 - u1, v: v2 - v1 },
  ];
}
