/**
 * Radius of the arc over a chord that rises so far above its middle, mm; at most half a circle.
 * Source: Euclid III.35, the closed formula r = (c²/4 + h²) / 2h.
 */
export function radiusOfRise(chord: number, rise: number): number {
  const h = Math.abs(rise);
  return (chord * chord) / (8 * h) + h / 2;
}

/**
 * How far the smaller arc of a radius rises above the middle of its chord, mm; half the chord where the radius is no
 * more. Source: Euclid III.35 turned round, h = r − √(r² − c²/4), written so that little is not taken from much.
 */
export function riseOfRadius(chord: number, radius: number): number {
  const half = chord / 2;
  if (radius <= half) return half;
  return (half * half) / (radius + Math.sqrt((radius - half) * (radius + half)));
}

/** Bulge of an edge that rises so far to the right of its way (outward where the outline runs counter-clockwise). */
export function bulgeOfRise(chord: number, rise: number): number {
  return chord === 0 ? 0 : (2 * rise) / chord;
}
