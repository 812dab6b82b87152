import { readWorkshop } from "../../core/project/file/workshop.ts";
import type { SewingMachine } from "../../core/straps/wish/strapWish.ts";
import { readInput } from "../inOut/readInput.ts";
import { inputProblem } from "../inOut/toldProblem.ts";

/** The sewing machine of a workshop file; nothing where it names none. Throws `InputProblem` when it is not sound. */
export function readMachine(file: string): SewingMachine {
  const read = readWorkshop(readInput(file));
  if (!read.ok) throw inputProblem(read.problems);
  return read.value.sewingMachine ?? {};
}
