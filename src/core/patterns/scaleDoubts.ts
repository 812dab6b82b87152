import type { NestedLine } from "./nesting.ts";

/** A scale that would turn the sides of a pattern into whole numbers. */
export interface ScaleDoubt {
  /** What one step of the file would be; see `PATTERN_UNITS`. */
  readonly unit: string;
  /** Longest side as read, and as it would be. */
  readonly sideMm: number;
  readonly wouldBeMm: number;
}

/** What one step of a file can stand for, mm. A px is told by how many go to the inch. */
export const PATTERN_UNITS: Readonly<Record<string, number>> = {
  mm: 1,
  cm: 10,
  m: 1000,
  in: 25.4,
  ft: 304.8,
  px72: 25.4 / 72,
  px90: 25.4 / 90,
  px96: 25.4 / 96,
};

/** A side is whole when it is so near a multiple of 5 mm or of a quarter inch, mm. */
const NEAR = 0.02;
const STEPS = [5, 6.35];
/** A whole pattern is larger than this, and no side of a bag as long as that, mm. */
const SMALL = 80;
const LARGE = 2500;

/**
 * Whether the straight sides along the axes would be whole at another of the usual scales and are not so now: the
 * sign of 72 or 90 px taken for 96, or of an inch taken for a millimetre. Null when nothing speaks for it.
 * Common practice, no source: patterns are drawn in whole centimetres or quarter inches.
 */
export function scaleDoubt(lines: readonly NestedLine[], unit: string): ScaleDoubt | null {
  const now = PATTERN_UNITS[unit];
  const sides = lines.flatMap(straightSides).filter((side) => side >= 4);
  if (now === undefined || sides.length < 2) return null;
  const longest = Math.max(...sides);
  const isScreen = unit.startsWith("px");
  if (wholeShare(sides, 1) >= 0.5 || (isScreen && wholeShare(sides, 1, [1]) >= 0.9)) return null;
  for (const other of isScreen ? ["px72", "px90", "px96"] : ["mm", "in", "cm"]) {
    if (other === unit) continue;
    const factor = PATTERN_UNITS[other]! / now;
    // A mm is a whole number of inches or not; only a size that no bag has speaks for another unit.
    if (!isScreen && (factor > 1 ? longest > SMALL : longest < LARGE)) continue;
    if (wholeShare(sides, factor) >= 0.9) return { unit: other, sideMm: longest, wouldBeMm: longest * factor };
  }
  return null;
}

function wholeShare(sides: readonly number[], factor: number, steps: readonly number[] = STEPS): number {
  return Math.max(
    ...steps.map((step) => {
      const whole = sides.filter((side) => {
        const count = (side * factor) / step;
        return Math.round(count) > 0 && Math.abs(count - Math.round(count)) * step <= NEAR;
      });
      return whole.length / sides.length;
    }),
  );
}

/** Lengths of the edges of a closed line that run along x or y. */
function straightSides({ points, closed }: NestedLine): number[] {
  if (!closed || points.length > 64) return [];
  const sides: number[] = [];
  for (let i = 0, j = points.length - 2; i < points.length; j = i, i += 2) {
    const dx = Math.abs(points[i]! - points[j]!);
    const dy = Math.abs(points[i + 1]! - points[j + 1]!);
    if (Math.min(dx, dy) <= 1e-3 * Math.max(dx, dy)) sides.push(Math.max(dx, dy));
  }
  return sides;
}
