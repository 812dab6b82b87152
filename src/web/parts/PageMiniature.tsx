import { memo } from "preact/compat";
import type { Page } from "../../core/drawing/page.ts";
import { DrawnItem } from "./DrawingPicture.tsx";

/** A page as it will be printed, small. */
export const PageMiniature = memo(function PageMiniature({ page, name }: { page: Page; name: string }) {
  const { width, height, parts } = page;
  return (
    <svg class="drawing page-miniature" viewBox={`0 0 ${width} ${height}`} role="img" aria-label={name}>
      <rect class="page-paper" width={width} height={height} />
      {parts.map((part, i) => (
        <g key={String(i)} {...clipOf(part.clip, height)}>
          <g transform={`translate(${part.x} ${height - part.y}) scale(${part.scaleX} ${part.scaleY})`}>
            {part.items.map((item, j) => (
              <DrawnItem key={String(j)} item={item} />
            ))}
          </g>
        </g>
      ))}
    </svg>
  );
});

function clipOf(clip: Page["parts"][number]["clip"], height: number) {
  if (clip === null) return {};
  const { minX, minY, maxX, maxY } = clip;
  const path = `M${minX} ${height - maxY}H${maxX}V${height - minY}H${minX}Z`;
  return { style: { clipPath: `path("${path}")` } };
}
