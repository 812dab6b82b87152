import type { JudgedCloth } from "../../core/job/laidCloth.ts";
import { matsOfAll } from "../../core/job/matsOf.ts";
import type { ProjectJob } from "../../core/job/projectJob.ts";
import type { OutputId } from "../../export/outputs.ts";
import { type PlanFiles, planFiles } from "../../export/planFiles.ts";
import type { Io } from "../command.ts";
import { CLI_TEXTS } from "../words/words.ts";
import { fontBytes } from "./fonts.ts";

/**
 * Every file for the cutting table, or those of the kinds named; a terminal shows how far they are. Call only with lays
 * that the checker has passed.
 */
export async function layFiles(
  read: ProjectJob,
  laid: readonly JudgedCloth[],
  io: Io,
  wanted?: readonly OutputId[],
): Promise<PlanFiles> {
  const { language } = io;
  const { writing } = CLI_TEXTS[language].lay;
  const input = {
    project: read.project,
    pieces: read.pieces,
    lays: laid,
    mats: matsOfAll(laid, read.project.output.machine),
    fonts: fontBytes(),
    straps: read.straps,
    language,
  };
  const made = await planFiles(input, wanted, (...how) => io.progress(writing(...how)));
  io.progress("");
  return made;
}
