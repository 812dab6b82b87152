import { isLoose } from "../../problem/layProblem.ts";
import type { Pause } from "../../search/breath.ts";
import { type Rng, seededRng } from "../../search/rng.ts";
import { compileSteps } from "../compile/compileJob.ts";
import { emptySpots, type Spots, WorkLayout } from "../layout/workLayout.ts";
import { NoFitStore } from "../noFit/noFitStore.ts";
import { Improver, type ImproveTuning } from "../search/improve.ts";
import { plunge } from "../search/plunge.ts";
import { type SeparationTuning, Separator } from "../search/separate.ts";
import { boxStart } from "../starts/boxStart.ts";
import { hasRepeats } from "../starts/repeats/layRepeats.ts";
import { type RowBlock, rowBlocks, singlesOf } from "./rowBlocks.ts";
import { type RowCount, rowJobOf, spotsOfRows } from "./rowJob.ts";

/** Choices of rows that are searched, evaluations for each by the job's copies, and at most of all there are. */
const CHOICES = 6;
const EFFORT_PER_COPY = 20_000;
const MOST_EFFORT = 0.12;
/** What a choice has come to is told first after this part of its effort, then each time the effort has doubled. */
const FIRST_TOLD = 16;
/** Share of shapes that are laid one by one in a choice, and of draws that take as many of a row as there are copies for. */
const LAID_SINGLY = 0.2;
const ALL_OF_A_ROW = 0.6;

/** Whether rows are worth looking for: mostly many copies of few shapes, at the turns allowed and no others. */
export function mayLieInRows(state: WorkLayout): boolean {
  return !state.isMatched && hasRepeats(state) && !state.job.job.pieces.some(isLoose);
}

/** Rows drawn at random until no copies are left for one; what remains is laid one by one. */
function drawnRows(
  rows: readonly RowBlock[],
  singles: readonly RowBlock[],
  counts: readonly number[],
  rng: Rng,
): RowCount[] {
  const left = [...counts];
  const singly = counts.map(() => rng.unit() < LAID_SINGLY);
  const out = new Map<RowBlock, number>();
  for (;;) {
    const open = rows.filter(({ shape, places }) => left[shape]! >= places.length && !singly[shape]);
    if (open.length === 0) break;
    const block = open[rng.below(open.length)]!;
    const { shape, places } = block;
    const most = Math.floor(left[shape]! / places.length);
    const times = rng.unit() < ALL_OF_A_ROW ? most : 1 + rng.below(most);
    out.set(block, (out.get(block) ?? 0) + times);
    left[shape]! -= times * places.length;
  }
  for (const [shape, count] of left.entries()) if (count > 0) out.set(singles[shape]!, count);
  return [...out].map(([block, count]) => ({ block, count }));
}

/**
 * Jobs of many copies whose shapes fit into each other in rows: rows are laid as one piece each, which leaves the search
 * fewer pieces to put right, in a few choices of rows one after the other. Yields each layout of copies that is shorter
 * than all before (`maxX` its end), else pauses. Evaluations count in `state`; nothing new is begun past `limit`.
 */
export function* layRows(
  state: WorkLayout,
  rng: Rng,
  tuning: { readonly separation: SeparationTuning; readonly improve: ImproveTuning },
  limit: number,
): Generator<Pause | Spots, void> {
  const compiled = state.job;
  const counts = compiled.shapes.map(() => 0);
  for (const { shape } of compiled.items) counts[shape]!++;
  const singles = singlesOf(compiled);
  const rows = yield* rowBlocks(compiled, singles, counts);
  if (rows.length === 0) return;
  const effort = Math.min(EFFORT_PER_COPY * state.count, MOST_EFFORT * limit);
  let end = Infinity;
  for (let k = 0; k < CHOICES && state.evaluations < limit; k++) {
    const chosen = drawnRows(rows, singles, counts, rng);
    const compiling = compileSteps(rowJobOf(compiled, chosen), true);
    let step = compiling.next();
    for (; !step.done; step = compiling.next()) yield;
    const compiledRows = step.value;
    const inner = new WorkLayout(compiledRows, new NoFitStore(compiledRows));
    const own = seededRng(1 + rng.below(2 ** 30));
    const separator = new Separator(inner, own, tuning.separation);
    if (!boxStart(inner)) continue;
    const before = state.evaluations;
    for (const pause of plunge(inner, separator)) {
      state.evaluations = before + inner.evaluations;
      yield pause;
    }
    const improver = new Improver(inner, separator, own, tuning.improve, inner.leastEnd());
    const found = emptySpots(state.count);
    const isShorter = (): boolean => {
      spotsOfRows(compiled, chosen, compiledRows, improver.best, found);
      return found.maxX < end;
    };
    let tellAt = effort / FIRST_TOLD;
    for (const pause of improver.run()) {
      state.evaluations = before + inner.evaluations;
      if (inner.evaluations > effort) break;
      yield pause;
      if (inner.evaluations < tellAt) continue;
      tellAt *= 2;
      if (!isShorter()) continue;
      end = found.maxX;
      yield found;
    }
    if (!isShorter()) continue;
    end = found.maxX;
    yield found;
  }
}
