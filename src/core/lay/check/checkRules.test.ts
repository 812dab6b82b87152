// The checker's rules on plans small enough to be judged by eye, each at the value where it begins to hold.
import { describe, expect, test } from "vitest";
import { rectangleRing, solid } from "../../geometry/ring.ts";
import type { LayPiece, LayPlan, LayProblem, RollStock, Stock, StockPlacement } from "../problem/layProblem.ts";
import { checkPlan } from "./checkPlan.ts";

const ROLL: RollStock = { kind: "roll", id: "roll", width: 100, length: 400, flaws: [] };
const SQUARE = solid(rectangleRing(0, 0, 10, 10));
const AS_DRAWN = { turnDeg: 0, mirrored: false };

const piece = (id: string, count: number, more: Partial<LayPiece> = {}): LayPiece => ({
  ...{ id, count, outline: SQUARE, orientations: [AS_DRAWN], freeTurn: false },
  ...more,
});
const at = (pieceId: string, copy: number, x: number, y: number, more: Partial<StockPlacement> = {}) => ({
  ...{ pieceId, copy, stockId: "roll", x, y, ...AS_DRAWN },
  ...more,
});
const problemOf = (pieces: readonly LayPiece[], more: Partial<LayProblem> = {}): LayProblem => ({
  ...{ materialId: "canvas", pieces, stocks: [ROLL], gap: 0, margin: 0, pinned: [] },
  ...more,
});
const planOf = (placements: readonly StockPlacement[], more: Partial<LayPlan> = {}): LayPlan => ({
  ...{ materialId: "canvas", placements, unplaced: [], uses: [], evaluations: 0, seed: 1 },
  ...more,
});
const codes = (problem: LayProblem, plan: LayPlan): string[] => checkPlan(problem, plan).map(({ code }) => code);

describe("counts", () => {
  const two = problemOf([piece("a", 2), piece("b", 2)]);
  const laid = [at("a", 0, 0, 0), at("a", 1, 10, 0), at("b", 0, 20, 0), at("b", 1, 30, 0)];
  const left = (pieceId: string, count: number) => ({ pieceId, count, reason: "stock-used-up" as const });

  test("every copy once is right, laid or told as left out, in one row or several", () => {
    expect(checkPlan(two, planOf(laid))).toEqual([]);
    expect(checkPlan(two, planOf(laid.slice(0, 3), { unplaced: [left("b", 1), left("a", 0)] }))).toEqual([]);
    expect(checkPlan(two, planOf(laid.slice(0, 2), { unplaced: [left("b", 1), left("b", 1)] }))).toEqual([]);
  });

  test("copies that are no copies, copies twice, pieces nobody asked for", () => {
    for (const copy of [-1, 0.5, 2])
      expect(checkPlan(two, planOf([...laid.slice(0, 3), at("b", copy, 30, 0)]))).toEqual([
        { code: "plan-copy-unknown", path: "placements[3]", pieceId: "b", copy, count: 2 },
      ]);
    expect(checkPlan(two, planOf([...laid.slice(0, 3), at("b", 0, 30, 0)]))).toEqual([
      { code: "plan-copy-twice", path: "placements[3]", pieceId: "b", copy: 0 },
    ]);
    expect(
      checkPlan(two, planOf([...laid, at("c", 0, 40, 0)], { unplaced: [left("a", 0), left("d", 1)] })),
    ).toEqual([
      { code: "plan-unknown-piece", path: "placements[4]", pieceId: "c" },
      { code: "plan-unknown-piece", path: "unplaced[1]", pieceId: "d" },
    ]);
  });

  test("sums that are right only by half or negative copies are wrong, and so is one too many or too few", () => {
    const miscounted = (placed: number, unplaced: number) => [
      { code: "plan-miscounted", path: "pieces[1]", pieceId: "b", wanted: 2, placed, unplaced },
    ];
    expect(checkPlan(two, planOf(laid.slice(0, 3)))).toEqual(miscounted(1, 0));
    expect(checkPlan(two, planOf(laid, { unplaced: [left("b", 1)] }))).toEqual(miscounted(2, 1));
    expect(checkPlan(two, planOf(laid, { unplaced: [left("b", 1), left("b", -1)] }))).toEqual(miscounted(2, 0));
    const halves = [left("b", 0.5), left("b", 0.5)];
    expect(checkPlan(two, planOf(laid.slice(0, 3), { unplaced: halves }))).toEqual(miscounted(1, 1));
  });

  test("a pin lies exactly where it was put, as it was put, or it has moved; whole turns are none", () => {
    const pieces = [piece("a", 2, { freeTurn: true, orientations: [AS_DRAWN, { turnDeg: 0, mirrored: true }] })];
    const pin = at("a", 1, 50, 50, { turnDeg: 90 });
    const other: Stock = { ...ROLL, id: "other" };
    const pinned = problemOf(pieces, { pinned: [pin], stocks: [ROLL, other] });
    const found = (now: StockPlacement) => checkPlan(pinned, planOf([at("a", 0, 0, 0), now]));
    for (const turnDeg of [90, 450, -270]) expect(found({ ...pin, turnDeg })).toEqual([]);
    for (const change of [
      { x: 50.001 },
      { y: 50.001 },
      { turnDeg: 270 },
      { turnDeg: -90 },
      { turnDeg: 90.5 },
      { mirrored: true },
      { stockId: "other" },
    ])
      expect(found({ ...pin, ...change }), JSON.stringify(change)).toEqual([
        { code: "plan-pin-moved", path: "pinned[0]", pieceId: "a", copy: 1 },
      ]);
    expect(codes(problemOf(pieces, { pinned: [pin] }), planOf([], { unplaced: [left("a", 2)] }))).toEqual([
      "plan-pin-moved",
    ]);
  });
});

