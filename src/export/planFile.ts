import type { LaidMats } from "../core/job/matsOf.ts";
import type { SheetInput } from "./cutsheet/projectSheet.ts";
import type { FontBytes } from "./fonts/faces.ts";

/** A file for the cutting table. */
export interface PlanFile {
  /** File name without a folder. */
  readonly name: string;
  readonly data: string | Uint8Array;
  /** What it is for, in a few words. */
  readonly about: string;
}

/** A file as it was made; what it is for is its kind's label where it does not say more. */
export type MadeFile = Omit<PlanFile, "about"> & { readonly about?: string };

/** Files, and in sentences what was not written and why. */
export interface WrittenFiles {
  readonly files: readonly MadeFile[];
  readonly notes: readonly string[];
}

/** What the files are made from. */
export interface PlanFilesInput extends SheetInput {
  readonly fonts: FontBytes;
  /** Mats laid for the project's machine, by material: of each that the machine may cut, when files for them are wanted. */
  readonly mats: ReadonlyMap<string, LaidMats>;
}
