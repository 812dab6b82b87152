import { contourBox, contourEdges } from "../../../../core/geometry/contourArcs.ts";
import { panelDrawing } from "../../../../core/panels/buildPanel.ts";
import { edgeRun, runLength } from "../../../../core/panels/edgeRun.ts";
import type { EdgeRef, Panel } from "../../../../core/panels/panel.ts";
import { sizedPanelOf } from "../../../../core/project/sizedPanels.ts";
import { useEdgeWords } from "../../../fields/EdgeBlank.tsx";
import { useLengths } from "../../../fields/units.ts";
import { contourPath } from "../../../parts/screenPath.ts";
import { useProject } from "../../../state/workbench.ts";
import { useTexts } from "../../../texts/texts.ts";

/** A panel as its outline is measured, cut line and marks with it, and the edge or corner that is spoken of. */
export function DrawnPicture({ panel, marked }: { panel: Panel; marked: Marked | null }) {
  const texts = useTexts().marks;
  const lengths = useLengths();
  const said = useEdgeWords();
  const sized = sizedPanelOf(useProject(), panel.id);
  const drawing = sized && panelDrawing(sized);
  if (sized === null || drawing === null) return null;
  const { contour } = sized.outline;
  const box = contourBox(drawing.cut);
  const [width, height] = [box.maxX - box.minX, box.maxY - box.minY];
  const pad = Math.max(width, height) * 0.04;
  const own = contourBox(contour);
  const run = marked && edgeRun(sized.outline, marked.edge);
  const edges = contourEdges(contour);
  const start = run && edges[run.first]!;
  const thick =
    run && marked?.kind === "edge"
      ? contourPath({
          closed: false,
          vertices: Float64Array.from(
            Array.from({ length: run.count }, (_, k) => edges[(run.first + k) % edges.length]!).flatMap(
              (edge, k) =>
                k === run.count - 1
                  ? [edge.x0, edge.y0, edge.bulge, edge.x1, edge.y1, 0]
                  : [edge.x0, edge.y0, edge.bulge],
            ),
          ),
        })
      : null;
  const caption = run && marked && markedWords();
  return (
    <figure class="stack">
      <svg
        class="drawing drawn-panel"
        viewBox={`${box.minX - pad} ${-box.maxY - pad} ${width + 2 * pad} ${height + 2 * pad}`}
        preserveAspectRatio="xMidYMid meet"
        role="img"
        aria-label={texts.picture(panel.name)}
      >
        <g transform="scale(1 -1)">
          <path class="tone-piece ink-cut" d={contourPath(drawing.cut)} />
          {drawing.drawn.map((line, i) => (
            <path key={i} class={`ink-${line.role}`} d={contourPath(line.contour)} />
          ))}
          {drawing.drawn.map(({ text, contour: { vertices } }, i) =>
            text === undefined ? null : (
              <text
                key={`text-${i}`}
                class="ink-mark"
                transform={`translate(${vertices[vertices.length - 3]! + pad * 0.3} ${vertices[vertices.length - 2]!}) scale(1 -1)`}
                font-size={pad}
              >
                {text}
              </text>
            ),
          )}
          {panel.grainArrow && <path class="ink-grain" d={arrowPath(panel.grainArrow, pad)} />}
          {thick !== null && <path class="marked-edge" d={thick} />}
          {start && <circle class="marked-start" cx={start.x0} cy={start.y0} r={pad * 0.4} />}
        </g>
      </svg>
      <figcaption class="soft small">
        {caption} {texts.frame(lengths.size(own.maxX - own.minX), lengths.size(own.maxY - own.minY))}
      </figcaption>
    </figure>
  );

  function markedWords(): string {
    if (marked!.kind === "corner") return texts.cornerWords(texts.edges.cornerLabel(said(marked!.edge)));
    return texts.pictureWords(said(marked!.edge), lengths.size(runLength(contour, run!)));
  }
}

function arrowPath([x0, y0, x1, y1]: readonly [number, number, number, number], head: number): string {
  const length = Math.hypot(x1 - x0, y1 - y0) || 1;
  const [ux, uy] = [((x1 - x0) / length) * head, ((y1 - y0) / length) * head];
  const side = (s: number) => `M${x1} ${y1}L${x1 - ux - (s * uy) / 2} ${y1 - uy + (s * ux) / 2}`;
  return `M${x0} ${y0}L${x1} ${y1}${side(1)}${side(-1)}`;
}

/** What is marked in the picture: an edge, or the corner where it starts. */
export interface Marked {
  readonly kind: "edge" | "corner";
  readonly edge: EdgeRef;
}

/** What the fields of an opened panel need. */
export interface MarkProps {
  readonly panel: Panel;
  readonly path: (field: string) => string;
  readonly set: (part: Partial<Panel>, label: string, key?: string) => void;
  /** Marks an edge or a corner in the picture. */
  readonly onMark: (marked: Marked) => void;
}
