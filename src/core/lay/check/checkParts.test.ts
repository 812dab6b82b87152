// The checker's measures on figures that can be worked out by hand, to the edge of what they allow.
import { expect, test } from "vitest";
import type { Pose } from "../../geometry/pose.ts";
import { type Polygon, rectangleRing, solid } from "../../geometry/ring.ts";
import type { RollStock, Stock } from "../problem/layProblem.ts";
import { checkPairs } from "./checkPairs.ts";
import { checkStock, measuredLength } from "./checkStock.ts";
import { type CheckedCopy, laidOutline } from "./laidOutline.ts";
import { outlineDistance } from "./outlineDistance.ts";
import { overlapArea } from "./overlapArea.ts";

const AT_HOME: Pose = { x: 0, y: 0, turnDeg: 0, mirrored: false };
const box = (x: number, y: number, along: number, across: number) =>
  laidOutline(solid(rectangleRing(x, y, along, across)), AT_HOME);
const ROLL: RollStock = { kind: "roll", id: "roll", width: 100, length: 200, flaws: [] };

function copy(polygon: Polygon, pose: Partial<Pose> = {}, stock: Stock = ROLL, index = 0): CheckedCopy {
  const placement = { pieceId: "piece", copy: index, stockId: stock.id, ...AT_HOME, ...pose };
  return { path: `placements[${index}]`, placement, stock, outline: laidOutline(polygon, placement) };
}
const square = solid(rectangleRing(0, 0, 10, 10));

test("an outline's area is its rings', holes taken off, wherever it lies and however it is turned", () => {
  const framed: Polygon = { outer: rectangleRing(0, 0, 40, 30), holes: [rectangleRing(10, 10, 20, 5)] };
  for (const turnDeg of [0, 90, 180, 270, -90, 450, 37])
    for (const mirrored of [false, true]) {
      const laid = laidOutline(framed, { x: 1e6, y: -1e6, turnDeg, mirrored });
      expect(laid.area).toBeCloseTo(40 * 30 - 20 * 5, 6);
    }
  // A triangle whose first corner is not where the frame's is.
  expect(laidOutline(solid(Float64Array.of(5, 7, 25, 7, 5, 37)), AT_HOME).area).toBe(300);
});

test("quarter turns are exact, counter-clockwise, mirrored first", () => {
  const corner = solid(Float64Array.of(0, 0, 30, 0, 0, 20));
  const extents = (turnDeg: number, mirrored = false) => {
    const { minX, minY, maxX, maxY } = laidOutline(corner, { x: 100, y: 50, turnDeg, mirrored });
    return [minX, minY, maxX, maxY];
  };
  expect(extents(0)).toEqual([100, 50, 130, 70]);
  expect(extents(90)).toEqual([80, 50, 100, 80]);
  expect(extents(180)).toEqual([70, 30, 100, 50]);
  expect(extents(270)).toEqual([100, 20, 120, 50]);
  expect(extents(-90)).toEqual(extents(270));
  for (const turnDeg of [450, 810, -270, -630]) expect(extents(turnDeg)).toEqual(extents(90));
  for (const turnDeg of [360, 720, -360, -1080]) expect(extents(turnDeg)).toEqual(extents(0));
  expect(extents(0, true)).toEqual([70, 50, 100, 70]);
  const half = Math.SQRT1_2;
  const [minX, minY, maxX, maxY] = extents(45);
  expect(minX).toBeCloseTo(100 - 20 * half, 9);
  expect([minY, maxX]).toEqual([50, expect.closeTo(100 + 30 * half, 9)]);
  expect(maxY).toBeCloseTo(50 + 30 * half, 9);
});

