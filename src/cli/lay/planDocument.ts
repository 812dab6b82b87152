import { posePolygon } from "../../core/geometry/pose.ts";
import { type Polygon, polygonArea, type Ring } from "../../core/geometry/ring.ts";
import type { LayPiece, LayPlan, LayProblem, Stock, StockPlacement } from "../../core/lay/problem/layProblem.ts";
import type { LeftOut } from "../../core/problems/layProblems.ts";

type Points = readonly (readonly [number, number])[];

/** An outline as data: points in mm, holes apart. */
export interface OutlineData {
  readonly points: Points;
  readonly holes: readonly Points[];
}

/** What a plan file holds: everything that is needed to verify it, and everything a reader wants to know. */
export interface PlanDocument {
  readonly laywrightPlan: 1;
  readonly project: string;
  readonly seed: number;
  readonly materials: readonly MaterialPlan[];
}

/** One material's lay. Lengths in mm; utilisation and gap are shares. */
export interface MaterialPlan {
  readonly materialId: string;
  readonly name: string;
  readonly lengthUsed: number;
  /** Area of the pieces over the area of the cloth used. */
  readonly utilisation: number;
  /** Proven shortest length of the open roll, or null without one. */
  readonly bound: number | null;
  /** (length − bound) / bound of the open roll. */
  readonly gap: number | null;
  readonly cuttingGap: number;
  readonly edgeMargin: number;
  readonly evaluations: number;
  readonly stock: readonly StockData[];
  readonly pieces: readonly PieceData[];
  readonly placed: readonly PlacedData[];
  readonly unplaced: readonly UnplacedData[];
  readonly pinned: readonly StockPlacement[];
}

/** A stock, its size, and what was used of it. */
export interface StockData {
  readonly id: string;
  readonly kind: Stock["kind"];
  readonly width: number;
  readonly length: number | null;
  readonly outline: OutlineData | null;
  readonly flaws: readonly OutlineData[];
  readonly lengthUsed: number;
  readonly utilisation: number;
  readonly bound: number | null;
}

/** A kind of piece in its own frame. */
export interface PieceData {
  readonly id: string;
  readonly count: number;
  readonly outline: OutlineData;
  readonly turns: LayPiece["orientations"];
  readonly freeTurn: boolean;
}

/** A copy where it lies. */
export interface PlacedData extends StockPlacement {
  readonly outline: OutlineData;
}

/** Copies left out. */
export interface UnplacedData {
  readonly pieceId: string;
  readonly count: number;
  readonly reason: string;
  readonly help: LeftOut | null;
  readonly outline: OutlineData;
}

/** One material's lay as data. */
export function materialPlan(
  name: string,
  problem: LayProblem,
  plan: LayPlan,
  help: readonly LeftOut[],
): MaterialPlan {
  const pieces = new Map(problem.pieces.map((piece) => [piece.id, piece]));
  const stock = problem.stocks.map((entry) => stockData(entry, plan, pieces));
  const open = stock.find((entry) => entry.bound !== null && entry.lengthUsed > 0);
  const cloth = stock.reduce((sum, entry, i) => sum + usedArea(problem.stocks[i]!, entry.lengthUsed), 0);
  const placed = plan.placements.reduce((sum, { pieceId }) => sum + polygonArea(pieces.get(pieceId)!.outline), 0);
  return {
    materialId: problem.materialId,
    name,
    lengthUsed: stock.reduce((sum, entry) => sum + entry.lengthUsed, 0),
    utilisation: shareOf(placed, cloth),
    bound: open?.bound ?? null,
    gap: open?.bound ? (open.lengthUsed - open.bound) / open.bound : null,
    cuttingGap: problem.gap,
    edgeMargin: problem.margin,
    evaluations: plan.evaluations,
    stock,
    pieces: problem.pieces.map(({ id, count, outline, orientations, freeTurn }) => {
      return { id, count, outline: outlineData(outline), turns: orientations, freeTurn };
    }),
    placed: plan.placements.map((placement) => {
      const outline = posePolygon(pieces.get(placement.pieceId)!.outline, placement);
      return { ...placement, outline: outlineData(outline) };
    }),
    unplaced: plan.unplaced.map((left) => ({
      ...left,
      help: help.find(({ pieceId }) => pieceId === left.pieceId) ?? null,
      outline: outlineData(pieces.get(left.pieceId)!.outline),
    })),
    pinned: problem.pinned,
  };
}

function stockData(stock: Stock, plan: LayPlan, pieces: ReadonlyMap<string, LayPiece>): StockData {
  const use = plan.uses.find(({ stockId }) => stockId === stock.id);
  const lengthUsed = use?.usedLength ?? 0;
  const laid = plan.placements.filter(({ stockId }) => stockId === stock.id);
  const area = laid.reduce((sum, { pieceId }) => sum + polygonArea(pieces.get(pieceId)!.outline), 0);
  const cloth = usedArea(stock, lengthUsed);
  const remnant = stock.kind === "remnant";
  const ys = remnant ? stock.outline.outer.filter((_, i) => i % 2 === 1) : [];
  const xs = remnant ? stock.outline.outer.filter((_, i) => i % 2 === 0) : [];
  return {
    id: stock.id,
    kind: stock.kind,
    width: remnant ? Math.max(...ys) - Math.min(...ys) : stock.width,
    length: remnant ? Math.max(...xs) - Math.min(...xs) : stock.length,
    outline: remnant ? outlineData(stock.outline) : null,
    flaws: stock.flaws.map(outlineData),
    lengthUsed,
    utilisation: shareOf(area, cloth),
    bound: use?.bound ?? null,
  };
}

/** Utilisation: the pieces' share of the cloth; 0 where none is used. */
function shareOf(pieces: number, cloth: number): number {
  return cloth > 0 ? pieces / cloth : 0;
}

/** Cloth taken by what lies on a stock: the used length of a roll, the whole of a remnant. */
function usedArea(stock: Stock, lengthUsed: number): number {
  if (lengthUsed === 0) return 0;
  return stock.kind === "roll" ? stock.width * lengthUsed : polygonArea(stock.outline);
}

function outlineData({ outer, holes }: Polygon): OutlineData {
  return { points: ringPoints(outer), holes: holes.map(ringPoints) };
}

function ringPoints(ring: Ring): Points {
  return Array.from({ length: ring.length / 2 }, (_, i) => [ring[2 * i]!, ring[2 * i + 1]!] as const);
}
