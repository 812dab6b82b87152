import { checkPlan } from "../lay/check/checkPlan.ts";
import { chooseEngines } from "../lay/engines/chooseEngines.ts";
import type { LayPlan, LayProblem, Stock } from "../lay/problem/layProblem.ts";
import { arrange } from "../lay/search/arrange/arrange.ts";
import { inOneGo } from "../lay/search/breath.ts";
import { laserRisk } from "../materials/laser.ts";
import type { MachineSettings } from "../project/outputSettings.ts";
import { matProblem } from "./matProblem.ts";
import type { LayJob } from "./projectJob.ts";

/** The pieces of a material laid on a machine's mats. */
export interface LaidMats {
  readonly problem: LayProblem;
  readonly plan: LayPlan;
  /** The mats that are used, in order. */
  readonly mats: readonly Stock[];
  /** Pieces that no mat takes, by id: cut them by hand, or join them from shorter ones. */
  readonly tooLarge: readonly string[];
}

/** Evaluations for laying pieces on mats: a second or two, and the same mats every time. */
const MAT_EFFORT = 60_000;

/**
 * The pieces of a material laid on a machine's mats and checked.
 *
 * Errors: RangeError for a laser and what it must not touch (ask `laserRisk` first); Error when our own plan fails the
 *         checker.
 */
function matsOf({ material, problem: laid, singly: problem = laid }: LayJob, machine: MachineSettings): LaidMats {
  if (machine.tool === "laser" && laserRisk(material) !== null)
    throw new RangeError(`matsOf: a material that a laser may cut expected, got ${material.id}`);
  const onMats = matProblem(problem, {
    width: machine.bedWidth,
    height: machine.bedHeight,
    grip: machine.grip,
    apart: Math.max(machine.kerf, machine.overcut),
  });
  const plan = inOneGo(arrange(onMats, (job) => chooseEngines(job, "free"), { evaluations: MAT_EFFORT }, 1));
  const faults = checkPlan(onMats, plan);
  if (faults.length > 0) throw new Error(`matsOf: the plan for mats failed the checker: ${faults[0]!.code}`);
  return {
    problem: onMats,
    plan,
    mats: onMats.stocks.filter((stock) => plan.placements.some(({ stockId }) => stockId === stock.id)),
    tooLarge: plan.unplaced.map(({ pieceId }) => pieceId),
  };
}

/** The mats of every material that a project's machine may cut, by material; none without a machine. */
export function matsOfAll(lays: readonly LayJob[], machine: MachineSettings | null): ReadonlyMap<string, LaidMats> {
  if (machine === null) return new Map();
  const cuttable = lays.filter(({ material }) => machine.tool !== "laser" || laserRisk(material) === null);
  return new Map(cuttable.map((job) => [job.material.id, matsOf(job, machine)]));
}
