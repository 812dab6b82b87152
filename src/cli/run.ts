import { nearestWord } from "../core/problems/nearestWord.ts";
import { LANGUAGES, type Language } from "../core/words/words.ts";
import { type Command, EXIT, type ExitCode, type Io, type ListedCommand, UsageError } from "./command.ts";
import { commandHelp, programHelp, usageLine } from "./help.ts";
import { InputProblem, reportInputProblem } from "./inOut/toldProblem.ts";
import { wordOption } from "./options/optionValues.ts";
import { parseCommandLine } from "./options/parseCommandLine.ts";
import { USAGE_TEXTS } from "./words/words.ts";

/**
 * Runs the program on the words of a command line and returns its exit code. Never throws: wrong usage and bad
 * input are told in plain sentences, a bug of ours with its place so that it can be sent in.
 */
export async function run(words: readonly string[], commands: readonly ListedCommand[], io: Io): Promise<ExitCode> {
  const [name, ...rest] = words;
  if (name === undefined) {
    io.err(programHelp(commands));
    return EXIT.usage;
  }
  if (name === "--help" || (name === "help" && (rest[0] ?? "--").startsWith("--"))) {
    io.out(programHelp(commands));
    return EXIT.done;
  }
  const wanted = name === "help" ? rest[0] : name;
  const listed = commands.find((known) => known.name === wanted);
  if (listed === undefined) {
    const nearest = nearestWord(wanted ?? "", [...commands.map((known) => known.name), "help"]);
    const say = USAGE_TEXTS[languageOf(words) ?? io.language];
    io.err(`laywright: ${say.noCommand(wanted ?? "", nearest)}\n${say.listed}\n`);
    return EXIT.usage;
  }
  let command: Command;
  try {
    command = await listed.load();
  } catch (error) {
    // A part of the program that is missing or broken is a bug of ours like any other.
    return tellBug(listed.name, error, io);
  }
  if (name === "help") {
    io.out(commandHelp(command));
    return EXIT.done;
  }
  return runCommand(command, rest, io);
}

function tellBug(name: string, error: unknown, io: Io): ExitCode {
  io.err(`laywright ${name}: internal error; please report this and send us your file:\n`);
  io.err(`${error instanceof Error ? error.stack : String(error)}\n`);
  return EXIT.bug;
}

/** The language that the words ask for, as far as they can be read. */
function languageOf(words: readonly string[]): Language | undefined {
  const given = words.findLast((word, i) => word.startsWith("--lang=") || words[i - 1] === "--lang");
  return LANGUAGES.find((language) => language === given?.replace("--lang=", ""));
}

async function runCommand(command: Command, words: readonly string[], io: Io): Promise<ExitCode> {
  // Known before the words are read, for what may be wrong with them.
  let told = { ...io, language: languageOf(words) ?? io.language };
  try {
    const args = parseCommandLine(command, words);
    if (args.switches.has("help")) {
      io.out(commandHelp(command));
      return EXIT.done;
    }
    const language = wordOption(args, "lang", LANGUAGES, io.language);
    told = { ...io, language };
    return await command.run(args, told);
  } catch (error) {
    io.progress("");
    if (error instanceof UsageError) {
      const { usage } = USAGE_TEXTS[told.language];
      io.err(`laywright ${command.name}: ${error.told(told.language)}\n${usageLine(command, usage)}\n`);
      return EXIT.usage;
    }
    if (error instanceof InputProblem) {
      reportInputProblem(error, words.includes("--json"), told);
      return EXIT.input;
    }
    return tellBug(command.name, error, io);
  }
}
