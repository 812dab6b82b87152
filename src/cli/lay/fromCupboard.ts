import type { CupboardPiece } from "../../core/cupboard/cupboard.ts";
import { offerPieces } from "../../core/cupboard/offered.ts";
import type { JudgedCloth } from "../../core/job/laidCloth.ts";
import { jobOf, type ProjectJob } from "../../core/job/projectJob.ts";
import type { Telling } from "../../export/cutsheet/shelfLabels.ts";
import { type Io, type ParsedArgs, UsageError } from "../command.ts";
import { readCupboardFile, soundOf } from "../cupboard/cupboardDisk.ts";
import { shortText } from "../cupboard/cupboardText.ts";
import { CUPBOARD_TEXTS } from "../words/cupboardTexts.ts";

/** A project with the pieces of a cupboard offered to it; without `--cupboard` as it is. */
export interface OfferedJob {
  readonly job: ProjectJob;
  readonly pieces: readonly CupboardPiece[];
}

/** Offers the cupboard's pieces to a project. Throws `UsageError` and `InputProblem`. */
export function withCupboard(job: ProjectJob, args: ParsedArgs, io: Io): OfferedJob {
  const file = args.values.get("cupboard");
  const shade = args.values.get("shade") ?? null;
  if (file === undefined) {
    if (shade !== null) throw new UsageError((say) => say.onlyWith("shade", "cupboard"));
    return { job, pieces: [] };
  }
  const { project, pieces } = soundOf(offerPieces(job.project, readCupboardFile(file), shade));
  if (pieces.length > 0) io.err(`${CUPBOARD_TEXTS[io.language].offered(listed(pieces, job, io))}\n`);
  return { job: jobOf(project, io.language), pieces };
}

/** Tells which of the offered pieces are cut, and that they are to be taken out. */
export function tellUsed(
  { job, pieces }: OfferedJob,
  laid: readonly JudgedCloth[],
  args: ParsedArgs,
  io: Io,
): void {
  const file = args.values.get("cupboard");
  if (file === undefined) return;
  const texts = CUPBOARD_TEXTS[io.language];
  const cut = new Set(laid.flatMap(({ plan }) => plan.placements.map(({ stockId }) => stockId)));
  const used = pieces.filter(({ code }) => cut.has(code));
  if (used.length === 0) io.err(`${texts.noneUsed}\n`);
  else {
    io.err(`${texts.used(listed(used, job, io))}\n`);
    const out = args.values.get("out");
    if (out !== undefined) io.err(`${texts.takeNext(`laywright cupboard take ${file} ${out}/plan.json`)}\n`);
  }
}

function listed(pieces: readonly CupboardPiece[], { project }: ProjectJob, { language }: Io): string {
  const telling: Telling = { lengths: project.output.lengths, language };
  return pieces.map((piece) => shortText(piece, telling)).join(", ");
}
