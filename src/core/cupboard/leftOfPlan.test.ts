import { difference, type Geom, intersection, union } from "polyclip-ts";
import { describe, expect, test } from "vitest";
import { offcutsOf } from "../buying/offcuts.ts";
import { ringBox } from "../geometry/box.ts";
import { posePolygon } from "../geometry/pose.ts";
import { type Polygon, rectangleRing, solid } from "../geometry/ring.ts";
import { shapePolygon } from "../geometry/shape.ts";
import type { LayPiece, LayPlan, LayProblem, RollStock, StockPlacement } from "../lay/problem/layProblem.ts";
import { seededRng } from "../lay/search/rng.ts";
import { flawPolygon } from "../materials/stock.ts";
import { leftOfPlan } from "./leftOfPlan.ts";
import { clothBox, leftOutlines } from "./leftOutlines.ts";

const roll: RollStock = { kind: "roll", id: "roll", width: 1000, length: null, flaws: [] };
const upright = [{ turnDeg: 0, mirrored: false }];

function piece(id: string, outline: Polygon): LayPiece {
  return { id, count: 1, outline, orientations: upright, freeTurn: false };
}

function problemOf(part: Partial<LayProblem>): LayProblem {
  return { materialId: "canvas", pieces: [], stocks: [roll], gap: 0, margin: 0, pinned: [], ...part };
}

function planOf(placements: readonly StockPlacement[], usedLength: number, stockId = "roll"): LayPlan {
  const uses = [{ stockId, usedLength, bound: null }];
  return { materialId: "canvas", placements, unplaced: [], uses, evaluations: 0, seed: 1 };
}

const at = (pieceId: string, x: number, y: number, stockId = "roll"): StockPlacement => {
  return { stockId, pieceId, copy: 0, x, y, turnDeg: 0, mirrored: false };
};
const square = (along: number, across: number): Polygon => solid(rectangleRing(0, 0, along, across));

describe("what a plan leaves", () => {
  test("beside a rectangle: the strip above it, and what the shop's step adds behind it, as one outline", () => {
    const problem = problemOf({ pieces: [piece("body", square(500, 700))] });
    const [left, ...more] = leftOfPlan(problem, planOf([at("body", 0, 0)], 500), () => 600);
    expect(more).toEqual([]);
    const { shape } = left!.stock as { shape: { contour: { vertices: Float64Array } } };
    const corners = Array.from({ length: 6 }, (_, i) => [...shape.contour.vertices.slice(3 * i, 3 * i + 2)]);
    expect(corners.sort()).toEqual(
      [
        [0, 1000],
        [0, 700],
        [500, 0],
        [500, 700],
        [600, 0],
        [600, 1000],
      ].sort(),
    );
  });

  test("the end of a measured roll stays a roll, and what it was cut from is a leftover apart", () => {
    const long = { ...roll, length: 2000, flaws: [solid(rectangleRing(1500, 100, 20, 30))] };
    const problem = problemOf({ stocks: [long], pieces: [piece("body", square(500, 700))] });
    const left = leftOfPlan(problem, planOf([at("body", 0, 0)], 500), () => Number.NaN);
    expect(left.map(({ stock }) => stock)).toEqual([
      { kind: "remnant", id: "", shape: { kind: "rectangle", along: 500, across: 300 }, flaws: [], count: 1 },
      {
        ...{ kind: "roll", id: "", width: 1000, selvedge: 0, length: 1500, squaring: 0 },
        flaws: [{ x: 1000, y: 100, shape: { kind: "rectangle", along: 20, across: 30 } }],
      },
    ]);
  });

  test("cut out of the middle, a piece leaves a hole that is a flaw of the leftover", () => {
    const remnant = { kind: "remnant", id: "K7M2P", outline: square(600, 600), flaws: [] } as const;
    const problem = problemOf({ stocks: [remnant], pieces: [piece("tab", square(100, 80))] });
    const [left] = leftOfPlan(problem, planOf([at("tab", 250, 260, "K7M2P")], 600, "K7M2P"), () => 0);
    expect(left).toMatchObject({ stockId: "K7M2P", stock: { shape: { along: 600, across: 600 } } });
    expect(left!.stock.flaws).toEqual([{ x: 250, y: 260, shape: { kind: "rectangle", along: 100, across: 80 } }]);
  });

  test("folded cloth leaves one piece over the fold, opened flat; cloth in layers leaves each layer's", () => {
    const pieces = [piece("half", square(500, 400))];
    const spread = { layers: 2, faces: "together", folded: true, facesAlike: false, asked: [] } as const;
    const folded = problemOf({ pieces, spread, stocks: [{ ...roll, width: 500, folded: true }] });
    const opened = leftOfPlan(folded, planOf([at("half", 0, 100)], 500), () => 500);
    expect(opened.map(({ stock }) => stock)).toMatchObject([{ shape: { along: 500, across: 200 } }]);
    const layers = problemOf({ pieces, spread: { ...spread, layers: 4, faces: "up", folded: false } });
    const left = leftOfPlan(layers, planOf([at("half", 0, 0)], 500), () => 500);
    expect(left.map(({ stock }) => stock)).toMatchObject(
      Array.from({ length: 4 }, () => ({ shape: { along: 500, across: 600 } })),
    );
  });

  test("nothing that was not cut is told, and no sliver", () => {
    const problem = problemOf({ pieces: [piece("body", square(500, 950))] });
    expect(leftOfPlan(problem, planOf([at("body", 0, 0)], 500), () => 500)).toEqual([]);
    expect(leftOfPlan(problem, planOf([], 0), () => 500)).toEqual([]);
  });
});

