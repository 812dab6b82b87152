import { ANY, CLOTH, COLUMN, SEGMENT } from "../../src/core/lay/boxes/ruler/beam/beamState.ts";
import type { NarrowRule } from "../../src/core/lay/boxes/ruler/splits/splitDecode.kernel.ts";
import type { SearchTables } from "../../src/core/lay/problem/rectangles/searchTables.ts";

export interface Space {
  readonly w: number;
  readonly h: number;
  readonly x: number;
  readonly y: number;
  readonly level: number;
}

/** A partial plan, plainly. The last space is the next to fill. */
export interface State {
  readonly left: readonly number[];
  readonly spaces: readonly Space[];
  readonly area: number;
  readonly placed: number;
  readonly waste: number;
}

export interface Child {
  /** −1 gives the space up. */
  readonly way: number;
  readonly nx: number;
  readonly ny: number;
  readonly split: number;
  readonly score: number;
}

export const GUIDE = { calm: 0.03, loose: 1.2, chance: 0, longRips: true };

/** The slow twin: what a beam's kernel may do with a state, in plain objects. */
export class SlowBeam {
  readonly tables: SearchTables;
  readonly stages: number;
  readonly height: number;
  readonly sums: { readonly across: readonly number[]; readonly along: readonly number[] };

  readonly strips: NarrowRule;

  constructor(tables: SearchTables, stages: number, height: number, strips: NarrowRule) {
    this.strips = strips;
    this.tables = tables;
    this.stages = stages;
    this.height = height;
    this.sums = { across: this.allSums(tables.wayAcross), along: this.allSums(tables.wayAlong) };
  }

  get budget(): number {
    return this.tables.width * this.height - this.tables.area;
  }

  /** Every sum of extents, each way as often as its size has copies. */
  private allSums(extents: Int32Array): number[] {
    let sums = new Set([0]);
    for (let way = 0; way < this.tables.ways; way++)
      for (let copy = 0; copy < this.tables.sizeCount[this.tables.waySize[way]!]!; copy++)
        sums = new Set([...sums, ...[...sums].map((sum) => sum + extents[way]!)]);
    return [...sums];
  }

  private reach(sums: readonly number[], extent: number): number {
    if (this.strips.least > 0) return extent;
    return Math.max(...sums.filter((sum) => sum <= extent));
  }

  /** The part of a space that pieces left can use; null when none fits. */
  private usable(space: Space, left: readonly number[]): Space | null {
    const w = this.reach(this.sums.across, space.w);
    const h = this.reach(this.sums.along, space.h);
    const { wayAcross, wayAlong, waySize } = this.tables;
    const some = [...waySize].some((size, way) => left[size]! > 0 && wayAcross[way]! <= w && wayAlong[way]! <= h);
    return w > 0 && h > 0 && some ? { ...space, w, h } : null;
  }

  private wasteIn(w: number, h: number, left: readonly number[]): number {
    if (w <= 0 || h <= 0) return 0;
    const usable = this.usable({ w, h, x: 0, y: 0, level: ANY }, left);
    return w * h - (usable === null ? 0 : usable.w * usable.h);
  }

  start(): State {
    const left = [...this.tables.sizeCount];
    const whole = { w: this.tables.width, h: this.height, x: 0, y: 0, level: CLOTH };
    const usable = this.usable(whole, left)!;
    const waste = whole.w * whole.h - usable.w * usable.h;
    return { left, spaces: [usable], area: 0, placed: 0, waste };
  }

  /** Whether what a block leaves of a space is nothing, wide enough or along a loose edge. */
  private isWide({ w, h, x, y, level }: Space, bw: number, bh: number): boolean {
    const { least, sideLoose, endLoose } = this.strips;
    const atSide = sideLoose && x + w === this.tables.width;
    const atEnd = level === CLOTH || (endLoose && y + h === this.height);
    return (w === bw || atSide || w - bw >= least) && (h === bh || atEnd || h - bh >= least);
  }

