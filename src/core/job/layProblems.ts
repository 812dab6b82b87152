import { type Polygon, solid } from "../geometry/ring.ts";
import { shapePolygon } from "../geometry/shape.ts";
import type { LayPiece, LayProblem, RollStock, Stock, StockPlacement } from "../lay/problem/layProblem.ts";
import type { CutPiece } from "../materials/cutPiece.ts";
import type { Material } from "../materials/material.ts";
import { mirrorImage } from "../materials/mirrorImage.ts";
import { allowedTurns } from "../materials/orientations.ts";
import { type ClothRoll, flawPolygon, type ShapedStock, stockCopyId, usableWidth } from "../materials/stock.ts";
import type { CutList } from "../project/cutList.ts";
import type { Project } from "../project/project.ts";

/**
 * One lay problem for each material that pieces are cut from, in the project's order. Leftovers come before limited
 * rolls, an open roll last; mirror images are pieces of their own.
 *
 * Pins that name a piece, copy or stock that is not there any more are left out.
 * Cost: O(points).
 */
export function layProblemsOf(project: Project, cutList: CutList): LayProblem[] {
  return project.materials.flatMap((material) => {
    const cut = cutList.pieces.filter((piece) => piece.materialId === material.id);
    if (cut.length === 0) return [];
    const pieces = cut.flatMap((piece) => layPieces(piece, material));
    const stocks = stocksOf(material);
    return [
      {
        materialId: material.id,
        pieces,
        stocks,
        gap: material.gap ?? project.gap,
        margin: material.margin ?? project.margin,
        pinned: pinsOf(project, material.id, pieces, stocks),
      },
    ];
  });
}

function layPieces(piece: CutPiece, material: Material): LayPiece[] {
  const turns = allowedTurns(piece.grain, material);
  if (turns === null)
    throw new RangeError(
      `layProblemsOf: piece ${piece.id} is ${piece.grain}, material ${material.id} ${material.grain}`,
    );
  const mirrored = mirrorImage(piece);
  const kinds = [...(piece.count > 0 ? [piece] : []), ...(mirrored ? [mirrored] : [])];
  return kinds.map(({ id, outline, count }) => ({ id, outline, count, ...turns }));
}

/** The stock of a material as the lay sees it, in the order it is to be used up; what is kept back is not in it. */
function stocksOf(material: Material): Stock[] {
  const pieces = material.stock.filter((stock): stock is ShapedStock => stock.kind !== "roll" && !stock.keptBack);
  const rolls = material.stock.filter((stock): stock is ClothRoll => stock.kind === "roll");
  return [
    ...pieces.flatMap(leftovers),
    ...rolls.filter((roll) => roll.length !== null).map((roll) => rollStock(roll, material)),
    ...rolls.filter((roll) => roll.length === null).map((roll) => rollStock(roll, material)),
  ];
}

function leftovers(stock: ShapedStock): Stock[] {
  const outline = shapePolygon(stock.shape);
  const flaws = stock.flaws.map(flawPolygon);
  return Array.from({ length: stock.count }, (_, i) => ({
    kind: "remnant",
    id: stockCopyId(stock.id, i),
    outline,
    flaws,
  }));
}

/**
 * x starts after the squared end, y above the selvedge. A roll that is washed before cutting is that much smaller;
 * leftovers are taken as measured, washed already.
 */
function rollStock(roll: ClothRoll, material: Material): RollStock {
  const washed = material.shrinkage.when === "before-cutting";
  const along = washed ? 1 - material.shrinkage.lengthwise : 1;
  const across = washed ? 1 - material.shrinkage.crosswise : 1;
  return {
    kind: "roll",
    id: roll.id,
    width: usableWidth(roll) * across,
    length: roll.length === null ? null : Math.max(0, roll.length - 2 * roll.squaring) * along,
    flaws: roll.flaws.map((flaw) => movedScaled(flawPolygon(flaw), -roll.squaring, -roll.selvedge, along, across)),
  };
}

function movedScaled({ outer }: Polygon, x: number, y: number, along: number, across: number): Polygon {
  return solid(outer.map((value, i) => (i % 2 === 0 ? (value + x) * along : (value + y) * across)));
}

function pinsOf(
  project: Project,
  materialId: string,
  pieces: readonly LayPiece[],
  stocks: readonly Stock[],
): StockPlacement[] {
  const counts = new Map(pieces.map((piece) => [piece.id, piece.count]));
  const stockIds = new Set(stocks.map((stock) => stock.id));
  return project.pins
    .filter((pin) => pin.materialId === materialId)
    .filter((pin) => stockIds.has(pin.stockId) && pin.copy < (counts.get(pin.pieceId) ?? 0))
    .map(({ materialId: _, ...pin }) => pin);
}
