import type { Polygon } from "../../geometry/ring.ts";
import type { LayFinding } from "../../problems/layProblems.ts";
import type { RollStock, Stock } from "../problem/layProblem.ts";
import { type CheckedCopy, copyName, type LaidOutline, laidOutline } from "./laidOutline.ts";
import { outlineDistance } from "./outlineDistance.ts";
import { overlapArea } from "./overlapArea.ts";
import { areaTolerance, lengthTolerance } from "./tolerance.ts";

const AS_DRAWN = { x: 0, y: 0, turnDeg: 0, mirrored: false };

/** Copies that leave their stock, come nearer to its edge than the margin, or lie on or too near a flaw. */
export function checkStock(
  stock: Stock,
  copies: readonly CheckedCopy[],
  gap: number,
  margin: number,
  halves: ReadonlySet<string> = new Set(),
): LayFinding[] {
  const flaws = stock.flaws.map((flaw) => laidOutline(flaw, AS_DRAWN));
  const cloth = stock.kind === "remnant" ? laidOutline(stock.outline, AS_DRAWN) : null;
  return copies.flatMap((copy) => {
    const edge = cloth
      ? checkOutlineEdge(cloth, copy, margin)
      : checkRollEdge(stock as RollStock, copy, margin, halves);
    return [...(edge ? [edge] : []), ...checkFlaws(flaws, copy, gap)];
  });
}

/** Far side of the furthest copy plus the margin, from the stock's cut end or the remnant's first point along x. */
export function measuredLength(stock: Stock, copies: readonly CheckedCopy[], margin: number): number {
  if (copies.length === 0) return 0;
  const start = stock.kind === "remnant" ? laidOutline(stock.outline, AS_DRAWN).minX : 0;
  return Math.max(...copies.map((copy) => copy.outline.maxX)) + margin - start;
}

/** Half pieces lie on the fold, which is no edge. */
function checkRollEdge(
  roll: RollStock,
  copy: CheckedCopy,
  margin: number,
  halves: ReadonlySet<string>,
): LayFinding | null {
  const { minX, minY, maxX, maxY } = copy.outline;
  const length = roll.length ?? Infinity;
  const distanceMm = Math.min(minX, minY, roll.width - maxY, length - maxX);
  const tolerance = lengthTolerance(copy.outline);
  const names = { path: copy.path, ...copyName(copy), stockId: roll.id };
  if (distanceMm < -tolerance) {
    const end = Math.min(length, Math.max(maxX, 0) + 1);
    const areaMm2 =
      copy.outline.area - overlapArea(copy.outline, laidOutline(boxPolygon(end, roll.width), AS_DRAWN));
    return { code: "plan-outside-stock", ...names, areaMm2 };
  }
  const cut = halves.has(copy.placement.pieceId) ? Math.min(minX, roll.width - maxY, length - maxX) : distanceMm;
  return cut < margin - tolerance
    ? { code: "plan-too-near-edge", ...names, distanceMm: cut, leastMm: margin }
    : null;
}

function boxPolygon(length: number, width: number): Polygon {
  return { outer: Float64Array.of(0, 0, length, 0, length, width, 0, width), holes: [] };
}

function checkOutlineEdge(cloth: LaidOutline, copy: CheckedCopy, margin: number): LayFinding | null {
  const names = { path: copy.path, ...copyName(copy), stockId: copy.stock.id };
  const areaMm2 = copy.outline.area - overlapArea(copy.outline, cloth);
  if (areaMm2 > areaTolerance(copy.outline)) return { code: "plan-outside-stock", ...names, areaMm2 };
  if (margin <= 0) return null;
  const distanceMm = outlineDistance(copy.outline, cloth, margin);
  return distanceMm < margin - lengthTolerance(copy.outline)
    ? { code: "plan-too-near-edge", ...names, distanceMm, leastMm: margin }
    : null;
}

function checkFlaws(flaws: readonly LaidOutline[], copy: CheckedCopy, gap: number): LayFinding[] {
  const { outline, stock } = copy;
  return flaws.flatMap((flaw, index): LayFinding[] => {
    if (flaw.minX - outline.maxX >= gap || outline.minX - flaw.maxX >= gap) return [];
    if (flaw.minY - outline.maxY >= gap || outline.minY - flaw.maxY >= gap) return [];
    const names = { path: copy.path, ...copyName(copy), stockId: stock.id, flaw: index };
    const areaMm2 = overlapArea(outline, flaw);
    if (areaMm2 > areaTolerance(outline, flaw)) return [{ code: "plan-on-flaw", ...names, areaMm2 }];
    if (gap <= 0) return [];
    const distanceMm = outlineDistance(outline, flaw, gap);
    return distanceMm < gap - lengthTolerance(outline, flaw)
      ? [{ code: "plan-too-near-flaw", ...names, distanceMm, leastMm: gap }]
      : [];
  });
}
