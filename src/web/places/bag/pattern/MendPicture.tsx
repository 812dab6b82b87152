import type { Box } from "../../../../core/geometry/box.ts";
import type { PatternOutline } from "../../../../core/patterns/patternOutline.ts";
import { contourPath } from "../../../parts/screenPath.ts";
import { useTexts } from "../../../texts/texts.ts";

/** What mending changed, over the pattern as it was drawn; nothing where no line changed. */
export function MendPicture(props: { drawn: readonly PatternOutline[]; mended: readonly PatternOutline[] }) {
  const { pattern: words } = useTexts();
  const drawn = new Set(props.drawn.map(pathOf));
  const mended = new Set(props.mended.map(pathOf));
  const gone = [...drawn].filter((path) => !mended.has(path));
  const fresh = [...mended].filter((path) => !drawn.has(path));
  if (gone.length + fresh.length === 0) return null;
  const box = [...props.drawn, ...props.mended].reduce((all, { box: one }) => joined(all, one), EMPTY);
  const [width, height] = [box.maxX - box.minX, box.maxY - box.minY];
  const pad = Math.max(width, height) * 0.04;
  return (
    <figure class="stack mend-picture">
      <svg
        class="drawing"
        viewBox={`${box.minX - pad} ${-box.maxY - pad} ${width + 2 * pad} ${height + 2 * pad}`}
        preserveAspectRatio="xMidYMid meet"
        role="img"
        aria-label={words.change(fresh.length, gone.length)}
      >
        <g transform="scale(1 -1)">
          {[...mended]
            .filter((path) => drawn.has(path))
            .map((path) => (
              <path key={path} class="ink-mark" d={path} />
            ))}
          {fresh.map((path) => (
            <path key={path} class="mend-new" d={path} />
          ))}
          {gone.map((path) => (
            <path key={path} class="mend-gone" d={path} />
          ))}
        </g>
      </svg>
      <figcaption class="soft small">{words.changeKey}</figcaption>
    </figure>
  );
}

function pathOf({ contour }: PatternOutline): string {
  return contourPath(contour);
}

const EMPTY: Box = { minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity };

function joined(a: Box, b: Box): Box {
  return {
    minX: Math.min(a.minX, b.minX),
    minY: Math.min(a.minY, b.minY),
    maxX: Math.max(a.maxX, b.maxX),
    maxY: Math.max(a.maxY, b.maxY),
  };
}
