import type { RegionPlan } from "../problem/region.ts";
import { BREATH, type Pause } from "../search/breath.ts";
import { type Rng, seededRng } from "../search/rng.ts";
import { outlineBound } from "./bounds/outlineBound.ts";
import { slabBounds } from "./bounds/slabBound.ts";
import { CloseUp } from "./closeUp/closeUp.ts";
import type { CompiledJob } from "./compile/compileJob.ts";
import { type FillTuning, RegionFiller } from "./fillUp/fillRegion.ts";
import { planOf, spotsOf } from "./judge/planOf.ts";
import { PlanVerifier } from "./judge/verifyPlan.ts";
import { copySpots, emptySpots, type Spots, WorkLayout } from "./layout/workLayout.ts";
import { NoFitStore } from "./noFit/noFitStore.ts";
import { layRows, mayLieInRows } from "./rows/layRows.ts";
import { Improver, type ImproveTuning } from "./search/improve.ts";
import { plunge } from "./search/plunge.ts";
import { type SeparationTuning, Separator } from "./search/separate.ts";
import { bottomLeft, byFallingArea } from "./starts/bottomLeft.ts";
import { boxStart } from "./starts/boxStart.ts";
import { hasRepeats, layRepeats } from "./starts/repeats/layRepeats.ts";

/** Everything about the search that can be set; one set serves all jobs. */
export interface OutlineTuning {
  readonly separation: SeparationTuning;
  readonly improve: ImproveTuning;
  readonly fill: FillTuning;
  /** Whether jobs of many equal pieces start from dense pairs and columns. */
  readonly repeats: boolean;
}

/** Evaluations between two looks at whether the best layout has become a plan worth handing out. */
const EVALUATIONS_PER_LOOK = 100_000;
/** … and at least so many times what the last look cost in closing up by detail. */
const SEARCH_PER_LOOK = 6;

/** One search of one job: the stages, the incumbent, and the verified plan. */
export class OutlineRun {
  readonly state: WorkLayout;
  /** The best verified plan, and one that the host has not seen yet. */
  plan: RegionPlan;
  fresh: RegionPlan | null = null;
  /** Proven least length, mm, once known. */
  bound: number | null = null;
  /** Plans handed to the judge, and how many of them failed. */
  judged = 0;
  dropped = 0;
  private readonly compiled: CompiledJob;
  private readonly verifier: PlanVerifier;
  private readonly tuning: OutlineTuning;
  private readonly start: RegionPlan | null;
  private readonly seed: number;
  private readonly verified: Spots;
  /** The layout it came from, by the outlines that the search works on. */
  private readonly good: Spots;
  private closing: CloseUp | null = null;
  private closedEnd = Infinity;
  private stage: RegionFiller | Improver | null = null;
  private nextLook = 0;

  /** `start`: a plan of this job to go on from, instead of one of its own. */
  constructor(compiled: CompiledJob, seed: number, tuning: OutlineTuning, start: RegionPlan | null = null) {
    this.compiled = compiled;
    this.state = new WorkLayout(this.compiled, new NoFitStore(this.compiled));
    this.verifier = new PlanVerifier(compiled.job);
    this.tuning = tuning;
    this.start = start;
    this.seed = seed;
    this.verified = emptySpots(this.state.count);
    this.good = emptySpots(this.state.count);
    if (compiled.isDetailed) this.closing = new CloseUp(this.state, seededRng(seed), true);
    this.plan = planOf(this.compiled, this.verified);
  }

  /** A plan found elsewhere: the search goes on from it if it is better. */
  offer(plan: RegionPlan): void {
    const spots = emptySpots(this.state.count);
    if (this.stage !== null && spotsOf(this.compiled, plan, spots)) this.stage.offer(spots);
  }

  private isBetter(spots: Spots): boolean {
    const more = this.state.laidArea(spots) - this.state.laidArea(this.verified);
    return more > 0 || (more === 0 && spots.maxX < this.verified.maxX);
  }

  /** Makes `spots` the plan when it is better and passes from the raw outlines; else puts the last good one back. */
  private *look(spots: Spots): Generator<Pause, void> {
    this.nextLook = this.state.evaluations + EVALUATIONS_PER_LOOK;
    const held = emptySpots(this.state.count);
    copySpots(spots, held);
    if (this.closing !== null && this.stage !== null && this.state.missing(spots).length === 0) {
      // The same layout is not closed up twice.
      if (spots.maxX >= this.closedEnd) return;
      this.closedEnd = spots.maxX;
      const before = this.state.evaluations;
      yield* this.closeByDetail(held);
      const spent = this.state.evaluations - before;
      this.nextLook = this.state.evaluations + Math.max(EVALUATIONS_PER_LOOK, SEARCH_PER_LOOK * spent);
    }
    if (!this.isBetter(held)) return;
    const plan = planOf(this.compiled, held);
    const found = emptySpots(this.state.count);
    copySpots(spots, found);
    this.judged++;
    if (yield* this.verifier.passes(plan)) {
      copySpots(held, this.verified);
      copySpots(found, this.good);
      this.plan = plan;
      this.fresh = plan;
    } else {
      this.goBack(spots);
      this.dropped++;
    }
  }

