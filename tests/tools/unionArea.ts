// What a ring covers, by polyclip-ts, a general polygon clipping library that we did not write.
import { union } from "polyclip-ts";
import { type Ring, signedArea } from "../../src/core/geometry/ring.ts";

/** Area that a ring covers, counted once where it runs over itself. */
export function unionArea(ring: Ring): number {
  const points = Array.from({ length: ring.length / 2 }, (_, i): [number, number] => [
    ring[2 * i]!,
    ring[2 * i + 1]!,
  ]);
  const areaOf = (one: readonly (readonly number[])[]): number =>
    Math.abs(signedArea(Float64Array.from(one.flat())));
  return union([points]).reduce(
    (sum, polygon) => sum + polygon.reduce((all, one, i) => all + (i === 0 ? 1 : -1) * areaOf(one), 0),
    0,
  );
}
