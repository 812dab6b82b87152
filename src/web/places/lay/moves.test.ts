import { expect, test } from "vitest";
import { rectangleRing, solid } from "../../../core/geometry/ring.ts";
import type { LayPlan, LayProblem, StockPlacement } from "../../../core/lay/problem/layProblem.ts";
import { lieOfPlan, lyingNear } from "./lieOfPlan.ts";
import { keyOf, neighbourOf, placedBox, placeTroubles, snapped, turned } from "./moves.ts";

const problem: LayProblem = {
  materialId: "m",
  pieces: [
    {
      id: "strap",
      outline: solid(rectangleRing(0, 0, 700, 100)),
      count: 4,
      orientations: [
        { turnDeg: 0, mirrored: false },
        { turnDeg: 90, mirrored: false },
      ],
      freeTurn: false,
    },
  ],
  stocks: [{ kind: "roll", id: "r", width: 1070, length: null, flaws: [solid(rectangleRing(2000, 500, 30, 30))] }],
  gap: 0,
  margin: 0,
  pinned: [],
};
const at = (x: number, y: number, copy = 0, turnDeg = 0): StockPlacement => ({
  pieceId: "strap",
  copy,
  stockId: "r",
  x,
  y,
  turnDeg,
  mirrored: false,
});
const boxesOf = (placements: readonly StockPlacement[]) =>
  new Map(placements.map((placement) => [keyOf(placement), placedBox(problem, placement)] as const));
const codes = (placement: StockPlacement, others: StockPlacement[]) =>
  placeTroubles(problem, placement, others).map(({ code }) => code);

test("a good place has no trouble; overlap, bias, flaw and edge are told apart", () => {
  const others = [at(0, 0, 1), at(0, 100, 2)];
  expect(codes(at(0, 200), others)).toEqual([]);
  expect(codes(at(0, 150), others)).toEqual(["plan-overlap"]);
  expect(codes(at(800, 200, 0, 30), others)).toContain("plan-turn-not-allowed");
  expect(codes(at(1500, 480), others)).toEqual(["plan-on-flaw"]);
  expect(codes(at(0, 1000), others)).toEqual(["plan-outside-stock"]);
});

test("near a box lies what meets it within reach, on its own stock, but for itself", () => {
  const elsewhere = { ...at(0, 200, 3), stockId: "s" };
  const plan: LayPlan = {
    materialId: "m",
    placements: [at(0, 0, 0), at(0, 100, 1), at(900, 0, 2), elsewhere],
    unplaced: [],
    uses: [],
    evaluations: 0,
    seed: 0,
  };
  const lie = lieOfPlan(problem, plan);
  const near = (y: number, reach: number) =>
    lyingNear(lie, "r", placedBox(problem, at(0, y)), reach, "strap#0").map(({ key }) => key);
  expect(near(0, 0.01)).toEqual(["strap#1"]);
  expect(near(206, 4)).toEqual([]);
  expect(near(203, 4)).toEqual(["strap#1"]);
  expect(lieOfPlan(problem, plan)).toBe(lie);
});

test("edges snap to the neighbour and to the cloth, within reach only", () => {
  const stock = problem.stocks[0]!;
  const others = [...boxesOf([at(0, 0, 1)]).values()];
  expect(snapped(problem, stock, at(4, 106), others, 10)).toMatchObject({ x: 0, y: 100 });
  expect(snapped(problem, stock, at(4, 150), others, 10)).toMatchObject({ x: 0, y: 150 });
  expect(snapped(problem, stock, at(300, 965), others, 10)).toMatchObject({ x: 300, y: 970 });
});

test("a turn goes round the middle and comes back", () => {
  const once = turned(problem, at(100, 100));
  expect(once.turnDeg).toBe(90);
  expect(placedBox(problem, once)).toEqual({ minX: 400, minY: -200, maxX: 500, maxY: 500 });
  expect(turned(problem, once)).toEqual(at(100, 100));
});

test("arrow keys find the piece on that side", () => {
  const boxes = boxesOf([at(0, 0, 0), at(0, 100, 1), at(700, 0, 2)]);
  expect(neighbourOf("strap#0", boxes, [1, 0])).toBe("strap#2");
  expect(neighbourOf("strap#0", boxes, [0, 1])).toBe("strap#1");
  expect(neighbourOf("strap#0", boxes, [-1, 0])).toBeNull();
});