test("distances: side to side, corner to side, corner to corner, crossing, beyond reach", () => {
  expect(outlineDistance(box(0, 0, 10, 10), box(13, 2, 10, 5), 50)).toBe(3);
  expect(outlineDistance(box(0, 0, 10, 10), box(2, 13, 5, 10), 50)).toBe(3);
  expect(outlineDistance(box(0, 0, 10, 10), box(13, 14, 5, 5), 50)).toBe(5);
  expect(outlineDistance(box(13, 14, 5, 5), box(0, 0, 10, 10), 50)).toBe(5);
  expect(outlineDistance(box(0, 0, 10, 10), box(5, -5, 3, 20), 50)).toBe(0);
  expect(outlineDistance(box(0, 0, 10, 10), box(40, 0, 10, 10), 20)).toBe(20);
  expect(outlineDistance(box(0, 0, 10, 10), box(0, 40, 10, 10), 20)).toBe(20);
  // One inside another is as far as its edges are.
  expect(outlineDistance(box(0, 0, 100, 100), box(40, 45, 10, 10), 90)).toBe(40);
  // A corner above the middle of a slope: along (3, 4)/5 from it.
  const slope = laidOutline(solid(Float64Array.of(0, 0, 40, -30, 40, 0)), AT_HOME);
  const tip = laidOutline(solid(Float64Array.of(17, -19, 10, -30, 5, -30)), AT_HOME);
  expect(outlineDistance(tip, slope, 50)).toBeCloseTo(Math.abs(17 * 30 - 19 * 40) / 50, 9);
});

test("distances of outlines smaller than a millimetre, of edges one long, of corners drawn twice", () => {
  const large = box(-2, -1, 2, 2);
  const small = box(0.1, -0.05, 0.1, 0.1);
  expect(outlineDistance(small, large, 50)).toBeCloseTo(0.1, 12);
  expect(outlineDistance(large, small, 50)).toBeCloseTo(0.1, 12);
  const above = box(-1.05, 1.1, 0.1, 0.1);
  expect(outlineDistance(above, large, 50)).toBeCloseTo(0.1, 12);
  expect(outlineDistance(large, above, 50)).toBeCloseTo(0.1, 12);
  const tip = laidOutline(solid(Float64Array.of(0.9, 1.5, 1, 3, 0.8, 3)), AT_HOME);
  expect(outlineDistance(tip, box(0, 0, 1, 1), 50)).toBe(0.5);
  const doubled = laidOutline(solid(Float64Array.of(13, 14, 13, 14, 18, 14, 18, 19)), AT_HOME);
  expect(outlineDistance(box(0, 0, 10, 10), doubled, 50)).toBe(5);
});

test("common area: none where they touch, all where one holds the other, halves, crossing slopes", () => {
  expect(overlapArea(box(0, 0, 10, 10), box(10, 0, 10, 10))).toBe(0);
  expect(overlapArea(box(0, 0, 10, 10), box(0, 10, 10, 10))).toBe(0);
  expect(overlapArea(box(0, 0, 10, 10), box(2, 3, 4, 5))).toBe(20);
  expect(overlapArea(box(0, 0, 10, 10), box(5, 5, 10, 10))).toBe(25);
  expect(overlapArea(box(5, 5, 10, 10), box(0, 0, 10, 10))).toBe(25);
  const up = laidOutline(solid(Float64Array.of(0, 0, 20, 0, 0, 20)), AT_HOME);
  const down = laidOutline(solid(Float64Array.of(0, 0, 20, 0, 20, 20)), AT_HOME);
  expect(overlapArea(up, down)).toBeCloseTo(100, 9);
  // Slopes that begin and end anywhere, met by an upright nearer to either end.
  for (const x of [-30, 0, 7]) {
    const slope = laidOutline(solid(Float64Array.of(0, 0, 20, 0, 0, 20)), { ...AT_HOME, x });
    expect(overlapArea(slope, box(x - 1, -1, 30, 30))).toBeCloseTo(200, 9);
    expect(overlapArea(slope, box(x, 0, 4, 30))).toBeCloseTo(4 * 18, 9);
    expect(overlapArea(slope, box(x + 14, 0, 4, 30))).toBeCloseTo(4 * 4, 9);
    expect(overlapArea(slope, box(x + 3, 2, 4, 4))).toBeCloseTo(16, 9);
  }
});

