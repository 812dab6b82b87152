import { packByBlocks, type StrapTile } from "./blockRecursion.ts";
import {
  questionOf,
  type StrapOnCloth,
  type StrapPlacement,
  UNITS_PER_MM,
  type YieldQuestion,
} from "./strapProblem.ts";
import { yieldBound } from "./yieldBounds.ts";

/** Pinwheels are nested this deep; deeper was never better on thousands of random straps. */
const NESTING = 3;
/** Fills tried before the recursion settles for rows; about a quarter of a second. */
const MOST_TRIES = 3e6;

/** How many straps a piece of cloth gives. */
export interface StrapYield {
  /** Straps in the plan. */
  readonly count: number;
  /** No plan holds more. */
  readonly bound: number;
  /** The plan is proven best: `count` equals `bound`. */
  readonly proven: boolean;
  /** Straps when all lie lengthwise; 0 when that is not allowed. */
  readonly lengthwise: number;
  /** Straps when all lie crosswise; 0 when that is not allowed. */
  readonly crosswise: number;
  readonly placements: readonly StrapPlacement[];
  /** Length of cloth the plan reaches to, mm. */
  readonly usedLength: number;
}

/**
 * Most straps on `clothLength` mm of cloth (a roll's end or a rectangular remnant), with the plan and a bound.
 * Straps in one direction when that is as good, else mixed. Deterministic.
 *
 * Errors: RangeError when a size is not positive or the gap is negative.
 * Cost:   milliseconds for tens of straps; at most about a quarter of a second.
 */
export function strapYield(cloth: StrapOnCloth, clothLength: number, mostTries: number = MOST_TRIES): StrapYield {
  const { strapWidth, strapLength, clothWidth, gap } = cloth;
  if (!(strapWidth > 0 && strapLength > 0 && clothWidth > 0 && clothLength > 0 && gap >= 0))
    throw new RangeError(
      `strapYield: sizes must be above 0 and the gap at least 0, not ${[strapWidth, strapLength, clothWidth, clothLength, gap]}`,
    );
  const question = questionOf(cloth, clothLength);
  const lengthwise = cloth.directions === "crosswise" ? 0 : rowsOf(question, false).length;
  const crosswise = cloth.directions === "lengthwise" ? 0 : rowsOf(question, true).length;
  const oneWay = Math.max(lengthwise, crosswise);
  const bound = cloth.directions === "both" ? Math.max(oneWay, yieldBound(question)) : oneWay;
  let tiles: readonly StrapTile[] = rowsOf(question, crosswise > lengthwise);
  if (bound > oneWay) {
    const mixed = packByBlocks(question, bound, NESTING, mostTries);
    if (mixed.count > oneWay) tiles = mixed.tiles;
  } else if (oneWay === 0) tiles = [];
  const end = tiles.reduce((far, tile) => Math.max(far, tile.x + (tile.crosswise ? question.b : question.a)), 0);
  return {
    count: tiles.length,
    bound,
    proven: tiles.length === bound,
    lengthwise,
    crosswise,
    placements: tiles.map(placementOf),
    usedLength: tiles.length === 0 ? 0 : end / UNITS_PER_MM - gap,
  };
}

function rowsOf(question: YieldQuestion, crosswise: boolean): StrapTile[] {
  const along = crosswise ? question.b : question.a;
  const across = crosswise ? question.a : question.b;
  const tiles: StrapTile[] = [];
  for (let x = 0; x + along <= question.length; x += along) {
    for (let y = 0; y + across <= question.width; y += across) tiles.push({ x, y, crosswise });
  }
  return tiles;
}

function placementOf(tile: StrapTile): StrapPlacement {
  return { x: tile.x / UNITS_PER_MM, y: tile.y / UNITS_PER_MM, rotation: tile.crosswise ? 90 : 0 };
}
