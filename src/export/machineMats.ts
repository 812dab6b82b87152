import { layDrawing } from "../core/drawing/lay/layDrawing.ts";
import { pieceArt } from "../core/drawing/lay/pieceArt.ts";
import type { Drawing } from "../core/drawing/list/drawing.ts";
import { type MachineWish, machineDrawing } from "../core/drawing/machine/machineDrawing.ts";
import { matProblem } from "../core/job/matProblem.ts";
import { checkPlan } from "../core/lay/check/checkPlan.ts";
import { chooseEngines } from "../core/lay/engines/chooseEngines.ts";
import type { LayPlan, LayProblem } from "../core/lay/problem/layProblem.ts";
import { arrange } from "../core/lay/search/arrange/arrange.ts";
import type { CutPiece } from "../core/materials/cutPiece.ts";
import type { Material } from "../core/materials/material.ts";
import type { MachineSettings, OutputSettings } from "../core/project/outputSettings.ts";
import type { Language } from "../core/units/language.ts";
import { grainArrow } from "./grainArrow.ts";
import { laserRefusal } from "./laserRefusal.ts";

/** The mats of one material. */
export interface MachineMats {
  /** One drawing a mat, the whole bed, cuts in order. */
  readonly mats: readonly Drawing[];
  /** Names of pieces that no mat takes: cut them by hand, or join them from shorter ones. */
  readonly tooLarge: readonly string[];
  /** Why there is no mat at all, in a sentence; null when there is no reason. */
  readonly refusal: string | null;
}

/** Evaluations for laying pieces on mats: a second or two, and the same mats every time. */
const MAT_EFFORT = 60_000;

/**
 * The pieces of a material laid on a machine's mats, checked, and drawn for cutting; none of what a laser must not
 * touch. Throws when our own plan fails the checker.
 */
export function machineMats(
  material: Material,
  problem: LayProblem,
  pieces: readonly CutPiece[],
  output: OutputSettings,
  language: Language = "en",
): MachineMats {
  const { machine } = output;
  if (machine === null) return { mats: [], tooLarge: [], refusal: null };
  const refusal = laserRefusal(material, output, language);
  if (refusal !== null) return { mats: [], tooLarge: [], refusal };
  const onMats = matProblem(problem, {
    width: machine.bedWidth,
    height: machine.bedHeight,
    grip: machine.grip,
    apart: Math.max(machine.kerf, machine.overcut),
  });
  const plan = finished(arrange(onMats, (job) => chooseEngines(job, "free"), { evaluations: MAT_EFFORT }, 1));
  const faults = checkPlan(onMats, plan);
  if (faults.length > 0) throw new Error(`machineMats: the plan for mats failed the checker: ${faults[0]!.code}`);
  const art = pieceArt(pieces, output.lengths, language);
  const used = onMats.stocks.filter((stock) => plan.placements.some(({ stockId }) => stockId === stock.id));
  const wish = machineWish(output, machine);
  return {
    mats: used.map((stock) =>
      machineDrawing(layDrawing(stock, plan, art, grainArrow(material), language), wish, language),
    ),
    tooLarge: plan.unplaced.map(({ pieceId }) => art.get(pieceId)?.name ?? pieceId),
    refusal: null,
  };
}

/** How a project's machine cuts. */
function machineWish({ sharedEdges }: OutputSettings, machine: MachineSettings): MachineWish {
  return { ...machine, sharedOnce: sharedEdges === "once" && machine.kerf === 0 };
}

function finished(search: Generator<unknown, LayPlan, LayPlan | undefined>): LayPlan {
  for (let turn = search.next(); ; turn = search.next()) if (turn.done) return turn.value;
}
