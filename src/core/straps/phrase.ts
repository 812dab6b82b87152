/** A sentence with named lengths in it (mm), so that each host writes them in the maker's own units. */
export interface Phrase {
  /** `{name}` stands for the length of that name. */
  readonly text: string;
  readonly lengths: Readonly<Record<string, number>>;
}

/** A phrase; every `{name}` in the text needs its length. */
export function phrase(text: string, lengths: Readonly<Record<string, number>> = {}): Phrase {
  return { text, lengths };
}

/** The sentence with its lengths written by `write`. Throws RangeError when a named length is missing. */
export function phraseText(of: Phrase, write: (mm: number) => string): string {
  return of.text.replace(/\{(\w+)\}/gu, (_, name: string) => {
    const mm = of.lengths[name];
    if (mm === undefined) throw new RangeError(`phraseText: "${of.text}" has no length called ${name}`);
    return write(mm);
  });
}
