import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { rectangleRing, solid } from "../../src/core/geometry/ring.ts";
import { checkPlan } from "../../src/core/lay/check/checkPlan.ts";
import type {
  LayPiece,
  LayPlan,
  LayProblem,
  Stock,
  StockPlacement,
} from "../../src/core/lay/problem/layProblem.ts";
import { seedOf } from "../tools/seeded.ts";

const straight = [
  { turnDeg: 0, mirrored: false },
  { turnDeg: 180, mirrored: false },
];

interface Grid {
  readonly columns: number;
  readonly rows: number;
  readonly w: number;
  readonly h: number;
  readonly gap: number;
  readonly margin: number;
  readonly sides: number;
}

const grids = fc.record({
  columns: fc.integer({ min: 2, max: 6 }),
  rows: fc.integer({ min: 2, max: 5 }),
  w: fc.double({ min: 5, max: 300, noNaN: true }),
  h: fc.double({ min: 5, max: 300, noNaN: true }),
  gap: fc.constantFrom(0, 1, 3.5),
  margin: fc.constantFrom(0, 2, 10),
  sides: fc.constantFrom(4, 24),
});

/** A rectangle, or an ellipse with many edges, in the box 0…w × 0…h. */
function shape({ w, h, sides }: Grid) {
  if (sides === 4) return solid(rectangleRing(0, 0, w, h));
  const ring = new Float64Array(2 * sides);
  for (let i = 0; i < sides; i++) {
    ring[2 * i] = w / 2 + (w / 2) * Math.cos((2 * Math.PI * i) / sides);
    ring[2 * i + 1] = h / 2 + (h / 2) * Math.sin((2 * Math.PI * i) / sides);
  }
  return solid(ring);
}

/** Copies in rows and columns exactly `gap` apart, every second one turned by 180°, on a roll or a remnant. */
function laidGrid(grid: Grid, onRoll: boolean): { problem: LayProblem; plan: LayPlan } {
  const { columns, rows, w, h, gap, margin } = grid;
  const length = columns * (w + gap) - gap + 2 * margin;
  const width = rows * (h + gap) - gap + 2 * margin;
  const piece: LayPiece = {
    id: "panel",
    outline: shape(grid),
    count: columns * rows,
    orientations: straight,
    freeTurn: false,
  };
  const flaws = [solid(rectangleRing(0, 0, margin / 2, margin / 2))];
  const used = margin > gap * 3 ? flaws : [];
  const stock: Stock = onRoll
    ? { kind: "roll", id: "cloth", width, length, flaws: used }
    : { kind: "remnant", id: "cloth", outline: solid(rectangleRing(0, 0, length, width)), flaws: used };
  const placements: StockPlacement[] = [];
  for (let c = 0; c < columns; c++)
    for (let r = 0; r < rows; r++) {
      const turned = (c + r) % 2 === 1;
      const x = margin + c * (w + gap) + (turned ? w : 0);
      const y = margin + r * (h + gap) + (turned ? h : 0);
      placements.push({
        pieceId: "panel",
        copy: placements.length,
        stockId: "cloth",
        x,
        y,
        turnDeg: turned ? 180 : 0,
        mirrored: false,
      });
    }
  const problem = { materialId: "canvas", pieces: [piece], stocks: [stock], gap, margin, pinned: [] };
  const uses = [{ stockId: "cloth", usedLength: length, bound: length * 0.9 }];
  return { problem, plan: { materialId: "canvas", placements, unplaced: [], uses, evaluations: 0, seed: 1 } };
}

const codes = (problem: LayProblem, plan: LayPlan) => new Set(checkPlan(problem, plan).map(({ code }) => code));

/** Moves one placement. */
function moved(plan: LayPlan, index: number, change: Partial<StockPlacement>): LayPlan {
  const placements = plan.placements.map((placement, i) => (i === index ? { ...placement, ...change } : placement));
  return { ...plan, placements };
}

