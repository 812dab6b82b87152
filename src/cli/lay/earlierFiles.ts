import { createHash } from "node:crypto";
import { readFileSync, rmSync } from "node:fs";
import { basename, join } from "node:path";
import { type Disk, NODE_DISK } from "../inOut/disk.ts";
import { BEFORE, type OutFile, PASSING } from "../inOut/writeFiles.ts";

/** A written file as `plan.json` remembers it: its name in the folder and the SHA-256 of its bytes, in hex. */
export interface WrittenFile {
  readonly name: string;
  readonly sha256: string;
}

/** What became of the files of an earlier plan that the new one did not write again; names in the folder. */
export interface EarlierFiles {
  readonly removed: readonly string[];
  /** Changed by somebody since they were written, so they stay. */
  readonly kept: readonly string[];
}

/**
 * Takes back what a run left half done that was killed while it wrote: the earlier files stand again as they were, the
 * new ones are removed. A run that had put everything in its place is only tidied up after.
 */
export function undoUnfinished(folder: string, list: string, disk: Disk = NODE_DISK): void {
  const runs = new Map<string, { name: string; target: string; ending: string }[]>();
  for (const name of disk.names(folder)) {
    const [, target, pid, ending] = LEFT_BEHIND.exec(name) ?? [];
    if (target === undefined || pid === undefined || ending === undefined || disk.isRunning(Number(pid))) continue;
    runs.set(pid, [...(runs.get(pid) ?? []), { name, target, ending }]);
  }
  for (const left of runs.values()) {
    const havingEnding = (ending: string) => left.filter((one) => one.ending === ending);
    const stood = new Set(havingEnding(BEFORE).map(({ target }) => target));
    const coming = havingEnding(PASSING);
    const newList = coming.find(({ target }) => target === list);
    // The list is the last to take its place: without its passing name the run was done.
    const isDone = newList === undefined;
    if (!isDone && (stood.has(list) || !disk.exists(join(folder, list))))
      for (const { name, sha256 } of rememberedFiles(join(folder, newList.name)))
        if (!stood.has(name) && !coming.some(({ target }) => target === name))
          removeIfOurs(join(folder, name), sha256);
    // The earlier list goes back last, for the same reason.
    const back = havingEnding(BEFORE).sort((a, b) => Number(a.target === list) - Number(b.target === list));
    for (const { name, target } of back)
      if (isDone) disk.remove(join(folder, name));
      else disk.rename(join(folder, name), join(folder, target));
    for (const { name } of coming) disk.remove(join(folder, name));
  }
}

const LEFT_BEHIND = new RegExp(
  `^(.+)\\.(\\d+)(${[PASSING, BEFORE].map((end) => end.replace(".", "\\.")).join("|")})$`,
  "u",
);

function removeIfOurs(path: string, sha256: string): boolean {
  try {
    if (digest(readFileSync(path)) !== sha256) return false;
    rmSync(path);
    return true;
  } catch {
    return false;
  }
}

export function writtenFile({ name, data }: OutFile): WrittenFile {
  return { name, sha256: digest(data) };
}

/** The files that the plan in the folder says it wrote; none when there is no plan or it does not say. */
export function rememberedFiles(planPath: string): WrittenFile[] {
  let files: unknown;
  try {
    files = JSON.parse(readFileSync(planPath, "utf8"))?.files;
  } catch {
    return [];
  }
  if (!Array.isArray(files)) return [];
  // A name with a folder in it is not one of ours, whoever wrote the plan.
  return files.filter((file) => typeof file?.name === "string" && file.name === basename(file.name));
}

/**
 * Which files of an earlier plan the new one has no more (cuts by ruler of a plan that was, say): nobody is to cut from
 * two plans at once. A file changed since stays, and is named.
 */
export function outlivedFiles(
  folder: string,
  earlier: readonly WrittenFile[],
  now: readonly { readonly name: string }[],
): EarlierFiles {
  const current = new Set(now.map(({ name }) => name));
  const removed: string[] = [];
  const kept: string[] = [];
  for (const { name, sha256 } of earlier) {
    if (current.has(name)) continue;
    let found: string;
    try {
      found = digest(readFileSync(join(folder, name)));
    } catch {
      continue;
    }
    (found === sha256 ? removed : kept).push(name);
  }
  return { removed, kept };
}

function digest(data: string | Uint8Array): string {
  return createHash("sha256").update(data).digest("hex");
}
