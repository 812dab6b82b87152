// Kerf round corners between arcs and lines, by the areas of circles that cut each other and are moved.
import { expect, test } from "vitest";
import type { Contour } from "./contour.ts";
import { contourBox, contourEdges, edgeCircle, poseContour } from "./contourArcs.ts";
import { contourArea, contourLength } from "./contourEdgeLengths.ts";
import { straightContour } from "./contourShapes.ts";
import { kerfContour } from "./kerfContour.ts";

/** What two discs share, their centres `d` apart. Source: Weisstein, Circle-Circle Intersection, MathWorld. */
function sharedByDiscs(r: number, s: number, d: number): number {
  const half = Math.sqrt((-d + r + s) * (d + r - s) * (d - r + s) * (d + r + s)) / 2;
  const [a, b] = [(d * d + r * r - s * s) / (2 * d * r), (d * d + s * s - r * r) / (2 * d * s)];
  return r * r * Math.acos(a) + s * s * Math.acos(b) - half;
}

/** Corners of two circles that cut each other, and half the angles their arcs are seen under. */
function cut(r: number, s: number, d: number) {
  const x = (d * d + r * r - s * s) / (2 * d);
  const y = Math.sqrt(r * r - x * x);
  return { x, y, a: Math.atan2(y, x), b: Math.atan2(y, d - x) };
}

/** What both discs share. */
function lens(r: number, s: number, d: number): Contour {
  const { x, y, a, b } = cut(r, s, d);
  return { vertices: Float64Array.of(x, -y, Math.tan(a / 2), x, y, Math.tan(b / 2)), closed: true };
}

/** The first disc without the second: one arc bows out, the other in. */
function crescent(r: number, s: number, d: number): Contour {
  const { x, y, a, b } = cut(r, s, d);
  return { vertices: Float64Array.of(x, y, Math.tan((Math.PI - a) / 2), x, -y, -Math.tan(b / 2)), closed: true };
}

const POSES = [0, 35, 121, 260].map((turnDeg) => ({ x: 9, y: -14, turnDeg, mirrored: false }));

test("two arcs bowing out meet where the larger circles do", () => {
  for (const pose of POSES)
    for (const e of [0.3, 2, -0.3, -2]) {
      const out = kerfContour(poseContour(lens(30, 25, 20), pose), e)!;
      expect(contourArea(out)).toBeCloseTo(sharedByDiscs(30 + e, 25 + e, 20), 6);
      const radii = contourEdges(out).map((edge) => edgeCircle(edge).radius);
      expect(radii).toEqual([expect.closeTo(30 + e, 9), expect.closeTo(25 + e, 9)]);
    }
});

test("an arc bowing in and one bowing out: the first circle grows, the second shrinks", () => {
  for (const pose of POSES)
    for (const e of [0.2, 1.5, -0.2, -1.5]) {
      const out = kerfContour(poseContour(crescent(30, 22, 34), pose), e)!;
      expect(contourArea(out)).toBeCloseTo(Math.PI * (30 + e) ** 2 - sharedByDiscs(30 + e, 22 - e, 34), 6);
    }
  // Moved out by all of the second circle, nothing is left of its arc.
  expect(kerfContour(crescent(30, 22, 34), 22)).toBeNull();
});

// Segment of a circle beyond a chord h from its centre: r² acos(h / r) − h √(r² − h²), as handbooks print it.
const segment = (r: number, h: number) => r * r * Math.acos(h / r) - h * Math.sqrt(r * r - h * h);

test("an arc and its chord: the circle grows and the chord moves away, in less than half a circle and in more", () => {
  for (const pose of POSES)
    for (const h of [-6, 0, 7])
      for (const e of [0.4, -0.4]) {
        const x = Math.sqrt(400 - h * h);
        const bulge = Math.tan(Math.acos(h / 20) / 2);
        for (const vertices of [Float64Array.of(-x, h, 0, x, h, bulge), Float64Array.of(x, h, bulge, -x, h, 0)]) {
          const out = kerfContour(poseContour({ vertices, closed: true }, pose), e)!;
          expect(contourArea(out)).toBeCloseTo(segment(20 + e, h - e), 6);
          expect(contourEdges(out)).toHaveLength(2);
        }
      }
});

