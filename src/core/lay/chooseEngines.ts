import { isRectangle } from "../geometry/ring.ts";
import { boxEngine } from "./boxEngine.ts";
import { outlineEngine } from "./outlines/outlineEngine.ts";
import { rectangleEngine } from "./rectangles/rectangleEngine.ts";
import { rulerEngine } from "./ruler/rulerEngine.ts";
import type { Engine, RegionJob } from "./types.ts";

/** How pieces are to be cut: anywhere, or along edge-to-edge ruler cuts. */
export type CutMode = "free" | "ruler";

const boxes = boxEngine(rectangleEngine);
const rulerBoxes = boxEngine(rulerEngine);

/**
 * Engines that are to race on a job; none when no engine can take it. In ruler mode pieces with curved or slanted
 * edges are laid as their boxes; a region a ruler cannot part (flaws, pinned pieces, skins) is laid freely.
 */
export function chooseEngines(job: RegionJob, mode: CutMode): readonly Engine[] {
  if (mode === "ruler") {
    const ruler = [rulerEngine, rulerBoxes].find((engine) => engine.accepts(job));
    if (ruler !== undefined) return [ruler];
  }
  const straightFlaws = job.region.flaws.every((flaw) => isRectangle(flaw.outer, 1e-6));
  if (straightFlaws && rectangleEngine.accepts(job)) return [rectangleEngine];
  const withBoxes = job.pieces.some((piece) => isRectangle(piece.outline.outer, 1e-6));
  return [...(withBoxes ? [boxes] : []), outlineEngine].filter((engine) => engine.accepts(job));
}
