import { createHash, randomUUID } from "node:crypto";
import { closeSync, fsyncSync, mkdirSync, openSync, readFileSync, renameSync, rmSync, writeSync } from "node:fs";
import { dirname, join } from "node:path";
import type { LayPlan } from "../../core/lay/problem/layProblem.ts";
import { plainProblem } from "../inOut/toldProblem.ts";
import { fileReason } from "../inOut/writeFiles.ts";
import { readPlans } from "../queue/wire.ts";
import type { LayTask } from "./layTask.ts";

/**
 * Plans that were found, in a folder that several machines may share, each in a file named for all that the plan
 * depends on: orders, stock, effort, seed and version. Whoever reads one has it checked: the folder is not believed.
 */
export class PlanFolder {
  readonly folder: string;
  readonly #version: string;

  constructor(folder: string, version: string) {
    this.folder = folder;
    this.#version = version;
  }

  /** Makes the folder. Throws `InputProblem` where nothing can be written there. */
  prepare(): void {
    const probe = join(this.folder, `${randomUUID()}${PASSING}`);
    try {
      mkdirSync(this.folder, { recursive: true });
      writeWhole(probe, "");
      rmSync(probe);
    } catch (error) {
      throw plainProblem("cannot-write", this.folder, (texts) =>
        texts.files.notWritten(this.folder, fileReason(error, texts)),
      );
    }
  }

  /** The plans of a lay, or null where none are kept or the file is not whole. */
  find(task: LayTask): readonly LayPlan[] | null {
    try {
      return readPlans(JSON.parse(readFileSync(this.#fileOf(task), "utf8")));
    } catch {
      return null;
    }
  }

  /** Keeps plans: whole under their name at once or not at all, whoever else writes the same. */
  keep(task: LayTask, plans: readonly LayPlan[]): void {
    const file = this.#fileOf(task);
    mkdirSync(dirname(file), { recursive: true });
    // No process on any machine has the same.
    const passing = `${file}.${randomUUID()}${PASSING}`;
    try {
      writeWhole(passing, `${JSON.stringify(plans)}\n`);
      renameSync(passing, file);
    } catch (error) {
      rmSync(passing, { force: true });
      throw error;
    }
  }

  #fileOf({ orders, withheld, effort, language }: LayTask): string {
    const asked = orders.map(({ name, text }) => [name, text]);
    const key = createHash("sha256")
      .update(JSON.stringify([this.#version, asked, withheld, effort, language]))
      .digest("hex");
    return join(this.folder, key.slice(0, 2), `${key}.json`);
  }
}

/** Ending of a file that is being written; one that stays was left by a process that was killed. */
const PASSING = ".laywright-part";

function writeWhole(path: string, text: string): void {
  const file = openSync(path, "wx");
  try {
    writeSync(file, text);
    // On the disk before it gets its name, so that no power cut leaves half a plan there.
    fsyncSync(file);
  } finally {
    closeSync(file);
  }
}
