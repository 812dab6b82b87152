import type { ComponentChildren } from "preact";

/** A field that stands in a sentence. */
export type Blank = ComponentChildren;

/** What never begins a line; French has a blank before some of it. */
const CLOSING = /^\u00a0?[.,;:!?]/u;

/** A sentence made of words and blanks; a full stop or comma stays on the line of the blank before it. */
export function words(...parts: Blank[]): Blank {
  return parts.map((part, i) => {
    const [before, after] = [parts[i - 1], parts[i + 1]];
    const closing = isField(part) ? closingOf(after) : "";
    if (closing !== "")
      return (
        <span key={String(i)} class="together">
          {part}
          {closing}
        </span>
      );
    return isField(before) && typeof part === "string" ? part.slice(closingOf(part).length) : part;
  });
}

function isField(part: Blank): boolean {
  return typeof part === "object" && part !== null;
}

/** The sign that a part begins with and that stays with what is before it. */
function closingOf(part: Blank): string {
  return (typeof part === "string" && CLOSING.exec(part)?.[0]) || "";
}
