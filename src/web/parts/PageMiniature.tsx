import { memo } from "preact/compat";
import type { Page } from "../../core/drawing/list/page.ts";
import type { Box } from "../../core/geometry/box.ts";
import { DrawnItem } from "./DrawingPicture.tsx";

/** A page as it will be printed, small. */
export const PageMiniature = memo(function PageMiniature({ page, name }: { page: Page; name: string }) {
  const { width, height, parts } = page;
  const whole = { minX: 0, minY: 0, maxX: width, maxY: height };
  return (
    <svg class="drawing page-miniature" viewBox={`0 0 ${width} ${height}`} role="img" aria-label={name}>
      <rect class="page-paper" width={width} height={height} />
      {parts.map((part, i) => (
        // A drawing inside a drawing is cut off at its edges: that is the part's clip.
        <svg key={String(i)} aria-hidden="true" {...windowOf(part.clip ?? whole, height)}>
          <g transform={`translate(${part.x} ${height - part.y}) scale(${part.scaleX} ${part.scaleY})`}>
            {part.items.map((item, j) => (
              <DrawnItem key={String(j)} item={item} />
            ))}
          </g>
        </svg>
      ))}
    </svg>
  );
});

function windowOf({ minX, minY, maxX, maxY }: Box, pageHeight: number) {
  const [width, height] = [maxX - minX, maxY - minY];
  const top = pageHeight - maxY;
  return { x: minX, y: top, width, height, viewBox: `${minX} ${top} ${width} ${height}`, overflow: "hidden" };
}
