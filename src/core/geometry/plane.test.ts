// Maps, boxes, poses and rings: figures that can be worked out in the head.
import { expect, test } from "vitest";
import { areaFactor, mapDirection, mapPoint, SAME, scaling, shift, thenAffine, turning } from "./affine.ts";
import { type Box, boxesMeet, boxesOverlap, boxHolds, grownBox, isRectangle, joinedBox, ringBox } from "./box.ts";
import { convexParts } from "./convexParts.ts";
import { firstCrossing } from "./crossing.ts";
import { posePolygon, poseRing, turnCosSin } from "./pose.ts";
import { polygonArea, rectangleRing, reversedRing, signedArea } from "./ring.ts";

test("maps: first one, then the other; directions do not shift; areas grow by the factor", () => {
  const first = [2, 3, 5, 7, 11, 13] as const;
  const second = [17, 19, 23, 29, 31, 37] as const;
  expect(mapPoint(first, 3, 10)).toEqual([67, 92]);
  expect(mapDirection(first, 3, 10)).toEqual([56, 79]);
  expect(mapPoint(thenAffine(first, second), 1, 10)).toEqual(mapPoint(second, ...mapPoint(first, 1, 10)));
  expect(mapPoint(SAME, 4, 5)).toEqual([4, 5]);
  expect(mapPoint(scaling(2, 3), 4, 5)).toEqual([8, 15]);
  expect(mapPoint(scaling(2), 4, 5)).toEqual([8, 10]);
  expect(mapPoint(shift(2, 3), 4, 5)).toEqual([6, 8]);
  expect([areaFactor(first), areaFactor(scaling(2, -3))]).toEqual([-1, -6]);
  const [x, y] = mapPoint(turning(Math.PI / 6), 2, 0);
  expect([x, y]).toEqual([expect.closeTo(Math.sqrt(3), 12), expect.closeTo(1, 12)]);
  expect(mapPoint(turning(Math.PI / 2), 0, 1)[0]).toBeCloseTo(-1, 12);
});

test("boxes on every side: touching, apart, standing out by the slack", () => {
  const box = (minX: number, minY: number, maxX: number, maxY: number): Box => ({ minX, minY, maxX, maxY });
  const middle = box(10, 20, 30, 40);
  for (const [side, touching, apart, inside] of [
    ["left", box(0, 25, 10, 30), box(0, 25, 9, 30), box(0, 25, 11, 30)],
    ["right", box(30, 25, 50, 30), box(31, 25, 50, 30), box(29, 25, 50, 30)],
    ["below", box(15, 0, 20, 20), box(15, 0, 20, 19), box(15, 0, 20, 21)],
    ["above", box(15, 40, 20, 60), box(15, 41, 20, 60), box(15, 39, 20, 60)],
  ] as const) {
    expect([boxesMeet(middle, touching), boxesOverlap(middle, touching)], side).toEqual([true, false]);
    expect([boxesMeet(middle, apart), boxesOverlap(middle, apart)], side).toEqual([false, false]);
    expect([boxesMeet(middle, inside), boxesOverlap(middle, inside)], side).toEqual([true, true]);
  }
  for (const out of [box(8, 20, 30, 40), box(10, 18, 30, 40), box(10, 20, 32, 40), box(10, 20, 30, 42)])
    expect([boxHolds(middle, out, 2), boxHolds(middle, out, 1.9)]).toEqual([true, false]);
  expect(grownBox(middle, 3)).toEqual(box(7, 17, 33, 43));
  expect(joinedBox(middle, box(0, 25, 15, 60))).toEqual(box(0, 20, 30, 60));
  expect(ringBox(Float64Array.of(3, 9, -1, 4, 7, 5, 2, 11))).toEqual(box(-1, 4, 7, 11));
});

test("a rectangle has four corners on its box's and fills it, to the tolerance", () => {
  expect(isRectangle(rectangleRing(-5, 3, 7, 2))).toBe(true);
  expect(isRectangle(reversedRing(rectangleRing(-5, 3, 7, 2)))).toBe(true);
  expect(isRectangle(Float64Array.of(0, 0, 4, 0, 4, 3))).toBe(false);
  expect(isRectangle(Float64Array.of(0, 0, 4, 0, 4, 3, 0, 3, 0, 1))).toBe(false);
  // A bow tie on the same corners, corners beside the box's, one doubled.
  expect(isRectangle(Float64Array.of(0, 0, 4, 3, 4, 0, 0, 3))).toBe(false);
  expect(isRectangle(Float64Array.of(1, 0, 4, 0, 4, 3, 0, 3))).toBe(false);
  expect(isRectangle(Float64Array.of(0, 0, 4, 1, 4, 3, 0, 3))).toBe(false);
  expect(isRectangle(Float64Array.of(0, 0, 4, 0, 4, 3, 4, 3))).toBe(false);
  // Off by a hair of what is large: it would not tell in the area.
  expect(isRectangle(Float64Array.of(0, 0, 1000, 0, 1000, 1000, 1e-8, 1000))).toBe(false);
  const off = Float64Array.of(0, 0, 4, 0, 4, 3, 0.01, 3);
  expect([isRectangle(off), isRectangle(off, 0.01), isRectangle(off, 0.001)]).toEqual([false, true, false]);
});

