import type { Extent } from "../lay/problem/pieceExtent.ts";
import { type Rng, seededRng } from "../lay/search/rng.ts";

/** A panel of which some lie on the fold as halves, and the others whole beside it, two by two. mm. */
export interface FoldKind {
  readonly half: Extent;
  /** The whole in each turn it may take; none where it is too long to lie beside the fold. */
  readonly whole: readonly Extent[];
  readonly count: number;
  /** How many lie on the fold at most. */
  readonly most: number;
}

/** The cloth folded lengthwise, from the fold to the selvedges. mm. */
export interface FoldedCloth {
  readonly width: number;
  readonly margin: number;
  readonly gap: number;
}

/** Halves along the fold: which panel, and where each begins. mm. */
export interface HalfPlace {
  readonly kind: number;
  readonly x: number;
}

/** A thing to put down: half of a kind at the fold, a whole one of it, or another piece. */
interface Item {
  readonly kind: number | null;
  readonly isHalf: boolean;
  readonly turns: readonly Extent[];
}

interface Packed {
  readonly length: number;
  readonly halves: readonly HalfPlace[];
}

/** Steps of putting one box down beside another: a few hundredths of a second. */
const BUDGET = 4e6;
const MOST_TRIES = 1500;
/** What another way must spare before the plain row is left. */
const WORTH = 0.99;

/**
 * Which panels lie on the fold, and where along it, where that makes the cloth clearly shorter than `usual` of each in
 * one row from the cut end; null where it does not. All pieces are looked at as their boxes: put down one after the
 * other in an order that is bettered by exchanging two, by moving one, and by taking halves from the fold for whole
 * ones beside it or the other way round, even where one comes out more than is asked for.
 *
 * Units: mm. Same input, same answer.
 * Cost: `BUDGET` steps at most, n³ for each order of n boxes; what is too much for one order is null.
 */
export function chooseHalves(
  kinds: readonly FoldKind[],
  others: readonly (readonly Extent[])[],
  usual: readonly number[],
  cloth: FoldedCloth,
): readonly HalfPlace[] | null {
  const start = itemsOf(kinds, others, usual);
  const copies = Math.max(start.length, 8);
  const tries = Math.min(MOST_TRIES, Math.floor(BUDGET / (2 * copies * copies * copies)));
  if (tries < 20 || start.length < 2) return null;
  const rng = seededRng(1);
  const row = start.filter(({ isHalf }) => isHalf).length;
  const plain = bettered(start, (items) => exchanged(items, row, rng), tries, cloth);
  const free = bettered(
    plain.items,
    (items) => (rng.below(4) === 0 ? toggled(items, kinds, rng) : exchanged(items, 0, rng)),
    tries,
    cloth,
  );
  return free.packed.length <= WORTH * plain.packed.length ? free.packed.halves : null;
}

/** Halves first, the deepest first; then the rest, the largest first. */
function itemsOf(
  kinds: readonly FoldKind[],
  others: readonly (readonly Extent[])[],
  usual: readonly number[],
): Item[] {
  const halves = kinds.flatMap(({ half }, kind) =>
    Array.from({ length: usual[kind]! }, (): Item => ({ kind, isHalf: true, turns: [half] })),
  );
  const wholes = kinds.flatMap(({ whole, count }, kind) =>
    Array.from({ length: wholesBeside(count, usual[kind]!) }, (): Item => ({ kind, isHalf: false, turns: whole })),
  );
  const rest = [...wholes, ...others.map((turns): Item => ({ kind: null, isHalf: false, turns }))];
  const size = ({ turns }: Item): number => Math.max(0, ...turns.map(({ along, across }) => along * across));
  return [
    ...halves.sort((a, b) => b.turns[0]!.across - a.turns[0]!.across),
    ...rest.sort((a, b) => size(b) - size(a)),
  ];
}

interface Bettered {
  readonly items: readonly Item[];
  readonly packed: Packed;
}

/** The shortest that exchanges lead to; of equally short ones that whose halves lie nearest to the cut end. */
function bettered(
  start: readonly Item[],
  changed: (items: readonly Item[]) => readonly Item[] | null,
  tries: number,
  cloth: FoldedCloth,
): Bettered {
  let at: Bettered = { items: start, packed: packed(start, cloth) };
  let best = at;
  for (let i = 0; i < tries; i++) {
    const items = changed(at.items);
    if (items === null) continue;
    const now = packed(items, cloth);
    // As short is good enough: from there another exchange may be shorter.
    if (now.length > at.packed.length + TOUCH) continue;
    at = { items, packed: now };
    const isShorter = now.length < best.packed.length - TOUCH;
    if (isShorter || outward(now) < outward(best.packed) - TOUCH) best = at;
  }
  return best;
}