test("grids laid to the exact gap and margin pass", () => {
  fc.assert(
    fc.property(grids, fc.boolean(), (grid, onRoll) => {
      const { problem, plan } = laidGrid(grid, onRoll);
      expect(checkPlan(problem, plan)).toEqual([]);
    }),
    { numRuns: 200, seed: seedOf(1) },
  );
});

describe("planted faults are found", () => {
  const planted = (
    plant: (grid: Grid, problem: LayProblem, plan: LayPlan, index: number) => [LayProblem, LayPlan] | null,
    code: string,
  ) =>
    fc.assert(
      fc.property(grids, fc.boolean(), fc.nat(), (grid, onRoll, pick) => {
        const { problem, plan } = laidGrid(grid, onRoll);
        const faulty = plant(grid, problem, plan, pick % plan.placements.length);
        if (faulty) expect([...codes(...faulty)]).toContain(code);
      }),
      { numRuns: 100, seed: seedOf(2) },
    );

  test("overlap with the next in the row", () =>
    planted((grid, problem, plan, index) => {
      const turn = index >= grid.rows ? -1 : 1;
      const shift = turn * (grid.gap + grid.w * 0.01);
      return [problem, moved(plan, index, { x: plan.placements[index].x + shift })];
    }, "plan-overlap"));

  test("one copy on top of another", () =>
    planted((_, problem, plan, index) => {
      const other = plan.placements[(index + 1) % plan.placements.length];
      return [problem, moved(plan, index, { x: other.x, y: other.y, turnDeg: other.turnDeg })];
    }, "plan-overlap"));

  test("gap short by a hundredth of itself", () =>
    planted(({ gap, rows }, problem, plan, index) => {
      if (gap === 0) return null;
      const turn = index >= rows ? -1 : 1;
      return [problem, moved(plan, index, { x: plan.placements[index].x + (turn * gap) / 100 })];
    }, "plan-too-close"));

  test("off the stock on every side", () => {
    for (const [dx, dy] of [
      [-1, 0],
      [1, 0],
      [0, -1],
      [0, 1],
    ])
      planted((grid, problem, plan, index) => {
        const { x, y } = plan.placements[index];
        const far = { x: x + dx * grid.columns * (grid.w + grid.gap + grid.margin) };
        return [
          problem,
          moved(plan, index, dx ? far : { y: y + dy * grid.rows * (grid.h + grid.gap + grid.margin) }),
        ];
      }, "plan-outside-stock");
  });

  test("margin short by a hundredth of itself", () =>
    planted(({ margin }, problem, plan, index) => {
      if (margin === 0) return null;
      const low = index - (index % plan.placements.length);
      return [problem, moved(plan, low, { y: plan.placements[low].y - margin / 100 })];
    }, "plan-too-near-edge"));

  test("a flaw under a piece", () =>
    planted((grid, problem, plan, index) => {
      const { x, y, turnDeg } = plan.placements[index];
      const s = turnDeg === 180 ? -1 : 1;
      const middle = solid(rectangleRing(x + (s * grid.w) / 2 - 0.5, y + (s * grid.h) / 2 - 0.5, 1, 1));
      return [{ ...problem, stocks: [{ ...problem.stocks[0], flaws: [middle] }] }, plan];
    }, "plan-on-flaw"));

  test("a flaw nearer than the gap", () =>
    planted((grid, problem, plan) => {
      if (grid.gap === 0 || grid.sides !== 4) return null;
      const near = solid(rectangleRing(grid.margin + grid.w + grid.gap * 0.5, grid.margin, 0.1, 0.1));
      return [{ ...problem, stocks: [{ ...problem.stocks[0], flaws: [near] }] }, plan];
    }, "plan-too-near-flaw"));

  test("a turn that the grain forbids", () =>
    planted(
      (_, problem, plan, index) => [
        problem,
        moved(plan, index, { turnDeg: plan.placements[index].turnDeg + 0.001 }),
      ],
      "plan-turn-not-allowed",
    ));

  test("a one-way piece upside down", () =>
    planted((_, problem, plan) => {
      const pieces = problem.pieces.map((piece) => ({ ...piece, orientations: [straight[0]] }));
      return [{ ...problem, pieces }, plan];
    }, "plan-turn-not-allowed"));

  test("a mirrored piece", () =>
    planted(
      (_, problem, plan, index) => [problem, moved(plan, index, { mirrored: true })],
      "plan-turn-not-allowed",
    ));

  test("a copy left out without a word", () =>
    planted((_, problem, plan, index) => {
      const placements = plan.placements.filter((__, i) => i !== index);
      return [problem, { ...plan, placements }];
    }, "plan-miscounted"));

  test("a copy laid and told as left out", () =>
    planted((_, problem, plan) => {
      const unplaced = [{ pieceId: "panel", count: 1, reason: "stock-used-up" as const }];
      return [problem, { ...plan, unplaced }];
    }, "plan-miscounted"));

  test("a copy twice, an unknown copy, piece and stock, and no number", () => {
    planted((_, problem, plan, index) => {
      const other = plan.placements[(index + 1) % plan.placements.length];
      return [problem, moved(plan, index, { copy: other.copy })];
    }, "plan-copy-twice");
    planted((_, problem, plan, index) => [problem, moved(plan, index, { copy: 99 })], "plan-copy-unknown");
    planted((_, problem, plan, index) => [problem, moved(plan, index, { pieceId: "x" })], "plan-unknown-piece");
    planted((_, problem, plan, index) => [problem, moved(plan, index, { stockId: "x" })], "plan-unknown-stock");
    planted((_, problem, plan, index) => [problem, moved(plan, index, { x: NaN })], "plan-pose-unreadable");
  });

  test("a pin that moved", () =>
    planted((_, problem, plan, index) => {
      const pin = plan.placements[index];
      return [{ ...problem, pinned: [{ ...pin, x: pin.x + 1e-9 }] }, plan];
    }, "plan-pin-moved"));

  test("an untrue length and an untrue bound", () => {
    planted((_, problem, plan) => {
      const uses = plan.uses.map((use) => ({ ...use, usedLength: use.usedLength * 0.99 }));
      return [problem, { ...plan, uses }];
    }, "plan-length-untrue");
    planted((_, problem, plan) => {
      const uses = plan.uses.map((use) => ({ ...use, bound: use.usedLength * 1.01 }));
      return [problem, { ...plan, uses }];
    }, "plan-bound-untrue");
  });
});

