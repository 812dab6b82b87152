import type { JudgedCloth } from "../../core/job/laidCloth.ts";
import { matsOfAll } from "../../core/job/matsOf.ts";
import type { ProjectJob } from "../../core/job/projectJob.ts";
import type { Language } from "../../core/units/language.ts";
import { type PlanFiles, planFiles } from "../../export/planFiles.ts";
import { fontBytes } from "./fonts.ts";

/** Every file for the cutting table. Call only with lays that the checker has passed. */
export async function layFiles(
  read: ProjectJob,
  laid: readonly JudgedCloth[],
  language: Language,
): Promise<PlanFiles> {
  return planFiles({
    project: read.project,
    pieces: read.pieces,
    lays: laid,
    mats: matsOfAll(laid, read.project.output.machine),
    fonts: fontBytes(),
    straps: read.straps,
    language,
  });
}
