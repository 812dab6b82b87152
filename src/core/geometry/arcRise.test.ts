import fc from "fast-check";
import { expect, test } from "vitest";
import { bulgeOfRise, radiusOfRise, riseOfRadius } from "./arcRise.ts";
import { edgeCircle } from "./contourArcs.ts";

const chords = fc.double({ min: 1, max: 2000, noNaN: true });
const shares = fc.double({ min: 1e-4, max: 1, noNaN: true });

test("the radius of an arc by its rise is Euclid's: r = (c²/4 + h²) / 2h (Elements III.35, closed formula)", () => {
  // Worked by hand: a chord of 80 that rises by 20 has the radius (1600 + 400) / 40.
  expect(radiusOfRise(80, 20)).toBe(50);
  expect(radiusOfRise(80, -20)).toBe(50);
  expect(riseOfRadius(80, 50)).toBeCloseTo(20, 12);
  fc.assert(
    fc.property(chords, shares, (chord, share) => {
      const rise = (share * chord) / 2;
      const radius = radiusOfRise(chord, rise);
      expect(radius / (((chord * chord) / 4 + rise * rise) / (2 * rise))).toBeCloseTo(1, 12);
      expect(riseOfRadius(chord, radius)).toBeCloseTo(rise, 6);
      // The outline's own arc is the same circle.
      const edge = { x0: 0, y0: 0, x1: chord, y1: 0, bulge: bulgeOfRise(chord, rise) };
      expect(edgeCircle(edge).radius / radius).toBeCloseTo(1, 9);
    }),
  );
});

test("no arc is more than half a circle, and a chord of nothing bows by nothing", () => {
  expect(riseOfRadius(80, 40)).toBe(40);
  expect(riseOfRadius(80, 10)).toBe(40);
  expect(bulgeOfRise(0, 5)).toBe(0);
  // An arc that hardly rises: h = c² / 8r to first order.
  expect(riseOfRadius(100, 1e9)).toBeCloseTo(1.25e-6, 12);
});