/** How far from the cut end the halves lie, all together, mm. */
function outward({ halves }: Packed): number {
  return halves.reduce((sum, { x }) => sum + x, 0);
}

/** Two items exchanged, or one moved to another place in the order; the first `fixed` stay. */
function exchanged(items: readonly Item[], fixed: number, rng: Rng): readonly Item[] | null {
  const n = items.length - fixed;
  if (n < 2) return null;
  const [a, b] = [fixed + rng.below(n), fixed + rng.below(n)];
  if (rng.below(2) === 0) return items.with(a, items[b]!).with(b, items[a]!);
  return items.toSpliced(a, 1).toSpliced(b, 0, items[a]!);
}

/** One or two halves of a kind more or fewer on the fold, and as many whole ones beside it as that leaves. */
function toggled(items: readonly Item[], kinds: readonly FoldKind[], rng: Rng): readonly Item[] | null {
  const kind = rng.below(kinds.length);
  const { half, whole, count, most } = kinds[kind]!;
  const halves = items.filter((item) => item.kind === kind && item.isHalf).length;
  const now = halves + [-2, -1, 1, 2][rng.below(4)]!;
  if (now < 0 || now > most || whole.length === 0) return null;
  const halfItem: Item = { kind, isHalf: true, turns: [half] };
  const wholeItem: Item = { kind, isHalf: false, turns: whole };
  const wholes = wholesBeside(count, halves);
  const fewer = without(without(items, kind, true, halves - now), kind, false, wholes - wholesBeside(count, now));
  const more = [
    ...Array.from({ length: now - halves }, () => halfItem),
    ...Array.from({ length: wholesBeside(count, now) - wholes }, () => wholeItem),
  ];
  return fewer.toSpliced(rng.below(fewer.length + 1), 0, ...more);
}

/** Each of them gives two; the last may give one that nobody asked for. */
function wholesBeside(count: number, halves: number): number {
  return Math.ceil((count - halves) / 2);
}

/** The items without the first `n` of a kind. */
function without(items: readonly Item[], kind: number, isHalf: boolean, n: number): readonly Item[] {
  let left = n;
  return items.filter((item) => item.kind !== kind || item.isHalf !== isHalf || left-- <= 0);
}

/** Each box as near to the cut end as those before it let it slide in from the open end; halves at the fold. */
function packed(items: readonly Item[], { width, margin, gap }: FoldedCloth): Packed {
  const n = items.length;
  const [y0, y1, x1] = [new Float64Array(n), new Float64Array(n), new Float64Array(n)];
  const halves: HalfPlace[] = [];
  const ends: number[] = [];
  let length = 0;
  for (let i = 0; i < n; i++) {
    const { kind, isHalf, turns } = items[i]!;
    let [bestX, bestY, bestEnd] = [0, 0, Infinity];
    let best: Extent | null = null;
    for (const turn of turns) {
      const { along, across } = turn;
      // At the lower edge, then on top of each that lies already; halves at the fold alone.
      for (let on = -1; on < (isHalf ? 0 : i); on++) {
        const y = isHalf ? 0 : on < 0 ? margin : Math.max(margin, y1[on]!);
        if (y + across > width - margin + TOUCH) continue;
        let x = margin;
        for (let k = 0; k < i; k++)
          if (y0[k]! < y + across + gap - TOUCH && y < y1[k]! - TOUCH && x1[k]! > x) x = x1[k]!;
        const end = x + along;
        if (end > bestEnd + TOUCH || (end >= bestEnd - TOUCH && y >= bestY)) continue;
        [bestX, bestY, bestEnd, best] = [x, y, end, turn];
      }
    }
    if (best === null) return { length: Infinity, halves: [] };
    y0[i] = bestY;
    y1[i] = bestY + best.across + gap;
    x1[i] = bestX + best.along + gap;
    length = Math.max(length, bestEnd);
    if (isHalf) {
      halves.push({ kind: kind!, x: bestX });
      ends.push(bestEnd);
    }
  }
  return nearerToTheStart({ length, halves }, ends, margin);
}

/** The same turned round end for end, where that brings the halves nearer to the cut end: whole pieces there fill up. */
function nearerToTheStart(plan: Packed, ends: readonly number[], margin: number): Packed {
  const round = plan.halves.map(({ kind }, i) => ({ kind, x: margin + plan.length - ends[i]! }));
  return outward({ ...plan, halves: round }) < outward(plan) ? { ...plan, halves: round } : plan;
}

/** Rounding that keeps nothing from lying side by side, mm. */
const TOUCH = 1e-9;
