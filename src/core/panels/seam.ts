import type { EdgeRef } from "./panel.ts";

/** One edge of one panel. */
export interface SeamEdge {
  readonly panel: string;
  readonly edge: EdgeRef;
}

/**
 * Two runs of edges that are sewn together. Each run is in order, counter-clockwise round its panels; lying face to
 * face, the second is met backwards.
 */
export interface Seam {
  readonly first: readonly SeamEdge[];
  readonly second: readonly SeamEdge[];
  /** How much longer the first is meant to be, mm: what is eased in. */
  readonly ease?: number | undefined;
}