// Against polyclip-ts, a polygon library that shares no code with ours.
test("leftovers lie on the cloth, off the pieces and off each other, and hold all that is wide enough", () => {
  const geom = ({ outer, holes }: Polygon): Geom => [
    [outer, ...holes].map((ring) => {
      return Array.from({ length: ring.length / 2 }, (_, i): [number, number] => [ring[2 * i]!, ring[2 * i + 1]!]);
    }),
  ];
  const area = (polygons: ReturnType<typeof union>): number =>
    polygons.flat().reduce((sum, ring) => {
      const twice = ring.reduce((total, [x, y], i) => {
        const [nextX, nextY] = ring[(i + 1) % ring.length]!;
        return total + x * nextY - nextX * y;
      }, 0);
      return sum + twice / 2;
    }, 0);
  let found = 0;
  let rectangles = 0;
  for (let seed = 1; seed <= 40; seed++) {
    const rng = seededRng(seed);
    const cloth = clothBox(0, 0, 400 + rng.below(1200), 300 + rng.below(1200));
    const pieces = Array.from({ length: 1 + rng.below(8) }, () => {
      const points = 3 + rng.below(12);
      const [wide, tall] = [40 + rng.below(300), 40 + rng.below(300)];
      const ring = Array.from({ length: points }, (_, i) => {
        const angle = (2 * Math.PI * i) / points;
        return [wide * Math.cos(angle), tall * Math.sin(angle)];
      });
      const pose = {
        x: rng.below(1600),
        y: rng.below(1500),
        turnDeg: rng.below(360),
        mirrored: rng.below(2) === 1,
      };
      return posePolygon(solid(Float64Array.from(ring.flat())), pose);
    });
    const left = leftOutlines(cloth, pieces).map(({ x, y, shape, flaws }) => {
      const holes = flaws.map(flawPolygon).map(({ outer }) => outer);
      const moved = [shapePolygon(shape).outer, ...holes].map((ring) =>
        ring.map((value, i) => value + (i % 2 === 0 ? x : y)),
      );
      const [outer, ...rest] = moved;
      return { outer: outer!, holes: rest };
    });
    found += left.length;
    const cut = union(geom(pieces[0]!), ...pieces.slice(1).map(geom));
    const free = difference(geom(cloth), cut);
    for (const [i, one] of left.entries()) {
      // An outline is true to 0.1 mm along its edges.
      expect(area(difference(geom(one), free)), `seed ${seed}`).toBeLessThan(0.1 * roundOf(one));
      for (const other of left.slice(i + 1))
        expect(area(intersection(geom(one), geom(other)))).toBeLessThan(0.1 * roundOf(one));
    }
    // Every rectangle that the offcuts tell of is on one of them.
    const { maxX, maxY } = ringBox(cloth.outer);
    for (const { x, y, along, across } of offcutsOf({ length: maxX, width: maxY, outline: null }, pieces)) {
      const rectangle = solid(rectangleRing(x, y, along, across));
      const least = Math.min(...left.map((one) => area(difference(geom(rectangle), geom(one)))));
      expect(least, `seed ${seed}`).toBeLessThan(0.2 * (along + across));
      rectangles++;
    }
  }
  expect(found).toBeGreaterThan(40);
  expect(rectangles).toBeGreaterThan(80);
});

/** Once round an outline and its holes, mm. */
function roundOf({ outer, holes }: Polygon): number {
  const lengths = [outer, ...holes].flatMap((ring) =>
    Array.from({ length: ring.length / 2 }, (_, i) => {
      const next = (2 * i + 2) % ring.length;
      return Math.hypot(ring[next]! - ring[2 * i]!, ring[next + 1]! - ring[2 * i + 1]!);
    }),
  );
  return lengths.reduce((sum, length) => sum + length, 0);
}
