/** Blanks inside a size: before its unit, round its times sign, before a fraction; before a share's or a price's sign. */
const INSIDE =
  /(?<=\d) (?=(?:mm|cm|m|in|yd|%|[A-Z]{3})(?!\p{L}))|(?<=\d) (?=\d+\/\d)|(?<=\d(?: (?:mm|cm|m|in|yd))?) (?=×)|(?<=×) (?=≈?\d)/gu;

/** A text for people whose sizes no line breaks: `440 × 110 mm` keeps together, the words round it do not. */
export function unbroken(text: string): string {
  return text.replace(INSIDE, "\u00a0");
}
