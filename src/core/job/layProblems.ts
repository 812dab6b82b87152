import { shapePolygon } from "../geometry/shape.ts";
import type { LayPiece, LayProblem, Stock } from "../lay/problem/layProblem.ts";
import { type CutPiece, isCutBySize } from "../materials/cutPiece.ts";
import type { Material } from "../materials/material.ts";
import { mirrorImage } from "../materials/mirrorImage.ts";
import { spreadOf } from "../materials/spreadOf.ts";
import { type ClothRoll, flawPolygon, isBought, type ShapedStock, stockCopyId } from "../materials/stock.ts";
import type { CutList } from "../project/cutList.ts";
import { LEAST_STRIP, type Project } from "../project/project.ts";
import { oneWayAndShade } from "./bagBands.ts";
import { type HeldPiece, type Matching, matchingOf } from "./matching/matching.ts";
import { rollStock } from "./rollStock.ts";
import { spreadProblem } from "./spreadProblem.ts";
import { pinsOf, turnsOf } from "./turnsAndPins.ts";

/**
 * One lay problem for each material that pieces are cut from, in the project's order. Leftovers come before limited
 * rolls, an open roll last; mirror images are pieces of their own. A cloth that is spread in several layers has the
 * problem of what is laid on top.
 *
 * Pins that name a piece, copy or stock that is not there any more are left out.
 * Cost: O(points).
 */
export function layProblemsOf(project: Project, cutList: CutList): LayProblem[] {
  return cutMaterials(project, cutList).map(({ material, cut }) => {
    const spread = spreadOf(material);
    return spread === null ? singly(project, material, cut) : spreadProblem(project, material, spread, cut);
  });
}

/** The lay problems of the same materials, in the same order, with every cloth as one layer right side up. */
export function singleProblemsOf(project: Project, cutList: CutList): LayProblem[] {
  return cutMaterials(project, cutList).map(({ material, cut }) => singly(project, material, cut));
}

function cutMaterials(project: Project, cutList: CutList): { material: Material; cut: readonly CutPiece[] }[] {
  return project.materials.flatMap((material) => {
    const cut = cutList.pieces.filter((piece) => piece.materialId === material.id);
    return cut.length === 0 ? [] : [{ material, cut }];
  });
}

function singly(project: Project, material: Material, cut: readonly CutPiece[]): LayProblem {
  const matching = matchingOf(project, material, cut);
  const pieces = cut.flatMap((piece) => layPieces(piece, material, matching));
  const stocks = layProblemStocks(material);
  return {
    materialId: material.id,
    pieces,
    stocks,
    gap: material.gap ?? project.gap,
    margin: material.margin ?? project.margin,
    leastStrip: project.leastStrip ?? LEAST_STRIP,
    pinned: pinsOf(project, material.id, pieces, stocks),
    ...(matching === null || matching.held.size === 0
      ? {}
      : { pattern: matching.pattern, phases: matching.phases }),
    ...oneWayAndShade(material, project.bags, { pieces }),
  };
}

function layPieces(piece: CutPiece, material: Material, matching: Matching | null): LayPiece[] {
  const turns = turnsOf(piece, material);
  const mirrored = mirrorImage(piece);
  // What is cut by its size lies square, so that a ruler can cut it; straps always do.
  const mayTilt = piece.kind === "panel" && !turns.freeTurn && !isCutBySize(piece.outline);
  const tilt = mayTilt ? (material.tilt ?? 0) : 0;
  const held = matching?.held.get(piece);
  // What is held to a pattern lies straight on it.
  const lay = ({ id, outline, count }: CutPiece, by: HeldPiece | null | undefined): LayPiece =>
    by
      ? { id, outline, count, ...by.turns, match: by.match }
      : { id, outline, count, ...turns, ...(tilt > 0 ? { tilt } : {}) };
  return [
    ...(piece.count > 0 ? [lay(piece, held?.drawn)] : []),
    ...(mirrored ? [lay(mirrored, held?.mirrored)] : []),
  ];
}

/** The stock of a material as the lay sees it, in the order it is to be used up; what is kept back is not in it. */
export function layProblemStocks(material: Material): Stock[] {
  const pieces = material.stock.filter((stock): stock is ShapedStock => stock.kind !== "roll" && !stock.keptBack);
  const rolls = material.stock.filter((stock): stock is ClothRoll => stock.kind === "roll");
  const limited = rolls.filter((roll) => roll.length !== null);
  // What is there before what has to be paid for.
  return [
    ...pieces.filter((stock) => !isBought(stock)).flatMap(leftovers),
    ...limited.filter((roll) => !isBought(roll)).map((roll) => rollStock(roll, material)),
    ...pieces.filter(isBought).flatMap(leftovers),
    ...limited.filter(isBought).map((roll) => rollStock(roll, material)),
    ...rolls.filter((roll) => roll.length === null).map((roll) => rollStock(roll, material)),
  ];
}

function leftovers(stock: ShapedStock): Stock[] {
  const outline = shapePolygon(stock.shape);
  const flaws = stock.flaws.map(flawPolygon);
  const line = stock.firstLine;
  return Array.from({ length: stock.count }, (_, i) => ({
    kind: "remnant",
    ...(line ? { firstLine: [line.along, line.across] } : {}),
    id: stockCopyId(stock.id, i),
    outline,
    flaws,
  }));
}