  private *looking(stage: RegionFiller | Improver): Generator<Pause, void> {
    this.stage = stage;
    for (const pause of stage.run()) {
      if (pause === BREATH) {
        yield pause;
        continue;
      }
      if (this.state.evaluations > this.nextLook) yield* this.look(stage.best);
      yield;
    }
    yield* this.look(stage.best);
  }

  private isOpen(): boolean {
    return this.compiled.window.maxX === Infinity;
  }

  /**
   * Puts the last good plan back. Not while an open roll has none: a whole start that the judge sent back is better
   * than nothing, since the search closes it up exactly.
   */
  private goBack(spots: Spots): void {
    if (this.isOpen() && this.state.missing(this.verified).length > 0) return;
    copySpots(this.good, spots);
  }

  /** Closes up a layout by the outlines in detail: it has room that the coarser ones do not show. */
  private *closeByDetail(held: Spots): Generator<Pause, void> {
    const { state } = this;
    const now = emptySpots(state.count);
    copySpots(state.spots, now);
    copySpots(held, state.spots);
    const done = yield* this.closing!.run(this.leastEnd());
    const end = state.end();
    // As long as before will do: copies whose boxes touch may have lain in each other by a rounding.
    if (done && end <= held.maxX) {
      copySpots(state.spots, held);
      held.maxX = end;
    }
    copySpots(now, state.spots);
  }

  /** Whether the best layout so far is waiting to be verified; to be called when the budget is spent. */
  *finish(): Generator<Pause, void> {
    if (this.stage !== null) yield* this.look(this.stage.best);
  }

  /** The proven least end of the window, grid units. */
  private leastEnd(): number {
    const { job, unitsPerMm } = this.compiled;
    const end = this.bound === null ? -Infinity : (this.bound - (job.margin - job.gap / 2)) * unitsPerMm;
    return Math.max(this.state.leastEnd(), end);
  }

  /** Layouts of rows, each looked at as soon as it is found. */
  private *lookAtRows(rng: Rng, limit: number): Generator<Pause, void> {
    for (const found of layRows(this.state, rng, this.tuning, limit)) {
      if (found === undefined || found === BREATH) yield found;
      else yield* this.look(found);
    }
  }

  /** Shortens the plan that the search was given. */
  private *goOn(separator: Separator, rng: Rng): Generator<Pause, void> {
    const { state } = this;
    state.maxX = state.spots.maxX;
    // Coarser outlines overlap where the pieces touch.
    if (this.compiled.isDetailed && !(yield* new CloseUp(state, rng).run(state.leastEnd()))) return;
    state.spots.maxX = state.end();
    yield* this.looking(new Improver(state, separator, rng, this.tuning.improve, this.leastEnd()));
  }

  /** The stages, one after the other; no new start is begun past `limit` evaluations. */
  *run(limit: number): Generator<Pause, void> {
    const { state } = this;
    const rng = seededRng(this.seed);
    const separator = new Separator(state, rng, this.tuning.separation);
    if (this.start !== null && spotsOf(this.compiled, this.start, state.spots)) {
      yield* this.goOn(separator, rng);
      return;
    }
    const isBoxed = boxStart(state);
    if (isBoxed) yield* this.look(state.spots);
    yield;
    if (isBoxed && this.compiled.isDetailed && state.count > 0) yield* plunge(state, separator);
    else {
      state.spots.variant.fill(-1);
      yield* bottomLeft(state, byFallingArea(state));
    }
    yield* this.look(state.spots);
    this.goBack(state.spots);
    if (state.count === 0) return;
    this.bound = yield* outlineBound(this.compiled, state.store);
    yield;
    for (const bound of this.compiled.isDetailed ? [] : slabBounds(this.compiled.job)) {
      if (bound === BREATH) {
        yield BREATH;
        continue;
      }
      this.bound = Math.max(this.bound ?? 0, bound);
      yield;
    }
    if (this.tuning.repeats && !this.compiled.isDetailed && !state.isMatched && hasRepeats(state)) {
      yield* layRepeats(state, limit);
      yield* this.look(state.spots);
      this.goBack(state.spots);
    }
    if (this.tuning.repeats && this.compiled.isDetailed && mayLieInRows(state)) {
      yield* this.lookAtRows(rng, limit);
      this.goBack(state.spots);
    }
    if (state.missing(state.spots).length > 0) {
      // An open roll has room for whatever fits it; more room would not help what is left.
      if (this.isOpen()) return;
      const filler = new RegionFiller(state, separator, rng, this.tuning.fill);
      yield* this.looking(filler);
      copySpots(this.good, state.spots);
    }
    yield* this.looking(new Improver(state, separator, rng, this.tuning.improve, this.leastEnd()));
  }
}
