import { parseArgs } from "node:util";
import { nearestWord } from "../../core/problems/nearestWord.ts";
import { type Command, LANGUAGE_OPTION, type OptionSpec, type ParsedArgs, UsageError } from "../command.ts";
import type { UsageTexts } from "../words/words.ts";

/**
 * Reads the words after a command's name. Throws `UsageError` for unknown options, missing values, options given
 * twice and a wrong number of operands.
 */
export function parseCommandLine(command: Command, words: readonly string[]): ParsedArgs {
  const known = [...command.options, LANGUAGE_OPTION];
  const names = [...known.map((option) => option.name), "help"];
  const options: Record<string, { type: "string" | "boolean" }> = { help: { type: "boolean" } };
  for (const option of known) options[option.name] = { type: option.value ? "string" : "boolean" };
  const { tokens } = parseArgs({
    args: joinedNegatives(known, words),
    options,
    strict: false,
    allowPositionals: true,
    tokens: true,
  });
  const values = new Map<string, string>();
  const switches = new Set<string>();
  const operands: string[] = [];
  for (const token of tokens) {
    if (token.kind === "positional") operands.push(token.value);
    if (token.kind !== "option") continue;
    if (!Object.hasOwn(options, token.name) || token.rawName !== `--${token.name}`)
      throw new UsageError(unknownOption(token.rawName, names));
    if (values.has(token.name) || switches.has(token.name)) throw new UsageError((say) => say.twice(token.name));
    if (options[token.name]?.type === "boolean") {
      if (token.value !== undefined) throw new UsageError((say) => say.noValue(token.name));
      switches.add(token.name);
    } else {
      if (token.value === undefined) throw new UsageError((say) => say.needsValue(token.name));
      values.set(token.name, token.value);
    }
  }
  checkOperands(command, operands, switches.has("help"));
  return { values, switches, operands };
}

/** `--x -3` would be read as two options; joins a number that follows an option that takes a value. */
function joinedNegatives(known: readonly OptionSpec[], words: readonly string[]): string[] {
  const takesValue = new Set(known.filter((option) => option.value).map((option) => `--${option.name}`));
  const out: string[] = [];
  for (let i = 0; i < words.length; i++) {
    const next = words[i + 1];
    if (takesValue.has(words[i]!) && next !== undefined && /^-[\d.]/.test(next)) {
      out.push(`${words[i]}=${next}`);
      i++;
    } else out.push(words[i]!);
  }
  return out;
}

function unknownOption(rawName: string, names: readonly string[]): (texts: UsageTexts) => string {
  const nearest = nearestWord(rawName.replace(/^-+/, ""), names);
  return (say) => say.noOption(rawName, nearest);
}

function checkOperands(command: Command, operands: readonly string[], help: boolean): void {
  const [least, most] = command.operands;
  if (help) return;
  if (operands.length < least)
    throw new UsageError((say) => say.needs(command.name, command.synopsis.split(" [")[0]!));
  if (operands.length > most) throw new UsageError((say) => say.oneTooMany(operands[most]!));
}
