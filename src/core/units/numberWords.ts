/** How a language writes numbers among words. */
interface NumberWriting {
  readonly decimalSign: string;
  /** Between numbers in a row: never what could be read as a decimal sign. */
  readonly listSeparator: string;
  readonly plural: Intl.PluralRules;
}

const KNOWN = new Map<string, NumberWriting>();

/** By the language's tag (RFC 5646), from the host's Unicode CLDR, so that a new language need not state it. */
function writingOf(tag: string): NumberWriting {
  const known = KNOWN.get(tag);
  if (known !== undefined) return known;
  const parts = new Intl.NumberFormat(tag).formatToParts(0.5);
  const decimalSign = parts.find(({ type }) => type === "decimal")?.value ?? ".";
  const listSeparator = decimalSign === "." ? ", " : "; ";
  const writing = { decimalSign, listSeparator, plural: new Intl.PluralRules(tag) };
  KNOWN.set(tag, writing);
  return writing;
}

/** A text about numbers with the decimal sign of its language: `12.5 mm` is `12,5 mm` in German. */
export function withDecimalSign(text: string, tag: string): string {
  const { decimalSign } = writingOf(tag);
  return decimalSign === "." ? text : text.replace(/(?<=\d)\.(?=\d)/gu, decimalSign);
}

/** Numbers in a row: `12.5 mm, 20 mm`, in German `12,5 mm; 20 mm`. */
export function listedNumbers(numbers: readonly string[], tag: string): string {
  return numbers.join(writingOf(tag).listSeparator);
}

/** Chooses between the words for one and for several, by the language's own plural rule. */
export type Plural = (count: number, one: string, several: string) => string;

/** The chooser of a language, for its tables of words. */
export function pluralOf(tag: string): Plural {
  const { plural } = writingOf(tag);
  return (count, one, several) => (plural.select(count) === "one" ? one : several);
}

/** Blanks inside a size: before its unit, round its times sign, before a fraction; before a share's or a price's sign. */
const INSIDE =
  /(?<=\d) (?=(?:mm|cm|m|in|yd|%|[A-Z]{3})(?!\p{L}))|(?<=\d) (?=\d+\/\d)|(?<=\d(?: (?:mm|cm|m|in|yd))?) (?=×)|(?<=×) (?=≈?\d)/gu;

/** A text for people whose sizes no line breaks: `440 × 110 mm` keeps together, the words round it do not. */
export function unbroken(text: string): string {
  return text.replace(INSIDE, "\u00a0");
}
