import type { SectionArt } from "../../core/drawing/strap/sectionArt.ts";
import { contourPath } from "./screenPath.ts";

/** A strap cut across, in true proportion. `name` is what a screen reader says; without it the picture is silent. */
export function SectionPicture({ art, name, room }: { art: SectionArt; name?: string; room?: number }) {
  // Sections of one row of cards are drawn to the same scale, so that wide and thick can be compared.
  const width = Math.max(art.width, room ?? 0);
  const padX = width * 0.03 + (width - art.width) / 2;
  const padY = Math.max(art.height * 0.25, width * 0.02);
  const line = ([x0, y0, x1, y1]: readonly [number, number, number, number]) => `M${x0} ${y0}L${x1} ${y1}`;
  return (
    // biome-ignore lint/a11y/noSvgWithoutTitle: named by aria-label, or hidden beside its name
    <svg
      class="drawing section-picture"
      viewBox={`${-padX} ${-art.height - padY} ${art.width + 2 * padX} ${art.height + 2 * padY}`}
      preserveAspectRatio="xMidYMid meet"
      {...(name === undefined ? { "aria-hidden": "true" as const } : { role: "img" as const, "aria-label": name })}
    >
      <g transform="scale(1 -1)">
        {art.areas.map(({ tone, contour }) => (
          <path key={contourPath(contour)} class={`tone-${tone} ink-cut`} d={contourPath(contour)} />
        ))}
        {art.seams.map((seam) => (
          <path key={contourPath(seam)} class="ink-mark" d={contourPath(seam)} />
        ))}
        <path class="ink-cut raw-edge" d={art.rawEdges.map(line).join("")} />
        <path class="ink-stitch" d={art.stitches.map(([x, low, high]) => line([x, low, x, high])).join("")} />
      </g>
    </svg>
  );
}
