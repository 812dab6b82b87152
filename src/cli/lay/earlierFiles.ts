import { createHash } from "node:crypto";
import { readFileSync, rmSync } from "node:fs";
import { basename, join } from "node:path";
import type { OutFile } from "../inOut/writeFiles.ts";

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
 * Takes away what an earlier plan left in the folder and the new one has no more (cuts by ruler of a plan that was,
 * say): nobody is to cut from two plans at once. A file changed since stays, and is named.
 */
export function removeEarlier(
  folder: string,
  earlier: readonly WrittenFile[],
  now: readonly { readonly name: string }[],
): EarlierFiles {
  const current = new Set(now.map(({ name }) => name));
  const removed: string[] = [];
  const kept: string[] = [];
  for (const { name, sha256 } of earlier) {
    if (current.has(name)) continue;
    const path = join(folder, name);
    let found: string;
    try {
      found = digest(readFileSync(path));
    } catch {
      continue;
    }
    if (found === sha256) {
      rmSync(path);
      removed.push(name);
    } else kept.push(name);
  }
  return { removed, kept };
}

function digest(data: string | Uint8Array): string {
  return createHash("sha256").update(data).digest("hex");
}
