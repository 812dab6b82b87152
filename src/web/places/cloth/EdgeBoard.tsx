import { useState } from "preact/hooks";
import type { Contour } from "../../../core/geometry/contour.ts";
import { contourBox, contourEdges } from "../../../core/geometry/contourArcs.ts";
import { edgeRun } from "../../../core/panels/edgeRun.ts";
import type { Match } from "../../../core/panels/match.ts";
import type { EdgeRef, Panel } from "../../../core/panels/panel.ts";
import type { SeamEdge } from "../../../core/panels/seams.ts";
import type { SizedPanel } from "../../../core/panels/sizedPanel.ts";
import { sizedPanelOf } from "../../../core/project/sizedPanels.ts";
import { edgesOf, useEdgeWords } from "../../fields/EdgeBlank.tsx";
import { contourPath } from "../../parts/screenPath.ts";
import { useProject } from "../../state/workbench.ts";
import { useTexts } from "../../texts/texts.ts";

/** Panels shown; more are chosen by name in the list. */
const MOST_SHOWN = 24;

/**
 * The panels of a cloth as pictures: press one edge, then the edge that it meets, with the pointer or with Tab and Enter;
 * Escape lets the first one go. Edges that meet already carry their marks.
 */
export function EdgeBoard(props: {
  panels: readonly Panel[];
  matches: readonly Match[];
  onPair: (first: SeamEdge, second: SeamEdge) => void;
}) {
  const words = useTexts().matching;
  const said = useEdgeWords();
  const project = useProject();
  const [first, setFirst] = useState<SeamEdge | null>(null);
  const { panels, matches, onPair } = props;
  const shown = panels.slice(0, MOST_SHOWN).flatMap((panel) => {
    const sized = sizedPanelOf(project, panel.id);
    return sized === null ? [] : [{ panel, sized }];
  });
  const isFirst = (edge: SeamEdge): boolean => first !== null && isSame(first, edge);
  const press = (edge: SeamEdge) => {
    if (first === null) setFirst(edge);
    else {
      setFirst(null);
      if (!isFirst(edge)) onPair(first, edge);
    }
  };
  const nameOf = ({ panel, edge }: SeamEdge): string =>
    words.edgeOf(panels.find(({ id }) => id === panel)?.name ?? panel, said(edge));
  const marksOf = (edge: SeamEdge): string[] =>
    matches.flatMap((match, i) => (isSame(match.first, edge) || isSame(match.second, edge) ? [`M${i + 1}`] : []));
  if (shown.length === 0) return null;
  return (
    <section
      class="stack"
      aria-label={words.board}
      onKeyDown={(event) => {
        if (event.key !== "Escape" || first === null) return;
        // The edge is let go; the cloth's form stays open.
        event.stopPropagation();
        setFirst(null);
      }}
    >
      <p class="soft" role="status">
        {first === null ? words.pressFirst : words.pressSecond(nameOf(first))}
      </p>
      <ul class="shelf edge-board">
        {shown.map(({ panel, sized }) => (
          <li key={panel.id} class="card found-line">
            <PanelEdges
              sized={sized}
              edges={edgesOf(project, panel.id)}
              labelOf={(edge) => nameOf({ panel: panel.id, edge })}
              marksOf={(edge) => marksOf({ panel: panel.id, edge })}
              isFirst={(edge) => isFirst({ panel: panel.id, edge })}
              onPress={(edge) => press({ panel: panel.id, edge })}
            />
            <span class="card-name">{panel.name}</span>
          </li>
        ))}
      </ul>
    </section>
  );
}

function PanelEdges(props: {
  sized: SizedPanel;
  edges: readonly EdgeRef[];
  labelOf: (edge: EdgeRef) => string;
  marksOf: (edge: EdgeRef) => readonly string[];
  isFirst: (edge: EdgeRef) => boolean;
  onPress: (edge: EdgeRef) => void;
}) {
  const words = useTexts().matching;
  const { contour } = props.sized.outline;
  const { minX, minY, maxX, maxY } = contourBox(contour);
  const pad = Math.max(maxX - minX, maxY - minY) * 0.12;
  return (
    <svg
      class="drawing card-picture"
      viewBox={`${minX - pad} ${-maxY - pad} ${maxX - minX + 2 * pad} ${maxY - minY + 2 * pad}`}
      preserveAspectRatio="xMidYMid meet"
    >
      <title>{props.sized.panel.name}</title>
      <g transform="scale(1 -1)">
        <path class="tone-piece" d={contourPath(contour)} />
        {props.edges.map((edge) => {
          const line = edgeLine(props.sized, edge);
          if (line === null) return null;
          const marks = props.marksOf(edge);
          const [x, y] = besideMiddle(line, pad);
          return (
            <g
              key={String(edge)}
              class={`edge-button ${marks.length > 0 ? "is-matched" : ""}`}
              role="button"
              tabindex={0}
              data-edge={String(edge)}
              aria-label={
                marks.length > 0 ? words.matchedEdge(props.labelOf(edge), marks.join(", ")) : props.labelOf(edge)
              }
              aria-pressed={props.isFirst(edge)}
              onClick={() => props.onPress(edge)}
              onKeyDown={(event) => {
                if (event.key !== "Enter" && event.key !== " ") return;
                event.preventDefault();
                props.onPress(edge);
              }}
            >
              <path class="reach" d={contourPath(line)} />
              <path class="edge-line" d={contourPath(line)} />
              {marks.length > 0 && (
                <text
                  class="ink-mark"
                  transform={`translate(${x} ${y}) scale(1 -1)`}
                  font-size={pad}
                  text-anchor="middle"
                >
                  {marks.join(" ")}
                </text>
              )}
            </g>
          );
        })}
      </g>
    </svg>
  );
}

/** The line of an edge by itself; null where there is no such edge. */
function edgeLine({ outline }: SizedPanel, edge: EdgeRef): Contour | null {
  const run = edgeRun(outline, edge);
  if (run === null) return null;
  const all = contourEdges(outline.contour);
  const own = Array.from({ length: run.count }, (_, k) => all[(run.first + k) % all.length]!);
  const end = own.at(-1)!;
  const vertices = [...own.flatMap(({ x0, y0, bulge }) => [x0, y0, bulge]), end.x1, end.y1, 0];
  return { vertices: Float64Array.from(vertices), closed: false };
}

/** Where the marks of an edge stand: inside, `by` from its middle; the outline runs counter-clockwise. */
function besideMiddle({ vertices }: Contour, by: number): readonly [number, number] {
  const [x0, y0, x1, y1] = [vertices[0]!, vertices[1]!, vertices.at(-3)!, vertices.at(-2)!];
  const length = Math.hypot(x1 - x0, y1 - y0) || 1;
  const [inX, inY] = [-(y1 - y0) / length, (x1 - x0) / length];
  return [(x0 + x1) / 2 + inX * by, (y0 + y1) / 2 + inY * by - by * 0.35];
}

function isSame(a: SeamEdge, b: SeamEdge): boolean {
  return a.panel === b.panel && a.edge === b.edge;
}
