import type { LaidCloth } from "../../../core/job/laidCloth.ts";
import type { CutPiece } from "../../../core/materials/cutPiece.ts";
import type { OutputSettings } from "../../../core/project/outputSettings.ts";
import type { Project } from "../../../core/project/project.ts";
import type { PlanFile } from "../../../export/planFile.ts";
import { downloadFile, fileNameOf } from "../../files/projectFiles.ts";

/** Changes output settings as one named step. */
export type SetOutput = (part: Partial<OutputSettings>, label: string, key?: string) => void;

/** What every stack works from; the plans have passed the checker. */
export interface StackInput {
  readonly project: Project;
  readonly pieces: readonly CutPiece[];
  readonly lays: readonly LaidCloth[];
  /** The material whose pages are looked at. */
  readonly shown: LaidCloth | null;
  /** False while parts cannot be worked out and she has not said that files may be saved without them. */
  readonly maySave: boolean;
}

/** The input with the lay that is looked at alone: one button saves one material's files. */
export function shownOnly(input: StackInput): StackInput {
  return { ...input, lays: input.shown === null ? [] : [input.shown] };
}

/** Hands a file to the browser's downloads, named after the project; gives that name. */
export function savePlanFile(project: Project, { name, data }: PlanFile): string {
  const ending = name.slice(name.lastIndexOf("."));
  const type = TYPES[ending] ?? "application/octet-stream";
  const stem = fileNameOf(project.name, "");
  const full = `${stem}-${name}`;
  downloadFile(full, new Blob([data as BlobPart], { type }));
  return full;
}

const TYPES: Readonly<Record<string, string>> = {
  ".pdf": "application/pdf",
  ".svg": "image/svg+xml",
  ".dxf": "image/vnd.dxf",
  ".csv": "text/csv",
  ".txt": "text/plain",
};
