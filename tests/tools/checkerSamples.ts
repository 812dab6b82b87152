// Problems and places for tests of the checker's rules: squares on a roll, worked out by eye.
import { type Polygon, rectangleRing, solid } from "../../src/core/geometry/ring.ts";
import { type CheckedCopy, laidOutline } from "../../src/core/lay/check/laidOutline.ts";
import type {
  LayPiece,
  LayProblem,
  RollStock,
  Stock,
  StockPlacement,
} from "../../src/core/lay/problem/layProblem.ts";

export const ROLL: RollStock = { kind: "roll", id: "roll", width: 100, length: null, flaws: [] };
export const SQUARE = solid(rectangleRing(0, 0, 10, 10));
export const AS_DRAWN = { turnDeg: 0, mirrored: false };

/** Nine squares, but for what is said. */
export const samplePiece = (id: string, more: Partial<LayPiece> = {}): LayPiece => ({
  ...{ id, count: 9, outline: SQUARE, orientations: [AS_DRAWN], freeTurn: false },
  ...more,
});

/** A problem on the roll without gap or margin, but for what is said. */
export const sampleProblem = (pieces: readonly LayPiece[], more: Partial<LayProblem>): LayProblem => ({
  ...{ materialId: "canvas", pieces, stocks: [ROLL], gap: 0, margin: 0, pinned: [] },
  ...more,
});

/** Where a copy lies; piece "p" on the roll, as it is drawn, at its corner, but for what is said. */
export type SamplePlace = Partial<StockPlacement> & { readonly stock?: Stock; readonly outline?: Polygon };

export const laidCopies = (places: readonly SamplePlace[]): CheckedCopy[] =>
  places.map(({ stock = ROLL, outline = SQUARE, ...place }, copy) => {
    const placement = { pieceId: "p", copy, stockId: stock.id, x: 0, y: 0, ...AS_DRAWN, ...place };
    return { path: `placements[${copy}]`, placement, stock, outline: laidOutline(outline, placement) };
  });
