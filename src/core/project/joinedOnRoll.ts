import { ringBox } from "../geometry/box.ts";
import { polygonArea } from "../geometry/ring.ts";
import type { CutPiece } from "../materials/cutPiece.ts";
import type { Material } from "../materials/material.ts";
import { usableWidth } from "../materials/stock.ts";
import { buildStrap } from "../straps/build/buildStrap.ts";
import type { StrapResult } from "../straps/build/strapResult.ts";
import type { StrapMaterial } from "../straps/wish/strapWish.ts";
import type { PartNames } from "../words/strapWords.ts";
import type { Project } from "./project.ts";

/** Share of the bought cloth that its pieces take (from memory); only decides whether a join would spare any. */
const SHARE_USED = 0.85;

/**
 * A strap that may be joined, cut in lengths where whole it alone would lengthen what is bought of an open roll: when
 * it is longer than the cloth is wide, and longer than the other pieces take of the roll anyway. `ofOneBag` are all
 * pieces of one bag with their straps whole. A strap whose joins find no place stays whole.
 */
export function joinedOnRoll(
  project: Project,
  strap: StrapResult,
  ofOneBag: readonly CutPiece[],
  materials: readonly StrapMaterial[],
  path: string,
  names: PartNames,
): StrapResult {
  const { wish } = strap;
  const material = project.materials.find(({ id }) => id === wish.materials.outer);
  if (!wish.joins?.allowed || material === undefined) return strap;
  const width = openWidth(project, material);
  if (width === null) return strap;
  const pieces = ofOneBag.filter(({ materialId }) => materialId === material.id);
  const longest = Math.max(width, boughtAnyway(project, material, width, strap, pieces));
  if (strap.lengths.cut <= longest) return strap;
  const limited = materials.map((each) =>
    each.id === material.id ? { ...each, usableWidth: width, longestPiece: longest } : each,
  );
  const joined = buildStrap(wish, limited, path, names);
  return joined.ok && joined.value.pieces.some((piece) => piece.joined) ? joined.value : strap;
}

/** Longest strip across the roll that is bought by length, before any wash; null when no such roll is there. mm. */
function openWidth(project: Project, material: Material): number | null {
  const widths = material.stock.flatMap((stock) =>
    stock.kind === "roll" && stock.length === null ? [usableWidth(stock)] : [],
  );
  if (widths.length === 0) return null;
  const margin = material.margin ?? project.margin;
  return (Math.max(...widths) - 2 * margin) * (1 - material.shrinkage.crosswise);
}

/** Roll length that is bought whatever becomes of the strap: for the area of all, and for each other piece. mm. */
function boughtAnyway(
  project: Project,
  { shrinkage }: Material,
  width: number,
  strap: StrapResult,
  pieces: readonly CutPiece[],
): number {
  const area = pieces.reduce(
    (sum, piece) => sum + (piece.count + piece.mirroredCount) * polygonArea(piece.outline),
    0,
  );
  const others = pieces.filter(({ partId }) => partId !== strap.wish.id);
  const least = others.map(({ outline, grain }) => {
    const { minX, maxX, minY, maxY } = ringBox(outline.outer);
    const [along, across] = [maxX - minX, maxY - minY];
    if (grain === "lengthwise" || along > width) return along;
    return grain === "crosswise" || across > width ? across : Math.min(along, across);
  });
  const byArea = (project.bags * area) / width / SHARE_USED;
  return Math.max(byArea, ...least) * (1 - shrinkage.lengthwise);
}