test("pieces side by side: touching is no overlap, the gap itself is far enough, a little less is not", () => {
  const pair = (x: number, y: number, gap: number) =>
    checkPairs([copy(square), copy(square, { x, y }, ROLL, 1)], gap).map(({ code }) => code);
  expect(pair(10, 0, 0)).toEqual([]);
  expect(pair(0, 10, 0)).toEqual([]);
  expect(pair(9.9, 0, 0)).toEqual(["plan-overlap"]);
  expect(pair(0, -9.9, 0)).toEqual(["plan-overlap"]);
  expect(pair(13, 0, 3)).toEqual([]);
  expect(pair(12.9, 0, 3)).toEqual(["plan-too-close"]);
  expect(pair(0, 12.9, 3)).toEqual(["plan-too-close"]);
  expect(pair(12, 12, 3)).toEqual(["plan-too-close"]);
  expect(pair(12.2, 12.2, 3)).toEqual([]);
  expect(checkPairs([copy(square), copy(square, { x: 12.9 }, ROLL, 1)], 3)).toMatchObject([
    { path: "placements[1]", copy: 1, other: { copy: 0 }, leastMm: 3, distanceMm: expect.closeTo(2.9, 9) },
  ]);
});

test("pieces in any order, anywhere: before the origin, far from it", () => {
  const found = (places: readonly (readonly [number, number])[], gap = 0) =>
    checkPairs(
      places.map(([x, y], i) => copy(square, { x, y }, ROLL, i)),
      gap,
    ).map(({ code }) => code);
  for (const xs of [
    [0, 50, 5],
    [5, 50, 0],
    [50, 0, 5],
  ])
    expect(found(xs.map((x) => [x, 0] as const))).toEqual(["plan-overlap"]);
  for (const far of [-1e6, -50, 1e6]) {
    expect(
      found([
        [far, 0],
        [far + 5, 0],
      ]),
    ).toEqual(["plan-overlap"]);
    expect(
      found([
        [0, far],
        [0, far + 5],
      ]),
    ).toEqual(["plan-overlap"]);
    expect(
      found(
        [
          [far, 0],
          [far + 12.9, 0],
        ],
        3,
      ),
    ).toEqual(["plan-too-close"]);
    expect(
      found(
        [
          [0, far],
          [0, far + 12.9],
        ],
        3,
      ),
    ).toEqual(["plan-too-close"]);
  }
});

test("to the edge of what is allowed: a millionth of the area, of the diagonal, and no more", () => {
  const large = solid(rectangleRing(0, 0, 1000, 1000));
  const pair = (polygon: Polygon, x: number, y: number, gap: number) =>
    checkPairs([copy(polygon), copy(polygon, { x, y }, ROLL, 1)], gap).map(({ code }) => code);
  // One square millimetre of a square metre.
  expect(pair(large, 999, 999, 0)).toEqual([]);
  expect(pair(large, 999, 998, 0)).toEqual(["plan-overlap"]);
  // A strip so narrow that its length tells: 0.001 of 100 mm², ten times what is allowed.
  expect(pair(square, 9.9999, 0, 0)).toEqual(["plan-overlap"]);
  expect(pair(square, 0, 9.9999, 0)).toEqual(["plan-overlap"]);
  expect(pair(square, 9.999999, 0, 0)).toEqual([]);
  // 50 mm from corner to corner, 0.00005 mm less than the gap.
  const oblong = solid(rectangleRing(-30, 0, 30, 40));
  const beside = (x: number) =>
    checkPairs([copy(oblong), copy(solid(rectangleRing(0, 0, 60, 80)), { x, y: -9 }, ROLL, 1)], 2).map(
      ({ code }) => code,
    );
  expect(beside(2 - 1e-6 * 50)).toEqual([]);
  expect(beside(2 - 1.1e-6 * 50)).toEqual(["plan-too-close"]);
  expect(pair(square, 13, 14, 5)).toEqual([]);
});

test("pieces that reach into each other's box without meeting are judged by their edges", () => {
  const corner = solid(Float64Array.of(0, 0, 20, 0, 0, 20));
  const turned = (shift: number, gap: number) =>
    checkPairs([copy(corner), copy(corner, { x: 20 + shift, y: 20 + shift, turnDeg: 180 }, ROLL, 1)], gap);
  expect(turned(0.01, 0)).toEqual([]);
  // Apart by the square root of two times the shift.
  expect(turned(0.4, 0.5)).toEqual([]);
  expect(turned(0.3, 0.5)).toMatchObject([
    { code: "plan-too-close", distanceMm: expect.closeTo(0.3 * Math.SQRT2, 9) },
  ]);
  expect(turned(-0.5, 0)).toMatchObject([{ code: "plan-overlap" }]);
});

