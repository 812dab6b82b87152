import type { BagCost } from "../../core/buying/bagCost.ts";
import { costOf, type JudgedCloth } from "../../core/job/laidCloth.ts";
import type { ProjectJob } from "../../core/job/projectJob.ts";
import type { Language } from "../../core/units/language.ts";
import { type PlanFiles, planFiles } from "../../export/planFiles.ts";
import { fontBytes } from "./fonts.ts";
import { materialPlan, type PlanDocument } from "./planDocument.ts";

/** What `lay --json` prints: the plan file's contents, and what is bought and left over. */
export interface LayDocument extends PlanDocument, BagCost {
  readonly currency: string;
}

/** The plan of a whole project as data. */
export function layDocument({ project }: ProjectJob, laid: readonly JudgedCloth[], seed: number): LayDocument {
  return {
    laywrightPlan: 1,
    project: project.name,
    seed,
    currency: project.currency,
    ...costOf(laid, project),
    materials: laid.map(({ material, problem, plan, leftOut, offcuts, purchase }) => ({
      ...materialPlan(material.name, problem, plan, leftOut),
      offcuts,
      purchase,
      cost: purchase.toPay,
    })),
  };
}

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
    fonts: fontBytes(),
    straps: read.straps,
    language,
  });
}
