import { ringBox } from "../../geometry/box.ts";
import { rectangleRing, solid } from "../../geometry/ring.ts";
import type { RegionJob } from "../problem/region.ts";
import { BREATH } from "../search/breath.ts";
import type { Engine, Search } from "../search/engine.ts";

/**
 * Lays every piece as if it were its bounding box. A box turned by quarters has the box of the turned piece, so the
 * poses hold for the pieces as they are. A start for mixed jobs; its bound is not theirs and is withheld.
 */
export function boxEngine(rectangles: Engine): Engine {
  return {
    id: `${rectangles.id}-of-boxes`,
    isStart: true,
    heedsStrips: rectangles.heedsStrips === true,
    accepts: (job) => rectangles.accepts(boxedJob(job)),
    *search(job, budget, seed): Search {
      const inner = rectangles.search(boxedJob(job), budget, seed);
      for (let turn = inner.next(); ; turn = inner.next()) {
        if (turn.done) return turn.value;
        yield turn.value === BREATH ? BREATH : { ...turn.value, bound: null };
      }
    },
  };
}

function boxedJob(job: RegionJob): RegionJob {
  const pieces = job.pieces.map((piece) => {
    const { minX, minY, maxX, maxY } = ringBox(piece.outline.outer);
    return { ...piece, outline: solid(rectangleRing(minX, minY, maxX - minX, maxY - minY)) };
  });
  return { ...job, pieces };
}
