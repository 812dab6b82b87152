import { randomInt } from "node:crypto";
import { existsSync } from "node:fs";
import { dirname } from "node:path";
import type { Today } from "../../core/cupboard/change.ts";
import { type Cupboard, EMPTY_CUPBOARD } from "../../core/cupboard/cupboard.ts";
import { readCupboard, writeCupboard } from "../../core/cupboard/cupboardFile.ts";
import type { Result } from "../../core/problems/problem.ts";
import { readInput } from "../inOut/readInput.ts";
import { InputProblem, inputProblem, plainProblem } from "../inOut/toldProblem.ts";
import { fileReason } from "../inOut/writeFiles.ts";
import { CUPBOARD_TEXTS } from "../words/cupboardTexts.ts";
import { changeFile, type Flag, freeFile, StillBusy } from "./changeFile.ts";

/** The cupboard in a file. Throws `InputProblem` with everything that is wrong with it. */
export function readCupboardFile(path: string): Cupboard {
  return soundOf(readCupboard(readInput(path)));
}

/** The day as the clock of this machine has it, and chance for new codes. */
export function today(): Today {
  const now = new Date();
  const two = (value: number): string => String(value).padStart(2, "0");
  const on = `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
  return { on, below: (count) => randomInt(count) };
}

/**
 * Changes the cupboard in a file, whole or not at all, and gives what the change gave. A file that is not there is
 * begun when `mayBegin`. Throws `InputProblem`; the file is as it was then.
 */
export async function changeCupboard<T extends { readonly cupboard: Cupboard }>(
  path: string,
  change: (cupboard: Cupboard) => Result<T>,
  mayBegin = false,
): Promise<T> {
  if (!existsSync(path) && !(mayBegin && existsSync(dirname(path))))
    throw plainProblem("file-unreadable", path, ({ files }) => files.unreadable(path, files.faults.missing));
  let done: T | null = null;
  try {
    await changeFile(path, (text) => {
      const read = text === null ? { ...EMPTY_CUPBOARD, unit: "mm" as const } : soundOf(readCupboard(text));
      done = soundOf(change(read));
      return writeCupboard(done.cupboard, read.unit);
    });
  } catch (error) {
    throw asProblem(path, error);
  }
  return done!;
}

/** Takes down what runs that ended on other machines left beside a cupboard file. Throws `InputProblem`. */
export function freeCupboard(path: string): readonly Flag[] {
  if (!existsSync(path))
    throw plainProblem("file-unreadable", path, ({ files }) => files.unreadable(path, files.faults.missing));
  try {
    return freeFile(path);
  } catch (error) {
    throw asProblem(path, error);
  }
}

/** What the disk or another run says, as a problem; other errors as they are. */
function asProblem(path: string, error: unknown): unknown {
  if (error instanceof StillBusy) {
    const { flag } = error;
    return new InputProblem((language) => [
      { code: "file-busy", path, message: CUPBOARD_TEXTS[language].busy(path, flag) },
    ]);
  }
  if (error instanceof InputProblem || !("code" in (error as object))) return error;
  return plainProblem("cannot-write", path, (texts) => texts.files.notWritten(path, fileReason(error, texts)));
}

/** The value; throws `InputProblem` where there is none. */
export function soundOf<T>(result: Result<T>): T {
  if (!result.ok) throw inputProblem(result.problems);
  return result.value;
}
