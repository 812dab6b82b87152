import type { Page } from "../../core/drawing/list/page.ts";
import type { DrawingRole } from "../../core/project/outputSettings.ts";
import { useTexts } from "../texts/texts.ts";

/** Lines that need a word, in the order of the key; what is written explains itself. */
const LINES: readonly DrawingRole[] = ["cut", "fold", "stitch", "tape", "mark", "grain", "flaw", "sheet"];

/** What the kinds of lines on these pages mean: a short piece of each, as it is drawn, and its word. */
export function LineKey({ pages }: { pages: readonly Page[] }) {
  const words = useTexts().table.files;
  const drawn = new Set(
    pages.flatMap(({ parts }) =>
      parts.flatMap(({ items }) => items.flatMap((item) => (item.kind === "line" ? [item.role] : []))),
    ),
  );
  const lines = LINES.filter((role) => drawn.has(role));
  if (lines.length === 0) return null;
  return (
    <ul class="line-key small" aria-label={words.role}>
      {lines.map((role) => (
        <li key={role}>
          <svg class="drawing" viewBox="0 0 40 10" width="40" height="10" aria-hidden="true">
            <path class={`ink-${role}`} d="M 0 5 H 40" />
          </svg>
          {words.roles[role]}
        </li>
      ))}
    </ul>
  );
}
