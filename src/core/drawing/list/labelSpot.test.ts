import fc from "fast-check";
import { expect, test } from "vitest";
import { type Box, ringBox } from "../../geometry/box.ts";
import { type Ring, rectangleRing, reversedRing } from "../../geometry/ring.ts";
import { type LabelSpot, labelSpot, segmentMeetsBox } from "./labelSpot.ts";

/** Cuts the segment down to the box side by side (Liang and Barsky, 1984): what is left is in the box. */
function clipped(x0: number, y0: number, x1: number, y1: number, box: Box): boolean {
  const [dx, dy] = [x1 - x0, y1 - y0];
  let [from, to] = [0, 1];
  for (const [step, room] of [
    [-dx, x0 - box.minX],
    [dx, box.maxX - x0],
    [-dy, y0 - box.minY],
    [dy, box.maxY - y0],
  ] as const) {
    if (step === 0 && room < 0) return false;
    if (step < 0) from = Math.max(from, room / step);
    if (step > 0) to = Math.min(to, room / step);
  }
  return from <= to + 1e-12;
}

const BOX = { minX: -2, minY: -1, maxX: 3, maxY: 4 };

test("a segment meets a box where something of it is left in the box", () => {
  const at = fc.integer({ min: -8, max: 8 });
  fc.assert(
    fc.property(at, at, at, at, (x0, y0, x1, y1) => {
      expect(segmentMeetsBox(x0, y0, x1, y1, BOX)).toBe(clipped(x0, y0, x1, y1, BOX));
    }),
    { numRuns: 2000 },
  );
});

test("a segment meets a box in a corner, along an edge, from edge to edge, and as a point", () => {
  const meets = (...at: readonly [number, number, number, number]) => segmentMeetsBox(...at, BOX);
  expect(meets(-3, 0, -1, -2)).toBe(true);
  expect(meets(-3, -0.01, -1, -2.01)).toBe(false);
  expect(meets(-9, 4, 9, 4)).toBe(true);
  expect(meets(-9, 4.01, 9, 4.01)).toBe(false);
  expect(meets(-2, -9, -2, 9)).toBe(true);
  expect(meets(3, 4, 8, 8)).toBe(true);
  expect(meets(0, 0, 0, 0)).toBe(true);
  expect(meets(3.01, 0, 3.01, 0)).toBe(false);
});

/** Whether a point is inside rings by the even-odd rule, by a ray to the right. */
function inside(rings: readonly Ring[], x: number, y: number): boolean {
  let isIn = false;
  for (const ring of rings)
    for (let i = 0; i < ring.length; i += 2) {
      const j = (i + 2) % ring.length;
      const [ax, ay, bx, by] = [ring[i]!, ring[i + 1]!, ring[j]!, ring[j + 1]!];
      if (ay > y !== by > y && x < ax + ((bx - ax) * (y - ay)) / (by - ay)) isIn = !isIn;
    }
  return isIn;
}

const blockOf = ({ x, y }: LabelSpot, width: number, height: number): Box => ({
  minX: x - width / 2,
  maxX: x + width / 2,
  minY: y - height / 2,
  maxY: y + height / 2,
});

/** An L, 100 wide and 80 high, its arms 30 wide: the corner is at the lower left. */
const L = Float64Array.of(0, 0, 100, 0, 100, 30, 30, 30, 30, 80, 0, 80);

test("the block lies in the outline, however wide or high it is asked for; what does not fit has no spot", () => {
  for (let width = 4; width <= 110; width += 3)
    for (let height = 4; height <= 90; height += 3) {
      const spot = labelSpot([L], [], width, height);
      const fits = (width <= 100 && height <= 30) || (width <= 30 && height <= 80);
      if (!fits) {
        expect(spot, `${width} × ${height}`).toBeNull();
        continue;
      }
      // Seventeen levels are looked at, so a block nearly as high as an arm may be missed, a low one not.
      if (height <= 24 || width <= 30) expect(spot, `${width} × ${height}`).not.toBeNull();
      if (spot === null) continue;
      const { minX, minY, maxX, maxY } = blockOf(spot, width, height);
      for (const x of [minX + 1e-5, spot.x, maxX - 1e-5])
        for (const y of [minY + 1e-5, spot.y, maxY - 1e-5])
          expect(inside([L], x, y), `${width} × ${height} at ${x} ${y}`).toBe(true);
      expect(spot.width).toBe(spot.y - height / 2 < 30 && spot.y + height / 2 <= 30 + 1e-5 ? 100 : 30);
      expect(spot.crossed).toBe(false);
    }
});

