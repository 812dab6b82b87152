import { dirname, join } from "node:path";
import type { CliTexts, FileFault } from "../words/cliTexts.ts";
import { type Disk, NODE_DISK } from "./disk.ts";
import { plainProblem } from "./toldProblem.ts";

/** A file to write, its name below the folder. */
export interface OutFile {
  readonly name: string;
  readonly data: string | Uint8Array;
}

/** Endings of the passing names, after the name and the number of the process. */
export const PASSING = ".laywright-part";
export const BEFORE = ".laywright-before";

/** A file on its way: its bytes under a passing name, and what stood in its place under another. */
interface Staged {
  readonly path: string;
  readonly passing: string;
  readonly before: string;
  placed: boolean;
}

/**
 * Writes all files or none: each is first written beside its place under a passing name, and only when every one is on
 * the disk do they take their places. The first file is the list of the others: it is taken away before any of them
 * changes and put back last, so that it never stands beside files that are not its own, whenever the program is killed
 * (`undoUnfinished` then brings the earlier files back). Files that are `outlived` go with the same step. Returns the paths written, in order. Throws `InputProblem`
 * when the folder cannot be made or written to; everything is as it was then.
 */
export function writeFiles(
  folder: string,
  files: readonly OutFile[],
  outlived: readonly string[] = [],
  disk: Disk = NODE_DISK,
): string[] {
  const staged: Staged[] = [];
  const made = new Set<string>();
  try {
    for (const file of files) stage(disk, join(folder, file.name), file.data, staged, made);
    const [list, ...rest] = [...staged];
    if (list !== undefined && rest.length + outlived.length > 0 && disk.exists(list.path))
      disk.rename(list.path, list.before);
    for (const name of outlived) {
      const gone = onItsWay(join(folder, name));
      staged.push(gone);
      disk.rename(gone.path, gone.before);
    }
    for (const one of rest) {
      if (disk.exists(one.path)) disk.keep(one.path, one.before);
      disk.rename(one.passing, one.path);
      one.placed = true;
    }
    // What stands alone is replaced in one step.
    if (list !== undefined) disk.rename(list.passing, list.path);
  } catch (error) {
    putBack(disk, staged, made);
    const { path = folder } = error as NodeJS.ErrnoException;
    throw plainProblem("cannot-write", path, (texts) => texts.files.notWritten(path, fileReason(error, texts)));
  }
  for (const { before } of staged) attempt(() => disk.remove(before));
  return files.map(({ name }) => join(folder, name));
}

function stage(disk: Disk, path: string, data: OutFile["data"], staged: Staged[], made: Set<string>): void {
  const first = disk.makeFolder(dirname(path));
  if (first !== undefined) made.add(first);
  if (disk.isFolder(path)) throw Object.assign(new Error(), { code: "EISDIR", path });
  const file = onItsWay(path);
  staged.push(file);
  disk.write(file.passing, data);
}

function onItsWay(path: string): Staged {
  const own = `${path}.${process.pid}`;
  return { path, passing: own + PASSING, before: own + BEFORE, placed: false };
}

/** Everything as it was before, as far as the disk lets us. */
function putBack(disk: Disk, staged: readonly Staged[], made: ReadonlySet<string>): void {
  for (const { path, passing, before, placed } of staged.toReversed()) {
    attempt(() => disk.remove(passing));
    if (disk.exists(before)) attempt(() => disk.rename(before, path));
    else if (placed) attempt(() => disk.remove(path));
  }
  for (const path of made) attempt(() => disk.removeFolder(path));
}

function attempt(work: () => void): void {
  try {
    work();
  } catch {
    // It stays, and the next run takes it away.
  }
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
