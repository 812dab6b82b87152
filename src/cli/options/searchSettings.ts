import { availableParallelism } from "node:os";
import { CUT_MODES, type CutMode } from "../../core/lay/search/engine.ts";
import type { OptionSpec, ParsedArgs } from "../command.ts";
import { numberOption, wordOption } from "./optionValues.ts";

/** Options of every command that searches. */
export const SEARCH_OPTIONS: readonly OptionSpec[] = [
  { name: "seconds", value: "N", help: "search for at most N seconds (default 10; no limit with --evaluations)" },
  { name: "evaluations", value: "N", help: "search for N evaluations: the same plan every time" },
  { name: "seed", value: "N", help: "seed of the search (default 1)" },
  { name: "threads", value: "N", help: "workers that search together (default 1)" },
];

/** How long and how to search. */
export interface SearchSettings {
  readonly seconds: number;
  readonly evaluations: number;
  readonly seed: number;
  readonly threads: number;
}

/** Reads `SEARCH_OPTIONS`; so many `threads` unless told. Throws `UsageError`. */
export function searchSettings(args: ParsedArgs, seconds: number, threads = 1): SearchSettings {
  const evaluations = numberOption(args, "evaluations", { least: 1, most: 1e15, whole: true }, Infinity);
  const most = Math.max(8, availableParallelism());
  return {
    seconds: numberOption(args, "seconds", { least: 0, most: 86_400 }, evaluations < Infinity ? 86_400 : seconds),
    evaluations,
    seed: numberOption(args, "seed", { least: 0, most: 2 ** 31 - 1, whole: true }, 1),
    threads: numberOption(args, "threads", { least: 1, most, whole: true }, threads),
  };
}

/** How pieces are to be cut. */
export const CUT_OPTION: OptionSpec = {
  name: "cut",
  value: "MODE",
  help: `how pieces are cut: ${CUT_MODES.join(", ")} (default free; ruler: straight cuts from edge to edge; few-stages: the same with the cloth turned twice; two-stages: turned once; single pieces may have to be trimmed)`,
};

/** Reads `CUT_OPTION`. Throws `UsageError`. */
export function cutMode(args: ParsedArgs): CutMode {
  return wordOption(args, "cut", CUT_MODES, "free");
}
