import { readProject } from "../../core/project/file/readProject.ts";
import { OUTPUT_CHOICES } from "../../core/project/outputSettings.ts";
import type { ParsedArgs } from "../command.ts";
import { UsageError } from "../command.ts";
import { partsBy, unitAtEnd, wordOption } from "./optionValues.ts";

type Json = string | number | boolean | null | Json[] | { [key: string]: Json };
type Group = { [key: string]: Json };

/**
 * The project's text with the output settings that the options give in place of its own. A text that is no project
 * comes back as it is, so that its problems are told from the file. Throws `UsageError`.
 */
export function withOutputOptions(text: string, args: ParsedArgs): string {
  const wanted = wantedSettings(args);
  if (Object.keys(wanted).length === 0 || !readProject(text).ok) return text;
  const file = JSON.parse(text.replace(/^\ufeff/u, "")) as Group;
  return JSON.stringify({ ...file, output: merged(groupOf(file["output"]), wanted) });
}

function wantedSettings(args: ParsedArgs): Group {
  const length = (name: string): Json | undefined => withUnit(args.values.get(name));
  const word = (name: string, words: readonly string[]): Json | undefined =>
    wordOption(args, name, words, "") || undefined;
  const machine = present({
    bladeOffset: length("blade-offset"),
    overcut: length("overcut"),
    order: word("cut-order", OUTPUT_CHOICES.order),
  });
  return merged(settingsOption(args), {
    ...present({
      paper: paperOption(args.values.get("paper")),
      pageMargin: length("page-margin"),
      overlap: length("overlap"),
      sheets: word("sheets", OUTPUT_CHOICES.sheets),
      rollWidth: length("roll-width"),
      testSquare: pairOption(args, "test-square", ["x", "y"]),
      letters: word("letters", OUTPUT_CHOICES.letters),
      sharedEdges: word("shared-edges", OUTPUT_CHOICES.sharedEdges),
    }),
    ...(Object.keys(machine).length > 0 ? { machine } : {}),
  });
}

function settingsOption(args: ParsedArgs): Group {
  const text = args.values.get("settings");
  if (text === undefined) return {};
  try {
    return groupOf(JSON.parse(text));
  } catch {
    throw new UsageError((say) => say.settings(text));
  }
}

function groupOf(value: unknown): Group {
  if (value === undefined) return {};
  if (typeof value !== "object" || value === null || Array.isArray(value)) throw new SyntaxError("no group");
  return value as Group;
}

/** A plain number is in mm on the command line, whatever the file's unit. */
function withUnit(text: string | undefined): string | undefined {
  return text !== undefined && /^[\d.,/\s]+$/u.test(text) ? `${text.trim()} mm` : text;
}

/** Two lengths with an x between them; one unit at the end is for both. */
function pairOption(args: ParsedArgs, name: string, keys: readonly [string, string]): Group | undefined {
  const text = args.values.get(name);
  if (text === undefined) return undefined;
  const pair = pairOf(text, keys);
  if (pair === null) throw new UsageError((say) => say.pair(name, text));
  return pair;
}

function pairOf(text: string, [first, second]: readonly [string, string]): Group | null {
  const parts = partsBy(text);
  if (parts.length !== 2) return null;
  const [a, b] = parts as [string, string];
  const unit = unitAtEnd(b) ?? "mm";
  const said = (part: string): string => (/[a-z"']$/iu.test(part) ? part : `${part} ${unit}`);
  return { [first]: said(a), [second]: said(b) };
}

function paperOption(text: string | undefined): Json | undefined {
  if (text === undefined) return undefined;
  return (/^[\d.]/u.test(text) ? pairOf(text, ["width", "height"]) : null) ?? text;
}

/** The group without keys that have no value. */
function present(group: { readonly [key: string]: Json | undefined }): Group {
  return Object.fromEntries(
    Object.entries(group).filter((entry): entry is [string, Json] => entry[1] !== undefined),
  );
}

/** Groups laid over each other key by key; paper is one value, its size never mixed with another's. */
function merged(under: Group, over: Group): Group {
  const out: Group = { ...under };
  for (const [key, value] of Object.entries(over)) {
    const below = out[key];
    const both = [below, value].every((one) => typeof one === "object" && one !== null && !Array.isArray(one));
    out[key] = both && key !== "paper" ? merged(below as Group, value as Group) : value;
  }
  return out;
}
