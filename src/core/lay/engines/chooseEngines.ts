import { isRectangle } from "../../geometry/box.ts";
import { matchedEngine } from "../boxes/matched/matchedEngine.ts";
import {
  matchedFewStagesEngine,
  matchedRulerEngine,
  matchedTwoStagesEngine,
} from "../boxes/matched/matchedRulerEngine.ts";
import { besidePinnedEngine } from "../boxes/rectangles/besidePinned.ts";
import { rectangleEngine } from "../boxes/rectangles/rectangleEngine.ts";
import { partedEngine } from "../boxes/ruler/parted/partedEngine.ts";
import { fewStagesEngine, rulerEngine, twoStagesEngine } from "../boxes/ruler/rulerEngine.ts";
import { oneStrapEngine } from "../boxes/straps/oneStrapEngine.ts";
import { outlineEngine } from "../outlines/outlineEngine.ts";
import { isMatched } from "../problem/lattice.ts";
import { mayLieAslant } from "../problem/rectangles/prepare.ts";
import type { RegionJob } from "../problem/region.ts";
import type { CutMode, Engine } from "../search/engine.ts";
import { boxEngine } from "./boxEngine.ts";
import { quickStart } from "./quickStart.ts";

const TOLERANCE = 1e-6;
const boxes = boxEngine(rectangleEngine);
const matchedBoxes = boxEngine(matchedEngine);
const parted = partedEngine(rulerEngine, rulerEngine);
const partedFewStages = partedEngine(rulerEngine, fewStagesEngine);
const partedTwoStages = partedEngine(rulerEngine, twoStagesEngine);
/** In this order. Closed cloth of many units and cloth with flaws is not laid in few stages, but still by ruler. */
const BY_RULER: Readonly<Record<Exclude<CutMode, "free">, readonly Engine[]>> = {
  ruler: [rulerEngine, boxEngine(rulerEngine), parted, boxEngine(parted)],
  "few-stages": [
    fewStagesEngine,
    boxEngine(fewStagesEngine),
    rulerEngine,
    boxEngine(rulerEngine),
    partedFewStages,
    boxEngine(partedFewStages),
  ],
  "two-stages": [
    twoStagesEngine,
    boxEngine(twoStagesEngine),
    rulerEngine,
    boxEngine(rulerEngine),
    partedTwoStages,
    boxEngine(partedTwoStages),
  ],
};
const onPattern = eitherEngine(matchedRulerEngine, rulerEngine);
const matchedParted = partedEngine(onPattern, onPattern);
const matchedPartedFewStages = partedEngine(onPattern, eitherEngine(matchedFewStagesEngine, fewStagesEngine));
const matchedPartedTwoStages = partedEngine(onPattern, eitherEngine(matchedTwoStagesEngine, twoStagesEngine));
/** The same for jobs of which pieces are held to the pattern. */
const MATCHED_BY_RULER: typeof BY_RULER = {
  ruler: [matchedRulerEngine, boxEngine(matchedRulerEngine), matchedParted, boxEngine(matchedParted)],
  "few-stages": [
    matchedFewStagesEngine,
    boxEngine(matchedFewStagesEngine),
    matchedPartedFewStages,
    boxEngine(matchedPartedFewStages),
  ],
  "two-stages": [
    matchedTwoStagesEngine,
    boxEngine(matchedTwoStagesEngine),
    matchedPartedTwoStages,
    boxEngine(matchedPartedTwoStages),
  ],
};

/**
 * Engines that are to race on a job. Curved pieces are cut out of boxes in the ruler modes; what no ruler engine can
 * take (pinned pieces that straight cuts do not part, pieces that lie aslant) is laid freely.
 */
export function chooseEngines(job: RegionJob, mode: CutMode): readonly Engine[] {
  if (mode !== "free") {
    const byRuler = (isMatched(job) ? MATCHED_BY_RULER : BY_RULER)[mode].find((engine) => engine.accepts(job));
    if (byRuler) return [byRuler];
  }
  if (isMatched(job)) return matchedEngines(job);
  const straightFlaws = job.region.flaws.every((flaw) => isRectangle(flaw.outer, TOLERANCE));
  if (straightFlaws && rectangleEngine.accepts(job)) {
    if (mayLieAslant(job)) return [rectangleEngine, outlineEngine];
    const first = [besidePinnedEngine, oneStrapEngine].filter((engine) => engine.accepts(job));
    return [...first, rectangleEngine];
  }
  const withBoxes = job.pieces.some((piece) => isRectangle(piece.outline.outer, TOLERANCE));
  const start = withBoxes && boxes.accepts(job) ? boxes : isClear(job) ? null : quickStart;
  return [...(start === null ? [] : [start]), outlineEngine].filter((engine) => engine.accepts(job));
}

/** What is held to a pattern is laid freely by engines that know where it may lie. */
function matchedEngines(job: RegionJob): readonly Engine[] {
  if (matchedEngine.accepts(job)) return [matchedEngine];
  return [matchedBoxes, outlineEngine].filter((engine) => engine.accepts(job));
}

/** Open cloth with nothing on it: there the outline engine has a plan at once. */
function isClear({ region, pinned }: RegionJob): boolean {
  return region.length === null && region.flaws.length === 0 && pinned.length === 0;
}

/** The first engine for the jobs that it takes, the other for the rest. */
function eitherEngine(first: Engine, other: Engine): Engine {
  const engineOf = (job: RegionJob): Engine => (first.accepts(job) ? first : other);
  return {
    id: first.id,
    accepts: (job) => engineOf(job).accepts(job),
    search: (job, budget, seed) => engineOf(job).search(job, budget, seed),
  };
}