test("turns are exact by quarters; a piece is mirrored, turned, shifted, and its outside stays an outside", () => {
  const quarters = [0, 90, 180, 270, 360, 450, -90, -180].map((turn) => [...turnCosSin(turn)].map((v) => v + 0));
  expect(quarters).toEqual([
    ...[
      [1, 0],
      [0, 1],
      [-1, 0],
      [0, -1],
      [1, 0],
      [0, 1],
      [0, -1],
      [-1, 0],
    ],
  ]);
  expect(turnCosSin(1)[1]).toBeCloseTo(Math.sin(Math.PI / 180), 12);
  const [c, s] = turnCosSin(-330);
  expect([c, s]).toEqual([expect.closeTo(Math.sqrt(3) / 2, 12), expect.closeTo(0.5, 12)]);
  const ring = Float64Array.of(0, 0, 4, 0, 0, 3);
  expect([...poseRing(ring, { x: 10, y: 20, turnDeg: 90, mirrored: false })]).toEqual([10, 20, 10, 24, 7, 20]);
  const over = poseRing(ring, { x: 10, y: 20, turnDeg: 0, mirrored: true });
  expect([...over]).toEqual([10, 23, 6, 20, 10, 20]);
  expect([signedArea(ring), signedArea(over)]).toEqual([6, 6]);
  const framed = {
    outer: rectangleRing(0, 0, 10, 10),
    holes: [rectangleRing(1, 1, 2, 3), rectangleRing(5, 5, 1, 1)],
  };
  expect(polygonArea(framed)).toBe(100 - 6 - 1);
  const laid = posePolygon(framed, { x: 100, y: 0, turnDeg: 180, mirrored: true });
  expect(polygonArea(laid)).toBe(93);
  expect(ringBox(laid.holes[0]!)).toEqual({ minX: 101, minY: -4, maxX: 103, maxY: -1 });
});

test("convex parts: as few as corners ask for, convex, and together the whole", () => {
  const isConvex = (ring: Float64Array): boolean => {
    const n = ring.length;
    for (let i = 0; i < n; i += 2) {
      const [ax, ay, bx, by] = [ring[i]!, ring[i + 1]!, ring[(i + 2) % n]!, ring[(i + 3) % n]!];
      const [cx, cy] = [ring[(i + 4) % n]!, ring[(i + 5) % n]!];
      if ((bx - ax) * (cy - by) - (by - ay) * (cx - bx) < 0) return false;
    }
    return true;
  };
  const parted = (outer: Float64Array, holes: Float64Array[] = []): number => {
    const parts = convexParts(outer, holes);
    expect(parts.every(isConvex)).toBe(true);
    expect(parts.every((part) => signedArea(part) > 0)).toBe(true);
    const area = parts.reduce((sum, part) => sum + signedArea(part), 0);
    expect(area).toBeCloseTo(polygonArea({ outer, holes }), 9);
    return parts.length;
  };
  expect(parted(rectangleRing(0, 0, 4, 3))).toBe(1);
  expect(parted(Float64Array.of(0, 0, 4, 0, 6, 2, 6, 5, 3, 7, 0, 5))).toBe(1);
  // Corners on a straight edge ask for none.
  expect(parted(Float64Array.of(0, 0, 2, 0, 4, 0, 4, 4, 2, 4, 0, 4))).toBe(1);
  expect(parted(Float64Array.of(0, 0, 4, 0, 4, 1, 1, 1, 1, 3, 0, 3))).toBe(2);
  expect(parted(Float64Array.of(0, 0, 6, 0, 6, 4, 4, 4, 4, 1, 2, 1, 2, 4, 0, 4))).toBe(3);
  expect(parted(rectangleRing(0, 0, 10, 10), [reversedRing(rectangleRing(3, 3, 4, 4))])).toBeLessThanOrEqual(8);
  const two = [reversedRing(rectangleRing(2, 2, 2, 2)), reversedRing(rectangleRing(6, 6, 2, 2))];
  expect(parted(rectangleRing(0, 0, 10, 10), two)).toBeLessThanOrEqual(16);
});

test("crossings: where, and of which edges; edges that only come near have none", () => {
  const crossing = (...points: number[]) => firstCrossing(Float64Array.from(points));
  expect(crossing(0, 0, 8, 0, 8, 6, 3, -3, 0, 6)).toEqual({
    first: 0,
    second: 2,
    x: expect.closeTo(4 + 2 / 3, 9),
    y: 0,
  });
  expect(crossing(0, 0, 4, 4, 4, 0, 1, 3)).toEqual({ first: 0, second: 2, x: 2, y: 2 });
  // The last edge touches the first's neighbour, a corner lies on an edge far round, edges lie on each other.
  expect(crossing(0, 0, 6, 0, 6, 6, 3, 6, 3, 0, 0, 6)).toEqual({ first: 0, second: 3, x: 3, y: 0 });
  expect(crossing(3, 0, 6, 6, 0, 6, 0, 0, 6, 0)).toMatchObject({ x: 3, y: 0 });
  expect(crossing(0, 0, 9, 0, 9, 5, 6, 5, 6, 0, 3, 0, 3, 5, 0, 5)).toMatchObject({ first: 0 });
  expect(crossing(2, 0, 6, 0, 6, 6, 2, 6, 2, -3)).not.toBeNull();
  expect(crossing(0, 0, 6, 0, 6, 6, 3, 6, 3, 0.001, 0, 6)).toBeNull();
  expect(crossing(0, 0, 6, 0, 6, 6, 5.999, 3, 0, 6)).toBeNull();
});