describe("places and lengths", () => {
  const one = problemOf([piece("a", 1)]);

  test("stocks nobody has, places that are no numbers", () => {
    const uses = [
      { stockId: "roll", usedLength: 0, bound: null },
      { stockId: "gone", usedLength: 0, bound: null },
    ];
    expect(checkPlan(one, planOf([at("a", 0, 0, 0, { stockId: "lost" })], { uses }))).toEqual([
      { code: "plan-unknown-stock", path: "placements[0]", stockId: "lost" },
      { code: "plan-unknown-stock", path: "uses[1]", stockId: "gone" },
    ]);
    for (const change of [{ x: Number.NaN }, { y: Number.POSITIVE_INFINITY }, { turnDeg: Number.NaN }])
      expect(checkPlan(one, planOf([at("a", 0, 0, 0, change)]))).toEqual([
        { code: "plan-pose-unreadable", path: "placements[0]", pieceId: "a", copy: 0 },
      ]);
  });

  test("what lies on different stocks is never too near", () => {
    const stocks: Stock[] = [ROLL, { ...ROLL, id: "other" }];
    const problem = problemOf([piece("a", 2)], { stocks, gap: 5 });
    expect(codes(problem, planOf([at("a", 0, 0, 0), at("a", 1, 0, 0, { stockId: "other" })]))).toEqual([]);
    expect(codes(problem, planOf([at("a", 0, 0, 0), at("a", 1, 0, 0)]))).toEqual(["plan-overlap"]);
  });

  test("turns: as allowed, whole turns more, up to the tilt either way; any where any is free; faces never", () => {
    const isAllowed = (turnDeg: number, more: Partial<LayPiece> = {}, mirrored = false): boolean => {
      const found = codes(problemOf([piece("a", 1, more)]), planOf([at("a", 0, 50, 50, { turnDeg, mirrored })]));
      expect(found.every((code) => code === "plan-turn-not-allowed")).toBe(true);
      return found.length === 0;
    };
    for (const turnDeg of [0, 360, -360, 720, -720, 5e-10, 1e-9])
      expect(isAllowed(turnDeg), `${turnDeg}`).toBe(true);
    for (const turnDeg of [0.001, -0.001, 90, 180, 359]) expect(isAllowed(turnDeg), `${turnDeg}`).toBe(false);
    for (const turnDeg of [3, -3, 357, 363]) expect(isAllowed(turnDeg, { tilt: 3 }), `${turnDeg}`).toBe(true);
    for (const turnDeg of [3.001, -3.001, 356.9]) expect(isAllowed(turnDeg, { tilt: 3 }), `${turnDeg}`).toBe(false);
    expect(isAllowed(-90, { orientations: [{ turnDeg: 270, mirrored: false }] })).toBe(true);
    expect([isAllowed(77, { freeTurn: true }), isAllowed(77, { freeTurn: true }, true)]).toEqual([true, false]);
    expect(isAllowed(0, {}, true)).toBe(false);
    expect(isAllowed(0, { orientations: [{ turnDeg: 0, mirrored: true }] }, true)).toBe(true);
  });

  test("lengths and bounds are believed to a millionth, at least of a millimetre", () => {
    const found = (usedLength: number, bound: number | null, side = 10) => {
      const problem = problemOf([piece("a", 1, { outline: solid(rectangleRing(0, 0, side, side)) })]);
      const uses = [{ stockId: "roll", usedLength, bound }];
      return codes(problem, planOf([at("a", 0, 0, 0)], { uses }));
    };
    for (const told of [10, 10.000009, 9.999991]) expect(found(told, told), `${told}`).toEqual([]);
    expect(found(10, null)).toEqual([]);
    expect(found(10, 3)).toEqual([]);
    for (const told of [10.000011, 9.999989, Number.NaN])
      expect(found(told, null), `${told}`).toEqual(["plan-length-untrue"]);
    for (const bound of [10.000011, Number.NaN]) expect(found(10, bound)).toEqual(["plan-bound-untrue"]);
    expect(found(0.5000009, 0.5000009, 0.5)).toEqual([]);
    expect(found(0.5000011, 0.5000011, 0.5)).toEqual(["plan-length-untrue", "plan-bound-untrue"]);
    // To the very edge, where slack and distance are the same number.
    const untouched = planOf([], {
      unplaced: [{ pieceId: "a", count: 1, reason: "stock-used-up" }],
      uses: [{ stockId: "roll", usedLength: 1e-6, bound: 1e-6 }],
    });
    expect(codes(problemOf([piece("a", 1)]), untouched)).toEqual([]);
    expect(found(10, 10 + 1e-6 * 10)).toEqual([]);
  });

  test("lengths are told of each stock's own pieces, and stand where they were told", () => {
    const stocks: Stock[] = [ROLL, { ...ROLL, id: "other" }];
    const problem = problemOf([piece("a", 2)], { stocks });
    const placements = [at("a", 0, 0, 0), at("a", 1, 30, 0, { stockId: "other" })];
    const uses = [
      { stockId: "roll", usedLength: 10, bound: 11 },
      { stockId: "other", usedLength: 10, bound: 4 },
    ];
    expect(checkPlan(problem, planOf(placements, { uses }))).toEqual([
      { code: "plan-bound-untrue", path: "uses[0]", stockId: "roll", boundMm: 11, measuredMm: 10 },
      { code: "plan-length-untrue", path: "uses[1]", stockId: "other", toldMm: 10, measuredMm: 40 },
    ]);
  });
});

