import { ringBox } from "../../../geometry/box.ts";
import type { Polygon, Ring } from "../../../geometry/ring.ts";
import type { LayPattern, Stock } from "../../problem/layProblem.ts";

/** What is left of a stock beyond `start`, seen from there; null when nothing is, or of a remnant that has been begun. */
export function cutFrom(stock: Stock, start: number, pattern: LayPattern | undefined): Stock | null {
  if (start === 0) return stock;
  if (stock.kind === "remnant") return null;
  const length = stock.length === null ? null : stock.length - start;
  if (length !== null && length <= 0) return null;
  const flaws = stock.flaws.map(({ outer, holes }): Polygon => {
    return { outer: back(outer, start), holes: holes.map((hole) => back(hole, start)) };
  });
  const [along, across] = stock.firstLine ?? [pattern?.firstAlong ?? 0, pattern?.firstAcross ?? 0];
  return {
    ...stock,
    length,
    flaws: flaws.filter(({ outer }) => ringBox(outer).maxX > 0),
    ...(pattern === undefined ? {} : { firstLine: [along - start, across] as const }),
  };
}

function back(ring: Ring, start: number): Ring {
  return ring.map((value, i) => (i % 2 === 0 ? value - start : value));
}
