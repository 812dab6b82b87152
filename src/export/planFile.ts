import type { SheetInput } from "./cutsheet/projectSheet.ts";
import type { FontBytes } from "./fonts/fontBytes.ts";

/** A file for the cutting table. */
export interface PlanFile {
  /** File name without a folder. */
  readonly name: string;
  readonly data: string | Uint8Array;
  /** What it is for, in a few words. */
  readonly about: string;
}

/** Files, and in sentences what was not written and why. */
export interface WrittenFiles {
  readonly files: readonly PlanFile[];
  readonly notes: readonly string[];
}

/** What the files are made from. */
export interface PlanFilesInput extends SheetInput {
  readonly fonts: FontBytes;
}
