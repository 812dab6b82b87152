import type { Ply } from "./foldPlan.ts";
import { bendAllowance } from "./ply.ts";

/** A strip wrapped once round a cord, its edges sewn together in a fin. mm. */
export interface WrappedSection {
  readonly kind: "wrapped";
  readonly ply: Ply;
  readonly cordDiameter: number;
  /** From the stitch against the cord to the raw edge. */
  readonly seamAllowance: number;
  readonly cutWidth: number;
  /** Outside diameter. */
  readonly finishedWidth: number;
}

/** Cut width for a cord: once round at the length-keeping depth of the material, and two allowances. At K 0.5 π (d + T) + 2 s. */
export function wrapOfCord(ply: Ply, cordDiameter: number, seamAllowance: number): WrappedSection {
  const round = bendAllowance(2 * Math.PI, cordDiameter / 2, ply.thickness, ply.neutral);
  return {
    kind: "wrapped",
    ply,
    cordDiameter,
    seamAllowance,
    cutWidth: round + 2 * seamAllowance,
    finishedWidth: cordDiameter + 2 * ply.thickness,
  };
}

/** The same strip the other way: what is left for each allowance when a cord is wrapped in a strip cut to `cutWidth`. */
export function wrapOfCut(ply: Ply, cordDiameter: number, cutWidth: number): WrappedSection {
  const round = bendAllowance(2 * Math.PI, cordDiameter / 2, ply.thickness, ply.neutral);
  return wrapOfCord(ply, cordDiameter, (cutWidth - round) / 2);
}
