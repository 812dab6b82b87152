import { readWorkshop } from "../../core/project/file/workshop.ts";
import { PRESET_IDS, presetWish } from "../../core/straps/wish/presets.ts";
import type { SewingMachine } from "../../core/straps/wish/strapWish.ts";
import { type ParsedArgs, UsageError } from "../command.ts";
import { readInput } from "../inOut/readInput.ts";
import { inputProblem } from "../inOut/toldProblem.ts";

/** The sewing machine of a workshop file; nothing where it names none. Throws `InputProblem` when it is not sound. */
export function readMachine(file: string): SewingMachine {
  const read = readWorkshop(readInput(file));
  if (!read.ok) throw inputProblem(read.problems);
  return read.value.sewingMachine ?? {};
}

/** The measures that `--preset` names; null when it is not given. Throws `UsageError`. */
export function readPreset(args: ParsedArgs): ReturnType<typeof presetWish> | null {
  const text = args.values.get("preset");
  if (text === undefined) return null;
  const [word, unit = "mm"] = text.trim().split(/\s+/u);
  const id = PRESET_IDS.find((known) => known === word);
  if (id === undefined || (unit !== "mm" && unit !== "in"))
    throw new UsageError((say) => say.oneOf("preset", PRESET_IDS, text));
  return presetWish(id, unit === "in" ? "inches" : "metric");
}
