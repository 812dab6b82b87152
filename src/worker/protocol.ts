import type { LayPlan, LayProblem } from "../core/lay/problem/layProblem.ts";
import type { CutMode } from "../core/lay/search/engine.ts";

/** One search of one worker. */
export interface SearchOrder {
  readonly problem: LayProblem;
  readonly mode: CutMode;
  readonly seed: number;
  /** Infinity when the host stops it. */
  readonly evaluations: number;
  /** Whether to wait for the others at the end of every epoch. */
  readonly meets: boolean;
  /** A plan found elsewhere, told at the end of the first turn. */
  readonly from?: LayPlan | undefined;
}

/** Host → worker. `order` numbers the searches of a worker; messages of an older one are stale. */
export type ToWorker =
  | { readonly kind: "start"; readonly order: number; readonly search: SearchOrder }
  /** Answer to `met`: go on, from this plan if it is better. */
  | { readonly kind: "go"; readonly order: number; readonly plan: LayPlan | null }
  | { readonly kind: "stop"; readonly order: number };

/** Worker → host. */
export type FromWorker =
  /** A better plan, told at once. */
  | { readonly kind: "plan"; readonly order: number; readonly plan: LayPlan; readonly evaluations: number }
  /** The end of an epoch: the worker waits for `go`. */
  | { readonly kind: "met"; readonly order: number; readonly evaluations: number }
  /** What a worker that meets nobody has spent so far. */
  | { readonly kind: "spent"; readonly order: number; readonly evaluations: number }
  | { readonly kind: "done"; readonly order: number; readonly plan: LayPlan; readonly evaluations: number }
  | { readonly kind: "failed"; readonly order: number; readonly reason: string };

/** One end of a line between host and worker. */
export interface Line<Out, In> {
  send(message: Out): void;
  listen(hear: (message: In) => void): void;
}

/** A worker as its host holds it. */
export interface WorkerLine extends Line<ToWorker, FromWorker> {
  /** Ends the worker for good. */
  close(): void;
}
