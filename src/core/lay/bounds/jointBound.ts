import type { SearchTables } from "../problem/rectangles/searchTables.ts";
import { BREATH, type Breath } from "../search/breath.ts";
import { barRelaxation } from "./barRelaxation.ts";
import type { ReachableLengths } from "./reachableLengths.ts";

/** Nodes of the branching on whole numbers of pieces per way. */
const MOST_NODES = 60;
/** Ways beyond which the relaxation takes longer than it is worth. */
const MOST_WAYS = 220;

/** What a step of the bound reports. */
export interface BoundStep {
  /** Work done, in looks of the searches. */
  readonly work: number;
  /** Best proven bound so far, units. */
  readonly bound: number;
}

/**
 * Raises a lower bound on the end of any plan on an open region by ruling out trial lengths with the bar
 * relaxation (see there), whole numbers of pieces per way by branching. Bisects the reachable lengths between
 * `from` (known to be a bound) and `best` (known to be reached). Yields after every few pivots.
 */
export function* jointBound(
  tables: SearchTables,
  reachable: ReachableLengths,
  from: number,
  best: () => number,
): Generator<BoundStep | Breath, number, void> {
  let bound = reachable.atLeast(from);
  if (tables.ways > MOST_WAYS || tables.blocked.length > 0) return bound;
  // Everything below `bound` is ruled out; `open` could not be ruled out.
  let open = Infinity;
  for (;;) {
    const most = Math.min(open, best());
    if (bound >= most) return bound;
    const middle = Math.max(bound, reachable.atMost(Math.floor((bound + most - 1) / 2)));
    const verdict = yield* isPossible(tables, middle, bound);
    if (verdict) open = middle;
    else bound = reachable.atLeast(middle + 1);
    yield { work: 0, bound };
  }
}

function* isPossible(
  tables: SearchTables,
  length: number,
  bound: number,
): Generator<BoundStep | Breath, boolean, void> {
  const ways = Array.from({ length: tables.ways }, (_, way) => way).filter(
    (way) => tables.wayAlong[way]! <= length,
  );
  const sizesLeft = new Set(ways.map((way) => tables.waySize[way]!));
  if (sizesLeft.size < tables.sizes) return false;
  const relaxation = barRelaxation(tables, ways, length);
  yield BREATH;
  const open: Float64Array[] = [new Float64Array(ways.length)];
  for (let node = 0; open.length > 0; node++) {
    if (node >= MOST_NODES) return true;
    const least = open.pop()!;
    const solving = relaxation.solve(least);
    let step = solving.next();
    while (!step.done) {
      yield { work: step.value, bound };
      step = solving.next();
    }
    const { possible, lying } = step.value;
    if (!possible) continue;
    const at = mostFractional(lying);
    if (at < 0) return true;
    const other = ways.findIndex((way, k) => k !== at && tables.waySize[way] === tables.waySize[ways[at]!]);
    const count = tables.sizeCount[tables.waySize[ways[at]!]!]!;
    if (other < 0 || count - Math.floor(lying[at]!) < least[other]!) return true;
    // At most ⌊u⌋ this way (the others lie the other way), or at least ⌈u⌉.
    const fewer = least.slice();
    fewer[other] = count - Math.floor(lying[at]!);
    const more = least.slice();
    more[at] = Math.ceil(lying[at]!);
    open.push(fewer, more);
  }
  return false;
}

function mostFractional(lying: Float64Array): number {
  let at = -1;
  let worst = 1e-4;
  lying.forEach((value, k) => {
    const off = Math.abs(value - Math.round(value));
    if (off > worst) {
      worst = off;
      at = k;
    }
  });
  return at;
}
