// The checker on cloth in layers and on its fold: hands and places that can be worked out by eye.
import { describe, expect, test } from "vitest";
import {
  AS_DRAWN,
  laidCopies,
  ROLL,
  type SamplePlace,
  samplePiece,
  sampleProblem,
} from "../../../../tests/tools/checkerSamples.ts";
import { rectangleRing, solid } from "../../geometry/ring.ts";
import type { LayerYield, LayPiece, LayPlan, LaySpread, Stock } from "../problem/layProblem.ts";
import { checkFold, checkYields } from "./checkSpread.ts";

describe("in layers", () => {
  const gives = (asDrawn: number, mirrored: number, onFold = false): LayerYield => ({
    of: "bag",
    asDrawn,
    mirrored,
    onFold,
  });
  const SPREAD: LaySpread = { layers: 4, faces: "up", folded: false, facesAlike: false, asked: [] };
  const plan = (
    copies: Readonly<Record<string, number>>,
    left: Readonly<Record<string, number>> = {},
  ): LayPlan => ({
    ...{ materialId: "canvas", uses: [], evaluations: 0, seed: 1 },
    placements: Object.entries(copies).flatMap(([pieceId, count]) =>
      Array.from({ length: count }, (_, copy) => ({ pieceId, copy, stockId: "roll", x: 0, y: 0, ...AS_DRAWN })),
    ),
    unplaced: Object.entries(left).map(([pieceId, count]) => ({
      pieceId,
      count,
      reason: "stock-used-up" as const,
    })),
  });
  const isTrue = (claim: LayerYield | undefined, spread: Partial<LaySpread> = {}, more: Partial<LayPiece> = {}) => {
    const pieces = [samplePiece("p", { gives: gives(4, 0) }), samplePiece("q", { gives: claim, ...more })];
    const whole = { ...SPREAD, ...spread };
    pieces[0] = samplePiece("p", {
      gives: whole.faces === "up" ? gives(whole.layers, 0) : gives(whole.layers / 2, whole.layers / 2),
    });
    const found = checkYields(sampleProblem(pieces, { spread: whole }), plan({}));
    if (found.length > 0) expect(found).toEqual([{ code: "plan-hands-untrue", path: "pieces[1]", pieceId: "q" }]);
    return found.length === 0;
  };
  const HANDED = solid(Float64Array.of(0, 0, 30, 0, 0, 20));

  test("face up every layer gives the one hand, or every layer the other; on the fold a piece gives one", () => {
    expect([gives(4, 0), gives(0, 4)].map((claim) => isTrue(claim))).toEqual([true, true]);
    for (const claim of [
      gives(4, 4),
      gives(2, 2),
      gives(3, 0),
      gives(5, 0),
      gives(4, 1),
      gives(0, 3),
      gives(1, 4),
      undefined,
    ])
      expect(isTrue(claim), JSON.stringify(claim)).toBe(false);
    const folded = { folded: true, faces: "together", layers: 2 } as const;
    expect(isTrue(gives(1, 0, true), folded)).toBe(true);
    expect(isTrue(gives(1, 0, true), { ...folded, folded: false })).toBe(false);
    for (const claim of [gives(2, 0, true), gives(0, 0, true), gives(1, 1, true)])
      expect(isTrue(claim, folded), JSON.stringify(claim)).toBe(false);
    expect(checkYields(sampleProblem([samplePiece("p")], {}), plan({}))).toEqual([]);
  });

  test("face to face half the layers give each hand; all give one only to what is its own mirror image", () => {
    const faced = { faces: "together" } as const;
    expect(isTrue(gives(2, 2), faced, { outline: HANDED })).toBe(true);
    for (const claim of [gives(1, 2), gives(2, 1), gives(2, 3), gives(0, 4), gives(4, 1), gives(3, 0)])
      expect(isTrue(claim, faced), JSON.stringify(claim)).toBe(false);
    expect(isTrue(gives(4, 0), faced)).toBe(true);
    expect(isTrue(gives(4, 0), faced, { outline: HANDED })).toBe(false);
    expect(isTrue(gives(4, 0), { ...faced, facesAlike: true }, { outline: HANDED })).toBe(true);
    expect(isTrue(gives(3, 0), { ...faced, facesAlike: true }, { outline: HANDED })).toBe(false);
    expect(isTrue(gives(4, 1), { ...faced, facesAlike: true }, { outline: HANDED })).toBe(false);
  });

  test("its own mirror image over the line of its arrow, or over the other where it may be turned half", () => {
    const faced = { faces: "together" } as const;
    const is = (points: readonly number[], more: Partial<LayPiece> = {}) =>
      isTrue(gives(4, 0), faced, { outline: solid(Float64Array.from(points)), ...more });
    const turns = (...all: number[]) => ({ orientations: all.map((turnDeg) => ({ turnDeg, mirrored: false })) });
    const alongArrow = [50, 70, 80, 80, 50, 90];
    const overArrow = [50, 70, 70, 70, 60, 100];
    expect([is(alongArrow), is(alongArrow, turns(0, 180))]).toEqual([true, true]);
    expect([is(overArrow), is(overArrow, turns(0, 90)), is(overArrow, turns(0, 179))]).toEqual([
      false,
      false,
      false,
    ]);
    expect([is(overArrow, turns(0, 180)), is(overArrow, turns(90, 0, 270))]).toEqual([true, true]);
    expect(is(overArrow, { freeTurn: true })).toBe(true);
    expect(is([0, 0, 30, 0, 0, 20], turns(0, 180))).toBe(false);
    // Two hundred-thousandths of the area may differ: 0.002 mm² of 100.
    expect([is([0, 0, 10, 0, 10, 10.0001, 0, 10]), is([0, 0, 10, 0, 10, 10.01, 0, 10])]).toEqual([true, false]);
  });

  const counted = (
    asked: readonly [asDrawn: number, mirrored: number],
    given: readonly (readonly [LayerYield, laid: number, left?: number])[],
  ) => {
    const pieces = given.map(([claim], i) => samplePiece(`p${i}`, { gives: claim }));
    const spread = { ...SPREAD, layers: 1, asked: [{ pieceId: "bag", asDrawn: asked[0], mirrored: asked[1] }] };
    const copies = Object.fromEntries(given.map(([, laidCopies], i) => [`p${i}`, laidCopies]));
    const left = Object.fromEntries(given.map(([, , leftOut = 0], i) => [`p${i}`, leftOut]));
    const other = samplePiece("other", { gives: { ...gives(1, 0), of: "purse" } });
    const found = checkYields(sampleProblem([...pieces, other], { spread }), plan({ ...copies, other: 3 }, left));
    return found.filter(({ code }) => code === "plan-layers-miscounted");
  };
  const miscounted = (hand: "as-drawn" | "mirrored", wanted: number, given: number) => ({
    ...{ code: "plan-layers-miscounted", path: "spread.asked[0]", pieceId: "bag", hand, wanted, given },
  });

  test("all layers together give each hand as often as it is asked for, laid or left out", () => {
    expect(counted([2, 2], [[gives(1, 1), 2]])).toEqual([]);
    expect(counted([2, 2], [[gives(1, 1), 1, 1]])).toEqual([]);
    expect(counted([2, 2], [[gives(1, 1), 1]])).toEqual([
      miscounted("as-drawn", 2, 1),
      miscounted("mirrored", 2, 1),
    ]);
    expect(
      counted(
        [2, 1],
        [
          [gives(1, 0), 1],
          [gives(0, 1), 1],
        ],
      ),
    ).toEqual([miscounted("as-drawn", 2, 1)]);
    expect(
      counted(
        [1, 2],
        [
          [gives(1, 0), 1],
          [gives(0, 1), 1],
        ],
      ),
    ).toEqual([miscounted("mirrored", 2, 1)]);
    expect(
      counted(
        [1, 2],
        [
          [gives(1, 0), 1],
          [gives(0, 1), 2],
        ],
      ),
    ).toEqual([]);
  });

  test("a copy that could be spared is too many; what layers give beyond need is not", () => {
    expect(counted([2, 2], [[gives(1, 1), 3]])).toEqual([miscounted("as-drawn", 2, 3)]);
    expect(counted([1, 2], [[gives(1, 1), 2]])).toEqual([]);
    expect(counted([2, 1], [[gives(1, 1), 2]])).toEqual([]);
    expect(counted([0, 2], [[gives(0, 1), 3]])).toEqual([miscounted("mirrored", 2, 3)]);
    expect(counted([3, 0], [[gives(4, 0), 1]])).toEqual([]);
    expect(counted([4, 0], [[gives(4, 0), 2]])).toEqual([miscounted("as-drawn", 4, 8)]);
    // A smaller yield would be spare, had it a copy.
    expect(
      counted(
        [2, 0],
        [
          [gives(3, 0), 1],
          [gives(1, 0), 0],
        ],
      ),
    ).toEqual([]);
    expect(
      counted(
        [2, 0],
        [
          [gives(3, 0), 1],
          [gives(1, 0), 1],
        ],
      ),
    ).toEqual([miscounted("as-drawn", 2, 4)]);
    expect(
      counted(
        [2, 2],
        [
          [gives(2, 2), 1],
          [gives(0, 1), 1],
        ],
      ),
    ).toEqual([miscounted("mirrored", 2, 3)]);
  });

  describe("on the fold", () => {
    const FOLDED: Stock = { ...ROLL, folded: true };
    const HALF = solid(Float64Array.of(0, 0, 30, 0, 20, 10, 10, 10));
    const folds = (place: SamplePlace, outline = HALF, spread: LaySpread | null = SPREAD) => {
      const pieces = [
        samplePiece("p", { outline, gives: gives(1, 0, true) }),
        samplePiece("q", { gives: gives(2, 0) }),
      ];
      return checkFold(
        sampleProblem(pieces, { spread: spread ?? undefined }),
        laidCopies([{ stock: FOLDED, outline, ...place }]),
      );
    };
    const offFold = (distanceMm: number) => [
      {
        code: "plan-off-fold",
        path: "placements[0]",
        pieceId: "p",
        copy: 0,
        distanceMm: expect.closeTo(distanceMm, 9),
      },
    ];

    test("its whole fold edge lies there, turned over or not; other pieces do not", () => {
      expect([folds({}), folds({ x: 70, mirrored: true })]).toEqual([[], []]);
      expect(folds({ y: 5 })).toEqual(offFold(5));
      expect(folds({ y: 0.001 })).toEqual(offFold(0.001));
      expect(folds({ y: -2 })).toEqual(offFold(2));
      // The shorter edge of the other side on the fold.
      expect(folds({ y: 10, turnDeg: 180 })).toEqual(offFold(0));
      expect(folds({ x: 100, y: 10, turnDeg: 180 })).toEqual(offFold(0));
      // An edge is found wherever the outline begins, and however short it is.
      expect(folds({ x: 40 }, solid(Float64Array.of(20, 10, 10, 10, 0, 0, 30, 0)))).toEqual([]);
      expect(folds({}, solid(Float64Array.of(0, 0, 0.5, 0, 0.5, 10, 0, 10)))).toEqual([]);
      // A millionth of the piece's diagonal, 50 mm, off the fold is on it.
      expect(folds({ y: 1e-6 * 50 }, solid(rectangleRing(0, 0, 30, 40)))).toEqual([]);
      expect(folds({ y: 1.1e-6 * 50 }, solid(rectangleRing(0, 0, 30, 40)))).toEqual(offFold(5.5e-5));
      expect(folds({ y: 5, pieceId: "q" })).toEqual([]);
      expect(folds({ y: 5 }, HALF, null)).toEqual([]);
      // A turn so slight that the edge leaves the fold by less than a millionth of the piece.
      expect(folds({ turnDeg: 5e-5 })).toEqual([]);
    });

    test("only folded cloth has a fold, and only a piece with an edge there lies on it", () => {
      expect(folds({ stock: ROLL })).toEqual(offFold(0));
      const left: Stock = { kind: "remnant", id: "left", outline: solid(rectangleRing(0, 0, 90, 90)), flaws: [] };
      expect(folds({ stock: left })).toEqual(offFold(0));
      expect(folds({}, solid(Float64Array.of(10, 0, 20, 10, 0, 10)))).toEqual(offFold(0));
      expect(folds({}, solid(Float64Array.of(0, 0, 10, 0, 10, 5, 20, 5, 20, 0, 30, 0, 30, 10, 0, 10)))).toEqual([]);
    });
  });
});
