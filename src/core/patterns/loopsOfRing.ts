import type { Ring } from "../geometry/ring.ts";

/** A ring that touches itself at corners, as loops that do not: one for each time that it comes back to a corner. O(n). */
export function loopsOfRing(ring: Ring): readonly Ring[] {
  const loops: Ring[] = [];
  const path: (readonly [x: number, y: number])[] = [];
  const places = new Map<string, number>();
  const close = (from: number): void => {
    const loop = path.splice(from);
    for (const [x, y] of loop) places.delete(`${x} ${y}`);
    if (loop.length >= 3) loops.push(Float64Array.from(loop.flat()));
  };
  for (let i = 0; i < ring.length; i += 2) {
    const corner = [ring[i]!, ring[i + 1]!] as const;
    const key = `${corner[0]} ${corner[1]}`;
    const seen = places.get(key);
    if (seen !== undefined) close(seen);
    places.set(key, path.length);
    path.push(corner);
  }
  close(0);
  return loops;
}
