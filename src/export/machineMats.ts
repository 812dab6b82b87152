import { layDrawing } from "../core/drawing/lay/layDrawing.ts";
import { grainArrow, pieceArt } from "../core/drawing/lay/pieceArt.ts";
import type { Drawing } from "../core/drawing/list/drawing.ts";
import { type MachineWish, machineDrawing } from "../core/drawing/machine/machineDrawing.ts";
import type { LaidMats } from "../core/job/matsOf.ts";
import type { LayJob } from "../core/job/projectJob.ts";
import type { CutPiece } from "../core/materials/cutPiece.ts";
import type { MachineSettings, OutputSettings } from "../core/project/outputSettings.ts";
import type { Language } from "../core/units/language.ts";
import { FILE_TEXTS } from "../core/words/words.ts";
import { laserRefusal } from "./laserRefusal.ts";
import type { DrawnMat } from "./outputBench.ts";

/** The mats of one material. */
export interface MachineMats {
  /** One drawing a mat, the whole bed, cuts in order. */
  readonly mats: readonly Drawing[];
  /** Names of pieces that no mat takes: cut them by hand, or join them from shorter ones. */
  readonly tooLarge: readonly string[];
  /** Why there is no mat at all, in a sentence; null when there is no reason. */
  readonly refusal: string | null;
}

/**
 * The mats of a material drawn for cutting, `laid` by `matsOf`; none of what a laser must not touch, and why, in words.
 *
 * Errors: RangeError when the machine may cut the material and nothing was laid.
 */
export function machineMats(
  { material }: LayJob,
  laid: LaidMats | undefined,
  pieces: readonly CutPiece[],
  output: OutputSettings,
  language: Language = "en",
): MachineMats {
  const { machine } = output;
  if (machine === null) return { mats: [], tooLarge: [], refusal: null };
  const refusal = laserRefusal(material, output, language);
  if (refusal !== null) return { mats: [], tooLarge: [], refusal };
  if (laid === undefined) throw new RangeError(`machineMats: mats laid for ${material.id} expected`);
  const art = pieceArt(pieces, output.lengths, language);
  const wish = machineWish(output, machine);
  return {
    mats: laid.mats.map((stock) =>
      machineDrawing(layDrawing(stock, laid.plan, art, grainArrow(material), language), wish, language),
    ),
    tooLarge: laid.tooLarge.map((id) => art.get(id)?.name ?? id),
    refusal: null,
  };
}

/** How a project's machine cuts. */
function machineWish({ sharedEdges }: OutputSettings, machine: MachineSettings): MachineWish {
  return { ...machine, sharedOnce: sharedEdges === "once" && machine.kerf === 0 };
}

/** The mats of a material with the names of their files. */
export function drawnMats(
  { mats }: MachineMats,
  project: string,
  material: string,
  stem: string,
  language: Language,
): DrawnMat[] {
  return mats.map((drawing, i) => ({
    drawing,
    title: `${project}: ${material}`,
    stem: `${stem}-mat-${i + 1}`,
    about: FILE_TEXTS[language].about.mat(i + 1, mats.length),
  }));
}