describe("cloth of one way, and bags of one shade", () => {
  test("the arrow points onward from less than 45° behind square to less than that before it, face up or down", () => {
    const pieces = [piece("a", 2, { freeTurn: true, orientations: [AS_DRAWN, { turnDeg: 0, mirrored: true }] })];
    const problem = problemOf(pieces, { sameWay: true });
    const isSame = (turnDeg: number, mirrored = false): boolean => {
      const plan = planOf([at("a", 0, 10, 10), at("a", 1, 50, 50, { turnDeg, mirrored })]);
      const found = checkPlan(problem, plan);
      if (found.length > 0)
        expect(found).toEqual([
          {
            ...{ code: "plan-two-ways", path: "placements[1]", pieceId: "a", copy: 1 },
            other: { pieceId: "a", copy: 0 },
          },
        ]);
      expect(checkPlan(problemOf(pieces), plan)).toEqual([]);
      return found.length === 0;
    };
    for (const turnDeg of [0, 90, 134.9, 315.1, -44.9, 360, -360, 494.9])
      expect(isSame(turnDeg), `${turnDeg}`).toBe(true);
    for (const turnDeg of [135, 180, 270, 315, -45, -180, 540]) expect(isSame(turnDeg), `${turnDeg}`).toBe(false);
    for (const turnDeg of [180, 225, 135.1, 314.9]) expect(isSame(turnDeg, true), `${turnDeg}`).toBe(true);
    for (const turnDeg of [0, 90, 315]) expect(isSame(turnDeg, true), `${turnDeg}`).toBe(false);
  });

  const stocks: Stock[] = [ROLL, { ...ROLL, id: "other" }];
  const pieces = [piece("a", 4), piece("b", 2)];
  const problem = problemOf(pieces, { stocks, shade: { bags: 2, band: 30 } });
  // Copies are shared out in order: two of the one and one of the other to each bag.
  const bag = (first: number, xs: readonly [number, number, number], y: number) => [
    at("a", 2 * first, xs[0], y),
    at("a", 2 * first + 1, xs[1], y),
    at("b", first, xs[2], y + 20),
  ];

  test("a bag lies within its band, counted from where it begins, and no farther; each bag has its own", () => {
    expect(checkPlan(problem, planOf([...bag(0, [0, 20, 10], 0), ...bag(1, [220, 200, 210], 0)]))).toEqual([]);
    expect(checkPlan(problem, planOf([...bag(0, [0, 20.1, 10], 0), ...bag(1, [220, 210, 199.9], 0)]))).toEqual([
      {
        ...{ code: "plan-bag-scattered", path: "placements[1]", pieceId: "a", copy: 1, bag: 1 },
        ...{ other: { pieceId: "a", copy: 0 }, lengthMm: expect.closeTo(30.1, 9), mostMm: 30 },
      },
      {
        ...{ code: "plan-bag-scattered", path: "placements[3]", pieceId: "a", copy: 2, bag: 2 },
        ...{ other: { pieceId: "b", copy: 1 }, lengthMm: expect.closeTo(30.1, 9), mostMm: 30 },
      },
    ]);
    // Rounding that counts as kept; of several that begin or end alike the first is named.
    expect(codes(problem, planOf([...bag(0, [0, 20.000009, 10], 0), ...bag(1, [200, 220, 210], 0)]))).toEqual([]);
    const alike = [at("a", 0, 0, 0), at("a", 1, 30, 0), at("b", 0, 0, 20), ...bag(1, [200, 220, 210], 0)];
    expect(checkPlan(problem, planOf(alike))).toMatchObject([
      { path: "placements[1]", other: { pieceId: "a", copy: 0 } },
    ]);
    const ends = [at("a", 0, 0, 0), at("a", 1, 30, 0), at("b", 0, 30, 20), ...bag(1, [200, 220, 210], 0)];
    expect(checkPlan(problem, planOf(ends))).toMatchObject([{ path: "placements[1]", bag: 1 }]);
  });

  test("a bag as long as its band and the rounding that counts as kept is not scattered", () => {
    const outline = solid(rectangleRing(0, 0, 10 + 1e-5, 10));
    const one = problemOf([piece("a", 1, { outline })], { shade: { bags: 1, band: 10 } });
    expect(codes(one, planOf([at("a", 0, 0, 0)]))).toEqual([]);
    expect(codes({ ...one, shade: { bags: 1, band: 9.999 } }, planOf([at("a", 0, 0, 0)]))).toEqual([
      "plan-bag-scattered",
    ]);
  });

  test("a bag lies on one stock", () => {
    const placements = bag(0, [0, 20, 10], 0).map((one, i) => (i === 1 ? { ...one, stockId: "other" } : one));
    expect(checkPlan(problem, planOf([...placements, ...bag(1, [200, 220, 210], 0)]))).toEqual([
      {
        ...{ code: "plan-bag-apart", path: "placements[1]", pieceId: "a", copy: 1, bag: 1 },
        other: { pieceId: "a", copy: 0 },
      },
    ]);
  });
});

