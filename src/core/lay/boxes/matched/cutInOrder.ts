import type { Box } from "../../../geometry/box.ts";
import { type LayingRule, laidOn, leftOutOf, NOTHING, type Standing } from "./layingRule.ts";
import { type MatchedWay, ROUNDING, rungsAlong, rungUp } from "./matchedJob.ts";

/** Cloth that ruler cuts have parted from the rest and on which nothing lies. */
interface FreeCloth extends Box {
  /** How often cuts across and along took turns until it came off, and whether the last ones ran across. */
  readonly turns: number;
  readonly isAcross: boolean;
}

/** What is free of the cloth. */
interface Parted extends Standing {
  readonly free: readonly FreeCloth[];
}

/**
 * Each box on the free rectangle of cloth where it ends first, as near to its start and its lower edge as its rungs
 * allow; cuts from edge to edge along its sides part what is round it, also what lies before it up to the rung. Hint 0:
 * cuts across first, 1: cuts along first. At most `turns` turns between cuts across and along lead to any piece.
 * Cost: O(free rectangles · ways) a box.
 */
export function cutRule(turns: number): LayingRule<Parted> {
  return {
    hints: 2,
    start: ({ fromX, fromY, toX, toY }) => {
      const cloth = { minX: fromX, minY: fromY, maxX: toX, maxY: toY, turns: 1, isAcross: true };
      return { ...NOTHING, end: fromX, free: [cloth] };
    },
    lay(job, before, kind, wished, hint, spend) {
      const { ways: own } = job.kinds[kind]!;
      const { free } = before;
      let best = null as { way: number; x: number; y: number; from: number; ends: number; spare: number } | null;
      for (const [way, box] of own.entries()) {
        if (wished >= 0 && wished < own.length && wished !== way) continue;
        spend(free.length);
        for (const [from, cloth] of free.entries()) {
          const spot = placeIn(cloth, box);
          if (spot === null) continue;
          if (turns !== Infinity && partedBy(cloth, spot, box, hint === 0, turns) === null) continue;
          const ends = spot.x + box.along;
          // Of rectangles where it ends alike, the one that it fills best across.
          const spare = cloth.maxY - cloth.minY - box.across;
          const isBetter =
            best === null ||
            ends < best.ends - ROUNDING ||
            (ends < best.ends + ROUNDING && spare < best.spare - ROUNDING);
          if (isBetter) best = { way, ...spot, from, ends, spare };
        }
      }
      if (best === null) return { ...leftOutOf(job, before, kind), free };
      const { way, x, y, from } = best;
      const rest = partedBy(free[from]!, { x, y }, own[way]!, hint === 0, turns)!;
      const others = free.filter((_, i) => i !== from);
      return { ...laidOn(job, before, { kind, way, x, y }), free: [...others, ...rest] };
    },
  };
}

/** The place nearest to the start and the lower edge of free cloth; null where the box finds none on its rungs. */
function placeIn(cloth: FreeCloth, box: MatchedWay): { readonly x: number; readonly y: number } | null {
  const y = rungUp(box.lattice?.y ?? null, cloth.minY);
  if (y + box.across > cloth.maxY + ROUNDING) return null;
  const x = rungUp(rungsAlong(box, y), cloth.minX);
  return x + box.along > cloth.maxX + ROUNDING ? null : { x, y };
}

/** What cuts leave round a box, those across first or last; null where that takes too many turns. */
function partedBy(
  cloth: FreeCloth,
  { x, y }: { readonly x: number; readonly y: number },
  { along, across }: MatchedWay,
  acrossFirst: boolean,
  most: number,
): FreeCloth[] | null {
  const { minX, minY, maxX, maxY } = cloth;
  const [farX, farY] = [x + along, y + across];
  const isBeside = (gap: number): boolean => gap > ROUNDING;
  const hasEnds = isBeside(x - minX) || isBeside(maxX - farX);
  const hasSides = isBeside(y - minY) || isBeside(maxY - farY);
  // Cuts of the way of the last ones come off in the same turn.
  const turnsOf = (isAcross: boolean, after: FreeCloth): number =>
    isAcross === after.isAcross ? after.turns : after.turns + 1;
  const isFirst = acrossFirst ? hasEnds : hasSides;
  const isSecond = acrossFirst ? hasSides : hasEnds;
  const first = { ...cloth, turns: isFirst ? turnsOf(acrossFirst, cloth) : cloth.turns, isAcross: acrossFirst };
  const middle = isFirst ? first : cloth;
  const second = {
    ...middle,
    turns: isSecond ? turnsOf(!acrossFirst, middle) : middle.turns,
    isAcross: !acrossFirst,
  };
  if ((isSecond ? second : middle).turns > most) return null;
  const parts: FreeCloth[] = acrossFirst
    ? [
        { ...first, maxX: x },
        { ...first, minX: farX },
        { ...second, minX: x, maxX: farX, maxY: y },
        { ...second, minX: x, maxX: farX, minY: farY },
      ]
    : [
        { ...first, maxY: y },
        { ...first, minY: farY },
        { ...second, minY: y, maxY: farY, maxX: x },
        { ...second, minY: y, maxY: farY, minX: farX },
      ];
  return parts.filter((part) => isBeside(part.maxX - part.minX) && isBeside(part.maxY - part.minY));
}