test("a dent in a board: the arc bows in and shrinks, its ends run along the straight edge that moves out", () => {
  const half = 8;
  const dented = (r: number): Contour => {
    const bulge = -Math.tan(Math.asin(half / r) / 2);
    const points = [-40, 0, 0, -half, 0, bulge, half, 0, 0, 40, 0, 0, 40, 30, 0, -40, 30, 0];
    return { vertices: Float64Array.from(points), closed: true };
  };
  // The dent's centre lies below the edge: the arc is its upper part.
  for (const pose of POSES)
    for (const e of [0.5, -0.5]) {
      const out = kerfContour(poseContour(dented(10), pose), e)!;
      const depth = Math.sqrt(100 - half * half);
      expect(contourArea(out)).toBeCloseTo((80 + 2 * e) * (30 + 2 * e) - segment(10 - e, depth - e), 6);
    }
});

// Steiner: a convex outline grown by e with round corners all the way has A + P e + π e².
test("sharp tips are rounded beyond four distances, and stay sharp before that", () => {
  const thin = lens(60, 60, 118);
  for (const e of [0.2, 1]) {
    const out = kerfContour(thin, e)!;
    expect(contourEdges(out)).toHaveLength(4);
    expect(contourArea(out)).toBeCloseTo(contourArea(thin) + contourLength(thin) * e + Math.PI * e * e, 6);
  }
  const tip = (reach: number): Contour => {
    const half = 40 * Math.tan(Math.asin(1 / reach));
    return straightContour([0, -half, 40, 0, 0, half], true);
  };
  expect(contourBox(kerfContour(tip(3.9), 2)!).maxX).toBeCloseTo(40 + 2 * 3.9, 9);
  expect(contourEdges(kerfContour(tip(3.9), 2)!)).toHaveLength(3);
  expect(contourBox(kerfContour(tip(4.1), 2)!).maxX).toBeCloseTo(42, 9);
  expect(contourEdges(kerfContour(tip(4.1), 2)!)).toHaveLength(4);
});

test("a notch too narrow for its distance is refused, and an edge that is used up, straight or bowed", () => {
  const notched = (reach: number): Contour => {
    const half = 10 * Math.tan(Math.asin(1 / reach));
    return straightContour([-30, 0, 30, 0, 30, 20, half, 20, 0, 10, -half, 20, -30, 20], true);
  };
  expect(kerfContour(notched(4.1), 0.5)).toBeNull();
  const out = kerfContour(notched(3.9), 0.5)!;
  expect(contourArea(out)).toBeGreaterThan(contourArea(notched(3.9)));
  // Its foot goes up by 3.9 distances.
  expect([...out.vertices]).toContainEqual(expect.closeTo(10 + 3.9 * 0.5, 9));
  // Sides that come in towards a top of 2 mm: moved in by 3 mm it has passed, by 1 mm it is there.
  const house = (bulge: number): Contour => ({
    vertices: Float64Array.of(-20, 0, 0, 20, 0, 0, 1, 19, bulge, -1, 19, 0),
    closed: true,
  });
  for (const bulge of [0, 0.1, -0.1]) {
    expect(kerfContour(house(bulge), -3), `bulge ${bulge}`).toBeNull();
    expect(kerfContour(house(bulge), -0.5)).not.toBeNull();
  }
  // A corner given twice is one corner.
  const doubled = straightContour([0, 0, 10, 0, 10, 0, 10, 5, 0, 5], true);
  expect(contourArea(kerfContour(doubled, 1)!)).toBeCloseTo(12 * 7, 9);
});