test("pieces of a concave remnant must not bridge its bay or its hole", () => {
  const outer = Float64Array.of(0, 0, 100, 0, 100, 100, 60, 100, 60, 30, 40, 30, 40, 100, 0, 100);
  const hole = Float64Array.of(10, 10, 10, 20, 20, 20, 20, 10);
  const stock: Stock = { kind: "remnant", id: "skin", outline: { outer, holes: [hole] }, flaws: [] };
  const piece: LayPiece = {
    id: "tag",
    outline: solid(rectangleRing(0, 0, 30, 8)),
    count: 1,
    orientations: straight,
    freeTurn: false,
  };
  const problem: LayProblem = { materialId: "m", pieces: [piece], stocks: [stock], gap: 0, margin: 2, pinned: [] };
  const at = (x: number, y: number) => {
    const placements = [{ pieceId: "tag", copy: 0, stockId: "skin", x, y, turnDeg: 0, mirrored: false }];
    const uses = [{ stockId: "skin", usedLength: x + 32, bound: null }];
    return [...codes(problem, { materialId: "m", placements, unplaced: [], uses, evaluations: 0, seed: 0 })];
  };
  expect(at(2, 50)).toEqual([]);
  expect(at(35, 50)).toEqual(["plan-outside-stock"]);
  expect(at(5, 11)).toEqual(["plan-outside-stock"]);
  expect(at(2, 21)).toEqual(["plan-too-near-edge"]);
  expect(at(2, 22)).toEqual([]);
});