test("in the middle where there is room; as near to it as the outline leaves it else", () => {
  const square = rectangleRing(10, 20, 60, 40);
  expect(labelSpot([square], [], 60, 40)).toEqual({ x: 40, y: 40, width: 60, crossed: false });
  expect(labelSpot([square], [], 20, 5)).toEqual({ x: 40, y: 40, width: 60, crossed: false });
  expect(labelSpot([square], [], 60.01, 5)).toBeNull();
  expect(labelSpot([square], [], 5, 40.01)).toBeNull();
  // A slot upward from the middle of the lower edge: the block goes beside it, to its very edge.
  const slotted = Float64Array.of(0, 0, 45, 0, 45, 90, 55, 90, 55, 0, 100, 0, 100, 100, 0, 100);
  expect(labelSpot([slotted], [], 20, 10)).toEqual({ x: 35, y: 50, width: 45, crossed: false });
  // A hole in the middle takes its room as well.
  const ring = [rectangleRing(0, 0, 100, 60), reversedRing(rectangleRing(40, 20, 20, 20))];
  const beside = labelSpot(ring, [], 30, 10)!;
  expect([beside.y, beside.width]).toEqual([30, 40]);
  expect(Math.abs(beside.x - 50)).toBe(25);
});

test("corners that lie on a level that is looked at count once", () => {
  const diamond = Float64Array.of(0, 50, 50, 0, 100, 50, 50, 100);
  for (const ring of [diamond, reversedRing(diamond)]) {
    const spot = labelSpot([ring], [], 40, 20)!;
    expect([spot.x, spot.y]).toEqual([50, 50]);
    // 10 mm above and below the middle the diamond is 80 wide.
    expect(spot.width).toBeCloseTo(80, 3);
  }
  const house = Float64Array.of(0, 0, 100, 0, 100, 50, 50, 100, 0, 50);
  expect(labelSpot([house], [], 60, 20)).toMatchObject({ x: 50, y: 50 });
  // A waist at a quarter of the block's height takes its room.
  const waisted = Float64Array.of(0, 0, 100, 0, 100, 44, 60, 45, 100, 46, 100, 100, 0, 100, 0, 46, 40, 45, 0, 44);
  const off = labelSpot([waisted], [], 60, 20)!;
  expect(off.y - 10 > 45 || off.y + 10 < 45).toBe(true);
});

test("a block goes where no line runs through it; where one runs everywhere, it stays in the middle and is called crossed", () => {
  const square = rectangleRing(0, 0, 80, 80);
  const level = Float64Array.of(-5, 40, 85, 40);
  const clear = labelSpot([square], [level], 30, 10)!;
  expect(clear.crossed).toBe(false);
  // The nearest of 17 levels, 4.375 apart, that is 5 away from the line: two levels off, up first or down.
  expect(Math.abs(clear.y - 40)).toBeCloseTo(8.75, 9);
  const bends = Float64Array.of(0, 0, 40, 40, 40, 80);
  expect(labelSpot([square], [bends], 79, 79)).toMatchObject({ crossed: true, x: 40, y: 40 });
  const upright = Float64Array.of(40, -1, 40, 81);
  expect(labelSpot([square], [Float64Array.of(1, 1, 2, 2), upright], 30, 10)).toMatchObject({
    crossed: true,
    x: 40,
    y: 40,
  });
});

