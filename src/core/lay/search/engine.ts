import type { RegionJob, RegionPlan } from "../problem/region.ts";
import type { Breath } from "./breath.ts";

/**
 * How pieces are to be cut: anywhere; edge to edge with a ruler; edge to edge crosswise, lengthwise, crosswise and a trim;
 * or crosswise, lengthwise and a trim.
 */
export const CUT_MODES = ["free", "ruler", "few-stages", "two-stages"] as const;

export type CutMode = (typeof CUT_MODES)[number];

/** Ways of cutting whose plans are weighed against each other where a maker chooses: two stages take more cloth. */
export const CHOICE_MODES: readonly CutMode[] = ["free", "ruler", "few-stages"];

/** One turn of a search. `plan` is set only when it is better than every one before. */
export interface SearchStep {
  /** Evaluations spent so far by this search. */
  readonly evaluations: number;
  readonly plan: RegionPlan | null;
  /** Best proven lower bound on the length so far (shortest) or on the area left out (most), else null. */
  readonly bound: number | null;
}

/**
 * A packing engine. `search` yields at least every 20 ms on this class of machine (turns, and breaths inside them), so
 * a host can stop it by not calling `next()`; it returns when its budget is spent or the plan is proven. A host may pass a better plan
 * found elsewhere to `next(plan)`; the engine may go on from it. Results depend on arguments alone.
 */
export interface Engine {
  readonly id: string;
  /** Whether its plans are only a start for the others: once beaten it hardly gets turns in a race. */
  readonly isStart?: boolean;
  /** Whether it chooses the phases of matched groups itself where they are free; others are told them. */
  readonly choosesPhases?: boolean;
  /** Whether its plans spare strips narrower than the job's least one, and tell a toll where they do not. */
  readonly heedsStrips?: boolean;
  /** Whether the engine can take the job at all (e.g. rectangles only). */
  accepts(job: RegionJob): boolean;
  search(job: RegionJob, budget: SearchBudget, seed: number): Search;
}

export interface SearchBudget {
  /** Evaluations the search may spend; Infinity when the host stops it. */
  readonly evaluations: number;
}

export type Search = Generator<SearchStep | Breath, RegionPlan, RegionPlan | undefined>;
