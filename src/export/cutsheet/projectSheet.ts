import type { LaidCloth } from "../../core/job/laidCloth.ts";
import type { CutPiece } from "../../core/materials/cutPiece.ts";
import type { Project } from "../../core/project/project.ts";
import type { StrapResult } from "../../core/straps/build/strapResult.ts";
import type { Language } from "../../core/units/language.ts";
import { type CutSheet, cutSheetOf } from "./cutSheet.ts";
import { sheetWords } from "./sheetWords.ts";

/** What a whole cut sheet is made from. */
export interface SheetInput {
  readonly project: Project;
  readonly pieces: readonly CutPiece[];
  /** The straps worked out, for what the sheet says of their making. */
  readonly straps: readonly StrapResult[];
  readonly lays: readonly LaidCloth[];
  /** English when not said. */
  readonly language?: Language;
}

/** The whole cut sheet of a project: pieces, lays, purchase, order of work, cautions; the same for every host. */
export function projectSheet({ project, pieces, straps, lays, language = "en" }: SheetInput): CutSheet {
  const { name, bags, materials } = project;
  return cutSheetOf({
    ...sheetWords(project, straps, lays, language),
    language,
    project: name,
    bags,
    materials,
    pieces,
    tool: project.output.machine?.tool ?? null,
  });
}