test("lines a hair beside a block are not in its way, lines a hair within it are", () => {
  const square = rectangleRing(0, 0, 100, 100);
  // The block is 30 × 10 about the middle, (50, 50).
  const beside = (off: number) => [
    Float64Array.of(35 - off, 0, 35 - off, 100),
    Float64Array.of(65 + off, 0, 65 + off, 100),
    Float64Array.of(0, 45 - off, 100, 45 - off),
    Float64Array.of(0, 55 + off, 100, 55 + off),
  ];
  expect(labelSpot([square], beside(0.01), 30, 10)).toEqual({ x: 50, y: 50, width: 100, crossed: false });
  for (const line of beside(-0.01)) {
    const spot = labelSpot([square], [line], 30, 10)!;
    expect(spot.crossed || spot.x !== 50 || spot.y !== 50).toBe(true);
  }
});

test("a block keeps off bands over the outline, above and below them and beside them", () => {
  const square = rectangleRing(0, 0, 100, 100);
  for (const bands of [
    [{ minX: -10, maxX: 110, minY: 45, maxY: 55 }],
    [{ minX: 45, maxX: 55, minY: -10, maxY: 110 }],
    [
      { minX: 45, maxX: 55, minY: -10, maxY: 110 },
      { minX: -10, maxX: 110, minY: 45, maxY: 55 },
    ],
  ]) {
    const spot = labelSpot([square], [], 40, 10, bands)!;
    const block = blockOf(spot, 40, 10);
    for (const band of bands) {
      const apart =
        block.maxX <= band.minX || block.minX >= band.maxX || block.maxY < band.minY || block.minY > band.maxY;
      expect(apart, JSON.stringify([block, band])).toBe(true);
    }
    // No farther from the middle than it must be.
    expect(Math.min(Math.abs(spot.x - 50), Math.abs(spot.y - 50))).toBeLessThanOrEqual(25);
  }
  const beside = labelSpot([square], [], 40, 10, [{ minX: 30, maxX: 55, minY: 0, maxY: 100 }]);
  expect(beside).toEqual({ x: 75, y: 50, width: 45, crossed: false });
  expect(labelSpot([square], [], 46, 10, [{ minX: 30, maxX: 55, minY: 0, maxY: 100 }])).toBeNull();
  // One that reaches into the block's edge alone, above or below, moves it; one that ends short of it does not.
  for (const [low, high, isOff] of [
    [54.5, 56, true],
    [44, 45.5, true],
    [56.1, 60, false],
    [40, 43.9, false],
  ] as const) {
    const { y } = labelSpot([square], [], 40, 12, [{ minX: -10, maxX: 110, minY: low, maxY: high }])!;
    expect(y !== 50, `${low} to ${high}`).toBe(isOff);
    expect(y + 6 < low || y - 6 > high).toBe(true);
  }
  // A band beside the piece, or one that only comes near the block, takes no room.
  const away = [
    { minX: 101, maxX: 120, minY: 0, maxY: 100 },
    { minX: 0, maxX: 100, minY: 70, maxY: 80 },
  ];
  expect(labelSpot([square], [], 100, 10, away)).toEqual({ x: 50, y: 50, width: 100, crossed: false });
});

test("a block in any triangle lies in it", () => {
  const at = fc.integer({ min: -50, max: 50 });
  fc.assert(
    fc.property(at, at, at, at, at, at, (ax, ay, bx, by, cx, cy) => {
      const ring = Float64Array.of(ax, ay, bx, by, cx, cy);
      const box = ringBox(ring);
      const [width, height] = [(box.maxX - box.minX) / 4, (box.maxY - box.minY) / 6];
      if (width < 1 || height < 1) return;
      const spot = labelSpot([ring], [], width, height);
      if (spot === null) return;
      const { minX, minY, maxX, maxY } = blockOf(spot, width, height);
      for (const x of [minX + 1e-4, maxX - 1e-4])
        for (const y of [minY + 1e-4, maxY - 1e-4]) expect(inside([ring], x, y)).toBe(true);
      expect(spot.width).toBeGreaterThanOrEqual(width);
    }),
    { numRuns: 300 },
  );
});
