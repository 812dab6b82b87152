import { checkPlan } from "../../lay/check/checkPlan.ts";
import type { LayPiece, LayPlan, LayProblem, RollStock } from "../../lay/problem/layProblem.ts";
import { BREATH, type Breath } from "../../lay/search/breath.ts";
import type { Material } from "../../materials/material.ts";
import type { Project } from "../../project/project.ts";
import { jobOf } from "../projectJob.ts";
import { type QuickSearch, quickPlan } from "../stocks/quickPlan.ts";

/** A rectangle of cloth that is there, without its selvedges, mm. */
export interface OwnedPiece {
  readonly length: number;
  readonly width: number;
}

/** How many of something come out of a piece, as a plan that the checker has passed shows; null for none. */
export interface Made {
  readonly count: number;
  readonly laid: LaidPiece | null;
}

/** What lies on the piece: a closed roll of its size. */
export interface LaidPiece {
  readonly problem: LayProblem;
  readonly plan: LayPlan;
}

/** What a piece makes: bags alone; each strap alone; the bags, and of each strap how many besides. */
export interface FromPiece {
  readonly bags: Made;
  readonly straps: readonly { readonly strapId: string; readonly alone: Made; readonly besides: Made }[];
}

/** More than this of one thing nobody counts by laying. */
const MOST = 200;

/**
 * What can be made from a piece of one cloth. Every number is laid out and checked; none is proven to be the most, but
 * where a number more was laid and left something out, the search found no place for it.
 *
 * Cost: a quick search for each number looked at: doubled until it does not fit, then halved.
 */
export function* fromPiece(
  project: Project,
  material: Material,
  piece: OwnedPiece,
  search: QuickSearch,
): Generator<Breath, FromPiece, undefined> {
  // Laid as short as can be and held against the length: the searches for open rolls find the tighter plans.
  const stock: RollStock = { kind: "roll", id: "piece", width: piece.width, length: null, flaws: [] };
  const plain: Project = { ...project, pins: [], plans: undefined, matches: undefined, centred: undefined };
  const problemFor = (changed: Project): LayProblem | null => {
    const single = changed.materials.map((one) => (one.id === material.id ? { ...one, spread: null } : one));
    const lay = jobOf({ ...changed, materials: single }).lays.find((each) => each.material.id === material.id);
    return lay === undefined ? null : { ...lay.problem, stocks: [stock], pinned: [] };
  };
  const bagsOf = (bags: number): LayProblem | null => (bags === 0 ? null : problemFor({ ...plain, bags }));
  const most = (problemOf: (count: number) => LayProblem | null, limit?: number) =>
    mostOf(problemOf, piece.length, search, limit);
  const bags = yield* most(bagsOf);
  const base = bagsOf(bags.count);
  const straps: FromPiece["straps"][number][] = [];
  for (const strap of project.straps) {
    const one = problemFor({ ...plain, bags: 1, panels: [], seams: undefined, straps: [{ ...strap, count: 1 }] });
    if (one === null) continue;
    const times = (count: number): LayPiece[] =>
      one.pieces.map((each) => ({ ...each, id: `${MORE}${each.id}`, count: each.count * count }));
    const alone = yield* most((count) => ({ ...one, pieces: times(count) }));
    const besides = yield* most(
      (count) => ({ ...one, pieces: [...(base?.pieces ?? []), ...times(count)] }),
      base === null ? 0 : alone.count,
    );
    straps.push({ strapId: strap.id, alone, besides });
  }
  return { bags, straps };
}

/** A plan that ends a rounding beyond the piece still lies on it, mm. */
const SAME = 1e-6;

/** Before the ids of pieces that are made besides the bags. */
const MORE = "more ";

/** Id that a laid piece has in the project: what lies beside the bags is the same strap again. */
export function ownPieceId(laidId: string): string {
  return laidId.startsWith(MORE) ? laidId.slice(MORE.length) : laidId;
}

/** The largest number that finds a place: doubled until one does not, then halved. */
function* mostOf(
  problemOf: (count: number) => LayProblem | null,
  length: number,
  search: QuickSearch,
  limit: number = MOST,
): Generator<Breath, Made, undefined> {
  let best: Made = { count: 0, laid: null };
  let tooMany = limit + 1;
  for (let next = 1; next < tooMany; ) {
    yield BREATH;
    const problem = problemOf(next);
    const laid: LaidPiece | null = problem === null ? null : yield* fitting(problem, length, search);
    if (laid === null) tooMany = next;
    else best = { count: next, laid };
    next = tooMany > limit && laid !== null ? Math.min(2 * next, limit) : Math.floor((best.count + tooMany) / 2);
    if (next <= best.count) break;
  }
  return best;
}

/** A checked plan with everything on it; null where something finds no place. */
function* fitting(
  problem: LayProblem,
  length: number,
  search: QuickSearch,
): Generator<Breath, LaidPiece | null, undefined> {
  const plan = yield* quickPlan(problem, search);
  if (plan.unplaced.length > 0 || plan.uses.some(({ usedLength }) => usedLength > length + SAME)) return null;
  const stocks = problem.stocks.map((stock) => ({ ...stock, length: Math.max(length, plan.uses[0]!.usedLength) }));
  const closed: LayProblem = { ...problem, stocks: stocks as readonly RollStock[] };
  const faults = checkPlan(closed, plan);
  if (faults.length > 0) throw new Error(`fromPiece: the checker refused a plan: ${faults[0]!.code}`);
  return { problem: closed, plan };
}
