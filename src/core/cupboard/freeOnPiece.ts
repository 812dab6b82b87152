import { longestStripOf, type Offcut, offcutsOf } from "../buying/offcuts.ts";
import { contourBox } from "../geometry/contourArcs.ts";
import type { Polygon } from "../geometry/ring.ts";
import { shapeContour, shapePolygon } from "../geometry/shape.ts";
import { flawPolygon, type MaterialStock } from "../materials/stock.ts";

/** The largest rectangle and the longest strip along the grain that lie free on a piece of stock, in its own frame. */
export function freeOnPiece(stock: MaterialStock): {
  readonly largest: Offcut | null;
  readonly strip: Offcut | null;
} {
  const region = regionOf(stock);
  if (region === null) return { largest: null, strip: null };
  const flaws = stock.flaws.map(flawPolygon);
  return { largest: offcutsOf(region, flaws)[0] ?? null, strip: longestStripOf(region, flaws) };
}

/** The box of a piece with its outline; null for a roll that is bought as long as is needed. */
function regionOf(stock: MaterialStock): { length: number; width: number; outline: Polygon | null } | null {
  if (stock.kind === "roll")
    return stock.length === null ? null : { length: stock.length, width: stock.width, outline: null };
  const { maxX, maxY } = contourBox(shapeContour(stock.shape));
  const isPlain = stock.shape.kind === "rectangle";
  return { length: maxX, width: maxY, outline: isPlain ? null : shapePolygon(stock.shape) };
}
