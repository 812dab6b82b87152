import type { ComponentChildren } from "preact";

/** A field that stands in a sentence. */
export type Blank = ComponentChildren;

/** What never begins a line. */
const CLOSING = /^[.,;:]/u;

/** A sentence made of words and blanks; a full stop or comma stays on the line of the blank before it. */
export function words(...parts: Blank[]): Blank {
  return parts.map((part, i) => {
    const [before, after] = [parts[i - 1], parts[i + 1]];
    if (isField(part) && startsClosed(after))
      return (
        <span key={String(i)} class="together">
          {part}
          {after[0]}
        </span>
      );
    return isField(before) && startsClosed(part) ? part.slice(1) : part;
  });
}

function isField(part: Blank): boolean {
  return typeof part === "object" && part !== null;
}

function startsClosed(part: Blank): part is string {
  return typeof part === "string" && CLOSING.test(part);
}
