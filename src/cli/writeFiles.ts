import { mkdirSync, renameSync, rmSync, statSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
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
      if (statSync(path, { throwIfNoEntry: false })?.isDirectory()) throw new Error(`${path} is a folder`);
      const passing = `${path}.${process.pid}.part`;
      staged.push({ passing, path });
      writeFileSync(passing, file.data, { flag: "wx" });
    }
    for (const { passing, path } of staged) renameSync(passing, path);
  } catch (error) {
    for (const { passing } of staged) rmSync(passing, { force: true });
    for (const path of made) rmSync(path, { recursive: true, force: true });
    throw plainProblem("cannot-write", folder, `Nothing was written: ${reasonOf(error)}`);
  }
  return staged.map(({ path }) => path);
}

/** A file system error in words. */
export function reasonOf(error: unknown): string {
  const { code, message } = error as NodeJS.ErrnoException;
  const known: Record<string, string> = {
    ENOENT: "there is no such file",
    EACCES: "it may not be read or written with your rights",
    EPERM: "it may not be read or written with your rights",
    EISDIR: "it is a folder",
    ENOTDIR: "a part of its path is a file",
    EEXIST: "a part of its path is a file",
    ENOSPC: "the disk is full",
    EROFS: "the disk is read-only",
  };
  return (code && known[code]) || message;
}
