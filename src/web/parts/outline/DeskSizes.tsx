import { radiusOfRise } from "../../../core/geometry/arcRise.ts";
import type { Box } from "../../../core/geometry/box.ts";
import type { ContourEdge } from "../../../core/geometry/contourArcs.ts";
import { edgeLength } from "../../../core/geometry/contourEdgeLengths.ts";
import { edgePoint } from "../../../core/geometry/contourEdits.ts";
import { useLengths } from "../../fields/units.ts";
import { useTexts } from "../../texts/texts.ts";
import { type DeskView, toScreen } from "./deskView.ts";

/** The whole size, along and across, written outside the outline as on a drawing. */
export function WholeSize({ box, view }: { box: Box; view: DeskView }) {
  const lengths = useLengths();
  const [x0, y1] = toScreen(view, box.minX, box.minY);
  const [x1, y0] = toScreen(view, box.maxX, box.maxY);
  const below = Math.min(y1 + 30, view.height - 20);
  const beside = Math.min(x1 + 30, view.width - 20);
  const lines =
    `M${x0} ${below}H${x1}M${x0} ${below - 5}v10M${x1} ${below - 5}v10` +
    `M${beside} ${y0}V${y1}M${beside - 5} ${y0}h10M${beside - 5} ${y1}h10`;
  return (
    <g class="whole-size">
      <path class="halo" d={lines} />
      <path d={lines} />
      <Figure x={(x0 + x1) / 2} y={below + 5} text={lengths.size(box.maxX - box.minX)} />
      <Figure x={beside} y={(y0 + y1) / 2} turned text={lengths.size(box.maxY - box.minY)} />
    </g>
  );
}

/** Length of an edge, written along its inner side; of an arc its rise and radius besides. */
export function EdgeSize({ edge, view }: { edge: ContourEdge; view: DeskView }) {
  const lengths = useLengths();
  const words = useTexts().outline;
  const chord = Math.hypot(edge.x1 - edge.x0, edge.y1 - edge.y0);
  if (chord === 0) return null;
  const [mx, my] = edgePoint(edge, 0.5);
  const [px, py] = toScreen(view, mx, my);
  // Inward lies to the left of the way the edge runs; the screen's y runs down.
  const [ix, iy] = [-(edge.y1 - edge.y0) / chord, -(edge.x1 - edge.x0) / chord];
  const rise = (Math.abs(edge.bulge) * chord) / 2;
  const text = lengths.size(edgeLength(edge));
  const arc = edge.bulge === 0 ? null : words.arcSize(lengths.size(rise), lengths.size(radiusOfRise(chord, rise)));
  const half = Math.max(text.length, arc?.length ?? 0) * 4.2;
  const inView = Math.max(half + 4, Math.min(view.width - half - 4, px + ix * (16 + half)));
  const [x, y] = [inView, py + iy * 26 + (arc === null ? 5 : -3)];
  return (
    <g class="edge-size">
      <Figure x={x} y={y} text={text} />
      {arc !== null && <Figure x={x} y={y + 17} text={arc} />}
    </g>
  );
}

function Figure({ x, y, text, turned }: { x: number; y: number; text: string; turned?: boolean }) {
  const place = turned ? `translate(${x + 5} ${y}) rotate(-90)` : `translate(${x} ${y})`;
  return (
    <text class="desk-figure" transform={place} text-anchor="middle">
      {text}
    </text>
  );
}