test("every rule is asked of a plan: the pattern, the fold, and the margin that the fold spares", () => {
  const match = { group: "g", x: 0, y: 0, senseX: 1, senseY: 1, along: true, across: false } as const;
  const repeat = { along: 40, across: null, firstAlong: 0, firstAcross: 0 };
  const pattern = { ...repeat, halfDrop: false, symmetric: false, tolerance: 1 };
  const matched = problemOf([piece("a", 2, { match })], { pattern });
  expect(codes(matched, planOf([at("a", 0, 0, 0), at("a", 1, 45, 0)]))).toEqual(["plan-off-pattern"]);
  const lost = at("a", 1, 45, 0, { stockId: "lost" });
  expect(codes(matched, planOf([at("a", 0, 0, 0), lost]))).toEqual(["plan-unknown-stock"]);
  const gives = { of: "bag", asDrawn: 1, mirrored: 0, onFold: true };
  const pieces = [
    piece("half", 1, { gives }),
    piece("pair", 1, { gives: { ...gives, mirrored: 1, onFold: false } }),
  ];
  const spread = { layers: 2, faces: "together", folded: true, facesAlike: false, asked: [] } as const;
  const folded = problemOf(pieces, { stocks: [{ ...ROLL, folded: true }], margin: 5, spread });
  expect(codes(folded, planOf([at("half", 0, 5, 0), at("pair", 0, 25, 5)]))).toEqual([]);
  expect(codes(folded, planOf([at("half", 0, 5, 0), at("pair", 0, 25, 0)]))).toEqual(["plan-too-near-edge"]);
  expect(codes(folded, planOf([at("half", 0, 5, 6), at("pair", 0, 25, 5)]))).toEqual(["plan-off-fold"]);
});
