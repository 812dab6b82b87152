import type { Box } from "../../../geometry/box.ts";
import type { Rungs } from "../../problem/lattice.ts";
import { type LayingRule, laidOn, leftOutOf, NOTHING, type Standing } from "./layingRule.ts";
import { type MatchedJob, type MatchedWay, ROUNDING, rungsAlong, rungUp } from "./matchedJob.ts";
import { tollWith } from "./narrowWish.ts";

/** Cloth that ruler cuts have parted from the rest and on which nothing lies. */
interface FreeCloth extends Box {
  /** How often cuts across and along took turns until it came off, and whether the last ones ran across. */
  readonly turns: number;
  readonly isAcross: boolean;
  /** Sides along and across where the cutting gap of a box lies between it and the fresh edge: before it, and inside it. */
  readonly gapBefore: Sides;
  readonly gapInside: Sides;
}

interface Sides {
  readonly x: boolean;
  readonly y: boolean;
}

/** What is free of the cloth. */
interface Parted extends Standing {
  readonly free: readonly FreeCloth[];
}

/** A place for a box on free cloth, and the narrow strips that the cuts round it take off. */
interface Spot {
  readonly x: number;
  readonly y: number;
  readonly strips: number;
}

/**
 * Each box on the free rectangle of cloth where it ends first, as near to its start and its lower edge as its rungs
 * allow; cuts from edge to edge along its sides part what is round it, also what lies before it up to the rung. Hint 0:
 * cuts across first, 1: cuts along first. At most `turns` turns between cuts across and along lead to any piece.
 *
 * `heeds`: strips narrower than the job's least one are kept off where a later rung or other free cloth spares them for
 * less than they count; with hints 2 and 3 a box does not mind them. Cost: O(free rectangles · ways) a box.
 */
export function cutRule(turns: number, heeds: boolean): LayingRule<Parted> {
  return {
    hints: heeds ? 4 : 2,
    start: ({ fromX, fromY, toX, toY }) => {
      const sides = { gapBefore: { x: false, y: false }, gapInside: { x: true, y: true } };
      const cloth = { minX: fromX, minY: fromY, maxX: toX, maxY: toY, turns: 1, isAcross: true, ...sides };
      return { ...NOTHING, end: fromX, free: [cloth] };
    },
    lay(job, before, kind, wished, hint, spend, wish) {
      const { ways: own } = job.kinds[kind]!;
      const { free } = before;
      const isAcrossFirst = hint % 2 === 0;
      let best = null as (Spot & { way: number; from: number; ends: number; spare: number }) | null;
      for (const [way, box] of own.entries()) {
        if (wished >= 0 && wished < own.length && wished !== way) continue;
        spend(free.length);
        for (const [from, cloth] of free.entries())
          for (const spot of placesIn(job, cloth, box, wish?.least ?? 0, hint < 2)) {
            if (turns !== Infinity && partedBy(cloth, spot, box, isAcrossFirst, turns) === null) continue;
            const toll = hint < 2 ? tollWith(before.toll, spot.strips, wish) - before.toll : 0;
            const ends = spot.x + box.along + toll;
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
      const { way, x, y, from, strips } = best;
      const rest = partedBy(free[from]!, { x, y }, own[way]!, isAcrossFirst, turns)!;
      const others = free.filter((_, i) => i !== from);
      const laid = laidOn(job, before, { kind, way, x, y });
      const toll = tollWith(before.toll, strips, wish);
      return { ...laid, toll, free: [...others, ...rest] };
    },
  };
}

/**
 * The place nearest to the start and the lower edge of free cloth, none where the box finds none on its rungs; where that
 * leaves a narrow strip before it and `heeds`, also the first places that leave a strip wide enough.
 */
function placesIn(
  job: MatchedJob,
  cloth: FreeCloth,
  box: MatchedWay,
  least: number,
  heeds: boolean,
): readonly Spot[] {
  const { gap, looseEdges } = job.job;
  const { minX, minY, maxX, maxY, gapBefore, gapInside } = cloth;
  const isLooseAbove = looseEdges?.side === true && maxY >= job.toY - ROUNDING;
  const isLooseBehind = looseEdges?.end === true && maxX >= job.toX - ROUNDING;
  const spots: Spot[] = [];
  const rungsY = box.lattice?.y ?? null;
  for (const y of startsOn(rungsY, minY, gapBefore.y ? gap : 0, least, heeds)) {
    const above = maxY - y - box.across;
    if (above < -ROUNDING) continue;
    const rungsX = rungsAlong(box, y);
    for (const x of startsOn(rungsX, minX, gapBefore.x ? gap : 0, least, heeds)) {
      const behind = maxX - x - box.along;
      if (behind < -ROUNDING) continue;
      let strips = 0;
      if (rungsY !== null && isNarrow(y - minY + (gapBefore.y ? gap : 0), least)) strips++;
      if (rungsX !== null && isNarrow(x - minX + (gapBefore.x ? gap : 0), least)) strips++;
      if (!isLooseAbove && isNarrow(above + (gapInside.y ? 0 : gap), least)) strips++;
      if (!isLooseBehind && isNarrow(behind + (gapInside.x ? 0 : gap), least)) strips++;
      spots.push({ x, y, strips });
    }
  }
  return spots;
}

/** Where a box can begin that comes behind cloth up to `from` and a cutting gap of `gap`; what has no rungs closes up to it. */
function startsOn(
  rungs: Rungs | null,
  from: number,
  gap: number,
  least: number,
  heeds: boolean,
): readonly number[] {
  const near = rungUp(rungs, from);
  if (!heeds || rungs === null || !isNarrow(near - from + gap, least)) return [near];
  return [near, rungUp(rungs, from + least - gap)];
}

function isNarrow(width: number, least: number): boolean {
  return width > ROUNDING && width < least - ROUNDING;
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
  const { gapBefore, gapInside } = cloth;
  const parts: FreeCloth[] = acrossFirst
    ? [
        { ...first, maxX: x, gapInside: { ...gapInside, x: false } },
        { ...first, minX: farX, gapBefore: { ...gapBefore, x: true } },
        {
          ...second,
          minX: x,
          maxX: farX,
          maxY: y,
          gapBefore: { ...gapBefore, x: false },
          gapInside: { x: true, y: false },
        },
        {
          ...second,
          minX: x,
          maxX: farX,
          minY: farY,
          gapBefore: { x: false, y: true },
          gapInside: { ...gapInside, x: true },
        },
      ]
    : [
        { ...first, maxY: y, gapInside: { ...gapInside, y: false } },
        { ...first, minY: farY, gapBefore: { ...gapBefore, y: true } },
        {
          ...second,
          minY: y,
          maxY: farY,
          maxX: x,
          gapBefore: { ...gapBefore, y: false },
          gapInside: { x: false, y: true },
        },
        {
          ...second,
          minY: y,
          maxY: farY,
          minX: farX,
          gapBefore: { x: true, y: false },
          gapInside: { ...gapInside, y: true },
        },
      ];
  return parts.filter((part) => isBeside(part.maxX - part.minX) && isBeside(part.maxY - part.minY));
}
