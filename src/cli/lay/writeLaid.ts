import { join } from "node:path";
import { type OutFile, writeFiles } from "../inOut/writeFiles.ts";
import {
  type EarlierFiles,
  outlivedFiles,
  rememberedFiles,
  undoUnfinished,
  type WrittenFile,
  writtenFile,
} from "./earlierFiles.ts";

const PLAN_FILE = "plan.json";

/** What a plan's files came to in their folder. */
export interface WrittenPlan extends EarlierFiles {
  /** In the order given, the list first. */
  readonly paths: readonly string[];
  readonly files: readonly WrittenFile[];
}

/**
 * Writes a plan and its files whole or not at all, and takes away what only an earlier plan in the folder had. The list
 * of the files is `plan.json`, or `list`: with it stand exactly the files that it names.
 */
export function writeLaid(
  out: string,
  document: object,
  files: readonly OutFile[],
  list: string = PLAN_FILE,
): WrittenPlan {
  undoUnfinished(out, list);
  const earlier = rememberedFiles(join(out, list));
  const plan = planFile({ ...document, files: files.map(writtenFile) }, list);
  const done = outlivedFiles(out, earlier, [plan, ...files]);
  const paths = writeFiles(out, [plan, ...files], done.removed);
  return { ...done, paths, files: [plan, ...files].map(writtenFile) };
}

/** A plan as a file. */
export function planFile(document: object, name: string = PLAN_FILE): OutFile {
  return { name, data: `${JSON.stringify(document)}\n` };
}
