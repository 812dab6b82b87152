import { isRectangle } from "../geometry/ring.ts";
import { boxEngine } from "./boxEngine.ts";
import { outlineEngine } from "./outlines/outlineEngine.ts";
import { rectangleEngine } from "./rectangles/rectangleEngine.ts";
import type { Engine, RegionJob } from "./types.ts";

/** How pieces are to be cut: anywhere, or along edge-to-edge ruler cuts. */
export type CutMode = "free" | "ruler";

const boxes = boxEngine(rectangleEngine);

/** Engines that are to race on a job; none when no engine can take it. */
export function chooseEngines(job: RegionJob, mode: CutMode): readonly Engine[] {
  if (mode === "ruler") return [];
  const straightFlaws = job.region.flaws.every((flaw) => isRectangle(flaw.outer, 1e-6));
  if (straightFlaws && rectangleEngine.accepts(job)) return [rectangleEngine];
  const withBoxes = job.pieces.some((piece) => isRectangle(piece.outline.outer, 1e-6));
  return [...(withBoxes ? [boxes] : []), outlineEngine].filter((engine) => engine.accepts(job));
}
