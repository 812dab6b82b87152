import type { NeedlePlace, PhraseCode, StrapWords } from "./strapWords.ts";

/** A sentence as data: its codes in a row, and the facts in it; each host writes it in its language and units. */
export interface Phrase {
  readonly parts: readonly PhraseCode[];
  /** mm; `{name}` in a part's text stands for the length of that name. */
  readonly lengths: Readonly<Record<string, number>>;
  /** Whole numbers, named in the same way. */
  readonly counts?: Readonly<Record<string, number>>;
  /** What `{where}` stands for. */
  readonly where?: NeedlePlace;
}

/** A phrase of one part or several; every `{name}` in its texts needs its length. */
export function phrase(
  parts: PhraseCode | readonly PhraseCode[],
  lengths: Readonly<Record<string, number>> = {},
): Phrase {
  return { parts: typeof parts === "string" ? [parts] : parts, lengths };
}

/** The sentence with its lengths written by `write`. Throws RangeError when a fact is missing. */
export function phraseText(
  { parts, lengths, counts, where }: Phrase,
  write: (mm: number) => string,
  words: StrapWords,
): string {
  const text = parts.map((part) => words.phrases[part]).join("");
  return text.replace(/\{(\w+)\}/gu, (_, name: string) => {
    if (name === "where" && where !== undefined) return words.needle[where];
    const count = counts?.[name];
    if (count !== undefined) return String(count);
    const mm = lengths[name];
    if (mm === undefined) throw new RangeError(`phraseText: "${text}" has no fact called ${name}`);
    return write(mm);
  });
}

/** Something the maker should know before cutting; never stops the strap. */
export interface StrapWarning extends Phrase {
  readonly code: PhraseCode;
}

/** A note of one sentence, known by that sentence's code. */
export function warning(
  code: PhraseCode,
  lengths: Readonly<Record<string, number>> = {},
  more: Pick<Phrase, "counts" | "where"> = {},
): StrapWarning {
  return { code, ...phrase(code, lengths), ...more };
}

const LONGEST = 60;

/** What a person typed, in quotes on one line: control characters shown as "�", long text cut with "…". */
export function quoted(text: string): string {
  const signs = Array.from(text.slice(0, LONGEST * 4).replace(/\p{C}/gu, "�"));
  return `"${signs.slice(0, LONGEST).join("")}${signs.length > LONGEST ? "…" : ""}"`;
}
