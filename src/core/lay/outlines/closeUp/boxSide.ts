/** A half-plane that one of two copies keeps to as it moves beside the other: n · move ≥ least. */
export interface BoxSide {
  readonly nx: number;
  readonly ny: number;
  readonly least: number;
}

/**
 * The side on which the boxes of two copies are farthest apart, as row `o` at (x, y) has them; null when they are not
 * apart. Coarser outlines are grown for their sums: two copies whose boxes touch lie in each other by the no-fit
 * polygon, and the nearest way out of that leads through the other copy. Units: grid. Cost: O(1).
 */
export function boxSide(rows: Float64Array, o: number, x: number, y: number): BoxSide | null {
  const apart = [rows[o]! - x, x - rows[o + 1]!, rows[o + 2]! - y, y - rows[o + 3]!];
  const room = Math.max(...apart);
  if (room < 0) return null;
  const side = apart.indexOf(room);
  const way = side % 2 === 0 ? -1 : 1;
  // Rows begin inside the boxes by what may pass for touching; the move stays clear of that by a rounding.
  const least = -Math.max(0, room - rows[o + 11]!);
  return { nx: side < 2 ? way : 0, ny: side < 2 ? 0 : way, least };
}
