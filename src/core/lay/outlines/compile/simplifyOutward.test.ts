import { expect, test } from "vitest";
import { type Ring, signedArea } from "../../../geometry/ring.ts";
import { simplifyOutward } from "./simplifyOutward.ts";

function ringOf(corners: number, radiusAt: (i: number) => number): Ring {
  const points: number[] = [];
  for (let i = 0; i < corners; i++) {
    const turn = (2 * Math.PI * i) / corners;
    points.push(radiusAt(i) * Math.cos(turn), radiusAt(i) * Math.sin(turn));
  }
  return Float64Array.from(points);
}

/** Least distance by which (x, y) lies inside a ring, negative outside, mm. Even-odd rule. */
function depth(ring: Ring, x: number, y: number): number {
  let least = Infinity;
  let inside = false;
  for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
    const [ax, ay, bx, by] = [ring[j]!, ring[j + 1]!, ring[i]!, ring[i + 1]!];
    const t = ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / ((bx - ax) ** 2 + (by - ay) ** 2);
    const share = Math.min(1, Math.max(0, t));
    least = Math.min(least, Math.hypot(x - ax - share * (bx - ax), y - ay - share * (by - ay)));
    if (by > y !== ay > y && x < ((ax - bx) * (y - by)) / (ay - by) + bx) inside = !inside;
  }
  return inside ? least : -least;
}

function expectHeld(outer: Ring, ring: Ring): void {
  for (let i = 0; i < ring.length; i += 2)
    expect(depth(outer, ring[i]!, ring[i + 1]!)).toBeGreaterThanOrEqual(-1e-9);
}

test("a flattened circle loses corners, not cloth, and hardly grows", () => {
  const circle = ringOf(360, () => 100);
  const simple = simplifyOutward(circle, 0.05);
  expect(simple.length).toBeLessThan(circle.length / 2);
  expectHeld(simple, circle);
  expect(signedArea(simple) / signedArea(circle)).toBeLessThan(1.001);
});

test("few corners stay as they are", () => {
  const ring = ringOf(48, (i) => (i % 2 === 0 ? 100 : 80));
  expect(simplifyOutward(ring, 0.05)).toBe(ring);
});

test("a thousand teeth are laid as an outline of at most 400 corners that holds them", () => {
  const teeth = ringOf(2000, (i) => (i % 2 === 0 ? 500 : 400));
  const simple = simplifyOutward(teeth, 0.05);
  expect(simple.length / 2).toBeLessThanOrEqual(400);
  expectHeld(simple, teeth);
  expect(signedArea(simple)).toBeLessThan(1.01 * Math.PI * 500 ** 2);
});

test("made coarser, an outline still does not run over itself: a comb's teeth in the notch of a bracket", () => {
  // A bracket whose notch holds a comb on a thin stem: bridging the notch at once would cut through the comb.
  const points = [0, 0, 1000, 0, 1000, 1000, 990, 1000, 990, 10, 510, 10];
  for (let i = 0; i < 300; i++) points.push(510 + (i % 2) * 300, 20 + i * 3);
  points.push(490, 920);
  for (let i = 299; i >= 0; i--) points.push(490 - (i % 2) * 300, 20 + i * 3);
  points.push(490, 10, 10, 10, 10, 1000, 0, 1000);
  const ring = Float64Array.from(points);
  const simple = simplifyOutward(ring, 0.05);
  expect(simple.length / 2).toBeLessThanOrEqual(400);
  expectHeld(simple, ring);
  expect(signedArea(simple)).toBeGreaterThan(signedArea(ring));
  expect(signedArea(simple)).toBeLessThanOrEqual(1_000_000);
});
