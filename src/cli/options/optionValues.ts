import { type ParsedArgs, UsageError } from "../command.ts";

/** Range a number option must lie in. */
export interface NumberRule {
  readonly least: number;
  readonly most: number;
  readonly whole?: boolean;
}

/** A number option, or `fallback` when it is not given. Throws `UsageError` when it is no number or out of range. */
export function numberOption<T>(args: ParsedArgs, name: string, rule: NumberRule, fallback: T): number | T {
  const text = args.values.get(name);
  if (text === undefined) return fallback;
  const value = /^\s*[-+]?(\d+(?:\.\d*)?|\.\d+)(e[-+]?\d+)?\s*$/i.test(text) ? Number(text) : Number.NaN;
  if (!(value >= rule.least && value <= rule.most) || (rule.whole && !Number.isInteger(value))) {
    throw new UsageError((say) => say.number(name, rule.whole === true, rule.least, rule.most, text));
  }
  return value;
}

/** A word option out of a list, or `fallback`. Throws `UsageError` for any other word. */
export function wordOption<W extends string>(args: ParsedArgs, name: string, words: readonly W[], fallback: W): W {
  const text = args.values.get(name);
  if (text === undefined) return fallback;
  const word = words.find((known) => known === text);
  if (word === undefined) throw new UsageError((say) => say.oneOf(name, words, text));
  return word;
}

/** What stands on both sides of an x, as in "38 mm x 2 mm". */
export function partsBy(text: string): string[] {
  return text.split(/[x×]/iu).map((part) => part.trim());
}

/** The unit that a size ends with; null when it ends with its number. */
export function unitAtEnd(size: string): string | null {
  const text = size.trimEnd();
  let start = text.length;
  while (start > 0 && /[^\d\s.,/-]/u.test(text[start - 1]!)) start--;
  return start < text.length ? text.slice(start) : null;
}

/** An option that must be given. Throws `UsageError` when it is missing. */
export function requiredOption(args: ParsedArgs, name: string): string {
  const text = args.values.get(name);
  if (text === undefined) throw new UsageError((say) => say.missing(name));
  return text;
}
