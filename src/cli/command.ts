import { readFileSync } from "node:fs";
import type { Language } from "../core/units/language.ts";
import { USAGE_TEXTS, type UsageTexts } from "./words/words.ts";

/** What a run of the program ends with: done, a problem in the input, wrong usage, a bug of ours. */
export const EXIT = { done: 0, input: 1, usage: 2, bug: 3 } as const;

export type ExitCode = (typeof EXIT)[keyof typeof EXIT];

/** One option of a command. Without `value` it is a switch. */
export interface OptionSpec {
  /** Long name without dashes. */
  readonly name: string;
  /** What stands for the value in the help, e.g. `DIR`; absent for a switch. */
  readonly value?: string;
  /** One line for the help, with the default where there is one. */
  readonly help: string;
}

/** Options and operands as given, before their values are read. */
export interface ParsedArgs {
  readonly values: ReadonlyMap<string, string>;
  readonly switches: ReadonlySet<string>;
  readonly operands: readonly string[];
}

/** Where a command writes. A test hands in its own. */
export interface Io {
  /** Language of what is said about bags; help pages are English. */
  readonly language: Language;
  /** The result: standard output. */
  out(text: string): void;
  /** Everything else: standard error. */
  err(text: string): void;
  /** A line that replaces the one before; silent unless standard error is a terminal. `""` clears it. */
  progress(text: string): void;
}

/** A command as the list of commands tells it. */
export interface ListedCommand {
  readonly name: string;
  /** One line for the list of commands. */
  readonly summary: string;
  /** The command itself; a run reads no other. */
  load(): Promise<Command>;
}

/** One command of the program, in a file of its own. */
export interface Command {
  readonly name: string;
  /** What follows the command's name, e.g. `PROJECT [options]`. */
  readonly synopsis: string;
  /** Paragraphs below the synopsis. */
  readonly about: string;
  readonly options: readonly OptionSpec[];
  /** Least and greatest number of operands. */
  readonly operands: readonly [least: number, most: number];
  run(args: ParsedArgs, io: Io): Promise<ExitCode>;
}

/**
 * Wrong usage found while a command reads its options: ends the run with exit code 2 and the usage line. A plain
 * sentence, as `bench` gives, is English.
 */
export class UsageError extends Error {
  /** The sentence in the language of the run. */
  readonly told: (language: Language) => string;

  constructor(say: string | ((texts: UsageTexts) => string)) {
    super(typeof say === "string" ? say : say(USAGE_TEXTS.en));
    this.told = (language) => (typeof say === "string" ? say : say(USAGE_TEXTS[language]));
  }
}

/** Every command takes this option. */
export const LANGUAGE_OPTION: OptionSpec = {
  name: "lang",
  value: "en|de",
  help: "language of sentences, pages and cut sheets (default en)",
};

/** Every command that prints data takes this switch. */
export const JSON_OPTION: OptionSpec = { name: "json", help: "print one JSON document on standard output" };

/** The version of the program. Another may lay otherwise: its results are not taken for this one's. */
export function programVersion(): string {
  return JSON.parse(readFileSync(new URL("../../package.json", import.meta.url), "utf8")).version;
}
