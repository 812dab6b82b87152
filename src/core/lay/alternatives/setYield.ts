import type { Orientation } from "../../geometry/pose.ts";
import { polygonArea, rectangleRing, solid } from "../../geometry/ring.ts";
import { chooseEngines } from "../engines/chooseEngines.ts";
import type { LayPlan, LayProblem, Stock } from "../problem/layProblem.ts";
import { arrange } from "../search/arrange/arrange.ts";

/** One kind of strip, and how many of it a set has. mm. */
export interface SetStrip {
  readonly width: number;
  readonly length: number;
  readonly perSet: number;
  /** Allowed on this cloth; never empty. */
  readonly orientations: readonly Orientation[];
}

/** Strips that are needed together, on one piece of cloth. */
export interface SetOnCloth {
  readonly strips: readonly SetStrip[];
  readonly stock: Stock;
  /** Least distance between strips, and to flaws; and to the edge of the cloth. mm. */
  readonly gap: number;
  readonly margin: number;
}

/** How many whole sets a piece of cloth gives. */
export interface SetYield {
  readonly sets: number;
  /** No plan holds more. */
  readonly bound: number;
  readonly proven: boolean;
  /** Of the sets alone. */
  readonly plan: LayPlan;
  readonly problem: LayProblem;
}

/** Id of a strip in the plan. */
function stripId(index: number): string {
  return `strip-${index + 1}`;
}

function problemOf({ strips, stock, gap, margin }: SetOnCloth, sets: number): LayProblem {
  const pieces = strips.map(({ width, length, perSet, orientations }, i) => ({
    id: stripId(i),
    outline: solid(rectangleRing(0, 0, length, width)),
    count: sets * perSet,
    orientations,
    freeTurn: false,
  }));
  return { materialId: "cloth", pieces, stocks: [stock], gap, margin, pinned: [] };
}

function laid(problem: LayProblem, evaluations: number): LayPlan {
  const search = arrange(problem, (job) => chooseEngines(job, "free"), { evaluations }, 1);
  for (let turn = search.next(); ; turn = search.next()) if (turn.done) return turn.value;
}

/** Area of a stock, mm²; infinite for an open roll. Flaws may overlap each other and its edge: they are not taken off, so that it bounds. */
function roomOf(stock: Stock): number {
  if (stock.kind === "remnant") return polygonArea(stock.outline);
  return stock.length === null ? Number.POSITIVE_INFINITY : stock.length * stock.width;
}

/** Whole sets in a plan. */
function wholeSets({ strips }: SetOnCloth, plan: LayPlan): number {
  const counts = new Map<string, number>();
  for (const { pieceId } of plan.placements) counts.set(pieceId, (counts.get(pieceId) ?? 0) + 1);
  return Math.min(...strips.map(({ perSet }, i) => Math.floor((counts.get(stripId(i)) ?? 0) / perSet)));
}

/** More sets than this are not asked for. */
const MOST_SETS = 2000;

/**
 * Most whole sets of strips that a limited roll, a leftover or a skin gives, round its flaws: as many as the area
 * could hold are laid, then numbers between what was laid and what could be, until the two meet or the search finds
 * no more. The bound is that of the area. Deterministic for the same `evaluations`, which each try may take.
 *
 * Errors: RangeError on an open roll, which holds any number.
 * Cost:   some ten searches of `evaluations`.
 */
export function setYield(wish: SetOnCloth, evaluations: number): SetYield {
  const room = roomOf(wish.stock);
  if (!Number.isFinite(room)) throw new RangeError("setYield: an open roll holds any number of sets");
  const area = wish.strips.reduce((sum, { width, length, perSet }) => sum + width * length * perSet, 0);
  const bound = Math.min(MOST_SETS, Math.floor(room / area + 1e-9));
  const none = problemOf(wish, 0);
  let best = { sets: 0, plan: laid(none, 1), problem: none };
  const attempt = (sets: number): number => {
    const problem = problemOf(wish, sets);
    const plan = laid(problem, evaluations);
    const whole = plan.unplaced.length === 0 ? sets : wholeSets(wish, plan);
    if (whole > best.sets)
      best = whole === sets ? { sets, plan, problem } : { ...best, ...withoutRest(wish, whole, plan) };
    return whole;
  };
  if (bound > 0) attempt(bound);
  let [low, high] = [best.sets, bound];
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if (attempt(middle) >= middle) low = Math.max(middle, best.sets);
    else high = middle - 1;
    low = Math.max(low, best.sets);
  }
  return { ...best, bound, proven: best.sets === bound };
}

/** A plan of whole sets: the first copies that lie there, named anew, without what belongs to no whole set. */
function withoutRest(wish: SetOnCloth, sets: number, plan: LayPlan): Pick<SetYield, "sets" | "plan" | "problem"> {
  const taken = new Map<string, number>();
  const most = new Map(wish.strips.map(({ perSet }, i) => [stripId(i), sets * perSet]));
  const placements = plan.placements.flatMap((one) => {
    const copy = taken.get(one.pieceId) ?? 0;
    if (copy >= most.get(one.pieceId)!) return [];
    taken.set(one.pieceId, copy + 1);
    return [{ ...one, copy }];
  });
  const problem = problemOf(wish, sets);
  return { sets, problem, plan: { ...plan, placements, unplaced: [] } };
}

/** The length of an open roll that so many sets need. */
export interface LengthForSets {
  /** mm. */
  readonly length: number;
  readonly bound: number;
  readonly proven: boolean;
  readonly plan: LayPlan;
  readonly problem: LayProblem;
}

/** Shortest length found of an open roll for so many sets; null when a strip fits it in no allowed direction. */
export function lengthForSets(wish: SetOnCloth, sets: number, evaluations: number): LengthForSets | null {
  const problem = problemOf(wish, sets);
  const plan = laid(problem, evaluations);
  const [use] = plan.uses;
  if (plan.unplaced.length > 0 || use === undefined) return null;
  const bound = use.bound ?? 0;
  return { length: use.usedLength, bound, proven: use.usedLength <= bound + 1e-6, plan, problem };
}
