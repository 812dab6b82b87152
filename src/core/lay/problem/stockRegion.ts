import { type Box, ringBox } from "../../geometry/box.ts";
import type { Polygon, Ring } from "../../geometry/ring.ts";
import type { Placement, Stock, StockPlacement } from "./layProblem.ts";
import type { Region } from "./region.ts";

/** A stock as a region that starts at (0, 0), and where that point lies on the stock. */
export interface StockRegion {
  readonly stock: Stock;
  readonly region: Region;
  readonly originX: number;
  readonly originY: number;
}

/** The region of a stock. A remnant is moved so that its box starts at the origin. */
export function stockRegion(stock: Stock): StockRegion {
  if (stock.kind === "roll") {
    const { width, length, flaws } = stock;
    return { stock, region: { width, length, outline: null, flaws }, originX: 0, originY: 0 };
  }
  const box: Box = ringBox(stock.outline.outer);
  const shift = (polygon: Polygon): Polygon => shiftedPolygon(polygon, -box.minX, -box.minY);
  const region: Region = {
    width: box.maxY - box.minY,
    length: box.maxX - box.minX,
    outline: shift(stock.outline),
    flaws: stock.flaws.map(shift),
  };
  return { stock, region, originX: box.minX, originY: box.minY };
}

/** A placement of the region as it lies on the stock. */
export function onStock({ stock, originX, originY }: StockRegion, placement: Placement): StockPlacement {
  const { pieceId, copy, turnDeg, mirrored, x, y } = placement;
  return { pieceId, copy, stockId: stock.id, x: x + originX, y: y + originY, turnDeg, mirrored };
}

/** A placement on the stock as it lies in the region. */
export function inRegion({ originX, originY }: StockRegion, placement: StockPlacement): Placement {
  const { pieceId, copy, turnDeg, mirrored, x, y } = placement;
  return { pieceId, copy, x: x - originX, y: y - originY, turnDeg, mirrored };
}

function shiftedPolygon({ outer, holes }: Polygon, dx: number, dy: number): Polygon {
  return { outer: shiftedRing(outer, dx, dy), holes: holes.map((hole) => shiftedRing(hole, dx, dy)) };
}

function shiftedRing(ring: Ring, dx: number, dy: number): Ring {
  return ring.map((value, i) => value + (i % 2 === 0 ? dx : dy));
}
