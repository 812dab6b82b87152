import { levelThicknesses, type SolvedBend, type SolvedSection } from "../../straps/section/foldSection.ts";

/** Height of a level's lower face at a place across the strap, mm above the table. */
export type LevelHeight = (level: number, x: number) => number;

interface Span {
  from: number;
  to: number;
}

/** 0 below 0, 1 above 1, level at both ends. */
function smoothStep(t: number): number {
  const clamped = Math.min(1, Math.max(0, t));
  return clamped * clamped * (3 - 2 * clamped);
}

/** Levels that a bend wraps by its plan. */
function wrappedLevels(bend: SolvedBend, wraps: readonly number[] | undefined): readonly number[] {
  if (wraps) return wraps;
  const low = Math.min(bend.fromLevel, bend.toLevel);
  const high = Math.max(bend.fromLevel, bend.toLevel);
  return Array.from({ length: high - low - 1 }, (_, i) => low + 1 + i);
}

/** Where each level is held up: by what lies on it, and out to the outside of every bend that wraps it. */
function supports(section: SolvedSection): Span[][] {
  const spans: Span[][] = levelThicknesses(section.plan).map(() => []);
  const put = (level: number, from: number, to: number): void => {
    spans[level]!.push({ from: Math.min(from, to), to: Math.max(from, to) });
  };
  for (const slab of section.slabs) put(slab.plan.level, slab.fromX, slab.toX);
  for (const strip of section.strips) {
    let fold = 0;
    for (const segment of strip.segments) {
      if (segment.kind === "run") put(segment.level, segment.fromX, segment.toX);
      if (segment.kind !== "bend") continue;
      const reach = segment.insideRadius + segment.thickness;
      const outside = segment.side === "left" ? segment.axisX - reach : segment.axisX + reach;
      put(segment.fromLevel, segment.axisX, outside);
      put(segment.toLevel, segment.axisX, outside);
      for (const level of wrappedLevels(segment, strip.plan.wraps?.[fold])) {
        const own = spans[level]!;
        const nearest =
          segment.side === "left" ? Math.min(...own.map((one) => one.from)) : Math.max(...own.map((one) => one.to));
        if (Number.isFinite(nearest)) put(level, nearest, outside);
      }
      fold += 1;
    }
  }
  return spans;
}

/** How far a fold that keeps a radius of its own stands open beyond what it wraps. */
function bulges(section: SolvedSection): { level: number; axisX: number; side: "left" | "right"; gap: number }[] {
  const thicknesses = levelThicknesses(section.plan);
  return section.strips.flatMap((strip) => {
    const bends = strip.segments.filter((segment) => segment.kind === "bend");
    return bends.map((bend, i) => {
      const wrapped = wrappedLevels(bend, strip.plan.wraps?.[i]);
      const filled = wrapped.reduce((sum, level) => sum + thicknesses[level]!, 0);
      const gap = Math.max(0, 2 * bend.insideRadius + bend.rise - bend.step - filled);
      return { level: Math.max(bend.fromLevel, bend.toLevel), axisX: bend.axisX, side: bend.side, gap };
    });
  });
}

/**
 * Heights of the levels of a section lying on a table: level over level, sinking where a lower one ends if the
 * construction settles, standing open beside soft folds.
 */
export function levelHeights(section: SolvedSection): LevelHeight {
  const thicknesses = levelThicknesses(section.plan);
  const held = supports(section);
  const open = bulges(section);
  const presence = (level: number, x: number): number => {
    if (!section.plan.settles) return 1;
    const ramp = 2.5 * thicknesses[level]! + 1e-6;
    let best = 0;
    for (const { from, to } of held[level]!) {
      const off = Math.max(from - x, x - to, 0);
      best = Math.max(best, smoothStep(1 - off / ramp));
    }
    return best;
  };
  return (level, x) => {
    let z = 0;
    for (let below = 0; below < level; below++) z += thicknesses[below]! * presence(below, x);
    for (const { level: from, axisX, side, gap } of open) {
      if (level < from || gap === 0) continue;
      const off = side === "left" ? x - axisX : axisX - x;
      z += gap * smoothStep(1 - off / (4 * gap));
    }
    return z;
  };
}
