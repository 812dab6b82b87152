import { type Box, ringBox } from "../../geometry/box.ts";
import { type Polygon, rectangleRing, solid } from "../../geometry/ring.ts";
import { rectangleEngine } from "../boxes/rectangles/rectangleEngine.ts";
import { outsideBoxes } from "../boxes/ruler/parted/outsideBoxes.ts";
import type { RegionJob, RegionPlan } from "../problem/region.ts";
import { nextTurn } from "../search/breath.ts";
import type { Engine, Search } from "../search/engine.ts";
import { boxEngine } from "./boxEngine.ts";

const boxes = boxEngine(rectangleEngine);

/**
 * One plan at once, for whoever waits: every piece as its box, on cloth of which only boxes are missing. It is legal,
 * takes more cloth than the pieces need, and ends after the first plan.
 */
export const quickStart: Engine = {
  id: "boxes-at-once",
  isStart: true,
  accepts: (job) => boxes.accepts(onBoxedCloth(job)),
  *search(job, budget, seed): Search {
    const search = boxes.search(onBoxedCloth(job), budget, seed);
    const first = yield* nextTurn(search);
    if (!first.done) yield first.value;
    return (first.done ? first.value : first.value.plan) ?? nothingLaid(job);
  },
};

function nothingLaid({ pieces, pinned }: RegionJob): RegionPlan {
  const left = pieces.map(({ id, count }) => count - pinned.filter(({ pieceId }) => pieceId === id).length);
  return { placements: pinned, left, length: 0 };
}

/** The job on a rectangle of cloth, with boxes as flaws that hold every flaw and all that lies outside the outline. */
function onBoxedCloth(job: RegionJob): RegionJob {
  const { outline, flaws } = job.region;
  const boxed = flaws.map(({ outer }) => boxPolygon(ringBox(outer)));
  if (outline === null) return { ...job, region: { ...job.region, flaws: boxed } };
  // Pieces keep the gap from flaws; from what is outside the cloth they keep the margin.
  const more = Math.max(0, job.margin - job.gap);
  const missing = outsideBoxes(outline).map(({ x, y, dx, dy }) =>
    boxPolygon({ minX: x - more, minY: y - more, maxX: x + dx + more, maxY: y + dy + more }),
  );
  const whole = boxPolygon(ringBox(outline.outer));
  return { ...job, region: { ...job.region, outline: whole, flaws: [...boxed, ...missing] } };
}

function boxPolygon({ minX, minY, maxX, maxY }: Box): Polygon {
  return solid(rectangleRing(minX, minY, maxX - minX, maxY - minY));
}
