import { expect, test } from "vitest";
import { ringBox } from "../../../geometry/box.ts";
import { type Ring, signedArea } from "../../../geometry/ring.ts";
import { seededRng } from "../../search/rng.ts";
import { coarsened } from "./coarsen.ts";

/** A wavy outline of 120 corners. */
function wavy(seed: number): Ring {
  const rng = seededRng(seed);
  const [a, b, p, q] = [rng.unit(), rng.unit(), rng.unit() * 6, rng.unit() * 6];
  const points: number[] = [];
  for (let i = 0; i < 120; i++) {
    const t = (i / 120) * 2 * Math.PI;
    const radius = 100 * (1 + 0.3 * a * Math.sin(3 * t + p) + 0.15 * b * Math.sin(7 * t + q));
    points.push(1.6 * radius * Math.cos(t), radius * Math.sin(t));
  }
  return Float64Array.from(points);
}

/** Distance by which (x, y) lies outside the ring; 0 inside. */
function outside(ring: Ring, x: number, y: number): number {
  let inside = false;
  let least = Infinity;
  for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
    const [ax, ay, bx, by] = [ring[j]!, ring[j + 1]!, ring[i]!, ring[i + 1]!];
    if (ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax)) inside = !inside;
    const t = Math.min(
      1,
      Math.max(0, ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / ((bx - ax) ** 2 + (by - ay) ** 2)),
    );
    least = Math.min(least, Math.hypot(x - ax - t * (bx - ax), y - ay - t * (by - ay)));
  }
  return inside ? 0 : least;
}

test("a coarser outline holds the outline, within its box, and is larger by no more than its share", () => {
  for (let seed = 1; seed <= 12; seed++) {
    const ring = wavy(seed);
    const coarse = coarsened(ring, 0.004);
    expect(coarse.length / 2).toBeLessThan(80);
    expect(signedArea(coarse) / signedArea(ring)).toBeLessThanOrEqual(1.004 + 1e-12);
    expect(signedArea(coarse)).toBeGreaterThanOrEqual(signedArea(ring));
    for (let i = 0; i < ring.length; i += 2) expect(outside(coarse, ring[i]!, ring[i + 1]!)).toBeLessThan(1e-9);
    const [own, given] = [ringBox(coarse), ringBox(ring)];
    expect(own.maxX).toBeLessThanOrEqual(given.maxX + 1e-9);
    expect(own.minY).toBeGreaterThanOrEqual(given.minY - 1e-9);
  }
});

test("a notch is filled only where nothing else of the outline lies in it", () => {
  // A hook whose tip lies in its own bay: bridging the bay would run over the tip.
  const hook = Float64Array.of(0, 0, 100, 0, 100, 60, 50, 60, 50, 55, 95, 55, 95, 5, 5, 5, 5, 100, 0, 100);
  const coarse = coarsened(hook, 0.9);
  for (let i = 0; i < hook.length; i += 2) expect(outside(coarse, hook[i]!, hook[i + 1]!)).toBeLessThan(1e-9);
  // Simple: area counted with the winding equals that of the points inside.
  expect(signedArea(coarse)).toBeLessThanOrEqual(100 * 100);
  expect(signedArea(coarse)).toBeGreaterThan(signedArea(hook));
});