  children(state: State): Child[] {
    const { wayAcross, wayAlong, waySize, sizeArea } = this.tables;
    const space = state.spaces.at(-1)!;
    const { w, h, level } = space;
    const found: Child[] = [];
    const offer = (way: number, nx: number, ny: number, split: number, lost: number, fit: number): void => {
      const waste = state.waste + lost;
      if (waste > this.budget) return;
      const area = state.area + (way < 0 ? 0 : nx * ny * sizeArea[waySize[way]!]!);
      const placed = state.placed + nx * ny;
      const score = area === 0 ? 1 : (waste / (area + waste) + GUIDE.calm) * ((placed + 1) / area) * fit;
      found.push({ way, nx, ny, split, score });
    };
    if (level !== CLOTH) offer(-1, 0, 0, 0, w * h, GUIDE.loose);
    for (let way = 0; way < this.tables.ways; way++) {
      const size = waySize[way]!;
      const [pw, ph] = [wayAcross[way]!, wayAlong[way]!];
      const widest = level === COLUMN ? Math.min(1, Math.floor(w / pw)) : Math.floor(w / pw);
      for (const nx of [1, 2, 3, 4, Math.min(widest, state.left[size]!)]) {
        for (const ny of [1, 2, 3, Math.min(Math.floor(h / ph), Math.floor(state.left[size]! / nx))]) {
          if (nx < 1 || ny < 1 || nx > widest || ny * ph > h || nx * ny > state.left[size]!) continue;
          if (this.stages === 2 && ny > 1) continue;
          if (found.some((c) => c.way === way && c.nx === nx && c.ny === ny)) continue;
          const left = state.left.map((count, other) => (other === size ? count - nx * ny : count));
          const [bw, bh] = [nx * pw, ny * ph];
          if (!this.isWide(space, bw, bh)) continue;
          const fit = bw === w || bh === h ? 1 : GUIDE.loose;
          const isRow = this.stages === 3 && nx > 1;
          if (level === CLOTH) {
            const more = [...waySize.keys()]
              .filter((next) => left[waySize[next]!]! > 0 && wayAcross[next]! <= Math.max(bw, w - bw))
              .map((next) => bh + wayAlong[next]!)
              .filter((height) => height <= h);
            if (h > bh) more.push(h);
            for (const [k, height] of [bh, ...(bw === w || isRow || this.stages === 2 ? [] : more)].entries()) {
              const beside = this.wasteIn(w - bw, height, left);
              const over = this.wasteIn(bw, height - bh, left) + this.wasteIn(w, h - height, left);
              offer(way, nx, ny, height, beside + over, k === 0 ? 1 : GUIDE.loose);
            }
            continue;
          }
          const trimmed = level === COLUMN ? (w - bw) * bh : this.wasteIn(w - bw, bh, left);
          if (level !== SEGMENT) offer(way, nx, ny, 0, trimmed + this.wasteIn(w, h - bh, left), fit);
          const onlyAcross = level === COLUMN || (level === ANY && (bw === w || bh === h));
          if (onlyAcross || (isRow && bh < h)) continue;
          const above = this.stages === 2 ? bw * (h - bh) : this.wasteIn(bw, h - bh, left);
          offer(way, nx, ny, 1, this.wasteIn(w - bw, h, left) + above, fit);
        }
      }
    }
    return found;
  }

  /** The state after a child; null when nothing more can be laid or too much is wasted. */
  after(state: State, { way, nx, ny, split }: Child): State | null {
    const { wayAcross, wayAlong, waySize, sizeArea, width } = this.tables;
    const spaces = state.spaces.slice(0, -1);
    const left = [...state.left];
    const { w, h, x, y, level } = state.spaces.at(-1)!;
    let { area, placed } = state;
    if (way >= 0) {
      const [bw, bh] = [nx * wayAcross[way]!, ny * wayAlong[way]!];
      const height = level === CLOTH ? split : h;
      const along = level === CLOTH || split === 1;
      if (level === CLOTH) spaces.push({ w, h: h - height, x, y: y + height, level: CLOTH });
      const inner = this.stages < Infinity ? (level === CLOTH ? SEGMENT : level) : ANY;
      const beside = { w: level === COLUMN ? 0 : w - bw, h: along ? height : bh, x: x + bw, y, level: inner };
      const beyond = this.stages === 2 ? 0 : along ? bw : w;
      const over = { w: beyond, h: height - bh, x, y: y + bh, level: this.stages === 3 ? COLUMN : ANY };
      // The smaller is filled first; a column's side counts though it is trimmed off.
      const besideFirst = (w - bw) * beside.h >= over.w * over.h;
      spaces.push(...(besideFirst ? [beside, over] : [over, beside]));
      left[waySize[way]!]! -= nx * ny;
      area += nx * ny * sizeArea[waySize[way]!]!;
      placed += nx * ny;
    }
    const usable = spaces.flatMap((space) => this.usable(space, left) ?? []);
    const waste = width * this.height - area - usable.reduce((sum, space) => sum + space.w * space.h, 0);
    if (placed < this.tables.pieces && (usable.length === 0 || waste > this.budget)) return null;
    return { left, spaces: usable, area, placed, waste };
  }
}
