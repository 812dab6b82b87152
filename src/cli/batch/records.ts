import { createHash } from "node:crypto";
import { readdirSync, readFileSync, rmdirSync, rmSync } from "node:fs";
import { dirname, join } from "node:path";
import { writeFiles } from "../inOut/writeFiles.ts";
import { undoUnfinished, type WrittenFile } from "../lay/earlierFiles.ts";
import type { LaidTask, LayTask } from "./layTask.ts";

/** Folder of the records below the batch's own. */
const RECORDS = "records";

/** What a lay is kept under: the SHA-256 of all that its bytes depend on, in hex. */
export function keyOf(task: LayTask, version: string): string {
  return createHash("sha256")
    .update(JSON.stringify([version, task]))
    .digest("hex");
}

/** Keeps what a lay came to, after its files are in their places. */
export function keepRecord(out: string, key: string, laid: LaidTask): void {
  writeFiles(join(out, RECORDS), [{ name: `${key}.json`, data: `${JSON.stringify(laid)}\n` }]);
}

/** Whether an earlier batch has kept anything in the folder. */
export function hasRecords(out: string): boolean {
  return namesIn(join(out, RECORDS)).length > 0;
}

/** The lay kept under a key; null where there is none, or where a file of it is not as it was written. */
export function keptRecord(out: string, key: string): LaidTask | null {
  const laid = recordIn(out, `${key}.json`);
  return laid?.files.every((file) => stands(out, file)) ? laid : null;
}

function recordIn(out: string, name: string): LaidTask | null {
  try {
    return JSON.parse(readFileSync(join(out, RECORDS, name), "utf8"));
  } catch {
    return null;
  }
}

function stands(out: string, { name, sha256 }: WrittenFile): boolean {
  try {
    return (
      createHash("sha256")
        .update(readFileSync(join(out, name)))
        .digest("hex") === sha256
    );
  } catch {
    return false;
  }
}

/**
 * Takes away what an earlier batch wrote and this one does not want, before anything new is laid, so that nobody cuts
 * from both. Returns the files that somebody has changed since: they stay.
 */
export function removeOutlived(out: string, keys: ReadonlySet<string>): string[] {
  undoUnfinished(join(out, RECORDS), "");
  undoUnfinished(out, "");
  const kept: string[] = [];
  for (const name of namesIn(join(out, RECORDS))) {
    if (!/^[0-9a-f]{64}\.json$/u.test(name) || keys.has(name.slice(0, 64))) continue;
    const files = (recordIn(out, name)?.files ?? []).filter((file) => isBelow(file.name));
    for (const file of files)
      if (stands(out, file)) rmSync(join(out, file.name));
      else if (namesIn(dirname(join(out, file.name))).includes(file.name.split("/").at(-1)!)) kept.push(file.name);
    for (const folder of new Set(files.map((file) => dirname(file.name)))) removeEmpty(join(out, folder));
    rmSync(join(out, RECORDS, name));
  }
  return kept;
}

/** Whoever wrote the record, nothing outside the batch's own folders is touched. */
function isBelow(name: string): boolean {
  return /^(?:orders|lays)\/[^/\\]+\/[^/\\]+$/u.test(name) && !name.includes("..");
}

function namesIn(folder: string): string[] {
  try {
    return readdirSync(folder);
  } catch {
    return [];
  }
}

function removeEmpty(folder: string): void {
  try {
    rmdirSync(folder);
  } catch {
    // Something of somebody else's is in it.
  }
}
