import { isMatched, settledPhases } from "../../problem/lattice.ts";
import type { LayPlan, LayProblem } from "../../problem/layProblem.ts";
import { type Extent, pieceExtents } from "../../problem/pieceExtent.ts";
import type { RegionJob } from "../../problem/region.ts";
import { type StockRegion, stockRegion } from "../../problem/stockRegion.ts";
import { BREATH, type Breath } from "../breath.ts";
import type { Engine, SearchBudget } from "../engine.ts";
import { type ReasonOf, unplacedReasons } from "./unplacedReasons.ts";

/** Engines that are to race on a region; at least one. */
export type ChooseEngines = (job: RegionJob) => readonly Engine[];

/** Coordinates of outlines measured between two breaths. */
const COORDINATES_PER_BREATH = 100_000;

/** What every part of an arrangement needs. */
export interface LayingDesk {
  readonly problem: LayProblem;
  readonly engines: ChooseEngines;
  readonly seed: number;
  readonly extents: readonly (readonly Extent[])[];
  readonly extentsById: ReadonlyMap<string, readonly Extent[]>;
  readonly reason: ReasonOf;
  /** Closed stocks in their order, then open rolls. */
  readonly stocks: readonly StockRegion[];
}

/** Measures every piece in each orientation and sorts the stocks. Yields a breath after many corners. */
export function* layingDesk(
  problem: LayProblem,
  engines: ChooseEngines,
  seed: number,
): Generator<Breath, LayingDesk, unknown> {
  const stocks = problem.stocks.map(stockRegion);
  const extents: (readonly Extent[])[] = [];
  let measured = 0;
  for (const piece of problem.pieces) {
    const own = pieceExtents(piece);
    extents.push(own);
    measured += own.length * piece.outline.outer.length;
    if (measured < COORDINATES_PER_BREATH) continue;
    measured = 0;
    yield BREATH;
  }
  const held = withPinnedPhases(problem, stocks);
  return {
    problem: held,
    engines,
    seed,
    extents,
    extentsById: new Map(problem.pieces.map((piece, i) => [piece.id, extents[i]!])),
    reason: unplacedReasons(held),
    stocks: [
      ...stocks.filter(({ region }) => region.length !== null),
      ...stocks.filter(({ region }) => region.length === null),
    ],
  };
}

/** The problem with the phases of free groups that pieces put down by hand have settled. */
function withPinnedPhases(problem: LayProblem, stocks: readonly StockRegion[]): LayProblem {
  if (problem.pattern === undefined || problem.pinned.length === 0) return problem;
  let { phases } = problem;
  for (const where of stocks) {
    const here = problem.pinned.filter(({ stockId }) => stockId === where.stock.id);
    const [firstAlong, firstAcross] = where.stock.firstLine ?? [
      problem.pattern.firstAlong,
      problem.pattern.firstAcross,
    ];
    phases = settledPhases(problem.pieces, { ...problem.pattern, firstAlong, firstAcross }, phases, here);
  }
  return { ...problem, phases };
}

/** Copies not pinned down, by piece. */
export function freeCopies({ problem }: LayingDesk): number[][] {
  return problem.pieces.map(({ id, count }) => {
    const pinned = new Set(problem.pinned.filter((pin) => pin.pieceId === id).map((pin) => pin.copy));
    return Array.from({ length: count }, (_, copy) => copy).filter((copy) => !pinned.has(copy));
  });
}

/** One turn of a search for a whole plan. `plan` is set only when it is better than every one before. */
export interface ArrangeStep {
  readonly evaluations: number;
  readonly plan: LayPlan | null;
}

/** A search for a plan on all stocks. A host may pass a better plan found elsewhere to `next(plan)`. */
export type Arrangement = Generator<ArrangeStep | Breath, LayPlan, LayPlan | undefined>;

/** A search for plans of problems with fewer rules than the one it is asked for. */
export type Arranger = (problem: LayProblem, budget: SearchBudget) => Arrangement;

/**
 * Of 80 drawn jobs of one to thirty copies on closed cloth, two had something more left out after so many evaluations a
 * copy than after 200,000; both were jobs of which not all fits.
 */
const EACH_COPY = 2_000;
/** Where the first round of a search goes on to anyway; what is matched may find its first place only then. */
const MOST = 200_000;

/** Evaluations below which a search is not worth ending, whatever was asked for: closed cloth is half filled before. */
export function leastEffort(problem: LayProblem): number {
  if (isMatched(problem)) return MOST;
  return Math.min(MOST, EACH_COPY * problem.pieces.reduce((sum, { count }) => sum + count, 0));
}