test("of more clashes than two hundred the first two hundred are told", () => {
  const heap = Array.from({ length: 30 }, (_, i) => copy(square, {}, ROLL, i));
  expect(checkPairs(heap, 0)).toHaveLength(200);
  expect(checkPairs(heap.slice(0, 20), 0)).toHaveLength((20 * 19) / 2);
});

test("a roll's four edges: on them is inside, beyond is out, and the margin counts", () => {
  const codes = (x: number, y: number, margin = 0, stock: RollStock = ROLL) =>
    checkStock(stock, [copy(square, { x, y }, stock)], 0, margin).map(({ code }) => code);
  for (const [x, y] of [
    [0, 0],
    [190, 90],
  ] as const)
    expect(codes(x, y)).toEqual([]);
  for (const [x, y] of [
    [-0.1, 50],
    [190.1, 50],
    [50, -0.1],
    [50, 90.1],
  ] as const) {
    expect(codes(x, y)).toEqual(["plan-outside-stock"]);
    // The same way in from the edge: inside, and nearer than a margin of 2 mm.
    expect(codes(x < 0 ? 1.9 : x > 100 ? 188.1 : x, y < 0 ? 1.9 : y > 80 ? 88.1 : y, 2)).toEqual([
      "plan-too-near-edge",
    ]);
  }
  expect(codes(2, 2, 2)).toEqual([]);
  expect(codes(500, 50, 0, { ...ROLL, length: null })).toEqual([]);
  expect(checkStock(ROLL, [copy(square, { x: 195 })], 0, 0)).toMatchObject([{ areaMm2: expect.closeTo(50, 6) }]);
  expect(checkStock(ROLL, [copy(square, { x: -4 })], 0, 0)).toMatchObject([{ areaMm2: expect.closeTo(40, 6) }]);
});

test("a piece on the fold has no edge there, and three others", () => {
  const at = (x: number, y: number) =>
    checkStock(ROLL, [copy(square, { x, y })], 0, 2, new Set(["piece"])).map(({ code }) => code);
  expect(at(50, 0)).toEqual([]);
  expect(at(1, 0)).toEqual(["plan-too-near-edge"]);
  expect(at(50, 89)).toEqual(["plan-too-near-edge"]);
  expect(at(189, 0)).toEqual(["plan-too-near-edge"]);
});

test("a leftover of any outline: its edge with and without a margin", () => {
  const left: Stock = {
    kind: "remnant",
    id: "left",
    outline: solid(Float64Array.of(0, 0, 60, 0, 0, 60)),
    flaws: [],
  };
  const codes = (x: number, y: number, margin: number) =>
    checkStock(left, [copy(square, { x, y }, left)], 0, margin).map(({ code }) => code);
  expect(codes(20, 20, 0)).toEqual([]);
  expect(codes(21, 21, 0)).toEqual(["plan-outside-stock"]);
  expect(codes(20, 20, 1)).toEqual(["plan-too-near-edge"]);
  expect(codes(18, 18, 2)).toEqual([]);
  expect(codes(1.5, 10, 2)).toEqual(["plan-too-near-edge"]);
});

test("flaws: touching is allowed without a gap, the gap itself is far enough, on them is not", () => {
  const flawed: RollStock = { ...ROLL, flaws: [solid(rectangleRing(50, 50, 20, 20))] };
  const codes = (x: number, y: number, gap: number) =>
    checkStock(flawed, [copy(square, { x, y }, flawed)], gap, 0).map(({ code }) => code);
  for (const [x, y] of [
    [40, 55],
    [70, 55],
    [55, 40],
    [55, 70],
  ] as const) {
    expect(codes(x, y, 0)).toEqual([]);
    expect(codes(x, y, 3)).toEqual(["plan-too-near-flaw"]);
  }
  expect(codes(37, 55, 3)).toEqual([]);
  expect(codes(55, 73, 3)).toEqual([]);
  expect(codes(37.1, 55, 3)).toEqual(["plan-too-near-flaw"]);
  expect(codes(41, 55, 0)).toEqual(["plan-on-flaw"]);
  expect(codes(55, 55, 3)).toEqual(["plan-on-flaw"]);
  expect(checkStock(flawed, [copy(square, { x: 41, y: 55 }, flawed)], 0, 0)).toMatchObject([
    { flaw: 0, areaMm2: 10 },
  ]);
});

