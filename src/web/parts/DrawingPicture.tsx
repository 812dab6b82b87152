import type { Drawing, DrawingItem } from "../../core/drawing/list/drawing.ts";
import { contourPath } from "./screenPath.ts";

/**
 * A drawing on the screen, as large as its box allows, in the page's own colours (`ink-…`, `tone-…` classes).
 * `name` is what a screen reader says.
 */
export function DrawingPicture(props: { drawing: Drawing; name: string; pad?: number; class?: string }) {
  const { box, items } = props.drawing;
  const pad = props.pad ?? 0;
  const width = Math.max(0.001, box.maxX - box.minX + 2 * pad);
  const height = Math.max(0.001, box.maxY - box.minY + 2 * pad);
  return (
    <svg
      class={`drawing ${props.class ?? ""}`}
      viewBox={`${box.minX - pad} ${-box.maxY - pad} ${width} ${height}`}
      role="img"
      aria-label={props.name}
      preserveAspectRatio="xMidYMid meet"
    >
      {items.map((item, i) => (
        <DrawnItem key={i} item={item} />
      ))}
    </svg>
  );
}

/** One item of a drawing, in y-down coordinates of the drawing around it. */
export function DrawnItem({ item }: { item: DrawingItem }) {
  if (item.kind === "text")
    return (
      <text
        class={item.tone === undefined ? `ink-${item.role}` : `text-${item.tone}`}
        transform={`translate(${item.x} ${-item.y}) rotate(${-item.turnDeg})`}
        font-size={item.size}
        font-weight={item.bold ? 700 : 400}
        text-anchor={item.anchor}
      >
        {item.text}
      </text>
    );
  const path = item.kind === "line" ? contourPath(item.contour) : item.contours.map(contourPath).join("");
  return item.kind === "line" ? (
    <path class={`ink-${item.role}`} d={path} transform="scale(1 -1)" />
  ) : (
    <path class={`tone-${item.tone}`} d={path} fill-rule="evenodd" transform="scale(1 -1)" />
  );
}
