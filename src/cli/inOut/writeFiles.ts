import { mkdirSync, renameSync, rmSync, statSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import type { CliTexts, FileFault } from "../words/cliTexts.ts";
import { plainProblem } from "./problemReport.ts";

/** A file to write, its name below the folder. */
export interface OutFile {
  readonly name: string;
  readonly data: string | Uint8Array;
}

/**
 * Writes all files or none: each is first written beside its place under a passing name, and only when every one
 * is on the disk are they renamed. Returns the paths written, in order. Throws `InputProblem` when the folder
 * cannot be made or written to; nothing is left behind then.
 */
export function writeFiles(folder: string, files: readonly OutFile[]): string[] {
  const staged: { passing: string; path: string }[] = [];
  const made = new Set<string>();
  try {
    for (const file of files) {
      const path = join(folder, file.name);
      const first = mkdirSync(dirname(path), { recursive: true });
      if (first !== undefined) made.add(first);
      if (statSync(path, { throwIfNoEntry: false })?.isDirectory())
        throw Object.assign(new Error(), { code: "EISDIR", path });
      const passing = `${path}.${process.pid}.part`;
      staged.push({ passing, path });
      writeFileSync(passing, file.data, { flag: "wx" });
    }
    for (const { passing, path } of staged) renameSync(passing, path);
  } catch (error) {
    for (const { passing } of staged) rmSync(passing, { force: true });
    for (const path of made) rmSync(path, { recursive: true, force: true });
    const { path = folder } = error as NodeJS.ErrnoException;
    throw plainProblem("cannot-write", path, (texts) => texts.files.notWritten(path, fileReason(error, texts)));
  }
  return staged.map(({ path }) => path);
}

const FAULTS: Readonly<Record<string, FileFault>> = {
  ENOENT: "missing",
  EACCES: "no-rights",
  EPERM: "no-rights",
  EISDIR: "is-folder",
  ENOTDIR: "path-through-file",
  EEXIST: "path-through-file",
  ENOSPC: "disk-full",
  EROFS: "disk-read-only",
  ERR_ENCODING_INVALID_ENCODED_DATA: "not-utf8",
};

/** Why a file could not be read or written, in words; those of the system where we have none. */
export function fileReason(error: unknown, { files }: CliTexts): string {
  const { code = "", message } = error as NodeJS.ErrnoException;
  const fault = FAULTS[code];
  return fault === undefined ? message : files.faults[fault];
}
