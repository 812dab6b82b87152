import { OUTPUTS, type OutputId } from "../../export/outputs.ts";
import { type OptionSpec, type ParsedArgs, UsageError } from "../command.ts";

const IDS: readonly OutputId[] = OUTPUTS.map(({ id }) => id);

/** Which kinds of files are written beside the plan. */
export const WRITE_OPTION: OptionSpec = {
  name: "write",
  value: "KINDS",
  help: `kinds of files to write beside plan.json, with commas between: ${IDS.join(", ")} (default all)`,
};

/** Reads `WRITE_OPTION`: kinds in the usual order, each once; undefined for all. Throws `UsageError`. */
export function writtenOutputs(args: ParsedArgs): readonly OutputId[] | undefined {
  const text = args.values.get("write");
  if (text === undefined) return undefined;
  const words = text.split(",").map((word) => word.trim());
  for (const word of words)
    if (!IDS.some((id) => id === word)) throw new UsageError((say) => say.oneOf("write", IDS, word));
  return IDS.filter((id) => words.includes(id));
}