test("length is counted from the cut end, or a leftover's least x, with the margin", () => {
  const copies = [copy(square, { x: 30 }), copy(square, { x: 12 })];
  expect(measuredLength(ROLL, copies, 2)).toBe(42);
  expect(measuredLength(ROLL, [], 2)).toBe(0);
  const left: Stock = { kind: "remnant", id: "left", outline: solid(rectangleRing(5, 0, 90, 90)), flaws: [] };
  expect(measuredLength(left, copies, 0)).toBe(35);
});

test("the stock's edge and flaws to the edge of what is allowed", () => {
  const oblong = solid(rectangleRing(0, 0, 30, 40));
  const hair = 1e-6 * 50;
  const onRoll = (place: Partial<Pose>, margin = 0) =>
    checkStock(ROLL, [copy(oblong, place)], 0, margin).map(({ code }) => code);
  expect([onRoll({ x: -hair }), onRoll({ y: -hair })]).toEqual([[], []]);
  expect([onRoll({ x: -1.1 * hair }), onRoll({ y: -1.1 * hair })].flat()).toEqual(
    Array(2).fill("plan-outside-stock"),
  );
  expect(onRoll({ x: 2 - hair, y: 9 }, 2)).toEqual([]);
  expect(onRoll({ x: 2 - 1.1 * hair, y: 9 }, 2)).toEqual(["plan-too-near-edge"]);
  // A leftover with a bite of one square millimetre out of what a piece of a square metre covers, and of two.
  const bitten = (bite: number): Stock => ({
    ...{ kind: "remnant", id: "left", flaws: [] },
    outline: { outer: rectangleRing(0, 0, 2000, 2000), holes: [rectangleRing(500, 500, bite, 1)] },
  });
  const large = solid(rectangleRing(0, 0, 1000, 1000));
  const onLeft = (stock: Stock, polygon: Polygon, place: Partial<Pose>, margin = 0, gap = 0) =>
    checkStock(stock, [copy(polygon, place, stock)], gap, margin).map(({ code }) => code);
  expect(onLeft(bitten(1), large, {})).toEqual([]);
  expect(onLeft(bitten(2), large, {})).toEqual(["plan-outside-stock"]);
  expect(onLeft(bitten(1), oblong, { x: 2 - hair, y: 9 }, 2)).toEqual([]);
  expect(onLeft(bitten(1), oblong, { x: 2 - 1.1 * hair, y: 9 }, 2)).toEqual(["plan-too-near-edge"]);
  const flawed = (flaw: Polygon): Stock => ({ ...ROLL, width: 5000, length: null, flaws: [flaw] });
  expect(onLeft(flawed(large), large, { x: 999, y: 999 })).toEqual([]);
  expect(onLeft(flawed(large), large, { x: 999, y: 998 })).toEqual(["plan-on-flaw"]);
  const spot = solid(rectangleRing(0, 0, 30, 40));
  expect(onLeft(flawed(spot), oblong, { x: 33, y: 44 }, 0, 5)).toEqual([]);
  expect(onLeft(flawed(spot), oblong, { x: 33, y: 43.9 }, 0, 5)).toEqual(["plan-too-near-flaw"]);
  expect(onLeft(flawed(spot), oblong, { x: 30.3, y: 0 }, 0, 0.5)).toEqual(["plan-too-near-flaw"]);
  const before = solid(rectangleRing(-30, 0, 30, 40));
  expect(onLeft(flawed(before), oblong, { x: 2 - hair, y: 9 }, 0, 2)).toEqual([]);
  expect(onLeft(flawed(before), oblong, { x: 2 - 1.1 * hair, y: 9 }, 0, 2)).toEqual(["plan-too-near-flaw"]);
});
