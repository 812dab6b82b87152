import type { G } from "@svgdotjs/svg.js";
import { patternArt } from "../../../core/drawing/lay/patternArt.ts";
import type { LayPattern } from "../../../core/lay/problem/layProblem.ts";
import { contourPath, ringPath } from "../../parts/screenPath.ts";
import { tornEdge } from "./planPaths.ts";
import type { StockOnTable } from "./stockLayout.ts";

/** Tells grounds apart that look different. */
export function groundKeyOf(stocks: readonly StockOnTable[]): string {
  return JSON.stringify(
    stocks.map(({ stock, box, offsetX, offsetY, used, bound }) => [
      stock.id,
      stock.kind === "roll" && stock.folded,
      box,
      offsetX,
      offsetY,
      used,
      bound,
    ]),
  );
}

/** Tells patterns apart that look different. */
export function patternKeyOf(stocks: readonly StockOnTable[], pattern: LayPattern | undefined): string {
  const places = stocks.map(({ stock, box, offsetX, offsetY }) => [stock.id, box, offsetX, offsetY]);
  return JSON.stringify([pattern, places]);
}

/** The cloth's pattern over all stocks. */
export function putPattern(layer: G, stocks: readonly StockOnTable[], pattern: LayPattern): void {
  for (const { stock, box, offsetX, offsetY } of stocks) {
    const marks = patternArt(pattern, stock, box.maxX);
    if (marks.length === 0) continue;
    const path = layer.path(marks.flat().map(contourPath).join("")).attr("fill-rule", "evenodd");
    path.node.setAttribute("transform", `translate(${offsetX} ${offsetY})`);
  }
}

/** One stock: its cloth, edges, fold and flaws, how much of it is used and what it could be at best. */
export function putStock(layer: G, { stock, box, offsetX, offsetY, used, bound }: StockOnTable): void {
  const group = layer.group();
  group.node.setAttribute("transform", `translate(${offsetX} ${offsetY})`);
  if (stock.kind === "roll") {
    group.path(`M0 0H${box.maxX}V${stock.width}H0Z`).addClass("cloth");
    const edge = stock.width * 0.012;
    // Folded lengthwise, the lower edge is the fold and both selvedges lie at the upper one.
    const lower = stock.folded === true ? "" : `M0 ${-edge}H${box.maxX}V0H0Z`;
    group.path(`${lower}M0 ${stock.width}H${box.maxX}V${stock.width + edge}H0Z`).addClass("selvedge");
    if (stock.folded === true) group.path(`M0 0H${box.maxX}`).addClass("fold-edge");
    if (stock.length === null) group.path(tornEdge(box.maxX, stock.width)).addClass("torn");
    if (used > 0) {
      group.path(`M${used} 0H${box.maxX}V${stock.width}H${used}Z`).addClass("unused");
      group.path(`M${used} ${-edge * 3}V${stock.width + edge * 3}`).addClass("chalk");
    }
    if (bound !== null && bound > 0 && bound < used - 1)
      group.path(`M${bound} ${-edge * 3}V${stock.width + edge * 3}`).addClass("bound");
  } else {
    const rings = [stock.outline.outer, ...stock.outline.holes].map(ringPath).join("");
    group.path(rings).attr("fill-rule", "evenodd").addClass("cloth");
  }
  for (const flaw of stock.flaws) group.path(ringPath(flaw.outer)).addClass("flaw");
}
