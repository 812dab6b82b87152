import type { Flaw } from "../../../core/materials/stock.ts";

/** Side of a flaw that was only pointed at, mm: a thumb's width, to be corrected in the list. */
const SIDE = 30;

/** A flaw where the pin went in. */
export function flawAt(x: number, y: number): Flaw {
  return { x: x - SIDE / 2, y: y - SIDE / 2, shape: { kind: "rectangle", along: SIDE, across: SIDE } };
}
