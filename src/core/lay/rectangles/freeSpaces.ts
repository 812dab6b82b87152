import type { PlacedRectangle } from "./rectangleJob.ts";
import type { SearchTables } from "./searchTables.ts";

/** Larger jobs are left to the skyline: the work grows with pieces times free spaces. */
const MOST_PIECES = 600;
/** Halvings of the stretch between bound and best plan for each order. */
const HALVINGS = 6;

/** A free space: along and across of its low corner, and its extents. */
type Space = readonly [along: number, across: number, length: number, width: number];

/** How a place is chosen: the least end, or the closest fit to a side of its free space. */
type Rule = "least-end" | "closest-fit";

/** What one laying out gave. */
interface Laid {
  readonly rectangles: readonly PlacedRectangle[];
  readonly end: number;
  readonly looks: number;
}

/** Told of every complete plan; answers the best end known, units. */
export type OfferPlan = (end: number, rectangles: readonly PlacedRectangle[]) => number;

/**
 * Plans that fill gaps far behind the front, which a skyline cannot: pieces of each order go into the maximal free
 * rectangles, by least end once and by closest fit at halved lengths between `bound` and the best end. Yields looks.
 * Good where wide pieces leave long gaps beside them. Source: J. Jylänki 2010, "A thousand ways to pack the bin"
 * (maximal rectangles, best short side), from memory.
 */
export function* freeSpacePlans(
  tables: SearchTables,
  orders: readonly Int32Array[],
  bound: number,
  best: number,
  offer: OfferPlan,
): Generator<number, void, void> {
  if (tables.pieces > MOST_PIECES || tables.blocked.length > 0) return;
  let end = best;
  for (const order of orders) {
    const laid = layInSpaces(tables, order, 2 * best, "least-end");
    if (laid.rectangles.length === order.length) end = offer(laid.end, laid.rectangles);
    yield laid.looks;
  }
  for (const order of orders) {
    let low = bound;
    for (let k = 0; k < HALVINGS && low < end; k++) {
      const cap = Math.floor((low + end - 1) / 2);
      const laid = layInSpaces(tables, order, cap, "closest-fit");
      if (laid.rectangles.length === order.length) end = offer(laid.end, laid.rectangles);
      else low = cap + 1;
      yield laid.looks;
    }
  }
}

/** Lays pieces in the order given until one finds no space before `cap`. O(pieces · free spaces). */
function layInSpaces(tables: SearchTables, order: Int32Array, cap: number, rule: Rule): Laid {
  const { wayAlong, wayAcross, wayIndex, sizeFirstWay, sizeSecondWay, width } = tables;
  const rectangles: PlacedRectangle[] = [];
  let spaces: Space[] = [[0, 0, cap, width]];
  let end = 0;
  let looks = 0;
  for (const size of order) {
    let bestWay = -1;
    let bestSpace: Space | null = null;
    let first = Infinity;
    let second = Infinity;
    for (const way of [sizeFirstWay[size]!, sizeSecondWay[size]!]) {
      if (way < 0) continue;
      const [dx, dy] = [wayAlong[way]!, wayAcross[way]!];
      looks += spaces.length;
      for (const space of spaces) {
        const restAlong = space[2] - dx;
        const restAcross = space[3] - dy;
        if (restAlong < 0 || restAcross < 0) continue;
        const isEnd = rule === "least-end";
        const one = isEnd ? space[0] + dx : Math.min(restAlong, restAcross);
        const two = isEnd ? space[1] : Math.max(restAlong, restAcross);
        if (one > first || (one === first && two >= second)) continue;
        [first, second, bestWay, bestSpace] = [one, two, way, space];
      }
    }
    if (bestSpace === null) break;
    const [along, across] = bestSpace;
    const taken: Space = [along, across, wayAlong[bestWay]!, wayAcross[bestWay]!];
    rectangles.push({ size, way: wayIndex[bestWay]!, along, across });
    end = Math.max(end, along + taken[2]);
    spaces = spacesWithout(spaces, taken);
  }
  return { rectangles, end, looks: looks + order.length };
}

/** The maximal free spaces once a rectangle is taken out of them. */
function spacesWithout(spaces: readonly Space[], [x, y, dx, dy]: Space): Space[] {
  const kept: Space[] = [];
  const made: Space[] = [];
  for (const space of spaces) {
    const [sx, sy, sdx, sdy] = space;
    if (x >= sx + sdx || x + dx <= sx || y >= sy + sdy || y + dy <= sy) {
      kept.push(space);
      continue;
    }
    if (x > sx) made.push([sx, sy, x - sx, sdy]);
    if (x + dx < sx + sdx) made.push([x + dx, sy, sx + sdx - x - dx, sdy]);
    if (y > sy) made.push([sx, sy, sdx, y - sy]);
    if (y + dy < sy + sdy) made.push([sx, y + dy, sdx, sy + sdy - y - dy]);
  }
  // Spaces that were not cut lie in none of the new ones, which are parts of spaces they did not lie in.
  for (const [i, space] of made.entries()) {
    const inOther = made.some((other, k) => k !== i && liesIn(space, other) && (k < i || !liesIn(other, space)));
    if (!inOther && !kept.some((other) => liesIn(space, other))) kept.push(space);
  }
  return kept;
}

function liesIn([x, y, dx, dy]: Space, [ox, oy, odx, ody]: Space): boolean {
  return x >= ox && y >= oy && x + dx <= ox + odx && y + dy <= oy + ody;
}
