import { isMatched } from "../../problem/lattice.ts";
import { isRectangleJob } from "../../problem/rectangles/prepare.ts";
import type { RegionJob } from "../../problem/region.ts";
import type { Engine } from "../../search/engine.ts";
import { cutRule } from "./cutInOrder.ts";
import { ordersEngine } from "./ordersEngine.ts";

/** Cuts across, along, across, and a trim. */
const FEW_TURNS = 4;
/** Cuts across, along, and a trim. */
const FEWEST_TURNS = 3;

/**
 * Rectangles of which some are held to the cloth's pattern, laid so that ruler cuts from edge to edge part them all: what
 * lies between a box and the rung it begins at comes off with a cut of its own. All phases are known. Strips too narrow for
 * the ruler are spared where that takes little cloth. Its bound is that of free plans without the pattern.
 */
export const matchedRulerEngine: Engine = byRuler("matched-ruler", Infinity);

/** The same in few turns between cuts across and along. */
export const matchedFewStagesEngine: Engine = byRuler("matched-ruler-in-few-turns", FEW_TURNS);

/** The same, and the cloth is turned once, or twice for a trim. */
export const matchedTwoStagesEngine: Engine = byRuler("matched-ruler-in-three-turns", FEWEST_TURNS);

/** Plans of the same kind that no ruler need cut: strips may be as narrow as they come. */
export const matchedCutsEngine: Engine = ordersEngine("matched-cuts", isClearMatchedJob, cutRule(Infinity, false));

function byRuler(id: string, turns: number): Engine {
  return ordersEngine(id, isClearMatchedJob, cutRule(turns, true), true);
}

/** Clear cloth: what is missing of other cloth is parted off before. */
function isClearMatchedJob(job: RegionJob): boolean {
  return job.region.flaws.length === 0 && job.pinned.length === 0 && isMatched(job) && isRectangleJob(job);
}
