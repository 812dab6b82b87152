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
  const value = /^\s*[-+]?(\d+\.?\d*|\.\d+)(e[-+]?\d+)?\s*$/i.test(text) ? Number(text) : Number.NaN;
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

/** An option that must be given. Throws `UsageError` when it is missing. */
export function requiredOption(args: ParsedArgs, name: string): string {
  const text = args.values.get(name);
  if (text === undefined) throw new UsageError((say) => say.missing(name));
  return text;
}
